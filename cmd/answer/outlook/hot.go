package outlook

import (
	"maltwright/check/profile"
	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// HotBed is a growing bed that was read too warm.
type HotBed struct {
	Read answer.Celsius
	Warm answer.Celsius // the warmest at which the grain grows well for its malt
	Lost answer.Celsius // above it the piece is lost
}

// hotFrom is from how warm on a bed is told of, °C, where its grain grows no warmer: below it a
// bed that is a little above its setting is no alarm.
const hotFrom = 25.0

// HotBedOf gives a reading of a growing bed that is too warm for its grain, nil of one that is not,
// and of what is no reading of a bed.
func HotBedOf(p *model.Process, x *model.Read) *HotBed {
	if x.Temperature.Where != vocabulary.PlaceBed {
		return nil
	}
	usual := profile.Of(p)
	read := x.Temperature.Mid() - quantity.ZeroCelsius
	if read < hotFrom || read <= usual.GrowWarm() {
		return nil
	}
	return &HotBed{answer.Celsius(read), answer.Celsius(usual.GrowWarm()), answer.Celsius(usual.GrowsHot)}
}
