package ensemble

import (
	"context"
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// nowhere reads no files.
type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

// learnt is an invented process in a house that has learnt what the lines say.
func learnt(t testing.TB, lines string) *model.Process {
	t.Helper()
	h, found := read.Load("test.malt", []byte(`
grain "lot" { species barley; moisture 12 % }
vessel "tub" { holds 40 l }
floor "tray" { area 0.4 m2 }
kiln "kiln" { area 0.5 m2; airflow 120 m3/h }
kiln "stove" { area 0.5 m2; airflow 120 m3/h }
process "p" {
  make pale malt
  from 5 kg of "lot"
  steep in "tub" { soak 7 h in water at 14 °C; rest 9 h in air at 14 °C; soak 7 h in water at 14 °C }
  germinate on "tray" { hold bed at 14 to 16 °C; for 4 days }
  kiln in "kiln" { dry at air-on 60 °C for 14 h }
}
house "h" {
`+lines+"\n}\n"), ".", nowhere{})
	for _, f := range found {
		require.Less(t, f.Severity, finding.Fault, "%s: %s", f.Place.Text(), f.Message)
	}
	return h.Processes[0]
}

// sd is the standard deviation of the logarithm of an unknown, from its one sigma point.
func sd(u Unknown) float64 {
	p := (0.8413447460685429 - tails) / (1 - 2*tails) // the normal distribution at 1
	return math.Log(u.quantile(p))
}

// of is the unknown of a process that is a factor.
func of(t testing.TB, p *model.Process, which Factor) Unknown {
	t.Helper()
	for _, u := range UnknownsOf(p) {
		if u.Factor == which {
			return u
		}
	}
	t.Fatalf("%s is no unknown", which)
	return Unknown{}
}

func TestAnErrorThatWasLearntNarrowsTheSpread(t *testing.T) {
	usual := UnknownsOf(learnt(t, "thermometer 0.8 °C"))
	for name, c := range map[string]struct {
		line  string
		which Factor
		want  float64
	}{
		"uptake":           {`uptake 1.2 error 0.06 of "lot"`, Uptake, math.Hypot(0.05, 0.175)},
		"husk-water":       {`husk-water 1.2 error 0.06 of "lot"`, HuskWater, math.Hypot(0.05, 0.11)},
		"growth":           {"growth 1.06 error 0.04", Growth, math.Hypot(0.04/1.06, 0.06)},
		"chit":             {`chit 0.8 error 0.1 of "lot"`, Chit, math.Hypot(0.1/0.8, 0.25)},
		"respiration":      {"respiration 0.95 error 0.15", Respiration, math.Hypot(0.15/0.95, 0.10)},
		"drying":           {`drying 0.91 error 0.05 of "kiln"`, Drying, math.Hypot(0.05/0.91, 0.10)},
		"without an error": {`drying 0.91 of "kiln"`, Drying, 0.20},
		"of another kiln":  {`drying 0.91 error 0.05 of "stove"`, Drying, 0.20},
	} {
		t.Run(name, func(t *testing.T) {
			list := UnknownsOf(learnt(t, c.line))
			for i, u := range list {
				if u.Factor == "" {
					continue
				}
				assert.Equal(t, usual[i].Open, u.Open, "the order stays")
				if u.Factor != c.which {
					assert.Equal(t, usual[i].Scatter, u.Scatter)
					assert.Equal(t, usual[i].quantile(0.3), u.quantile(0.3), "the others stay")
				}
			}
			known := of(t, learnt(t, c.line), c.which)
			assert.InDelta(t, c.want, sd(known), 1e-9)
			assert.InDelta(t, 1, known.quantile(0.5), 1e-12, "the middle is moved by the forecast, not here")
		})
	}
	narrowed := of(t, learnt(t, `drying 0.91 error 0.05 of "kiln"`), Drying).Scatter
	assert.Equal(t, LogNormal, narrowed.Law)
	assert.InDelta(t, math.Hypot(0.05/0.91, 0.10), narrowed.SD, 1e-9)
}

func TestWitheringIsOpenWhereMaltWithers(t *testing.T) {
	withers := loft(t)
	require.NotNil(t, model.First[*model.Withering](withers))
	assert.InDelta(t, 0.30, sd(of(t, withers, Withering)), 1e-9)
	p := *withers
	l := learnt(t, "withering 1.2 error 0.12").Learnt()
	h := *p.House
	h.Learnt = l
	p.House = &h
	assert.InDelta(t, math.Hypot(0.1, 0.15), sd(of(t, &p, Withering)), 1e-9)
	dry := learnt(t, "withering 1.2 error 0.12")
	require.Nil(t, model.First[*model.Withering](dry))
	for _, u := range UnknownsOf(dry) {
		assert.NotEqual(t, Withering, u.Factor, "it goes to the kiln at once")
	}
}

// How fast one kiln dries tells nothing of another: each has an unknown of its own, however
// often the malt comes onto it, and moves that kiln alone.
func TestEachOfSeveralKilnsHasAFactorOfItsOwn(t *testing.T) {
	p := learnt(t, `drying 0.91 error 0.05 of "kiln"; drying 1.2 error 0.24 of "stove"`)
	first := p.Stages[2].(*model.Kilning)
	second, third := *first, *first
	second.Kiln, third.Kiln = p.House.Kilns[1], nil
	p.Stages = append(p.Stages, &second)
	dryings := func() (list []Unknown) {
		for _, u := range UnknownsOf(p) {
			if u.Factor == Drying {
				list = append(list, u)
			}
		}
		return list
	}
	both := dryings()
	require.Len(t, both, 2)
	assert.Equal(t, []string{"kiln", "stove"}, []string{both[0].Of(), both[1].Of()})
	assert.InDelta(t, math.Hypot(0.05/0.91, 0.1), sd(both[0]), 1e-9)
	assert.InDelta(t, math.Hypot(0.2, 0.1), sd(both[1]), 1e-9)
	var o forecast.Options
	both[0].Set(&o, 0.5)
	before := o.DryingOf
	both[1].Set(&o, 0.9)
	assert.Len(t, o.DryingOf, 2)
	assert.Len(t, before, 1, "options that were copied stay as they were")
	assert.InDelta(t, 1, o.DryingOf[first.Kiln], 1e-9)
	assert.Greater(t, o.DryingOf[second.Kiln], 1.1)

	second.Kiln = first.Kiln
	again := dryings()
	require.Len(t, again, 1, "twice on one kiln")
	assert.Empty(t, again[0].Of(), "it is the only one")
	p.Stages = append(p.Stages, &third)
	assert.InDelta(t, 0.2, sd(dryings()[1]), 1e-9, "of a kiln that is not named nothing is known")
}

func TestNoMemberIsAHouseThatCannotBeStated(t *testing.T) {
	for _, value := range []string{"0.2", "1", "5"} {
		p := learnt(t, fmt.Sprintf(`growth %[1]s error %[1]s; respiration %[1]s error %[1]s; uptake %[1]s error %[1]s of "lot"; husk-water %[1]s error %[1]s of "lot"; chit %[1]s error %[1]s of "lot"; drying %[1]s error %[1]s of "kiln"`, value))
		e, err := Run(context.Background(), p, Options{Members: 40})
		require.NoError(t, err, value)
		for i, u := range e.Unknowns {
			if u.Factor == "" {
				continue
			}
			for _, at := range []float64{0, 0.5, 1} {
				v := u.quantile(at) * e.Process.Learnt().Growth.Value.SI
				assert.GreaterOrEqual(t, v, model.LeastFactor*(1-1e-9), "%s %d", value, i)
				assert.LessOrEqual(t, v, model.MostFactor*(1+1e-9), "%s %d", value, i)
			}
		}
	}
}

// The spread at the end of the steep is that of the uptake and of what the husk holds, for
// the most part: half of the usual spread and a small error must leave clearly less than all
// of it.
func TestAForecastOfAHouseThatHasLearntIsSurer(t *testing.T) {
	width := func(lines string) float64 {
		e, err := Run(context.Background(), learnt(t, lines), Options{Members: 60})
		require.NoError(t, err)
		s := e.Total(func(t *forecast.Totals) float64 { return t.SteepOutMoisture })
		return s.P90 - s.P10
	}
	assert.Less(t, width(`uptake 1 error 0.03 of "lot"; husk-water 1 error 0.03 of "lot"`), 0.7*width("growth 1"))
}
