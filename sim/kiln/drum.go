package kiln

import (
	"math"

	"maltwright/sim/air"
)

// Drum is a kiln that tumbles its malt: a lying cylinder, as long as it is wide, that turns.
// Its malt is one layer, well mixed, without a front and without a resistance. The zero
// value is none.
//
// Its air and its shell are taken to be as warm as each other, and that is its air-on. The
// malt takes heat by contact from as much of the shell as it lies against, and trades heat
// and water with the air by those kernels that fall through it. The air is well mixed too: it
// leaves by the effectiveness n/(1 + n), n the transfer units of those kernels. The shell is bare,
// and gives heat to the room by all of it.
type Drum struct {
	Volume float64 // inside, m³
	Malt   float64 // of the malt in it, as it lies, m³
}

const (
	// contactTransfer, W/(m² K), is how freely a turning shell gives heat to what is tumbled
	// on it (common practice, from memory: 50 to 100 in rotary drums).
	contactTransfer = 75.0

	// showered is the share of the kernels that fall through the air (calibrated: 2 to 10 % in
	// rotary dryers), and fallSpeed how fast, m/s (derived: half of what a fall of 0.2 m comes to).
	showered  = 0.05
	fallSpeed = 1.0

	// RoomFilm, W/(m² K), is how freely a bare shell gives heat to the room (handbook, from
	// memory: natural convection 5, radiation 5 to 7).
	RoomFilm = 11.0

	// DrumVent is a usual airflow of a drum, m³/s for each kg of what comes into it: a vent,
	// and no wind (calibrated: 1 m³/h). It is never assumed: a caller who takes it says so.
	DrumVent = 1.0 / 3600

	// FullDrum is the share of a drum that malt may fill and still tumble (common practice: a third to
	// a half).
	FullDrum = 0.5
)

// In gives the equipment with the malt in a drum: its area is that of the shell that the malt
// lies against, by which its airflow and its depth are reckoned.
func (e Equipment) In(d Drum) Equipment {
	e.Drum, e.Area = d, d.contact()
	return e
}

// Share is the share of the drum that its malt fills: above [FullDrum] it hardly tumbles,
// above 1 it does not go in.
func (d Drum) Share() float64 { return d.Malt / d.Volume }

// tumbles tells whether there is a drum.
func (d Drum) tumbles() bool { return d.Volume > 0 }

// diameter is that of the cylinder, and its length, m: V = π/4·d³.
func (d Drum) diameter() float64 { return math.Cbrt(4 / math.Pi * d.Volume) }

// Shell is the area of the drum, its ends among it, m²: π·d² + 2·π/4·d².
func (d Drum) Shell() float64 { w := d.diameter(); return 1.5 * math.Pi * w * w }

// contact is the part of it that the malt lies against, m²: of the round the arc θ below its
// face, where (θ − sin θ)/2π is the share that is filled, of the ends that share.
func (d Drum) contact() float64 {
	share, w := min(1, d.Share()), d.diameter()
	arc := root(0, 2*math.Pi, math.Pi, 2, 1e-12, func(arc float64) float64 { return arc - math.Sin(arc) - 2*math.Pi*share })
	return w*w*arc/2 + math.Pi/2*w*w*share
}

// bare tells whether the drum's shell stands in the room as it is: no walls are said.
func (b *Bed) bare() bool { return b.kit.Drum.tumbles() && !b.walled() }

// bared is the heat that the shell of a heated drum gives to the room, W/m² of the malt's
// contact: all of it is as warm as its air, and the room as warm as the air outside.
func (b *Bed) bared(f flow) float64 {
	if !b.bare() {
		return 0
	}
	return RoomFilm * b.kit.Drum.Shell() / b.kit.Area * (f.on.t - b.ambient.T)
}

// drumExchange is how the malt meets a flow of g kg/(m² s) of dry air. The shell gives heat
// while the drum is heated; in fresh air a bare one leads it off into the room, through a film on
// each side, and walls that are said take it and give it to air and room.
func (b *Bed) drumExchange(g float64) exchange {
	d := b.kit.Drum
	n := showered * b.surface * b.packing.Falling(fallSpeed) / (g * air.DryAirHeat)
	x := exchange{g: g, back: b.set.recirculation(b.kit), reach: n / (1 + n), radiant: contactTransfer}
	if b.set.Target == Fresh && b.bare() {
		x.radiant = 1 / (1/contactTransfer + b.kit.Area/(RoomFilm*d.Shell()))
	}
	return x
}
