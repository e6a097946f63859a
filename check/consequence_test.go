package check

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// namesIn gives the rules that speak of a process file with some of its words changed.
func namesIn(t *testing.T, change ...string) []string {
	t.Helper()
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	text, err := os.ReadFile("../examples/oats.malt")
	require.NoError(t, err)
	for i := 0; i < len(change); i += 2 {
		require.Contains(t, string(text), change[i])
	}
	bad := strings.NewReplacer(change...).Replace(string(text))
	var names []string
	for _, f := range look(pair{bad, string(loft)}, "") {
		names = append(names, f.Severity.String()+" "+f.Rule)
	}
	return names
}

const (
	oatsBed = "hold  bed at 14 to 17 °C"
	dryAir  = "hold  bed at 14 to 17 °C\n    humidity 45 to 55 %"
)

func TestWhatComesOfASlipIsNotToldBesideIt(t *testing.T) {
	names := namesIn(t, oatsBed, dryAir)
	assert.Contains(t, names, "caution bed-dries-out")
	assert.NotContains(t, names, "caution test-holds-already", "the wither has nothing to do since the piece dried out")
}

func TestWhatComesOfAnAcceptedSlipIsTold(t *testing.T) {
	names := namesIn(t, oatsBed, dryAir+"\n    accept bed-dries-out because \"the loft is dry in May\"")
	assert.NotContains(t, names, "caution bed-dries-out")
	assert.Contains(t, names, "caution test-holds-already")
}

func TestABedWithoutItsFanIsToldOfOnce(t *testing.T) {
	box := pair{textOf("../examples/box.malt"), textOf("../examples/loft.malt")}
	require.Contains(t, box.house, "  airflow 800 m3/h\n")
	box.house = strings.Replace(box.house, "  airflow 800 m3/h\n", "", 1)
	said := map[string]int{}
	for _, f := range look(box, "") {
		said[f.Rule]++
	}
	assert.Equal(t, 2, said["box-cannot"], "of each line of air")
	for _, rule := range []string{"piece-too-deep", "piece-overheats", "air-cannot-hold-bed", "box-line-idle"} {
		assert.Zero(t, said[rule], rule)
	}
}

func TestTheSameSlipWithoutItsCauseIsTold(t *testing.T) {
	names := namesIn(t, "until moisture at most 36 %", "until moisture at most 48 %")
	assert.Contains(t, names, "caution test-holds-already")
}

func TestWhatCouldNotBeForecastIsAlwaysTold(t *testing.T) {
	names := namesIn(t, oatsBed, "hold  bed at 53 to 56 °C")
	assert.Contains(t, names, "fault bed-too-warm")
	assert.Contains(t, names, "fault forecast-unable")
}

func TestASlipOfAnotherProcessHidesNothing(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	text, err := os.ReadFile("../examples/oats.malt")
	require.NoError(t, err)
	_, body, ok := strings.Cut(string(text), "\nprocess \"")
	require.True(t, ok)
	dry := strings.Replace(string(text), oatsBed, dryAir, 1)
	early := "\nprocess \"again " + strings.Replace(body, "until moisture at most 36 %", "until moisture at most 48 %", 1)
	var names []string
	for _, f := range look(pair{dry + early, string(loft)}, "") {
		names = append(names, f.Severity.String()+" "+f.Rule)
	}
	assert.Contains(t, names, "caution bed-dries-out", "of the first")
	assert.Contains(t, names, "caution test-holds-already", "of the second")
}

// A name that no rule has would be a consequence of nothing.
func TestConsequencesNameRules(t *testing.T) {
	rules := map[string]bool{}
	for _, r := range Rules() {
		rules[r.Name] = true
	}
	for _, c := range consequences {
		for _, name := range append(strings.Fields(c.of), c.rule) {
			assert.True(t, rules[name], "%s is no rule", name)
		}
	}
}

func TestASoakOfTooLittleWaterIsToldOfOnce(t *testing.T) {
	names := namesIn(t, "    soak 3 h in water at 12 °C\n    rest", "    soak 3 h in 1 l water at 12 °C\n    rest")
	assert.Contains(t, names, "fault grain-not-covered")
	assert.NotContains(t, names, "fault forecast-unable", "so little water is not forecast")
}

func TestALostPieceIsToldBesideWhatLostIt(t *testing.T) {
	box := pair{textOf("../examples/box.malt"), textOf("../examples/loft.malt")}
	box.house = strings.Replace(box.house, "  airflow 800 m3/h\n", "  airflow 60 m3/h\n", 1)
	said := map[string]string{}
	for _, f := range look(box, "") {
		said[f.Rule] = f.Severity.String()
	}
	assert.Equal(t, "fault", said["box-cannot"], "more air is asked than the fan drives")
	assert.Equal(t, "fault", said["piece-overheats"])
}
