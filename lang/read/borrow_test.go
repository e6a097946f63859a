package read

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// ranges are statements with a range in them, in the forms that a range can take: the
// %s is the range, and unit what it is measured in.
var ranges = []struct{ line, unit string }{
	{"site \"S\" { air %s }", "°C"}, {"site \"S\" { water %s }", "°C"}, {"site \"S\" { humidity %s }", "%"},
	{"kiln \"K\" { reaches %s }", "°C"},
	{"steep in \"blue tub\" to moisture %s { soak 7 h in water at 13 °C }", "%"},
	{"steep in \"blue tub\" { soak 7 h in water at %s }", "°C"},
	{"steep in \"blue tub\" { soak until moisture %s allow 1 to 9 h in water at 13 °C }", "%"},
	{"steep in \"blue tub\" { soak until moisture at least 40 %% allow %s in water at 13 °C }", "h"},
	{"germinate on \"larch floor\" { hold bed at %s; for 5 days }", "°C"},
	{"germinate on \"larch floor\" { hold bed at 14 °C; until acrospire at least 3/4; allow %s }", "days"},
	{"germinate on \"larch floor\" { hold bed at 14 °C; until acrospire at least 3/4; allow at least %s }", "days"},
	{"germinate on \"larch floor\" { hold bed at 14 °C; humidity %s; for 5 days }", "%"},
	{"kiln in \"tray kiln\" { dry at air-on %s for 12 h }", "°C"},
	{"kiln in \"tray kiln\" { dry from air-on %s over 12 h }", "°C"},
	{"kiln in \"tray kiln\" { dry at air-on 50 °C until moisture %s allow 1 to 9 h }", "%"},
	{"kiln in \"tray kiln\" { dry at air-on 50 °C until weight is %s allow 1 to 9 h }", "kg"},
	{"store in \"drum\" for at least %s", "weeks"},
	{"expect final moisture %s", "%"},
	{"expect malt weight is %s", "kg"},
	{"batch \"b\" of \"p\" { began 2026-03-06 07:00; changed soak 3 to %s because \"cold\" }", "h"},
}

// In a range the unit behind the second value serves both: what is wrong with it is
// said where it stands.
func TestWhatIsWrongWithABorrowedUnitIsSaidAtThatUnit(t *testing.T) {
	for _, r := range ranges {
		for _, unit := range []string{"dayz", "zorkmids", "Celcius", "percnt", "Kilogrm"} {
			text := fmt.Sprintf(r.line, "4 to 7 "+unit)
			found := about(t, text, unknownUnit.Name)
			require.Len(t, found, 1, text)
			assert.Equal(t, unit, found[0].Place.Text(), text)
			for _, e := range found[0].Fixes {
				assert.Equal(t, found[0].Place, e.Place, text)
			}
		}
	}
}

func TestAWholeRangeIsOfAnotherKindOrHasNoUnit(t *testing.T) {
	for _, r := range ranges {
		for amount, rule := range map[string]string{"4 to 7 m2": wrongDimension.Name, "4 to 7": missingUnit.Name} {
			text := fmt.Sprintf(r.line, amount)
			found := about(t, text, rule)
			require.Len(t, found, 1, text)
			assert.Equal(t, amount, found[0].Place.Text(), text)
			assert.True(t, strings.HasPrefix(found[0].Message, amount+" "), "%s: %s", text, found[0].Message)
		}
	}
}

func TestANumberIsPutRightWithoutTheUnitThatItBorrows(t *testing.T) {
	for _, r := range ranges {
		text := fmt.Sprintf(r.line, "4,5 to 7 "+r.unit)
		found := about(t, text, badNumber.Name)
		require.Len(t, found, 1, text)
		assert.Equal(t, "4,5", found[0].Place.Text(), text)
		require.Len(t, found[0].Fixes, 1, text)
		assert.Equal(t, "4.5", found[0].Fixes[0].New, text)
		assert.Equal(t, "4,5", found[0].Fixes[0].Place.Text(), text)
	}
}

func TestARangeUpsideDownIsTurnedWithTheWordsRoundItLeftAlone(t *testing.T) {
	turned := 0
	for _, r := range ranges {
		text := fmt.Sprintf(r.line, "9 to 7 "+r.unit)
		_, found := loadExample(t, text)
		for _, f := range found {
			for _, e := range f.Fixes {
				turned++
				assert.Equal(t, "7 to 9 "+r.unit, e.New, text)
				assert.Equal(t, "9 to 7 "+r.unit, e.Place.Text(), text)
			}
		}
	}
	assert.Greater(t, turned, 10)
}

// Of a bound with a range the wrong way round it cannot be told which end was meant.
func TestABoundedRangeUpsideDownHasNoCertainRepair(t *testing.T) {
	for _, text := range []string{
		"kiln in \"tray kiln\" { dry at air-on 50 °C until moisture at most 10 to 8 % allow 1 to 9 h }",
		"germinate on \"larch floor\" { hold bed at 14 °C; until acrospire at least 3/4; allow at most 8 to 4 days }",
	} {
		_, found := loadExample(t, text)
		require.Len(t, found, 1, text)
		assert.Empty(t, found[0].Fixes, text)
	}
}

func TestTheEndsOfARangeAreOfOneKind(t *testing.T) {
	found := about(t, "batch \"b\" of \"p\" { began 2026-03-06 07:00; changed soak 3 to 5 h to 20 °C because \"cold\" }", wrongDimension.Name)
	require.Len(t, found, 1)
	assert.Equal(t, "20 °C", found[0].Place.Text())
}

func about(t *testing.T, text, rule string) (list []finding.Finding) {
	_, found := loadExample(t, text)
	for _, f := range found {
		if f.Rule == rule {
			list = append(list, f)
		}
	}
	return list
}
