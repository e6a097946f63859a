package model

import (
	"math"
	"slices"
	"strings"

	"maltwright/lang/quantity"
)

// Taken lists what a process is made from: one lot, or several that are mixed.
func (p *Process) Taken() []Taken {
	if len(p.Lots) > 0 {
		return p.Lots
	}
	if p.Charge == nil || p.Grain == nil {
		return nil
	}
	return []Taken{{Place: p.Charge.Place, Weight: p.Charge, Grain: p.Grain}}
}

// TakenOf is how much of a lot a process takes, kg. A lot of the past goes by its name.
func (p *Process) TakenOf(g *Grain) (kg float64) {
	for _, t := range p.Taken() {
		if t.Grain.Name == g.Name {
			kg += t.Weight.SI
		}
	}
	return kg
}

// Mixed is the lot that several make together, which need a weight and a grain each. What is
// counted or weighed of dry grain is weighted by the dry matter of each, and is not known
// where one does not say it. What was seen of them is left out: see Worst.
func Mixed(list []Taken) *Grain {
	first := list[0].Grain
	g := &Grain{Name: namesOf(list), Place: first.Place, Species: first.Species, Already: first.Already}
	g.Moisture = mean(list, func(t Taken) (float64, *Quantity) { return t.Weight.SI, t.Grain.Moisture })
	g.Protein = mean(list, func(t Taken) (float64, *Quantity) { return t.dry(), t.Grain.Protein })
	g.KernelWeight = kernelsTogether(list)
	g.Germination = testsTogether(list)
	return g
}

func namesOf(list []Taken) string {
	names := make([]string, len(list))
	for i, t := range list {
		names[i] = t.Grain.Name
	}
	return strings.Join(names, " and ")
}

// dry is the dry matter of what is taken, kg; where the moisture is not known it is all.
func (t Taken) dry() float64 {
	if t.Grain.Moisture == nil {
		return t.Weight.SI
	}
	return t.Weight.SI * (1 - t.Grain.Moisture.SI)
}

// mean is the weighted mean of a figure, in the unit and at the place of the first; nil where
// one lot does not say it.
func mean(list []Taken, of func(Taken) (weight float64, q *Quantity)) *Quantity {
	sum, all := 0.0, 0.0
	for _, t := range list {
		w, q := of(t)
		if q == nil {
			return nil
		}
		sum, all = sum+w*q.SI, all+w
	}
	_, q := of(list[0])
	return like(q, sum/all)
}

// like is a figure as another is written.
func like(q *Quantity, si float64) *Quantity {
	made, err := quantity.In(si, q.Unit())
	if err != nil {
		made = q.Quantity
		made.SI = si
	}
	return &Quantity{Quantity: made, Place: q.Place}
}

// kernelsTogether is the weight of a thousand kernels: all of the weight over all of the kernels.
func kernelsTogether(list []Taken) *Quantity {
	kernels, all := 0.0, 0.0
	for _, t := range list {
		if t.Grain.KernelWeight == nil || t.Grain.KernelWeight.SI <= 0 {
			return nil
		}
		kernels, all = kernels+t.Weight.SI/t.Grain.KernelWeight.SI, all+t.Weight.SI
	}
	return like(list[0].Grain.KernelWeight, all/kernels)
}

// testsTogether are the germination tests of the mixture: one for each amount of water that
// every lot was tested in or, where there is none, one of the best of each.
func testsTogether(list []Taken) (tests []GerminationTest) {
	seen := map[float64]bool{}
	for _, t := range list[0].Grain.Germination {
		in := waterOf(t)
		if together, ok := testIn(list, in); ok && !seen[in] {
			tests = append(tests, together)
		}
		seen[in] = true
	}
	if len(tests) == 0 {
		if together, ok := testIn(list, math.NaN()); ok {
			together.Water = nil
			tests = append(tests, together)
		}
	}
	return tests
}

func waterOf(t GerminationTest) float64 {
	if t.Water == nil {
		return 0
	}
	return t.Water.SI
}

// testIn mixes the best test of each lot in an amount of water, m³; not a number is any. The
// mixture was counted as narrowly, and as long ago, as the worst of them.
func testIn(list []Taken, water float64) (mixed GerminationTest, ok bool) {
	sum, all := 0.0, 0.0
	for i, t := range list {
		var best *GerminationTest
		for k := range t.Grain.Germination {
			test := &t.Grain.Germination[k]
			if (math.IsNaN(water) || waterOf(*test) == water) && (best == nil || test.Share.SI > best.Share.SI) {
				best = test
			}
		}
		if best == nil {
			return mixed, false
		}
		if i == 0 {
			mixed = *best
		}
		if best.Kernels == nil || mixed.Kernels == nil {
			mixed.Kernels = nil
		} else if best.Kernels.SI < mixed.Kernels.SI {
			mixed.Kernels = best.Kernels
		}
		if best.On.Text == "" || mixed.On.Text != "" && best.On.Text < mixed.On.Text {
			mixed.On = best.On
		}
		sum, all = sum+t.dry()*best.Share.SI, all+t.dry()
	}
	mixed.Share = *like(&mixed.Share, sum/all)
	return mixed, true
}

// Worst is the worst of a word of each lot, by a list that begins with the worst.
func Worst(list []Taken, word func(*Grain) Word, order ...string) Word {
	return slices.MinFunc(list, func(a, b Taken) int {
		return slices.Index(order, word(a.Grain).Text) - slices.Index(order, word(b.Grain).Text)
	}).of(word)
}

func (t Taken) of(word func(*Grain) Word) Word { return word(t.Grain) }
