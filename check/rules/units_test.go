package rules_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
)

// britishFor are the units that a house writes which writes °F, and the digits they take.
var britishFor = []struct {
	metric, british string
	places          int
}{
	{"°C/h", "°F/h", 2}, {"°C", "°F", 2}, {"m3/h", "cfm", 3}, {"kg", "lb", 4}, {"m2", "ft2", 4}, {"l", "gal-us", 3},
	{"m", "ft", 2}, {"t", "lb", 0}, {"g", "oz", 4}, {"cm", "in", 3}, {"kW", "Btu/h", 0},
}

// inBritish writes a text with every metric figure in a British unit.
func inBritish(t *testing.T, text string) string {
	t.Helper()
	for _, u := range britishFor {
		figure := regexp.MustCompile(`(?:(-?[\d.]+) to )?(-?[\d.]+) ` + regexp.QuoteMeta(u.metric) + `([\s;}"]|$)`)
		text = figure.ReplaceAllStringFunc(text, func(s string) string {
			m := figure.FindStringSubmatch(s)
			made := func(number string) string {
				q, err := quantity.Make(quantity.Part{Number: number, Unit: u.metric})
				require.NoError(t, err)
				out, err := quantity.Format(q.SI, u.british, u.places)
				require.NoError(t, err)
				return strings.TrimSuffix(out, " "+u.british)
			}
			from := ""
			if m[1] != "" {
				from = made(m[1]) + " to "
			}
			return from + made(m[2]) + " " + u.british + m[3]
		})
	}
	return text
}

var metric = regexp.MustCompile(`\d ?(°C|kg|g|t|m2|cm2|m3|m3/h|l|cm|mm|m)([^\w/²³]|$)`)

// In a house that writes °F and lb, what is said of it is in °F and lb too: the units
// of every rule are those of the file.
func TestFindingsAreInTheUnitsOfTheFile(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	told := 0
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			bad := inBritish(t, fitted(t, string(text), r.Bad))
			require.NotRegexp(t, `\d (°C|kg|m2|l)\b`, bad)
			for _, f := range check.File("bad.malt", []byte(bad), ".", nowhere{}, asked[r.Name]).Findings {
				told++
				for _, said := range ownWords(f) {
					assert.NotRegexp(t, metric, said, f.Rule)
				}
			}
		})
	}
	assert.Greater(t, told, len(rules.All()), "the findings are there in these units too")
}

// The findings of the words are in the units of the file as well: of each of their rules
// there is a broken example, beside the house that it uses.
func TestFindingsOfTheWordsAreInTheUnitsOfTheFile(t *testing.T) {
	t.Parallel()
	used := files{}
	paths, err := filepath.Glob("../../examples/broken/*.malt")
	require.NoError(t, err)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		used[filepath.Base(path)] = inBritish(t, string(text))
	}
	told := 0
	for _, r := range read.Rules() {
		text, has := used[r.Name+".malt"]
		if !has {
			continue
		}
		t.Run(r.Name, func(t *testing.T) {
			for _, f := range check.File(r.Name+".malt", []byte(text), ".", used, check.Options{}).Findings {
				told++
				for _, said := range ownWords(f) {
					if m := metric.FindString(said); m != "" && !strings.Contains(text, strings.TrimSpace(m)) {
						t.Errorf("%s: %s [%s]", m, said, f.Rule)
					}
				}
			}
		})
	}
	assert.Greater(t, told, len(read.Rules())/2, "the findings are there in these units too")
}

// ownWords are the sentences that a finding says of this file: without what it says
// everywhere, and without the other unit where one may have been meant.
func ownWords(f finding.Finding) []string {
	list := []string{f.Message}
	if f.Hint != ruleOf(f).Do && !strings.Contains(f.Hint, "was meant") {
		list = append(list, f.Hint)
	}
	for _, r := range f.Related {
		list = append(list, r.Message)
	}
	return list
}

func ruleOf(f finding.Finding) finding.Rule {
	for _, r := range check.Rules() {
		if r.Name == f.Rule {
			return r
		}
	}
	return finding.Rule{}
}
