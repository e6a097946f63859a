package folder

import (
	"context"
	"errors"
	"fmt"
	"path"
	"time"

	"maltwright/lang/calendar"
)

// Start is a batch that is to be begun, as it was filled in.
type Start struct {
	At     string // when the grain goes in, as people say it; "" for now
	Name   string // of the batch; "" for the next number of its year
	Weight string // how much grain goes in, "5.8 kg"; "" for as the process says
	Sure   bool   // though another batch is still in its vessel
}

// Begun is what was begun, and what comes first.
type Begun struct {
	ID     ID
	Batch  string
	File   string   // of the record, below the folder
	Before []string // what is not known of the lots, and can be asked until the grain is wet
	Kept   bool     // git keeps the text of the process, or there is no git; else it must stay as it is until the batch is over
	First
}

// Held says that another batch is still in the vessel by its record. Who is sure begins one all the same.
type Held struct{ Says string }

func (e *Held) Error() string { return "not begun: " + e.Says }

// Begin opens the record of a new batch of a process, in a file beside that of the process. Errors:
// *Refused, *Held, *Unsound, *Gone, *Busy, *Failed, and that of the context.
func (d *Folder) Begin(ctx context.Context, process ID, s Start) (Begun, error) {
	p, err := d.index.find(process, false)
	if err != nil {
		return Begun{}, err
	}
	u, m := p.unit, p.unit.house.Processes[p.nth]
	if faults := u.faults(); len(faults) > 0 {
		return Begun{}, &Unsound{u.Name, faults}
	}
	if err := d.index.plain(u.at); err != nil {
		return Begun{}, err
	}
	b, err := d.clerk.beginning(s)
	if err != nil {
		return Begun{}, err
	}
	o, err := u.Opening(m, b)
	if err != nil {
		return Begun{}, err
	}
	o.stays = func() error { return d.index.plain(u.at) }
	if other := u.Lying(ctx, m, o.Began); other != nil && !s.Sure {
		return Begun{}, &Held{other.Lies()}
	}
	if ctx.Err() != nil {
		return Begun{}, ctx.Err()
	}
	if err := d.clerk.Begin(o); err != nil {
		return Begun{}, err
	}
	at := path.Join(path.Dir(u.at), o.Batch+Extension)
	return Begun{ID: d.index.id("batch", at, o.Batch, 0), Batch: o.Batch, File: at, Before: BeforeItIsWet(o.Model), Kept: o.Kept(), First: FirstOf(ctx, o.Model)}, nil
}

// beginning reads what was filled in.
func (c Clerk) beginning(s Start) (b Beginning, err error) {
	b = Beginning{At: c.now().Truncate(time.Minute), Name: s.Name}
	if s.Weight != "" {
		if b.Weight, err = Weight(s.Weight); err != nil {
			return b, err
		}
	}
	if s.At == "" {
		return b, nil
	}
	m, err := calendar.Reader{Now: c.now(), Back: true, Order: c.Order}.One(s.At)
	var says *calendar.Error
	switch {
	case errors.As(err, &says):
		return b, wrong("at", s.At, "%s", says.Says)
	case err != nil:
		return b, wrong("at", s.At, ": %s", err)
	}
	b.At = m.At.Local()
	return b, nil
}

// plain refuses what is no regular file of the folder any more: a link may stand in its place.
func (x *index) plain(at string) error {
	info, err := x.root.Lstat(at)
	if err != nil {
		return &Failed{at, Plain(err), err}
	}
	if !info.Mode().IsRegular() {
		return &Failed{at, "it is not a regular file", fmt.Errorf("%s", info.Mode())}
	}
	return nil
}
