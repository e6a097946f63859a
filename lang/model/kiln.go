package model

import "maltwright/lang/source"

// Kiln is a kiln and what it can do.
type Kiln struct {
	Name       string
	Place      source.Place
	Area       *Quantity // nil of a drum
	Weighs     *Quantity // empty
	Airflow    *Quantity
	Fan        []FanPoint // the curve of its fan, by rising flow; none where it is not said
	FanPower   *Quantity  // electric power that its fan draws
	Chimney    *Quantity  // from the bed to the top of it
	Reaches    *Range
	Heater     *Quantity
	Efficiency *Quantity // share of the fuel's heat that reaches the air
	Recovers   *Quantity // share of the heat of the exhaust, above the outside air, that the air coming in is given
	Fired      Word
	Direct     bool // the flue gas passes through the malt
	Flue       Word // direct or indirect, as written; Text "" where it is not said
	Draught    Word // fan, natural or still
	Returns    *Quantity
	Tumbles    bool      // a drum, whose malt is one mixed layer
	Holds      *Quantity // of a drum: its volume
	Walls      *Walls    // nil where nothing is said of them
	Door       *Quantity // the gap at which a still oven's door stands
	AirFrom    *Kiln     // whose exhaust it is given; nil for fresh air
}

// FanPoint is one point of the curve of a fan: at the pressure it gives the flow.
type FanPoint struct {
	Flow     *Quantity
	Pressure *Quantity // across the bed, Pa
	Place    source.Place
}

// Walls are those of a kiln.
type Walls struct {
	Material  Word      // brick, metal, wood or stone
	Area      *Quantity // nil where it is not said
	Insulated bool
	Place     source.Place
}

// Air is what the kiln gives: its airflow where it is said, else the most that its fan gives;
// nil where neither is said.
func (k *Kiln) Air() *Quantity {
	switch {
	case k == nil:
		return nil
	case k.Airflow == nil && len(k.Fan) > 0:
		return k.Fan[len(k.Fan)-1].Flow
	}
	return k.Airflow
}

// BlowsBy gives the statement that says how much air the kiln gives: its curve where it has
// one, its airflow else. Of neither it is the zero Place.
func (k *Kiln) BlowsBy() source.Place {
	switch {
	case k == nil:
	case len(k.Fan) > 0:
		return k.Fan[0].Place
	case k.Airflow != nil:
		return k.Airflow.Place
	}
	return source.Place{}
}

// Upstream lists the kilns that the air of a kiln went through before, the nearest first.
// Those that are led in a circle are each listed once.
func (k *Kiln) Upstream() (list []*Kiln) {
	seen := map[*Kiln]bool{k: true}
	for k != nil && k.AirFrom != nil && !seen[k.AirFrom] {
		k = k.AirFrom
		seen[k] = true
		list = append(list, k)
	}
	return list
}

// Given is what of the power of a heater reaches the air, W: all of it where its efficiency is
// not said. The heater must be said.
func Given(heater, efficiency *Quantity) float64 {
	if efficiency == nil {
		return heater.SI
	}
	return heater.SI * efficiency.SI
}
