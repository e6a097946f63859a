package process

import (
	"time"

	"maltwright/lang/source"
)

// Batch is the record of one batch.
type Batch struct {
	Name     string
	Place    source.Place
	Scope    source.Place // the whole of it
	Process  *Process     // nil where the record names none that is known
	Began    Instant
	Sample   *Sample
	Bag      *Quantity // raw grain in the marked bag
	Tare     *Quantity // of the bag where there is one, otherwise of the vessel
	Readings []Reading // as they are written, which is the order of the clock
	Changes  []Change
	Broken   bool // some of it did not read
}

// Instant is a time of the clock on the wall, in the zone of this computer, and
// where it is written.
type Instant struct {
	time.Time
	Place source.Place
}

// Sample is a sample of the raw grain and what it weighs when it is dry.
type Sample struct{ Wet, Dry Quantity }

// ReadingKind says what was done, by the word that begins the line.
type ReadingKind string

// The readings.
const (
	Weighed ReadingKind = "weighed"
	Counted ReadingKind = "counted"
	Felt    ReadingKind = "felt"
	Read    ReadingKind = "read"
	Turned  ReadingKind = "turned"
)

// Reading is one thing seen in the course of a batch. What its kind does not say
// is nil or empty.
type Reading struct {
	Kind        ReadingKind
	Place       source.Place
	At          Instant // zero where only the step is said
	After       *StepName
	Weight      *Quantity
	OfBag       bool
	Clean       bool // without rootlets
	Counted     Word // chit or acrospire
	Corns       []Quantity
	Of          *Quantity // corns looked at
	Rub         Word
	Temperature *Temperature
}

// StepName names a step as the forecast does: the soaks of a steep are counted
// through all its repeats.
type StepName struct {
	Kind   Word
	Number int // from 1; 0 where it is not said
	Place  source.Place
}

// Change is a step that was done otherwise than the process says.
type Change struct {
	Place   source.Place
	Step    StepName
	To      Temperature // a time or a temperature; Where only of a temperature
	Because string
}

// instant resolves a date and seconds from midnight to a time of the wall clock in
// the zone of this computer: the one place where a record meets a zone. An hour
// that the clock skips in spring is read as the hour after it, and one that it
// shows twice in autumn as the first.
func instant(date time.Time, second int) time.Time {
	return time.Date(date.Year(), date.Month(), date.Day(), second/3600, second/60%60, second%60, 0, time.Local)
}

// longestGap is how far ahead a time without a date may lie of the one above. A
// night is shorter; more is rather a slip of the pen than the next day.
const longestGap = 12 * time.Hour

// follow resolves a time without a date: on the day of the one before it, or on the
// next where it would go back and a night can lie between. It is false where
// neither can be meant.
func follow(before time.Time, second int) (time.Time, bool) {
	if at := instant(before, second); !at.Before(before) {
		return at, true
	}
	at := instant(before.AddDate(0, 0, 1), second)
	return at, at.Sub(before) <= longestGap
}
