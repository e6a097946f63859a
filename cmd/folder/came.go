package folder

import (
	"context"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/read"
)

// Came says what came of a batch: the figures of its record that are known, as the table of all seasons has them. It
// is found once for a record that stays as it is. Errors: *Gone, *Failed, and that of the context.
func (d *Folder) Came(ctx context.Context, id ID) ([]words.LedgerRow, error) {
	p, err := d.index.find(id, true)
	if err != nil {
		return nil, err
	}
	u, s := p.unit, p.unit.batches[p.nth]
	if s.batch.Process == nil || s.batch.Broken {
		return nil, nil
	}
	root, err := u.open()
	if err != nil {
		return nil, err
	}
	defer root.Close()
	return s.came.take(ctx, nil, func(ctx context.Context) (rows []words.LedgerRow) {
		for _, r := range s.house().LedgerRows(u.entered(ctx, root, s.batch)) {
			if r.Value != words.None {
				rows = append(rows, r)
			}
		}
		return rows
	})
}

// entered is what a batch of the file comes to by its record.
func (u *unit) entered(ctx context.Context, root *read.Root, b *model.Batch) ledger.Batch {
	book := ledger.New(ctx, nil)
	book.Enter(ledger.Record{File: u.Name, Root: u.Root, Below: u.Below(root, ledger.Standing(b).Place.File), Reader: root, House: u.house, Batch: b, Found: u.found})
	return book.Result().Batches[0]
}
