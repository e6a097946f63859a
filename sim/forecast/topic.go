package forecast

// topic is what an assumption is of; of each there is one.
type topic struct{ of, name string }

// StageOf names the stage for which something was assumed, as Called of the assumptions does: "" where it
// is the only one of its kind, or the assumption is of none.
func StageOf(a Assumption) string { return a.topic().name }

func (RoomAir) topic() topic            { return topic{of: "room air"} }
func (RoomHumidity) topic() topic       { return topic{of: "room humidity"} }
func (DrawnWater) topic() topic         { return topic{of: "water"} }
func (SeaLevel) topic() topic           { return topic{of: "height"} }
func (GrainMoisture) topic() topic      { return topic{of: "grain moisture"} }
func (GrownBefore) topic() topic        { return topic{of: "growth"} }
func (KernelWeight) topic() topic       { return topic{of: "kernel weight"} }
func (Germination) topic() topic        { return topic{of: "germination"} }
func (SoakWater) topic() topic          { return topic{of: "soak water"} }
func (MixedWater) topic() topic         { return topic{of: "mixed water"} }
func (Sprayed) topic() topic            { return topic{of: "spray"} }
func (EvenTurns) topic() topic          { return topic{of: "turns"} }
func (DrainedDepth) topic() topic       { return topic{of: "drained depth"} }
func (BlownAir) topic() topic           { return topic{of: "blown air"} }
func (a FollowingAir) topic() topic     { return topic{"following air", a.Called} }
func (a RoomAirBlown) topic() topic     { return topic{"room air blown", a.Called} }
func (WashedAir) topic() topic          { return topic{of: "washed air"} }
func (a BoxPlant) topic() topic         { return topic{"plant", a.Floor} }
func (FanPressure) topic() topic        { return topic{of: "fan pressure"} }
func (FanWarms) topic() topic           { return topic{of: "fan warmth"} }
func (a FloorArea) topic() topic        { return topic{"floor", string(a.Stage) + a.Called} }
func (BedHeld) topic() topic            { return topic{of: "held"} }
func (MoistAir) topic() topic           { return topic{of: "moist air"} }
func (a WitherAir) topic() topic        { return topic{"wither air", a.Called} }
func (GateWait) topic() topic           { return topic{of: "gate"} }
func (a KilnHeater) topic() topic       { return topic{"heater", a.Called} }
func (a FuelHeat) topic() topic         { return topic{"fuel", a.Called} }
func (a KilnFan) topic() topic          { return topic{"kiln fan", a.Called} }
func (a NothingRecovered) topic() topic { return topic{"recovery", a.Called} }
func (a KilnBreath) topic() topic       { return topic{"kiln breath", a.Called} }
func (a KilnArea) topic() topic         { return topic{"kiln", a.Called} }
func (a DrumAir) topic() topic          { return topic{"drum air", a.Called} }
func (a DrumShell) topic() topic        { return topic{"drum shell", a.Called} }
func (a OvenAir) topic() topic          { return topic{"oven air", a.Called} }
func (a KilnAir) topic() topic          { return topic{"kiln air", a.Called} }
func (a KilnFlaps) topic() topic        { return topic{"flaps", a.Called} }
func (a KilnFresh) topic() topic        { return topic{"fresh air", a.Called} }
func (a AirOfFloor) topic() topic       { return topic{"air of floor", a.Called} }
func (a DrivenAir) topic() topic        { return topic{"driven air", a.Called} }
func (a DraughtHeight) topic() topic    { return topic{"draught height", a.Called} }
func (a KilnWalls) topic() topic        { return topic{"walls", a.Called} }
func (a NoWalls) topic() topic          { return topic{"no walls", a.Called} }
func (a OvenDoor) topic() topic         { return topic{"door", a.Called} }
func (a DoorIdle) topic() topic         { return topic{"idle door", a.Called} }
func (a OpenOven) topic() topic         { return topic{"open oven", a.Called} }
func (a CoolDraught) topic() topic      { return topic{"cool draught", a.Called} }
func (DeculmTime) topic() topic         { return topic{of: "deculming"} }
func (ScaleError) topic() topic         { return topic{of: "scale"} }
func (a StepByHeat) topic() topic       { return topic{"step by heat", a.Step} }
func (a Learnt) topic() topic           { return topic{string(a.Figure), a.Of} }
func (AirGoverns) topic() topic         { return topic{of: "air governs"} }
