// Package visits lists when a batch needs somebody: the timetable of a forecast.
//
// Each stage has its own lister (steep.go, floor.go, kiln.go, after.go) that walks
// over the steps of the forecast and writes down tasks. Tasks that fall due at the
// same minute are one visit (visit.go). Whether a visit falls in the night, and at
// which hour to begin so that the fewest do, is night.go.
//
// Times are in seconds from the first soak, as in a forecast.
package visits

import (
	"cmp"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// Kind says what is to be done.
type Kind string

// The kinds of task.
const (
	Fill     Kind = "fill"     // water on
	Drain    Kind = "drain"    // water off, and weigh
	EndRest  Kind = "end-rest" // an air rest is over that no soak follows
	Spread   Kind = "spread"   // onto a floor
	Turn     Kind = "turn"
	Sprinkle Kind = "sprinkle"
	Change   Kind = "change"    // the bed is to be kept at another temperature
	Look     Kind = "look"      // does the condition hold yet
	EndFloor Kind = "end-floor" // the growing or the withering is over
	Load     Kind = "load"      // onto the kiln
	Heat     Kind = "heat"      // the kiln is set anew
	Stir     Kind = "stir"
	Gate     Kind = "gate" // weigh: go on only if it holds
	Cool     Kind = "cool"
	Unload   Kind = "unload"
	Deculm   Kind = "deculm"
	Put      Kind = "store" // into the store
	Rested   Kind = "rested"
)

// Again tells whether it is done to the same piece at even intervals.
func (k Kind) Again() bool { return k == Turn || k == Sprinkle || k == Stir }

// Task is one thing to do.
type Task struct {
	At    float64 // s from the first soak
	Waits float64 // s that it may wait without harm
	Kind  Kind
	Stage model.StageKind
	Name  string // of the step: soak 1, cure
	Ends  string // the step of the steep that is over then: soak 1; "" where none is, or another task of that time says so
	Place source.Place

	Where       string               // the vessel, floor, kiln or store, as named
	Wall        *int                 // s of the day, of what stands at the clock whenever the batch begins; nil for all else
	Temperature forecast.Temperature // to be set
	Lasts       float64              // s that the step takes by its own statement; 0 where it is open
	Over        float64              // s that the temperature takes to rise; 0 where it does not
	Until       string               // the condition, as written
	Earliest    float64              // s: the condition ends nothing before; 0 where that side is open
	Latest      float64              // s: what is waited for no longer; 0 where that side is open
	Missed      bool                 // of a gate, a look or the end of a piece: the forecast gives up waiting here
	Water       *model.Quantity      // to sprinkle, or to soak in where that is said; nil for all else
	Shares      []Portion            // what goes into each vessel, where a steep is shared out among several
	Each        []Weighing           // what each of several vessels weighs with its part of the drained grain
	With        string               // what a soak or a rest is with: air and lime; of a kiln the floor below, whose exhaust a step takes or to which the malt goes down
	Within      float64              // s: of deculming, the latest
	Moisture    float64              // wet basis, 0 to 1; NaN where no figure is to be had
	Weight      float64              // kg of the whole batch; NaN the same
	In          *model.Holder        // what the grain lay in until then, where the weight is known; nil where it lay in nothing
}

// List gives the tasks of a forecast in the order of time.
func List(f *forecast.Forecast) []Task {
	l := &lister{f: f, p: f.Process, weight: math.NaN(), moisture: math.NaN(), steps: stepsByPlace(f.Process)}
	if c := f.Process.Charge; c != nil {
		l.weight = c.SI
	}
	var before *model.Holder
	wet := f.OffWet() // nobody puts away what moulds
	for i, st := range f.Stages {
		if len(st.Steps) == 0 || wet && behindKiln[st.Kind] {
			continue
		}
		known := len(l.tasks)
		l.next = nil
		if i+1 < len(f.Stages) {
			l.next = &f.Stages[i+1]
		}
		l.before, l.of, l.moisture = l.of, st.Of, st.Steps[0].MoistureStart
		if list := listers[st.Kind]; list != nil {
			list(l, st)
		}
		l.weight = st.Steps[len(st.Steps)-1].WeightEnd
		l.layIn(l.tasks[known:], st.Steps[0].Start, before, model.HolderOf(st.Of))
		before = model.HolderOf(st.Of)
	}
	sorted.Stable(l.tasks, func(a, b Task) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(first[a.Kind], first[b.Kind]))
	})
	return l.tasks
}

// behindKiln are the stages that only malt goes through.
var behindKiln = map[model.StageKind]bool{model.DeculmStage: true, model.StoreStage: true}

// layIn notes what the grain lay in until each task of a stage: at its beginning that of
// the stage before.
func (l *lister) layIn(list []Task, begin float64, before, own *model.Holder) {
	for i := range list {
		switch t := &list[i]; {
		case math.IsNaN(t.Weight):
		case t.At > begin:
			t.In = own
		default:
			t.In = before
		}
	}
}

// first is what comes before all else that is due: the water off, then whether to go on.
var first = map[Kind]int{Drain: -3, Look: -2, Gate: -1}

// Growing keeps of the tasks those that no choice of the maltster can shift: the ends
// of soaks and rests, and the turns and sprinklings of the growing piece.
func Growing(list []Task) []Task {
	var out []Task
	for _, t := range list {
		if t.Ends != "" || t.Kind.Again() && t.Stage == model.GerminateStage {
			out = append(out, t)
		}
	}
	return out
}

var listers = map[model.StageKind]func(*lister, forecast.Stage){
	model.SteepStage: (*lister).steep, model.GerminateStage: (*lister).floor, model.WitherStage: (*lister).floor,
	model.KilnStage: (*lister).kiln, model.DeculmStage: (*lister).deculm, model.StoreStage: (*lister).store,
}

// lister writes tasks down.
type lister struct {
	f        *forecast.Forecast
	p        *model.Process
	steps    map[source.Place]model.Step
	of       model.Stage
	before   model.Stage     // the stage before it, nil for none
	next     *forecast.Stage // nil behind the last
	weight   float64         // kg at the beginning of the stage
	moisture float64         // the same, wet basis
	tasks    []Task
}

func (l *lister) add(t Task) { l.tasks = append(l.tasks, t) }

// at makes a task at which no figure is known.
func at(when float64, kind Kind, stage model.StageKind, place source.Place) Task {
	return Task{At: when, Kind: kind, Stage: stage, Place: place, Moisture: math.NaN(), Weight: math.NaN()}
}

// ending makes a task at the end of a step, with what the scale shows then.
func ending(s *forecast.Step, kind Kind, stage model.StageKind) Task {
	t := at(s.End, kind, stage, s.Place)
	t.Name, t.Moisture, t.Weight = s.Label, s.MoistureEnd, s.WeightEnd
	return t
}

// beginning makes a task at the beginning of the stage, with what the scale shows then.
func (l *lister) beginning(s *forecast.Step, kind Kind, stage model.StageKind) Task {
	t := at(s.Start, kind, stage, s.Place)
	t.Name, t.Moisture, t.Weight, t.Temperature = s.Label, l.moisture, l.weight, s.Temperature
	return t
}

// stepsByPlace finds the statement of a step of the forecast by where it stands.
func stepsByPlace(p *model.Process) map[source.Place]model.Step {
	found := map[source.Place]model.Step{}
	for _, st := range p.Stages {
		for _, s := range model.EveryStep(model.StepsOf(st)) {
			found[s.Place()] = s
		}
	}
	return found
}

// ends notes on the task at the beginning of something what it waits for, and within which times.
func (t *Task) ends(by model.Ending) {
	t.Until = text(by.Until)
	if by.Until == nil || by.Allow == nil {
		return
	}
	if q := by.Allow.Earliest; q != nil {
		t.Earliest = q.SI
	}
	if q := by.Allow.Latest; q != nil {
		t.Latest = q.SI
	}
}

// endsWith is ends of a step; nil is no step.
func (t *Task) endsWith(s model.Step) {
	if s != nil {
		t.ends(s.Ends())
	}
}

// took is how long a step of the forecast takes whose statement says a time: of a batch under way
// it may have been changed. 0 where it is open.
func took(s *forecast.Step, of model.Step) float64 {
	said := lasts(of)
	if run := s.End - s.Start; said > 0 && s.EndedBy == forecast.ByTime && math.Abs(run-said) > together {
		return run
	}
	return said
}

// lasts is how long a step takes by its own statement; 0 where it is open.
func lasts(s model.Step) float64 {
	switch {
	case s == nil:
		return 0
	case s.Ends().For != nil:
		return s.Ends().For.SI
	case s.Warmth().Over != nil && s.Ends().Until == nil:
		return s.Warmth().Over.SI
	}
	return 0
}

// gates lists the gates of a stage that were open when they were come to; one that
// is waited for is a step of the forecast.
func (l *lister) gates(st forecast.Stage) {
	for _, g := range l.f.Gates {
		if g.Of != st.Of || !g.Hold || !g.Met || g.Waited > 0 {
			continue
		}
		t := at(g.Reached, Gate, st.Kind, g.Place)
		t.Until, t.Moisture = g.Text, g.Moisture
		for _, s := range st.Steps {
			if s.End <= g.Reached {
				t.Weight = s.WeightEnd
			}
		}
		l.add(t)
	}
}

// waited lists the begin and the end of a wait at a gate.
func (l *lister) waited(stage model.StageKind, s *forecast.Step, before float64) {
	until := ""
	if gate, ok := l.steps[s.Place].(*model.Gate); ok && gate.Asks != nil {
		until = gate.Asks.Place.Text()
	}
	asked := slices.ContainsFunc(l.tasks, func(t Task) bool { return t.Kind == Look && t.At == s.Start && t.Until == until })
	if !asked { // the step before may have looked for the same
		look := at(s.Start, Look, stage, s.Place)
		look.Until, look.Moisture, look.Weight = until, s.MoistureStart, before
		l.add(look)
	}
	t := ending(s, Gate, stage)
	t.Until, t.Missed = until, s.EndedBy != forecast.ByGate
	l.add(t)
}
