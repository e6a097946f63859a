package ensemble

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Member is what is kept of one forecast: the figures of which the spread is told, and
// nothing that is the same for all. It takes a kilobyte, however long the forecast is
// to read.
type Member struct {
	Totals forecast.Totals
	Broken bool // the forecast broke off, and its totals are of what came before

	steps          []stepEnd // in their order
	gates, expects []outcome
}

// stepEnd is the end of a step.
type stepEnd struct {
	key                   int32 // of the ensemble's steps
	end, moisture, weight float64
}

// outcome is whether something held.
type outcome struct {
	text     int32 // of the ensemble's words
	holds    bool
	unjudged bool // it asks what the member does not forecast
}

// stepKey is a step of any of the members.
type stepKey struct {
	stage  model.StageKind
	label  string
	number int // which of its kind
	place  int // of the words that ask for it: two waits are at two gates
}

// Of makes an ensemble without members, to which [Ensemble.Reduce] can bring
// forecasts that were made elsewhere.
func Of(p *model.Process) *Ensemble {
	return &Ensemble{Process: p, stepAt: map[stepKey]int32{}, wordAt: map[string]int32{}}
}

// Reduce keeps of a forecast what the ensemble tells of. It may be called by several
// goroutines at a time.
func (e *Ensemble) Reduce(f *forecast.Forecast) Member {
	e.lock.Lock()
	defer e.lock.Unlock()
	m := Member{Totals: f.Totals, Broken: f.BrokenOff()}
	for _, st := range f.Stages {
		for _, step := range st.Steps {
			k := stepKey{st.Kind, step.Label, step.Number, step.Place.Start}
			m.steps = append(m.steps, stepEnd{e.step(k), step.End, step.MoistureEnd, step.WeightEnd})
		}
	}
	for _, g := range f.Gates {
		m.gates = append(m.gates, outcome{e.word(e.Process.Called(g.Of) + ": " + g.Text), g.Met, g.Unjudged})
	}
	for _, x := range f.Expects {
		m.expects = append(m.expects, outcome{e.word(x.Test.Place.Text()), x.Holds && !m.Broken, x.Unjudged})
	}
	return m
}

func (e *Ensemble) step(k stepKey) int32 {
	at, ok := e.stepAt[k]
	if !ok {
		at = int32(len(e.stepsSeen))
		e.stepAt[k], e.stepsSeen = at, append(e.stepsSeen, k)
	}
	return at
}

func (e *Ensemble) word(text string) int32 {
	at, ok := e.wordAt[text]
	if !ok {
		at = int32(len(e.words))
		e.wordAt[text], e.words = at, append(e.words, text)
	}
	return at
}
