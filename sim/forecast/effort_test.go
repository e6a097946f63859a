package forecast

import (
	"context"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/work"
)

// whole is a process of all stages, with one of them as given.
func whole(t *testing.T, stage string) *model.Process {
	t.Helper()
	texts := []string{steepText, growText, kilnText}
	for i, word := range []string{"steep", "germinate", "kiln"} {
		if strings.HasPrefix(stage, word) {
			texts[i] = stage
		}
	}
	return load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+strings.Join(texts, "")+"}\n")
}

// spent runs a process and gives what it cost.
func spent(t *testing.T, p *model.Process) (*Forecast, int) {
	t.Helper()
	m := work.NewMeter(t.Context(), nil)
	f, err := Run(p, Options{Meter: m})
	require.NoError(t, err)
	return f, m.Spent()
}

func TestAUsualProcessCostsATinyPartOfWhatItMay(t *testing.T) {
	_, n := spent(t, whole(t, ""))
	assert.Less(t, n, work.Most/40)
	assert.Greater(t, n, work.Most/400)
}

// atOnce is a steep whose soak is done when it begins.
const atOnce = `steep in "tub" { repeat 200 times { soak 1 h in water until moisture at least 1 % } }`

// slack is what may be spent between the moment at which the meter is used up and that
// at which whoever drives the model sees it: a chunk of the steep, and a line.
const slack = 2000

// What is asked for may be small to write and without end to do. The forecast ends as
// a trouble at the statement that asks for it, and no more is spent than may be.
func TestAForecastThatCostsTooMuchEndsAtWhatCostsMost(t *testing.T) {
	short := func(s float64) *model.Quantity {
		return &model.Quantity{Quantity: quantity.Quantity{SI: s, Dimension: quantity.Time}}
	}
	for _, c := range []struct {
		name, stage, at string
		mend            func(*model.Process) // to what the language itself refuses
	}{
		{"turning every minute for months", `germinate on "tray" { hold bed at 14 to 16 °C; turn every 1 min; for 90 days }`, "1 min", nil},
		{"sprinkling every minute for months", `germinate on "tray" { hold bed at 14 to 16 °C; sprinkle 0.003 l every 1 min; for 90 days }`, "1 min", func(p *model.Process) {
			dew := *model.First[*model.Germination](p).Sprinkle // so little that the bed is never full
			dew.Water.SI = 1e-8
			model.First[*model.Germination](p).Sprinkle = &dew
		}},
		{"stirring every minute for months", `kiln in "kiln" { stir every 1 min; dry at air-on 30 °C for 90 days; cool to malt 30 °C }`, "1 min", nil},
		{"turning all the time", growText, "8 h", func(p *model.Process) {
			q := *model.First[*model.Germination](p).Turn
			q.SI = 0.001
			model.First[*model.Germination](p).Turn = &q
		}},
		{"a steep without end", `steep in "tub" { repeat 200 times { soak 1 min in water; rest 1 min in air } }`, "soak 1 min in water", func(p *model.Process) {
			r := repeatOf(p)
			r.Times.Range.High.SI = 1e9
			r.Steps[0].(*model.Soak).For, r.Steps[1].(*model.Rest).For = short(0.1), short(0.1)
		}},
		{"soaks that are done at once, without end", atOnce, "", func(p *model.Process) {
			repeatOf(p).Times.Range.High.SI = 1e9
		}},
		{"nothing without end", `steep in "tub" { repeat 200 times { soak 1 h in water } }`, "repeat 200 times", func(p *model.Process) {
			repeatOf(p).Times.Range.High.SI = 1e15
			repeatOf(p).Steps = nil
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := whole(t, c.stage)
			if c.mend != nil {
				c.mend(p)
			}
			f, n := spent(t, p)
			assert.LessOrEqual(t, n, work.Most+slack)
			require.True(t, f.BrokenOff())
			last, _ := f.Trouble[len(f.Trouble)-1].(Unable)
			assert.ErrorAs(t, last.Cause, new(TooDear))
			if c.at != "" {
				assert.Equal(t, c.at, last.Place.Text())
			}
			assert.Less(t, len(f.Gates), work.Most/work.Line+1)
		})
	}
}

// What is kept of the dearest forecast there can be is bounded too.
func TestAForecastOfManyStepsKeepsFewBytes(t *testing.T) {
	p := whole(t, atOnce)
	repeatOf(p).Times.Range.High.SI = 1e9
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	f, _ := spent(t, p)
	runtime.GC()
	runtime.ReadMemStats(&after)
	assert.Less(t, int64(after.HeapAlloc)-int64(before.HeapAlloc), int64(8<<20))
	runtime.KeepAlive(f)
}

func TestACancelledForecastGivesTheErrorOfItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := Run(whole(t, ""), Options{Meter: work.NewMeter(ctx, nil)})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestForecastsThatBelongTogetherEndWithTheirPool(t *testing.T) {
	pool := work.NewPool(work.Most / 120)
	p := whole(t, "")
	_, err := Run(p, Options{Meter: work.NewMeter(t.Context(), pool)})
	require.NoError(t, err, "one fits")
	_, err = Run(p, Options{Meter: work.NewMeter(t.Context(), pool)})
	assert.ErrorIs(t, err, work.ErrPool)
}

// repeatOf is the repeat with which the steep of a process begins.
func repeatOf(p *model.Process) *model.Repeat {
	return model.First[*model.Steep](p).Steps[0].(*model.Repeat)
}
