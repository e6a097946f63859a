package evidence

import (
	"context"
	"errors"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// MostLikely forecasts a batch that is over at the mode of the posterior of its record,
// which is how it most likely went. It is nil where the record cannot be held beside a forecast or says nothing. The error is
// work.ErrPool, where that costs more than one record may, or than the pool has left.
func MostLikely(ctx context.Context, b *model.Batch, pool *work.Pool) (*forecast.Forecast, error) {
	t, err := New(b, time.Time{})
	if err != nil || len(t.Observations) == 0 {
		return nil, nil
	}
	part := pool.Part(fitPool)
	defer pool.Settled(part, fitPool)
	t.Bound(ctx, part)
	f, err := t.mostLikely(ctx)
	if errors.Is(err, work.ErrPool) {
		return nil, err
	}
	return f, nil
}

func (t *Trial) mostLikely(ctx context.Context) (*forecast.Forecast, error) {
	if err := t.Affordable(); err != nil {
		return nil, err
	}
	z, err := Mode(ctx, t)
	if err != nil {
		return nil, err
	}
	f, err := t.Run(z, false)
	if err != nil || f.BrokenOff() {
		return nil, err
	}
	return f, nil
}

// Affordable makes one forecast of the trial, as short as will do, before many are made.
// It gives work.ErrPool where that one costs more than each of them may in the mean, and
// strikes what cannot be beside it.
func (t *Trial) Affordable() error {
	m := t.Meter()
	f, err := t.metered(make([]float64, len(t.Axes)), true, m)
	if err != nil {
		return err
	}
	if m.Spent() > work.Shared {
		return work.ErrPool
	}
	t.Strike(f)
	t.usual = f
	return nil
}

// BreaksOff tells whether the forecast that Affordable made had to stop before the last of
// what was read, so that there is nothing to hold the rest beside.
func (t *Trial) BreaksOff() bool { return t.usual != nil && t.usual.BrokenOff() }

// fitPool is what the forecasts of one fit may cost: a hundred usual ones take five
// million.
const fitPool = 60 * work.Shared
