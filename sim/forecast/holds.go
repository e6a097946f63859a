package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// grainHolds is the most moisture that grain can hold, where the house says nothing.
const grainHolds = 0.6

// MostMoisture is the moisture, of the whole weight, above which no reading of a process
// is believed.
func MostMoisture(p *model.Process) float64 {
	if p != nil {
		if l, ok := model.FindLimit(p.Limits, vocabulary.LimitMoisture); ok {
			return l.Bound.Range.High.SI
		}
	}
	return grainHolds
}

// DryError is by how much of it the dry matter that a forecast leaves may be off: a weight
// that is so much less than it cannot be.
const DryError = 0.05
