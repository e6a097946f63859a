package rules_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/read/endless"
	"maltwright/lang/source/spoil"
)

// noFigures are what no sentence of a finding may hold, whatever the input.
var noFigures = []struct {
	what string
	re   *regexp.Regexp
}{
	{"an exponent", regexp.MustCompile(`\d[eE][+-]?\d`)},
	{"no number", regexp.MustCompile(`NaN|\bInf\b|[+-]Inf`)},
	{"a minus before nothing", regexp.MustCompile(`(^|[^\w.])[-−]0(\.0+)?($|[^\d.]|\.\D)`)},
	{"less than nothing of what cannot be", regexp.MustCompile(`(^|\s)[-−]\d[\d.]* ?(%|kg|g|l|min|h|days|cm|points)`)},
	{"a unit of the models", regexp.MustCompile(`kg/kg|m³/s|m3/s|\bJ\b`)},
	{"nothing of a unit", regexp.MustCompile(`(^|[^\d.,])0(\.0+)? (s|min|h|days|kg|g|lb|l|m2|m3|m3/h|m³|cm|m|kWh|times)\b`)},
	{"a time in too long a unit", regexp.MustCompile(`\b0(\.\d+)? (weeks|months)\b|\b0\.0\d* (h|days)\b|\b0\.\d{3,} (min|h|days)\b`)},
	{"a time in too short a unit", regexp.MustCompile(`\b\d{4,}(\.\d+)? (s|min)\b|\b\d{5,}(\.\d+)? h\b`)},
	{"next to nothing of a unit", regexp.MustCompile(`\b0\.000\d+ (l|kg|lb|m3|m2|kW|ft2|gal-us)\b`)},
	{"digits that mean nothing", regexp.MustCompile(`\d\.\d{5,}|\d{8,}`)},
}

// files is a house of files that are held in memory.
type files map[string]string

func (f files) Read(name string) ([]byte, error) {
	if text, ok := f[filepath.Base(name)]; ok {
		return []byte(text), nil
	}
	return nowhere{}.Read(name)
}

// Whatever figures a bad example is given, what is said of it are figures as a
// maltster writes them.
func TestFindingsWriteFiguresAsAMaltsterDoes(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	examples := map[string]string{}
	for _, r := range rules.All() {
		examples[r.Name] = fitted(t, string(text), r.Bad)
	}
	used := files{}
	paths, err := filepath.Glob("../../examples/broken/*.malt")
	require.NoError(t, err)
	for _, path := range paths {
		broken, err := os.ReadFile(path)
		require.NoError(t, err)
		used[filepath.Base(path)] = string(broken)
		examples[filepath.Base(path)] = string(broken)
	}
	for name, example := range examples {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			for seed := range spoil.Seeds(1, 400) {
				figuresOf(t, used, spoil.Numbers(spoil.Random(seed), example))
			}
		})
	}
}

func figuresOf(t *testing.T, used files, text string) {
	r := check.File("x.malt", []byte(text), ".", used, check.Options{NoForecast: true})
	if !endless.Is(r.House) {
		r = check.File("x.malt", []byte(text), ".", used, check.Options{})
	}
	for _, f := range r.Findings {
		for _, said := range append(related(f), f.Message, f.Hint) {
			plainFigures(t, said, text, f)
		}
	}
}

func related(f finding.Finding) (list []string) {
	for _, r := range f.Related {
		list = append(list, r.Message)
	}
	return list
}

// plainFigures looks at a sentence; what it repeats as it was written is the writer's.
func plainFigures(t *testing.T, said, text string, f finding.Finding) {
	t.Helper()
	for _, n := range noFigures {
		if m := n.re.FindString(said); m != "" && !strings.Contains(text, strings.TrimSpace(m)) {
			t.Errorf("%s, %q: %s\nthe words: %s\n%s", n.what, m, said+" ["+f.Rule+"]", f.Place.Text(), text)
		}
	}
}
