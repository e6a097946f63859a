package folder

import (
	"fmt"

	"maltwright/lang/finding"
)

// Refused is what cannot be done as it was asked: words that are no reading, a reading that
// cannot be, a name that is taken. Nothing is written.
type Refused struct{ Err error }

func (e *Refused) Error() string { return e.Err.Error() }

// Unwrap is what the journal said.
func (e *Refused) Unwrap() error { return e.Err }

// Doubtful is a reading that may be wrong, and is written only by who is sure of it.
type Doubtful struct {
	Answer Answer // with the doubts, and the offer where there is one
}

func (e *Doubtful) Error() string { return "not noted: " + e.Answer.Doubted() }

// Gone is a batch or a process that is not in the folder any more, or never was.
type Gone struct{ ID ID }

func (e *Gone) Error() string {
	return "it is not in this folder any more: its file was moved, renamed or put right by hand; look at the list again"
}

// Busy is a file that another program is writing, and was not done with in time.
type Busy struct {
	File string
	Err  error
}

func (e *Busy) Error() string { return fmt.Sprintf("%s: %s", e.File, e.Err) }

// Unwrap is what the lock said.
func (e *Busy) Unwrap() error { return e.Err }

// Unsound is a file that must be put right first.
type Unsound struct {
	File     string
	Findings []finding.Finding // faults and worse
}

func (e *Unsound) Error() string { return e.File + " must be put right first" }

// Failed is a file that cannot be read or written.
type Failed struct {
	File string
	Says string
	Err  error
}

func (e *Failed) Error() string { return e.File + ": " + e.Says }

// Unwrap is what the system said.
func (e *Failed) Unwrap() error { return e.Err }
