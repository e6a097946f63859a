package folder

import (
	"context"
	"io"
	"path/filepath"
	"sync"
	"time"

	"maltwright/cmd/words"
	"maltwright/cmd/write/ics"
)

// shownFor is how long a visit that is over stays in the calendar.
const shownFor = 24 * time.Hour

// Calendar writes the visits of all batches under way as a calendar that calendar programs ask for again and
// again. Those of a file that no longer reads, since somebody edited it, are as they were. Errors: *Failed, that of the context, and that of the writer.
func (d *Folder) Calendar(ctx context.Context, w io.Writer, now time.Time) error {
	units, _, err := d.index.scan()
	if err != nil {
		return err
	}
	var list []ics.Batch
	for _, u := range units {
		if len(u.faults()) > 0 { // a slip in a file takes no alarm from anybody: what it said before stands
			list = append(list, d.alarms.of(u.at)...)
			continue
		}
		of, err := d.coming(ctx, u, now)
		if err != nil {
			return err
		}
		d.alarms.keep(u.at, of)
		list = append(list, of...)
	}
	return ics.Calendar(w, "malt in "+words.Safe(filepath.Base(d.index.path)), list, now.Add(-shownFor))
}

// coming is what the batches of a file that are under way put into the calendar.
func (d *Folder) coming(ctx context.Context, u *unit, now time.Time) (list []ics.Batch, err error) {
	for _, s := range u.batches {
		if !s.goesOn(now) || !s.sound() {
			continue
		}
		x, err := s.stood(ctx, now)
		if err != nil {
			return nil, err
		}
		b := ics.Batch{ID: string(s.id), Name: s.batch.Name, Process: s.batch.Process.Name, Stamp: s.last, House: s.house()}
		for _, v := range d.visits(s, x) {
			b.Visits = append(b.Visits, v.Visit)
		}
		list = append(list, b)
	}
	return list, nil
}

// alarms are what each file put into the calendar when it was sound, by its place below the folder.
type alarms struct {
	mu sync.Mutex
	by map[string][]ics.Batch
}

func (s *alarms) of(at string) []ics.Batch {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.by[at]
}

func (s *alarms) keep(at string, list []ics.Batch) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.by == nil {
		s.by = map[string][]ics.Batch{}
	}
	s.by[at] = list
}
