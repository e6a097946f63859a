package layout

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
	"maltwright/lang/syntax"
)

func afterEdits(t assert.TestingT, text string, list []finding.Edit) string {
	out, last := "", 0
	for _, e := range list {
		if !assert.LessOrEqual(t, last, e.Place.Start) || !assert.LessOrEqual(t, e.Place.Start, e.Place.End) {
			break
		}
		out += text[last:e.Place.Start] + e.New
		last = e.Place.End
	}
	return out + text[last:]
}

func TestEditsAreOfTheBlanksAlone(t *testing.T) {
	for _, c := range []struct {
		what, text string
		want       []string // what stands there, and what is put in its place
	}{
		{"nothing", "use \"a\"\n", nil},
		{"an indent", "process \"p\" {\n make pale malt\n}\n", []string{" ", "  "}},
		{"a block for one line", "vessel \"a\" {\n holds 9 l\n}\n", []string{"\n ", " ", "\n", " "}},
		{"an empty line too many", "use \"a\"\n\n\nuse \"b\"\n", []string{"\n", ""}},
		{"blanks at the end", "use \"a\"  \n", []string{"  \n", "\n"}},
		{"no line end", "use \"a\"", []string{"", "\n"}},
		{"a word", "process \"p\" {\n  make pale malt\n  steep in \"a\" { soak 7 hours }\n}\n", nil},
		{"the spelling of a unit", "grain \"g\" { moisture 12 pct }\ngrain \"h\" { species rye }\n", []string{"pct", "%"}},
		{"a column", "site \"s\" {\n  air 8 to 14 °C\n  humidity 55 to 80 %\n}\n", nil},
	} {
		f := source.New("x.malt", []byte(c.text))
		tree, _ := syntax.Parse(f)
		out := Write(tree)
		list := Edits(f, out)
		assert.Equal(t, string(out), afterEdits(t, c.text, list), c.what)
		if c.want == nil {
			continue
		}
		var got []string
		for _, e := range list {
			got = append(got, e.Place.Text(), e.New)
		}
		assert.Equal(t, c.want, got, c.what)
	}
}

// untidy puts blanks where they do not belong.
func untidy(t *rapid.T, text string) string {
	lines := strings.SplitAfter(text, "\n")
	for range rapid.IntRange(1, 8).Draw(t, "times") {
		i := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
		switch rapid.IntRange(0, 3).Draw(t, "way") {
		case 0:
			lines[i] = rapid.SampledFrom([]string{"", " ", "\t", "     "}).Draw(t, "indent") + strings.TrimLeft(lines[i], " ")
		case 1:
			lines[i] = "\n\n" + lines[i]
		case 2:
			lines[i] = strings.Replace(lines[i], " ", "   ", 1)
		default:
			lines[i] = strings.TrimRight(lines[i], "\n") + " \n"
		}
	}
	return strings.Join(lines, "")
}

func TestEditsMakeTheLayoutOfAnyText(t *testing.T) {
	paths, _ := filepath.Glob("../../examples/*/*.malt")
	paths = slices.DeleteFunc(paths, func(p string) bool { return strings.Contains(p, "broken") })
	require.NotEmpty(t, paths)
	var all []string
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		all = append(all, string(text))
	}
	rapid.Check(t, func(t *rapid.T) {
		text := untidy(t, rapid.SampledFrom(all).Draw(t, "file"))
		f := source.New("x.malt", []byte(text))
		tree, _ := syntax.Parse(f)
		out := Write(tree)
		list := Edits(f, out)
		assert.Equal(t, string(out), afterEdits(t, text, list))
		for _, e := range list {
			assert.Empty(t, bare([]byte(e.Place.Text()+e.New)), "blanks alone are changed")
		}
	})
}

// Whatever the two texts are, the edits make the one of the other.
func TestEditsMakeAnyTextOfAnother(t *testing.T) {
	text, err := os.ReadFile("testdata/messy.malt")
	require.NoError(t, err)
	words := append(spoil.Words(string(text)), "\r\n", "\r", "\ufeff", "\xb0", "🌾")
	for seed := range spoil.Seeds(300, 20_000) {
		a, b := spoil.Text(spoil.Random(seed), string(text), words), spoil.Text(spoil.Random(seed+1), string(text), words)
		list := Edits(source.New("x", []byte(a)), []byte(b))
		require.Equal(t, b, afterEdits(t, a, list))
		for _, e := range list {
			require.False(t, insideOne(a, e.Place.Start) || insideOne(a, e.Place.End), "%q in\n%s", e.Place.Text(), a)
		}
	}
}

// insideOne tells whether a place is inside a character, or between the two signs of a line end.
func insideOne(text string, at int) bool {
	if at == 0 || at == len(text) {
		return false
	}
	return utf8.ValidString(text) && !utf8.RuneStart(text[at]) || text[at-1] == '\r' && text[at] == '\n'
}
