package forecast

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/grain"
	"maltwright/sim/quality"
	"maltwright/sim/work"
)

// Options move what a process does not settle; the zero value is the middle of
// everything.
type Options struct {
	// Factors of lot and house; nil is 1. What the house has learnt multiplies them.
	Uptake, HuskWater, Growth, Chit, Respiration, Withering, Drying *float64

	// DryingOf are factors of single kilns, which multiply Drying; a kiln that is not named
	// stands as nil. It must not change while a forecast is made.
	DryingOf map[*model.Kiln]float64

	// Factors of what is late in each stage beside the equations: of what the core drinks in
	// the end, of the growth clock, see [grain.Lot], of the rate of bound water, see
	// [drying.Malt], and of how fast heat colours malt. nil is 1.
	LateUptake, LateGrowth, LateDrying, LateColour *float64

	Sorption      float64 // kg/kg added to the equilibrium moisture, −0.05 to 0.05
	GrainMoisture float64 // added to the stated moisture of the raw grain, wet basis

	Forms grain.Forms // of the equations of growth, uptake and drying; nil are the model's own

	// Where in the band that is stated: −1 its low end, 0 its middle, 1 its high end.
	AirAt, HumidityAt, WaterAt, BandAt float64

	Begun time.Time // when the first soak begins; the zero time where that is not known

	Course *Course // of a batch under way; nil for a plan

	// Like is a forecast of the same process that this one is near to; nil for none. Where two
	// floors of a kiln hang on each other the search for what fits begins with it. It ends as near to
	// the mark as any other, and so gives the same but for what that leaves open.
	Like *Forecast

	Meter *work.Meter // of what it may cost; nil for one of its own
}

// within gives the place in a band.
func within(r quantity.Range, at float64) float64 {
	return (r.Low.SI+r.High.SI)/2 + at*(r.High.SI-r.Low.SI)/2
}

const zeroC = quantity.ZeroCelsius

// ErrNothing says that a process lacks what a forecast begins with.
var ErrNothing = errors.New("the process does not say what grain it is made from")

// Run forecasts a process. It returns ErrNothing, an error of a model that cannot
// start, that of a context that is cancelled, or work.ErrPool where forecasts that
// belong together cost too much; what goes wrong later is a Trouble of the forecast.
func Run(p *model.Process, o Options) (*Forecast, error) {
	if p.Charge == nil || p.Grain == nil || p.Grain.Species.Text == "" {
		return nil, ErrNothing
	}
	r := &run{p: p, o: o, f: &Forecast{Process: p, Begun: o.Begun}, effort: effortOf(o.Meter)}
	if o.Course != nil {
		r.ends, r.f.Turned = o.Course.Ends, o.Course.Turns
	}
	r.f.Totals.SteepOut, r.f.Totals.SteepOutMoisture = math.NaN(), math.NaN()
	if err := r.begin(); err != nil {
		return nil, err
	}
	return r.from(0)
}

// from runs the stages from one on.
func (r *run) from(stage int) (*Forecast, error) {
	defer r.effort.Settle()
	numbers := r.p.Numbers()
	for i, st := range r.p.Stages[stage:] {
		r.keep(stage + i)
		r.enter(st, numbers[stage+i])
		err := r.stage(st)
		if err == errEnough {
			return r.f, nil
		}
		r.left()
		if err = cmp.Or(r.effort.Err(), err); err != nil {
			if r.effort.stopped() {
				return nil, err
			}
			r.unable(st, err)
			break
		}
	}
	if r.malt != nil && r.o.Course != nil {
		_ = r.seeThrough(still{r.malt}, math.Inf(1)) // it lies in store; that all is seen ends nothing here
	}
	r.finish()
	return r.f, nil
}

// enter begins a stage, of which number of its kind it is.
func (r *run) enter(st model.Stage, number int) {
	r.whole, r.wholes = doing{string(st.Kind()), number}, r.p.Count(st.Kind())
	r.f.Stages, r.at = append(r.f.Stages, Stage{Kind: st.Kind(), Number: number, Of: st}), source.Place{}
}

// unable says where and why a stage cannot be forecast to its end.
func (r *run) unable(st model.Stage, err error) {
	at := st.Place()
	if r.at.Known() {
		at = r.at
	}
	if r.effort.Err() != nil {
		at, err = r.effort.dearest(at)
	}
	r.trouble(Unable{r.meets(at), st.Kind(), err})
}

// stage runs a stage.
func (r *run) stage(st model.Stage) error {
	switch st := st.(type) {
	case *model.Steep:
		return r.steep(st)
	case *model.Germination:
		return r.germinate(st)
	case *model.Withering:
		return r.wither(st)
	case *model.Kilning:
		if done, err := r.settle(st); done || err != nil {
			return err
		}
		return r.kiln(st)
	case *model.Deculming:
		return r.deculm(st)
	case *model.Storing:
		return r.store(st)
	}
	return nil
}

// run is one forecast in the making.
type run struct {
	p      *model.Process
	o      Options
	f      *Forecast
	site   site
	batch  grain.Batch   // the grain between two stages
	wetted float64       // s before the first stage at which the grain was first wetted
	loads  float64       // kg that the green malt weighed when it came to the first kiln
	heat   quality.State // what the kilns so far did to the malt
	clock  float64       // s from the first soak
	t      float64       // °C of the grain between two stages
	malt   *finished     // after the kiln

	soaks, rests int
	steeped      bool         // what ends the steep holds
	at           source.Place // the step that is being run
	drawn        drawn        // water for the steep

	counts   map[string]int // of the steps of each kind that have begun
	now      doing
	whole    doing   // the stage that is run
	wholes   int     // how many of its kind there are
	ends     []Ended // those of the course that are to come
	lastHold int     // of the stage that is run, as a record counts them
	looked   int     // of its looks
	ready    float64 // s from the first soak at which a condition held that is waited on beyond it; NaN
	until    *reached
	effort   *effort

	air    map[*model.Kilning]*exhaust // of the stages that give theirs to others, as far as it is known
	above  map[*model.Kilning]*exhaust // what leaves the stages that take it, likewise
	cut    map[*model.Kilning]float64  // m³/s, by which the beds of those are cut into layers
	tried  bool                        // it is only tried, and its gates are not searched on when they would be met
	missed bool                        // so it was with one of them
	bare   bool                        // only the exhaust is asked for, and not what the heat does to the malt
}

// called names the stage that is run where there are several of its kind, "" where it is
// the only one.
func (r *run) called() string {
	if r.wholes < 2 {
		return ""
	}
	return fmt.Sprintf("%s %d", r.whole.kind, r.whole.number)
}

// begin takes up the lot and the site.
func (r *run) begin() error {
	r.site = r.siteOf()
	lot, x, err := r.lot()
	if err != nil {
		return err
	}
	switch {
	case r.p.Grain.Kilned():
		r.batch, err = grain.Kilned(lot, x)
		r.heat = unknownQuality()
	case r.p.Grain.Grown():
		r.batch, err = grain.Grown(lot, x, usualGrowth)
		r.wetted = grownBefore
		r.assume(GrownBefore{usualGrowth})
	default:
		r.batch, err = grain.NewBatch(lot)
	}
	r.f.DryMass = lot.DryMass
	r.t = r.site.air
	return err
}

// record writes down a step that took so long.
func (r *run) record(s Step, m physics, before, took float64) {
	st := &r.f.Stages[len(r.f.Stages)-1]
	s.Start, s.End = r.clock, r.clock+took
	if s.Label != Waiting {
		s.Number = max(1, r.counts[s.Word()])
	}
	s.Nth = r.now.number
	s.MoistureStart, s.MoistureEnd, s.WeightEnd = before, m.moisture(), m.weight()
	if on, ok := m.(*kilnModel); ok && on.warmest.Known {
		s.Warmest = on.warmest
	}
	st.Steps = append(st.Steps, s)
	_ = r.effort.spend(work.Line, s.Place) // the stage sees that it is used up
	r.clock += took
	r.seeEnd(m)
	r.passed(r.now)
}
