package lessons_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/learn"
)

// taught is what two batches of a house taught, whose lot, kiln and process stand in
// files of their own.
func taught() (*learn.Result, map[string]*source.File) {
	files := map[string]*source.File{}
	place := func(name string) source.Place {
		if files[name] == nil {
			files[name] = source.New(name, []byte("x"))
		}
		return source.Place{File: files[name], Span: source.Span{End: 1}}
	}
	process := &model.Process{Name: "pale", Place: place("pale.malt"), Site: &model.Site{Name: "Loft, spring"}}
	a := &model.Batch{Name: "a", Process: process, Place: place("a.malt")}
	b := &model.Batch{Name: "b", Process: process, Place: place("b.malt")}
	return &learn.Result{
		Batches: []*model.Batch{a, b}, Left: []learn.Left{{Batch: &model.Batch{Name: "c", Place: place("c.malt")}, Reason: learn.ErrUnseen}},
		Factors: []learn.Factor{
			{Which: ensemble.Growth, Value: 0.9, Error: 0.02, Usual: 1, Spread: 0.12, VarianceExplained: 0.96, Batches: 2, Open: ensemble.LotGrowth},
			{Which: ensemble.Uptake, Grain: &model.Grain{Name: "Far field", Place: place("lots.malt")}, Value: 1.1, Error: 0.3, VarianceExplained: 0.7},
			{Which: ensemble.Drying, Kiln: &model.Kiln{Name: "tray", Place: place("kilns.malt")}, Value: 1.2, Error: 0.3, VarianceExplained: 0.2},
			{Which: learn.Thermometer, Value: 0.5, Error: 0.1, VarianceExplained: 0.8},
		},
		Correlated: []learn.Pair{{A: learn.Side{Open: ensemble.LotGrowth}, B: learn.Side{Open: ensemble.RoomAir}, Of: b, Correlation: -0.9}},
		PredictionErrors: []learn.PredictionError{{Kind: learn.Temperatures, Readings: 5, Learnt: 1.5, Model: 2}, {Kind: learn.Weights, Readings: 3, Learnt: 0.25, Model: 0.5},
			{Kind: learn.Moistures, Readings: 3, Learnt: 0.01, Model: 0.02}},
		Durations: []learn.Duration{{Batch: a, What: learn.ToDry, Recorded: 3600, Learnt: 3600 + 300, Model: 3600 - 600}, {Batch: b, What: learn.ToDry, Recorded: 7200, Learnt: 7200 - 400, Model: 7200 + 800}},
	}, files
}

func TestEachFigureIsTheOneThatItsNameSays(t *testing.T) {
	l, _ := taught()
	r := lessons.Of(l, "", lessons.Files{})
	require.Len(t, r.Factors, 3)
	growth, uptake := r.Factors[0], r.Factors[1]
	assert.Equal(t, "growth", growth.Factor)
	assert.Nil(t, growth.Of)
	assert.Equal(t, lessons.Estimate[answer.Number]{Value: 0.9, Error: 0.02, Prior: 1, PriorSD: 0.12, VarianceExplained: 0.96, Known: true, Batches: 2, Learn: outlook.Learn(ensemble.LotGrowth)}, growth.Estimate)
	assert.Equal(t, "Far field", *uptake.Of)
	assert.EqualValues(t, 0.5, r.Thermometer.Value)

	h := r.PredictionErrors
	require.NotNil(t, h)
	assert.Equal(t, &lessons.RMSE[answer.Kilograms]{Count: 3, Learnt: 0.25, Model: 0.5}, h.Weight)
	assert.Equal(t, &lessons.RMSE[answer.Share]{Count: 3, Learnt: 0.01, Model: 0.02}, h.Moisture)
	assert.Equal(t, &lessons.RMSE[answer.Kelvin]{Count: 5, Learnt: 1.5, Model: 2}, h.Temperature)
	assert.Nil(t, h.Acrospire)
	assert.Nil(t, h.Germination)
	require.NotNil(t, h.Drying)
	assert.Equal(t, 2, h.Drying.Count)
	assert.InDelta(t, 353.5534, float64(h.Drying.Learnt), 1e-4, "the root of the mean of the squares of 300 s and 400 s")
	assert.InDelta(t, 707.1068, float64(h.Drying.Model), 1e-4)

	assert.Equal(t, []lessons.LeftOut{{File: "c.malt", Batch: "c", Reason: lessons.Reason{Of: learn.ErrUnseen}}}, r.LeftOut)
	require.Len(t, r.Correlated, 1)
	assert.Equal(t, "b", *r.Correlated[0].Batch)
}

func TestTheBlockHoldsWhatIsKnownOnly(t *testing.T) {
	l, _ := taught()
	r := lessons.Of(l, "", lessons.Files{})
	require.NotNil(t, r.House)
	assert.Equal(t, "Loft", r.House.Name, "the site up to its comma")
	assert.Len(t, r.House.Factors, 2)
	assert.NotNil(t, r.House.Thermometer)
	assert.Equal(t, "mine", lessons.Of(l, "mine", lessons.Files{}).House.Name)

	for i := range l.Factors {
		l.Factors[i].VarianceExplained = 0.4
	}
	assert.Nil(t, lessons.Of(l, "", lessons.Files{}).House)
}

func TestASingleBatchIsNotHeldOut(t *testing.T) {
	l, _ := taught()
	l.Batches, l.PredictionErrors, l.Durations = l.Batches[:1], nil, nil
	assert.Nil(t, lessons.Of(l, "", lessons.Files{}).PredictionErrors)
}

func TestTheSeatIsBesideWhatTheBlockNames(t *testing.T) {
	l, files := taught()
	top := filepath.Join(t.TempDir(), "top")
	at := lessons.Files{Paths: map[*source.File]string{}, Folder: top}
	for name, f := range files {
		at.Paths[f] = filepath.Join(top, "house", name)
	}
	seat := lessons.Of(l, "", at).Seat
	assert.Equal(t, lessons.Seat{Beside: filepath.Join("house", "lots.malt"), Uses: []string{"lots.malt"}}, seat, "the kiln is not known")

	l.Factors[2].VarianceExplained = 0.9
	at.Paths[files["kilns.malt"]] = filepath.Join(top, "kilns", "kilns.malt")
	assert.Equal(t, []string{"lots.malt", "../kilns/kilns.malt"}, lessons.Of(l, "", at).Seat.Uses)

	at.Paths[files["kilns.malt"]] = at.Paths[files["pale.malt"]]
	seat = lessons.Of(l, "", at).Seat
	require.NotNil(t, seat.Inside, "the process stands there")
	assert.Equal(t, filepath.Join("house", "pale.malt"), *seat.Inside)

	delete(at.Paths, files["lots.malt"])
	seat = lessons.Of(l, "", at).Seat
	require.NotNil(t, seat.Inside)
	assert.Empty(t, *seat.Inside, "it came from standard input")
}
