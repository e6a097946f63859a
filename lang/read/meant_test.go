package read

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// beginners is what beginners write, and what they mean by it.
var beginners = map[vocabulary.Block]map[string]string{
	vocabulary.KilnFacts: {
		"chimney height 6 m":                 "chimney 6 m",
		"recovery 35 %":                      "recovers 35 %",
		"recirculate 30 %":                   "returns 30 %",
		"recirculation 30 %":                 "returns 30 %",
		"drum yes":                           "tumbles yes",
		"rotating yes":                       "tumbles yes",
		"burner 110 kW":                      "heater 110 kW",
		"walls brick insulated":              "walls brick with insulation",
		"walls brick with insulation 24 m2":  "walls brick 24 m2 with insulation",
		"walls steel 24 m2":                  "metal",
		"door open 3 cm":                     "ajar",
		"heater 110 kW 85 %":                 "heater 110 kW at 85 %",
		"heater 110 kW with 85 %":            "heater 110 kW at 85 %",
		"heater 110 kW with efficiency 85 %": "heater 110 kW at 85 %",
		"fan power 2.2 kW":                   "fan 2.2 kW",
		"fan curve 9000 m3/h at 0 Pa":        "fan 9000 m3/h at 0 Pa",
		"fan 9000 m3/h 0 Pa":                 "fan 9000 m3/h at 0 Pa",
		"fired with peat":                    "fired peat",
		"fired peat direct":                  "fired peat by direct",
		"fired turf by direct":               "peat",
	},
	vocabulary.Germinate: {
		"turn 6 h":                       "turn every 6 h",
		"turn twice a day":               "turn every 12 h",
		"turn three times a day":         "turn every 8 h",
		"turn the piece every 8 h":       "turn every 8 h",
		"flip every 6 h":                 "turn every 6 h",
		"every 8 h turn":                 "turn every 8 h",
		"sprinkle 0.3 l daily":           "sprinkle 0.3 l every 24 h",
		"hold bed between 14 and 17 °C":  "hold bed at 14 to 17 °C",
		"bed 14 to 17 °C":                "hold bed at 14 to 17 °C",
		"stop when acrospire at least 1": "until acrospire at least 1",
		"hold bed 14 to 18 °C":           "hold bed at 14 to 18 °C",
		"hold bed 16 °C":                 "hold bed at 16 °C",
	},
	vocabulary.Steep: {
		"soak seven hours at 13 °C": "soak 7 h at 13 °C",
		"SOAK 7 H IN WATER":         "soak 7 H in water",
		"rest 9 h air 14":           "rest 9 h in air at 14 °C",
		"air rest 9 h at 14 °C":     "rest 9 h at 14 °C",
		"until 80 % chitted":        "until chit at least 80 %",
	},
	vocabulary.Grain: {
		"untreated":                     "treated no",
		"thousand kernel weight 46 g":   "kernel-weight 46 g",
		"tkw 46":                        "kernel-weight 46 g",
		"moisture content 12.4 %":       "moisture 12.4 %",
		"delivered 2.5 t 2026-02-01":    "delivered 2.5 t on 2026-02-01",
		"delivered 2.5 t from Far farm": "delivered 2.5 t from \"Far farm\"",
	},
	vocabulary.Batch: {
		"turned 14:30":                  "turned at 14:30",
		"rub chalky at 14:00":           "felt rub chalky at 14:00",
		"weighed 7.3 kg after 1st soak": "weighed 7.3 kg after soak 1",
		"weighed at 14:00 7.3 kg":       "weighed 7.3 kg at 14:00",
		"read bed at 17.2 °C at 14:00":  "read bed 17.2 °C at 14:00",
	},
	vocabulary.Kiln: {
		"gate moisture max 35 %":                                             "gate moisture at most 35 %",
		"gate at most 10 % moisture":                                         "gate moisture at most 10 %",
		"gate moisture 10 % or less":                                         "gate moisture at most 10 %",
		"cool down to 30 °C":                                                 "cool to malt 30 °C",
		"dry at air-on 50 °C down to 25 % allow 6 to 14 h":                   "dry at air-on 50 °C until moisture at most 25 % allow 6 to 14 h",
		"roast 175 °C 50 min":                                                "roast at malt 175 °C for 50 min",
		"roast 50 min 175 °C":                                                "roast 50 min at malt 175 °C",
		"toast at malt 175 °C for 50 min":                                    "roast at malt 175 °C for 50 min",
		"cool to malt 30 °C water 2 l":                                       "cool to malt 30 °C with water 2 l",
		"dry at air-on 45 °C for 8 h smoked":                                 "dry at air-on 45 °C for 8 h with smoke",
		"dry at air-on 45 °C for 8 h with peat smoke":                        "dry at air-on 45 °C for 8 h with smoke",
		"dry at air-on 45 °C for 8 h returns 50 %":                           "dry at air-on 45 °C for 8 h with returns 50 %",
		"dry at air-on 45 °C for 8 h with recirculation 50 %":                "returns",
		"dry at air-on 45 °C for 8 h with airflow 40 m3/h with returns 50 %": "dry at air-on 45 °C for 8 h with airflow 40 m3/h and returns 50 %",
		"roast malt 210 °C 20 min":                                           "roast at malt 210 °C for 20 min",
		"cool malt 30 °C":                                                    "cool to malt 30 °C",
		"dry at airon 50 °C for 10 h":                                        "dry at air-on 50 °C for 10 h",
		"dry at air on 50 °C for 10 h":                                       "dry at air-on 50 °C for 10 h",
		"cure at air on 82 °C 4 h":                                           "cure at air-on 82 °C for 4 h",
		"dry from airon 50 to 60 °C over 4 h":                                "dry from air-on 50 to 60 °C over 4 h",
		"dry air-on 50 to 55 °C for 10 h":                                    "dry at air-on 50 to 55 °C for 10 h",
		"cure 82 °C 4 h":                                                     "cure at air-on 82 °C for 4 h",
	},
}

func statementOf(t testing.TB, in vocabulary.Block, text string) []finding.Finding {
	tree, found := syntax.Parse(source.New("x.malt", []byte(text)))
	require.Len(t, tree.Top.Statements, 1, text)
	tried := 0
	(&statementReader{file: tree.File, found: &found, in: in, tried: &tried}).read(tree.Top.Statements[0])
	return found
}

func TestWhatBeginnersWriteIsToldAsWhatTheyMean(t *testing.T) {
	for in, list := range beginners {
		for text, want := range list {
			found := statementOf(t, in, text)
			require.Len(t, found, 1, "%s: %s", text, golden.Findings(found))
			assert.True(t, strings.HasPrefix(found[0].Hint+",", "write "+want+","), "%s: %s", text, found[0].Hint)
			edits := found[0].Fixes
			for _, o := range found[0].Offers {
				assert.Contains(t, found[0].Hint, o.Says, text)
				edits = append(edits, o.Edits...)
			}
			assert.NotEmpty(t, edits, text)
			for _, e := range edits {
				mended := text[:e.Place.Start] + e.New + text[e.Place.End:]
				assert.Empty(t, golden.Findings(statementOf(t, in, mended)), mended)
			}
		}
	}
}

// What stands elsewhere is told with the number that was written.
func TestWhatIsSaidElsewhereIsToldWithItsValue(t *testing.T) {
	for text, want := range map[string]string{"quench with 3 l": "cool to malt 30 °C with water 3 l", "smoke for 5 h": "for 5 h with smoke"} {
		assert.Contains(t, statementOf(t, vocabulary.Kiln, text)[0].Hint, want)
	}
	assert.Contains(t, statementOf(t, vocabulary.KilnFacts, "efficiency 70 %")[0].Hint, "heater 110 kW at 70 %")
	concrete := statementOf(t, vocabulary.KilnFacts, "walls concrete 24 m2")[0]
	assert.Equal(t, "stone is the nearest to it; known here: brick, metal, wood, stone", concrete.Hint)
	assert.Empty(t, concrete.Fixes, "it is not the same")
}

// Of two times nobody knows which is meant.
func TestNothingIsGuessedWhereTwoCanBeMeant(t *testing.T) {
	for text, in := range map[string]vocabulary.Block{
		"cure 4 h at malt 82 °C for 5 h":   vocabulary.Kiln,
		"soak 7 h in 20 h at 13 °C":        vocabulary.Steep,
		"cool to malt 30 °C to malt 40 °C": vocabulary.Kiln,
		"gate moisture at most 10 % and":   vocabulary.Kiln,
	} {
		found := statementOf(t, in, text)
		require.NotEmpty(t, found, text)
		assert.NotContains(t, found[0].Hint, "write ", text)
		assert.Empty(t, found[0].Offers, text)
	}
}

var values = regexp.MustCompile(`[0-9][0-9.:/]*`)

// Whatever is told as what to write reads, and holds every number and every name.
func TestWhatIsToldReadsAndKeepsEveryValue(t *testing.T) {
	told := 0
	for _, row := range vocabulary.Rows() {
		if row.Opens != vocabulary.None || strings.Contains(row.Example, "{") {
			continue
		}
		words := strings.Fields(row.Example)
		for i := range words {
			for _, text := range []string{
				strings.Join(append(append([]string{}, words[:i]...), words[i+1:]...), " "),
				strings.Join(append(append(append([]string{}, words[:i]...), "about"), words[i:]...), " "),
			} {
				tree, _ := syntax.Parse(source.New("x.malt", []byte(text)))
				if len(tree.Top.Statements) != 1 || tree.Top.Statements[0].Broken {
					continue
				}
				for _, in := range row.In {
					for _, f := range statementOf(t, in, text) {
						for _, o := range f.Offers {
							write := text[:o.Edits[0].Place.Start] + o.Edits[0].New + text[o.Edits[0].Place.End:]
							if !undecidedRules[f.Rule] || !strings.HasPrefix(f.Hint, "write "+row.Word+" ") || !strings.HasPrefix(write, row.Word+" ") {
								continue
							}
							told++
							assert.Empty(t, golden.Findings(statementOf(t, in, write)), "%s for %s", write, text)
							for _, number := range values.FindAllString(text, -1) {
								assert.Contains(t, values.FindAllString(write, -1), number, "%s for %s", write, text)
							}
						}
					}
				}
			}
		}
	}
	assert.Greater(t, told, 40)
}

// undecidedRules are of findings that the search for what is meant may put right.
var undecidedRules = map[string]bool{unknownClause.Name: true, wordsTooMany.Name: true, badNumber.Name: true, valueNeeded.Name: true}

func BenchmarkNothingIsMeant(b *testing.B) {
	for b.Loop() {
		statementOf(b, vocabulary.Kiln, "dry by on with at air-on 45 °C 8 h 9 kg of about with smoke 30 % and for 2 l over until 7 m and more")
	}
}

// A word that belongs elsewhere, near to one that belongs here, is told as a slip where the
// statement then reads.
func TestWordOfAnotherBlockThatIsASlipIsTold(t *testing.T) {
	found := statementOf(t, vocabulary.Vessel, "hold 30 l")
	require.Len(t, found, 1)
	assert.Equal(t, "write holds 30 l", found[0].Hint)
	require.Len(t, found[0].Fixes, 1)
	assert.Equal(t, "holds", found[0].Fixes[0].New)
	for _, text := range []string{"hold bed at 14 to 18 °C", "hold 30 °C"} {
		assert.Equal(t, "it belongs in a germinate", statementOf(t, vocabulary.Vessel, text)[0].Hint)
	}
}
