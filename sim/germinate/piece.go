package germinate

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/grain"
	"maltwright/sim/work"
)

// Floor is where the piece lies.
type Floor struct {
	Area float64 // m², 0.001 to 1e6; the piece is spread over all of it
	Mesh bool    // open below: the underside dries like the upper face
}

// Piece is a bed of germinating or withering grain. Copy it with an assignment.
// Make it with [New].
type Piece struct {
	lot     grain.Lot
	solid   *solid
	dryHeat float64 // specific heat of the dry matter, J/(kg K)
	floor   Floor
	leached float64 // kg
	brought float64 // water that neither growth nor evaporation explains, kg
	chitted float64 // share of kernels
	due     float64 // share of germinable kernels whose chit is due
	y       vector

	age       float64 // s
	sinceTurn float64 // s
	longest   float64 // longest time between turns so far, s
	turns     int
	room      Room    // last stood in
	hottest   float64 // °C, anywhere in the bed, since New

	startHeat float64 // J
	start     float64 // dry matter respired before New, kg
	removed   float64 // heat taken out by the hold, J
	sprinkled float64 // J, brought by sprinkling
	kept      float64 // wet-basis moisture that the piece was laid out with, or sprinkled to since

	meter *work.Meter
}

// The integrated quantities.
const (
	heat     = iota // H, J from 0 °C
	excess          // middle over face, K
	deficit         // water the open face is short of, kg/m²
	respired        // dry matter, kg, since the grain was raw
	dried           // water evaporated since New, kg
	clock           // °C·h
	lost            // heat to the room, J
	vapour          // heat gone with the vapour, J
	held            // heat put in by the hold, J
	cooled          // the part of the heat taken out that the cooler took, J
	warmed          // the part of the heat put in that the heater gave, J
	debt            // share by which it grows and breathes less, see [grain.Lot.DebtRate]
	quantities
)

type vector [quantities]float64

// plus returns y + h·d.
func (y vector) plus(h float64, d *vector) vector {
	for i := range y {
		y[i] += h * d[i]
	}
	return y
}

// Meter has the piece, and every copy of it, spend what it does from a meter. Once that
// is used up Advance returns its error.
func (p *Piece) Meter(m *work.Meter) { p.meter = m }

// New spreads the batch, grain that dries as the material does, all of it at t °C (−1 to 60), over the floor. It
// returns the errors of [grain.Batch.Check] and of the material, and *[air.RangeError] for a floor
// or a temperature out of range, or a bed thinner than 2 mm or deeper than 2 m.
func New(b grain.Batch, material drying.Material, floor Floor, t float64) (Piece, error) {
	if err := errors.Join(b.Check(), material.Check()); err != nil {
		return Piece{}, err
	}
	err := errors.Join(
		air.Within("floor area", floor.Area, "m²", 1e-3, 1e6),
		air.Within(bedTemperature, t, "°C", lowestRun, highestRun),
		air.Within("depth of the bed", b.BedVolume()/floor.Area, "m", thinnestBed, deepestBed),
	)
	if err != nil {
		return Piece{}, err
	}
	lot := b.Lot
	p := Piece{lot: lot, solid: newSolid(material), dryHeat: material.DryHeat(), floor: floor, leached: b.Leached, chitted: b.Chitted, hottest: t}
	p.brought = b.Water - grain.StarchWater*b.Respired
	p.start = b.Respired
	p.y[respired], p.y[clock], p.y[debt] = b.Respired, b.Clock, b.Debt
	p.due = lot.Profile.Due(b.Clock)
	p.setT(t)
	p.kept = p.Moisture()
	p.y[held] = 0
	p.startHeat = p.y[heat]
	return p, nil
}

// bedTemperature is what an [air.RangeError] calls that of the bed.
const bedTemperature = "bed temperature"

// Frozen tells whether an error is the refusal of a bed that freezes.
func Frozen(err error) bool {
	var out *air.RangeError
	return errors.As(err, &out) && out.Quantity == bedTemperature && out.Value < out.Low
}

const (
	lowestBed, highestBed = 0.0, 45.0  // °C, that a bed can be held at
	lowestRun, highestRun = -1.0, 60.0 // °C: frozen, and long dead
	thinnestBed           = 0.002      // m, a single kernel
	deepestBed            = 2.0        // m
)

// setT moves the bed to t °C and books the heat as held.
func (p *Piece) setT(t float64) {
	h := p.capacity(&p.y) * t
	p.y[held] += h - p.y[heat]
	p.y[heat] = h
}

func (p *Piece) dry(y *vector) float64 { return p.lot.DryMass - p.leached - y[respired] }

func (p *Piece) water(y *vector) float64 {
	return p.brought + grain.StarchWater*y[respired] - y[dried]
}

// capacity is the heat capacity of the bed, J/K.
func (p *Piece) capacity(y *vector) float64 {
	return p.dryHeat*p.dry(y) + air.WaterHeat*p.water(y)
}

// warmestPlace is the warmest place in the bed, °C.
func (p *Piece) warmestPlace() float64 {
	return p.T() + math.Max(p.y[excess]/3, -2*p.y[excess]/3)
}
