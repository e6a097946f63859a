package noted_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/model"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

const opened = "use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n%s}\n"

func clock(t testing.TB, text string) time.Time {
	t.Helper()
	at, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	require.NoError(t, err)
	return at
}

// last says what the last line of a record comes to.
func last(t testing.TB, lines, at string) noted.Result {
	t.Helper()
	b := sample.Batch(t, "batches", fmt.Sprintf(opened, lines))
	var line model.Dated
	for _, x := range b.Lines() {
		line = x
	}
	return noted.Of(t.Context(), b, line, clock(t, at), work.NewPool(work.Records))
}

// 6 kg of 12.4 % hold 5.256 kg of dry matter: at 7.38 kg that is 28.8 % of water, and a little
// more for what the water has washed out.
func TestAWeightIsAMoistureBesideTheForecasts(t *testing.T) {
	r := last(t, "  weighed 7.38 kg at 14:00 after soak 1\n", "2026-03-06 14:00")
	require.NotNil(t, r.Moisture)
	assert.InDelta(t, 0.2878+0.0025, float64(r.Moisture.Read), 0.0025)
	require.NotNil(t, r.Moisture.Forecast)
	assert.InDelta(t, 0.287, float64(*r.Moisture.Forecast), 0.01)
	assert.Nil(t, r.Doubt)
	require.NotNil(t, r.Next)
	assert.Equal(t, clock(t, "2026-03-06 23:00"), r.Next.Time)
	assert.Equal(t, "rest 1", r.Next.Ended)
	assert.Equal(t, visits.Fill, r.Next.Tasks[0].Kind)
	assert.Nil(t, r.Due, "the rest needs nobody")
}

// What the forecast itself would weigh is as moist as the forecast.
func TestTheForecastsOwnWeightHasItsMoisture(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	kg := f.Stages[0].Steps[0].WeightEnd
	r := last(t, fmt.Sprintf("  weighed %.4f kg at 14:00 after soak 1\n", kg), "2026-03-06 14:00")
	assert.InDelta(t, float64(*r.Moisture.Forecast), float64(r.Moisture.Read), 1e-4)
}

func TestWhatWouldExplainAWeightIsNamed(t *testing.T) {
	for line, want := range map[string]noted.MeantKind{
		"weighed 8.4 kg at 14:00 after soak 1":                  noted.Gross,
		"weighed 7.4 kg in \"blue tub\" at 14:00 after soak 1":  noted.Net,
		"weighed 5.7 kg at 14:00 after soak 1":                  noted.Swapped,
		"weighed 11.8 kg at 14:00 after soak 1":                 "",
		"weighed 16.3 lb at 14:00 after soak 1":                 "none",
		"weighed 8.37 kg in \"blue tub\" at 14:00 after soak 1": "none",
		"weighed 7.1 kg at 14:00 after soak 1":                  "none",
		"weighed 7.65 kg at 14:00 after soak 1":                 "none",
	} {
		r := last(t, "  "+line+"\n", "2026-03-06 14:00")
		switch {
		case want == "none":
			assert.Nil(t, r.Doubt, line)
		case want == "":
			if assert.NotNil(t, r.Doubt, line) {
				assert.Nil(t, r.Doubt.Meant, line)
			}
		default:
			if assert.NotNil(t, r.Doubt, line) && assert.NotNil(t, r.Doubt.Meant, line) {
				assert.Equal(t, want, r.Doubt.Meant.Kind, line)
				assert.InDelta(t, 7.38, float64(r.Doubt.Meant.Net), 0.25, line)
			}
		}
	}
	r := last(t, "  weighed 5.7 kg at 14:00 after soak 1\n", "2026-03-06 14:00")
	require.NotNil(t, r.Doubt.Lighter)
	assert.Equal(t, 6.0, r.Doubt.Lighter.SI)
}

// A weight that lies by the tub beside the forecast is told for that, whatever else is written.
func TestATubThatIsNotNamedIsFoundOut(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		first := rapid.Float64Range(7.2, 7.5).Draw(rt, "first")
		second := first + rapid.Float64Range(1.1, 1.3).Draw(rt, "second")
		lines := fmt.Sprintf("  weighed %.2f kg at 14:00 after soak 1\n  weighed %.2f kg at 2026-03-07 06:00 after soak 2\n", first, second)
		assert.Nil(rt, last(t, lines, "2026-03-07 06:00").Doubt, lines)
		lines = fmt.Sprintf("  weighed %.2f kg at 14:00 after soak 1\n  weighed %.2f kg at 2026-03-07 06:00 after soak 2\n", first, second+0.99)
		r := last(t, lines, "2026-03-07 06:00")
		require.NotNil(rt, r.Doubt, lines)
		require.NotNil(rt, r.Doubt.Meant, lines)
		assert.Equal(rt, noted.Gross, r.Doubt.Meant.Kind, lines)
	})
}

func TestATurnAnswersWhenTheNextIs(t *testing.T) {
	r := last(t, "  turned at 2026-03-08 06:30\n", "2026-03-08 06:30")
	require.NotNil(t, r.Next)
	assert.Equal(t, clock(t, "2026-03-08 14:30"), r.Next.Time)
	assert.Equal(t, visits.Turn, r.Next.Tasks[0].Kind)
	assert.Nil(t, r.Moisture)
}

func TestATemperatureStandsBesideWhatIsHeld(t *testing.T) {
	r := last(t, "  read bed 18.2 °C at 2026-03-09 06:30\n", "2026-03-09 06:30")
	require.NotNil(t, r.Temperature)
	assert.InDelta(t, 18.2, float64(r.Temperature.Read), 1e-6)
	require.NotNil(t, r.Held)
	assert.Equal(t, [2]float64{14, 17}, [2]float64{float64(r.Held.From), float64(r.Held.To)})
	room := last(t, "  read room 11 °C at 2026-03-09 06:30\n", "2026-03-09 06:30")
	assert.Nil(t, room.Held, "nobody holds it")
}

// A count is told by how long it is behind: grain that has grown less is behind, by more the less.
func TestACountIsAheadOrBehind(t *testing.T) {
	before := math.Inf(-1)
	for _, counts := range []string{"2 64 32 2 0 0", "2 44 52 2 0 0", "2 34 62 2 0 0", "2 4 62 32 0 0"} {
		r := last(t, "  counted acrospire "+counts+" at 2026-03-10 08:00\n", "2026-03-10 08:00")
		require.NotNil(t, r.Ahead, counts)
		assert.Greater(t, float64(*r.Ahead), before, counts)
		before = float64(*r.Ahead)
		assert.Equal(t, r.Acrospire.Read > *r.Acrospire.Forecast, *r.Ahead > 0, counts)
	}
}

func TestTheEndOfAStageSaysWhatBeginsNow(t *testing.T) {
	r := last(t, "  weighed 8.9 kg at 2026-03-12 18:00 after germinate\n", "2026-03-12 18:00")
	require.NotNil(t, r.Due)
	assert.Equal(t, visits.Spread, r.Due.Tasks[0].Kind)
	assert.Equal(t, model.WitherStage, r.Due.Tasks[0].Stage)
	require.NotNil(t, r.Next)
	assert.True(t, r.Next.Time.After(r.At))
	clean := last(t, "  weighed 4.95 kg clean malt at 2026-03-14 18:00\n", "2026-03-14 18:00")
	require.NotNil(t, clean.Yield)
	assert.InDelta(t, 4.95/6, float64(*clean.Yield), 1e-9)
}

func TestWhatComesFirstInABatch(t *testing.T) {
	b := sample.Batch(t, "batches", fmt.Sprintf(opened, ""))
	o, ok := noted.Open(t.Context(), b, work.NewPool(work.Records))
	require.True(t, ok)
	require.NotNil(t, o.First)
	assert.Equal(t, "soak 1", o.First.Step)
	assert.Equal(t, clock(t, "2026-03-06 14:00"), o.First.At)
	require.NotNil(t, o.First.Gross)
	assert.InDelta(t, float64(o.First.Weight)+0.99, float64(o.First.Gross.Weight), 1e-9)
	assert.Equal(t, "blue tub", o.Have.In)
	assert.Equal(t, []string{"Far field 2026"}, o.Have.Lots)
}

// BenchmarkAnswer is what somebody waits for while the bucket hangs on the scale.
func BenchmarkAnswer(b *testing.B) {
	batch := sample.Batch(b, "batches", fmt.Sprintf(opened, "  weighed 7.38 kg at 14:00 after soak 1\n  weighed 8.58 kg at 2026-03-07 06:00 after soak 2\n  weighed 9.25 kg at 22:00 after soak 3\n  counted chit 84 of 100 at 2026-03-08 07:10\n  counted acrospire 2 34 62 2 0 0 at 2026-03-10 08:00\n  weighed 8.9 kg at 2026-03-12 18:00 after germinate\n"))
	lines := batch.Lines()
	for b.Loop() {
		r := noted.Of(b.Context(), batch, lines[len(lines)-1], clock(b, "2026-03-12 18:00"), work.NewPool(work.Records))
		if r.Failed {
			b.Fatal("no answer")
		}
	}
}
