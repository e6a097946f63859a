package man

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/reference"
)

// sample has all that a command can have.
var sample = Command{
	About:    "A program. It has a second sentence.",
	Detail:   "First paragraph,\nin two lines.\n\nExamples:\n\n  prog 'x' --y\n\nMore of it:\n\n  a line\n  another\n\nExit code: 0 good, 1 bad.",
	Usage:    "<command> [flags]",
	Flags:    []Word{{"-h, --help", "Help."}, {"--start=TIME", "When; 14 °C."}},
	Commands: []Command{{Path: "reckon", About: "Sums.", Commands: []Command{{Path: "reckon target", About: "A target.", Arguments: []Word{{"weight", "A weight."}}}}}},
}

func TestThereIsAPageForEachCommandBelowOnes(t *testing.T) {
	var names []string
	for _, p := range Pages(sample, Stamp{}) {
		names = append(names, p.File())
	}
	assert.Equal(t, []string{"man1/maltwright.1", "man1/maltwright-reckon.1", "man1/maltwright-reckon-target.1"}, names)
}

func TestAPageSaysWhatTheHelpSays(t *testing.T) {
	text := Pages(sample, Stamp{Version: "1.2.3", Time: time.Date(2026, 3, 6, 23, 30, 0, 0, time.UTC)})[0].Text
	assert.True(t, strings.HasPrefix(text, Mark))
	for _, part := range []string{
		".TH MALTWRIGHT 1 2026\\-03\\-06 \"maltwright 1.2.3\" maltwright\n",
		"maltwright \\- a program. It has a second sentence\n",
		"First paragraph, in two lines.\n",
		".SH EXAMPLES\n.RS 2\n.nf\nprog \\(aqx\\(aq \\-\\-y\n.fi\n",
		"More of it:\n.PP\n.RS 2\n.nf\na line\nanother\n.fi\n",
		".SH \"EXIT STATUS\"\n0 good, 1 bad.\n",
		".TP\n\\fB\\-\\-start\\fR=\\fITIME\\fR\nWhen; 14 \\[u00B0]C.\n",
	} {
		assert.Contains(t, text, part)
	}
	assert.Less(t, strings.Index(text, "More of it"), strings.Index(text, "EXIT STATUS"), "what follows examples and is none is of the description")
}

func TestAPageOfNoKnownVersionHasNoDate(t *testing.T) {
	assert.Contains(t, Pages(sample, Stamp{})[0].Text, ".TH MALTWRIGHT 1 \"\" maltwright maltwright\n")
}

// Signs that man has a meaning for are printed as they were.
func TestNothingOfATextIsTakenForARequest(t *testing.T) {
	r := &roff{}
	r.prose(`.TH is no request, nor is \fB; "quotes" 'stay' and so do ~ ^ ` + "` — ½ 𝄞")
	require.Equal(t, ".PP\n\\&.TH is no request, nor is \\efB; \\(dqquotes\\(dq \\(aqstay\\(aq and so do \\(ti \\(ha \\(ga \\[u2014] \\[u00BD] \\[u1D11E]\n", r.b.String())
}

func TestALongBlockStandsInLinesOfItsOwn(t *testing.T) {
	assert.Equal(t, []string{"vessel \"blue tub\" { holds 25 l }"}, laid("vessel \"blue tub\" { holds 25 l }\n"))
	assert.Equal(t, []string{
		"germinate on \"larch floor\" {", "  hold bed at 14 to 17 °C", "  turn every 8 h", "  until acrospire at least 3/4", "  allow 4 to 7 days", "}",
	}, laid("germinate on \"larch floor\" { hold bed at 14 to 17 °C; turn every 8 h; until acrospire at least 3/4; allow 4 to 7 days }"))
}

// Head and foot are set on 60 columns, each part at its place: left, middle, right.
func TestHeadAndFootFitIntoSixtyColumns(t *testing.T) {
	for _, version := range []string{"", "1.2.3", "10.20.3-rc.1", "0.0.0-20260306070809.g104b3ffdcc11", "0.0.0-20260306070809-104b3ffdcc11", "1.2.3-rc.1+changed"} {
		for _, name := range []string{"maltwright", "maltwright-forecast", "maltwright-completion", "maltwright-reckon-basis", "maltwright-reckon-germination"} {
			said := title(name) + "(1)"
			middle := func(text string) (from, to int) { return (60 - len(text)) / 2, (60 + len(text) + 1) / 2 }
			from, to := middle(program)
			assert.LessOrEqual(t, len(said), from, "left of the head")
			assert.GreaterOrEqual(t, 60-len(said), to, "right of the head")
			from, to = middle("2026-03-06")
			assert.Less(t, len(strings.TrimSpace(program+" "+short(version))), from, version)
			assert.Greater(t, 60-len(said), to, name)
		}
	}
	assert.Equal(t, "0.0.0", short("0.0.0-20260306070809.g104b3ffdcc11"))
	assert.Equal(t, "1.2.3-rc.1", short("1.2.3-rc.1"))
	assert.Equal(t, "RECKON-GERMINATION", title("maltwright-reckon-germination"))
	assert.Equal(t, "MALTWRIGHT-FORECAST", title("maltwright-forecast"))
}

func TestWhatAMeasureIsAndHowItLooksAreSentencesOfTheirOwn(t *testing.T) {
	text := Language(Reference{Entries: []reference.Entry{{
		Kind: reference.Measure, Name: "rub", Doc: "what a kernel does when it is rubbed", Words: []string{"gummy", "chalky"}, Looks: "halve a kernel",
	}}}, Stamp{}).Text
	assert.Contains(t, text, "What a kernel does when it is rubbed. It is one of: gummy, chalky. Halve a kernel.\n")
	assert.Equal(t, "2 kg a pail; \u201cdry\u201d.", sentence("2 kg a pail; \u201cdry\u201d."))
	assert.Equal(t, "\u00c9t\u00e9?", sentence("\u00e9t\u00e9?"))
	assert.Empty(t, sentence(""))
}
