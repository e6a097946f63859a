// Package ensemble says how sure a forecast is: it makes many, each with another
// lot, house and weather of those that are likely, and reports how they spread.
//
// # How it works
//
// What is not known is a list of unknowns (unknowns.go), each with its spread. A
// Latin hypercube of a fixed seed draws the members, so that even a few cover every
// unknown evenly. Each member is a forecast of its own; they are run on all cores,
// and since each writes to its own place the result does not depend on how many
// there are or on which is ready first. The spread of a figure is its 10, 50 and
// 90 % points. Which unknowns drive a figure is told by the square of their rank
// correlation with it.
package ensemble

import (
	"cmp"
	"context"
	"fmt"
	"math/rand/v2"
	"sync"
	"time"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// DefaultMembers is how many forecasts an ensemble makes where nothing is said:
// enough for the 10 and 90 % points of a batch to settle to a tenth of their
// distance. MostMembers is how many it makes at the most: a point of the spread then
// settles to a fiftieth of that, far closer than the model is right.
const (
	DefaultMembers = 400
	LeastMembers   = 10
	MostMembers    = 10_000
)

// seed draws the same members for the same process, always.
const seed1, seed2 = 0x6d616c74, 0x77726967

// Options of an ensemble; the zero value is the usual one.
type Options struct {
	Members  int                   // 0 is DefaultMembers; LeastMembers to MostMembers
	Workers  int                   // 0 is one for each core
	Begun    time.Time             // when the first soak begins; the zero time where that is not known
	Looks    []float64             // s from the first soak, rising: when every member is looked at, for Courses; nil for never
	Progress func(done, total int) // called now and then, from one goroutine at a time
}

// Ensemble is many forecasts of one process.
type Ensemble struct {
	Process  *model.Process
	Unknowns []Unknown
	Draws    [][]float64 // of each member, the place of each unknown: 0 to 1
	Members  []Member
	Courses  Courses // what was seen of the members where that was asked for

	like *forecast.Forecast // the middle of all, which members begin near to; nil where it was not made

	lock      sync.Mutex // of what follows, while members are brought
	stepAt    map[stepKey]int32
	stepsSeen []stepKey
	wordAt    map[string]int32
	words     []string
}

// Run makes the ensemble. It returns the error of the context when it is
// cancelled, work.ErrPool where the forecasts cost too much together, and the first
// error of a forecast that could not begin.
func Run(ctx context.Context, p *model.Process, o Options) (*Ensemble, error) {
	if o.Members == 0 {
		o.Members = DefaultMembers
	}
	if o.Members < LeastMembers || o.Members > MostMembers {
		return nil, fmt.Errorf("an ensemble of %d members: it takes %d to %d", o.Members, LeastMembers, MostMembers)
	}
	one := work.NewMeter(ctx, work.NewPool(work.Shared))
	middle, err := forecast.Run(p, forecast.Options{Meter: one})
	if err != nil { // where one is too dear, hundreds need not be tried
		return nil, err
	}
	e := Of(p)
	e.like = middle
	e.Unknowns, e.Members = UnknownsOf(p), make([]Member, o.Members)
	e.Draws = hypercube(o.Members, len(e.Unknowns))
	return e, e.fill(ctx, o)
}

// Hypercube draws members points in a unit cube so that each axis is covered evenly.
func hypercube(members, axes int) [][]float64 {
	src := rand.NewPCG(seed1, seed2)
	batch := mat.NewDense(members, axes, nil)
	samplemv.LatinHypercube{Q: distmv.NewUnitUniform(axes, src), Src: src}.Sample(batch)
	draws := make([][]float64, members)
	for i := range draws {
		draws[i] = batch.RawRowView(i)
	}
	return draws
}

// options are those of one member.
func (e *Ensemble) options(draw []float64) forecast.Options {
	o := forecast.Options{Like: e.like}
	for i, u := range e.Unknowns {
		u.set(&o, u.quantile(draw[i]))
	}
	return o
}

// fill runs the members on all workers.
func (e *Ensemble) fill(ctx context.Context, o Options) error {
	var lock sync.Mutex
	done := 0
	e.Courses = Courses{o.Looks, make([][]Look, len(e.Members))}
	pool := work.NewPool(len(e.Members) * work.Shared)
	err := Each(ctx, o.Workers, len(e.Members), func(i int) error {
		opts := e.options(e.Draws[i])
		opts.Begun = o.Begun
		opts.Meter = work.NewMeter(ctx, pool)
		if o.Looks != nil {
			opts.Course = &forecast.Course{Looks: o.Looks}
		}
		f, err := forecast.Run(e.Process, opts)
		if err != nil {
			return err
		}
		e.Members[i] = e.Reduce(f)
		e.Courses.Members[i] = LooksOf(f, len(o.Looks))
		if o.Progress != nil {
			lock.Lock()
			defer lock.Unlock()
			done++
			o.Progress(done, len(e.Members))
		}
		return nil
	})
	return cmp.Or(err, pool.Err())
}
