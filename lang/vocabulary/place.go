package vocabulary

import (
	"slices"

	q "maltwright/lang/quantity"
)

// Phase is how far a batch has come once a step is over, or where a thermometer stands.
type Phase int

// The phases, in their order. The piece grows on until it is dried with heat.
const (
	Anywhere Phase = iota
	Steeping
	Growing
	Drying
)

// Place is where a temperature can be taken.
type Place struct {
	Word  string
	Phase Phase   // what is shown by a thermometer that stands there
	Can   q.Range // what it can show
}

var places = []Place{
	{PlaceWater, Steeping, band("0 to 60 °C")},
	{PlaceBed, Growing, band("-10 to 60 °C")},
	{PlaceAir, Anywhere, band("-30 to 60 °C")},
	{PlaceRoom, Anywhere, band("-30 to 60 °C")},
	{PlaceAirOn, Drying, band("-20 to 300 °C")},
	{PlaceAirOff, Drying, band("-20 to 300 °C")},
	{PlaceMalt, Drying, band("-20 to 300 °C")},
	{PlaceOven, Drying, band("-20 to 300 °C")},
}

// placesIn lists the places of a phase, by their words.
func placesIn(phase func(Phase) bool) []string {
	var list []string
	for _, p := range places {
		if phase(p.Phase) {
			list = append(list, p.Word)
		}
	}
	return list
}

// FindPlace finds a place by its word.
func FindPlace(word string) (Place, bool) {
	i := slices.IndexFunc(places, func(p Place) bool { return p.Word == word })
	if i < 0 {
		return Place{}, false
	}
	return places[i], true
}

// PhaseAt is how far a batch has come of which a thermometer in the place is read.
func PhaseAt(place string) Phase {
	p, _ := FindPlace(place)
	return p.Phase
}

// known is what the rows of a word say of it, in whatever block it stands.
type stepFacts struct {
	phase Phase
	dries bool
	rank  int
}

var steps = func() map[string]stepFacts {
	m := map[string]stepFacts{}
	rank := 0
	for _, stage := range allRows {
		if !slices.Contains(stage.In, Process) || !stage.Ordered {
			continue
		}
		m[stage.Word] = stepFacts{stage.Phase, stage.Dries, rank}
		for _, r := range allRows {
			if slices.Contains(r.In, stage.Opens) && r.Ordered {
				m[r.Word] = stepFacts{r.Phase, r.Dries, rank}
			}
		}
		rank++
	}
	return m
}()

// IsStep tells whether a word begins a step or a stage.
func IsStep(word string) bool { _, ok := steps[word]; return ok }

// PhaseAfter is how far a batch has come of which a step of that word is over.
func PhaseAfter(step string) Phase { return steps[step].phase }

// Dries tells whether malt is drier behind a step of that word than before.
func Dries(step string) bool { return steps[step].dries }

// StageRank is the place of a step's stage among the stages of a process, from 0; of a
// word that is no step or stage it is 0.
func StageRank(step string) int { return steps[step].rank }

// Burns tells whether a kiln is heated by a fire, by what it is fired with.
func Burns(fired string) bool {
	return slices.Contains([]string{FiredGas, FiredWood, FiredOil, FiredPeat}, fired)
}
