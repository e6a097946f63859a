package text

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/answer/outlook"
	"maltwright/lang/finding"
	"maltwright/lang/finding/samples"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/sim/forecast"
)

func TestFindings(t *testing.T) {
	for _, width := range []int{40, 80, 120} {
		for _, colour := range []bool{false, true} {
			var b bytes.Buffer
			o := Options{Width: width, Colour: colour}
			require.NoError(t, Findings(&b, samples.All(), o))
			golden.File(t, fmt.Sprintf("testdata/text-%d-%s.txt", width, map[bool]string{true: "colour", false: "plain"}[colour]), escapes.Replace(b.String()))
		}
	}
}

// escapes keeps the golden files free of what a terminal would act on.
var escapes = strings.NewReplacer("\x1b", "␛")

// On a terminal no line of a finding is wider than it, but for a name that is; and what is said
// is the same as on one line, where a program reads it.
func TestAFindingFitsTheTerminal(t *testing.T) {
	long := samples.About("house of ours.malt", "⟦soak⟧", finding.Finding{Message: strings.TrimSpace(strings.Repeat("so much is said of it, 12 °C and 3.4 kg ", 9)), Rule: "long-words"})
	short := samples.About("a.malt", "⟦soak⟧", finding.Finding{Message: "it is so", Rule: "r"})
	for _, f := range []finding.Finding{long, short} {
		var one bytes.Buffer
		require.NoError(t, Findings(&one, []finding.Finding{f}, Options{}))
		first, _, _ := strings.Cut(one.String(), "\n")
		assert.Equal(t, fmt.Sprintf("%s:1:1: note: %s [%s]", f.Place.File.Name(), f.Message, f.Rule), first)
		for _, width := range []int{40, 80, 120} {
			var b bytes.Buffer
			require.NoError(t, Findings(&b, []finding.Finding{f}, Options{Width: width}))
			head, _, _ := strings.Cut(b.String(), "    1 soak")
			for line := range strings.Lines(head) {
				assert.LessOrEqual(t, uniseg.StringWidth(strings.TrimRight(line, "\n")), width)
			}
			assert.Equal(t, first, strings.Join(strings.Fields(head), " "))
			var coloured bytes.Buffer
			require.NoError(t, Findings(&coloured, []finding.Finding{f}, Options{Width: width, Colour: true}))
			plain := ansi.ReplaceAllString(coloured.String(), "")
			assert.True(t, strings.HasPrefix(plain, head), "%q is %q", plain, head)
		}
	}
}

var ansi = regexp.MustCompile("\x1b\\[[0-9;]*m")

func TestLines(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Lines(&b, samples.All(), Options{}))
	golden.File(t, "testdata/lines.txt", b.String())
}

func TestWordsAreMarkedUnderThemselves(t *testing.T) {
	for _, width := range []int{0, 40, 80, 120} {
		for _, f := range samples.All()[:8] {
			var b bytes.Buffer
			require.NoError(t, Findings(&b, []finding.Finding{f}, Options{Width: width}))
			lines := strings.Split(b.String(), "\n")
			i := slices.IndexFunc(lines, func(line string) bool { return strings.Contains(line, "‾") })
			require.Positive(t, i)
			at := columns(lines[i], "‾")
			want := columnsOf(lines[i-1], shown(f.Place.Text()))
			assert.Equal(t, want, at, "%d\n%s\n%s", width, lines[i-1], lines[i])
		}
	}
}

// columns gives the first and last column that the marks take.
func columns(line, mark string) [2]int {
	return [2]int{uniseg.StringWidth(line[:strings.Index(line, mark)]), uniseg.StringWidth(line)}
}

func columnsOf(line, words string) [2]int {
	i := strings.LastIndex(line, words)
	return [2]int{uniseg.StringWidth(line[:i]), uniseg.StringWidth(line[:i+len(words)])}
}

func TestNoLineOfTheFileIsWiderThanAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.IntRange(leastWidth, 130).Draw(t, "width")
		text := rapid.StringOfN(rapid.SampledFrom([]rune("a b\t°麦🌾\u202e\x1be\u0301-")), 0, 300, -1).Draw(t, "text")
		start := rapid.IntRange(0, len(text)).Draw(t, "start")
		end := rapid.IntRange(start, len(text)).Draw(t, "end")
		f := finding.Finding{Place: source.Place{File: source.New("x", []byte(text)), Span: source.Span{Start: start, End: end}}}
		for _, line := range strings.Split(excerpt(f.Place, Options{Width: width}), "\n") {
			assert.LessOrEqual(t, uniseg.StringWidth(line), width, "%q", line)
		}
	})
}

func TestNothingActsOnTheTerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := string(rapid.SliceOf(rapid.Byte()).Draw(t, "text")) + rapid.String().Draw(t, "more")
		f := finding.Finding{Place: source.Place{File: source.New(text, []byte(text)), Span: source.Span{Start: 0, End: len(text)}},
			Message: text, Why: text, Hint: text}
		f.Related = []finding.Related{{Place: f.Place, Message: text}}
		for _, write := range []func(*bytes.Buffer){
			func(b *bytes.Buffer) { _ = Findings(b, []finding.Finding{f}, Options{}) },
			func(b *bytes.Buffer) { _ = Lines(b, []finding.Finding{f}, Options{}) },
		} {
			var b bytes.Buffer
			write(&b)
			assert.True(t, utf8.Valid(b.Bytes()))
			for _, r := range b.String() {
				acting := r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) && r != '\u200d')
				assert.False(t, acting, "U+%04X", r)
			}
		}
	})
}

func TestOneLineIsOneFinding(t *testing.T) {
	var b bytes.Buffer
	f := samples.About("a\nb.malt", "⟦soak⟧", finding.Finding{Message: "two\nlines", Rule: "r"})
	require.NoError(t, Lines(&b, []finding.Finding{f}, Options{}))
	assert.Equal(t, "a<U+000A>b.malt:1:1: note: two<U+000A>lines [r]\n", b.String())
}

// Of several files each line of the rest names its own, and nothing of the point is cut off.
func TestTheRestNamesItsFiles(t *testing.T) {
	var list []finding.Finding
	long := strings.Repeat("the middle of the bed is warm ", 5) + "to the end"
	for _, name := range []string{"house.malt", "pale.malt"} {
		f := source.New(name, []byte("site \"a\" { }\n"))
		for i := range 4 {
			list = append(list, finding.Finding{Rule: fmt.Sprintf("%s-%d", name[:2], i), Severity: finding.Caution, Message: long, Place: source.Place{File: f, Span: source.Span{Start: 0, End: 4}}})
		}
	}
	for _, width := range []int{40, 80} {
		var b strings.Builder
		require.NoError(t, WorstFindings(&b, list, Options{Width: width}))
		rest := strings.Join(strings.Fields(b.String()[strings.Index(b.String(), "and 3 more"):]), " ")
		assert.Equal(t, 3, strings.Count(rest, " at line 1 of pale.malt: "+long), rest)
		assert.NotContains(t, rest, "…")
	}
}

// What can hurt somebody is told in full where it is asked for, else in a line.
func TestCautionsAreALineWhereThereIsNoRoom(t *testing.T) {
	var whole, line strings.Builder
	list := []outlook.Caution{outlook.Caution(forecast.Fire), outlook.Caution(forecast.Fire)}
	require.NoError(t, Cautions(&whole, list, Options{Cautions: true}))
	require.NoError(t, Cautions(&line, list, Options{}))
	assert.Contains(t, line.String(), "(--cautions)")
	assert.Less(t, strings.Count(line.String(), "\n"), strings.Count(whole.String(), "\n"))
}
