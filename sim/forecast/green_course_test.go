package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is dried otherwise is what would have come of it from the first soak on: its steps
// bear the same numbers, and doing it once changes nothing of the next time.
func TestDriedOtherwiseIsForecastAsWhole(t *testing.T) {
	p := load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+kilnText+"}\n")
	told := func(f *Forecast) string {
		return fmt.Sprintf("%+v\n%+v\n%+v\n%+v", f.Stages, f.Gates, f.Totals, f.Seen)
	} // a figure may be no number
	course := &Course{AtEnds: true, Ends: []Ended{{Kind: "dry", Number: 1, At: 200 * hour}}}
	first, err := Run(p, Options{Course: course})
	require.NoError(t, err)
	before := told(first)
	for _, drying := range []float64{0.8, 1.2, 0.8} {
		whole, err := Run(p, Options{Drying: &drying, Sorption: 0.01, Course: course})
		require.NoError(t, err)
		dried, err := first.Dried(Options{Drying: &drying, Sorption: 0.01}, nil)
		require.NoError(t, err)
		assert.Equal(t, told(whole), told(dried))
	}
	assert.Equal(t, before, told(first))
}
