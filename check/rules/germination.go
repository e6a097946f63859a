package rules

import (
	"fmt"
	"math"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/reckon"
)

// counted is what the newest germination tests of a lot, in one amount of water, say
// together.
type counted struct {
	share   float64
	kernels float64 // in all; 0 where a test does not say how many
	on      string  // "" where no test has a date
	place   source.Place
	like    quantity.Quantity // a share as the maltster writes it
}

// muchWater parts the tests in 4 ml of water from those in 8 ml, in which the kernels
// that bear no water drown, m³.
const muchWater = 6e-6

// inLittle takes the tests that show what lives; one that does not name its water is
// taken for such.
func inLittle(t model.GerminationTest) bool { return t.Water == nil || t.Water.SI < muchWater }

func inFour(t model.GerminationTest) bool { return t.Water != nil && inLittle(t) }

func inEight(t model.GerminationTest) bool { return !inLittle(t) }

// count puts together the tests that are wanted: those of the newest date, or, where
// none has a date, all of them.
func count(g *model.Grain, wanted func(model.GerminationTest) bool) (n counted, ok bool) {
	var tests []model.GerminationTest
	for _, t := range g.Germination {
		switch on := t.On.Text; {
		case !wanted(t) || on < n.on:
			continue
		case on > n.on:
			n.on, tests = on, nil
		}
		tests = append(tests, t)
	}
	if len(tests) == 0 {
		return counted{}, false
	}
	last := tests[len(tests)-1].Share
	n.place, n.like = last.Place, last.Quantity
	n.share, n.kernels = together(tests)
	return n, true
}

// together is the share over all tests, by their kernels where all say how many.
func together(tests []model.GerminationTest) (share, kernels float64) {
	sum := 0.0
	for _, t := range tests {
		share += t.Share.SI / float64(len(tests))
		if t.Kernels == nil || math.IsNaN(kernels) {
			kernels = math.NaN()
			continue
		}
		kernels += t.Kernels.SI
		sum += t.Kernels.SI * t.Share.SI
	}
	if math.IsNaN(kernels) {
		return share, 0
	}
	return sum / kernels, kernels
}

// between gives the ends between which the lot lies 19 times in 20 [wilson-1927]; ok
// is false where the kernels were not counted.
func (n counted) between() (low, high float64, ok bool) {
	germinated, err := quantity.Parse(fmt.Sprintf("%.0f", math.Round(n.share*n.kernels)))
	if err != nil {
		return 0, 0, false
	}
	of, err := quantity.Parse(fmt.Sprintf("%.0f", n.kernels))
	if err != nil {
		return 0, 0, false
	}
	r, err := reckon.Germination(germinated, of)
	return r.Low, r.High, err == nil
}

// newest is the newest date of all tests, "" where none has one.
func newest(g *model.Grain) string {
	last := ""
	for _, t := range g.Germination {
		last = max(last, t.On.Text)
	}
	return last
}

// apart is the time from one day to a later one; ok is false where one is no date.
func apart(first, then string) (time.Duration, bool) {
	a, err := time.Parse(time.DateOnly, first)
	if err != nil {
		return 0, false
	}
	b, err := time.Parse(time.DateOnly, then)
	return b.Sub(a), err == nil
}
