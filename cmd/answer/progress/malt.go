package progress

import (
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

// MaltWeighed is the clean malt of a batch that is over, as it was weighed, and where eight in ten of the moistures
// lie that the weight leaves beside the dry matter of the forecasts that agree with the readings, the error of the
// scale with it.
type MaltWeighed struct {
	At        time.Time
	Weight    answer.Kilograms
	Low, High answer.Share // wet basis
}

// tenth is how many standard deviations of a normal spread lie from its middle to its tenth.
const tenth = 1.2816

// MaltWeighedOf is that of a batch that was followed to its end; nil where its malt was not weighed last.
func MaltWeighedOf(f *follow.Following) *MaltWeighed {
	lost := f.Stand.Lost
	if !f.Over() || lost.Share < half {
		return nil
	}
	for i := len(f.Judged) - 1; i >= 0; i-- {
		o := f.Judged[i].Observation
		if !model.Clean(o.Reading) || o.Struck {
			continue
		}
		kg, sd := o.Value/o.Scale(), o.Error/o.Scale()
		moist := func(lost float64) float64 { return 1 - f.Centre.DryMass*(1-lost)/kg }
		by := tenth * (1 - moist(lost.P50)) * sd / kg
		mid := moist(lost.P50)
		return &MaltWeighed{At: o.Reading.When().Time, Weight: answer.Kilograms(kg),
			Low: answer.Share(max(0, mid-math.Hypot(mid-moist(lost.P10), by))), High: answer.Share(mid + math.Hypot(moist(lost.P90)-mid, by))}
	}
	return nil
}
