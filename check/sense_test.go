package check

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// edges are the ends of the bands of a sense, and a little outside the wider one.
func edges(s *vocabulary.Sense) (inside, outside []string) {
	bands := []quantity.Range{s.Can}
	if s.Usual != nil {
		bands = append(bands, *s.Usual)
	}
	for _, k := range s.By {
		bands = append(bands, k.Usual)
	}
	for _, b := range bands {
		inside = append(inside, b.Low.String(), b.High.String())
	}
	for _, si := range []float64{s.Can.Low.SI - 0.02*(s.Can.High.SI-s.Can.Low.SI), s.Can.High.SI * 1.02} {
		if q, err := quantity.In(si, s.Can.High.Unit()); err == nil {
			outside = append(outside, q.String())
		}
	}
	return inside, outside
}

// withFact gives the base with another value of a fact of one of its blocks.
func withFact(base string, block vocabulary.Block, word, value string) (string, bool) {
	at := regexp.MustCompile(`(?m)^` + string(block) + ` "[^"]*" \{\n(?s:(.*?))^\}`).FindStringSubmatchIndex(base)
	if at == nil {
		return base, false
	}
	body := base[at[2]:at[3]]
	line := regexp.MustCompile(`(?m)^  ` + word + ` .*$`)
	changed := line.ReplaceAllLiteralString(body, "  "+word+" "+value)
	if changed == body {
		changed = body + "  " + word + " " + value + "\n"
	}
	return base[:at[2]] + changed + base[at[3]:], true
}

// Nothing that the table lets through stops the forecast in the words of a model: what
// cannot be forecast is told at the word, in the unit that is written.
func TestNoFactThatCanBeStopsTheForecastInWordsOfAModel(t *testing.T) {
	text, err := os.ReadFile("rules/testdata/base.malt")
	require.NoError(t, err)
	text = append(text, "scale \"base scale\" {\n  division 5 g\n}\n"...)
	tried := 0
	for _, row := range vocabulary.Rows() {
		for _, block := range row.In {
			if len(row.Slots) == 0 || row.Slots[0].Sense == nil || strings.HasPrefix(string(block), "germinate") || block == vocabulary.Process || block == vocabulary.Wither || block == vocabulary.Batch {
				continue
			}
			inside, outside := edges(row.Slots[0].Sense)
			for i, value := range append(inside, outside...) {
				bad, ok := withFact(string(text), block, row.Word, value)
				require.True(t, ok, block)
				tried++
				found := File("edge.malt", []byte(bad), ".", house{}, Options{}).Findings
				what := fmt.Sprintf("%s %s %s", block, row.Word, value)
				ranged, told := false, false
				for _, f := range found {
					ranged = ranged || f.Rule == "out-of-range" && strings.Contains(f.Message, row.Slots[0].Sense.What)
					told = told || f.Severity == finding.Fault
					assert.NotEqual(t, "forecast-unable", f.Rule, "%s: %s", what, f.Message)
				}
				assert.Equal(t, i >= len(inside), ranged, what)
				assert.True(t, told || !ranged, what)
			}
		}
	}
	assert.Greater(t, tried, 60)
}

func TestNoLimitMovesBeyondWhatMakesSense(t *testing.T) {
	for _, l := range vocabulary.LimitNames() {
		inside, outside := edges(l.Sense)
		for i, value := range append(inside, outside...) {
			r := File("limits.malt", []byte("limits { "+l.Word+" "+value+" }\n"), ".", house{}, Options{})
			what := l.Word + " " + value
			if i < len(inside) {
				assert.Contains(t, names(r.Findings), "limits-changed", what)
				continue
			}
			assert.Equal(t, []string{"out-of-range"}, names(r.Findings), what)
			assert.Empty(t, r.House.Limits, "%s is not taken", what)
		}
	}
}
