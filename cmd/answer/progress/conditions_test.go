package progress_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/progress"
)

// asked finds the condition that something waits for.
func asked(t *testing.T, list []progress.Condition, awaits, text string) progress.Condition {
	t.Helper()
	for _, c := range list {
		if c.Awaits() == awaits && c.Text == text {
			return c
		}
	}
	require.Failf(t, "no such condition", "%s: %s", awaits, text)
	return progress.Condition{}
}

func TestWhatWasLeftBeforeItHeldIsTold(t *testing.T) {
	f, r := followed(t, "2026-03-15 00:17")
	list := progress.ConditionsOf(f)
	for i, c := range list[1:] {
		assert.False(t, c.Time.Before(list[i].Time), c.Text)
	}
	grown := asked(t, list, "germinate", "acrospire at least 3/4 and rub is chalky")
	require.Len(t, grown.Read, 2)
	assert.True(t, grown.Noted)
	assert.Equal(t, clock(t, "2026-03-13 10:36"), grown.Time)
	assert.InDelta(t, 0.74, grown.Read[0].Value.SI, 0.005, "by hand: the middle of the kernels that grow")
	assert.True(t, grown.Read[0].Close, "0.01 is less than a count may be wrong by")
	assert.Equal(t, "gritty", grown.Read[1].Word)
	require.NotNil(t, grown.Denied())
	assert.Equal(t, "rub", grown.Denied().Measure)
	assert.True(t, grown.Otherwise())

	cured := asked(t, list, "kiln gate", "moisture at most 4.5 %")
	require.NotEmpty(t, cured.Failed)
	assert.False(t, cured.Came)
	assert.InDelta(t, float64(r.Outcome.FinalMoisture.P50), cured.Failed[0].Came.SI, 0.003, "of a cure after which nothing dries it")
	require.Len(t, cured.Read, 1)
	assert.True(t, cured.Read[0].Weighed)

	early, _ := followed(t, "2026-03-10 12:00")
	for _, c := range progress.ConditionsOf(early) {
		assert.False(t, c.Time.After(clock(t, "2026-03-10 12:01")), "%s is to come", c.Text)
	}
	chalky, _ := followed(t, "2026-03-15 00:17", "rub gritty", "rub chalky")
	grown = asked(t, progress.ConditionsOf(chalky), "germinate", grown.Text)
	assert.Nil(t, grown.Denied())
}

func TestTheMoistureOfTheWeighedMaltHasItsRange(t *testing.T) {
	f, _ := followed(t, "2026-03-15 00:17")
	w := progress.MaltWeighedOf(f)
	require.NotNil(t, w)
	assert.InDelta(t, 4.90, float64(w.Weight), 0.001)
	// by hand: of 6 kg at 12.3 % some 5.26 kg are dry, of which 9 to 11 in a hundred are gone: 4.68 to 4.79 kg in 4.90 kg
	assert.Less(t, float64(w.Low), 0.038)
	assert.Greater(t, float64(w.High), 0.038)
	assert.Less(t, float64(w.High-w.Low), 0.06)
	under, _ := followed(t, "2026-03-10 12:00")
	assert.Nil(t, progress.MaltWeighedOf(under))
}
