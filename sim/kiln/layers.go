package kiln

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// How many layers a bed needs goes by how its air and its kernels keep pace. Air that all of
// the bed could load several times over is full after a part of it: a front stands in the
// bed, and layers must show it. Where the kernels give less than the air could take, they are
// much the same from face to face, and a few layers tell it all. The depth itself hardly
// matters, for a deep bed under much air is like a tray under little.

// Draught is air that a kiln sends through wet malt.
type Draught struct {
	T       float64 // at air-on, °C
	Airflow float64 // m³/s
}

const (
	// layersLeast is the number of layers of a bed of which every kernel meets the
	// same air, and layersEach how many more it takes for each time that the
	// kernels could load the air (numerical: they hold the bounds of docs/model.md, as
	// refine_test.go shows).
	layersLeast = 1.5
	layersEach  = 0.5

	// fewestLayers and mostChosen bound what is chosen (numerical): beyond
	// mostChosen, below some 0.5 m³/h for each kg of green malt, the bounds are no longer held.
	fewestLayers = 2
	mostChosen   = 20

	// usualHeat is the air-on that is reckoned with where none is known, °C
	// (common practice for wet malt).
	usualHeat = 60.0

	// greenMoisture, kg/kg: malt that was dried before lies in as many layers as if it
	// were green, for its heat goes through it in a front too (common practice: 44 to 46 %,
	// wet basis).
	greenMoisture = 0.8
)

// LayersFor gives how many layers a bed of the charge needs under the hardest of the
// draughts: 1.5 + D/2, from 2 to 20, with D how many times over its kernels could load
// the air, D = m·k·X/(g·(W* − W)). m is the dry matter, kg/m²; k the drying constant of the
// charge at air-on, 1/s; X its moisture, kg/kg dry basis, or 0.8 if that is more; g the dry air, kg/(m² s); W its
// humidity ratio and W* that of saturation at its wet bulb. Values outside their ranges,
// which [New] refuses, give any number of them.
func LayersFor(charge Charge, ambient Ambient, material drying.Material, draughts ...Draught) int {
	outside, err := ambient.state()
	if err != nil {
		return fewestLayers
	}
	n := fewestLayers
	for _, d := range draughts {
		n = max(n, layersUnder(d, outside, charge, material))
	}
	return n
}

func layersUnder(d Draught, outside air.State, charge Charge, material drying.Material) int {
	t := min(max(d.T, outside.T), drying.Hottest)
	on := air.State{T: t, W: outside.W, P: outside.P}
	room := air.HumidityRatio(air.Saturation(on.WetBulbNear(t/2)), on.P) - on.W
	x := max(charge.Moisture, greenMoisture)
	k, _, _ := material.Rate(x, t)
	loads := charge.DryMass * k * x * on.Volume() / (d.Airflow * room)
	if !(loads < mostChosen/layersEach) { // or not a number
		return mostChosen
	}
	return min(mostChosen, int(math.Ceil(layersLeast+layersEach*loads)))
}
