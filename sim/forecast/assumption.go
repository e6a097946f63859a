package forecast

import (
	"time"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// Assumption is something the forecast had to take for granted: one of the types of this
// file. Temperatures are in °C, moistures and humidities are shares of 1, and all else is
// in SI. Package tell puts it into words.
type Assumption interface{ topic() topic }

// RoomAir is the air of the room. Band is what the site says, nil where it is silent.
type RoomAir struct {
	Temperature float64
	Band        *model.Range
}

// RoomHumidity is the humidity of that air.
type RoomHumidity struct {
	Humidity float64
	Band     *model.Range
}

// DrawnWater is the water as it is drawn.
type DrawnWater struct {
	Temperature float64
	Band        *model.Range
}

// SeaLevel is the height of a site that does not say it.
type SeaLevel struct{}

// GrainMoisture is that of a lot of which it is not written.
type GrainMoisture struct {
	Moisture float64
	Green    bool // the lot is green malt
	Kilned   bool // the lot is malt
}

// GrownBefore is how far a lot that comes as green malt has grown: the mean acrospire, as a
// share of the kernel.
type GrownBefore struct{ Acrospire float64 }

// KernelWeight is the usual weight of a thousand kernels.
type KernelWeight struct {
	Thousand float64 // kg
	Species  string
}

// Germination is that of a lot that was not tested.
type Germination struct{ Share float64 }

// SoakWater is the water of each soak.
type SoakWater struct{ Each float64 } // m³ for each kg of grain

// MixedWater is water of which it is said how much, and that comes to one temperature with
// the grain.
type MixedWater struct{ Grain float64 } // °C, before the first soak

// Sprayed is a spray of which it is not said how much.
type Sprayed struct{}

// EvenTurns are turns at times of day, of a batch of which it is not known when it begins:
// the first comes so long after the piece is spread, and each so long after the last.
type EvenTurns struct {
	Every   model.Quantity // the mean of the times between
	Written string
}

// DrainedDepth is how deep the drained grain lies in its rests, m.
type DrainedDepth struct{ Depth float64 }

// BlownAir is air that is blown through soak water at intervals, by a pump on a timer.
type BlownAir struct{ Brings float64 } // of the oxygen that is missing, each time

// FloorArea is the part of a floor on which the piece lies, m². Depth is that at which it
// is taken to lie; 0 where the floor has room for more, and the kernels lie one deep.
type FloorArea struct {
	Stage       model.StageKind
	Called      string // the stage, as in germinate 2; "" where it is the only one of its kind
	Area, Depth float64
}

// BedHeld is a hold that does not say what it holds.
type BedHeld struct{}

// MoistAir is the humidity over a growing piece.
type MoistAir struct{ Humidity float64 }

// FollowingAir is air that a fan blows through a bed at full speed, as warm as holds the
// bed.
type FollowingAir struct {
	Flow   float64 // m³/s
	Called string  // as that of FloorArea
}

// RoomAirBlown is air of the room that a fan blows through a bed at full speed, as it is.
type RoomAirBlown struct {
	Flow   float64 // m³/s
	Called string  // as that of FloorArea; wither, where it is not the growing bed
}

// AirGoverns is a bed that is to be held, as warm as the air makes it that is written beside
// its hold.
type AirGoverns struct{ Hold *model.Temperature }

// WashedAir is the humidity of air that is sprayed before it comes on to a bed.
type WashedAir struct{ Humidity float64 }

// BoxPlant is what a box or drum is taken not to have.
type BoxPlant struct {
	Floor              string
	NoCooler, NoHeater bool
}

// FanPressure is what the fan of a box works against beside the bed, Pa, and how well.
type FanPressure struct{ Ducts, Efficiency float64 }

// FanWarms is where the fan of a box stands that says what it draws: before spray and cooler, which
// then make the air that is asked out of air that is the warmer for it.
type FanWarms struct{}

// WitherAir is the air over a withering piece.
type WitherAir struct {
	Speed       float64 // m/s
	Humidity    float64
	Temperature float64
	Called      string // as that of FloorArea
}

// GateWait is the longest wait at a gate that does not say one.
type GateWait struct{ Most float64 } // s

// DeculmTime is how long the rootlets take to come off.
type DeculmTime struct{ Takes float64 } // s

// ScaleError is the error of a scale that does not say its division, as a share of what it
// shows. A forecast weighs nothing: it is what the readings of a record are taken to have.
type ScaleError struct{ Share float64 }

// StepByHeat is a step of the kiln that a record does not name, and in which a reading of the
// air onto the malt puts the batch: of those steps its heat fits that one best.
type StepByHeat struct {
	Read string // as written: air-on 65 °C
	At   time.Time
	Step string // dry 2
}

// Learnt is a factor that was learnt in the house.
type Learnt struct {
	Used
	House string
}

// Figure is a figure that a house can learn.
type Figure string

// The figures.
const (
	Uptake      Figure = "uptake"
	HuskWater   Figure = "husk-water"
	Chit        Figure = "chit"
	Growth      Figure = "growth"
	Respiration Figure = "respiration"
	Withering   Figure = "withering"
	Drying      Figure = "drying"
)

// Used is a figure that the house has learnt and the forecast went by.
type Used struct {
	Figure Figure
	Of     string // the lot or the kiln that it was learnt of; "" for one of the house
	Factor model.Factor
}

// assume takes something for granted, and tells whether it was not yet.
func (r *run) assume(a Assumption) bool {
	for _, known := range r.f.Assumed {
		if known.topic() == a.topic() {
			return false
		}
	}
	r.f.Assumed = append(r.f.Assumed, a)
	return true
}

// limits is the time of a step as it is written that bounds it; nothing where none does.
func limits(s asked) quantity.Quantity {
	switch {
	case s.For != nil:
		return s.For.Quantity
	case s.Over != nil && !s.heldOn():
		return s.Over.Quantity
	case s.Allow != nil && s.Allow.Latest != nil:
		return s.Allow.Latest.Quantity
	}
	return quantity.Quantity{}
}

// setTo is the temperature of a step as it is written; nothing where it has none.
func setTo(s asked) quantity.Quantity {
	for _, at := range []*model.Temperature{s.At, s.From} {
		if at != nil {
			return at.High
		}
	}
	return quantity.Quantity{}
}
