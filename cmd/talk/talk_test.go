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
