package progress

import (
	"cmp"
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/seasons"
)

// Condition is a condition of the process that what waits for it has come past, and what the forecast and the record
// have of it then.
type Condition struct {
	outlook.StageName
	Step     string // the step that it ends, as a record names it
	Hold     bool   // a gate statement; otherwise an until
	Text     string // as written
	Time     time.Time
	Noted    bool             // the record says that it was left then; otherwise the forecast does
	Came     bool             // by the forecast
	Unjudged bool             // it asks what is not forecast
	Failed   []outlook.Failed // what did not hold by the forecast
	Read     []LastRead       // of what it asks, as far as the record says
}

// LastRead is the last that was read of what a condition asks, before it was left.
type LastRead struct {
	Measure string
	Text    string // as written
	At      time.Time
	Value   *outlook.Amount // in the unit of the condition
	Word    string
	Holds   bool
	Close   bool // it misses by no more than the standard deviation of such a reading
	Weighed bool // a moisture that a weight leaves beside the dry matter of the forecast
	Doubted bool
}

// Awaits names what waits for the condition.
func (a *Condition) Awaits() string { return outlook.Awaits(a.StageName, a.Step, a.Hold) }

// Otherwise tells whether it was left before it held, by the readings or by the forecast.
func (a *Condition) Otherwise() bool { return !a.Came || a.Denied() != nil }

// Denied is a reading by which it did not hold when it was left, nil where there is none. One in doubt denies
// nothing, nor does one that misses by less than its error; and where the record does not say when it was left, that
// was when it held.
func (a *Condition) Denied() *LastRead {
	i := slices.IndexFunc(a.Read, func(r LastRead) bool { return !r.Holds && !r.Close && !r.Doubted })
	if i < 0 || !a.Noted {
		return nil
	}
	return &a.Read[i]
}

// ConditionsOf are the conditions that a batch has come past, in the order in which it did.
func ConditionsOf(f *follow.Following) (list []Condition) {
	m := f.Middle()
	told := outlook.AskedOf(m)
	type one struct {
		at float64
		Condition
	}
	var all []one
	take := func(at float64, a Condition, of model.Stage, c *model.Condition) {
		if at > f.Now+minute {
			return
		}
		a.Noted = leftByRecord(m, at)
		a.Time = outlook.ClockAt(f.Trial.Batch.Began.Time, answer.Seconds(at))
		if c != nil {
			a.Read = lastReads(f, of, c, at)
		}
		all = append(all, one{at, a})
	}
	for i, g := range m.Gates {
		t := told.Gates[i]
		a := Condition{StageName: t.StageName, Step: t.Step, Hold: t.Hold, Text: oneLine(t.Text), Came: t.Met, Unjudged: t.Unjudged}
		if !t.Met && t.Measured != nil {
			a.Failed = []outlook.Failed{{Measure: t.Measure, Came: t.Measured}}
		}
		take(g.Ended, a, g.Of, outlook.ConditionAt(g.Of, g.Place))
	}
	for i, l := range m.Left {
		t := told.Left[i]
		take(l.At, Condition{StageName: t.StageName, Step: t.Step, Hold: t.Hold, Text: oneLine(t.Text), Came: len(t.Failed) == 0, Failed: t.Failed}, l.Of, outlook.ConditionAt(l.Of, l.Place))
	}
	sorted.Stable(all, func(a, b one) int { return cmp.Compare(a.at, b.at) })
	for _, x := range all {
		list = append(list, x.Condition)
	}
	return list
}

const minute = 60.0

// leftByRecord tells whether the record says that a step ended at that time.
func leftByRecord(m *forecast.Forecast, at float64) bool {
	return slices.ContainsFunc(m.Stages, func(st forecast.Stage) bool {
		return slices.ContainsFunc(st.Steps, func(s forecast.Step) bool {
			return s.EndedBy == forecast.ByRecord && math.Abs(s.End-at) < minute
		})
	})
}

// lastReads are the last readings of what a condition asks, in the stage and before it was left.
func lastReads(f *follow.Following, of model.Stage, c *model.Condition, left float64) (list []LastRead) {
	began, doubted := 0.0, map[int]bool{}
	for _, st := range f.Centre.Stages {
		if st.Of == of && len(st.Steps) > 0 {
			began = st.Steps[0].Start
		}
	}
	for _, d := range f.Doubts {
		doubted[d.Observation] = true
	}
	for k := range c.Tests {
		t := &c.Tests[k]
		for i := len(f.Judged) - 1; i >= 0; i-- {
			o := f.Judged[i].Observation
			if o.Reading.When().IsZero() {
				continue
			}
			at := o.Reading.When().Sub(f.Trial.Batch.Began.Time).Seconds()
			if at > left+minute || at < began-minute {
				continue
			}
			r, ok := readOf(t, f.Judged[i], f.Centre)
			if !ok {
				continue
			}
			r.Text, r.At, r.Doubted = words(o.Reading), o.Reading.When().Time, doubted[i] || o.Struck
			list = append(list, r)
			break
		}
	}
	return list
}

// readOf is a reading as what a test asks; false where it is of something else.
func readOf(t *model.Test, j follow.Judged, f *forecast.Forecast) (r LastRead, ok bool) {
	x, value := j.Observation.Reading, math.NaN()
	r.Measure = t.Measure
	switch t.Measure {
	case vocabulary.MeasureRub:
		if r.Word = model.Rub(x); r.Word == "" {
			return r, false
		}
		r.Holds = forecast.RubHolds(t.Word, r.Word)
		return r, true
	case vocabulary.MeasureAcrospire:
		value, ok = seasons.Middle(x)
	case vocabulary.MeasureChit:
		value, ok = j.Observation.Value, model.CountOf(x, model.Chit) != nil
	case vocabulary.MeasureWeight:
		value, ok = j.Observation.Value/j.Observation.Scale(), model.Is[*model.Weighed](x)
	case vocabulary.MeasureMoisture:
		if ok = model.Is[*model.Tested](x); ok {
			value = j.Observation.Value
			break
		}
		if s := j.Observation.Sight(f); model.Is[*model.Weighed](x) && s != nil {
			value, ok = MoistureByWeight(j.Observation.Value/j.Observation.Scale(), s)
			r.Weighed = true
		}
	default:
		if th := model.Thermometer(x); th != nil && th.Where == t.Measure {
			value, ok = j.Observation.Value+quantity.ZeroCelsius, true
		}
	}
	if !ok || t.Bound == nil {
		return r, false
	}
	r.Value, r.Holds = &outlook.Amount{SI: value, Like: t.Bound.Range.Low}, t.Bound.Holds(value)
	sd := j.Observation.Error
	if r.Weighed { // the error dry/weight²·σ of a weight of so much dry matter
		sd *= (1 - value) / j.Observation.Value
	}
	r.Close = t.Bound.Holds(value-sd) || t.Bound.Holds(value+sd)
	return r, true
}

// MoistureByWeight is the moisture of a weight, kg, beside the dry matter that the forecast has left,
// w = 1 − dry/weight; false where none is known, or the weight is less than that.
func MoistureByWeight(kg float64, s *forecast.Sight) (w float64, ok bool) {
	if s == nil || !(s.Dry > 0) || kg <= s.Dry {
		return 0, false
	}
	return 1 - s.Dry/kg, true
}
