package figures_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/words"
)

// A band of a batch with which hardly any forecast agrees says so, and not that its forecasts agree.
func TestTheFootOfAChartThatIsNotToBeReliedOn(t *testing.T) {
	foot := func(astray bool) string {
		spread := answer.Spread[answer.Share]{P10: 0.1, P50: 0.2, P90: 0.3, Share: 1}
		c := curve.Curve{Head: outlook.Head{Charge: 6}, Batch: "26-04", To: 10, Astray: astray, Points: []curve.Point{{}, {Point: outlook.Point{At: 10, Moisture: 0.2}}},
			Bands: &curve.Bands{Members: 100, At: []answer.Seconds{0, 10}, Moisture: []answer.Spread[answer.Share]{spread, spread}}}
		return strings.Join(figures.Moisture(&c, words.House{}).Note, "\n")
	}
	assert.Contains(t, foot(false), "100 forecasts that agree with the readings")
	assert.NotContains(t, foot(false), words.Astray)
	assert.NotContains(t, foot(true), "forecasts that agree")
	assert.Contains(t, foot(true), words.Astray)
}
