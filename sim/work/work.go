// Package work bounds what a forecast may cost: by what is reckoned, never by a
// clock, so that the same file always comes to the same end on every machine.
//
// A [Meter] is given to the models of one forecast, and to every copy of them. They
// spend from it as they go; once it is used up, or the context is cancelled, they stop
// where they are. Forecasts that belong together, as the members of an ensemble do,
// share a [Pool] as well. What a pool has left is told only when all of them are
// through: whether they fit into it does not depend on which was run first.
//
// The unit is one layer of malt moved on by one trial of one stage of a step. What
// else is done counts by how long it takes beside that.
package work

import (
	"context"
	"errors"
	"sync/atomic"
)

// Most is what one forecast may spend; a usual one takes 25,000. Shared is what
// each of many that belong together may spend in the mean, as those of an ensemble: one
// that takes more ends them before the others are begun. File is what the forecasts of the
// processes of one file may spend in all, Records those beside which its records are held,
// and Seasons those of its records that are set beside others; a usual record takes some
// 410,000 to be judged, and 1.7 million to be set beside others.
const (
	Most    = 4_000_000
	Shared  = 300_000
	File    = 8_000_000
	Records = 100_000_000
	Seasons = 120_000_000
)

// What is done, in units.
const (
	Heat  = 3   // what heat does to one layer of malt, followed through one stretch
	Piece = 8   // a growing or withering piece moved on by one step
	Wet   = 2   // grain in the steep moved on by one step
	Look  = 20  // the model stopped, copied and asked whether a condition holds
	Line  = 500 // a step or a gate written down, which is kept and told of
)

// ErrTooMuch says that a forecast would cost more than it may.
var ErrTooMuch = errors.New("it takes more steps of the model than one forecast may have")

// ErrPool says the same of forecasts that belong together.
var ErrPool = errors.New("the forecasts take more steps of the model together than they may have")

// Meter counts what one forecast spends. The nil meter bounds nothing.
type Meter struct {
	ctx   context.Context
	pool  *Pool
	spent int
	asked int // what was spent when the context was last asked
	err   error
}

// NewMeter makes the meter of a forecast that ends with the context; the pool may be
// nil.
func NewMeter(ctx context.Context, pool *Pool) *Meter { return &Meter{ctx: ctx, pool: pool} }

// often is how much is spent between two looks at the context and the pool.
const often = 2000

// Spend takes n units. It gives ErrTooMuch, or the error of the context, from the
// moment on at which there was one.
func (m *Meter) Spend(n int) error {
	if m == nil {
		return nil
	}
	m.spent += n
	if m.err == nil && m.spent > Most {
		m.err = ErrTooMuch
	}
	if m.err == nil && m.spent-m.asked >= often {
		m.Settle()
	}
	return m.err
}

// Settle asks the context, and takes what was spent since the last time from the pool.
func (m *Meter) Settle() {
	if m == nil {
		return
	}
	m.pool.take(m.spent - m.asked)
	m.asked = m.spent
	if m.err == nil {
		m.err = m.ctx.Err()
	}
	if m.err == nil {
		m.err = m.pool.Err()
	}
}

// Err is that of the last Spend.
func (m *Meter) Err() error {
	if m == nil {
		return nil
	}
	return m.err
}

// Spent is what was spent so far.
func (m *Meter) Spent() int {
	if m == nil {
		return 0
	}
	return m.spent
}

// Pool is what several forecasts may spend together. The nil pool has no bottom.
type Pool struct{ left atomic.Int64 }

// NewPool makes a pool of n units.
func NewPool(n int) *Pool {
	p := &Pool{}
	p.left.Store(int64(n))
	return p
}

func (p *Pool) take(n int) {
	if p != nil {
		p.left.Add(-int64(n))
	}
}

// Err is ErrPool once more was taken than there was.
func (p *Pool) Err() error {
	if p != nil && p.left.Load() < 0 {
		return ErrPool
	}
	return nil
}

// Part gives a pool of n units at the most, for what may not take all of this one. Settled
// takes them out of it.
func (p *Pool) Part(n int) *Pool { return NewPool(max(min(n, p.Left()), 0)) }

// Settled takes out what was spent of a part that had n units. How far a part is overdrawn
// depends on how many spent from it at once, and counts for nothing here: but one that was
// all there was left, and did not suffice, leaves the pool used up.
func (p *Pool) Settled(part *Pool, n int) {
	size := min(n, p.Left())
	switch {
	case size < 0:
	case part.Err() == nil:
		p.take(size - part.Left())
	case size < n:
		p.take(size + 1)
	default:
		p.take(size)
	}
}

// Left is what nobody has taken yet.
func (p *Pool) Left() int { return int(p.left.Load()) }
