package folder

import (
	"context"
	"io"
	"path/filepath"
	"time"

	"maltwright/cmd/words"
	"maltwright/cmd/write/ics"
)

// shownFor is how long a visit that is over stays in the calendar.
const shownFor = 24 * time.Hour

// Calendar writes the visits of all batches under way as a calendar that calendar programs ask for again and
// again. Errors: *Failed, that of the context, and that of the writer.
func (d *Folder) Calendar(ctx context.Context, w io.Writer, now time.Time) error {
	units, _, err := d.index.scan()
	if err != nil {
		return err
	}
	var list []ics.Batch
	for _, u := range units {
		for _, s := range u.batches {
			if !s.goesOn(now) || !s.sound() {
				continue
			}
			x, err := s.stood(ctx, now)
			if err != nil {
				return err
			}
			b := ics.Batch{ID: string(s.id), Name: s.batch.Name, Process: s.batch.Process.Name, Stamp: s.last, House: s.house()}
			for _, v := range d.visits(s, x) {
				b.Visits = append(b.Visits, v.Visit)
			}
			list = append(list, b)
		}
	}
	return ics.Calendar(w, "malt in "+words.Safe(filepath.Base(d.index.path)), list, now.Add(-shownFor))
}
