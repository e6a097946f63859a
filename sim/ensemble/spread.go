package ensemble

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

// Spread is the 10, 50 and 90 % points of a figure over the members that have it.
type Spread struct {
	P10, P50, P90 float64
	Share         float64 // of the members that have it, 0 to 1
}

// SpreadOf reckons the points of values of which each counts the same; NaN is a member
// without the figure.
func SpreadOf(values []float64) Spread { return spreadOf(values) }

// spreadOf reckons the points; NaN is a member without the figure.
func spreadOf(values []float64) Spread {
	have := slices.DeleteFunc(slices.Clone(values), math.IsNaN)
	if len(have) == 0 {
		return Spread{math.NaN(), math.NaN(), math.NaN(), 0}
	}
	slices.Sort(have)
	at := func(p float64) float64 { return stat.Quantile(p, stat.LinInterp, have, nil) }
	return Spread{at(0.1), at(0.5), at(0.9), float64(len(have)) / float64(len(values))}
}

// figure collects a figure from every member; those that broke off have none.
func (e *Ensemble) figure(of func(*forecast.Forecast) float64) []float64 {
	out := make([]float64, len(e.Members))
	for i, m := range e.Members {
		if out[i] = math.NaN(); !m.BrokenOff() {
			out[i] = of(m)
		}
	}
	return out
}

// Total gives the spread of a figure of the totals.
func (e *Ensemble) Total(of func(*forecast.Totals) float64) Spread {
	return spreadOf(e.figure(func(f *forecast.Forecast) float64 { return of(&f.Totals) }))
}

// StepSpread is the spread of one step's end.
type StepSpread struct {
	Stage    process.StageKind
	Label    string
	End      Spread // s from the first soak
	Moisture Spread // wet basis, at its end
	Weight   Spread // kg, at its end
}

// Steps gives the spread of each step, in the order of the process. A step that not
// every member has, such as a wait at a gate, has a Share below 1.
func (e *Ensemble) Steps() []StepSpread {
	type key struct {
		stage process.StageKind
		label string
		place int // of the words that ask for it: two waits are at two gates
	}
	ends, wet, mass, order := map[key][]float64{}, map[key][]float64{}, map[key][]float64{}, map[key]float64{}
	fill := func(m map[key][]float64, k key, i int, v float64) {
		if m[k] == nil {
			m[k] = slices.Repeat([]float64{math.NaN()}, len(e.Members))
		}
		m[k][i] = v
	}
	for i, f := range e.Members {
		for s, st := range f.Stages {
			for n, step := range st.Steps {
				k := key{st.Kind, step.Label, step.Place.Start}
				fill(ends, k, i, step.End)
				fill(wet, k, i, step.MoistureEnd)
				fill(mass, k, i, step.WeightEnd)
				order[k] = max(order[k], float64(s)*1e3+float64(n))
			}
		}
	}
	var out []StepSpread
	keys := make([]key, 0, len(order))
	for k := range order {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, b key) int {
		return cmp.Or(cmp.Compare(order[a], order[b]), cmp.Compare(a.label, b.label), cmp.Compare(a.place, b.place))
	})
	for _, k := range keys {
		out = append(out, StepSpread{k.stage, k.label, spreadOf(ends[k]), spreadOf(wet[k]), spreadOf(mass[k])})
	}
	return out
}

// Odds is how often something held.
type Odds struct {
	Text  string
	Holds float64 // share of the members, 0 to 1
}

// Expectations gives the odds of each promise of the process.
func (e *Ensemble) Expectations() []Odds {
	return e.odds(func(f *forecast.Forecast, hold func(string, bool)) {
		for _, x := range f.Expects {
			hold(x.Test.Place.Text(), x.Holds && !f.BrokenOff())
		}
	})
}

// Gates gives the odds of each gate.
func (e *Ensemble) Gates() []Odds {
	return e.odds(func(f *forecast.Forecast, hold func(string, bool)) {
		for _, g := range f.Gates {
			hold(string(g.Stage)+": "+g.Text, g.Met)
		}
	})
}

func (e *Ensemble) odds(each func(*forecast.Forecast, func(string, bool))) []Odds {
	var out []Odds
	at := map[string]int{}
	for _, f := range e.Members {
		seen := map[string]bool{}
		each(f, func(text string, holds bool) {
			i, ok := at[text]
			if !ok {
				i, at[text] = len(out), len(out)
				out = append(out, Odds{Text: text})
			}
			if holds && !seen[text] {
				out[i].Holds += 1 / float64(len(e.Members))
				seen[text] = true
			}
		})
	}
	return out
}
