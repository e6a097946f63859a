package progress_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
)

// followed follows the first batch of the loft, with words of its record replaced by
// others.
func followed(t *testing.T, until string, replaced ...string) (*follow.Following, progress.Result) {
	t.Helper()
	const folder = "../../../examples/batches"
	text, err := os.ReadFile(folder + "/26-03.malt")
	require.NoError(t, err)
	for i := 0; i < len(replaced); i += 2 {
		require.Contains(t, string(text), replaced[i])
	}
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	house, _ := read.Load("26-03.malt", []byte(strings.NewReplacer(replaced...).Replace(string(text))), ".", root)
	require.Len(t, house.Batches, 1)
	f, err := follow.Of(t.Context(), house.Batches[0], clock(t, until), follow.Options{Members: 40})
	require.NoError(t, err)
	return f, progress.Of(f, clock(t, until), progress.Asked)
}

func clock(t *testing.T, text string) time.Time {
	t.Helper()
	at, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	require.NoError(t, err)
	return at
}

// same holds a spread of an answer beside that of the ensemble.
func same[T interface {
	~float64
	answer.Figure
}](t *testing.T, want ensemble.Spread, got *answer.Spread[T], name string) {
	t.Helper()
	require.NotNil(t, got, name)
	assert.Equal(t, [4]float64{want.P10, want.P50, want.P90, want.Share}, [4]float64{float64(got.P10), float64(got.P50), float64(got.P90), float64(got.Share)}, name)
}

func TestEachFigureOfTheOutcomeIsTheOneThatItsNameSays(t *testing.T) {
	f, r := followed(t, "2026-03-14 09:30")
	total := func(of func(*forecast.Totals) float64) ensemble.Spread { return f.Ensemble.Total(of) }
	same(t, total(func(t *forecast.Totals) float64 { return t.SteepOutMoisture }), &r.Outcome.SteepOutMoisture, "moisture at steep-out")
	same(t, total(func(t *forecast.Totals) float64 { return t.Total }), &r.Outcome.Total, "total time")
	same(t, total(func(t *forecast.Totals) float64 { return t.FinalMoisture }), &r.Outcome.FinalMoisture, "final moisture")
	same(t, total(func(t *forecast.Totals) float64 { return t.Malt }), &r.Outcome.Malt, "malt")
	same(t, total(func(t *forecast.Totals) float64 { return t.Yield }), &r.Outcome.Yield, "yield")
	same(t, total(func(t *forecast.Totals) float64 { return t.Quality.Diastatic }), &r.Outcome.Diastatic, "diastatic enzymes")

	same(t, f.Stand.Moisture, r.Now.Moisture, "moisture now")
	same(t, f.Stand.Weight, r.Now.Weight, "weight now")
	same(t, f.Stand.Lost, r.Now.DryMatterLost, "lost now")
	same(t, f.Stand.Malt, r.Now.Malt, "temperature of the malt now")
	same(t, f.Stand.AirOff, r.Now.AirOff, "air-off now")
	assert.Nil(t, r.Now.Chit, "it is on the kiln")
	assert.True(t, r.Complete)
	assert.GreaterOrEqual(t, r.Posterior.Members, 40)
	assert.Equal(t, progress.Model, r.RelativeTo)
	require.NotNil(t, r.Thermometer)
	var said []string
	for _, x := range r.Factors {
		said = append(said, x.Factor)
	}
	assert.Subset(t, said, []string{"uptake", "husk-water", "growth", "chit", "respiration", "drying"})
}

func TestAReadingStandsInTheFieldOfItsKind(t *testing.T) {
	f, r := followed(t, "2026-03-12 13:10", "8.66 kg at", "86.6 kg at")
	require.Len(t, r.Readings, len(f.Judged))
	kinds := map[string]int{}
	for i, x := range r.Readings {
		item := f.Judged[i].Observation
		var observed float64
		for kind, had := range map[string]bool{"weight": x.Weight != nil, "temperature": x.Temperature != nil, "chit": x.Chit != nil,
			"acrospire": x.Acrospire != nil, "modification": x.Modification != nil} {
			if had {
				kinds[kind]++
			}
		}
		switch {
		case model.Weight(item.Reading) != nil:
			observed = float64(x.Weight.Observed)
		case model.Thermometer(item.Reading) != nil:
			observed = float64(x.Temperature.Observed)
		case model.Rub(item.Reading) != "":
			observed = float64(x.Modification.Observed)
		case model.CountOf(item.Reading, model.Chit) != nil:
			observed = float64(x.Chit.Observed)
		default:
			observed = float64(x.Acrospire.Observed)
		}
		assert.Equal(t, item.Value, observed, x.Text)
	}
	assert.Equal(t, len(r.Readings), kinds["weight"]+kinds["temperature"]+kinds["chit"]+kinds["acrospire"]+kinds["modification"])
	assert.Len(t, kinds, 5)

	doubted := 0
	for _, x := range r.Readings {
		if d, ok := x.Words.(progress.Doubt); ok {
			doubted++
			assert.Equal(t, follow.Nought, d.Kind)
			assert.Equal(t, "nought", x.Doubt)
			assert.Equal(t, "weighed 86.6 kg at 2026-03-07 06:00 after soak 2", x.Text)
			assert.InDelta(t, 8.66, float64(d.Reading.Weight.Expected.P50), 0.2)
		}
	}
	assert.Equal(t, 1, doubted)
}

func TestWhatIsStillToEndIsToCome(t *testing.T) {
	f, r := followed(t, "2026-03-10 12:00")
	require.NotEmpty(t, r.Steps)
	assert.Equal(t, "germinate", r.Steps[0].Stage)
	for _, s := range r.Steps {
		assert.Greater(t, float64(s.End.P50), f.Now)
		assert.NotEqual(t, "store", s.Stage)
	}
	require.NotEmpty(t, r.Waits)
	assert.True(t, r.Waits[0].Open)
	require.NotEmpty(t, r.Due)
	assert.False(t, r.Due[0].Time.Before(r.At))
	for _, x := range r.Steps {
		if x.End.Share == 1 && x.Label != forecast.Waiting && x.Stage != "deculm" {
			dueAtTheEndOf(t, r, x)
		}
	}
}

// dueAtTheEndOf asks that something is due when a step to come ends, and that the grain is
// then as moist as is told of the step.
func dueAtTheEndOf(t *testing.T, r progress.Result, s outlook.StepSpread) {
	t.Helper()
	i := slices.IndexFunc(r.Due, func(v timetable.Visit) bool { return math.Abs(float64(v.At-s.End.P50)) < 60 })
	if !assert.GreaterOrEqual(t, i, 0, "nothing is due when %s ends", s.Label) {
		return
	}
	if m := float64(r.Due[i].Moisture); !math.IsNaN(m) {
		assert.InDelta(t, float64(s.MoistureEnd.P50), m, 1e-9, s.Label)
	}
}

// As of which time a batch is followed where nothing is asked.
func TestTheTimeOfFollowing(t *testing.T) {
	b := &model.Batch{Began: model.Instant{Time: clock(t, "2026-03-06 07:00")},
		Readings: []model.Reading{&model.Turned{Seen: model.Seen{At: model.Instant{Time: clock(t, "2026-03-08 07:00")}}}}}
	for now, want := range map[string]struct {
		at  string
		why progress.AsOf
	}{
		"2026-03-09 12:00": {"2026-03-09 12:00", progress.Clock},
		"2026-03-20 12:00": {"2026-03-08 07:00", progress.LastReading},
		"2026-03-07 12:00": {"2026-03-08 07:00", progress.ClockBehind},
	} {
		at, why := progress.When(b, clock(t, now))
		assert.Equal(t, clock(t, want.at), at, now)
		assert.Equal(t, want.why, why, now)
	}
}
