package check

import (
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var number = regexp.MustCompile(`\b\d+(\.\d+)?\b`)

// Whatever figures a process is given, its forecast is of malt: moistures are shares
// of a weight, weights are above nothing, and time runs on. What cannot be is said
// in a finding.
func TestNoFiguresMakeAForecastOfNothing(t *testing.T) {
	text, err := os.ReadFile("testdata/house/pale.malt")
	require.NoError(t, err)
	at := number.FindAllIndex(text, -1)
	figures := []string{"0", "0.001", "0.3", "1", "2", "5", "8", "12", "15", "20", "33", "47", "60", "75", "99", "100", "250", "1000", "100000"}
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		done := 0
		changes := rapid.MapOfN(rapid.IntRange(0, len(at)-1), rapid.SampledFrom(figures), 1, 5).Draw(t, "changes")
		for i, span := range at {
			if with, ok := changes[i]; ok {
				b.WriteString(string(text[done:span[0]]) + with)
				done = span[1]
			}
		}
		b.Write(text[done:])
		looked := File("pale.malt", []byte(b.String()), ".", house{}, Options{NoForecast: true})
		if long(looked.House) {
			t.Skip("more than a year of work")
		}
		checked(b.String())
		for _, p := range looked.House.Processes {
			ofMalt(t, p)
		}
	})
}

func ofMalt(t *rapid.T, p *model.Process) {
	if p.Broken {
		return
	}
	f, err := forecast.Run(p, forecast.Options{})
	if err != nil {
		return // it says why
	}
	clock := 0.0
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			for _, share := range []float64{s.MoistureStart, s.MoistureEnd} {
				require.True(t, share >= 0 && share < 1, "%s: a moisture of %g", s.Label, share)
			}
			require.True(t, s.WeightEnd > 0 && !math.IsInf(s.WeightEnd, 0), "%s: a weight of %g kg", s.Label, s.WeightEnd)
			require.True(t, s.Start >= clock && s.End >= s.Start, "%s: from %g to %g s", s.Label, s.Start, s.End)
			clock = s.End
		}
	}
}
