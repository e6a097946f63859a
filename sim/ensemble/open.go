package ensemble

import "maltwright/lang/quantity"

// Open is something that a process leaves open.
type Open int

// What can be open.
const (
	LotUptake         Open = iota // how fast the lot takes up water
	LotHuskWater                  // how much its husk and film hold
	LotGrowth                     // how fast it grows
	LotChit                       // how fast it chits
	LotRespiration                // how much it breathes
	HouseWithering                // how fast green malt withers
	KilnDrying                    // how fast the kiln dries
	DryAirMoisture                // the moisture that malt keeps in dry air
	RawMoisture                   // that of the raw grain
	RoomAir                       // the warmth of the room
	RoomHumidity                  // its humidity
	DrawnWater                    // the warmth of the water
	PlaceInBands                  // where in its bands the process is held
	LateUptake                    // what the equations miss of the uptake: how much the core drinks in the end
	LateGrowth                    // what they miss of the growth: its pace late beside early
	LateDrying                    // what they miss of the drying: how fast bound water goes beside free
	LateColour                    // what they miss of how fast heat colours malt
	ThermometerOffset             // how far the thermometer of the house is off
)

// Law is the distribution of what is open.
type Law int

// The laws.
const (
	Normal    Law = iota // around Middle
	LogNormal            // around 1, with the standard deviation of the logarithm
	Even                 // over Band, or over each band of the process
)

// Scatter is how far something open is taken to vary.
type Scatter struct {
	Law        Law
	Middle, SD float64        // of Normal and LogNormal, in the unit of what is open: kg/kg, K, of 1
	Band       quantity.Range // of Even; nothing for all bands of the process
}

// End is an end of a band of the site.
type End struct {
	Open Open
	At   quantity.Quantity
	High quantity.Quantity // of the band, as it is written
}
