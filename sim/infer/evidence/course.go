package evidence

import (
	"cmp"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// since is a time of the record in seconds from the first soak.
func (t *Trial) since(at model.Instant) float64 { return at.Sub(t.Batch.Began.Time).Seconds() }

// counts tells whether a reading has a time, and that it is not yet to come.
func (t *Trial) counts(x *model.Reading) bool {
	return !x.At.IsZero() && (t.Now == 0 || t.since(x.At) <= t.Now)
}

// takeCourse takes from the record when steps ended, when the piece was turned, and
// what was changed.
func (t *Trial) takeCourse() {
	c := &t.course
	c.Changes, c.Open = t.Batch.Changes, t.Now
	for i := range t.Batch.Readings {
		x := &t.Batch.Readings[i]
		if !t.counts(x) {
			continue
		}
		at := t.since(x.At)
		if x.Kind == model.Turned {
			c.Turns = append(c.Turns, at)
		}
		if shows(x) >= vocabulary.Growing && !t.ended(string(model.Steep), 0, false) {
			c.Ends = append(c.Ends, forecast.Ended{Kind: string(model.Steep), At: at})
		}
		if shows(x) >= vocabulary.Drying {
			t.by(model.Germinate, at)
			t.by(model.Wither, at)
		}
		switch {
		case x.After != nil && !t.ended(x.After.Kind.Text, x.After.Number, true): // what is weighed once more ended before
			c.Ends = append(c.Ends, forecast.Ended{Kind: x.After.Kind.Text, Number: x.After.Number, At: at, Exact: true})
		case x.Clean && !t.ended(string(model.Deculm), 0, true):
			c.Ends = append(c.Ends, forecast.Ended{Kind: string(model.Deculm), At: at, Exact: true})
		}
	}
	c.Ends = slices.DeleteFunc(c.Ends, t.outranked)
	slices.SortStableFunc(c.Ends, func(a, b forecast.Ended) int { return cmp.Compare(a.At, b.At) })
}

// outranked tells of an end that only follows from a reading, where a later line says
// outright that the stage was still under way.
func (t *Trial) outranked(x forecast.Ended) bool {
	return !x.Exact && slices.ContainsFunc(t.course.Ends, func(e forecast.Ended) bool {
		of := e.Kind == x.Kind || x.Kind == string(model.Steep) && (e.Kind == string(model.Soak) || e.Kind == string(model.Rest))
		return e.Exact && of && e.At >= x.At
	})
}

// by writes down that a stage is over by a time, where nothing yet says so.
func (t *Trial) by(kind model.StageKind, at float64) {
	if t.Process.Stage(kind) != nil && !t.ended(string(kind), 0, false) {
		t.course.Ends = append(t.course.Ends, forecast.Ended{Kind: string(kind), At: at})
	}
}

func (t *Trial) ended(kind string, number int, exactly bool) bool {
	return slices.ContainsFunc(t.course.Ends, func(e forecast.Ended) bool {
		return e.Kind == kind && e.Number == number && (e.Exact || !exactly)
	})
}

// Asked is the moisture to which a step of the record was to dry.
func (t *Trial) Asked(name *model.StepName) (float64, bool) {
	n := 0
	for _, st := range t.Process.Stages {
		if string(st.Kind) == name.Kind.Text {
			return forecast.Dryness(st.Until)
		}
		for k, s := range st.Steps {
			if string(s.Kind) != name.Kind.Text {
				continue
			}
			if n++; name.Number != 0 && n != name.Number {
				continue
			}
			if w, ok := forecast.Dryness(s.Until); ok {
				return w, true
			}
			if k+1 < len(st.Steps) { // the gate behind it asks instead
				return forecast.Dryness(st.Steps[k+1].Gate)
			}
		}
	}
	return 0, false
}

// shows tells how far the batch had come, by what was read.
func shows(x *model.Reading) vocabulary.Phase {
	switch {
	case x.After != nil:
		return vocabulary.PhaseAfter(x.After.Kind.Text)
	case x.Clean:
		return vocabulary.Drying
	case x.Kind == model.Felt, x.Kind == model.Turned, x.Counted.Text == vocabulary.MeasureAcrospire:
		return vocabulary.Growing
	case x.Temperature != nil:
		return vocabulary.PhaseAt(x.Temperature.Where)
	}
	return vocabulary.Anywhere
}
