package evidence

import (
	"cmp"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// since is a time of the record in seconds from the first soak.
func (t *Trial) since(at model.Instant) float64 { return at.Sub(t.Batch.Began.Time).Seconds() }

// counts tells whether a reading has a time, and that it is not yet to come.
func (t *Trial) counts(x model.Reading) bool {
	return !x.When().IsZero() && (t.Now == 0 || t.since(x.When()) <= t.Now)
}

// takeCourse takes from the record when steps ended, when the piece was turned, and
// what was changed.
func (t *Trial) takeCourse() {
	c := &t.course
	c.Changes, c.Open = t.Batch.Changes, t.Now
	kiln := 0 // that the malt is known to have come to
	for _, x := range t.Batch.Readings {
		if !t.counts(x) {
			continue
		}
		at := t.since(x.When())
		if model.Is[*model.Turned](x) {
			c.Turns = append(c.Turns, at)
		}
		if t.shows(x) >= vocabulary.Growing {
			t.by(model.SteepStage, 1, at)
		}
		if t.shows(x) >= vocabulary.Drying {
			switch {
			case model.Thermometer(x) != nil:
				at = t.warming(x)
			case liesInKiln(x): // it was laid there first
				at = max(0, at-minute)
			}
			t.by(model.SteepStage, t.Process.Count(model.SteepStage), at)
			t.by(model.GerminateStage, t.Process.Count(model.GerminateStage), at)
			t.by(model.WitherStage, t.Process.Count(model.WitherStage), at)
			kiln = t.byKiln(x, kiln, at)
		}
		switch after := model.After(x); {
		case after != nil && !t.ended(after.Kind.Text, after.Number, true): // what is weighed once more ended before
			c.Ends = append(c.Ends, forecast.Ended{Kind: after.Kind.Text, Number: after.Number, At: at, Exact: true})
		case model.Clean(x) && !t.ended(string(model.DeculmStage), 0, true):
			c.Ends = append(c.Ends, forecast.Ended{Kind: string(model.DeculmStage), At: at, Exact: true})
		}
	}
	t.takeHeat()
	c.Ends = slices.DeleteFunc(c.Ends, t.outranked)
	sorted.Stable(c.Ends, func(a, b forecast.Ended) int { return cmp.Compare(a.At, b.At) })
}

// outranked tells of an end that only follows from a reading, where a later line says
// outright that the stage was still under way.
func (t *Trial) outranked(x forecast.Ended) bool {
	return !x.Exact && !x.Begun && (t.stillOn(x) || slices.ContainsFunc(t.course.Ends, func(e forecast.Ended) bool {
		wet := e.Kind == string(model.SoakStep) || e.Kind == string(model.RestStep)
		of := e.Kind == x.Kind && (x.Number == 0 || e.Number == 0 || e.Number == x.Number) || x.Kind == string(model.SteepStage) && wet && x.Number == 0
		return e.Exact && of && e.At >= x.At
	}))
}

// by writes down that the stage of a number among those of its kind is over by a time,
// where nothing yet says so. The only one of its kind needs no number.
func (t *Trial) by(kind model.StageKind, number int, at float64) {
	switch t.Process.Count(kind) {
	case 0:
		return
	case 1:
		number = 0
	}
	if !t.ended(string(kind), number, false) {
		t.course.Ends = append(t.course.Ends, forecast.Ended{Kind: string(kind), Number: number, At: at})
	}
}

func (t *Trial) ended(kind string, number int, exactly bool) bool {
	return slices.ContainsFunc(t.course.Ends, func(e forecast.Ended) bool {
		return e.Kind == kind && e.Number == number && (e.Exact || !exactly)
	})
}

// Asked is the moisture to which a step of the record was to dry.
func (t *Trial) Asked(name *model.StepName) (float64, bool) {
	n, stages := 0, 0
	for _, st := range t.Process.Stages {
		if string(st.Kind()) == name.Kind.Text {
			if stages++; stages >= name.Number {
				return forecast.Dryness(st.Ends().Until)
			}
			continue
		}
		for k, s := range model.StepsOf(st) {
			if string(s.Kind()) != name.Kind.Text {
				continue
			}
			if n++; name.Number != 0 && n != name.Number {
				continue
			}
			if w, ok := forecast.Dryness(s.Ends().Until); ok {
				return w, true
			}
			if k+1 < len(model.StepsOf(st)) { // the gate behind it asks instead
				return forecast.Dryness(model.Asked(model.StepsOf(st)[k+1]))
			}
		}
	}
	return 0, false
}

// aroundBed are the places of the kiln that a bed with air blown through it has too.
var aroundBed = []string{vocabulary.PlaceAirOn, vocabulary.PlaceAirOff}

// hotterThanGrows, °C: air that is hotter than that is of a kiln, whatever else has air too.
const hotterThanGrows = 35.0

// shows tells how far the batch had come, by what was read.
func (t *Trial) shows(x model.Reading) vocabulary.Phase {
	switch {
	case model.After(x) != nil:
		return vocabulary.PhaseAfter(model.After(x).Kind.Text)
	case model.Clean(x), liesInKiln(x):
		return vocabulary.Drying
	case model.Is[*model.Felt](x), model.Is[*model.Turned](x), model.CountOf(x, model.Acrospire) != nil:
		return vocabulary.Growing
	case model.Thermometer(x) != nil && t.Process.BlownBed() && slices.Contains(aroundBed, model.Thermometer(x).Where) && model.Thermometer(x).Mid()-zeroC < hotterThanGrows:
		return vocabulary.Growing // or of the kiln
	case model.Thermometer(x) != nil:
		return vocabulary.PhaseAt(model.Thermometer(x).Where)
	}
	return vocabulary.Anywhere
}
