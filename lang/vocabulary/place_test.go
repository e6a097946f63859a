package vocabulary

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAStepHasThePhaseAndTheRankOfItsStage(t *testing.T) {
	for _, c := range []struct {
		step  string
		phase Phase
		rank  int
		dries bool
	}{
		{VerbSoak, Steeping, 0, false}, {VerbRest, Steeping, 0, false},
		{VerbGerminate, Growing, 1, false}, {VerbHold, Growing, 1, false}, {VerbWither, Growing, 2, true},
		{VerbDry, Drying, 3, true}, {VerbStew, Drying, 3, false}, {VerbCure, Drying, 3, true}, {VerbCool, Drying, 3, false},
		{VerbDeculm, Drying, 4, false}, {VerbStore, Anywhere, 5, false},
		{"boil", Anywhere, 0, false},
	} {
		assert.Equal(t, c.phase, PhaseAfter(c.step), c.step)
		assert.Equal(t, c.rank, StageRank(c.step), c.step)
		assert.Equal(t, c.dries, Dries(c.step), c.step)
	}
}

// Every step that a record can name shows how far the batch has come.
func TestEveryStepOfARecordShowsAPhase(t *testing.T) {
	for _, word := range whichStep[0].Words {
		assert.NotEqual(t, Anywhere, PhaseAfter(word), word)
	}
}

func TestEveryPlaceOfASlotIsInTheTableOfPlaces(t *testing.T) {
	check := func(slots []Slot) {
		for _, s := range slots {
			for _, word := range s.Places {
				p, ok := FindPlace(word)
				assert.True(t, ok, word)
				assert.Less(t, p.Can.Low.SI, p.Can.High.SI, word)
			}
		}
	}
	for _, r := range Rows() {
		check(r.Slots)
		for _, c := range r.Clauses {
			check(c.Slots)
		}
	}
	assert.True(t, slices.Equal(recordPlaces, placesIn(func(Phase) bool { return true })))
	_, ok := FindPlace("cellar")
	assert.False(t, ok)
	assert.Equal(t, Drying, PhaseAt(PlaceOven))
	assert.Equal(t, Anywhere, PhaseAt(PlaceRoom))
}
