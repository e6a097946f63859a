package evidence

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

const minute = 60.0 // s; a record has no seconds

// What a record of a batch with several kilns in a row tells of which it is on.

// byKiln writes down that the kilns before the one that a reading is of are over by then, and
// gives the number of that one: the next at or behind the kiln that is known so far.
// The air of a still oven is in no other kiln, and what stood on the scale says where the
// malt lay. What fits no kiln tells nothing.
func (t *Trial) byKiln(x model.Reading, known int, at float64) int {
	kilns := model.Every[*model.Kilning](t.Process)
	if len(kilns) < 2 {
		return known
	}
	if after := model.After(x); after != nil {
		return max(known, t.Process.KilnOf(after.Kind.Text, after.Number))
	}
	fits := kilnShown(x)
	if fits == nil {
		return known
	}
	for i, st := range kilns {
		if i+1 < known || !fits(st.Kiln) {
			continue
		}
		if i > 0 {
			t.by(model.KilnStage, i, at)
		}
		return i + 1
	}
	return known
}

// kilnShown tells which kilns a reading can be of, nil where it tells none from another.
func kilnShown(x model.Reading) func(*model.Kiln) bool {
	if liesInKiln(x) {
		in := x.(*model.Weighed).In
		return func(k *model.Kiln) bool { return k != nil && k.Place == in.Place }
	}
	th := model.Thermometer(x)
	if th == nil || th.Where != vocabulary.PlaceOven && !slices.Contains(aroundBed, th.Where) {
		return nil
	}
	return func(k *model.Kiln) bool { return forecast.Still(k) == (th.Where == vocabulary.PlaceOven) }
}

// liesInKiln tells whether the batch was weighed in a kiln, or in the trays of one.
func liesInKiln(x model.Reading) bool {
	w, ok := x.(*model.Weighed)
	return ok && w.In != nil && w.In.Kind == string(model.KilnStage)
}

// stillOn tells whether a later line says outright that a step of a kiln ended that an end
// takes to be behind.
func (t *Trial) stillOn(x forecast.Ended) bool {
	return x.Kind == string(model.KilnStage) && slices.ContainsFunc(t.course.Ends, func(e forecast.Ended) bool {
		of := t.Process.KilnOf(e.Kind, e.Number)
		return e.Exact && e.At >= x.At && of > 0 && of <= x.Number
	})
}
