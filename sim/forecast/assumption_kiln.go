package forecast

// KilnHeater is a heater that is strong enough.
type KilnHeater struct{ Called string } // as that of FloorArea

// FuelHeat is a heater that burns fuel, and gives all of its heat to the air.
type FuelHeat struct{ Called string } // as that of FloorArea

// KilnFan is what the fan of a kiln works against beside the bed, Pa, and how well, where it is
// not said what it draws.
type KilnFan struct {
	Ducts, Efficiency float64
	Called            string // as that of FloorArea
}

// KilnBreath is the breath of malt on the kiln, which is left out though the malt lies there wet.
type KilnBreath struct{ Called string } // as that of FloorArea

// NothingRecovered is a heat exchanger that is not reckoned: the exhaust of its kiln goes to the
// floor above.
type NothingRecovered struct{ Called string } // as that of FloorArea

// KilnArea is the area of the kiln that the malt lies on, m². Load is the green malt that
// a square metre is taken to hold, kg.
type KilnArea struct {
	Area, Load float64
	Called     string // as that of FloorArea
}

// DrumAir is the air through a drum that does not say it.
type DrumAir struct {
	Flow   float64 // m³/s
	Each   float64 // m³/s for each kg of what comes into it
	Called string  // as that of FloorArea
}

// DrumShell is the shell of a drum that says nothing of its walls: bare, it loses so much.
type DrumShell struct {
	Area   float64 // m²
	At     float64 // °C, the hottest that the drum is set to
	Loses  float64 // W, at that
	Called string  // as that of FloorArea
}

// OvenAir is the air that leaks through an oven without a fan.
type OvenAir struct {
	Flow   float64 // m³/s
	Called string  // as that of FloorArea
}

// KilnAir is the air through a kiln that does not say it.
type KilnAir struct {
	Flow   float64  // m³/s
	Each   float64  // m³/s for each kg of green malt; 0 where it is what the heater warms
	Called string   // as that of FloorArea
	Warmed *float64 // °C that the kiln reaches, where its heater warms no more than this to it; else nil
}

// KilnFresh is a kiln that leads no air back, and does not say so: its heater does not warm so
// much fresh air as it has to what it reaches.
type KilnFresh struct {
	Reaches float64 // °C
	Called  string  // as that of FloorArea
}

// KilnWalls are the walls of a kiln that says what they are made of.
type KilnWalls struct {
	Of          string  // brick, metal, wood or stone
	Area        float64 // m²
	Height      float64 // m, at which they stand around the bed; 0 where their area is said, or of a drum
	Trays       bool    // they are those of a cabinet, around trays one above the other
	Shell       bool    // they are the shell of a drum, whose area is not said
	Thick, Wool float64 // m, of the wall and of what insulates it
	Called      string  // as that of FloorArea
}

// NoWalls is a kiln that says nothing of its walls, and whose heater came to so much of its power
// that what walls take could matter; or a still oven, of whose heat they take the most.
type NoWalls struct {
	Share  float64 // 0 of a still oven whose heater did not
	Called string  // as that of FloorArea
}

// OvenDoor is the door of an oven that stands ajar: so much air leaves by it at so many °C.
type OvenDoor struct {
	Height float64 // m
	Flow   float64 // m³/s
	At     float64 // °C
	Called string  // as that of FloorArea
}

// DoorIdle is a door that stands ajar and moves nothing: an airflow says what does, or the kiln is
// no still oven.
type DoorIdle struct {
	Said   bool   // by an airflow
	Called string // as that of FloorArea
}

// OpenOven is an oven that is opened to cool.
type OpenOven struct{ Called string } // as that of FloorArea

// CoolDraught is what draws in a kiln of natural draught once its fire is out: so many m of air as
// warm as the malt.
type CoolDraught struct {
	Above  float64
	Called string // as that of FloorArea
}

// KilnFlaps are those of a kiln whose heater does not warm all the air that is driven through it to what is asked.
type KilnFlaps struct{ Called string } // as that of FloorArea

// AirOfFloor is what a floor of a kiln takes from the floor below it: the exhaust of the batch
// before, which lies there in the same process, a cycle ahead.
type AirOfFloor struct {
	Floor            string  // the floor below
	Coolest, Warmest float64 // °C as it comes
	Cycle            float64 // s from one batch to the next
	Called           string  // as that of FloorArea
}

// DrivenAir is the air that fan or draught drive through the green malt once it is warm, in the first step that
// dries it.
type DrivenAir struct {
	Flow   float64 // m³/s, at an air-on of so many °C
	At     float64
	Depth  float64 // m, of the bed
	By     Driver
	Flue   float64  // m, of a chimney that draws beside a fan; 0 for none
	Over   string   // the kiln of the bed on the floor above, "" for none
	Most   float64  // Pa, the hardest that a draught pulls of which nothing else is known; 0 for another
	Draws  bool     // what its fan draws is reckoned
	Warmed *float64 // °C that the kiln reaches: no more is let through than its heater warms to it; nil where less comes
	Called string   // as that of FloorArea
}

// DraughtHeight are the heights of warm air that draw in a kiln, m.
type DraughtHeight struct {
	Above, Below float64
	Chimney      bool    // the height above is that of its chimney
	Over         string  // the floor above, "" for none, and
	Between      float64 // how much of the height above lies below that
	Called       string
}
