package visits

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

const (
	hour = 3600.0
	day  = 24 * hour
)

// byMachine is the interval below which work on the floor is done by a machine, and
// stirByMachine the same on the kiln, by which somebody stands while it heats, s
// (common practice).
const (
	byMachine     = hour
	stirByMachine = hour / 4
)

// lookFloor and lookKiln are from one look to the next, where nothing is turned, s
// (common practice).
const (
	lookFloor = 12 * hour
	lookKiln  = 2 * hour
)

// floor lists the work at a growing or a withering piece.
func (l *lister) floor(st forecast.Stage) {
	stage := st.Of
	piece := model.PieceOf(stage)
	begin, last := &st.Steps[0], &st.Steps[len(st.Steps)-1]
	t := l.beginning(begin, Spread, st.Kind)
	if piece.Floor != nil {
		t.Where = piece.Floor.Name
	}
	if l.stays(piece) {
		t.Kind, t.Where = Change, ""
	}
	if t.ends(piece.Ending); piece.Until == nil {
		t.endsWith(l.steps[begin.Place])
	}
	l.add(t)
	worked := l.turns(stage, begin.Start, last.End)
	if piece.Turn == nil {
		worked = nil
	}
	l.looks(st.Kind, piece.Until, piece.Allow, begin.Start, grown(st).End, lookFloor, worked)
	before := l.weight
	for i := range st.Steps {
		s := &st.Steps[i]
		l.hold(st, i, before)
		before = s.WeightEnd
	}
	l.gates(st)
	t = ending(last, EndFloor, st.Kind)
	if last.Kind != model.GateStep {
		t.Until, t.Missed = text(piece.Until), l.missed(piece.Until)
	}
	l.add(t)
}

// grown is the step with which a stage is at its end, but for the gates behind it.
func grown(st forecast.Stage) *forecast.Step {
	i := len(st.Steps) - 1
	for i > 0 && st.Steps[i].Kind == model.GateStep {
		i--
	}
	return &st.Steps[i]
}

// hold lists the change to a hold but the first, and the looks at its own end.
func (l *lister) hold(st forecast.Stage, i int, before float64) {
	s := &st.Steps[i]
	if s.Kind == model.GateStep {
		l.waited(st.Kind, s, before)
		return
	}
	step := l.steps[s.Place]
	if i > 0 {
		t := at(s.Start, Change, st.Kind, s.Place)
		t.Name, t.Temperature, t.Lasts, t.Moisture, t.Weight = s.Label, s.Temperature, took(s, step), s.MoistureStart, before
		t.endsWith(step)
		l.add(t)
	}
	if step != nil {
		l.looks(st.Kind, step.Ends().Until, step.Ends().Allow, s.Start, s.End, lookFloor, nil)
		l.guarded(st.Kind, step.Ends().Until, s)
	}
}

// turns lists the turns and the sprinklings of a piece, and gives the times of the
// turns. What is done more often than hourly is done by a machine.
func (l *lister) turns(st model.Stage, from, to float64) (turned []float64) {
	piece := model.PieceOf(st)
	if often := piece.Turn; often != nil && piece.Turner.Text == "" {
		turned = l.turnTimes(piece, l.turnedLast(from, to), to)
		for i, when := range turned {
			t := at(when, Turn, st.Kind(), often.Place)
			t.Wall = l.wall(piece, when, i)
			l.add(t)
		}
	}
	if g, ok := st.(*model.Germination); ok && g.Sprinkle != nil {
		s := g.Sprinkle
		for _, given := range l.sprinkled(s, from, to) {
			t := at(given.At, Sprinkle, st.Kind(), s.Place())
			if s.Every != nil {
				t.Place = s.Every.Place
			}
			t.Water = water(s, given)
			l.add(t)
		}
	}
	return turned
}

// turnedLast is when a batch under way was last turned on a floor, or came onto it.
func (l *lister) turnedLast(from, to float64) float64 {
	for _, when := range l.f.Turned {
		if when > from && when < to {
			from = when
		}
	}
	return from
}

// every lists even intervals of at least so long.
func every(interval, least, from, to float64) []float64 {
	var list []float64
	for when := from + interval; interval >= least && when < to; when += interval {
		list = append(list, when)
	}
	return list
}

// looks lists when somebody looks whether a condition holds: from the earliest time
// at which it may end the step, at each turn, or else at even intervals. Before the
// time at which it is expected to hold, a look may wait.
func (l *lister) looks(stage model.StageKind, until *model.Condition, allow *model.Guard, from, to, interval float64, turned []float64) {
	if until == nil {
		return
	}
	earliest := from
	if allow != nil && allow.Earliest != nil {
		earliest += allow.Earliest.SI
	}
	when := turned
	if len(turned) == 0 {
		when = every(interval, interval, earliest, to)
		if earliest > from {
			when = append([]float64{earliest}, when...)
		}
	}
	for _, w := range when {
		if w < earliest || w >= to {
			continue
		}
		t := at(w, Look, stage, until.Place)
		t.Until, t.Waits = until.Place.Text(), to-w
		l.add(t)
	}
}

// guarded lists the look at the end of a step whose guard comes before its condition.
func (l *lister) guarded(stage model.StageKind, until *model.Condition, s *forecast.Step) {
	if s.EndedBy != forecast.ByGuard || !l.missed(until) {
		return
	}
	t := ending(s, Look, stage)
	t.Until, t.Missed = text(until), true
	l.add(t)
}

// missed tells whether a condition that ends a step or a stage did not hold in time.
func (l *lister) missed(until *model.Condition) bool {
	return until != nil && slices.ContainsFunc(l.f.Gates, func(g forecast.Gate) bool {
		return g.Place == until.Place && !g.Hold && !g.Met && !g.Unjudged
	})
}

func text(c *model.Condition) string {
	if c == nil {
		return ""
	}
	return c.Place.Text()
}

// water is what is sprinkled, as it is written, or in litres for the whole piece.
func water(s *model.Sprinkle, given forecast.Sprinkling) *model.Quantity {
	if s.Water != nil && s.Water.Dimension != quantity.Dose {
		return s.Water
	}
	litres, err := quantity.In(given.Water/1000, "l")
	if err != nil {
		return nil
	}
	return &model.Quantity{Quantity: litres, Place: s.Place()}
}

// sprinkled lists when a piece was sprinkled by the forecast, unless a machine does it.
func (l *lister) sprinkled(s *model.Sprinkle, from, to float64) []forecast.Sprinkling {
	if s.Every != nil && s.Every.SI < byMachine {
		return nil
	}
	var list []forecast.Sprinkling
	for _, w := range l.f.Sprinkled {
		if w.At > from && w.At < to {
			list = append(list, w)
		}
	}
	return list
}
