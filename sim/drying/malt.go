package drying

import (
	"errors"

	"maltwright/sim/air"
)

// Malt is the house's malt as far as drying knows it. The zero value is malt
// of the published constants.
type Malt struct {
	// Factor multiplies every drying rate. It is the house's drying factor,
	// what a weighing corrects; nil means 1. Its spread between houses is taken
	// as 0.2 (calibrated).
	Factor float64

	// Shift moves the equilibrium moisture, kg/kg dry basis, at 20 °C and 60 %
	// relative humidity, and in proportion elsewhere, so that bone-dry air still
	// means bone-dry malt.
	Shift float64
}

// shiftPoint is the equilibrium moisture of barley at 20 °C and 60 % relative
// humidity, kg/kg dry basis, by [asabe-d245]: the moisture at which Malt.Shift
// is stated. A test holds it to Equilibrium.
const shiftPoint = 0.13412

// Check returns a *[air.RangeError] unless Factor is nil or 0.05 to 20 and
// Shift is −0.05 to 0.05.
func (m Malt) Check() error {
	return errors.Join(
		air.Within("drying factor", m.factor(), "", 0.05, 20),
		air.Within("shift of sorption", m.Shift, "kg/kg", -0.05, 0.05),
	)
}

func (m Malt) factor() float64 {
	if m.Factor == 0 {
		return 1
	}
	return m.Factor
}

// sorptionScale is what Shift does to every equilibrium moisture.
func (m Malt) sorptionScale() float64 { return 1 + m.Shift/shiftPoint }

const (
	// DriestX and WettestX bound the moisture, kg/kg dry basis, that malt can
	// be given: 0 to 80 % wet basis.
	DriestX, WettestX = 0.0, 4.0

	// Coldest and Hottest bound the temperature of malt, °C.
	Coldest, Hottest = -20.0, 180.0
)

func checkMoisture(x float64) error {
	return air.Within("moisture, dry basis", x, "kg/kg", DriestX, WettestX)
}

func checkTemperature(t float64) error {
	return air.Within("temperature of the malt", t, "°C", Coldest, Hottest)
}
