package check

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

func TestTheUnchangedHouseRaisesNoMoreThanCautions(t *testing.T) {
	for _, f := range checked(changed(t)).Findings {
		assert.Less(t, f.Severity, finding.Fault, f.Message)
	}
}

func TestProcessWithFaultsIsNotForecast(t *testing.T) {
	for _, c := range []struct{ what, from, to, rule string }{
		{"a word that does not read", "soak 7 h in water", "soke 7 h in water", "unknown-word"},
		{"a name that is not there", `of "Far field 2026"`, `of "Far field 2025"`, "unknown-name"},
		{"a stage that is missing", "germinate on \"growing tray\" {", "wither on \"growing tray\" {", ""},
	} {
		t.Run(c.what, func(t *testing.T) {
			r := checked(changed(t, c.from, c.to))
			require.NotEmpty(t, r.Findings)
			if c.rule != "" {
				assert.Equal(t, []string{c.rule}, beside(t, r.Findings), "and nothing that follows from it")
			}
			assert.Contains(t, r.NotJudged, finding.NotJudged{File: "pale.malt", Process: "Loft pale", Rule: "forecast", Reason: `its faults must be put right first`})
		})
	}
}

func TestNoForecastLooksOnlyAtTheText(t *testing.T) {
	text := changed(t, "make pale malt", "make pale malt\nexpect final moisture at most 1 %")
	require.Contains(t, names(checked(text).Findings), "expectation-broken")
	r := File("pale.malt", []byte(text), ".", house{}, Options{NoForecast: true})
	assert.NotContains(t, names(r.Findings), "expectation-broken")
	assert.Contains(t, r.NotJudged, finding.NotJudged{File: "pale.malt", Process: "Loft pale", Rule: "forecast", Reason: `no forecast was asked for`})
}

func TestWhatCannotBeJudgedIsSaid(t *testing.T) {
	r := checked(changed(t, `steep in "blue tub" to`, "steep to", "vessel \"blue tub\"    { holds 25 l }\n", ""))
	assert.NotContains(t, names(r.Findings), "vessel-too-small")
	i := slices.IndexFunc(r.NotJudged, func(n finding.NotJudged) bool { return n.Rule == "vessel-too-small" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, "pale.malt", r.NotJudged[i].File)
	assert.Contains(t, r.NotJudged[i].Reason, "no vessel is named")
}

func TestFindingsComeInTheSameOrderEveryTime(t *testing.T) {
	text := changed(t, threeSoaks, "    soak 30 h in water at 19 °C\n", "allow 4 to 7 days", "allow 1 to 2 days", "from 6 kg", "from 14 kg")
	first := checked(text).Findings
	require.Greater(t, len(first), 3)
	for range 5 {
		assert.Equal(t, names(first), names(checked(text).Findings))
	}
	for i := 1; i < len(first); i++ {
		assert.LessOrEqual(t, first[i-1].Place.Start, first[i].Place.Start, "in the order of the file")
	}
}

func TestAFindingOfAFileThatIsUsedTwiceStandsOnce(t *testing.T) {
	files := house{
		"tub.malt":  "vessel \"blue tub\" { holds 25 buckets }\n",
		"shed.malt": "use \"tub.malt\"\nfloor \"larch floor\" { area 0.8 m2 }\n",
		"barn.malt": "use \"tub.malt\"\nfloor \"barn floor\" { area 2 m2 }\n",
	}
	r := File("all.malt", []byte("use \"shed.malt\"\nuse \"barn.malt\"\nuse \"tub.malt\"\n"), ".", files, Options{})
	require.Equal(t, []string{"unknown-unit"}, names(r.Findings))
	assert.Equal(t, "tub.malt", r.Findings[0].Place.File.Name())
}

// Two commands over one folder meet the file of the house twice; the findings of
// both runs together are sorted and rid of repeats by the same Sort.
func TestFindingsOfTwoFilesThatUseOneAreNotRepeated(t *testing.T) {
	files := house{"loft.malt": "vessel \"blue tub\" { holds 25 buckets }\n"}
	var all []finding.Finding
	for _, name := range []string{"spring.malt", "autumn.malt"} {
		all = append(all, File(name, []byte("use \"loft.malt\"\n"), ".", files, Options{}).Findings...)
	}
	require.Len(t, all, 2)
	assert.Len(t, finding.Sort(all), 1)
}

func TestAFileWithoutAProcess(t *testing.T) {
	for _, c := range []struct {
		what, text string
		want       []string
	}{
		{"nothing at all", "", []string{"no-process"}},
		{"a byte-order mark alone", "\ufeff", []string{"no-process"}},
		{"blank lines", "\n\r\n  \t\n", []string{"no-process"}},
		{"comments only", "# ideas for the autumn\n# none yet\n", []string{"no-process"}},
		{"a step without its stage", "soak 8 h", []string{"no-frame"}},
		{"a file of the house", "vessel \"blue tub\" { holds 25 l }\n", nil},
		{"thresholds of the house", "limits { airless-time at most 8 h }\n", []string{"limits-changed"}},
		{"a file that only brings in another", "use \"loft.malt\"\n", nil},
	} {
		t.Run(c.what, func(t *testing.T) {
			r := File("notes.malt", []byte(c.text), ".", house{"loft.malt": "vessel \"blue tub\" { holds 25 l }\n"}, Options{})
			assert.ElementsMatch(t, c.want, names(r.Findings))
		})
	}
}

func TestMovedLimitsChangeTheJudgement(t *testing.T) {
	wet := []string{"moisture    12.4 %", "moisture    66 %"}
	warm := []string{"bed at 14 to 17 °C", "room at 17 to 18 °C", "every 8 h", "every 12 h"}
	airless := []string{threeSoaks, "    soak 20 h in water at 15 °C\n    rest 9 h in air at 14 °C\n    soak 10 h in water at 15 °C\n", "to moisture 43 to 45 % {", "{", "allow 4 to 7 days", "allow 3 to 9 days"}
	for _, c := range []struct {
		rule, limit string
		changes     []string
	}{
		{"moisture-over-60", "moisture at most 70 %", wet},
		{"piece-overheats", "bed-temperature at most 30 °C", warm},
		{"oxygen-gone", "airless-time at most 24 h", airless},
	} {
		t.Run(c.rule, func(t *testing.T) {
			text := changed(t, c.changes...)
			assert.Contains(t, names(checked(text).Findings), c.rule, "by default")
			for where, moved := range map[string]string{
				"above what it judges": "limits { " + c.limit + " }\n" + text,
				"below it":             text + "limits { " + c.limit + " }\n",
				"in the process":       strings.Replace(text, "make pale malt", "make pale malt\nlimits { "+c.limit+" }", 1),
			} {
				got := names(checked(moved).Findings)
				assert.Contains(t, got, "limits-changed", where)
				if where != "in the process" || c.rule != "moisture-over-60" { // the lot is no part of a process
					assert.NotContains(t, got, c.rule, where)
				}
			}
		})
	}
}

// Schedules that are wrong must be caught. The first lines of each say what is
// wrong with it and where that is known from; "catches:" names the rules.
func TestWrongSchedulesAreCaught(t *testing.T) {
	files, err := filepath.Glob("testdata/wrong/*.malt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			_, list, ok := strings.Cut(string(text), "# catches: ")
			require.True(t, ok, "it says which rule catches it")
			list, _, _ = strings.Cut(list, "\n")
			got := names(checkFile(t, path).Findings)
			for _, rule := range strings.Fields(list) {
				assert.Contains(t, got, rule)
			}
		})
	}
}

func TestAFileOfRecordsAloneIsNotEmpty(t *testing.T) {
	r := File("batch.malt", []byte("use \"pale.malt\"\nbatch \"1\" of \"Loft pale\" { began 2026-03-06 07:00 }\n"), ".", house{"pale.malt": ""}, Options{NoForecast: true})
	assert.Equal(t, []string{"unknown-name"}, names(r.Findings))
	checked := checkFile(t, "../examples/batches/26-03.malt")
	assert.Empty(t, checked.Findings)
	assert.Empty(t, checked.NotJudged, "its process is judged where it stands")
}

func TestTwoProcessesThatUseTheSameOfWhatWasLearntSayItOnce(t *testing.T) {
	base, err := os.ReadFile("rules/testdata/base.malt")
	require.NoError(t, err)
	house, process, _ := strings.Cut(string(base), "process \"base\"")
	text := house + "house \"Loft\" { growth 1.02 error 0.04 }\nprocess \"base\"" + process + "process \"again\"" + process
	var learnt int
	for _, name := range names(File("two.malt", []byte(text), ".", nil, Options{}).Findings) {
		if name == "learnt-figures" {
			learnt++
		}
	}
	assert.Equal(t, 1, learnt)
	assert.NotContains(t, names(File("two.malt", []byte(text), ".", nil, Options{NoForecast: true}).Findings), "learnt-figures", "no forecast went by it")
}
