package margin

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
)

// slip is a text in which something is found.
type slip struct {
	name, text, dir string
	reader          read.Reader
}

// slips are the broken examples, and the texts on which rules fire. An ordinary run takes some of them.
func slips(t testing.TB) (list []slip) {
	root, err := read.OpenRoot(sample.Folder(t))
	require.NoError(t, err)
	t.Cleanup(func() { _ = root.Close() })
	files, err := filepath.Glob(filepath.Join(sample.Folder(t), "broken", "*.malt"))
	require.NoError(t, err)
	for _, at := range files {
		text, err := os.ReadFile(at)
		require.NoError(t, err)
		list = append(list, slip{filepath.Base(at), string(text), "broken", root})
	}
	cases := filepath.Join(sample.Folder(t), "..", "check", "rules", "testdata")
	base, err := os.ReadFile(filepath.Join(cases, "base.malt"))
	require.NoError(t, err)
	files, err = filepath.Glob(filepath.Join(cases, "*.txtar"))
	require.NoError(t, err)
	for _, at := range files {
		archive, err := txtar.ParseFile(at)
		require.NoError(t, err)
		for _, f := range archive.Files {
			if title, ok := strings.CutPrefix(f.Name, "fires/"); ok {
				list = append(list, slip{filepath.Base(at) + " " + title, changed(t, string(base), string(f.Data)), ".", root})
			}
		}
	}
	if golden.Long() {
		return list
	}
	var some []slip
	for i, s := range list {
		if i%12 == 0 {
			some = append(some, s)
		}
	}
	return some
}

// changed is a case of a rule: a whole text, or lines of the base that go and others that come.
func changed(t testing.TB, base, text string) string {
	if !strings.HasPrefix(text, "- ") && !strings.HasPrefix(text, "+ ") {
		return text
	}
	lines, at := strings.SplitAfter(base, "\n"), 0
	for _, line := range strings.SplitAfter(strings.TrimSuffix(text, "\n"), "\n") {
		line = strings.TrimSuffix(line, "\n")
		if gone, ok := strings.CutPrefix(line, "- "); ok {
			at = -1
			for i, l := range lines {
				if strings.TrimSpace(l) == strings.TrimSpace(gone) {
					at = i
				}
			}
			require.GreaterOrEqual(t, at, 0, gone)
			lines = append(lines[:at:at], lines[at+1:]...)
		} else if come, ok := strings.CutPrefix(line, "+ "); ok {
			lines = append(lines[:at:at], append([]string{come + "\n"}, lines[at:]...)...)
			at++
		}
	}
	return strings.Join(lines, "")
}

func (s slip) example(t testing.TB) example {
	e := example{name: s.name, text: []byte(s.text), dir: s.dir}
	e.tree, _ = syntax.Parse(source.New(s.name, e.text))
	e.report = check.File(s.name, e.text, s.dir, s.reader, check.Options{Context: t.Context()})
	return e
}

// unread are the findings for which a text does not read as statements.
func unread(text []byte) int {
	_, found := syntax.Parse(source.New("x", text))
	return len(found)
}

func TestAnActionLeavesAFileThatReadsAndWhatItIsAboutIsGone(t *testing.T) {
	t.Parallel()
	seen := map[Deed]int{}
	for _, s := range slips(t) {
		e := s.example(t)
		c := Case{s.name, e.text, s.dir, s.reader}
		done := map[string]bool{}
		for _, f := range e.report.Findings {
			if f.Place.File == nil || f.Place.File.Name() != s.name {
				continue
			}
			for _, x := range Actions(t.Context(), c, e.tree, e.report, f.Place.Span) {
				after := x.Applied(e.text)
				if done[string(after)] {
					continue
				}
				done[string(after)] = true
				seen[x.Deed]++
				assert.LessOrEqual(t, unread(after), unread(e.text), "%s: %s\n%s", s.name, x.Title, after)
				assert.NotEqual(t, string(e.text), string(after), "%s: %s", s.name, x.Title)
				assert.NotContains(t, x.Title, "\n")
				if x.Deed == Convert || x.Deed == Offer {
					continue
				}
				if x.Deed == Accept {
					is := check.File(s.name, after, s.dir, s.reader, check.Options{Context: t.Context()})
					assert.Greater(t, times(is, "accept-without-reason"), times(e.report, "accept-without-reason"), "%s: %s\n%s", s.name, x.Title, after)
					if len(is.NotJudged) == 0 { // a fault of the words ends the forecast, and what is found in it
						assert.Positive(t, times(is, x.Of.Rule), "%s: %s silences without a reason\n%s", s.name, x.Title, after)
					}
					x.Edits[0].New = strings.Replace(x.Edits[0].New, `because ""`, `because "the neighbour sees to it"`, 1)
					after = x.Applied(e.text)
				}
				is := check.File(s.name, after, s.dir, s.reader, check.Options{Context: t.Context()})
				require.NotNil(t, x.Of)
				assert.Less(t, times(is, x.Of.Rule), times(e.report, x.Of.Rule), "%s: %s\n%s", s.name, x.Title, after)
				if x.Deed == Accept {
					assert.LessOrEqual(t, times(is, "accept-unused"), times(e.report, "accept-unused"), s.name)
					assert.Less(t, x.Of.Severity, finding.Danger)
					assert.Equal(t, times(e.report, "accept-without-reason"), times(is, "accept-without-reason"), "%s\n%s", s.name, after)
				}
			}
		}
	}
	t.Log(seen)
	for _, d := range []Deed{Repair, Offer, Accept, Convert} {
		assert.Greater(t, seen[d], 1, d)
	}
	assert.Positive(t, seen[Gate])
}

func (e example) actions(t testing.TB, at string) []Action {
	i := strings.Index(string(e.text), at)
	require.GreaterOrEqual(t, i, 0, at)
	return Actions(t.Context(), e.asCase(), e.tree, e.report, source.Span{Start: i, End: i})
}

func titles(list []Action) (out []string) {
	for _, x := range list {
		out = append(out, x.Title)
	}
	return out
}

func TestAValueIsConvertedToTheSame(t *testing.T) {
	for _, c := range []struct{ in, at, want string }{
		{"soak 7 h in water at 13 °C", "13", "55.4 °F"}, {"soak 7 h in water at 13 °C", "7", "420 min"}, {"hold bed at 14 to 17 °C", "14", "57.2 to 62.6 °F"}, {"hold bed at 14 to 17 °C", "17", "57.2 to 62.6 °F"},
		{"allow 12 to 36 h", "12", "720 to 2160 min"}, {"allow 12 to 36 h", "12", "0.5 to 1.5 days"}, {"from 6 kg of \"x\"", "6", "13.23 lb"}, {"from 13 lb 4 oz of \"x\"", "13", "6.01 kg"}, {"area 0.5 m2", "0.5", "5.382 ft2"},
		{"until air-off at least 140 °F", "140", "60 °C"}, {"turn every 20 h", "20", "1200 min"}, {"air-on 55 °C", "55", "131 °F"},
	} {
		e := example{name: "x", text: []byte(c.in)}
		e.tree, _ = syntax.Parse(source.New("x", e.text))
		e.report.House = check.File("x", e.text, ".", nil, check.Options{NoForecast: true}).House
		var got []string
		for _, x := range e.actions(t, c.at) {
			got = append(got, x.Edits[0].New)
		}
		assert.Contains(t, got, c.want, c.in)
	}
	e := exampleOf(t, "pale.malt")
	assert.NotContains(t, strings.Join(titles(exampleWith(t, "pale.malt", strings.Replace(string(e.text), "every 8 h", "every 20 h", 1)).actions(t, "20 h")), "\n"), "days", "nobody writes 0.83 days")
}

// A whole process in other units is forecast as it was, as near as its digits say.
func TestAConvertedProcessIsForecastAsItWas(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	for n, again := range []bool{true, false} {
		at, text := 0, string(e.text)
		for {
			next := exampleWith(t, "pale.malt", text)
			list := []Action(nil)
			for ; at < len(text) && len(list) == 0; at++ {
				if text[at] >= '0' && text[at] <= '9' && (text[at-1] == ' ' || text[at-1] == '/') {
					list = Actions(t.Context(), Case{e.name, []byte(text), e.dir, e.root}, next.tree, check.Report{House: next.report.House}, source.Span{Start: at, End: at})
				}
			}
			if len(list) == 0 {
				break
			}
			x := list[(len(list)-1)*n]
			text = string(x.Applied([]byte(text)))
			at = x.Edits[0].Place.Start + len(x.Edits[0].New)
		}
		after := exampleWith(t, "pale.malt", text)
		require.NotNil(t, after.report.Forecasts[0], "%v\n%s", again, text)
		assert.Contains(t, text, "°F")
		was, is := e.report.Forecasts[0].Totals, after.report.Forecasts[0].Totals
		assert.InDelta(t, was.Total, is.Total, 0.01*was.Total, text)
		assert.InDelta(t, was.FinalMoisture, is.FinalMoisture, 0.001)
	}
}

func TestADifferenceOfTemperaturesIsNotConvertedAsATemperature(t *testing.T) {
	e := example{name: "x", text: []byte("house {\n  thermometer 0.8 °C error 0.2 °C\n}\n")}
	e.tree, _ = syntax.Parse(source.New("x", e.text))
	e.report.House = check.File("x", e.text, ".", nil, check.Options{NoForecast: true}).House
	assert.Empty(t, e.actions(t, "0.8"))
}

func TestADangerIsNeverAccepted(t *testing.T) {
	seen := 0
	for _, s := range slips(t) {
		e := s.example(t)
		for _, f := range e.report.Findings {
			if f.Severity == finding.Danger {
				seen++
				assert.Empty(t, (&actor{ctx: t.Context(), Case: Case{s.name, e.text, s.dir, s.reader}, tree: e.tree, r: e.report}).accept(&f))
			}
		}
	}
	assert.Positive(t, seen)
}

func TestAllRepairsAtOnceAreThoseOfCheckMend(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	_, ok := Mended(t.Context(), e.asCase())
	assert.False(t, ok)
	broken := exampleWith(t, "pale.malt", strings.Replace(string(e.text), "until moisture at most 35 %", "until moistur at most 35 %", 1))
	text, ok := Mended(t.Context(), broken.asCase())
	assert.True(t, ok)
	assert.Equal(t, string(e.text), string(text))
}
