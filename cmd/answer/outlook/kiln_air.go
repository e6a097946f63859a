package outlook

import (
	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// KilnAir is the air through the malt on a kiln whose fan or draught is known, and how deep the
// malt lies.
type KilnAir struct {
	DrivenBy string      `doc:"fan, chimney or draught: a natural one of which no chimney is said"`
	First    answer.Flow `json:"at_first" doc:"half an hour after the malt came on; by a chimney or a draught less than once the malt is warm"`
	Last     answer.Flow `json:"at_last" doc:"at the end of its heat"`
	Least    answer.Flow `doc:"while it is heated"`
	Depth    answer.Metres
	Dried    answer.Metres `json:"depth_dried" doc:"at the end"`
}

// airOf is the air of a stage on a kiln, or nil.
func airOf(f *forecast.Forecast, st model.Stage) *KilnAir {
	for _, k := range f.Kilns {
		if k.Of == st && k.Airs != nil {
			return &KilnAir{DrivenBy: string(k.Airs.By), First: answer.Flow(k.Airs.First), Last: answer.Flow(k.Airs.Last), Least: answer.Flow(k.Airs.Least),
				Depth: answer.Metres(k.Depth), Dried: answer.Metres(k.Dried)}
		}
	}
	return nil
}
