package model

import (
	"fmt"
	"slices"

	"maltwright/lang/source"
)

// Stage is one stage of a process: one of *Steep, *Germination, *Withering, *Kilning,
// *Deculming and *Storing. What a stage does not say is nil.
type Stage interface {
	Place() source.Place // its head
	Kind() StageKind
	Ends() Ending
	stage()
}

// StageKind says which stage it is, by the word that begins it.
type StageKind string

// The kinds of stage, in the order in which grain goes through them.
const (
	SteepStage     StageKind = "steep"
	GerminateStage StageKind = "germinate"
	WitherStage    StageKind = "wither"
	KilnStage      StageKind = "kiln"
	DeculmStage    StageKind = "deculm"
	StoreStage     StageKind = "store"
)

// Order lists the stages in the order of the work.
func Order() []StageKind {
	return []StageKind{SteepStage, GerminateStage, WitherStage, KilnStage, DeculmStage, StoreStage}
}

// Steep is the stage of soaks and air rests.
type Steep struct {
	Written
	Vessel *Vessel   // the first of them, where it is shared out among several
	More   []*Vessel // the others
	Target *Range    // the moisture wanted at steep-out
	Steps  []Step
	Until  *Condition
	Aerate *Aerate // of every soak that does not have air all the time
}

// Aerate is air blown through standing soak water at intervals.
type Aerate struct {
	Written
	Every Quantity // from one time to the next
	For   Quantity // how long each time, shorter than Every
}

// Piece is what germinating and withering grain can say, which both lie spread out.
type Piece struct {
	Ending
	Floor         *Floor
	In            *Vessel // the vessel that the floor is, where the piece grows in one
	Steps         []Step
	Turn          *Quantity // from one turn to the next; the mean of those at times of day
	TurnAt        *Daily    // the times of day at which it is turned; nil where it is turned at even intervals
	Turner        Word      // machine; Text "" where somebody comes for it
	Humidity      *Range    // of the air over the piece
	AirOnHumidity *Range    // of the air that a fan blows through it
	Blown         []*Air    // what a fan blows through it, in the order in which it is written
}

// Air is air that a fan blows through the bed. Of several the first is on that holds.
type Air struct {
	Written
	At      Temperature // of air-on
	Airflow *Quantity   // nil for the fan's own
	When    *Condition  // as long as it holds; nil for always
	For     *Quantity   // how long the fan runs each time, with Every; nil for all the time
	Every   *Quantity   // from one start to the next
}

// Daily is what is done at times of each day.
type Daily struct {
	Written
	At []int // seconds of the day, rising, one at the least
}

// ByClock tells whether something in a process is done at times of day.
func ByClock(p *Process) bool {
	for _, st := range p.Stages {
		if piece := PieceOf(st); piece != nil && piece.TurnAt != nil {
			return true
		}
	}
	return false
}

// Longest is the longest time from one to the next, s.
func (d *Daily) Longest() float64 {
	most := 0
	for i, at := range d.At {
		next := d.At[(i+1)%len(d.At)]
		if i == len(d.At)-1 {
			next += 24 * 3600
		}
		most = max(most, next-at)
	}
	return float64(most)
}

// Germination is the stage in which the grain grows.
type Germination struct {
	Written
	Piece
	Sprinkle *Sprinkle
}

// Sprinkle is water given to the growing piece: one of Water and To, and at least one of
// Every and When.
type Sprinkle struct {
	Written
	Water *Quantity  // a volume or a mass, or a volume for each kg of raw grain
	To    *Quantity  // the moisture that it brings the piece to
	Every *Quantity  // from one to the next
	When  *Condition // only while it holds; without Every as soon as it does
}

// Withering is the stage in which the piece loses water before heat is used.
type Withering struct {
	Written
	Piece
	Air *Temperature
}

// Kilning is the stage on the kiln.
type Kilning struct {
	Written
	Kiln  *Kiln
	Steps []Step
	Stir  *Quantity // from one stirring to the next
}

// Deculming takes the rootlets off.
type Deculming struct {
	Written
	Within *Quantity // after the kiln
}

// Storing is the rest of the malt before it is used.
type Storing struct {
	Written
	In   Word // what it is kept in; Text "" where it is not said
	Rest *Bound
}

func (*Steep) stage()       {}
func (*Germination) stage() {}
func (*Withering) stage()   {}
func (*Kilning) stage()     {}
func (*Deculming) stage()   {}
func (*Storing) stage()     {}

// Kind says which stage it is.
func (*Steep) Kind() StageKind       { return SteepStage }
func (*Germination) Kind() StageKind { return GerminateStage }
func (*Withering) Kind() StageKind   { return WitherStage }
func (*Kilning) Kind() StageKind     { return KilnStage }
func (*Deculming) Kind() StageKind   { return DeculmStage }
func (*Storing) Kind() StageKind     { return StoreStage }

// Ends is what is said of the end.
func (st *Steep) Ends() Ending  { return Ending{Until: st.Until} }
func (*Kilning) Ends() Ending   { return Ending{} }
func (*Deculming) Ends() Ending { return Ending{} }
func (*Storing) Ends() Ending   { return Ending{} }

// PieceOf is the piece of a stage in which grain germinates or withers, nil for every
// other stage.
func PieceOf(st Stage) *Piece {
	if p, ok := st.(interface{ piece() *Piece }); ok {
		return p.piece()
	}
	return nil
}

func (p *Piece) piece() *Piece { return p }

// BlownBed tells whether the grain of a process grows or withers in a bed that air is
// blown through; of no process it does not.
func (p *Process) BlownBed() bool {
	return p != nil && slices.ContainsFunc(p.Stages, func(st Stage) bool { return PieceOf(st) != nil && PieceOf(st).Floor.Blown() })
}

// StepsOf lists the steps of a stage, nil where it has none.
func StepsOf(st Stage) []Step {
	switch st := st.(type) {
	case *Steep:
		return st.Steps
	case *Kilning:
		return st.Steps
	}
	if p := PieceOf(st); p != nil {
		return p.Steps
	}
	return nil
}

// Every lists the stages of the type T in their order: Every[*Kilning](p).
func Every[T Stage](p *Process) (list []T) {
	for _, st := range p.Stages {
		if found, ok := st.(T); ok {
			list = append(list, found)
		}
	}
	return list
}

// Last finds the last stage of the type T, nil where the process has none.
func Last[T Stage](p *Process) (none T) {
	if list := Every[T](p); len(list) > 0 {
		return list[len(list)-1]
	}
	return none
}

// Number tells which stage of its kind it is, from 1; 0 for a stage of another process.
func (p *Process) Number(st Stage) int {
	n := 0
	for _, other := range p.Stages {
		if other.Kind() == st.Kind() {
			n++
		}
		if other == st {
			return n
		}
	}
	return 0
}

// Numbers tells of each stage which of its kind it is, from 1.
func (p *Process) Numbers() []int {
	list, count := make([]int, len(p.Stages)), map[StageKind]int{}
	for i, st := range p.Stages {
		count[st.Kind()]++
		list[i] = count[st.Kind()]
	}
	return list
}

// Count tells how many stages of a kind there are.
func (p *Process) Count(kind StageKind) (n int) {
	for _, st := range p.Stages {
		if st.Kind() == kind {
			n++
		}
	}
	return n
}

// Called names a stage: by its word, and by its number where there are several of its
// kind, as in germinate 2.
func (p *Process) Called(st Stage) string {
	if p.Count(st.Kind()) < 2 {
		return string(st.Kind())
	}
	return fmt.Sprintf("%s %d", st.Kind(), p.Number(st))
}

// StageAt finds the stage whose head is at a place, or nil.
func (p *Process) StageAt(head source.Place) Stage {
	for _, st := range p.Stages {
		if st.Place() == head {
			return st
		}
	}
	return nil
}

// Stage finds the first stage of a kind, or nil.
func (p *Process) Stage(kind StageKind) Stage {
	for _, st := range p.Stages {
		if st.Kind() == kind {
			return st
		}
	}
	return nil
}

// First finds the first stage of the type T, nil where the process has none:
// First[*Steep](p).
func First[T Stage](p *Process) (none T) {
	for _, st := range p.Stages {
		if found, ok := st.(T); ok {
			return found
		}
	}
	return none
}
