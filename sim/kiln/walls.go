package kiln

import (
	"math"

	"maltwright/sim/air"
)

// The walls of a kiln stand half before the bed and half behind it: those around the fire and the
// plenum are warmed by the air that comes on to the malt, those above the bed by the air that
// leaves it. Both give the room what passes through them. The air on either side is
// taken to be mixed, so that what comes on to the bed is as warm as what the lower walls see, and
// what is led back or leaves the kiln as what the upper ones see. The walls of a still oven and of a drum all see
// their one air. Dew on cold walls is left out.

// shareBefore is the share of the walls that stands before the bed (common practice).
const shareBefore = 0.5

// build gives the walls before the bed and behind it, as warm as the room; none where nothing is
// said of them.
func (e Equipment) build(room float64) []wall {
	if e.Walls == nil {
		return nil
	}
	of, before := newChain(e.Walls.slabs()), shareBefore
	if e.Still || e.Drum.tumbles() {
		before = 1
	}
	area := e.Walls.Area / e.Area
	return []wall{newWall(of, before*area, room), newWall(of, (1-before)*area, room)}
}

// stillWarming is how many times what walls lose once they are warm through they are taken to draw in
// the hours of a step: those of brick are a day in warming. A round figure of ours, held to nothing.
const stillWarming = 2.0

// WallsTake is what the walls before the bed take of its heat, W, from air that is so many K warmer than the room:
// U·A·K, with 1/U the sum of what the films and the slabs of the wall resist, and as much again while they still
// warm. It is 0 where nothing is said of them.
func (e Equipment) WallsTake(above float64) float64 {
	if e.Walls == nil || e.Still || e.Drum.tumbles() {
		return 0
	}
	resists := 2 / wallFilm
	for _, s := range e.Walls.slabs() {
		resists += s.thickness / s.conductivity
	}
	return stillWarming * shareBefore * e.Walls.Area * above / resists
}

// walled tells whether the kiln's own walls take part.
func (b *Bed) walled() bool { return len(b.walls) > 0 }

// refer sets where the walls, and the hand that holds air-off, start from in a stage of length a, s.
func (b *Bed) refer(a, dt float64, weights ...float64) {
	if b.set.Target == AirOff {
		b.hand.refer(dt, weights...)
	}
	for i := range b.walls {
		w := &b.walls[i]
		w.refer(dt, weights...)
		w.prepare(a)
	}
}

// wash lets the air of a flow pass the walls, and leaves their rates in a slot.
func (b *Bed) wash(f *flow, slot int) {
	before, behind := &b.walls[0], &b.walls[1]
	lost := 0.0
	f.taken, f.lost = before.settle(f.on.t, slot)
	if capacity := f.g * (air.DryAirHeat + air.VapourHeat*f.off.w); behind.area > 0 {
		f.out.t = (capacity*f.off.t + behind.conductance*behind.against) / (capacity + behind.conductance)
		_, lost = behind.settle(f.out.t, slot)
	} else {
		_, lost = behind.settle(f.on.t, slot)
	}
	f.lost += lost
}

// blowWalled is blowThrough of a kiln whose walls take part.
func (b *Bed) blowWalled(t float64, s stage) flow {
	if least := b.heated(0); t < least {
		b.limit, t = b.tooWarm(t), least
	}
	if b.kit.Heater != nil {
		if most := b.heated(*b.kit.Heater / b.kit.Area); most < t {
			b.limit, t = ByHeater, most
		}
	}
	return b.march(stream{t: t, w: b.ambient.W}, s)
}

// tooWarm is what keeps air-on above the t °C that is asked: walls where fresh air would be cold enough.
func (b *Bed) tooWarm(t float64) Limit {
	if b.walled() && b.ambient.T < t && b.walls[0].against > t {
		return ByWalls
	}
	return ByIncomingAir
}

// heated gives the air-on, °C, of fresh air that gets so much heat, W/m², and passes the walls
// before the bed: g·c·(T − T room) + U·(T − T wall) = power, with g the flow of dry air at air-on,
// which is in inverse proportion to its absolute temperature.
func (b *Bed) heated(power float64) float64 {
	room, w := b.ambient.T+air.ZeroCelsius, &b.walls[0]
	if b.feed.fed() { // so much dry air, however warm
		carries := b.feed.dry * (air.DryAirHeat + air.VapourHeat*b.fresh.w)
		return (carries*b.fresh.t + w.conductance*w.against + power) / (carries + w.conductance)
	}
	carries := b.airflow() / b.kit.Area / b.ambient.Volume() * room * (air.DryAirHeat + air.VapourHeat*b.ambient.W)
	linear := carries - w.conductance*(w.against+air.ZeroCelsius) - power
	root := math.Sqrt(linear*linear + 4*w.conductance*carries*room)
	if linear > 0 {
		return 2*carries*room/(linear+root) - air.ZeroCelsius
	}
	return (root-linear)/(2*w.conductance) - air.ZeroCelsius
}

// wallHeat gives the heat in the walls above that of the room, J.
func (b *Bed) wallHeat() float64 {
	sum := 0.0
	for i := range b.walls {
		sum += b.walls[i].holds()
	}
	return sum * b.kit.Area
}
