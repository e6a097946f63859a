package founding

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Wherever a conversation stops, its answers come back from the text that is kept of them, and it goes
// on with the question that was open.
func TestAnswersComeBackFromTheirTextWhereverItStops(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := Answers{}
		whole := answered(t, There{})
		every := rapid.IntRange(3, 9).Draw(t, "it stops after each so many answers")
		for n := 0; ; n++ {
			if q, open := Next(a, There{}); open && n%every != 0 {
				a[q.Key] = whole[q.Key]
				continue
			}
			kept, err := ReadAnswers("kept", a.Text(There{}), There{})
			require.NoError(t, err)
			require.Equal(t, a, kept)
			q, open := Next(a, There{})
			again, openAgain := Next(kept, There{})
			require.Equal(t, open, openAgain)
			if !open {
				return
			}
			require.Equal(t, q.Key, again.Key)
			a[q.Key] = whole[q.Key]
			taken, err := q.Take(whole[q.Key])
			require.NoError(t, err)
			require.Equal(t, whole[q.Key], taken, "an answer read anew is the same: %s", q.Key)
		}
	})
}
