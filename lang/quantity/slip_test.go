package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSlipsOfANumber(t *testing.T) {
	slips := func(number, unit string) (list []string) {
		q, err := Make(Part{Number: number, Unit: unit})
		require.NoError(t, err)
		for _, s := range Slips(q) {
			list = append(list, s.Text)
		}
		return list
	}
	assert.Equal(t, []string{"2.54 kg", "5.42 kg", "52.4 kg", "524 kg", "5240 kg"}, slips("5.24", "kg"))
	assert.Equal(t, []string{"24", "4.2", "420"}, slips("42", ""))
	assert.Contains(t, slips("148", "°C"), "14.8 °C")
	assert.Contains(t, slips("0.544", "kg"), "5.44 kg")
	assert.NotContains(t, slips("5.5", "kg"), "5.5 kg", "swapped it is the same")
	pounds, err := Make(Part{Number: "5", Unit: "lb"}, Part{Number: "4", Unit: "oz"})
	require.NoError(t, err)
	assert.Empty(t, Slips(pounds))
}
