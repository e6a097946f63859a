package invent

import (
	"strconv"

	"maltwright/lang/vocabulary"
)

// kiln is what a kiln is, so that its facts go together: of a drum no area is said, and of an
// oven no fan.
type kiln int

const (
	anyKiln kiln = iota
	oven
	drum
	tower
)

// other is the kiln whose exhaust a second one is given.
const other = "y"

// kilnFacts tells how often a fact stands in a kiln of a kind; false where any number may.
func (w *writer) kilnFacts(word string) (n int, ok bool) {
	is := map[bool]int{true: 1}
	switch word {
	case vocabulary.FactArea:
		return is[w.kiln != drum], true
	case vocabulary.FactHolds, vocabulary.FactTumbles:
		return is[w.kiln == drum], true
	case vocabulary.FactDraught:
		return is[w.kiln == oven || w.kiln == anyKiln && w.odds(2)], true
	case vocabulary.FactDoor:
		return is[w.kiln == oven && w.odds(2)], true
	case vocabulary.FactChimney:
		return is[w.kiln == tower && w.odds(2)], true
	case vocabulary.FactRecovers:
		return is[w.name == other && w.odds(2)], true
	case vocabulary.FactReturns:
		return is[w.kiln != oven && w.odds(2)], true
	case vocabulary.VerbAir:
		return is[w.name != other && w.exhaust && w.kiln != oven && w.kiln != drum], true
	case vocabulary.FactFan:
		if w.kiln != tower {
			return 0, true
		}
		w.point = 0
		return 2 + w.IntN(4), true
	}
	return 0, false
}

// fan is the next point of a curve that begins with much air.
func (w *writer) fan(*vocabulary.Row) {
	share := 1 - 0.19*float64(w.point)
	if w.point == 0 {
		w.blows = w.kg * w.scale(0.05, 15)
	}
	w.point++
	w.WriteString(" " + w.number(w.blows*share) + " m3/h at " + strconv.Itoa(300*w.point-300) + " Pa")
}

// ofKind is the word of a fact whose others would not go with the kiln.
func (w *writer) ofKind() (word string, ok bool) {
	switch {
	case w.block != vocabulary.KilnFacts:
		return "", false
	case w.word == vocabulary.FactDraught && w.kiln == oven:
		return vocabulary.DraughtStill, true
	case w.word == vocabulary.FactDraught:
		return vocabulary.DraughtFan, true
	case w.word == vocabulary.FactTumbles:
		return vocabulary.SaidYes, true
	}
	return "", false
}
