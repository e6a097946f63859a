package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: 2.65 × 2 − 1.2 = 4.1 EBC; 3.5 × 100 − 16 = 334 °WK.
func TestScalesOfLaboratoriesConvert(t *testing.T) {
	for written, want := range map[string]float64{
		"5.1 EBC": 5.1, "2 Lovibond": 4.1, "2 °L": 4.1, "334 °WK": 334, "100 °Lintner": 334,
		"0.3 mg/kg": 0.3e-6, "300 µg/kg": 0.3e-6, "180 mg/l": 0.18,
	} {
		q, err := Parse(written)
		require.NoError(t, err, written)
		assert.InEpsilon(t, want, q.SI, 1e-12, written)
	}
	q, err := Parse("2 °L")
	require.NoError(t, err)
	assert.Equal(t, Colour, q.Dimension, "°L is Lovibond alone")
	assert.Equal(t, "4 Lovibond", q.Like(9.4), "(9.4 + 1.2) / 2.65")
}
