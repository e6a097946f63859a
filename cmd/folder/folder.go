// Package folder is a folder of process files and records as commands and the page use it: it
// finds the batches in it, says how each stands and what is due, takes readings, takes them
// back, and opens records.
//
// # How it works
//
// Everything shown is the answer of cmd/answer in the words of cmd/words; nothing is reckoned
// here. The files are the truth: what is kept of a file is kept by its text and by that of all
// that it uses, so that an edit by hand is seen at the next look. Every write goes through the
// lock of cmd/rewrite and the judge of cmd/journal, for a command and for the page alike.
//
// No name of a file comes from outside: a batch and a process are asked for by an ID, which is
// a hash of where it lies and what it is called, and is known only where the scan has found it.
// Hidden folders are not entered, and a link that leads out of the folder is not followed.
package folder

import (
	"time"

	"maltwright/cmd/rewrite"
	"maltwright/lang/calendar"
)

// ID names a batch or a process of the folder. It is no path, and holds letters and digits alone.
type ID string

// Options are how a folder is used. The zero value is what most want.
type Options struct {
	Clock   func() time.Time // nil: that of this computer
	Cache   string           // the folder of what is kept from one run to the next; "" keeps nothing
	Order   calendar.Order   // of the day and the month in times as people write them
	Writing rewrite.Options  // how to wait for a lock, and how to write
	Follow  bool             // batches are followed in the background; Close ends it
}
