package kiln

import (
	"cmp"
	"errors"
	"fmt"
	"sort"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Incoming is air that comes to a kiln from elsewhere, as it is at one time.
type Incoming struct {
	At   float64 // s since the malt was put on
	T    float64 // °C
	W    float64 // humidity ratio, kg/kg
	Flow float64 // dry air, kg/s

	Depth float64 // m, of the bed that it comes from, as it lies then; of no account to who takes it
}

// Intake is the course of such air, in the order of time. Between two times it goes in a
// straight line, before the first and behind the last it stays as it is there. Two of the
// same time are a jump.
//
// It is what the floor above takes from the floor below. Where it comes warmer than the
// kiln is asked for, a flap lets outside air in and as much of the other out, so that the
// flow stays; where it comes cooler, the kiln's own heater warms it.
type Intake []Incoming

// check returns the first *[air.RangeError] of the course, or what else is wrong with it.
func (in Intake) check(area float64) error {
	for i, c := range in {
		if i > 0 && c.At < in[i-1].At {
			return fmt.Errorf("incoming air: %.0f s stands behind %.0f s", c.At, in[i-1].At)
		}
		if err := cmp.Or(
			air.Within("temperature of the incoming air", c.T, "°C", drying.Coldest, Hottest),
			air.Within("humidity ratio of the incoming air", c.W, "kg/kg", 0, mostIncoming),
			air.Within("flow of the incoming air", c.Flow, "kg/s", 1e-8*area, 4*area),
		); err != nil {
			return err
		}
	}
	return nil
}

// mostIncoming bounds the water of incoming air, kg/kg: saturated at 90 °C it holds 1.4.
const mostIncoming = 2.0

// Feed has the bed take air that comes from elsewhere in place of outside air. Airflow
// says whether the kiln has a fan of its own: then that much air goes through the bed, reckoned as it comes, the
// rest of it outside air where less comes; without one what comes goes through. It is to be called before the first
// Advance, and returns a *[air.RangeError] for a value outside: −20 to 300 °C,
// nil to 2 kg/kg, and 1e-8 to 4 kg of dry air a second for each m² of the bed.
func (b *Bed) Feed(course Intake, airflow bool) error {
	if b.kit.Still {
		return errors.New("a still oven takes no air from elsewhere")
	}
	if err := course.check(b.kit.Area); err != nil {
		return err
	}
	b.feed = feed{course: course, fan: airflow}
	b.even = false
	return nil
}

// feed is what comes to a bed from elsewhere, and where on its course the bed is.
type feed struct {
	course Intake
	fan    bool   // the kiln drives the air by itself
	knot   int    // the piece of the course that is in force begins there
	came   stream // the air as it comes, outside air mixed in where too little comes
	dry    float64
}

// fed tells whether air comes from elsewhere.
func (f *feed) fed() bool { return len(f.course) > 0 }

// next gives the time to the next knot of the course, s, after making in force the piece that
// begins at the time now. Jumped says that the air is another at once.
func (f *feed) next(now float64) (left float64, jumped bool) {
	for f.knot+1 < len(f.course) && f.course[f.knot+1].At <= now+leastStep {
		f.knot++
		jumped = jumped || f.course[f.knot].At == f.course[f.knot-1].At
	}
	if f.knot+1 >= len(f.course) {
		return endless, jumped
	}
	return f.course[f.knot+1].At - now, jumped
}

// endless is longer than any advance, s.
const endless = 1e9

// at gives the air at a time within the piece in force.
func (f *feed) at(now float64) Incoming {
	a := f.course[f.knot]
	if f.knot+1 == len(f.course) || now <= a.At {
		return a
	}
	return between(a, f.course[f.knot+1], now)
}

// between gives the air at a time in a straight line from a to b.
func between(a, b Incoming, now float64) Incoming {
	if b.At <= a.At {
		return b
	}
	share := min(max(0, (now-a.At)/(b.At-a.At)), 1)
	return Incoming{At: now, T: a.T + share*(b.T-a.T), W: a.W + share*(b.W-a.W), Flow: a.Flow + share*(b.Flow-a.Flow), Depth: a.Depth + share*(b.Depth-a.Depth)}
}

// At gives the air at a time, s since the malt was put on; of a jump what comes behind it.
func (in Intake) At(now float64) Incoming {
	k := sort.Search(len(in), func(i int) bool { return in[i].At > now })
	switch k {
	case 0:
		return in[0]
	case len(in):
		return in[k-1]
	}
	return between(in[k-1], in[k], now)
}

// letIn finds what comes in at a stage, and how much goes through the bed. A fan moves a
// volume, taken at the air as it comes.
func (b *Bed) letIn(s stage) {
	f, c := &b.feed, b.feed.at(s.at)
	f.came, f.dry = stream{t: c.T, w: c.W}, c.Flow/b.kit.Area
	if !f.fan && b.set.Airflow == nil {
		return
	}
	back := b.set.recirculation(b.kit)
	wanted := b.set.airflow(b.kit) / b.kit.Area * (1 - back)
	comes := f.dry * f.came.at(b.ambient.P).Volume()
	if comes >= wanted {
		f.dry *= wanted / comes / (1 - back)
		return
	}
	outside := (wanted - comes) / b.ambient.Volume()
	f.came = b.mixed(f.came, f.dry/(f.dry+outside))
	f.dry = (f.dry + outside) / (1 - back)
}

// mixed gives outside air with a share of air of the state c in it.
func (b *Bed) mixed(c stream, share float64) stream {
	w := share*c.w + (1-share)*b.ambient.W
	h := share*c.enthalpy() + (1-share)*b.ambient.Enthalpy()
	return stream{t: (h - w*air.EvaporationHeat) / (air.DryAirHeat + w*air.VapourHeat), w: w}
}

// cooled gives the share of incoming air that, mixed with outside air, comes to t °C, which
// lies between them: h = cₐ·t + W·(l + cᵥ·t), with h and W straight in the share.
func (b *Bed) cooled(t float64) float64 {
	c, perWater := b.feed.came, air.VapourEnthalpy(t)
	lacks := air.DryAirHeat*t + b.ambient.W*perWater - b.ambient.Enthalpy()
	return lacks / (c.enthalpy() - b.ambient.Enthalpy() - (c.w-b.ambient.W)*perWater)
}

// blowFed is blow with air that comes from elsewhere.
func (b *Bed) blowFed(t float64, s stage) flow {
	b.fresh = b.feed.came
	if b.set.recirculation(b.kit) != 0 || b.kit.Recovers != 0 || b.walled() {
		return b.blowFedRound(t, s)
	}
	switch {
	case t < b.fresh.t && t <= b.ambient.T: // all that the flap can do
		b.fresh = stream{t: b.ambient.T, w: b.ambient.W}
		if b.limit = ByIncomingAir; b.feed.came.t < b.ambient.T {
			b.fresh = b.feed.came
		}
		t = b.fresh.t
	case t < b.fresh.t:
		b.fresh = b.mixed(b.feed.came, b.cooled(t))
		t = b.fresh.t
	case b.kit.Heater != nil:
		capacity := b.feed.dry * (air.DryAirHeat + air.VapourHeat*b.fresh.w)
		if most := b.fresh.t + *b.kit.Heater/b.kit.Area/capacity; most < t {
			b.limit, t = b.weak(), most
		}
	}
	return b.march(stream{t: t, w: b.fresh.w}, s)
}

// weak is the limit of a bed whose air cannot be made warm enough.
func (b *Bed) weak() Limit {
	if *b.kit.Heater == 0 {
		return ByFeed
	}
	return ByHeater
}

// blowFedRound is blowFed with return air, a heat exchanger or walls: the flap opens as far as the heater would have to
// cool.
func (b *Bed) blowFedRound(t float64, s stage) flow {
	f := b.blowRound(t, s)
	if b.limit == ByHeater {
		b.limit = b.weak()
	}
	if b.limit != ByIncomingAir && b.limit != ByWalls {
		return f
	}
	still := b.limit
	b.limit = Unlimited
	enough := enoughKelvin * (b.feed.dry*air.DryAirHeat + 1)
	open := root(0, 1, 0.5, max(1, b.feed.dry*air.DryAirHeat*20), enough, func(open float64) float64 {
		b.fresh = b.mixed(b.feed.came, 1-open)
		f = b.circulate(t, s)
		return b.heat(f)
	})
	if open < 1 || b.heat(f) >= -enough {
		return f
	}
	b.limit = still
	return b.blowWith(0, t, b.warmest(t), s, b.need)
}

// blowAsComes takes the air as it comes, and leads back what the setting says.
func (b *Bed) blowAsComes(s stage) flow {
	b.limit = Unlimited
	if b.set.recirculation(b.kit) == 0 && !b.walled() && !b.bare() {
		return b.march(b.fresh, s)
	}
	return b.blowWith(0, min(b.fresh.t, b.ambient.T), b.warmest(b.fresh.t), s, b.need)
}

// untilKnot gives the time to where the course of the incoming air bends next, s, which no
// step is to run past.
func (b *Bed) untilKnot() float64 {
	left, _ := b.feed.next(b.seconds)
	return left
}

// jumps tells whether the bed has come to where its incoming air is another at once.
func (b *Bed) jumps() bool {
	_, jumped := b.feed.next(b.seconds)
	return jumped
}
