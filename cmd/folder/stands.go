package folder

import (
	"context"
	"time"
)

// Stands says how one batch stands, be it under way or over: what each of its lines comes to, and what is
// doubted. Errors: *Gone, *Failed, and that of the context.
func (d *Folder) Stands(ctx context.Context, id ID, now time.Time) (Batch, error) {
	p, err := d.index.find(id, true)
	if err != nil {
		return Batch{}, err
	}
	return d.batch(ctx, p.unit.batches[p.nth], now)
}
