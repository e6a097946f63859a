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
	"maltwright/lang/read"
	"maltwright/lang/syntax/pounds"
)

var metric = regexp.MustCompile(`\d ?(°C|kg|g|t|m2|m²|cm2|m3|m³|m3/h|m/s|l|hl|cm|mm|m|kW)([^\w/²³]|$)`)

// In a house that writes °F and lb, what is said of it is in °F and lb too: the units
// of every rule are those of the file.
func TestFindingsAreInTheUnitsOfTheFile(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	told := 0
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			bad := pounds.Written(fitted(t, string(text), r.Bad))
			require.NotRegexp(t, `\d (°C|kg|m2|l)\b`, bad)
			for _, f := range check.File("bad.malt", []byte(bad), ".", nowhere{}, asked[r.Name]).Findings {
				told++
				for _, said := range wordsOf(f) {
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
		used[filepath.Base(path)] = pounds.Written(string(text))
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
				for _, said := range wordsOf(f) {
					if m := metric.FindString(said); m != "" && !strings.Contains(text, strings.TrimSpace(m)) {
						t.Errorf("%s: %s [%s]", m, said, f.Rule)
					}
				}
			}
		})
	}
	assert.Greater(t, told, len(read.Rules())/2, "the findings are there in these units too")
}

// wordsOf are the sentences of a finding, without the other unit where one may have
// been meant.
func wordsOf(f finding.Finding) []string {
	list := []string{f.Message, f.Why}
	if !strings.Contains(f.Hint, "was meant") {
		list = append(list, f.Hint)
	}
	for _, r := range f.Related {
		list = append(list, r.Message)
	}
	return list
}
