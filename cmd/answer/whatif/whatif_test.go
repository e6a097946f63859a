package whatif_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/whatif"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

const examples = "../../../examples"

func ask(t *testing.T, file string, changes ...string) (effect.Result, error) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(examples, file))
	require.NoError(t, err)
	root, err := read.OpenRoot(examples)
	require.NoError(t, err)
	defer root.Close()
	house, found := read.Load(file, text, ".", root)
	require.Empty(t, found)
	return whatif.Ask(context.Background(), house.Processes[0], whatif.Case{
		Name: file, Text: text, Dir: ".", Reader: root, Changes: changes,
		Below: func(f *source.File) string { return f.Name() },
	})
}

func TestAStepThatIsOtherwiseIsForecast(t *testing.T) {
	r, err := ask(t, "pale.malt", "soak 1 to 5 h", "cure to 4 h")
	require.NoError(t, err)
	require.Len(t, r.Effects, 1)
	e := r.Effects[0]
	assert.Less(t, float64(e.SteepOutMoisture.New), float64(e.SteepOutMoisture.Old))
	assert.Greater(t, float64(e.DiastaticKept.New), float64(e.DiastaticKept.Old))
}

// A fact is read as if it stood in the file: what is found of it is told.
func TestAFactThatIsOtherwiseIsForecastAndJudged(t *testing.T) {
	r, err := ask(t, "pale.malt", "site air to 41 °F")
	require.NoError(t, err)
	assert.Greater(t, float64(r.Effects[0].KilnHeat.New), float64(r.Effects[0].KilnHeat.Old))
	require.NotEmpty(t, r.Findings)
	assert.Equal(t, "rest-too-cold-or-warm", r.Findings[0].Rule)

	r, err = ask(t, "pale.malt", `floor "growing tray" area to 0.2 m2`, "kiln airflow to 70 m3/h", `grain moisture to 13 %`)
	require.NoError(t, err)
	assert.NotEqual(t, r.Effects[0].Malt.Old, r.Effects[0].Malt.New)
}

// A fact that the house does not state is added; a charge is that of the record.
func TestWhatIsNotWrittenMayBeSupposed(t *testing.T) {
	r, err := ask(t, "pale.malt", "kiln walls to brick 4 m2", `from 3 kg of "Far field 2026"`)
	require.NoError(t, err)
	assert.InDelta(t, float64(r.Effects[0].Malt.Old)/2, float64(r.Effects[0].Malt.New), 0.1)
}

// A definition may be called by its name alone, or by another word for what it is, and a fact
// that one alone has by itself.
func TestAChangeIsUnderstoodAsPeopleSayIt(t *testing.T) {
	for said, meant := range map[string]string{
		"tray kiln airflow to 80 m3/h":         `kiln "tray kiln" airflow to 80 m3/h`,
		`"Growing tray" area to 0.2 m2`:        `floor "growing tray" area to 0.2 m2`,
		"Far field 2026 moisture to 14 %":      "grain moisture to 14 %",
		"altitude to 1400 m":                   "site altitude to 1400 m",
		"tub holds to 20 l":                    "vessel holds to 20 l",
		"germinate hold to bed at 15 to 16 °C": "germinate 1 hold to bed at 15 to 16 °C",
	} {
		one, err := ask(t, "pale.malt", said)
		require.NoError(t, err, said)
		other, err := ask(t, "pale.malt", meant)
		require.NoError(t, err, meant)
		for _, figure := range []func(effect.Effect) any{
			func(e effect.Effect) any { return e.Total }, func(e effect.Effect) any { return e.Malt }, func(e effect.Effect) any { return e.KilnHeat },
		} {
			assert.Equal(t, figure(other.Effects[0]), figure(one.Effects[0]), said)
		}
	}
}

func TestAStatementOfAStageMayBeOtherwiseOrNotThere(t *testing.T) {
	r, err := ask(t, "pale.malt", "germinate turn to every 14 h")
	require.NoError(t, err)
	assert.NotEmpty(t, r.Findings, "it lies too long")
	r, err = ask(t, "pale.malt", `floor "growing tray" heater to none`)
	require.NoError(t, err)
	assert.NotEqual(t, r.Effects[0].Total.Old, r.Effects[0].Total.New)
	_, err = ask(t, "pale.malt", `floor "growing tray" airflow to none`)
	var misuse whatif.Misuse
	assert.ErrorAs(t, err, &misuse)
	_, err = ask(t, "pale.malt", "germinate 3 turn to every 14 h")
	assert.ErrorAs(t, err, &misuse)
}

func TestNothingSupposedMakesNoDifference(t *testing.T) {
	r, err := ask(t, "pale.malt", "soak 1 to 7 h")
	require.NoError(t, err)
	assert.Equal(t, r.Effects[0].Malt.Old, r.Effects[0].Malt.New)
	assert.Equal(t, r.Effects[0].Total.Old, r.Effects[0].Total.New)
	assert.Empty(t, r.Findings)
}

func TestWhatCannotBeSupposedIsTold(t *testing.T) {
	for change, want := range map[string]string{
		"moisture 13":                    "names neither a step nor a fact",
		"site aire to 3 °C":              "known here: air",
		"site air 3 °C":                  "write it as: site air to",
		"floor area to 2 m2":             "say which",
		`kiln "deep bed" area to 2 m2`:   `the process uses no kiln "deep bed"`,
		"grain germination to 90 %":      "stands 2 times",
		"soak 1 to 5 h }\nremark \"x\" ": "more than a line",
	} {
		_, err := ask(t, "pale.malt", change)
		var misuse whatif.Misuse
		require.ErrorAs(t, err, &misuse, change)
		assert.Contains(t, misuse.Error(), want, change)
	}
	for change, rule := range map[string]string{
		"soak 9 to 3 h": "unknown-name", "soak 1 to 3 kg": "change-unfit", "site water to 3 kg": "wrong-dimension", "kiln airflow to 5 m3/h to 7": "",
	} {
		_, err := ask(t, "pale.malt", change)
		var unsound whatif.Unsound
		require.ErrorAs(t, err, &unsound, change)
		require.NotEmpty(t, unsound)
		if rule != "" {
			assert.Equal(t, rule, unsound[0].Rule, change)
		}
	}
}

// A step that is judged in a record is judged here.
func TestWhatIsSupposedIsJudgedAsARecordIs(t *testing.T) {
	r, err := ask(t, "pale.malt", "soak 1 to 90 h")
	require.NoError(t, err)
	require.NotEmpty(t, r.Findings)
	assert.Equal(t, "change-doubtful", r.Findings[0].Rule)
}

func TestAFactIsSupposedOnce(t *testing.T) {
	_, err := ask(t, "pale.malt", "site air to 41 °F", "site air to 50.55 °F")
	var misuse whatif.Misuse
	require.ErrorAs(t, err, &misuse)
	assert.Contains(t, misuse.Error(), "leave one of the two out")
}
