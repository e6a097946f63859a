package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
)

// about makes a finding about the words between the brackets ⟦ ⟧ of a text.
func about(name, text string, f finding.Finding) finding.Finding {
	start := strings.Index(text, "⟦")
	text = strings.Replace(text, "⟦", "", 1)
	end := strings.Index(text, "⟧")
	text = strings.Replace(text, "⟧", "", 1)
	f.Place = source.Place{File: source.New(name, []byte(text)), Span: source.Span{Start: start, End: end}}
	return f
}

var long = strings.Repeat("the tub by the north window ", 12)

// samples are findings about lines that are hard to show.
func samples() []finding.Finding {
	fault := finding.Finding{Severity: finding.Fault, Rule: "a-rule", Message: "the malt is at 62.4 °C while it still holds 31 % moisture",
		Why:  "above 50 °C the enzymes of wet malt are lost; 62.4 °C at 31 % leaves about a third of them, as the forecast of this batch has it",
		Hint: "hold 50 °C until the moisture is at most 12 %"}
	with := func(s finding.Severity, message string) finding.Finding {
		f := fault
		f.Severity, f.Message = s, message
		return f
	}
	first := about("loft.malt", "kiln {\n  cure at ⟦air-on 82 °C⟧ for 4 h # hot\n}", fault)
	related := about("loft.malt", "kiln {\n  ⟦dry at air-on 50 °C⟧ for 4 h\n}", with(finding.Danger, "people can be hurt"))
	related.Related = []finding.Related{{Place: first.Place, Message: "it was this"}, {Message: "nowhere"}}
	first.Fixes = []finding.Edit{{Place: first.Place, New: "air-on 50 °C"}}
	return []finding.Finding{
		first,
		related,
		about("tabs.malt", "\t\tsoak\t⟦7\th⟧\tin water", with(finding.Caution, "a line with tabs")),
		about("wide.malt", `vessel "大麦の桶" { ⟦大きい⟧ 25 l }`, with(finding.Note, "wide characters")),
		about("emoji.malt", "soak 7 h # 👩‍🌾 ⟦🌾🌾⟧ é", with(finding.Note, "an emoji of several parts")),
		about("long.malt", "# "+long+"⟦blue tub⟧ "+long, with(finding.Note, "words in the middle of a long line")),
		about("start.malt", "⟦soak⟧ # "+long, with(finding.Note, "words at the start of a long line")),
		about("end.malt", "# "+long+"⟦soak⟧", with(finding.Note, "words at the end of a long line")),
		about("all.malt", "⟦# "+long+"⟧", with(finding.Note, "a long line of nothing else")),
		about("hidden.malt", "soak \x1b[31m⟦7\u202e h⟧\x00\u2028\ufeff\xb0", with(finding.Fault, "not \x1b[2Jraw\u202e")),
		about("several.malt", "⟦steep {\n  soak 7 h\n}⟧", with(finding.Note, "several lines")),
		about("empty.malt", "soak⟦⟧", with(finding.Note, "no words at all")),
		{Severity: finding.Caution, Rule: "no-place", Message: "nothing in the file says how much grain there is"},
	}
}

func TestText(t *testing.T) {
	for _, width := range []int{40, 80, 120} {
		for _, colour := range []bool{false, true} {
			var b bytes.Buffer
			o := Options{Width: width, Colour: colour}
			require.NoError(t, Text(&b, samples(), o))
			golden.File(t, fmt.Sprintf("testdata/text-%d-%s.txt", width, map[bool]string{true: "colour", false: "plain"}[colour]), escapes.Replace(b.String()))
		}
	}
}

// escapes keeps the golden files free of what a terminal would act on.
var escapes = strings.NewReplacer("\x1b", "␛")

func TestLines(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Lines(&b, samples(), Options{}))
	golden.File(t, "testdata/lines.txt", b.String())
}

func TestJSON(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, JSON(&b, samples(), []NotJudged{{"loft.malt", "", "vessel-too-small", "the vessel's volume is not given"}}, Options{}))
	golden.File(t, "testdata/findings.json", b.String())

	b.Reset()
	require.NoError(t, JSON(&b, nil, nil, Options{}))
	var empty map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &empty))
	assert.Equal(t, map[string]any{"findings": []any{}, "not_judged": []any{}}, empty)
}

func TestWordsAreMarkedUnderThemselves(t *testing.T) {
	for _, width := range []int{0, 40, 80, 120} {
		for _, f := range samples()[:8] {
			var b bytes.Buffer
			require.NoError(t, Text(&b, []finding.Finding{f}, Options{Width: width}))
			lines := strings.Split(b.String(), "\n")
			at := columns(lines[2], "‾")
			want := columnsOf(lines[1], shown(f.Place.Text()))
			assert.Equal(t, want, at, "%d\n%s\n%s", width, lines[1], lines[2])
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
			func(b *bytes.Buffer) { _ = Text(b, []finding.Finding{f}, Options{}) },
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
	f := about("a\nb.malt", "⟦soak⟧", finding.Finding{Message: "two\nlines", Rule: "r"})
	require.NoError(t, Lines(&b, []finding.Finding{f}, Options{}))
	assert.Equal(t, "a<U+000A>b.malt:1:1: note: two<U+000A>lines [r]\n", b.String())
}

func TestNamesAreShownFromTheFolder(t *testing.T) {
	o := Options{Folder: "/home/mara/house"}
	for name, want := range map[string]string{
		"/home/mara/house/rooms/loft.malt": "rooms/loft.malt",
		"/home/mara/other/loft.malt":       "/home/mara/other/loft.malt",
		"loft.malt":                        "loft.malt",
		"-":                                "-",
	} {
		assert.Equal(t, want, o.name(name))
	}
}

func TestWrapBreaksBetweenWords(t *testing.T) {
	assert.Equal(t, []string{"one two", "three"}, Wrap("one two three", 7))
	assert.Equal(t, []string{"a", "verylongword", "b"}, Wrap("a verylongword b", 5))
	assert.Equal(t, []string{"大麦", "大麦"}, Wrap("大麦 大麦", 6))
	assert.Equal(t, []string{""}, Wrap("", 10))
}
