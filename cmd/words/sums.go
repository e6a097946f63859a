package words

import (
	"fmt"
	"math"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/sums"
	"maltwright/sim/reckon"
)

// Labelled is a text behind a label.
type Labelled struct{ Label, Text string }

// Sums tells the figures of a reckoning, the result first, in the units of the input.
func Sums(r sums.Result) []Labelled {
	switch r := r.(type) {
	case sums.Moisture:
		return ofSamples(r)
	case sums.Target:
		word := "to gain"
		if r.Change < 0 {
			word = "to lose"
		}
		return []Labelled{{"weight at " + r.Wanted.String(), r.Batch.Like(float64(r.Weight))},
			{word, r.Batch.Like(math.Abs(float64(r.Change)))}, {"dry matter", r.Batch.Like(float64(r.DryMatter))}}
	case sums.Weighing:
		return []Labelled{{"moisture", share(r.Moisture)}, {"water", r.Now.Like(float64(r.Water))}, {"dry matter", r.Now.Like(float64(r.DryMatter))}}
	case sums.Basis:
		wet, dry := Labelled{"wet basis", value(r.WetShown)}, Labelled{"dry basis", value(r.DryShown)}
		if _, ok := r.Working[0].Step.(reckon.WetBasis); ok {
			return []Labelled{wet, dry}
		}
		return []Labelled{dry, wet}
	case sums.Yield:
		return []Labelled{{"yield as it is", share(r.AsIs)}, {"dry malt of barley as it is", share(r.DryMalt)},
			{"dry malt of dry barley", share(r.Dry)}, {"dry matter lost", share(r.DryMatterLost)}}
	case sums.Germination:
		return []Labelled{{"germination", share(r.Germination)}, {"lowest it may well be", share(r.Low)}, {"highest it may well be", share(r.High)}}
	}
	return nil
}

func ofSamples(r sums.Moisture) []Labelled {
	if len(r.Samples) == 1 {
		return []Labelled{{"moisture", share(r.Moisture)}}
	}
	list := []Labelled{{"mean moisture", share(r.Moisture)}, {"lowest", share(r.Lowest)}, {"highest", share(r.Highest)},
		{"standard deviation", points(float64(r.Deviation)) + " points"}}
	for i, w := range r.Samples {
		list = append(list, Labelled{fmt.Sprintf("sample %d", i+1), share(w)})
	}
	return list
}

// share writes a share as near as weighings of grain come.
func share(x answer.Share) string { return reckon.Percent().Like(float64(x)) }

// points writes a difference of shares.
func points(x float64) string { return fmt.Sprintf("%.2f", 100*x) }

// value writes a value of a working: as it was written, or like one that was.
func value(v reckon.Value) string {
	if v.Given {
		return v.Like.String()
	}
	return v.Like.Like(v.SI)
}

// written is a step of a working in one line: moisture: 2.46 g / 20.00 g = 12.3 %.
func written(s sums.Step) string {
	l := WorkingStep(s)
	return l.Label + ": " + l.Text
}

// WorkingNote tells what was taken for granted.
func WorkingNote(n sums.Note) string {
	switch n := n.Note.(type) {
	case reckon.Lossless:
		return fmt.Sprintf("this assumes no loss of dry matter; grain that has grown has lost some, and with %s lost this would be %s", value(n.Supposed), value(n.Moisture))
	case reckon.OneCount:
		return "another count of the same lot would differ; the lot as a whole lies within the interval 19 times in 20, if the kernels were drawn at random"
	}
	return ""
}
