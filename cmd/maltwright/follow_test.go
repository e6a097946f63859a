package main

import (
	"encoding/json"
	"io"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

const firstBatch = "../../examples/batches/26-03.malt"

// followed is how the first batch stood.
type followed struct {
	answer progress.Result
	house  words.House
}

// shownFollow writes how the first batch stood at a time, by few forecasts.
func shownFollow(t *testing.T, width int, at, format string) string {
	t.Helper()
	var out strings.Builder
	here, err := os.Getwd()
	require.NoError(t, err)
	w := World{In: strings.NewReader(""), Out: &out, Err: &out, Folder: here, Terminal: width > 0, Width: width, Env: func(string) string { return "" }}
	f := once(t, func() followed {
		c := Follow{File: firstBatch, At: at}
		b, err := c.batch(&w)
		require.NoError(t, err)
		when, why, err := c.time(&w, b)
		require.NoError(t, err)
		f, err := follow.Of(t.Context(), b, when, follow.Options{Members: 20})
		require.NoError(t, err)
		return followed{progress.Of(f, when, why), words.Of(f.Trial.Process)}
	}, "follow", at)
	require.NoError(t, followWriters[format](&w, f.answer, f.house))
	return out.String()
}

// The answer in the guide is the end of what the program prints, as a terminal shows it.
func TestTheFollowingOfTheGuideIsReal(t *testing.T) {
	longSums(t)
	here, err := os.Getwd()
	require.NoError(t, err)
	code, out, errs := runIn(here, "follow", firstBatch, "--at", "2026-03-11T12:00")
	require.Equal(t, ExitClean, code, errs)
	_, answer, ok := strings.Cut(out, "\n\nbatch ")
	require.True(t, ok)
	guideShows(t, "batch 26-03 of Loft pale\nas of ", "batch "+answer)
}

func TestFollowFitsTheWidth(t *testing.T) {
	colour := regexp.MustCompile("\x1b\\[[0-9;]*m")
	for _, at := range []string{"2026-03-06T07:00", "2026-03-08T12:00", "2026-03-14T09:30", "2026-03-14T11:30"} {
		for line := range strings.Lines(shownFollow(t, 80, at, "text")) {
			line = colour.ReplaceAllString(strings.TrimRight(line, "\n"), "")
			assert.LessOrEqual(t, uniseg.StringWidth(line), 80, line)
		}
	}
}

// For programs: as of a time at which the batch waits for dryness.
func TestFollowAsJSON(t *testing.T) {
	var out struct {
		Format int
		Batch  string
		Waits  []struct {
			Text string
			Open bool
		}
		Outcome map[string]struct{ P10, P50, P90 float64 }
	}
	text := shownFollow(t, 0, "2026-03-14T09:30", "json")
	require.NoError(t, json.Unmarshal([]byte(text), &out))
	assert.Equal(t, 2, out.Format)
	assert.Equal(t, "26-03", out.Batch)
	require.NotEmpty(t, out.Waits)
	assert.True(t, out.Waits[0].Open)
	assert.Equal(t, "moisture at most 25 %", out.Waits[0].Text)
	// 6 kg of barley give some 5 kg of malt, which is some 83 % of it, in a week.
	for key, within := range map[string][2]float64{"malt_kg": {4.7, 5.2}, "yield_as_is_pct": {79, 86}, "total_h": {195, 215}, "final_moisture_wb_pct": {3, 6},
		"steep_out_moisture_wb_pct": {40, 46}, "diastatic_kept_pct": {50, 80}} {
		require.Contains(t, out.Outcome, key)
		assert.InDelta(t, (within[0]+within[1])/2, out.Outcome[key].P50, (within[1]-within[0])/2, key)
	}
}

// As of which time a batch is followed where nothing is asked.
func TestTheTimeOfFollowing(t *testing.T) {
	at := func(clock string) time.Time {
		when, err := time.ParseInLocation("2006-01-02 15:04", clock, time.Local)
		require.NoError(t, err)
		return when
	}
	b := &model.Batch{Began: model.Instant{Time: at("2026-03-06 07:00")},
		Readings: []model.Reading{&model.Turned{Seen: model.Seen{At: model.Instant{Time: at("2026-03-08 07:00")}}}}}
	for now, want := range map[string]string{
		"2026-03-09 12:00": "2026-03-09 12:00", // now
		"2026-03-20 12:00": "2026-03-08 07:00", // long over
		"2026-03-07 12:00": "2026-03-08 07:00", // the clock of the computer is behind
	} {
		got, why, err := Follow{}.time(&World{clock: func() time.Time { return at(now) }}, b)
		require.NoError(t, err)
		assert.Equal(t, at(want), got, now)
		assert.Equal(t, now != want, words.AsOf[why] != "", now)
	}
	w := &World{clock: func() time.Time { return at("2026-03-09 12:00") }, Err: io.Discard}
	_, _, err := Follow{At: "soon"}.time(w, b)
	assert.ErrorContains(t, err, "is no time")
	got, _, err := Follow{At: "yesterday 21:00"}.time(w, b)
	require.NoError(t, err)
	assert.Equal(t, at("2026-03-08 21:00"), got)
}
