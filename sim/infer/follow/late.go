package follow

import (
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// LateKind says what is late.
type LateKind string

// What can be late.
const (
	LateStep  LateKind = "step"  // what the step waits for has most likely come about
	LateGuard LateKind = "guard" // the latest time of its allow is over
	LateTurn  LateKind = "turn"  // by the last turn that is written down
	LateCool  LateKind = "cool"  // malt that was read hot when it was to be cool: Text is the reading
)

// Late is something that should have been done by now.
type Late struct {
	Kind  LateKind
	Stage model.StageKind
	Of    model.Stage // the stage
	Place source.Place
	Since float64 // s from the first soak
	Text  string  // the condition, as written
}

// turnGrace is how late a turn may be untold, s.
const turnGrace = 3600.0

// late lists what should have been done by now.
func (f *Following) late() []Late {
	var out []Late
	for _, w := range f.Waits {
		if w.Open && w.Left.P50 < -justNow {
			out = append(out, Late{LateStep, w.Stage, w.Of, w.Place, f.Now + w.Left.P50, w.Text})
		}
	}
	if h := f.hot(); h != nil {
		out = append(out, Late{LateCool, model.KilnStage, h.of, h.at, h.when, h.read.Temperature.Place.Text()})
	}
	at, st := f.Stand.Sight.Stage, f.Stand.Sight.Of
	if st == nil {
		return out
	}
	began := f.stageBegan(st)
	if allow := st.Ends().Allow; allow != nil && allow.Latest != nil && f.Now > began+allow.Latest.SI {
		out = append(out, Late{LateGuard, at, st, allow.Place, began + allow.Latest.SI, allow.Place.Text()})
	}
	if piece := model.PieceOf(st); piece != nil && piece.Turn != nil && piece.Turner.Text == "" && len(f.Centre.Turned) > 0 {
		last := began
		for _, t := range f.Centre.Turned {
			last = max(last, t)
		}
		if due := forecast.NextTurn(piece, f.Trial.Batch.Began.Time, last); f.Now > due+turnGrace {
			out = append(out, Late{LateTurn, at, st, piece.Turn.Place, due, piece.Turn.Place.Text()})
		}
	}
	return out
}

func (f *Following) stageBegan(of model.Stage) float64 {
	for _, st := range f.Centre.Stages {
		if st.Of == of && len(st.Steps) > 0 {
			return st.Steps[0].Start
		}
	}
	return f.Now
}
