package follow

import (
	"bytes"
	"context"
	"errors"
	"math"
	"time"

	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/sampler"
	"maltwright/sim/work"
)

// # What is settled
//
// A record grows by a line now and then, and its answer should not be sought anew each time.
// So all of its readings but the last few are settled: members are drawn from the posterior
// of the record as it stood at the last of those, and the readings since then only weigh
// them. A member that counts for L₁ by the settled record, and L₂ by the whole, weighs L₂/L₁.
// The settled draws follow from the settled record alone, and from nothing that was written
// since, so that they can be kept on a shelf for the next time. They are sought in the same
// way where nothing is kept: a shelf changes how long it takes, and no figure.
//
// Where the readings since then leave too few of the members, or members that are not to be
// trusted, or there are not enough readings yet, the whole record is drawn from at once
// (whole.go), and that it was sought in vain is kept as well.

const (
	settledStep  = 4    // readings by which the settled part of a record grows
	settledKept  = 1.5  // draws that are kept, for each member that is asked for
	settledShare = 0.25 // of the members that the effective sample size must come to,
	settledHalf  = 0.5  // or of what it was before the readings since then,
	settledLeast = 15   // and at the least
)

// Shelf keeps what was found for the next time. Whatever it gives is looked over before it
// is believed; it may forget at will. It is asked by one goroutine at a time.
type Shelf interface {
	Get(key string) []byte // nil where there is nothing
	Put(key string, data []byte)
}

// settled are members drawn from the posterior of the settled part of a record.
type settled struct {
	draws   [][]float64
	counts  []float64 // how often each is to be taken
	logs    []float64 // logarithm of the likelihood of the settled readings, but for a constant
	members int       // how many were weighed for them
	rounds  int       // of adaptation
	size    int       // effective sample size of those that were weighed
}

// settledAt is the time, s from the first soak, to which the readings of a trial are settled;
// false where there are too few, or all of them are of one time.
func settledAt(t *evidence.Trial) (at float64, ok bool) {
	n := len(t.Observations)
	k := (n - 1) / settledStep * settledStep
	if k <= 0 {
		return 0, false
	}
	last := t.Observations[k-1].Reading.When()
	if last.IsZero() || !last.Before(t.Observations[n-1].Reading.When().Time) {
		return 0, false
	}
	return last.Sub(t.Batch.Began.Time).Seconds(), true
}

// settle gives the settled members of a trial, nil where nothing of it is settled.
func settle(ctx context.Context, t *evidence.Trial, o Options) (*settled, error) {
	at, ok := settledAt(t)
	if !ok {
		return nil, nil
	}
	before, err := evidence.New(t.Batch, t.Batch.Began.Add(time.Duration(at*float64(time.Second))))
	if err != nil {
		return nil, nil
	}
	before.Adopt(t)
	key := shelfKey(before, o)
	if o.Shelf != nil {
		data := o.Shelf.Get(key)
		if bytes.Equal(data, vain(key)) {
			return nil, nil
		}
		if s := unpack(data, len(t.Axes), kept(o)); s != nil {
			return s, nil
		}
	}
	s, err := settleAnew(ctx, before, o)
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case err != nil: // the whole record may still be followed, and tells it better if not
		if o.Shelf != nil {
			o.Shelf.Put(key, vain(key)) // lest it be sought in vain the next time too
		}
		return nil, nil
	}
	if o.Shelf != nil {
		o.Shelf.Put(key, s.pack())
	}
	return s, nil
}

// kept is how many draws are kept of a settled record, those that are kept twice counted twice.
func kept(o Options) int { return int(settledKept * float64(o.Members)) }

// errUntrusted says that a few of the settled members bear nearly all the weight.
var errUntrusted = errors.New("the settled members do not stand for what can be")

// settleAnew draws the settled members.
func settleAnew(ctx context.Context, t *evidence.Trial, o Options) (*settled, error) {
	c := conditioningOf(ctx, t, o)
	c.brief = true
	s, err := c.drawn()
	if err != nil {
		return nil, err
	}
	if !s.Trusted() { // the whole record may tell more
		return nil, errUntrusted
	}
	out := &settled{members: len(s.Draws), rounds: s.Rounds, size: int(s.EffectiveSize())}
	last := -1
	for _, i := range s.Resample(kept(o)) {
		if i != last {
			out.draws, out.logs, out.counts = append(out.draws, s.Draws[i]), append(out.logs, c.logs[i]), append(out.counts, 0)
			last = i
		}
		out.counts[len(out.counts)-1]++
	}
	return out, nil
}

// weighed gives the settled members weighed by the whole record; nil where none is left.
func (c *conditioning) weighed(from *settled) (*sampler.Sample, error) {
	logs, err := c.logLikelihood(from.draws)
	if err != nil {
		return nil, err
	}
	top := math.Inf(-1)
	for i := range logs {
		logs[i] += math.Log(from.counts[i]) - from.logs[i]
		if logs[i] > top {
			top = logs[i]
		}
	}
	if math.IsInf(top, 0) {
		return nil, nil
	}
	s, sum := &sampler.Sample{Draws: from.draws, Weights: make([]float64, len(logs)), Rounds: from.rounds}, 0.0
	for i, l := range logs {
		if !math.IsNaN(l) {
			s.Weights[i] = math.Exp(l - top)
			sum += s.Weights[i]
		}
	}
	for i := range s.Weights {
		s.Weights[i] /= sum
	}
	return s, nil
}

// enough tells whether weighed members are worth so many, and to be trusted, that nothing
// need be drawn anew.
func (c *conditioning) enough(s *sampler.Sample) bool {
	return s.Trusted() && s.EffectiveSize() >= max(min(settledShare*float64(c.o.Members), settledHalf*float64(c.settled.size)), settledLeast)
}

// fromSettled weighs the settled members of a trial by the whole record; its sample is nil
// where nothing is settled, or no member agrees with the rest.
func fromSettled(ctx context.Context, t *evidence.Trial, o Options, brief bool) (*conditioning, *sampler.Sample, error) {
	from, err := settle(ctx, t, o)
	if err != nil || from == nil {
		return nil, nil, err
	}
	c := conditioningOf(ctx, t, o)
	c.brief, c.settled = brief, from
	s, err := c.weighed(from)
	if errors.Is(err, work.ErrPool) {
		return nil, nil, nil
	}
	return c, s, err
}
