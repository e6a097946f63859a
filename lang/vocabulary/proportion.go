package vocabulary

import q "maltwright/lang/quantity"

// Proportion is which ratios of two facts make sense: the grain on each square metre
// of a floor, the air for each kilogram. Its bands are of the first for one of the
// second.
type Proportion struct {
	Name     string  // "floor-load"
	Of       string  // what is shared out: "grain"
	On       string  // what it is shared over, as a message has it: "floor"
	Unit     string  // one of which the bands are for: "m2"
	Can      q.Range // a fault outside it
	Usual    q.Range // a caution outside it
	AtLeast  bool    // only too little of it cannot be
	Counts   string  // what it is told as a number of: divisions; "" for an amount for each of the unit
	Standing string
	Doc      string
	Little   string // what to look at where it is too little
}

// Charged is what the charge of a process is, as one of the two facts.
const Charged = "grain"

// The names of the proportions.
const (
	FloorLoad  = "floor-load"
	KilnLoad   = "kiln-load"
	AirOfBox   = "box-air"
	AirOfArea  = "kiln-air"
	AirOfOven  = "oven-air"
	AirOfGrain = "air-for-grain"
	WaterRoom  = "vessel-room"
	HeatOfAir  = "heat-for-air"
	HeatOfArea = "heat-for-kiln"
	PowerOfFan = "fan-power"
	WallsRound = "walls-of-kiln"
	Sprinkled  = "sprinkled"
	SprinkledW = "sprinkled-by-weight"

	VesselWeight = "vessel-weight"
	TrayWeight   = "tray-weight"
	ScaleMarks   = "scale-divisions"
	BagMarks     = "bag-divisions"
)

var ratios = []Proportion{
	{Name: FloorLoad, Of: Charged, On: "floor", Unit: "m2", Can: band("0.05 to 700 kg"), Usual: band("1 to 700 kg"),
		Standing: "1 kg is less than a layer one kernel deep, 550 to 600 kg is a box 1.2 m deep with air blown through: Owens 2001",
		Doc:      "raw grain of the charge on each square metre of the floor it grows or withers on"},
	{Name: KilnLoad, Of: Charged, On: "kiln", Unit: "m2", Can: band("0.05 to 600 kg"), Usual: band("0.8 to 600 kg"),
		Standing: "600 kg is green malt 1.7 m deep; rule kiln-too-deep judges the depth: " + practice,
		Doc:      "raw grain of the charge on each square metre of the kiln"},
	{Name: AirOfBox, Of: "air", On: "floor", Unit: "m2", Can: band("0.004 to 7000 m3/h"), Usual: band("3 to 1500 m3/h"),
		Standing: "270 m3/h is 480 m3/h for a tonne that lies a metre deep, 3 m3/h the same air through a hand's breadth of kernels; above 1500 m3/h no bed of them gains by more: " + practice,
		Doc:      "airflow through each square metre of a floor that air is blown through",
		Little:   "look at both numbers and their units"},
	{Name: AirOfArea, Of: "air", On: "kiln", Unit: "m2", Can: band("0.1 to 10000 m3/h"), Usual: band("25 to 4000 m3/h"),
		Standing: "0.7 cm/s to a metre a second, at which kernels begin to dance: " + practice,
		Doc:      "airflow through each square metre of a kiln with a draught",
		Little:   "look at both numbers and their units; for an oven without a fan, write draught still"},
	{Name: AirOfOven, Of: "air", On: "still oven", Unit: "m2", Can: band("0.1 to 10000 m3/h"), Usual: band("3 to 80 m3/h"),
		Standing: "what leaks, or leaves by a door ajar: 17 m3/h by a slit of 5 cm by half a metre at 80 °C (derived); " + practice,
		Doc:      "airflow of each square metre of an oven with draught still"},
	{Name: AirOfGrain, Of: "air", On: "grain", Unit: "kg", Can: band("0.01 to 10000 m3/h"), Usual: band("0.3 to 1000 m3/h"),
		Standing: "deep beds have 4 to 5 m3/h for each kg of malt: " + practice,
		Doc:      "airflow of the kiln for each kilogram of raw grain of the charge"},
	{Name: WaterRoom, Of: "room", On: "grain", Unit: "kg", AtLeast: true, Can: band("1.3 to 5000000 l"), Usual: band("1.3 to 1000 l"),
		Standing: "dry grain alone fills 1.3 to 1.7 l: " + practice,
		Doc:      "volume of the vessel for each kilogram of raw grain; rule vessel-too-small judges what the swollen grain needs"},
	{Name: HeatOfAir, Of: "heat", On: "air", Unit: "m3/h", Can: band("0.1 W to 5 kW"), Usual: band("2 to 200 W"),
		Standing: "a third of a watt warms one m3/h by 1 °C: " + practice,
		Doc:      "power of the heater for each cubic metre an hour of the air of a kiln with a draught"},
	{Name: HeatOfArea, Of: "heat", On: "kiln", Unit: "m2", Can: band("5 W to 1000 kW"), Usual: band("150 W to 60 kW"),
		Standing: practice,
		Doc:      "power of the heater for each square metre of the kiln or oven"},
	{Name: PowerOfFan, Of: "power", On: "air", Unit: "m3/h", Can: band("0.0005 to 50 W"), Usual: band("0.005 to 3 W"),
		Standing: "0.2 W drive one m3/h against 400 Pa at an efficiency of a half, and 3 W warm it by 9 °C (derived): " + practice,
		Doc:      "electric power of a fan for each cubic metre an hour of its air",
		Little:   "look at both numbers and their units"},
	{Name: WallsRound, Of: "wall", On: "kiln", Unit: "m2", Can: band("0.05 to 1000 m2"), Usual: band("0.3 to 60 m2"),
		Standing: "a room of 12 m2 and 3 m high has 54 m2 with its ceiling, a cabinet of ten trays half of their area: " + practice,
		Doc:      "area of the walls of a kiln for each square metre that malt lies on"},
	{Name: Sprinkled, Of: "water", On: "grain", Unit: "kg", Can: band("0.0005 to 2 l"), Usual: band("0.004 to 0.25 l"),
		Standing: "60 to 140 l a tonne in all make a bed with air blown through moist again (derived): " + practice,
		Doc:      "water of one sprinkling, by volume, for each kilogram of raw grain"},
	{Name: SprinkledW, Of: "water", On: "grain", Unit: "kg", Can: band("0.0005 to 2 kg"), Usual: band("0.004 to 0.25 kg"),
		Standing: "as by volume",
		Doc:      "water of one sprinkling, by weight, for each kilogram of raw grain"},
	{Name: VesselWeight, Of: "empty weight", On: "room", Unit: "l", Can: band("0.0001 to 100 kg"), Usual: band("0.004 to 4 kg"),
		Standing: "a thin plastic tub has 20 g and more for each litre, cast iron up to 2 kg: " + practice,
		Doc:      "what an empty vessel weighs for each litre that it holds"},
	{Name: TrayWeight, Of: "empty weight", On: "floor", Unit: "m2", Can: band("0.005 to 10000 kg"), Usual: band("0.1 to 1500 kg"),
		Standing: "a cloth in a frame has 1 kg for each square metre, an oven some 200 kg: " + practice,
		Doc:      "what an empty floor, tray or kiln weighs for each square metre of it"},
	{Name: ScaleMarks, Of: "load", On: "division", Unit: "g", Counts: "divisions", Can: band("0.01 to 100000 kg"), Usual: band("0.1 to 1000 kg"),
		Standing: "scales of the trade have 1000 to 10000 divisions, those of a kitchen and of a laboratory as well more: " + practice,
		Doc:      "what a scale holds for each gram of its division"},
	{Name: BagMarks, Of: "bag", On: "division", Unit: "g", Counts: "divisions", AtLeast: true, Can: band("0.001 to 100000 kg"), Usual: band("0.015 to 100000 kg"),
		Standing: "with 15 divisions, and half as many again wet, a scale gives the weight to 1.3 %, and so the moisture to 0.7 points (derived)",
		Doc:      "raw grain in the marked bag for each gram of the division of the finest scale that takes it",
		Little:   "put more grain into the bag, or weigh it on a finer scale: so few divisions do not show the moisture"},
}

// FindProportion finds a proportion by its name.
func FindProportion(name string) (Proportion, bool) {
	for _, p := range ratios {
		if p.Name == name {
			return p, true
		}
	}
	return Proportion{}, false
}
