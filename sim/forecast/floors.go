package forecast

import (
	"maps"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
)

// A kiln of several floors dries a batch on each in turn, from the top down, by the same
// air from the bottom up. While a batch lies on one floor, the batch before it lies on the
// floor below, in the same process a cycle ahead: its exhaust is that of this very process in its later stage.
// But what leaves the lower floor hangs on the malt that comes onto it, and so on what the upper floor made of it:
// a fixed point. It is looked for in the malt, moisture and temperature as it comes onto
// each lower floor, since all that its exhaust hangs on is in these two. Each round dries the lower floors from
// the malt that is supposed, to have their exhaust, and then the batch from the top down by
// that exhaust, to have the malt that comes of it; along.go and fixed.go say how the next supposal is made.
//
// The batch before is taken to have gone as the process says, whatever a record says of this
// one, and its green malt to have been as this one's.

// exhaust is what the floor below gives.
type exhaust struct {
	course kiln.Intake // s since the stage began
	lasts  float64     // s, the stage; behind it nothing is blown
}

// blows tells whether it is known, and whether any air came: of a stage that was over as it began none did.
func (e *exhaust) blows() bool { return e != nil && len(e.course) > 0 }

const (
	mostRounds = 12 // of looking for the fixed point
	mostBoth   = 20 // and where the air of the lower floors hangs on what lies above them

	// What the malt supposed on a lower floor and the malt that comes onto it may differ by
	// (numerical): a fifth of a kilogram of water in a tonne of malt, and as much heat.
	nearMoisture = 2e-4 // kg/kg
	nearKelvin   = 0.5  // K

	// The malt that is supposed at first where nothing is known (common practice: malt goes down
	// a floor at some 12 %).
	firstMoisture = 0.14 // kg/kg
	firstKelvin   = 40.0 // °C
)

// settled is how the fixed point of a stage was found.
type settled struct {
	above  map[*model.Kilning]*exhaust // what leaves the floors above at last
	cut    map[*model.Kilning]float64  // as that of a run
	malt   []float64                   // as it comes onto each lower floor: moisture, kg/kg, and temperature, °C
	rounds int
	met    bool
	by     searching
}

// settle finds the exhaust that a stage takes, and of every one that it goes through. It
// is done where the stage was run with it in the last round, and nothing is left to do.
func (r *run) settle(st *model.Kilning) (done bool, err error) {
	floors := r.p.Floors(st)
	if len(floors) < 2 || r.air[floors[1]] != nil {
		return false, nil
	}
	malt := r.supposed(floors)
	r.supposeAbove(floors)
	f, most := r.search(st, floors), mostRounds
	if r.throughBoth(floors) {
		most = mostBoth
	}
	for round := 1; ; round++ {
		air, err := r.givenOff(floors, malt)
		if err != nil {
			return false, err
		}
		after, above, next, err := r.driedBy(floors, air)
		if err != nil {
			return false, err
		}
		kelvin := r.aboveApart(floors, above)
		met := near(misses(malt, next)) && kelvin <= littleKelvin
		r.above = above
		if met || round == most {
			return r.take(st, after, air, settled{above, r.cut, next, round, met, f}), nil
		}
		if malt = f.next(malt, next); kelvin > otherKelvin {
			f.forget()
		}
	}
}

// take goes on with the exhaust that was found, and tells whether the stage itself is done:
// as it was run by that exhaust, where it would be run the same again.
func (r *run) take(st *model.Kilning, after *run, air map[*model.Kilning]*exhaust, s settled) (done bool) {
	if done = r.o.Course == nil && r.until == nil && !after.missed; done {
		tried := r.tried
		*r = *after
		r.tried, r.above = tried, s.above
	}
	r.air = air
	r.f.fixed = maps.Clone(r.f.fixed)
	if r.f.fixed == nil {
		r.f.fixed = map[*model.Kilning]settled{}
	}
	for _, f := range r.p.Floors(st) {
		r.f.fixed[f] = s
	}
	if n := len(r.f.Kilns); done && r.f.Kilns[n-1].Fed != nil {
		r.f.Kilns[n-1].Fed.Rounds, r.f.Kilns[n-1].Fed.Met = s.rounds, s.met
	}
	return done
}

// supposed is the malt that is first taken to come onto each of the lower floors: as in the
// forecast that this one is like, or as dry as the steps before ask it to be.
func (r *run) supposed(floors []*model.Kilning) []float64 {
	if like := r.o.Like; like != nil && like.fixed[floors[0]].malt != nil {
		return like.fixed[floors[0]].malt
	}
	var list []float64
	for _, st := range floors[:len(floors)-1] {
		x := firstMoisture
		for _, s := range st.Steps {
			if w, ok := Dryness(s.Ends().Until); ok && w < 1 {
				x = w / (1 - w)
			}
		}
		list = append(list, min(x, r.batch.X()), firstKelvin)
	}
	return list
}

// searching looks for what comes out as it was supposed.
type searching interface {
	next(malt, came []float64) []float64

	// forget has the places that were tried bound it no more, since what comes out of them is another by now.
	forget()
}

// search begins a search, with what is known of the one that this one is near to.
func (r *run) search(st *model.Kilning, floors []*model.Kilning) searching {
	var like searching
	if r.o.Like != nil {
		like = r.o.Like.fixed[st].by
	}
	if len(floors) > 2 {
		f := new(fixed)
		if of, ok := like.(*fixed); ok {
			f.like = of.secants()
		}
		return f
	}
	f := new(along)
	if of, ok := like.(*along); ok {
		f.slope = of.slope
	}
	return f
}

// beside is the run as it goes on in what is only tried, as the process says.
func (r *run) beside() *run {
	t := *r
	t.f, t.counts, t.air, t.above = r.f.copy(), maps.Clone(r.counts), maps.Clone(r.air), maps.Clone(r.above)
	t.f.Stages = slices.Clone(r.f.Stages) // to the last of them its steps are written
	if t.air == nil {
		t.air = map[*model.Kilning]*exhaust{}
	}
	if r.malt != nil {
		malt := *r.malt
		t.malt = &malt
	}
	t.o.Course, t.ends, t.until, t.tried, t.missed = nil, nil, nil, true, false
	return &t
}

// givenOff dries the lower floors, the lowest first, from malt that is supposed, and gives
// what leaves each.
func (r *run) givenOff(floors []*model.Kilning, malt []float64) (map[*model.Kilning]*exhaust, error) {
	air := maps.Clone(r.air)
	for k := len(floors) - 1; k > 0; k-- {
		t := r.beside()
		maps.Copy(t.air, air)
		t.bare = true
		t.enter(floors[k], r.p.Number(floors[k]))
		t.laid(malt[2*k-2], malt[2*k-1])
		if err := t.kiln(floors[k]); err != nil {
			return nil, err
		}
		if air == nil {
			air = map[*model.Kilning]*exhaust{}
		}
		air[floors[k]] = t.air[floors[k]]
	}
	return air, nil
}

// laid lays the batch down as malt of so much moisture, kg/kg, and so many °C.
func (r *run) laid(x, t float64) {
	if r.malt == nil {
		r.loads, r.heat = r.batch.Mass(), quality.Green(r.batch.Modification())
	}
	r.batch.Water, r.t = r.batch.Dry*x, t
	r.malt = &finished{dry: r.batch.Dry, x: x, rootlets: r.batch.Rootlets()}
}

// driedBy dries the batch from the first floor on by the exhaust of the others. It gives the
// run as it stands behind the first, what leaves the floors above, and the malt as it comes onto each of the
// others.
func (r *run) driedBy(floors []*model.Kilning, air map[*model.Kilning]*exhaust) (after *run, above map[*model.Kilning]*exhaust, malt []float64, err error) {
	t := r.beside()
	t.air = maps.Clone(air)
	if err := t.kiln(floors[0]); err != nil {
		return nil, nil, nil, err
	}
	after, t = t, t.beside()
	for i, k := r.p.IndexOf(floors[0])+1, 1; k < len(floors); i++ {
		if r.p.Stages[i] == model.Stage(floors[k]) {
			malt = append(malt, t.batch.X(), t.t)
			if k++; k == len(floors) {
				break
			}
		}
		t.enter(r.p.Stages[i], r.p.Number(r.p.Stages[i]))
		if err := t.stage(r.p.Stages[i]); err != nil {
			return nil, nil, nil, err
		}
	}
	return after, t.above, malt, nil
}
