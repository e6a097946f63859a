package curve_test

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

func record(t testing.TB, replaced ...string) *model.Batch {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), "batches", "26-03.malt"))
	require.NoError(t, err)
	return sample.Batch(t, "batches", strings.NewReplacer(replaced...).Replace(string(text)))
}

func clock(t testing.TB, text string) time.Time {
	t.Helper()
	at, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	require.NoError(t, err)
	return at
}

func followed(t testing.TB, b *model.Batch, until string) *follow.Following {
	t.Helper()
	f, err := follow.Of(t.Context(), b, clock(t, until), follow.Options{Members: 60})
	require.NoError(t, err)
	return f
}

func batchOf(t testing.TB, f *follow.Following, o curve.Options) curve.Curve {
	t.Helper()
	c, err := curve.Batch(t.Context(), f, o)
	require.NoError(t, err)
	return c
}

// near is the point of a curve next to a time.
func near(c curve.Curve, when answer.Seconds) curve.Point {
	best := c.Points[0]
	for _, p := range c.Points {
		if math.Abs(float64(p.At-when)) < math.Abs(float64(best.At-when)) {
			best = p
		}
	}
	return best
}

// A batch on the floor: what was weighed lies near the curve, now is told, and the bands are narrow where it was
// read and agree with what follow says of now.
func TestTheCurveOfABatchKeepsToItsReadings(t *testing.T) {
	f := followed(t, record(t), "2026-03-10 12:00")
	c := batchOf(t, f, curve.Options{})
	r := progress.Of(f, clock(t, "2026-03-10 12:00"), progress.Asked)
	assert.Equal(t, "26-03", c.Batch)
	assert.Equal(t, f.Trial.Batch.Began.Time, c.Start)
	assert.InDelta(t, f.Now, float64(c.Now), 1e-9)
	weights, counts, warm := 0, 0, 0
	for _, x := range c.Readings {
		assert.LessOrEqual(t, x.At, c.Now, "nothing is read that is yet to come")
		switch p := near(c, x.At); {
		case x.Weight != nil:
			weights++
			assert.InEpsilon(t, float64(p.Weight), float64(x.Weight.Value), 0.05, x.Text)
			require.NotNil(t, x.ByWeight)
			assert.InDelta(t, float64(p.Moisture), float64(x.ByWeight.Value), 0.04, x.Text)
			dry := float64(x.Weight.Value) * (1 - float64(x.ByWeight.Value))
			assert.InEpsilon(t, float64(p.Weight)*(1-float64(p.Moisture)), dry, 0.01, "by the dry matter that is left")
			assert.Positive(t, x.ByWeight.Error)
		case x.Acrospire != nil:
			counts++
			assert.InDelta(t, float64(p.Acrospire), float64(x.Acrospire.Value), 0.2, x.Text)
		case x.Temperature != nil:
			warm++
			assert.InDelta(t, float64(p.Grain), float64(x.Temperature.Value), 3, x.Text)
		}
	}
	assert.Equal(t, 3, weights)
	assert.Equal(t, 1, counts)
	assert.Greater(t, warm, 8)

	b := c.Bands
	require.NotNil(t, b)
	require.NotNil(t, r.Now.Moisture)
	i := 0
	for b.At[i] < c.Now {
		i++
	}
	assert.InDelta(t, float64(r.Now.Moisture.P50), float64(b.Moisture[i].P50), 0.01)
	assert.InDelta(t, float64(r.Now.Weight.P90-r.Now.Weight.P10), float64(b.Weight[i].P90-b.Weight[i].P10), 0.1)
	prior := curveOf(t, sample.Forecast(t, "batches/pale.malt"), curve.Options{Members: 60}).Bands
	assert.Less(t, widest(b), 0.8*widest(prior), "readings tell more than none")
}

// widest is the mean width of the band of acrospires, over the days of growth.
func widest(b *curve.Bands) float64 {
	sum, n := 0.0, 0
	for i, a := range b.Acrospire {
		if h := b.At[i] / 3600; h > 60 && h < 120 {
			sum += float64(a.P90 - a.P10)
			n++
		}
	}
	return sum / float64(n)
}

func TestADoubtedReadingIsMarked(t *testing.T) {
	f := followed(t, record(t, "weighed 8.66 kg", "weighed 6.86 kg"), "2026-03-10 12:00")
	c := batchOf(t, f, curve.Options{Members: -1})
	assert.Nil(t, c.Bands)
	doubted := 0
	for _, x := range c.Readings {
		if x.Doubted {
			doubted++
			assert.Contains(t, x.Text, "6.86")
		}
	}
	assert.Equal(t, 1, doubted)
}

// A record that is over has no now, and its last weight stands at its end.
func TestARecordThatIsOverHasNoNow(t *testing.T) {
	c, err := curve.Likely(t.Context(), record(t), time.Time{}, curve.Options{})
	require.NoError(t, err)
	assert.True(t, math.IsNaN(float64(c.Now)))
	var last curve.Reading
	for _, x := range c.Readings {
		if x.Weight != nil {
			last = x
		}
	}
	assert.InDelta(t, 4.90, float64(last.Weight.Value), 1e-9)
	assert.InEpsilon(t, 4.90, float64(c.Points[len(c.Points)-1].Weight), 0.02)
	require.NotEmpty(t, c.Beds)
}

func BenchmarkCurveOfABatch(b *testing.B) {
	f := followed(b, record(b), "2026-03-10 12:00")
	for b.Loop() {
		batchOf(b, f, curve.Options{Members: -1})
	}
}

func BenchmarkBandsOfABatch(b *testing.B) {
	f, err := follow.Of(b.Context(), record(b), clock(b, "2026-03-10 12:00"), follow.Options{})
	require.NoError(b, err)
	for b.Loop() {
		batchOf(b, f, curve.Options{})
	}
}

func BenchmarkLikelyCurve(b *testing.B) {
	x := record(b)
	for b.Loop() {
		_, err := curve.Likely(b.Context(), x, clock(b, "2026-03-10 12:00"), curve.Options{})
		require.NoError(b, err)
	}
}

// The same record gives the same curve, on however many cores it is reckoned.
func TestTheSameRecordGivesTheSameCurve(t *testing.T) {
	f := followed(t, record(t), "2026-03-10 12:00")
	first := fmt.Sprintf("%+v", *batchOf(t, f, curve.Options{Members: 20}).Bands)
	for range 2 {
		require.Equal(t, first, fmt.Sprintf("%+v", *batchOf(t, f, curve.Options{Members: 20}).Bands))
	}
}

func TestACancelledCurveSaysSo(t *testing.T) {
	f := followed(t, record(t), "2026-03-10 12:00")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := curve.Batch(ctx, f, curve.Options{})
	require.ErrorIs(t, err, context.Canceled)
	_, err = curve.Forecast(ctx, sample.Forecast(t, "pale.malt"), curve.Options{Members: 20})
	require.ErrorIs(t, err, context.Canceled)
}

// What is weighed as the first soak begins is the raw grain.
func TestAWeightAtTheBeginningIsThatOfTheRawGrain(t *testing.T) {
	b := record(t, "read    water 13.6 °C at 07:01", "weighed 6.00 kg at 07:00")
	c, err := curve.Likely(t.Context(), b, clock(t, "2026-03-06 20:00"), curve.Options{})
	require.NoError(t, err)
	first := c.Readings[0]
	require.NotNil(t, first.ByWeight)
	assert.Zero(t, first.At)
	w, ok := b.SampleMoisture()
	require.True(t, ok)
	assert.InDelta(t, w, float64(first.ByWeight.Value), 0.01)
	assert.InDelta(t, float64(first.ByWeight.Value), float64(c.Points[0].Moisture), 1e-3)
}

// Bought green malt goes to the kiln at once: its curve begins there, as it came, and its readings lie on it.
func TestABatchOfGreenMaltBeginsOnTheKiln(t *testing.T) {
	b := sample.Batch(t, "batches", `grain "bought" { species barley; already green malt; moisture 44 %; treated no }
site "loft" { air 16 °C; humidity 60 %; water 12 °C }
kiln "drawer" { area 0.2 m2; airflow 60 m3/h; reaches 20 to 95 °C; heater 3 kW; fired electric }
process "dried" {
  make pale malt
  from 4 kg of "bought"
  at "loft"
  kiln in "drawer" { dry at air-on 50 °C until moisture at most 10 % allow 4 to 30 h; cure at air-on 80 °C for 3 h; cool to malt 30 °C }
  deculm within 12 h
}
batch "g1" of "dried" {
  began 2026-03-06 07:00
  read air-on 50 °C at 07:00
  read air-off 24 °C at 08:00
  weighed 2.60 kg at 12:00
}
`)
	c, err := curve.Likely(t.Context(), b, clock(t, "2026-03-06 13:00"), curve.Options{})
	require.NoError(t, err)
	assert.Equal(t, "kiln", c.Points[0].Stage)
	assert.InDelta(t, 4, float64(c.Points[0].Weight), 1e-9)
	assert.InDelta(t, 50, float64(c.Points[0].AirOn), 4, "the air that is blown, and not that of the room")
	require.Len(t, c.Readings, 3)
	assert.Equal(t, "air-on", c.Readings[0].Place)
	assert.InDelta(t, float64(c.Points[0].AirOn), float64(c.Readings[0].Temperature.Value), 4)
	assert.InDelta(t, float64(near(c, c.Readings[2].At).Weight), 2.60, 0.1)
	first := c.Beds[0].Looks[0]
	assert.Zero(t, first.At)
	assert.InDelta(t, float64(c.Points[0].Moisture), float64(first.Layers[0].Moisture), 1e-9)
}
