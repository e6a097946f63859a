package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEverySpellingNamesOneUnit(t *testing.T) {
	seen := map[string]string{}
	for _, u := range Units() {
		assert.NotEmpty(t, u.Doc, u.Name)
		assert.NotContains(t, u.Doc, "\n", u.Name)
		assert.Positive(t, u.Factor, u.Name)
		for spelling := range u.spellings {
			assert.Empty(t, seen[spelling], "%s is a spelling of %s too", spelling, u.Name)
			seen[spelling] = u.Name
			assert.LessOrEqual(t, len(spelling), longestUnit)
			found, ok := Lookup(spelling)
			require.True(t, ok, spelling)
			assert.Equal(t, u.Name, found.Name)
			q, err := Parse("2 " + spelling)
			require.NoError(t, err, spelling)
			assert.Equal(t, "2 "+u.Name, q.String(), spelling)
			close, err := Parse("2" + spelling)
			require.NoError(t, err, spelling)
			assert.Equal(t, q, close, "with no space: %s", spelling)
		}
	}
}

func TestUnitsOfADimensionStandTogether(t *testing.T) {
	seen, last := map[Dimension]bool{}, Number
	for _, u := range Units() {
		if u.Dimension != last {
			assert.False(t, seen[u.Dimension], "%s stands apart from its like", u.Name)
		}
		seen[u.Dimension], last = true, u.Dimension
	}
	for d := Count; d <= Speed; d++ {
		assert.Equal(t, d != TemperatureDifference, seen[d], "units of %s", d)
	}
}

func TestTheTableCannotBeChangedFromOutside(t *testing.T) {
	Units()[0].Aliases[0] = "changed"
	u, _ := Lookup("kg")
	u.Aliases[0] = "changed"
	_, ok := Lookup("x")
	assert.True(t, ok)
	assert.Equal(t, "x", Units()[0].Aliases[0])
	again, _ := Lookup("kg")
	assert.Equal(t, "kgs", again.Aliases[0])
}

func TestNearestNamesTheUnitThatWasMeant(t *testing.T) {
	for spelling, want := range map[string]string{
		"KG": "kg", "Kgs.": "kg", "kilgram": "kg", "hurs": "h", "ours": "h", "Minutes": "min", "LITRES": "l",
		"degrees C": "", "° F": "", "deg F": "", "degs F": "°F", "celcius": "°C", "litres per min": "l/min", "gal us": "gal-us", "Cfm": "cfm",
		"dasy": "days", "KPA": "kPa", "% dry": "", "kg": "", "": "", "zorkmid": "", "kq": "",
	} {
		got := ""
		if u, _ := nearest(spelling); u != nil && findUnit(spelling) == nil {
			got = u.Name
		}
		assert.Equal(t, want, got, spelling)
	}
}
