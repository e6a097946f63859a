package folder

import (
	"context"
	"time"

	"maltwright/check"
	"maltwright/check/records"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/work"
)

// standing is a batch of the folder, with how it stood when it was last asked for.
type standing struct {
	id    ID
	batch *model.Batch
	unit  *unit
	last  time.Time // the last that is written of it
	open  bool      // it was begun, and its malt is not weighed
	quick once[stood]
	came  once[[]words.LedgerRow]
}

func standingOf(u *unit, id ID, b *model.Batch) *standing {
	return &standing{id: id, batch: b, unit: u, last: lastOf(b), open: open(b)}
}

// goesOn tells whether the batch is under way.
func (s *standing) goesOn(now time.Time) bool { return s.open && now.Sub(s.last) <= forgotten }

// stood is how a batch stood.
type stood struct {
	made  time.Time // by the clock of who asked
	at    time.Time // as of when
	asOf  progress.AsOf
	of    noted.Standing
	ok    bool
	found []finding.Finding // of the record beside its process
}

// lasts is how long a forecast of a record that stays as it is serves: what is due is told by it from
// minute to minute, and only what waits for a condition moves on.
const lasts = 5 * time.Minute

// sound tells whether the batch can be forecast. A fault of the record in what does not hinder that is told
// of beside.
func (s *standing) sound() bool {
	return s.batch.Process != nil && !s.batch.Broken && !s.batch.Began.IsZero() && ledger.Sound(s.unit.house, s.batch, s.unit.found)
}

// stood says how the batch stands.
func (s *standing) stood(ctx context.Context, now time.Time) (stood, error) {
	return s.quick.take(ctx, func(x stood) bool { return !now.Before(x.made) && now.Sub(x.made) < lasts }, func(ctx context.Context) stood {
		x := stood{made: now}
		x.at, x.asOf = progress.When(s.batch, now)
		x.of, x.ok = noted.Stand(ctx, s.batch, x.at, work.NewPool(work.Records))
		x.found = check.Record(ctx, s.unit.house, s.batch, s.unit.found, work.NewPool(work.Records))
		return x
	})
}

// house is how to speak to those who make the batch.
func (s *standing) house() words.House { return words.OfBatch(s.batch.Process, s.batch) }

// dangers are those that the remarks of the batch tell of.
func (s *standing) dangers() []finding.Finding {
	if s.batch.Process == nil {
		return nil
	}
	return records.Dangers(s.batch)
}
