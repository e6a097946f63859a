package vocabulary

// The words that a program has to know one by one, because it does something else for
// each. The tables are made of them.

// Statements.
const (
	VerbSteep     = "steep"
	VerbRepeat    = "repeat"
	VerbSoak      = "soak"
	VerbRest      = "rest"
	VerbAerate    = "aerate"
	VerbGerminate = "germinate"
	VerbHold      = "hold"
	VerbTurn      = "turn"
	VerbSprinkle  = "sprinkle"
	VerbAir       = "air"
	VerbWither    = "wither"
	VerbKiln      = "kiln"
	VerbDry       = "dry"
	VerbStew      = "stew"
	VerbCure      = "cure"
	VerbRoast     = "roast"
	VerbCool      = "cool"
	VerbStir      = "stir"
	VerbGate      = "gate"
	VerbDeculm    = "deculm"
	VerbStore     = "store"
	VerbRemark    = "remark"
	VerbExpect    = "expect"
	VerbAccept    = "accept"
)

// Places at which a temperature is taken.
const (
	PlaceWater  = "water"
	PlaceBed    = "bed"
	PlaceAir    = "air"
	PlaceRoom   = "room"
	PlaceAirOn  = "air-on"
	PlaceAirOff = "air-off"
	PlaceMalt   = "malt"
	PlaceOven   = "oven"
)

// Measures of a stage.
const (
	MeasureMoisture  = "moisture"
	MeasureWeight    = "weight"
	MeasureChit      = "chit"
	MeasureAcrospire = "acrospire"
	MeasureRub       = "rub"
	MeasureAirOff    = "air-off"
	MeasureMalt      = "malt"
	MeasureBed       = "bed"
	MeasureTime      = "time"
	MeasureBreak     = "break"
)

// Measures of the whole process.
const (
	MeasureTotalTime        = "total time"
	MeasureSteepOutTime     = "steep-out time"
	MeasureSteepOutMoisture = "steep-out moisture"
	MeasureFinalMoisture    = "final moisture"
	MeasureYield            = "yield"
	MeasureMaltWeight       = "malt weight"
)

// What a kernel does when it is rubbed out.
const (
	RubGummy  = "gummy"
	RubGritty = "gritty"
	RubChalky = "chalky"
)

// What a kiln can say.
const (
	FactArea     = "area"
	FactHolds    = "holds"
	FactTumbles  = "tumbles"
	FactDraught  = "draught"
	FactFan      = "fan"
	FactChimney  = "chimney"
	FactRecovers = "recovers"
	FactReturns  = "returns"
	FactDoor     = "door"
	DoorAjar     = "ajar"
)

// What a kiln is fired with, how its flue gas goes and how its air moves.
const (
	FiredElectric = "electric"
	FiredGas      = "gas"
	FiredWood     = "wood"
	FiredOil      = "oil"
	FiredSolar    = "solar"
	FiredPeat     = "peat"

	FlueDirect   = "direct"
	FlueIndirect = "indirect"

	DraughtFan     = "fan"
	DraughtNatural = "natural"
	DraughtStill   = "still"
)

// What the walls of a kiln are made of, and what is round them.
const (
	WallsBrick = "brick"
	WallsMetal = "metal"
	WallsWood  = "wood"
	WallsStone = "stone"

	WithInsulation = "insulation"
)

// What is said of a lot, and what a step is with.
const (
	SaidNo      = "no"
	SaidYes     = "yes"
	SaidNone    = "none"
	SaidFound   = "found"
	SaidUnknown = "unknown"

	WithAir      = "air"
	WithLime     = "lime"
	WithAirflow  = "airflow"
	WithOverflow = "overflow"
	WithSpray    = "spray"
	WithReturns  = "returns"
	WithSmoke    = "smoke"
	WithWater    = "water"
)

// ByMachine is what turns a piece without anybody.
const ByMachine = "machine"

// Thresholds.
const (
	LimitMoisture      = "moisture"
	LimitBed           = "bed-temperature"
	LimitAirless       = "airless-time"
	LimitSteepWater    = "steep-water"
	LimitSoak          = "soak-time"
	LimitTurnGap       = "turn-gap"
	LimitEndMoisture   = "end-moisture"
	LimitWitheringTime = "withering-time"
	LimitRiseRate      = "rise-rate"
	LimitDeculmWait    = "deculm-wait"
	LimitStoreRest     = "store-rest"
)

// Times of day.
const (
	Noon     = "noon"
	Midnight = "midnight"
)

// FactTreated is a fact of a lot: whether its seed was dressed.
const FactTreated = "treated"

// RecordChanged is a line of a record: a step that was done otherwise.
const (
	RecordChanged = "changed"
	RecordCounted = "counted"
	RecordRead    = "read"
	RecordSample  = "sample"
	SampleDried   = "dried"
	RecordPinned  = "pinned"
)

// ClauseBecause gives a reason, ClauseBy says who or how and ClauseEvery how often.
const (
	ClauseBecause = "because"
	ClauseBy      = "by"
	ClauseAt      = "at"
	ClauseEvery   = "every"
	ClauseOn      = "on"
	ClauseOf      = "of"
	ClauseFrom    = "from"
	ClauseUntil   = "until"
	ClauseFor     = "for"
	ClauseOver    = "over"
	ClauseWithin  = "within"
)

// Grains and malts.
const (
	GrainBarley = "barley"

	MaltCaramel = "caramel"
	MaltCrystal = "crystal" // another word for caramel
	MaltChit    = "chit"
	MaltSmoked  = "smoked"
	MaltGreen   = "green"  // malt that has grown and was not dried
	MaltKilned  = "kilned" // malt that was dried, and is to be roasted

	MaltChocolate = "chocolate"
	MaltBlack     = "black"
	MaltRoasted   = "roasted"

	KernelWeight = "kernel-weight"

	FactAlready = "already" // what the lot has been made into before it comes
)
