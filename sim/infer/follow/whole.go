package follow

import (
	"time"

	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/sampler"
)

// # The whole record
//
// What is drawn from the whole record follows from its readings, and not from the time at
// which it is followed: the draws are made as of the last reading, and only then forecast as
// far as is asked. So they can be kept for the next time, whenever that is, as long as no
// reading was added. On the kiln, where the forecasts of the draws are those of the answer,
// they are made as of now, and found again where the same time is asked for, as it is of a
// batch that is over.

// drawnWhole draws from the posterior of the whole record, or finds what was drawn before.
func (c *conditioning) drawnWhole() (*sampler.Sample, error) {
	from := c
	if c.brief {
		from = c.asOfTheLast()
	}
	if c.o.Shelf == nil {
		return from.drawn()
	}
	key := shelfKey(from.t, c.o) + " whole"
	if s := unpackSample(c.o.Shelf.Get(key), len(c.t.Axes)); s != nil {
		c.brief = true // the draws are forecast when they are picked
		return s, nil
	}
	s, err := from.drawn()
	if err == nil {
		c.o.Shelf.Put(key, packSample(s))
	}
	return s, err
}

// asOfTheLast is the conditioning as of the last reading; itself where that is another trial.
func (c *conditioning) asOfTheLast() *conditioning {
	n := len(c.t.Observations)
	if n == 0 {
		return c
	}
	last := c.t.Observations[n-1].Reading.When()
	if last.IsZero() {
		return c
	}
	t, err := evidence.New(c.t.Batch, last.Time.Truncate(time.Second))
	if err != nil || len(t.Axes) != len(c.t.Axes) || len(t.Observations) != n {
		return c
	}
	t.Adopt(c.t)
	from := conditioningOf(c.ctx, t, c.o)
	from.brief = true
	return from
}

// packSample writes a sample as bytes, in the form of settled members: the weights stand in
// the place of their counts.
func packSample(s *sampler.Sample) []byte {
	return (&settled{draws: s.Draws, counts: s.Weights, logs: make([]float64, len(s.Draws)), rounds: s.Rounds}).pack()
}

// unpackSample reads what packSample wrote, of so many axes; nil where it is anything else.
func unpackSample(data []byte, axes int) *sampler.Sample {
	p := unpacked(data, axes)
	if p == nil {
		return nil
	}
	return &sampler.Sample{Draws: p.draws, Weights: p.counts, Rounds: p.rounds}
}
