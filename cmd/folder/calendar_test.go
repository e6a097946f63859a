package folder_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
)

// events gives the events of a calendar as another reader than its writer has them, by UID.
func events(t *testing.T, d *folder.Folder, now time.Time) (map[string]*ical.Event, *ical.Calendar) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, d.Calendar(t.Context(), &out, now))
	cal, err := ical.NewDecoder(&out).Decode()
	require.NoError(t, err)
	list := map[string]*ical.Event{}
	for _, e := range cal.Events() {
		id, err := e.Props.Text(ical.PropUID)
		require.NoError(t, err)
		require.NotContains(t, list, id)
		list[id] = &e
	}
	return list, cal
}

func startOf(t *testing.T, e *ical.Event) time.Time {
	t.Helper()
	when, err := e.DateTimeStart(time.UTC)
	require.NoError(t, err)
	return when
}

// One calendar holds the visits of all batches under way, and says how often it is to be asked for.
func TestTheCalendarHoldsAllBatchesUnderWay(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "more/26-07.malt", strings.NewReplacer(`"26-06"`, `"26-07, the; second"`, "pale.malt", "../pale.malt").Replace(began))
	put(t, dir, "26-01.malt", strings.NewReplacer(`"26-06"`, `"26-01"`, "2026-03-06", "2025-12-06").Replace(began))
	d := opened(t, dir, noon)
	list, cal := events(t, d, noon)
	for name, want := range map[string]string{"REFRESH-INTERVAL": "PT15M", "X-PUBLISHED-TTL": "PT15M", "METHOD": "PUBLISH"} {
		require.NotNil(t, cal.Props.Get(name), name)
		assert.Equal(t, want, cal.Props.Get(name).Value)
	}
	for _, list := range cal.Props {
		for _, p := range list {
			for name, values := range p.Params {
				assert.Len(t, values, 1, "%s;%s: a parameter stands once", p.Name, name)
			}
		}
	}
	assert.Equal(t, "DURATION", cal.Props.Get("REFRESH-INTERVAL").Params.Get("VALUE"))
	of := map[string]int{}
	for _, e := range list {
		summary, err := e.Props.Text(ical.PropSummary)
		require.NoError(t, err)
		name, _, found := strings.Cut(summary, ": ")
		require.True(t, found, summary)
		of[name]++
		assert.False(t, startOf(t, e).Before(noon.Add(-24*time.Hour)))
	}
	assert.Len(t, of, 2)
	assert.Equal(t, of["26-06"], of["26-07, the; second"])
	assert.Greater(t, of["26-06"], 10)
}

// A reading that moves the visits moves their events, and makes no others of them.
func TestAnEventMovesWithItsVisit(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	before, _ := events(t, d, noon)
	put(t, dir, "26-06.malt", strings.Replace(began, "}\n", "  changed soak 1 to 9 h because \"left for work\"\n}\n", 1))
	after, _ := events(t, d, noon)
	require.Len(t, after, len(before))
	moved := 0
	for id, e := range after {
		require.Contains(t, before, id)
		if !startOf(t, e).Equal(startOf(t, before[id])) {
			moved++
		}
	}
	assert.Greater(t, moved, 5)
}

// The same folder at the same time is the same calendar, byte for byte.
func TestTheSameFolderIsTheSameCalendar(t *testing.T) {
	dir := malthouse(t)
	one, two := &bytes.Buffer{}, &bytes.Buffer{}
	require.NoError(t, opened(t, dir, noon).Calendar(t.Context(), one, noon))
	require.NoError(t, opened(t, dir, noon).Calendar(t.Context(), two, noon))
	assert.Equal(t, one.String(), two.String())
	for _, line := range strings.Split(strings.TrimSuffix(one.String(), "\r\n"), "\r\n") {
		assert.LessOrEqual(t, len(line), 75)
	}
}

// A slip of the pen in a record takes no alarm from anybody, and what is put right counts again.
func TestTheCalendarOfARecordThatNoLongerReadsStands(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	was, _ := events(t, d, noon)
	require.NotEmpty(t, was)
	for _, broken := range []string{began + "weighed 7.4 kg after soak one\n}\n", strings.Replace(began, "batch", "bach", 1), "}"} {
		put(t, dir, "26-06.malt", broken)
		now, _ := events(t, d, noon)
		assert.Len(t, now, len(was), broken)
	}
	put(t, dir, "26-06.malt", "# nothing is under way\n")
	now, _ := events(t, d, noon)
	assert.Empty(t, now)
}
