package rules_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/finding"
)

// houses are kilns as people have them, each with a charge and steps that it does. A fault
// must not come of what is left out of any of them.
var houses = map[string]struct {
	kiln   string
	charge float64 // kg
	steps  string
}{
	"base": {"area 0.5 m2; airflow 90 m3/h; draught fan; reaches 25 to 110 °C; heater 3 kW; fired electric", 4,
		"dry at air-on 50 °C until moisture at most 20 % allow 3 to 20 h; dry from air-on 52 to 62 °C over 4 h until moisture at most 10 %; gate moisture at most 10 % allow 0 to 12 h; cure at air-on 82 °C for 5 h; gate moisture at most 5 % allow 0 to 12 h; cool to malt 30 °C"},
	"fruit dryer": {"area 0.5 m2; airflow 30 m3/h; reaches 30 to 70 °C; heater 600 W; fired electric", 3,
		"dry at air-on 45 °C until moisture at most 20 % allow 3 to 40 h; dry at air-on 60 °C until moisture at most 8 % allow 2 to 30 h; gate moisture at most 8 % allow 0 to 24 h; cool to malt 30 °C"},
	"fruit dryer that goes round": {"area 0.4 m2; airflow 90 m3/h; returns 70 %; reaches 30 to 74 °C; heater 800 W; fired electric", 3,
		"dry at air-on 45 °C until moisture at most 20 % allow 3 to 40 h; dry at air-on 60 °C until moisture at most 8 % allow 2 to 30 h; gate moisture at most 8 % allow 0 to 24 h; cool to malt 30 °C"},
	"cabinet": {"area 0.3 m2; airflow 60 m3/h; reaches 20 to 90 °C; heater 2 kW; fired electric", 4,
		"dry at air-on 50 °C until moisture at most 20 % allow 3 to 30 h; dry at air-on 62 °C until moisture at most 10 % allow 2 to 20 h; gate moisture at most 10 % allow 0 to 12 h; cure at air-on 82 °C for 5 h; gate moisture at most 5 % allow 0 to 12 h; cool to malt 30 °C"},
	"oven": {"area 0.4 m2; draught still; airflow 12 m3/h; reaches 50 to 250 °C; heater 2.6 kW; fired electric", 1,
		"dry at oven 55 °C until moisture at most 10 % allow 2 to 60 h; gate moisture at most 10 % allow 0 to 24 h; cure at oven 82 °C for 5 h; gate moisture at most 5 % allow 0 to 24 h; cool to malt 35 °C"},
	"barn": {"area 10 m2; draught natural; airflow 1200 m3/h; reaches 20 to 95 °C; heater 30 kW; fired wood by indirect", 100,
		"dry at air-on 45 °C until moisture at most 20 % allow 4 to 40 h; dry at air-on 60 °C until moisture at most 10 % allow 2 to 30 h; gate moisture at most 10 % allow 0 to 12 h; cure at air-on 82 °C for 4 h; gate moisture at most 5 % allow 0 to 12 h; cool to malt 30 °C"},
	"chimney": {"area 9 m2; draught natural; chimney 6 m; reaches 20 to 95 °C; heater 36 kW; walls brick 24 m2; fired wood by indirect", 100,
		"dry at air-on 45 °C until moisture at most 20 % allow 4 to 60 h; dry at air-on 60 °C until moisture at most 10 % allow 2 to 40 h; gate moisture at most 10 % allow 0 to 24 h; cure at air-on 82 °C for 4 h; gate moisture at most 5 % allow 0 to 24 h; cool to malt 30 °C"},
	"fan and curve": {"area 2.4 m2; fan 6000 m3/h at 0 Pa; fan 4000 m3/h at 500 Pa; reaches 20 to 110 °C; heater 130 kW at 85 %; recovers 30 %; fired gas by indirect", 800,
		"dry at air-on 60 °C until moisture at most 12 % allow 6 to 40 h; dry at air-on 70 °C until moisture at most 8 % allow 1 to 20 h; gate moisture at most 8 % allow 0 to 12 h; cure at air-on 84 °C for 5 h; gate moisture at most 5 % allow 0 to 12 h; cool to malt 30 °C"},
	"deep bed": {"area 2.4 m2; airflow 4000 m3/h; reaches 20 to 110 °C; heater 110 kW; fired gas by indirect", 900,
		"dry at air-on 60 °C until moisture at most 12 % allow 6 to 40 h; dry at air-on 70 °C until moisture at most 8 % allow 1 to 20 h; gate moisture at most 8 % allow 0 to 12 h; cure at air-on 84 °C for 5 h; gate moisture at most 5 % allow 0 to 12 h; cool to malt 30 °C"},
}

// houseOf writes the process of such a house.
func houseOf(t *testing.T, kiln string, charge float64, steps string) string {
	t.Helper()
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	text := string(base)
	cut := func(from, to, with string) {
		i := strings.Index(text, from)
		require.GreaterOrEqual(t, i, 0, from)
		n := strings.Index(text[i:], to)
		require.GreaterOrEqual(t, n, 0, to)
		text = text[:i] + with + text[i+n+len(to):]
	}
	cut("kiln \"base kiln\" {", "\n}", "kiln \"base kiln\" { "+kiln+" }")
	cut("kiln in \"base kiln\" {", "\n  }", "kiln in \"base kiln\" { "+steps+" }")
	cut("wither on \"base floor\" {", "\n  }", "")
	for was, with := range map[string]string{
		"holds 20 l": fmt.Sprintf("holds %v l", 5*charge), "area 0.22 m2": fmt.Sprintf("area %v m2", charge/18),
		"from 4 kg of": fmt.Sprintf("from %v kg of", charge), "  expect final moisture 3 to 5 %\n": "",
	} {
		require.Contains(t, text, was)
		text = strings.Replace(text, was, with, 1)
	}
	return text
}

func faultsOf(text string) (faults []finding.Finding, all string) {
	r := check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{})
	for _, f := range r.Findings {
		all += f.Rule + ": " + f.Message + "\n"
		if f.Severity == finding.Fault {
			faults = append(faults, f)
		}
	}
	return faults, all
}

func TestNoFaultComesOfWhatAKilnDoesNotSay(t *testing.T) {
	for name, h := range houses {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			said := strings.Split(h.kiln, "; ")
			faults, all := faultsOf(houseOf(t, h.kiln, h.charge, h.steps))
			require.Empty(t, faults, "with all of it said:\n%s", all)
			for i, left := range said {
				if left == "draught still" || strings.HasPrefix(left, "area") || strings.HasPrefix(left, "fan ") { // another kiln, of which oven is no place; area and two points of a curve are asked for
					continue
				}
				less := strings.Join(append(append([]string(nil), said[:i]...), said[i+1:]...), "; ")
				faults, all := faultsOf(houseOf(t, less, h.charge, h.steps))
				assert.Empty(t, faults, "without %s:\n%s", left, all)
			}
			for _, only := range said[1:] { // and with nothing but its area and one of them
				if strings.Contains(h.kiln, "draught still") || strings.HasPrefix(only, "fan ") {
					continue
				}
				faults, all := faultsOf(houseOf(t, said[0]+"; "+only, h.charge, h.steps))
				assert.Empty(t, faults, "with only %s:\n%s", only, all)
			}
		})
	}
}
