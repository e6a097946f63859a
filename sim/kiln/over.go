package kiln

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/draught"
	"maltwright/sim/drying"
)

// Over is a bed of the same grain, on a floor above, that all of the exhaust goes through on its
// way out. What drives the air is lost in it too, and of a chimney only the air between the two
// beds is as it leaves the lower one: what stands over the upper draws as that lets it go. How it lies and what it lets go
// is given as a course, for it is dried by this very air: who asks for both looks for courses that
// agree.
type Over struct {
	Area   float64 // of the bed above, m²
	Height float64 // from this bed, or the one before in the list, to that one, m
	Course Intake  // what leaves it, and its depth
}

// check bounds it as a kiln is: area 10 cm² to 1 ha, height 0 to 200 m.
func (o Over) check() error {
	err := errors.Join(
		air.Within("area of the floor above", o.Area, "m²", 1e-3, 1e4),
		air.Within("height to the floor above", o.Height, "m", 0, 200))
	for _, c := range o.Course {
		if err == nil {
			err = errors.Join(
				air.Within("depth of the bed above", c.Depth, "m", 0, 20),
				air.Within("temperature that leaves the bed above", c.T, "°C", drying.Coldest, Hottest))
		}
	}
	return err
}

func (e Equipment) checkOver() (err error) {
	for _, o := range e.Over {
		err = errors.Join(err, o.check())
	}
	return err
}

// topped is what beds above lose and by how much they change what draws.
type topped struct {
	beds  []overBed
	lifts float64 // Pa
}

// overBed is a bed above at a moment: the air before and behind it.
type overBed struct {
	area, depth float64
	in, off     air.State
}

// topped looks at the beds above, as they are where the step begins, over air that leaves this
// one.
func (b *Bed) topped(way *draught.Way, off air.State) (t topped) {
	left := way.Above
	for _, o := range b.kit.Over {
		if len(o.Course) == 0 {
			continue
		}
		c := o.Course.At(b.seconds)
		over := overBed{o.Area, c.Depth, off, air.State{T: c.T, W: c.W, P: b.ambient.P}}
		left -= min(o.Height, left)
		t.lifts += draught.Column(left, over.in, over.off)
		t.beds = append(t.beds, over)
		off = over.off
	}
	return t
}

// lost is what so much dry air, kg/s, loses in the beds above, Pa.
func (t topped) lost(p drying.Packing, dry float64) (loss float64) {
	for _, o := range t.beds {
		loss += o.depth / 2 * (p.Loss(dry*o.in.Volume()/o.area, o.in) + p.Loss(dry*o.off.Volume()/o.area, o.off))
	}
	return loss
}

// passesOn is the dry air, kg/s, that goes on to the floors above at a flow, m³/s of air as it comes on.
func (b *Bed) passesOn(v float64, on air.State) float64 {
	return v / on.Volume() * (1 - b.set.recirculation(b.kit))
}
