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
	"cmp"
	"context"
	"os"
	"path/filepath"
	"slices"
	"time"

	"maltwright/cmd/journal"
	"maltwright/cmd/rewrite"
	"maltwright/lang/calendar"
	"maltwright/lang/finding"
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
	Members int              // how many forecasts a batch is followed by; 0 for as many as is usual
}

// Folder is a folder that is open. Its methods may be called from several goroutines at once.
type Folder struct {
	clerk    Clerk
	index    *index
	watching *watcher // nil where nothing is followed
	alarms   alarms
}

// Open opens a folder. The caller closes it. The error is a *Failed.
func Open(path string, o Options) (*Folder, error) {
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, &Failed{path, Plain(err), err}
	}
	root, err := os.OpenRoot(full)
	if err != nil {
		return nil, &Failed{path, Plain(err), err}
	}
	d := &Folder{clerk: Clerk{o, &memory{}, true}, index: &index{path: full, root: root, files: map[string]*seen{}}}
	if o.Follow {
		d.watch()
	}
	return d, nil
}

// Close ends what is done in the background, waits until it has ended, and lets go of the folder.
func (d *Folder) Close() error {
	d.watching.stop()
	return d.index.root.Close()
}

// ID names the folder itself, apart from every other on this machine.
func (d *Folder) ID() ID { return d.index.id("folder", ".", "", 0) }

// record is the batch of an ID as it stands in its file.
func (d *Folder) record(id ID) (Record, error) {
	p, err := d.index.find(id, true)
	if err != nil {
		return Record{}, err
	}
	stays := func() error { return d.index.plain(p.unit.at) } // asked again when it is written
	return Record{p.unit.File, p.unit.house.Batches[p.nth].Name, stays}, stays()
}

// Judge says what a reading would come to, and writes nothing. What is doubtful stands in the answer.
// Errors: *Refused, *Gone, *Failed, and that of the context.
func (d *Folder) Judge(ctx context.Context, id ID, x Reading) (Answer, error) {
	r, err := d.record(id)
	if err != nil {
		return Answer{}, err
	}
	return d.judge(ctx, r, x)
}

// judge judges a reading, with what its form asks.
func (d *Folder) judge(ctx context.Context, r Record, x Reading) (Answer, error) {
	a, err := d.clerk.Judge(ctx, r, x)
	if err == nil && x.Asked != "" {
		a.Doubts = slices.Insert(a.Doubts, 0, Doubt{Rule: "form", Severity: finding.Caution, Message: x.Asked, Asks: true})
	}
	return a, err
}

// Note judges a reading and writes it. One that is doubtful is written only for who is sure of it. Errors:
// *Refused, *Doubtful, *Gone, *Busy, *Failed, and that of the context.
func (d *Folder) Note(ctx context.Context, id ID, x Reading, sure bool) (Answer, error) {
	r, err := d.record(id)
	if err != nil {
		return Answer{}, err
	}
	if a, there := d.clerk.there(r, x, sure); there {
		return a, nil
	}
	a, err := d.judge(ctx, r, x)
	if err != nil {
		return a, err
	}
	if a.Asks() && !sure {
		return a, &Doubtful{a}
	}
	return d.clerk.Write(r, x, a)
}

// Undo takes back what was noted last, where the last line still has the words that were shown; "" is for whatever it
// has. Errors: *Refused, *Gone, *Busy, *Failed, and that of the context.
func (d *Folder) Undo(ctx context.Context, id ID, line string) (Undone, error) {
	r, err := d.record(id)
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return Undone{}, err
	}
	return d.clerk.Undo(r, line, false)
}

// Lines lists the lines of a record with their numbers. Errors: *Refused, *Gone, *Failed.
func (d *Folder) Lines(id ID) ([]journal.Line, error) {
	r, err := d.record(id)
	if err != nil {
		return nil, err
	}
	_, lines, err := d.clerk.Lines(r)
	return lines, err
}
