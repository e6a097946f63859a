package folder

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"maltwright/cmd/journal"
	"maltwright/cmd/shelf"
	"maltwright/lang/calendar"
)

// Clerk notes readings in records, for a command and for the page. Its zero value keeps nothing
// for undo, and goes by the clock of this computer.
type Clerk struct {
	Options
	own keeper // what was sent, where there is no cache; nil keeps nothing
	day bool   // what is next is told with its day where that is not today: nothing beside it says of which day it is
}

// Record is a file, and which of its batches is meant.
type Record struct {
	File
	Batch string // "" where the file holds one
	stays guarded
}

// guarded refuses a file that does not lie in its folder any more, as when a link was put into its way; nil takes every one.
type guarded func() error

func (g guarded) check() error {
	if g == nil {
		return nil
	}
	return g()
}

// now is the time of the clock on the wall.
func (c Clerk) now() time.Time {
	if c.Clock != nil {
		return c.Clock()
	}
	return time.Now()
}

// journal is the record with a text, as the journal takes it, and how to let go of its root.
func (r Record) journal(text []byte) (journal.Record, func(), error) {
	root, err := r.open()
	if err != nil {
		return journal.Record{}, nil, err
	}
	return journal.Record{Name: r.Name, Text: text, Reader: r.Past(root, nil), Dir: r.Dir, Batch: r.Batch}, func() { root.Close() }, nil
}

// entry gives the text of the file with what is noted in it. Now is asked each time, so that of two
// who wait for the lock the later line has the later time.
func (c Clerk) entry(r Record, x Reading, text []byte) (journal.Entry, error) {
	j, release, err := r.journal(text)
	if err != nil {
		return journal.Entry{}, err
	}
	defer release()
	if err := x.can(j); err != nil {
		return journal.Entry{}, err
	}
	e, err := x.in(j, c.Order, c.now())
	return e, refused(err)
}

// can refuses what no sender of this program sends, and a line to put right that is another by now.
func (x Reading) can(j journal.Record) error {
	if len(x.Own) > mostOwn {
		return &Refused{fmt.Errorf("not noted: what the sender calls the reading has more than %d bytes", mostOwn)}
	}
	if x.Fix == 0 || x.Was == "" {
		return nil
	}
	_, lines, err := j.Lines()
	if err != nil {
		return refused(err)
	}
	if !slices.ContainsFunc(lines, func(l journal.Line) bool { return l.Number == x.Fix && l.Words == x.Was }) {
		return &Refused{fmt.Errorf("not noted: line %d is not %q any more; look at the record again", x.Fix, x.Was)}
	}
	return nil
}

// in puts the reading into a record.
func (x Reading) in(j journal.Record, order calendar.Order, now time.Time) (journal.Entry, error) {
	one := journal.Reading{Words: x.Words, At: x.At, Order: order}
	switch {
	case x.Text != "":
		return j.WithAll(x.Text, one, now)
	case x.Fix != 0:
		return j.Fix(x.Fix, one, now)
	}
	return j.With(one, now)
}

// refused gives an error of the journal its type.
func refused(err error) error {
	var misuse journal.Misuse
	var refusal journal.Refusal
	if errors.As(err, &misuse) || errors.As(err, &refusal) {
		return &Refused{err}
	}
	return err
}

// Judge holds a reading beside the process and the rest of the record, and says what it comes to.
// Nothing is written. What is doubtful stands in the answer. Errors: *Refused, *Failed, and that
// of the context.
func (c Clerk) Judge(ctx context.Context, r Record, x Reading) (Answer, error) {
	e, err := c.entry(r, x, r.Text)
	if err != nil {
		return Answer{}, err
	}
	doubts, err := e.Judge(ctx)
	if ctx.Err() != nil {
		return Answer{}, ctx.Err()
	}
	if err != nil {
		return Answer{}, refused(err)
	}
	return c.answer(ctx, e, x, doubts), nil
}

// Write writes a reading that was judged, and gives its answer with the lines as they stand. Errors:
// *Refused, *Busy, *Failed.
func (c Clerk) Write(r Record, x Reading, a Answer) (Answer, error) {
	var e journal.Entry
	err := Edit(c.Writing, r.Name, r.Path, func(text []byte) (_ []byte, err error) {
		a.There, a.Written = false, false
		if err = r.stays.check(); err != nil {
			return nil, err
		}
		if e, err = c.entry(r, x, text); err != nil {
			return nil, err
		}
		if c.written(r, x, text, e) {
			a.There = true
			return text, nil
		}
		c.keep(r, text, e.Text)
		a.Written = true
		return e.Text, nil
	})
	if err != nil {
		a.There, a.Written = false, false
		return a, err
	}
	a.stands(e)
	c.keepSent(r, x, sending{Done: true, Answer: a})
	return a, nil
}

// Instead writes a reading as it was offered, and says what that comes to. Errors: those of Write.
func (c Clerk) Instead(ctx context.Context, r Record, a Answer) (Answer, error) {
	x := Reading{Words: []string{a.Offer}}
	e, err := c.entry(r, x, r.Text)
	if err != nil {
		return a, err
	}
	return c.Write(r, x, c.answer(ctx, e, x, nil))
}

// undoing tells what is kept for undo apart from what else the cache holds.
const undoing = "note --undo, 1"

// shelf is where texts from before are kept.
func (c Clerk) shelf() *shelf.Shelf { return shelf.In(c.Cache, undoing) }
