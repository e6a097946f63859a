package rules_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/check/rules"
	"maltwright/lang/finding"
)

// Each row writes a process in which a rule finds a fault, and leaves out what its house
// says of what decides it: then the forecast assumes that, and the fault is a caution that
// says what to write.
func TestAFaultThatRestsOnAnAssumptionIsACaution(t *testing.T) {
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	const (
		airflow = "  airflow 90 m3/h\n"
		drying  = "    dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h\n    dry from air-on 52 to 62 °C over 4 h until moisture at most 10 %\n    gate moisture at most 10 % allow 0 to 12 h\n"
		curing  = "    cure at air-on 82 °C for 5 h\n    gate moisture at most 5 % allow 0 to 4 h\n"
	)
	type change struct{ was, is string }
	for rule, row := range map[string]struct {
		rule    string
		changes []change
		left    change // what is left out
		settle  string
	}{
		"a weak heater": {"equipment-cannot", []change{{"heater 3 kW", "heater 300 W"}, {"  reaches 25 to 110 °C\n", ""}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"a weak heater, and no word of air led back": {"equipment-cannot", []change{{"heater 3 kW", "heater 700 W\n  returns 0 %"}}, change{"\n  returns 0 %", ""}, `write returns of kiln "base kiln"`},
		"little air":                   {"equipment-cannot", []change{{drying, "    dry at air-on 50 °C until moisture at most 10 % allow 0 to 1 h\n"}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"a room":                       {"equipment-cannot", []change{{"cool to malt 30 °C", "cool to malt 10 °C"}}, change{"  air 13 to 15 °C\n", ""}, `write air of site "base room"`},
		"a gate":                       {"gate-not-reached", []change{{"gate moisture at most 5 % allow 0 to 4 h", "gate moisture at most 2 % allow 0 to 1 h"}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"a gate that says no time":     {"gate-not-reached", []change{{drying, "    dry at air-on 40 °C for 1 h\n    gate moisture at most 9.5 % allow 0 to 12 h\n"}}, change{"9.5 % allow 0 to 12 h", "9.5 %"}, "write how long the gate may wait"},
		"a guard":                      {"guard-came-first", []change{{drying, "    dry at air-on 50 °C until moisture at most 6 % allow 0 to 6 h\n"}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"malt that moulds":             {"end-moisture-high", []change{{drying, "    dry at air-on 50 °C for 3 h\n"}, {curing, ""}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"hot and wet by a step before": {"hot-while-wet", []change{{drying, "    dry at air-on 45 °C for 1 h\n    dry at malt 65 °C for 5 h\n"}, {curing, ""}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"a promise":                    {"expectation-broken", []change{{curing, "    cure at air-on 82 °C for 1 h\n"}}, change{airflow, ""}, `write airflow of kiln "base kiln"`},
		"a promise of malt":            {"expectation-broken", []change{{"expect final moisture 3 to 5 %", "expect yield at least 95 %"}}, change{"  moisture 12 %\n", ""}, "write moisture of the lot"},
		"a vessel":                     {"vessel-too-small", []change{{"holds 20 l", "holds 9 l"}}, change{}, "write how much water there is"},
	} {
		t.Run(rule, func(t *testing.T) {
			text := string(base)
			for _, c := range row.changes {
				require.Contains(t, text, c.was)
				text = strings.Replace(text, c.was, c.is, 1)
			}
			if row.left.was != "" {
				assertFinding(t, row.rule, finding.Fault, "", text)
			}
			require.Contains(t, text, row.left.was)
			assertFinding(t, row.rule, finding.Caution, row.settle, strings.Replace(text, row.left.was, row.left.is, 1))
		})
	}
}

// assertFinding asks that all that a rule says is so severe, and that one of it has the hint.
func assertFinding(t *testing.T, rule string, severity finding.Severity, hint, text string) {
	t.Helper()
	hints, any := "", false
	for _, f := range check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{}).Findings {
		if f.Rule == rule {
			any = true
			assert.Equal(t, severity, f.Severity, f.Message)
			hints += f.Hint + "\n"
		}
	}
	assert.True(t, any, "%s says nothing", rule)
	assert.Contains(t, hints, hint)
}

// byWords are the rules that raise a fault on nothing that a forecast assumes, and why.
var byWords = map[string]string{
	"bed-too-warm": "the band as it is written", "box-cannot": "a floor that has no airflow", "cast-moisture-outside": "the moistures of lot and target as they are written",
	"forecast-unable": "what no model holds for", "freezing-water": "the water as it is written", "gate-order": "the gates as they are written", "germination-low": "the test of the lot",
	"grain-not-covered": "the water as it is written", "rest-too-cold-or-warm": "the air of the rest, or of the site, as it is written", "soak-too-long": "the soak as it is written",
	"stated-total-differs": "the sum of what is written", "steep-water-warm": "the water as it is written", "weight-gate-ignores-loss": "judged only where the lot says its moisture",
	"wither-too-warm":     "the air as it is written",
	"floor-below-missing": "a floor below that the process does not use", "drum-too-full": "what the drum holds as it is written",
	"gate-not-reached": "judgeGates", "guard-came-first": "judgeGates",
}

// A new rule that raises a fault says on what it rests, or is listed as one that rests on words.
func TestEveryRuleThatRaisesAFaultSaysOnWhatItRests(t *testing.T) {
	for _, r := range rules.All() {
		text, err := os.ReadFile(r.Name + ".go")
		require.NoError(t, err)
		if !strings.Contains(string(text), "finding.Fault") {
			continue
		}
		_, words := byWords[r.Name]
		assert.NotEqual(t, words, strings.Contains(string(text), "c.rests(r, "), "%s calls rests, or stands among the rules of words", r.Name)
	}
}

// A heater so weak that no share of air led back brings it to what is asked is a fault, whether the
// kiln says that share or not.
func TestAFaultThatNothingAssumedCuresStaysOne(t *testing.T) {
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	weak := strings.Replace(string(base), "heater 3 kW", "heater 50 W", 1)
	require.NotEqual(t, string(base), weak)
	assertFinding(t, "equipment-cannot", finding.Fault, "", weak)
}

// What comes from a floor below follows from what the house says of that floor: where it says all
// of it, malt that is lost above is lost.
func TestTheAirOfAFloorBelowIsNoFreeAssumption(t *testing.T) {
	const floors = `
grain "lot" { species barley; already green malt; moisture 44 %; ergot none; mould none; treated no }
site "glen" { air 8 to 10 °C; humidity 78 to 80 %; awake 00:00 to 24:00 with 2 hands }
kiln "low" { area 12 m2; chimney 6 m; draught natural; heater 45 kW; returns 0 %; fired wood by indirect }
kiln "high" { area 12 m2; air from "low" }
process "p" {
  make pale malt
  from 2600 kg of "lot"
  at "glen"
  kiln in "high" { dry until moisture at most 20 % allow 10 to 40 h }
  kiln in "low" { dry at air-on 60 °C until moisture at most 8 % allow 4 to 60 h; cure at air-on 78 °C for 5 h; cool to malt 30 °C }
}
`
	assertFinding(t, "end-moisture-high", finding.Fault, "", floors)
	assertFinding(t, "guard-came-first", finding.Fault, "", floors)
	unsaid := strings.Replace(floors, "chimney 6 m; draught natural; ", "", 1)
	assertFinding(t, "guard-came-first", finding.Caution, `write airflow of kiln "low"`, unsaid)
}

// Malt above takes the smoke of the floor below while it is wet.
func TestMaltAboveTakesTheSmokeOfTheFloorBelow(t *testing.T) {
	const floors = `
grain "lot" { species barley; already green malt; moisture 44 %; ergot none; mould none; treated no }
site "glen" { air 8 to 10 °C; humidity 78 to 80 %; awake 00:00 to 24:00 with 2 hands }
kiln "low" { area 12 m2; chimney 6 m; draught natural; heater 45 kW; returns 0 %; fired peat by direct }
kiln "high" { area 12 m2; air from "low" }
process "p" {
  make smoked malt
  from 400 kg of "lot"
  at "glen"
  kiln in "high" { dry for 30 h }
  kiln in "low" { dry at air-on 60 °C for 20 h with smoke; cure at air-on 78 °C for 5 h; cool to malt 30 °C }
}
`
	late := func(text string) (told bool) {
		for _, f := range check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{}).Findings {
			require.NotEqual(t, finding.Fault, f.Severity, f.Message)
			told = told || f.Rule == "smoke-late"
		}
		return told
	}
	assert.False(t, late(floors))
	assert.True(t, late(strings.NewReplacer("dry for 30 h", "dry at air-on 50 °C for 30 h", `kiln "high" { area 12 m2; air from "low" }`, `kiln "high" { area 12 m2; airflow 2000 m3/h; heater 45 kW; returns 0 %; fired wood by indirect }`).Replace(floors)))
}
