package founding

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
)

func TestAStarterReadsInBothUnits(t *testing.T) {
	for _, like := range Likes() {
		for _, units := range []string{Metric, Pounds} {
			a, ok := Like(like, units)
			require.True(t, ok)
			r, err := Write(context.Background(), a, There{})
			require.NoError(t, err)
			require.Len(t, r.Files, 2)
			_, found := read.Load(r.In, r.Files[1].Text, ".", beside{r.Files[0], nil})
			assert.Empty(t, found)
			require.NotNil(t, r.Forecast)
		}
	}
}

func TestAFileOfAnswersIsReadInAnyOrder(t *testing.T) {
	a, err := ReadAnswers("answers.txt", []byte("# mine\ncharge: 10\nunits: F\nair: 48-62\nGRAIN: oat\n"), There{})
	require.NoError(t, err)
	assert.Equal(t, Answers{"units": Pounds, "charge": "10 lb", "air": "48 to 62 °F", "grain": "oats"}, a)
	_, err = ReadAnswers("answers.txt", []byte("units: F\ncharg: 10\n"), There{})
	assert.EqualError(t, err, `answers.txt:2: "charg" is not asked for, as far as the answers go; did you mean charge?`)
	_, err = ReadAnswers("answers.txt", []byte("treated: yes\n"), There{})
	assert.ErrorContains(t, err, "treated seed is poison")
}
