package founding

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
)

// questionOf is a question as it is asked in one of the units, of answers that lead to it.
func questionOf(t *testing.T, key string, a Answers) Question {
	t.Helper()
	for _, q := range every(a["units"]) {
		if q.Key == key {
			return q
		}
	}
	require.Fail(t, "no such question", key)
	return Question{}
}

func TestAnAreaIsTakenFromTwoLengths(t *testing.T) {
	for _, c := range []struct{ units, text, want string }{
		{Pounds, "27 x 54 in", "10.1 ft2"}, // 1458 in2 of 144 in2 each
		{Pounds, "27in x 54in", "10.1 ft2"},
		{Pounds, `27" x 54"`, "10.1 ft2"},
		{Pounds, "2 ft by 3 ft", "6 ft2"},
		{Pounds, "2 x 3 ft", "6 ft2"},
		{Pounds, "2 trays of 18x24 in", "6 ft2"},
		{Pounds, "2 racks 18x24 in", "6 ft2"},
		{Pounds, "two sheets of 18 × 24 inches", "6 ft2"},
		{Pounds, "2 x 18x24 in", "6 ft2"},
		{Metric, "50 x 60 cm", "0.3 m2"},
		{Metric, "1 m x 60 cm", "0.6 m2"},
		{Metric, "3 trays of 0.2 m2", "0.6 m2"},
		{Metric, "3 x 0.2 m2", "0.6 m2"},
		{Metric, "0.3", "0.3 m2"},
		{Metric, "0.3 m2", "0.3 m2"},
	} {
		got, err := questionOf(t, "grows size", Answers{"units": c.units}).Take(c.text)
		assert.NoError(t, err, c.text)
		assert.Equal(t, c.want, got, c.text)
	}
	for _, text := range []string{"50 x cm", "x", "2 trays of 3 kg", "50 cm x 3 kg", "2 trays of 5 x 5 x 5 cm", "27 x 54"} {
		_, err := questionOf(t, "grows size", Answers{"units": Metric}).Take(text)
		assert.Error(t, err, text)
	}
}

func TestGallonsOfAHouseOfPoundsAreOfTheUS(t *testing.T) {
	holds := questionOf(t, "vessel 1 holds", Answers{"units": Pounds})
	for text, want := range map[string]string{
		"5 gallons": "5 gal-us", "5 gal": "5 gal-us", "5 gal.": "5 gal-us", "5": "5 gal-us", "20 quarts": "20 qt-us", "20qt": "20 qt-us", "12 pints": "12 pt-us",
		"5 US gallons": "5 gal-us", "5 gal-imp": "5 gal-imp", "20 l": "20 l",
	} {
		got, err := holds.Take(text)
		assert.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	_, err := questionOf(t, "vessel 1 holds", Answers{"units": Metric}).Take("5 gallons")
	assert.Error(t, err, "in a house of kg it may be either")
}

func TestAnOvenMayGoAsHotAsOvensDo(t *testing.T) {
	for _, text := range []string{"170 to 550", "150 to 600 °F", "170-550F"} {
		_, err := questionOf(t, "dryer 1 reaches", Answers{"units": Pounds}).Take(text)
		assert.NoError(t, err, text)
	}
	hot, err := quantity.Parse("600 °F")
	require.NoError(t, err)
	assert.InDelta(t, 315.56, hot.SI-quantity.ZeroCelsius, 0.01)
	_, err = questionOf(t, "dryer 1 reaches", Answers{"units": Pounds}).Take("170 to 900")
	assert.Error(t, err)
}
