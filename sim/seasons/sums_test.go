package seasons_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/sim/seasons"
)

// By hand: 39, 38 and 40 h are 39 h in the mean.
func TestSums(t *testing.T) {
	hours := func(list ...float64) (all []seasons.Figure) {
		for _, h := range list {
			all = append(all, seasons.Figure{Value: h, Standing: seasons.Measured})
		}
		return all
	}
	three := hours(39, 38, 40)
	assert.Equal(t, hours(39, 38, 40, 1), []seasons.Figure{seasons.Mean(three), seasons.Lowest(three), seasons.Highest(three), seasons.Change(three)})

	guessed := hours(39, 38)
	guessed[1].Standing = seasons.Reckoned
	assert.Equal(t, seasons.Figure{Value: 38.5, Standing: seasons.Reckoned}, seasons.Mean(guessed))
	assert.Equal(t, seasons.Figure{Value: 38.5, Standing: seasons.Measured}, seasons.Mean(append(hours(39, 38), seasons.Figure{})), "one that is missing does not count")
	assert.Equal(t, seasons.Figure{}, seasons.Mean(append(hours(39), seasons.Figure{})), "of one alone")
	assert.Equal(t, seasons.Figure{}, seasons.Lowest(append(hours(39, 38), seasons.Figure{Value: 5, Standing: seasons.Over})), "with a bound among them")
}
