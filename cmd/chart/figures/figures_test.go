package figures_test

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/chart"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/syntax/pounds"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
)

func forecasted(t testing.TB, name string, o curve.Options) (*forecast.Forecast, curve.Curve, words.House) {
	t.Helper()
	f := sample.Forecast(t, name)
	c, err := curve.Forecast(t.Context(), f, o)
	require.NoError(t, err)
	return f, c, words.Of(f.Process)
}

// named is the only chart of a name.
func named(t testing.TB, name string, c curve.Curve, h words.House) chart.Chart {
	t.Helper()
	list, ok := figures.Named(name, &c, h)
	require.True(t, ok, name)
	require.Len(t, list, 1, name)
	require.Empty(t, unsound(list[0]))
	return list[0]
}

// value is that of a line at a time, the last where there are several.
func value(l chart.Line, at float64) float64 {
	found := math.NaN()
	for i := range l.At {
		if math.Abs(l.At[i]-at) < 0.5 {
			found = l.Value[i]
		}
	}
	return found
}

// The line of a chart goes through what the outlook says of the end of each step, in the unit of the house.
func TestTheEndOfEachStepStandsInTheCharts(t *testing.T) {
	for _, name := range []string{"pale.malt", "box.malt", "oven.malt", "floor-kiln.malt"} {
		f, c, h := forecasted(t, name, curve.Options{})
		r := outlook.Of(f, time.Time{})
		moisture, weight := named(t, figures.OfMoisture, c, h), named(t, figures.OfWeight, c, h)
		n := 0
		r.Rows(func(s outlook.Row) {
			if s.End == s.Start || s.Stage == string(model.StoreStage) {
				return
			}
			at := float64(c.Steps[n].To)
			n++
			assert.InDelta(t, 100*float64(s.MoistureEnd), value(moisture.Panels[0].Lines[0], at), 0.05, "%s: %s", name, s.Label)
			scale := h.Weights(float64(r.Charge))
			assert.InEpsilon(t, scale.Shown(float64(s.WeightEnd)), value(weight.Panels[0].Lines[0], at), 1e-3, "%s: %s", name, s.Label)
		})
		assert.Positive(t, n)
	}
}

func TestGatesStandAsLevels(t *testing.T) {
	_, c, h := forecasted(t, "pale.malt", curve.Options{})
	var levels []float64
	for _, g := range named(t, figures.OfMoisture, c, h).Panels[0].Gates {
		levels = append(levels, math.Round(10*g.Value)/10)
		assert.Contains(t, g.Name, "moisture")
	}
	assert.Contains(t, levels, 10.0)
	growth := named(t, figures.OfGrowth, c, h)
	require.NotEmpty(t, growth.Panels[0].Gates)
	assert.InDelta(t, 0.75, growth.Panels[0].Gates[0].Value, 1e-9)
}

func TestTheAimOfTheSteepIsABand(t *testing.T) {
	_, c, h := forecasted(t, "floor-kiln.malt", curve.Options{})
	require.Len(t, c.Aims, 1)
	b := named(t, figures.OfMoisture, c, h).Panels[0].Bands
	require.Len(t, b, 1)
	assert.Equal(t, []float64{0, float64(c.Stages[0].To)}, b[0].At)
	assert.InDelta(t, 100*float64(c.Aims[0].Low), b[0].Low[0], 1e-9)
}

// The front: while it stands in a deep bed, its bottom is dry and its top is not.
func TestTheBedShowsItsFront(t *testing.T) {
	_, c, h := forecasted(t, "deep-bed.malt", curve.Options{})
	x := named(t, figures.OfBed, c, h)
	require.NotNil(t, x.Panels[0].Field)
	f, widest := x.Panels[0].Field, 0.0
	top := len(f.Depth) - 1
	for k := range f.At {
		for i := top; i > 0; i-- {
			if !math.IsNaN(f.Value[i][k]) {
				widest = max(widest, f.Value[i][k]-f.Value[0][k])
				break
			}
		}
	}
	assert.Greater(t, widest, 20.0, "percent of moisture between bottom and top")
	assert.True(t, math.IsNaN(f.Value[top][len(f.At)-1]), "the bed has sunk")
	assert.False(t, math.IsNaN(f.Value[top][0]), "it was as high as that")
	assert.Equal(t, []string{"top", "middle", "bottom"}, []string{x.Panels[1].Lines[0].Name, x.Panels[1].Lines[1].Name, x.Panels[1].Lines[2].Name})
	assert.Equal(t, "cm", x.Panels[0].Unit)
}

func TestHeatShowsTheAirAndWhatItIsSetTo(t *testing.T) {
	_, c, h := forecasted(t, "pale.malt", curve.Options{})
	x := named(t, figures.OfHeat, c, h)
	names := func(p chart.Panel) (list []string) {
		for _, l := range p.Lines {
			list = append(list, l.Name)
		}
		return list
	}
	require.GreaterOrEqual(t, len(x.Panels), 2)
	assert.Equal(t, "temperature before the kiln", x.Panels[0].Name)
	assert.Equal(t, []string{"room", "grain"}, names(x.Panels[0]))
	assert.Equal(t, "temperature on the kiln", x.Panels[1].Name)
	assert.Equal(t, []string{"air off", "air on", "grain"}, names(x.Panels[1]))
	for _, p := range x.Panels[:2] {
		require.NotEmpty(t, p.Bands, p.Name)
		assert.Equal(t, "as set", p.Bands[len(p.Bands)-1].Name)
		assert.Equal(t, "°C", p.Unit)
	}

	_, c, h = forecasted(t, "oven.malt", curve.Options{})
	assert.Equal(t, []string{"oven", "grain"}, names(named(t, figures.OfHeat, c, h).Panels[1]), "an oven without a fan has one air")
}

// The floor of the hall's Munich keeps the mean of its bed in 17 to 20 °C by turns of 6 h in a room of 10 °C; the middle
// is warmer by a third of the excess, and comes to 22 °C before a turn. A box is held by its air, and is not told of.
func TestABedWhoseMiddleIsWarmerThanItsBandSaysWhy(t *testing.T) {
	_, c, h := forecasted(t, "hall/munich.malt", curve.Options{})
	assert.Contains(t, strings.Join(named(t, figures.OfHeat, c, h).Note, "\n"), "held by its mean")
	for _, name := range []string{"pale.malt", "box.malt"} {
		_, c, h := forecasted(t, name, curve.Options{})
		assert.NotContains(t, strings.Join(named(t, figures.OfHeat, c, h).Note, "\n"), "held by its mean", name)
	}
}

// A house of °F and lb sees the same in its own units.
func TestAHouseOfPoundsSeesItsOwnUnits(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), "box.malt"))
	require.NoError(t, err)
	root, err := read.OpenRoot(sample.Folder(t))
	require.NoError(t, err)
	defer root.Close()
	load := func(text string) (curve.Curve, words.House) {
		house, _ := read.Load("box.malt", []byte(text), ".", root)
		require.Len(t, house.Processes, 1)
		f, err := forecast.Run(house.Processes[0], forecast.Options{})
		require.NoError(t, err)
		c, err := curve.Forecast(t.Context(), f, curve.Options{})
		require.NoError(t, err)
		return c, words.Of(f.Process)
	}
	c, h := load(string(text))
	b, british := load(pounds.Written(string(text)))
	metric, foreign := named(t, figures.OfWeight, c, h), named(t, figures.OfWeight, b, british)
	assert.Equal(t, "kg", metric.Panels[0].Unit)
	assert.Equal(t, "lb", foreign.Panels[0].Unit)
	assert.InEpsilon(t, metric.Panels[0].Lines[0].Value[0]/0.45359237, foreign.Panels[0].Lines[0].Value[0], 1e-3)
	warm := named(t, figures.OfHeat, b, british)
	assert.Equal(t, "°F", warm.Panels[0].Unit)
	list, _ := figures.Named(figures.OfBed, &b, british)
	for _, x := range list {
		if x.Panels[0].Field != nil {
			assert.Equal(t, "in", x.Panels[0].Unit)
		}
	}
}

func TestWhatDoesNotGrowHasNoChartOfGrowth(t *testing.T) {
	root, err := read.OpenRoot(sample.Folder(t))
	require.NoError(t, err)
	defer root.Close()
	house, _ := read.Load("green.malt", []byte(`grain "bought" { species barley; already green malt; moisture 44 % }
site "loft" { air 16 °C; humidity 60 %; water 12 °C }
kiln "drawer" { area 0.2 m2; airflow 60 m3/h }
process "dried" {
  make pale malt
  from 4 kg of "bought"
  at "loft"
  kiln in "drawer" { dry at air-on 50 °C until moisture at most 10 % allow 4 to 30 h; cure at air-on 80 °C for 3 h }
}
`), ".", root)
	require.Len(t, house.Processes, 1)
	f, err := forecast.Run(house.Processes[0], forecast.Options{})
	require.NoError(t, err)
	c, err := curve.Forecast(t.Context(), f, curve.Options{})
	require.NoError(t, err)
	h := words.Of(f.Process)
	list, ok := figures.Named(figures.OfGrowth, &c, h)
	assert.True(t, ok)
	assert.Empty(t, list)
	assert.Len(t, figures.All(&c, h), 4)
	assert.Equal(t, "the beginning", named(t, figures.OfWeight, c, h).Since)
	_, ok = figures.Named("colour", &c, h)
	assert.False(t, ok)
}

func TestWhatIsNotForecastIsSaidBelow(t *testing.T) {
	_, c, h := forecasted(t, "broken/forecast-unable.malt", curve.Options{})
	require.Len(t, figures.Notes(&c, h), 1)
	assert.True(t, strings.HasPrefix(figures.Notes(&c, h)[0], "The forecast breaks off after 0 h: "), figures.Notes(&c, h))
	assert.Empty(t, figures.All(&c, h), "there is nothing to draw")

	text, err := os.ReadFile(filepath.Join(sample.Folder(t), "pale.malt"))
	require.NoError(t, err)
	wet := regexp.MustCompile(`(?s)kiln in .*?\n  }`).ReplaceAllString(string(text), `kiln in "tray kiln" { dry at air-on 45 °C for 1 h }`)
	p := processOf(t, wet)
	f, err := forecast.Run(p, forecast.Options{})
	require.NoError(t, err)
	c, err = curve.Forecast(t.Context(), f, curve.Options{})
	require.NoError(t, err)
	x := named(t, figures.OfMoisture, c, words.Of(p))
	require.Len(t, x.Note, 1)
	assert.True(t, strings.HasPrefix(x.Note[0], "The grain comes off the kiln at "), x.Note[0])
	assert.Equal(t, "kiln", x.Stages[len(x.Stages)-1].Name, "what would be done with it then is not told")
}

func processOf(t testing.TB, text string) *model.Process {
	t.Helper()
	root, err := read.OpenRoot(sample.Folder(t))
	require.NoError(t, err)
	defer root.Close()
	house, found := read.Load("any.malt", []byte(text), ".", root)
	require.Len(t, house.Processes, 1, "%v", found)
	return house.Processes[0]
}

func TestABatchShowsItsReadings(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), "batches", "26-03.malt"))
	require.NoError(t, err)
	b := sample.Batch(t, "batches", string(text))
	at, err := time.ParseInLocation("2006-01-02 15:04", "2026-03-14 14:00", time.Local)
	require.NoError(t, err)
	f, err := follow.Of(t.Context(), b, at, follow.Options{Members: 40})
	require.NoError(t, err)
	c, err := curve.Batch(t.Context(), f, curve.Options{Members: 30})
	require.NoError(t, err)
	h := words.OfBatch(f.Trial.Process, b)
	moisture := named(t, figures.OfMoisture, c, h)
	assert.Equal(t, "Moisture of batch 26-03", moisture.Title)
	require.NotNil(t, moisture.Now)
	assert.Len(t, moisture.Panels[0].Points, 6, "each weight tells a moisture")
	assert.Len(t, named(t, figures.OfWeight, c, h).Panels[0].Points, 6)
	require.Len(t, moisture.Panels[0].Bands, 2)
	assert.Equal(t, []string{"8 of 10 cases", "aim of the steep"}, []string{moisture.Panels[0].Bands[0].Name, moisture.Panels[0].Bands[1].Name})
	growth := named(t, figures.OfGrowth, c, h)
	assert.Len(t, growth.Panels[0].Points, 4)
	assert.Len(t, growth.Panels[1].Points, 1)
	assert.Nil(t, growth.Now, "it has grown")
	assert.Len(t, named(t, figures.OfBed, c, h).Panels[2].Points, 2, "air-off while it dries")
	for _, p := range moisture.Panels[0].Points {
		assert.Greater(t, p.Error, 0.0)
		assert.Less(t, p.Error, 2.0)
	}
}

func TestASeasonLiesOverItself(t *testing.T) {
	root, err := read.OpenRoot(filepath.Join(sample.Folder(t), "batches"))
	require.NoError(t, err)
	defer root.Close()
	book := ledger.New(t.Context(), nil)
	for _, name := range []string{"26-03.malt", "26-04.malt", "26-05.malt"} {
		text, err := os.ReadFile(filepath.Join(sample.Folder(t), "batches", name))
		require.NoError(t, err)
		house, found := read.Load(name, text, ".", root)
		require.Len(t, house.Batches, 1)
		book.Enter(ledger.Record{File: name, Reader: root, House: house, Batch: house.Batches[0], Found: found})
	}
	s := curve.SeasonOf(book.Result())
	require.Len(t, s.Tracks, 3)
	h := words.Of(book.Result().Batches[0].Written)
	x := figures.Season(s, h)
	require.Empty(t, unsound(x))
	require.Len(t, x.Panels, 3)
	assert.Equal(t, []string{"26-03", "26-04", "26-05"}, []string{x.Panels[0].Lines[0].Name, x.Panels[0].Lines[1].Name, x.Panels[0].Lines[2].Name})
	first := x.Panels[0].Lines[0]
	assert.InDelta(t, 100*4.90/float64(book.Result().Batches[0].Charge), first.Value[len(first.Value)-1], 1e-9)
	lengths := figures.Lengths(s)
	require.Len(t, lengths.Groups, 4)
	assert.InDelta(t, 39.0/24, lengths.Groups[0].Bars[0].Value, 1e-9, "cast on 7 March at 22:00")
	assert.Empty(t, figures.Season(curve.Season{}, h).Panels)
}

func TestDriversAreSharesOfTheSpread(t *testing.T) {
	_, c, h := forecasted(t, "pale.malt", curve.Options{Members: 60})
	b := figures.Drivers(c.Bands.Spread.Drivers, h)
	require.NotEmpty(t, b.Groups)
	for _, g := range b.Groups {
		sum := 0.0
		for _, x := range g.Bars {
			assert.Positive(t, x.Value)
			assert.NotEmpty(t, x.Name)
			sum += x.Value
		}
		assert.LessOrEqual(t, sum, 100+1e-9, g.Name)
	}
	assert.Empty(t, figures.Drivers(outlook.Drivers{}, h).Groups)
}
