package serve

import (
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// offersOf is what the forms of a batch offer, the likely first, by where it stands.
func offersOf(v seen) offers {
	b, p, h := v.opened.Batch, v.opened.Process, v.opened.Words
	o := offers{Batch: v.brief.ID, Once: once(), Degree: h.Degree(), Sampled: b.Sample != nil, Bag: b.RawBag() != nil}
	if p == nil {
		return o
	}
	kg := 1.0
	if p.Charge != nil {
		kg = p.Charge.SI
	}
	o.Unit = unitIn(words.Weighed(h, kg))
	if o.Unit == "lb" && h.Ounces { // a charge of 10 lb comes out even
		o.Unit = "lb oz"
	}
	stage := ""
	if v.on != nil {
		stage = v.on.Now.Stage
		if len(v.on.Due) > 0 {
			o.Expected = v.on.Due[0].Expected
		}
	}
	endedIn := ""
	if f := v.ahead.Forecast; f != nil {
		o.After = stepsOf(f)
		o.Ended, endedIn = likelyEnded(v, f)
		o.Steps = o.After
		o.After = likelyFirst(o.After, o.Ended)
	}
	for _, holder := range p.Holders() {
		o.In = append(o.In, holder.Name)
	}
	if o.Ended == "" {
		endedIn = stage
	}
	holder := holderAt(p, endedIn)
	o.Alone, o.In = !slices.Contains(o.In, holder), likelyFirst(o.In, holder)
	o.Places = likelyFirst(slices.Clone(places), likelyPlace[model.StageKind(stage)])
	o.Clean = stage == string(model.KilnStage) || stage == string(model.DeculmStage) || stage == string(model.StoreStage) || v.on == nil
	o.Likely = likelyKind(v)
	return o
}

// unitIn is the unit, or the two, of a weight as it is written: kg of 8.33 kg, lb oz of 12 lb 4 oz.
func unitIn(weight string) string {
	var units []string
	for _, word := range strings.Fields(weight) {
		if strings.Trim(word, "0123456789.") != "" {
			units = append(units, word)
		}
	}
	return strings.Join(units, " ")
}

// places are where a thermometer of a batch may stand.
var places = []string{vocabulary.PlaceWater, vocabulary.PlaceBed, vocabulary.PlaceRoom, vocabulary.PlaceAirOn, vocabulary.PlaceAirOff, vocabulary.PlaceMalt, vocabulary.PlaceOven}

var likelyPlace = map[model.StageKind]string{model.SteepStage: vocabulary.PlaceWater, model.GerminateStage: vocabulary.PlaceBed, model.WitherStage: vocabulary.PlaceRoom, model.KilnStage: vocabulary.PlaceAirOff}

// likelyFirst puts one of a list in front of it, where it is in it.
func likelyFirst(list []string, likely string) []string {
	i := slices.Index(list, likely)
	if i < 0 {
		return list
	}
	return slices.Concat(list[i:i+1], list[:i], list[i+1:])
}

// stepsOf names the steps of a forecast as a record does, in their order.
func stepsOf(f *forecast.Forecast) (list []string) {
	for _, st := range outlook.Of(f, time.Time{}).Stages {
		for _, s := range st.Steps {
			if name := recordName(st, s); name != "" {
				list = append(list, name)
			}
		}
	}
	return list
}

// recordName is the name of a step in a record, "" of one that a record cannot name.
func recordName(st outlook.Stage, s outlook.Step) string {
	switch {
	case s.Label == forecast.Waiting || s.Label == vocabulary.VerbStore:
		return ""
	case s.Label == st.Stage:
		return st.Called()
	}
	return s.Label
}

// near is how long before or after its end a step is taken for the one that was just weighed, s.
const near = 3 * 3600

// likelyEnded is the step that ends about now and was not weighed yet, and the stage of it; "" where none does.
func likelyEnded(v seen, f *forecast.Forecast) (name, stage string) {
	weighed := map[string]bool{}
	for _, x := range v.opened.Batch.Readings {
		if after := model.After(x); after != nil {
			weighed[words.OneLine(after.Place.Text())] = true
		}
	}
	elapsed, best := v.now.Sub(v.opened.Batch.Began.Time).Seconds(), float64(near)
	for _, st := range outlook.Of(f, time.Time{}).Stages {
		for _, s := range st.Steps {
			called := recordName(st, s)
			if off := math.Abs(float64(s.End) - elapsed); called != "" && s.Kind != string(model.RestStep) && off < best && !weighed["after "+called] && !weighed[called] {
				name, stage, best = called, st.Stage, off
			}
		}
	}
	return name, stage
}

// holderAt is what the grain lies in at a stage, "" where that is not known.
func holderAt(p *model.Process, stage string) string {
	for _, st := range p.Stages {
		if string(st.Kind()) == stage {
			if h := model.HolderOf(st); h != nil {
				return h.Name
			}
		}
	}
	return ""
}

// likelyKind is the kind of reading that is due.
func likelyKind(v seen) string {
	if v.on == nil || len(v.on.Due) == 0 {
		return ""
	}
	return kindDue[visits.Kind(v.on.Due[0].Kind)]
}

var kindDue = map[visits.Kind]string{visits.Drain: kindWeighed, visits.Gate: kindWeighed, visits.Unload: kindWeighed, visits.EndFloor: kindWeighed, visits.Put: kindWeighed, visits.Deculm: kindWeighed,
	visits.Turn: kindTurned, visits.Look: kindAcrospire, visits.Stir: kindHeat, visits.Heat: kindWeighed, visits.Fill: kindHeat, visits.EndRest: kindHeat, visits.Load: kindWeighed, visits.Cool: kindWeighed, visits.Change: kindHeat}
