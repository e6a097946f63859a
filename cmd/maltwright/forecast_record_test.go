package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// halfWay is a folder in which the first batch of the examples grows, five days after its start.
func halfWay(t *testing.T) string {
	t.Helper()
	folder := house(t, "batches/pale.malt", "batches/loft.malt", "batches/26-03.malt")
	whole, err := os.ReadFile(filepath.Join(folder, "26-03.malt"))
	require.NoError(t, err)
	part, _, ok := strings.Cut(string(whole), "  counted acrospire 4 13")
	require.True(t, ok)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "mid.malt"), []byte(part+"}\n"), 0o600))
	return folder
}

// A record is forecast as it went so far, and its visits are those to come, as follow lists them.
func TestARecordIsForecastByItself(t *testing.T) {
	folder := halfWay(t)
	code, out, errs := runIn(folder, "forecast", "mid.malt")
	require.Equal(t, ExitClean, code, errs)
	assert.Contains(t, out, "first soak Friday 6 March 2026, 07:00\n")
	assert.Regexp(t, `(?m)^soak 2 +23 h Sat 06:00 .* by the record$`, out, "weighed at that time")
	assert.Regexp(t, `(?m)^wither .* condition met$`, out, "yet to come")
	assert.Contains(t, errs, "by its readings until 2026-03-11 06:30; how sure it is says: maltwright follow mid.malt")

	var table struct {
		Start, Ready time.Time
		Night        *struct{}
		Visits       []struct{ Time time.Time }
	}
	code, out, errs = runIn(folder, "visits", "mid.malt", "--format", "json")
	require.Equal(t, ExitClean, code, errs)
	require.NoError(t, json.Unmarshal([]byte(out), &table))
	var stand struct {
		Due   []struct{ Time time.Time }
		Steps []struct {
			Step string
			End  struct{ P50 float64 } `json:"end_h"`
		}
	}
	code, out, errs = runIn(folder, "follow", "mid.malt", "--format", "json")
	require.Equal(t, ExitClean, code, errs)
	require.NoError(t, json.Unmarshal([]byte(out), &stand))
	require.NotEmpty(t, stand.Due)
	assert.Equal(t, stand.Due, table.Visits)
	assert.Nil(t, table.Night, "no other start is sought")
	code, out, errs = runIn(folder, "visits", "mid.malt")
	require.Equal(t, ExitClean, code, errs)
	assert.Regexp(t, `(?m)^night +\d+ of the \d+ visits to come, with nobody awake within an hour$`, out, "the site says when somebody is awake")
	last := time.Date(2026, 3, 11, 6, 30, 0, 0, time.Local)
	for _, v := range table.Visits {
		assert.False(t, v.Time.Before(last), "%s is past", v.Time)
	}
	assert.True(t, table.Ready.After(last) && table.Ready.Before(last.AddDate(0, 0, 6)), table.Ready)

	code, _, errs = runIn(folder, "visits", "26-03.malt")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, `batch "26-03" is over; nothing is left to do`)
	for _, line := range []string{"forecast mid.malt --start 7am", "visits mid.malt --start 7am"} {
		code, _, errs = runIn(folder, strings.Fields(line)...)
		assert.Equal(t, ExitUsage, code)
		assert.Contains(t, errs, "mid.malt says itself when its batch began", line)
	}
	code, _, errs = runIn(folder, "forecast", "mid.malt", "--spread")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "how sure its forecast is says: maltwright follow mid.malt")
}

// Before anything was read it goes by its start, its charge and what was changed.
func TestARecordWithoutReadingsGoesByItsChanges(t *testing.T) {
	folder := house(t, "batches/pale.malt", "batches/loft.malt")
	const record = "use \"pale.malt\"\n\nbatch \"26-09\" of \"Loft pale\" {\n  began 2026-03-06 09:00\n  from 5 kg of \"Far field 2026\"\n  changed soak 1 to 5 h because \"left early\"\n}\n"
	require.NoError(t, os.WriteFile(filepath.Join(folder, "26-09.malt"), []byte(record), 0o600))
	code, out, errs := runIn(folder, "forecast", "26-09.malt")
	require.Equal(t, ExitClean, code, errs)
	assert.Contains(t, out, "from 5 kg of")
	assert.Regexp(t, `(?m)^soak 1 +5 h Fri 14:00 `, out)
	assert.Contains(t, errs, "by its start and its process; it has no readings yet")
	code, out, errs = runIn(folder, "visits", "26-09.malt")
	require.Equal(t, ExitClean, code, errs)
	assert.Regexp(t, `(?m)^ +14:00 .*drain soak 1`, out)
}
