package forecast

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

// The first look of all is of what was charged, not of what the first seconds made of it.
func TestLookAtTheBeginningShowsTheRawGrain(t *testing.T) {
	for _, c := range []Course{{Looks: []float64{0}}, {Looks: []float64{0, 1}, AtEnds: true}, {Looks: []float64{0}, Brief: true}, {Looks: []float64{0}, AtStarts: true, Layers: true}} {
		f := kept(t, steepText+growText+kilnText, c)
		require.NotEmpty(t, f.Seen)
		s := f.Seen[0]
		assert.Zero(t, s.At)
		assert.InDelta(t, 5, s.Weight, 1e-9)
		assert.InDelta(t, 1-f.DryMass/5, s.Moisture, 1e-12)
		assert.InDelta(t, 0, s.Lost, 1e-12)
		assert.Equal(t, model.SteepStage, s.Stage)
	}
}

// A batch that begins on the kiln is seen as it was laid there, in the air that then passes.
func TestLookAtTheBeginningOfGreenMaltShowsItAsItCame(t *testing.T) {
	p := load(t, house+"grain \"green\" { species barley; already green malt; moisture 44 %; treated no }\nprocess \"p\" {\n make pale malt\n from 5 kg of \"green\"\n at \"room\"\n"+kilnText+"}\n")
	f, err := Run(p, Options{Course: &Course{Looks: []float64{0, 600}, Layers: true}})
	require.NoError(t, err)
	require.Len(t, f.Seen, 2)
	s, later := f.Seen[0], f.Seen[1]
	assert.InDelta(t, 5, s.Weight, 1e-9)
	assert.InDelta(t, f.Stages[0].Steps[0].MoistureStart, s.Moisture, 1e-12)
	assert.Greater(t, s.Weight, later.Weight)
	assert.InDelta(t, later.AirOn, s.AirOn, 5, "as the kiln blows it, and not the room's")
	for _, l := range s.Layers {
		assert.InDelta(t, s.Moisture, l.Moisture, 1e-12)
	}
}

// A look at a time between two stages is of the one that ends, and the state is the same as at its end.
func TestLookBetweenTwoStagesIsOfTheOneThatEnds(t *testing.T) {
	plain := run1(t, steepText+growText+kilnText)
	var looks []float64
	for _, st := range plain.Stages {
		looks = append(looks, st.Steps[len(st.Steps)-1].End)
	}
	f := kept(t, steepText+growText+kilnText, Course{Looks: looks})
	require.Len(t, f.Seen, len(looks))
	for i, st := range plain.Stages {
		assert.Equal(t, st.Kind, f.Seen[i].Stage)
		assert.InDelta(t, st.Steps[len(st.Steps)-1].MoistureEnd, f.Seen[i].Moisture, 1e-4, st.Kind)
	}
}

// Each stage is seen as it begins too, at the time at which the one before it ends.
func TestStagesAreSeenAsTheyBegin(t *testing.T) {
	f := kept(t, steepText+growText+kilnText, Course{AtStarts: true, AtEnds: true})
	for _, st := range f.Stages {
		first := st.Steps[0]
		if st.Kind == model.DeculmStage {
			continue // nothing runs then
		}
		found := 0
		for _, s := range f.Seen {
			if s.Stage == st.Kind && s.At == first.Start {
				assert.InDelta(t, first.MoistureStart, s.Moisture, 1e-12, st.Kind)
				found++
			}
		}
		assert.Equal(t, 1, found, st.Kind)
	}
}

// The layers hold what the bed holds: their water is that of the malt, and together they are
// as thick as it is. On the way up the bed they are moister and the air is cooler.
func TestLayersHoldWhatTheBedHolds(t *testing.T) {
	plain := run1(t, steepText+growText+kilnText)
	kiln := plain.Stages[2].Steps
	var looks []float64
	for at := kiln[0].Start + 600; at < kiln[0].End; at += 1800 {
		looks = append(looks, at)
	}
	f := kept(t, steepText+growText+kilnText, Course{Looks: looks, AtStarts: true, Layers: true})
	seen := 0
	for _, s := range f.Seen {
		if s.Stage != model.KilnStage {
			assert.Empty(t, s.Layers, s.Stage)
			continue
		}
		seen++
		x, warm, top := 0.0, 0.0, 0.0
		for i, l := range s.Layers {
			x += l.Moisture / (1 - l.Moisture) / float64(len(s.Layers))
			warm += l.Malt / float64(len(s.Layers))
			assert.InDelta(t, top+l.Thick/2, l.Depth, 1e-12)
			top += l.Thick
			if i > 0 {
				assert.GreaterOrEqual(t, l.Moisture, s.Layers[i-1].Moisture-1e-9)
			}
		}
		assert.InDelta(t, s.Moisture/(1-s.Moisture), x, 1e-9)
		assert.InDelta(t, s.Malt, warm, 1e-9)
		assert.Less(t, s.Layers[0].Air, s.AirOn+1)
		assert.Greater(t, s.Layers[len(s.Layers)-1].Air, s.AirOff-1)
		assert.Less(t, top, f.Kilns[0].Depth+1e-9)
	}
	assert.Equal(t, len(looks)+1, seen)
}

func TestLayersAreThereOnlyWhereTheyAreAskedFor(t *testing.T) {
	f := kept(t, steepText+growText+kilnText, Course{AtEnds: true})
	for _, s := range f.Seen {
		assert.Nil(t, s.Layers)
		assert.False(t, math.IsNaN(s.Moisture))
	}
}
