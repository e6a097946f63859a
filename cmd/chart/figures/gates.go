package figures

import (
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// leastGate is how much of a chart the level of a gate covers at the least: one that holds at once is met at
// a single moment.
const leastGate = 0.03

// gates are the conditions on a measure as levels, each as long as it is waited for. Conditions that ask the
// same one behind the other are one.
func gates(c *curve.Curve, measure string, s words.Scale) (list []chart.Gate) {
	least := leastGate * float64(c.To)
	for _, g := range c.Gates {
		for _, l := range g.Levels {
			if l.Measure != measure {
				continue
			}
			one := chart.Gate{Value: s.Shown(l.Value), From: max(0, min(float64(g.From), float64(g.To)-least)), To: min(float64(g.To), float64(c.To)), Name: words.Safe(words.OneLine(l.Text))}
			if one.To <= one.From {
				continue
			}
			if n := len(list); n > 0 && list[n-1].Name == one.Name && list[n-1].Value == one.Value && one.From <= list[n-1].To {
				list[n-1].To = one.To
				continue
			}
			list = append(list, one)
		}
	}
	return list
}
