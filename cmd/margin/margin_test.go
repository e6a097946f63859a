package margin

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
)

// example is a file of the examples, checked.
type example struct {
	name   string
	text   []byte
	dir    string
	root   *read.Root
	tree   *syntax.Tree
	report check.Report
}

// examples are by their paths below the folder of the examples.
func exampleOf(t testing.TB, name string) example {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), filepath.FromSlash(name)))
	require.NoError(t, err)
	return exampleWith(t, name, string(text))
}

// exampleWith is a file of the examples with another text.
func exampleWith(t testing.TB, name, text string) example {
	t.Helper()
	root, err := read.OpenRoot(sample.Folder(t))
	require.NoError(t, err)
	t.Cleanup(func() { _ = root.Close() })
	e := example{name: name, text: []byte(text), dir: path.Dir(name), root: root}
	e.tree, _ = syntax.Parse(source.New(name, e.text))
	e.report = check.File(name, e.text, e.dir, root, check.Options{Context: t.Context()})
	return e
}

// few is a number of likely batches that is soon made.
const few = 40

func (e example) margin(t testing.TB, o Options) Margin {
	likely, err := LikelyOf(t.Context(), e.report, few)
	require.NoError(t, err)
	return Of(e.tree, e.report, likely, o)
}

// shown is a text with its hints beside its lines, and the rest of the margin behind it.
func shown(m Margin) string {
	var out strings.Builder
	text, at := string(m.File.Bytes()), 0
	for _, x := range m.Hints {
		fmt.Fprintf(&out, "%s «%s»", text[at:x.At], x.Text)
		at = x.At
	}
	out.WriteString(text[at:])
	for _, x := range m.Lenses {
		fmt.Fprintf(&out, "\nabove %q: %s\n", m.File.Text(x.Of), x.Text)
	}
	for _, x := range m.Hints {
		fmt.Fprintf(&out, "\n«%s» of %s\n%s\n", x.Text, m.File.Text(x.Of), x.More)
	}
	return out.String()
}

func TestWhatStandsInTheMarginOfAProcess(t *testing.T) {
	for _, name := range []string{"pale.malt", "oven.malt", "home/porch.malt", "mill/craft.malt", "mill/chocolate.malt"} {
		golden.File(t, "testdata/"+strings.TrimSuffix(path.Base(name), ".malt")+".txt", shown(exampleOf(t, name).margin(t, Options{})))
	}
}

func TestWithTheDayOfTheFirstSoakTheMarginHasTimesOfTheClock(t *testing.T) {
	m := exampleOf(t, "pale.malt").margin(t, Options{Start: time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local)})
	golden.File(t, "testdata/clock.txt", shown(m))
}

// The hints of every example are short, each stands behind its own statement and on its line.
func TestHintsAreShortAndStandBesideTheirLines(t *testing.T) {
	seen := 0
	err := filepath.WalkDir(sample.Folder(t), func(at string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(at) != ".malt" {
			return err
		}
		name, err := filepath.Rel(sample.Folder(t), at)
		require.NoError(t, err)
		e := exampleOf(t, filepath.ToSlash(name))
		for _, x := range Of(e.tree, e.report, nil, Options{}).Hints {
			seen++
			assert.LessOrEqual(t, utf8.RuneCountInString(x.Text), 36, "%s: %s", name, x.Text)
			between := string(e.text[x.Of.End:x.At])
			assert.Contains(t, []string{"", " {"}, between, "%s: %s", name, x.Text)
			assert.NotEmpty(t, x.More)
		}
		return nil
	})
	require.NoError(t, err)
	assert.Greater(t, seen, 100)
}

func TestWhatStandsInTheMarginOfARecord(t *testing.T) {
	for _, c := range []struct {
		name, now string
		cut       string // the line from which on nothing is written yet
	}{
		{"batches/26-05.malt", "2026-08-01 12:00", ""},
		{"batches/26-05.malt", "2026-04-11 06:00", "  read    water 13.7"},
		{"batches/26-05.malt", "2026-04-17 20:00", "  read    air-off 36.1"},
	} {
		now, err := time.ParseInLocation("2006-01-02 15:04", c.now, time.Local)
		require.NoError(t, err)
		e := exampleOf(t, c.name)
		if before, _, ok := strings.Cut(string(e.text), c.cut); ok && c.cut != "" {
			e = exampleWith(t, c.name, before+"}\n")
		}
		m, err := Record(t.Context(), e.tree, e.report, now)
		require.NoError(t, err)
		golden.File(t, "testdata/record-"+now.Format("01-02")+".txt", shown(m))
	}
}
