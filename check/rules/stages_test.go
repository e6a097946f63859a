package rules_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/finding"
)

// judgeStages checks a process of several stages of each kind, with some of its text
// changed.
func judgeStages(t *testing.T, pairs ...string) []finding.Finding {
	t.Helper()
	base, err := os.ReadFile("testdata/stages.malt")
	require.NoError(t, err)
	text := string(base)
	for i := 0; i < len(pairs); i += 2 {
		require.Equal(t, 1, strings.Count(text, pairs[i]), pairs[i])
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{}).Findings
}

func TestSeveralStagesOfAKindAreQuiet(t *testing.T) {
	for _, f := range judgeStages(t) {
		assert.Fail(t, "a false alarm", "%s: %s [%s]", f.Place.Text(), f.Message, f.Rule)
	}
}

// Each stage is judged, and it is told at the one that is meant.
func TestEachStageIsJudged(t *testing.T) {
	for name, c := range map[string]struct {
		change []string
		rule   string
		at     string // words of the place
	}{
		"the second vessel":               {[]string{"holds 30 l", "holds 9 l"}, "vessel-too-small", `steep in "barrel" to moisture 43 to 47 %`},
		"the second steep's target":       {[]string{"soak 5 h", "soak 1 h"}, "target-not-reached", "43 to 47 %"},
		"the last steep is too dry":       {[]string{" to moisture 43 to 47 %", "", "soak 5 h", "soak 10 min", "soak 3 h", "soak 30 min", " to moisture 34 to 40 %", ""}, "cast-moisture-outside", `steep in "barrel"`},
		"a soak of the second steep":      {[]string{"soak 5 h", "soak 15 h"}, "oxygen-gone", "soak 15 h in water at 13 °C"},
		"two soaks of the second steep":   {[]string{"soak 5 h in water at 13 °C", "soak 9 h in water at 13 °C; soak 9 h in water at 12 °C"}, "no-air-rest", `steep in "barrel" to moisture 43 to 47 %`},
		"the second floor's band":         {[]string{"15 to 17 °C", "25 to 27 °C"}, "bed-too-warm", "25 to 27 °C"},
		"the second floor's turns":        {[]string{"every 6 h", "every 40 h"}, "turn-gap-long", "40 h"},
		"the second floor's depth":        {[]string{"area 0.4 m2\n}\nfloor \"loft\"", "area 0.02 m2\n}\nfloor \"loft\""}, "piece-too-deep", `germinate on "floor"`},
		"a hold of the first floor":       {[]string{"hold bed at 14 to 16 °C", "hold bed at 14 to 16 °C for 2 days; hold bed at 15 °C"}, "hold-not-reached", "hold bed at 15 °C"},
		"the last floor's goal":           {[]string{"acrospire at least 3/4", "acrospire at least 1/8"}, "acrospire-goal-odd", "acrospire at least 1/8"},
		"a first floor beyond the goal":   {[]string{"acrospire at least 1/4", "acrospire at least 1 1/4"}, "acrospire-goal-odd", "acrospire at least 1 1/4"},
		"the second wither's air":         {[]string{"18 to 20 °C", "38 to 40 °C"}, "wither-too-warm", "38 to 40 °C"},
		"the second kiln's depth":         {[]string{"area 0.4 m2\n  airflow", "area 0.04 m2\n  airflow"}, "kiln-too-deep", `kiln in "oven"`},
		"the second kiln's reach":         {[]string{"83 °C", "230 °C"}, "equipment-cannot", "230 °C"},
		"the first kiln's reach":          {[]string{"62 °C", "75 °C"}, "equipment-cannot", "75 °C"},
		"a place of the other kiln":       {[]string{"oven 83 °C", "air-on 83 °C"}, "heat-of-another-kiln", "air-on 83 °C"},
		"the second kiln's flue":          {[]string{"heater 2.2 kW\n  fired electric", "heater 2.2 kW\n  fired gas by direct"}, "gas-oven-indoors", "gas"},
		"no cooling on the last":          {[]string{"    cool to malt 30 °C\n", ""}, "no-cooling", "oven 83 °C"},
		"hotter in the second when wet":   {[]string{"at most 9 %", "at most 15 %", "    gate moisture at most 10 % allow 0 to 6 h\n", ""}, "cure-without-gate", "oven 83 °C"},
		"a gate laxer than the first":     {[]string{"gate moisture at most 10 % allow", "gate moisture at most 30 % allow"}, "test-holds-already", "moisture at most 30 %"},
		"never stirred in the second":     {[]string{"make pale", "make amber", "83 °C", "150 °C"}, "never-stirred", "oven 150 °C"},
		"total of the stages":             {[]string{"expect final moisture 3 to 5.5 %", "expect total time at most 2 days"}, "stated-total-differs", "total time at most 2 days"},
		"all the growing together":        {[]string{"    until acrospire at least 1/4\n    allow 1 to 4 days", "    for 30 days", "    until acrospire at least 3/4 and rub is chalky\n    allow 1 to 6 days", "    for 6 days"}, "too-long-to-modify", "6 days"},
		"by the clock alone on both":      {[]string{"    until acrospire at least 1/4\n    allow 1 to 4 days", "    for 2 days", "    until acrospire at least 3/4 and rub is chalky\n    allow 1 to 6 days", "    for 2 days"}, "stop-by-days-only", "2 days"},
		"too short on both":               {[]string{"    until acrospire at least 1/4\n    allow 1 to 4 days", "    for 1 day", "    until acrospire at least 3/4 and rub is chalky\n    allow 1 to 6 days", "    for 14 h"}, "too-short-to-modify", "14 h"},
		"a guard of the second kiln":      {[]string{"gate moisture at most 5 % allow 0 to 6 h", "gate moisture at most 1 % allow 0 to 1 h"}, "gate-not-reached", "moisture at most 1 %"},
		"an odd time, all of it together": {[]string{"for 4 h", "for 4 days", "2 to 30 h", "4 to 5 days"}, "step-time-odd", "5 days"},
	} {
		t.Run(name, func(t *testing.T) {
			found := judgeStages(t, c.change...)
			var said []string
			for _, f := range found {
				if f.Rule == c.rule && strings.Contains(f.Place.Text(), c.at) {
					return
				}
				said = append(said, f.Rule+" at "+f.Place.Text()+": "+f.Message)
			}
			assert.Fail(t, "not told", "%s at %s, but\n%s", c.rule, c.at, strings.Join(said, "\n"))
		})
	}
}

// recorded is the record of a batch that went as it was forecast.
const recorded = `batch "26-09" of "several" {
  began   2026-03-06 07:00
  weighed 4.86 kg at 2026-03-06 13:00 after soak 1
  weighed 5.47 kg at 2026-03-07 06:00 after soak 2
  read    bed 15.1 °C at 2026-03-07 14:00
  turned  at 2026-03-07 14:00
  turned  at 2026-03-07 22:00
  weighed 5.48 kg at 2026-03-08 02:00 after germinate 1
  weighed 6.07 kg at 2026-03-08 07:00 after soak 3
  turned  at 2026-03-08 14:00
  turned  at 2026-03-08 21:00
  turned  at 2026-03-09 04:00
  read    bed 15.9 °C at 2026-03-09 08:00
  turned  at 2026-03-09 11:00
  weighed 5.97 kg at 2026-03-09 17:30 after germinate 2
  turned  at 2026-03-09 23:30
  turned  at 2026-03-10 06:00
  read    bed 16.4 °C at 2026-03-10 08:00
  turned  at 2026-03-10 14:00
  turned  at 2026-03-10 22:00
  turned  at 2026-03-11 06:00
  turned  at 2026-03-11 14:00
  turned  at 2026-03-11 22:00
  turned  at 2026-03-12 06:00
  counted acrospire 3 0 4 44 42 7 at 2026-03-12 14:00
  weighed 5.53 kg at 2026-03-12 15:10 after germinate 3
  weighed 5.36 kg at 2026-03-12 19:10 after wither 1
  weighed 5.22 kg at 2026-03-12 21:10 after wither 2
  read    air-on 50 °C at 2026-03-12 23:00
  weighed 4.07 kg at 2026-03-13 00:10 after dry 1
  weighed 3.66 kg at 2026-03-13 06:00 after dry 2
  read    oven 83 °C at 2026-03-13 09:00
  weighed 3.49 kg at 2026-03-13 11:00 after cure
  weighed 3.38 kg clean malt at 2026-03-13 12:30
}
`

func TestARecordNamesSeveralStagesByNumber(t *testing.T) {
	record := func(pairs ...string) (said []string) {
		text := recorded
		for i := 0; i < len(pairs); i += 2 {
			require.Contains(t, text, pairs[i])
			text = strings.Replace(text, pairs[i], pairs[i+1], 1)
		}
		for _, f := range judgeStages(t, "process \"several\"", text+"process \"several\"") {
			said = append(said, f.Rule+" at "+f.Place.Text()+"; do "+f.Hint)
		}
		return said
	}
	assert.Empty(t, record())
	assert.Equal(t, []string{"record-out-of-order at germinate; do the process has several: write which one, such as after germinate 2"},
		record("germinate 1\n", "germinate\n", "germinate 2\n", "germinate\n"))
	assert.NotEmpty(t, record("germinate 1\n", "germinate 4\n", "germinate 2\n", "germinate 1\n", "germinate 4\n", "germinate 2\n"), "in the wrong order")
	assert.NotEmpty(t, record("5.97 kg", "7.59 kg"), "digits swapped on the second floor")
	assert.NotEmpty(t, record("3.49 kg", "4.39 kg"), "digits swapped on the second kiln")
	assert.NotEmpty(t, record("at 2026-03-08 07:00 after soak 3", "at 2026-03-09 07:00 after soak 3"), "a day off in the second steep")
}
