package check

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// wrong are the mistakes that a checker of malting must know, each by the rule that
// is made for it, and the words it underlines.
var wrong = []struct {
	file, rule, words string
	severity          finding.Severity
}{
	{"dried-to-the-weight-of-the-grain", "original-weight-stop", "weight at most 6 kg", finding.Fault},
	{"gates-rise", "gate-order", "moisture at most 14 %", finding.Fault},
	{"gates-rise-in-ranges", "gate-order", "moisture 12 to 14 %", finding.Fault},
	{"cure-at-18-percent", "cure-without-gate", "malt 82 °C", finding.Caution},
	{"cure-at-18-percent", "hot-while-wet", "", finding.Fault},
	{"weight-ignores-loss", "weight-gate-ignores-loss", "weight at most 5.49 kg", finding.Fault},
	{"thirty-hours-under", "oxygen-gone", "", finding.Caution},
	{"barley-at-32", "bed-too-warm", "", finding.Caution},
	{"oven-above-70", "equipment-cannot", "", finding.Fault},
}

func TestEachKnownMistakeIsCaughtByTheRuleMadeForIt(t *testing.T) {
	for _, w := range wrong {
		t.Run(w.file+" "+w.rule, func(t *testing.T) {
			found := checkFile(t, filepath.Join("testdata/wrong", w.file+".malt")).Findings
			i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Rule == w.rule })
			require.GreaterOrEqual(t, i, 0, "found only %v", names(found))
			assert.GreaterOrEqual(t, found[i].Severity, w.severity)
			if w.words != "" {
				assert.Equal(t, w.words, found[i].Place.Text())
			}
		})
	}
}

// A balance of dry matter: at the weight of grain of 12 %, malt holds 12 % only if
// nothing was lost, and 16.4 % after a loss of 5 % of the dry matter.
func TestWithoutAForecastTheWeightOfTheGrainIsToldFromTheBalance(t *testing.T) {
	text, err := os.ReadFile("testdata/wrong/dried-to-the-weight-of-the-grain.malt")
	require.NoError(t, err)
	changed := strings.Replace(string(text), "12.4 %", "12 %", 1)
	found := File("test.malt", []byte(changed), ".", house{}, Options{NoForecast: true}).Findings
	i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Rule == "original-weight-stop" })
	require.GreaterOrEqual(t, i, 0)
	assert.Contains(t, found[i].Message, "about 16.4 % moisture, if 5 % of the dry matter is lost")
}

// The same balance: what weighs as malt of 4.3 % would if nothing had been lost.
func TestWeightThatIgnoresTheLossIsToldWithBothMoistures(t *testing.T) {
	found := checkFile(t, "testdata/wrong/weight-ignores-loss.malt").Findings
	i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Rule == "weight-gate-ignores-loss" })
	require.GreaterOrEqual(t, i, 0)
	assert.Contains(t, found[i].Message, "5.49 kg means 4.3 % moisture only if none of the 5.256 kg of dry matter is lost")
}

func TestTheMissingGateIsPutInFrontOfTheCure(t *testing.T) {
	path := "testdata/wrong/cure-at-18-percent.malt"
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	found := checkFile(t, path).Findings
	i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Rule == "cure-without-gate" })
	require.GreaterOrEqual(t, i, 0)
	require.Len(t, found[i].Fixes, 1)
	fix := found[i].Fixes[0]
	mended := string(text[:fix.Place.Start]) + fix.New + string(text[fix.Place.End:])
	assert.Contains(t, mended, "allow 4 to 20 h\n    gate moisture at most 10 % allow 0 to 12 h\n    cure at malt 82 °C for 5 h\n")
	again := names(File("test.malt", []byte(mended), ".", house{}, Options{}).Findings)
	assert.NotContains(t, again, "cure-without-gate")
	assert.NotContains(t, again, "hot-while-wet")
}

func TestTheMissingGateHasTheLineEndOfTheFile(t *testing.T) {
	text, err := os.ReadFile("testdata/wrong/cure-at-18-percent.malt")
	require.NoError(t, err)
	mended := func(text string) string {
		for _, f := range File("test.malt", []byte(text), ".", house{}, Options{}).Findings {
			if f.Rule == "cure-without-gate" {
				require.Len(t, f.Fixes, 1)
				fix := f.Fixes[0]
				return text[:fix.Place.Start] + fix.New + text[fix.Place.End:]
			}
		}
		require.Fail(t, "it is not found")
		return ""
	}
	crlf := func(text string) string { return strings.ReplaceAll(text, "\n", "\r\n") }
	assert.Equal(t, crlf(mended(string(text))), mended(crlf(string(text))))
}
