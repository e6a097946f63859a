package ensemble

import (
	"math"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Look is what is kept of a member at one time: some fifty bytes, so that hundreds of members can
// be looked at a hundred times. What is not to be had then is NaN.
type Look struct {
	Moisture, Weight float64 // wet basis, 0 to 1; kg of the whole batch, drained
	Grain            float64 // °C, before it comes to a kiln: behind that hot members and cold ones would be told in one
	Chit, Acrospire  float64 // as in a Sight
}

// Courses are what was seen of members at the same times.
type Courses struct {
	Times   []float64 // s from the first soak, rising
	Members [][]Look  // of each member, one for each time
}

// LooksOf takes the first n looks of a forecast. Of one that did not come so far the rest is NaN.
func LooksOf(f *forecast.Forecast, n int) []Look {
	nan := math.NaN()
	out := make([]Look, n)
	for i := range out {
		if out[i] = (Look{nan, nan, nan, nan, nan}); i < len(f.Seen) {
			s := &f.Seen[i]
			out[i] = Look{s.Moisture, s.Weight, s.Grain, s.Chit, s.Acrospire}
			if s.Stage == model.KilnStage {
				out[i].Grain = nan
			}
		}
	}
	return out
}

// Over is the spread of a figure over the members at each of the times.
func (c *Courses) Over(of func(*Look) float64) []Spread {
	out, values := make([]Spread, len(c.Times)), make([]float64, len(c.Members))
	for k := range out {
		for i := range c.Members {
			values[i] = of(&c.Members[i][k])
		}
		out[k] = SpreadOf(values)
	}
	return out
}
