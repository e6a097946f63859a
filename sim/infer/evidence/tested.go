package evidence

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// How exact a tested moisture is, as a share of the whole weight (common practice).
const (
	labError    = 0.004 // of finished malt: the oven, and what the malt took up on its way there
	sampleError = 0.015 // of malt that still dries, or of green malt: no handful is the whole bed
)

// lines are the readings and the tested moistures that a forecast has something for, in the
// order of the clock. Colour, enzymes and all else that a laboratory finds are none: the
// forecast of colour and enzymes ranks schedules and is not calibrated, and it has nothing
// for the rest.
func (t *Trial) lines() []model.Reading {
	var out []model.Reading
	tests := t.moistures()
	for _, x := range t.Batch.Readings {
		for len(tests) > 0 && !x.When().IsZero() && tests[0].When().Before(x.When().Time) {
			out, tests = append(out, tests[0]), tests[1:]
		}
		out = append(out, x)
	}
	for _, x := range tests {
		out = append(out, x)
	}
	return out
}

func (t *Trial) moistures() (list []*model.Tested) {
	for i := range t.Batch.Tested {
		if x := &t.Batch.Tested[i]; x.What.Text == vocabulary.AnalysisMoisture && !x.When().IsZero() {
			list = append(list, x)
		}
	}
	return list
}

// tested makes the observation of a tested moisture: of the malt as it came from the kiln
// and its rootlets, where that was over by then, and else of the batch at that time.
func (t *Trial) tested(o Observation, x *model.Tested) Observation {
	o.Value = x.Found.SI
	o.expects = func(s *forecast.Sight) float64 { return s.Moisture }
	if o.at = t.finishedBy(x); o.at != nil {
		o.Error = labError
	} else {
		o.Error = math.Hypot(labError, sampleError)
	}
	return o
}

// leftAlone is how long nothing must be written of a batch, s, until a test is taken to be of
// its finished malt though no line says that the kiln is done.
const leftAlone = 3 * 24 * hour

// finishedBy gives the last step that dries or cleans the malt, where the record has it over
// by the time of a test, or says nothing more for days; else nil.
func (t *Trial) finishedBy(x *model.Tested) *model.StepName {
	last := t.lastDrying()
	if last == nil {
		return nil
	}
	over, later, silent := false, false, math.Inf(1)
	for _, y := range t.Batch.Readings {
		before := x.When().Sub(y.When().Time).Seconds()
		if before >= 0 {
			silent = min(silent, before)
		}
		switch {
		case y.When().IsZero():
		case before < 0:
			later = true
		case model.Clean(y), model.After(y) != nil && dried[model.After(y).Kind.Text]:
			over = true
		}
	}
	if over || silent > leftAlone && !later {
		return last
	}
	return nil
}

// dried are the steps behind which malt is as dry as it gets: cooling takes some tenths of a
// point from cured malt, which the error covers.
var dried = map[string]bool{string(model.CureStep): true, string(model.RoastStep): true, string(model.CoolStep): true, string(model.DeculmStage): true}

// lastDrying names the last stage that dries or cleans, nil where the process has none.
func (t *Trial) lastDrying() *model.StepName {
	for _, kind := range []model.StageKind{model.DeculmStage, model.KilnStage} {
		if n := t.Process.Count(kind); n > 0 {
			return &model.StepName{Kind: model.Word{Text: string(kind)}, Number: n}
		}
	}
	return nil
}
