package germinate

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/work"
)

const (
	// longestAdvance, s: thirty days in one call.
	longestAdvance = 30 * 86400.0
	// longestStep, s: as often as the forecast asks for news.
	longestStep = 1800.0
	// stepShare: no step is longer against the time in which the bed comes to
	// the room's temperature.
	stepShare = 1.2
	// stepError, K: what a step may add to the error of the mean temperature.
	// It has died away after an hour, and in a process without jumps the rest of
	// the forecast holds to 1e-6.
	stepError = 3e-4
	// restAway, K: so near its balance the bed is at rest, and stepShare holds.
	restAway = 120 * stepError / (stepShare * stepShare * stepShare * stepShare * stepShare)
)

// Advance keeps the piece for dt seconds, above nil and at most 30 days, in the
// room. Out of range it returns a *[air.RangeError], as it does when the bed
// itself comes to leave −1 to 60 °C or 0 to 60 % moisture, and leaves the piece
// as it was.
func (p *Piece) Advance(dt float64, room Room) error {
	if p.lot.DryMass == 0 {
		return errNotMade
	}
	if err := air.Within("step", dt, "s", math.SmallestNonzeroFloat64, longestAdvance); err != nil {
		return err
	}
	face, err := room.face()
	if err != nil {
		return err
	}
	next := *p
	next.room = room
	run := runner{p: &next, face: &face, room: &room, hold: room.Hold}
	for dt > 0 {
		taken, err := run.step(dt)
		if err != nil {
			return err
		}
		dt -= taken
	}
	*p = next
	return nil
}

// runner carries one piece through one stay in one room.
type runner struct {
	p    *Piece
	face *grain.Face
	room *Room
	hold *Band
	now  flows // at the piece's present state, when fresh

	fresh bool
}

// step goes on by at most limit seconds and returns the seconds it took.
func (r *runner) step(limit float64) (float64, error) {
	p := r.p
	if err := p.meter.Spend(work.Piece); err != nil {
		return 0, err
	}
	if !r.fresh {
		r.now = p.flow(&p.y, r.room, r.face)
	}
	r.fresh = false
	at := r.now.warmth
	course := r.course()
	h := min(limit, r.longest(course))
	h, y := r.follow(course, h)
	before := p.y[held]
	p.y = y
	if course.held {
		p.setT(at + course.rate*h)
	}
	p.removed += max(0, before-p.y[held])
	t := p.T()
	p.chit((at + t) / 2)
	p.age += h
	p.sinceTurn += h
	p.hottest = max(p.hottest, p.warmestPlace())
	if err := air.Within("moisture of the bed, dry basis", p.X(), "kg/kg", 0, wettestX); err != nil {
		return h, err
	}
	return h, air.Within(bedTemperature, t, "°C", lowestRun, highestRun)
}

// longest is the longest step that keeps to stepError. What goes to its
// balance, away from it by a, with the time constant τ, is missed by about
// a·(h/τ)⁵/120 in a Runge–Kutta step h. So go the mean temperature, unless it
// is held, and the excess of the middle.
func (r *runner) longest(c course) float64 {
	f, area := &r.now, r.p.floor.Area
	conductance := r.face.WetConductance(f.warmth)*r.p.dryingArea() + r.face.Conductance()*2*area
	loop := conductance / (2 * area) * f.half / (3 * r.p.solid.packing.Conductivity)
	profile := f.settle / (1 + loop)
	h := min(longestStep, stepShare*r.faceTime())
	h = min(h, kept(profile, math.Abs(f.d[excess])*profile))
	if c.held {
		return h
	}
	tau := f.capacity / conductance
	return min(h, kept(tau, math.Abs(r.netRate(c, f))*tau))
}

// kept is the step, s, that keeps to stepError what is so far away, K, from its
// balance and goes there with the time constant tau, s.
func kept(tau, away float64) float64 {
	if away < restAway {
		return tau * stepShare
	}
	return tau * math.Pow(120*stepError/away, 0.2)
}

// faceTime is the shortest time constant, s, with which the layer at the open
// face dries: its dry matter over the mass flux for each unit of its moisture, and
// that of the kernels in series, which nothing that is taken up has to pass.
func (r *runner) faceTime() float64 {
	t := r.now.warmth
	flux := r.face.Evaporation(t, 1) - r.face.Evaporation(t, 0)
	air := r.p.faceLayer(r.p.dry(&r.p.y)) / (flux * r.p.solid.steepest)
	if r.now.dry <= 0 {
		return air
	}
	k, _, _ := r.p.solid.Rate(math.Inf(1), t) // no kernels dry faster than wet ones
	return air + 1/k
}

// rk4 returns the state h seconds on along the course.
func (r *runner) rk4(c course, h float64) vector {
	y := r.p.y
	k1 := r.rate(c, &r.now)
	y2 := y.plus(h/2, &k1)
	k2 := r.rateAt(c, &y2)
	y3 := y.plus(h/2, &k2)
	k3 := r.rateAt(c, &y3)
	y4 := y.plus(h, &k3)
	k4 := r.rateAt(c, &y4)
	for i := range y {
		y[i] += h / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
	}
	return y
}

func (r *runner) rateAt(c course, y *vector) vector {
	f := r.p.flow(y, r.room, r.face)
	return r.rate(c, &f)
}

// chit lets the kernels chit whose hour has come, at t °C.
func (p *Piece) chit(t float64) {
	due := p.lot.Profile.Due(p.y[clock])
	p.chitted += p.lot.Chitting(p.due, due, t)
	p.due = due
}
