package ensemble

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/sim/forecast"
)

// Spread is the 10, 50 and 90 % points of a figure over the members that have it.
type Spread struct {
	P10, P50, P90 float64
	Share         float64 // of the members that have it, 0 to 1
}

// SpreadOf reckons the points of values of which each counts the same; NaN is a member
// without the figure.
func SpreadOf(values []float64) Spread {
	have := slices.DeleteFunc(slices.Clone(values), math.IsNaN)
	if len(have) == 0 {
		return Spread{math.NaN(), math.NaN(), math.NaN(), 0}
	}
	slices.Sort(have)
	at := func(p float64) float64 { return stat.Quantile(p, stat.LinInterp, have, nil) }
	return Spread{at(0.1), at(0.5), at(0.9), float64(len(have)) / float64(len(values))}
}

// figure collects a figure from every member; those that broke off have none.
func (e *Ensemble) figure(of func(*forecast.Totals) float64) []float64 {
	out := make([]float64, len(e.Members))
	for i := range e.Members {
		if out[i] = math.NaN(); !e.Members[i].Broken {
			out[i] = of(&e.Members[i].Totals)
		}
	}
	return out
}

// Total gives the spread of a figure of the totals.
func (e *Ensemble) Total(of func(*forecast.Totals) float64) Spread {
	return SpreadOf(e.figure(of))
}

// StepSpread is the spread of one step's end.
type StepSpread struct {
	Stage    model.StageKind
	Label    string
	Number   int    // which of its kind
	At       int    // where the words that ask for it begin in their file
	End      Spread // s from the first soak
	Moisture Spread // wet basis, at its end
	Weight   Spread // kg, at its end
}

// Word is the word of the step, without its number.
func (s StepSpread) Word() string {
	word, _, _ := strings.Cut(s.Label, " ")
	return word
}

// Of is the stage of a process that the step is of: the last one of its kind that begins
// no later than the words that ask for it; nil where there is none.
func (s StepSpread) Of(p *model.Process) (of model.Stage) {
	for _, st := range p.Stages {
		if st.Kind() == s.Stage && st.Place().Start <= s.At {
			of = st
		}
	}
	return of
}

// Steps gives the spread of each step, in the order of the process. A step that not
// every member has, such as a wait at a gate, has a Share below 1.
func (e *Ensemble) Steps() []StepSpread {
	n := len(e.stepsSeen)
	ends, wet, mass := make([][]float64, n), make([][]float64, n), make([][]float64, n)
	for i, m := range e.Members {
		for _, x := range m.steps {
			k := x.key
			if ends[k] == nil {
				ends[k], wet[k], mass[k] = nans(len(e.Members)), nans(len(e.Members)), nans(len(e.Members))
			}
			ends[k][i], wet[k][i], mass[k][i] = x.end, x.moisture, x.weight
		}
	}
	var out []StepSpread
	for _, k := range e.ordered() {
		x := e.stepsSeen[k]
		out = append(out, StepSpread{x.stage, x.label, x.number, x.place, SpreadOf(ends[k]), SpreadOf(wet[k]), SpreadOf(mass[k])})
	}
	return out
}

// ordered are the steps of the members in the order of the process: each behind the step that
// is before it in a member that has it, those of the members with the most steps first.
func (e *Ensemble) ordered() []int32 {
	longest := make([]int, len(e.Members))
	for i := range longest {
		longest[i] = i
	}
	sorted.Stable(longest, func(a, b int) int {
		return cmp.Compare(len(e.Members[b].steps), len(e.Members[a].steps))
	})
	var keys []int32
	known := make([]bool, len(e.stepsSeen))
	for _, i := range longest {
		before := -1 // where the step before it stands
		for _, x := range e.Members[i].steps {
			if known[x.key] {
				before = slices.Index(keys, x.key)
				continue
			}
			before++
			keys, known[x.key] = slices.Insert(keys, before, x.key), true
		}
	}
	return keys
}

func nans(n int) []float64 { return slices.Repeat([]float64{math.NaN()}, n) }

// Odds is how often something held.
type Odds struct {
	Text  string
	Holds float64 // share of the members that can judge it, 0 to 1
}

// Expectations gives the odds of each promise of the process.
func (e *Ensemble) Expectations() []Odds {
	return e.odds(func(m *Member) []outcome { return m.expects })
}

// Gates gives the odds of each gate.
func (e *Ensemble) Gates() []Odds {
	return e.odds(func(m *Member) []outcome { return m.gates })
}

func (e *Ensemble) odds(of func(*Member) []outcome) []Odds {
	var out []Odds
	var unjudged []float64 // members, of each
	at := map[int32]int{}
	for k := range e.Members {
		seen := map[int32]bool{}
		for _, x := range of(&e.Members[k]) {
			i, ok := at[x.text]
			if !ok {
				i, at[x.text] = len(out), len(out)
				out, unjudged = append(out, Odds{Text: e.words[x.text]}), append(unjudged, 0)
			}
			if x.unjudged {
				if !seen[x.text] {
					unjudged[i]++
					seen[x.text] = true
				}
			} else if x.holds && !seen[x.text] {
				out[i].Holds += 1 / float64(len(e.Members))
				seen[x.text] = true
			}
		}
	}
	return judged(out, unjudged, float64(len(e.Members)))
}

// judged takes odds over those of n members that can judge, and drops what none of them can.
func judged(list []Odds, unjudged []float64, n float64) (out []Odds) {
	for i, o := range list {
		if unjudged[i] == n {
			continue
		}
		if unjudged[i] > 0 {
			o.Holds *= n / (n - unjudged[i])
		}
		out = append(out, o)
	}
	return out
}
