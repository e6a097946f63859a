package check

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

// harmless are breaks that do no harm to the examples that they are not caught in, with
// what shows it: TestBreaksThatAreSaidToDoNoHarm looks.
var harmless = map[string]struct {
	why   string
	sound func(*forecast.Forecast) bool
}{
	"the gate before the cure left out": {"the step before waits for 10 % itself, with time enough for a kiln that dries a fifth slower",
		func(f *forecast.Forecast) bool { return stepOf(f, process.Cure).MoistureStart < 0.11 }},
	"the first soak doubled": {"the grain drinks no more than is wanted, and no soak is too long for it",
		func(f *forecast.Forecast) bool {
			return !slices.ContainsFunc(f.Trouble, func(t forecast.Trouble) bool {
				return t.Kind == forecast.TargetMissed || t.Kind == forecast.OxygenGone && t.Value > 6*3600
			})
		}},
}

// What is missed because it does no harm does none on a kiln that dries a fifth slower
// either.
func TestBreaksThatAreSaidToDoNoHarm(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	list, err := os.ReadFile("testdata/mutation.txt")
	require.NoError(t, err)
	seen := map[string]bool{}
	for _, line := range strings.Split(strings.TrimSpace(string(list)), "\n") {
		file, name, _ := strings.Cut(line, ": ")
		h, ok := harmless[name]
		if !ok {
			continue
		}
		seen[name] = true
		text, err := os.ReadFile("../examples/" + file)
		require.NoError(t, err)
		bad := pair{string(text), string(loft)}
		for _, b := range breakings {
			if b.name == name {
				b.do(&bad)
			}
		}
		r := File("broken.malt", []byte(bad.process), ".", house{"loft.malt": bad.house}, Options{NoForecast: true})
		for _, drying := range []float64{1, 0.8} {
			f, err := forecast.Run(r.House.Processes[0], forecast.Options{Drying: drying})
			require.NoError(t, err)
			assert.True(t, h.sound(f), "%s: not so: %s", line, h.why)
		}
	}
	assert.Len(t, seen, len(harmless), "what is caught everywhere needs no excuse")
}

func stepOf(f *forecast.Forecast, kind process.StepKind) forecast.Step {
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if s.Kind == kind {
				return s
			}
		}
	}
	return forecast.Step{}
}
