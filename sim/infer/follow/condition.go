package follow

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/distuv"

	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Options of a conditioning; the zero value is the usual one.
type Options struct {
	Members  int                   // 0 is DefaultMembers; LeastMembers to MostMembers
	Workers  int                   // 0 is one for each core
	Progress func(done, total int) // called now and then, from one goroutine at a time
}

// DefaultMembers is how many forecasts a batch is followed by where nothing is said.
const (
	DefaultMembers = 200
	LeastMembers   = 20
	MostMembers    = 10_000
)

// Sure is an ensemble that knows what was read.
type Sure struct {
	Trial     *evidence.Trial
	Ensemble  *ensemble.Ensemble // its members drawn anew by their weights, so that each counts the same
	Z         [][]float64        // of each of its members
	Mean      []float64          // of all axes
	Effective float64            // how many members of equal weight the weights are worth
	Members   int                // how many were forecast and weighed
	Redrawn   int                // how often more were drawn because too few bore all the weight

	members []Member // those of the ensemble, with what they see
}

const (
	enough    = 1.0 / 2 // the share of the members asked for that must be effective
	redraws   = 4       // at the most
	breadth   = 1.4     // by which the matrix of the errors is widened for drawing: a wide net wastes members, a narrow one misses some
	tails     = 8.0     // degrees of freedom of what is drawn from
	drawSeed1 = 0x666f6c6c
	drawSeed2 = 0x6f776564
)

// Condition makes the ensemble of a trial and weighs its members by what was read.
// The first members are drawn from what is usual. Where too few of them agree with the
// readings, more are drawn about the likeliest course, and again about those that agree
// best, as long as it is worth it. All are kept, and each is weighed for how likely it
// was to be drawn by any of the draws. It returns the error of the context when it is
// cancelled, that of a forecast that cannot begin, and work.ErrPool where the forecasts
// cost too much; where more of them would, no more are drawn.
func Condition(ctx context.Context, t *evidence.Trial, o Options) (*Sure, error) {
	if o.Members == 0 {
		o.Members = DefaultMembers
	}
	if o.Members < LeastMembers || o.Members > MostMembers {
		return nil, fmt.Errorf("a batch followed by %d members: it takes %d to %d", o.Members, LeastMembers, MostMembers)
	}
	t.Bound(ctx, work.NewPool(work.Shared*3/2))
	if _, err := t.Run(make([]float64, len(t.Axes)), false); err != nil { // where one is too dear, hundreds need not be tried
		return nil, err
	}
	most := o.Members * work.Shared * 3 / 2 // some five draws of the usual cost twice over
	pool := work.NewPool(most)
	t.Bound(ctx, pool)
	d := &drawing{ctx: ctx, t: t, o: o, rand: rand.NewPCG(drawSeed1, drawSeed2), all: ensemble.Of(t.Process)}
	if err := cmp.Or(d.run(d.usual(o.Members)), pool.Err()); err != nil {
		return nil, err
	}
	draw := most - pool.Left() // what one costs; the fit before the second costs as much at the most
	for len(d.about) < redraws && d.effective() < enough*float64(o.Members) && pool.Left() > draw+draw/2+fitOf(len(d.about))*draw {
		p, err := d.proposal()
		if err != nil {
			return nil, err
		}
		d.about = append(d.about, p)
		if err := cmp.Or(d.run(d.drawn(p)), pool.Err()); err != nil {
			return nil, err
		}
	}
	return d.settle(), nil
}

// fitOf is how many fits the next draw needs, when it is drawn about so many points.
func fitOf(drawn int) int {
	if drawn == 0 {
		return 1
	}
	return 0
}

// drawing is a set of members and their weights.
type drawing struct {
	ctx     context.Context
	t       *evidence.Trial
	o       Options
	rand    *rand.PCG
	about   []*distmv.StudentsT // what was drawn from, beside what is usual
	drew    []int               // how many from each
	z       [][]float64
	all     *ensemble.Ensemble // of which the members are
	members []Member
	likely  []float64 // logarithm of how likely the readings are, for each member
	weights []float64 // their sum is 1

	lock  sync.Mutex // of gates
	gates map[gate]*gate
}

// usual draws members from what is usual, each axis evenly.
func (d *drawing) usual(n int) [][]float64 {
	axes := len(d.t.Axes)
	draws := ensemble.Hypercube(n, axes)
	for _, z := range draws {
		for k := range z {
			z[k] = distuv.UnitNormal.Quantile(min(max(z[k], 1e-4), 1-1e-4))
		}
	}
	return draws
}

// proposal is where to draw from: about the likeliest course the first time, then
// about the members as they are weighed.
func (d *drawing) proposal() (*distmv.StudentsT, error) {
	var mean []float64
	var cov *mat.SymDense
	if len(d.about) == 0 {
		e, err := evidence.Fit(d.ctx, []*evidence.Trial{d.t}, evidence.Alone(d.t), d.o.Workers)
		if err != nil {
			return nil, err
		}
		mean, cov = e.Z, e.Cov
	} else {
		mean, cov = d.moments()
	}
	n := cov.SymmetricDim()
	wide := mat.NewSymDense(n, nil)
	wide.ScaleSym(breadth, cov)
	for k := range n {
		wide.SetSym(k, k, wide.At(k, k)+1e-3)
	}
	p, ok := distmv.NewStudentsT(mean, wide, tails, d.rand)
	if !ok {
		return nil, fmt.Errorf("the errors of the %d unknowns cannot be drawn from", n)
	}
	return p, nil
}

// moments are the mean of the weighed members and the matrix of their errors. Where few
// bear all the weight, the weights are evened out until enough of them do.
func (d *drawing) moments() ([]float64, *mat.SymDense) {
	n := len(d.t.Axes)
	rows := mat.NewDense(len(d.z), n, nil)
	for i, z := range d.z {
		rows.SetRow(i, z)
	}
	weights := slices.Clone(d.weights)
	for power := 0.8; worth(weights) < enough*float64(d.o.Members) && power > 0.05; power *= 0.8 {
		for i, w := range d.weights {
			weights[i] = math.Log(math.Max(w, math.SmallestNonzeroFloat64)) * power
		}
		weights = normal(weights)
	}
	mean := make([]float64, n)
	for k := range mean {
		mean[k] = stat.Mean(mat.Col(nil, k, rows), weights)
	}
	// the weights count as so many members, lest the errors of few come out as nil
	count := worth(weights) + 1
	for i := range weights {
		weights[i] *= count
	}
	cov := mat.NewSymDense(n, nil)
	stat.CovarianceMatrix(cov, rows, weights)
	return mean, cov
}

// drawn draws members from the proposal.
func (d *drawing) drawn(p *distmv.StudentsT) [][]float64 {
	var z [][]float64
	for range d.o.Members {
		z = append(z, p.Rand(nil))
	}
	d.drew = append(d.drew, len(z))
	return z
}

// run forecasts members more and weighs all that there are.
func (d *drawing) run(z [][]float64) error {
	members, likely := make([]Member, len(z)), make([]float64, len(z))
	report := d.reporting(len(d.z), len(z))
	err := ensemble.Each(d.ctx, d.o.Workers, len(z), func(i int) error {
		f, err := d.t.Run(z[i], false)
		if err != nil {
			return err
		}
		members[i], likely[i] = d.keep(f, z[i])
		report()
		return nil
	})
	if err != nil {
		return err
	}
	d.z, d.members, d.likely = append(d.z, z...), append(d.members, members...), append(d.likely, likely...)
	logs := make([]float64, len(d.z))
	for i, z := range d.z {
		prior := -evidence.Prior(z) - float64(len(z))/2*math.Log(2*math.Pi)
		logs[i] = d.likely[i] + prior - d.drawnAs(z, prior)
	}
	d.weights = normal(logs)
	return nil
}

// drawnAs is the logarithm of how likely a member was to be drawn by all draws together.
func (d *drawing) drawnAs(z []float64, prior float64) float64 {
	usual := len(d.z)
	logs := make([]float64, 0, 1+len(d.about))
	for i, p := range d.about {
		usual -= d.drew[i]
		logs = append(logs, p.LogProb(z)+math.Log(float64(d.drew[i])))
	}
	return floats.LogSumExp(append(logs, prior+math.Log(float64(usual))))
}

// settle draws members by their weights, at even steps of the sum of them.
func (d *drawing) settle() *Sure {
	n := d.o.Members
	s := &Sure{Trial: d.t, Effective: d.effective(), Members: len(d.z), Redrawn: len(d.about), Mean: make([]float64, len(d.t.Axes))}
	s.Ensemble = d.all
	at, i := d.weights[0], 0
	for k := range n {
		for want := (float64(k) + 0.5) / float64(n); at < want && i < len(d.weights)-1; {
			i++
			at += d.weights[i]
		}
		s.Ensemble.Members = append(s.Ensemble.Members, d.members[i].Member)
		s.members, s.Z = append(s.members, d.members[i]), append(s.Z, d.z[i])
	}
	for i, z := range d.z {
		for k := range z {
			s.Mean[k] += d.weights[i] * z[k]
		}
	}
	return s
}
