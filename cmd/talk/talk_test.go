package talk_test

import (
	"context"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/founding"
	"maltwright/cmd/talk"
)

// says is a conversation in plain lines, and what was kept of it after each answer.
func says(t *testing.T, width int, lines string) (a founding.Answers, kept []string, shown string, err error) {
	t.Helper()
	var out strings.Builder
	p := talk.NewPlain(t.Context(), strings.NewReader(lines), &out)
	p.Width, p.Echo = width, true
	c := talk.Talk{Asker: p, Answers: founding.Answers{}, Keep: func(a founding.Answers) { kept = append(kept, string(a.Text(founding.There{}))) }}
	err = c.Run()
	return c.Answers, kept, out.String(), err
}

func TestEachAnswerIsKeptAtOnce(t *testing.T) {
	a, kept, _, err := says(t, 80, "lb\nPorch\nback\nBarn\n")
	assert.ErrorIs(t, err, talk.ErrStopped, "there is no more to read")
	assert.Equal(t, founding.Answers{"units": founding.Pounds, "house": "Barn"}, a)
	assert.Equal(t, []string{"units: °F and lb\n", "units: °F and lb\nhouse: Porch\n", "units: °F and lb\n", "units: °F and lb\nhouse: Barn\n"}, kept)
}

func TestWhatWasAnsweredIsOfferedAgain(t *testing.T) {
	a, _, shown, _ := says(t, 80, "lb\nPorch\nback\n\n")
	assert.Contains(t, shown, "[Porch] > \n")
	assert.Equal(t, "Porch", a["house"])
}

func TestAChoiceIsTakenByItsWordItsNumberOrItsBeginning(t *testing.T) {
	for _, text := range []string{"2", "lb", "°F and lb", "fahrenheit"} {
		a, _, _, _ := says(t, 80, text+"\n")
		assert.Equal(t, founding.Pounds, a["units"], text)
	}
}

func TestWhatCannotBeIsRefusedWithWhatToDo(t *testing.T) {
	a, _, shown, _ := says(t, 80, "stone\nkg\n")
	assert.Equal(t, founding.Metric, a["units"])
	assert.Contains(t, shown, `"stone" is none of`)
	_, _, shown, _ = says(t, 80, "kg\n\"x\"\n")
	assert.Contains(t, shown, "holds no quotes")
}

func TestPlainLinesFitEveryTerminal(t *testing.T) {
	for _, width := range []int{40, 80} {
		_, _, shown, _ := says(t, width, strings.Repeat("?\n\n", 60))
		require.Greater(t, strings.Count(shown, "\n"), 100)
		for line := range strings.Lines(shown) {
			assert.LessOrEqual(t, len([]rune(strings.TrimSuffix(line, "\n"))), width, line)
		}
	}
}

func TestAnInterruptEndsTheWaitForALine(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	in, typed := io.Pipe()
	defer typed.Close()
	cancel()
	c := talk.Talk{Asker: talk.NewPlain(ctx, in, io.Discard)}
	assert.ErrorIs(t, c.Run(), talk.ErrStopped)
}

func TestAnswersThatAreNoneAreNotResumed(t *testing.T) {
	c := talk.Talk{}
	assert.Equal(t, 2, c.Resume(founding.Answers{"units": founding.Metric, "house": "Porch", "grain": "granite", "lot": "x"}))
	assert.Equal(t, founding.Answers{"units": founding.Metric, "house": "Porch"}, c.Answers)
}

// lines are answers to all questions of a house that somebody gives figures of.
const lines = "lb\nPorch\nbarley\nFarm 2026\nno\nvalue\n13.1 %\n90 of 100\nnone\n12 lb\n5 gallons\n2 lb\n\ntray\n27 x 54 in\n\n\n58 to 64\n58-64\n\n1 oz\n6am to 11pm\noven\n6 sq ft\n170 to 550\n\nelectric\n\nnone\npale\nEveryday\n"

// Wherever it is stopped it goes on with the question that was open, and comes to the same answers.
func TestAConversationGoesOnWhereItWasStopped(t *testing.T) {
	whole, kept, _, err := says(t, 80, lines)
	require.NoError(t, err)
	all := strings.SplitAfter(lines, "\n")
	require.Len(t, kept, len(all)-1)
	for n := range kept {
		a, err := founding.ReadAnswers("kept", []byte(kept[n]), founding.There{})
		require.NoError(t, err, kept[n])
		p := talk.NewPlain(t.Context(), strings.NewReader(strings.Join(all[n+1:], "")), io.Discard)
		c := talk.Talk{Asker: p}
		require.Equal(t, n+1, c.Resume(a), kept[n])
		require.NoError(t, c.Run(), "after %d", n+1)
		require.Equal(t, whole, c.Answers, "after %d", n+1)
	}
}

// What Enter takes and how a figure was understood is shown as it is, also when it is gone back to.
func TestWhatIsTakenIsShown(t *testing.T) {
	_, _, shown, _ := says(t, 80, lines)
	for _, want := range []string{"Taken as 5 gal-us.", "Taken as 10.1 ft2.", "Taken as 58 to 64 °F.", "3  don't know"} {
		assert.Contains(t, shown, want)
	}
	before, _, _ := strings.Cut(lines, "27 x 54 in")
	_, _, shown, _ = says(t, 80, before+"\nback\n")
	assert.Equal(t, 2, strings.Count(shown, "[4.8 ft2] > ")+strings.Count(shown, "[4.9 ft2] > "), shown)
	a, _, _, _ := says(t, 80, before)
	assert.Equal(t, founding.None, a["vessel 2 holds"], "Enter takes the none that stands there")
}
