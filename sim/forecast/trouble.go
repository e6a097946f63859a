package forecast

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/kiln"
)

// Trouble is something the models met that the process did not intend: one of the types
// of this file. Temperatures are in °C, moistures are of the wet basis, 0 to 1, and all
// else is in SI. Package tell puts it into words.
type Trouble interface {
	Where() source.Place // the statement that it is told of
	When() float64       // s from the first soak
	trouble()
}

// Met is where and when a trouble was met.
type Met struct {
	Place source.Place
	At    float64 // s from the first soak
}

// Where is the place.
func (m Met) Where() source.Place { return m.Place }

// When is the time, s from the first soak.
func (m Met) When() float64 { return m.At }

func (Met) trouble() {}

// VesselFull is a vessel that does not hold the wet grain and its water.
type VesselFull struct {
	Met
	Need  float64 // m³
	Grain float64 // m³ of it that the swollen grain takes when it is drained
}

// OxygenGone is a soak in which the grain stood without oxygen.
type OxygenGone struct {
	Met
	Soak    int     // its number, from 1
	Airless float64 // s
}

// Drowned is a soak in which kernels drown.
type Drowned struct {
	Met
	Soak    int     // its number, from 1
	Airless float64 // s on end in water without oxygen
	Kernels float64 // that have drowned by its end, share of all
}

// NotCovered is a soak in too little water to cover the grain.
type NotCovered struct {
	Met
	Soak  int            // its number, from 1
	Water model.Quantity // as written
	Need  float64        // m³
}

// AirBlown is the air that is blown through a soak by a said amount, enough or not.
type AirBlown struct {
	Met
	Flow model.Quantity // as written
	Each float64        // m³/s for each kg of grain as received
}

// AirDrawn is the air that is drawn through a rest by a said amount, enough or not.
type AirDrawn struct {
	Met
	Flow model.Quantity // as written
	Each float64        // m³/s for each kg of grain as received
	CO2  float64        // of what the grain gives off, in the air that is drawn: a share of its volume
}

// TargetMissed is a steep that ends outside the moisture it aims at.
type TargetMissed struct {
	Met
	Moisture float64
}

// BedWarm is the warmest that a growing piece gets, trouble or not.
type BedWarm struct {
	Met
	Temperature float64
	Stayed      float64 // the warmest whole degree that the warmest of it was above for 3 h in all
	Depth       float64 // m, of the bed at the end
}

// BedOff is a bed that does not keep to the band that it is asked for, by more than a
// kelvin for two days.
type BedOff struct {
	Met
	Cold         bool               // it is below its band; else above
	Asked        *model.Temperature // of the bed, as the hold writes it
	Led          *Leading           // nil where the hold leads it nowhere
	Room         float64            // when the bed was farthest from its band
	Mean, Most   float64            // while it was out of its band, and the farthest: below it of the whole bed, above it of its middle
	Time         float64            // s out of its band
	Later        float64            // s that its growth took longer than in its band; below nil, sooner
	Power, Wants float64            // W: what the floor's heater or cooler has, and what one would need at the most
}

// Leading is how far a bed that is led from one temperature to another was off its line.
type Leading struct {
	Since      float64 // s from when it was spread out, when it first left the line
	Mean, Most float64 // K off the line while it was, of the same part of the bed
}

// BedFrozen is a bed that freezes in a room of so many °C, with which the forecast ends.
type BedFrozen struct {
	Met
	Room float64
}

// AirOnShort is air that does not come on to a bed as it is asked, since cooler or heater
// lack so much power.
type AirOnShort struct {
	Met
	Asked, Got float64
	Short      float64 // W
	ToHold     bool    // it is what would hold the bed in its band, and was not written
	RunsAway   bool    // more lacks once the bed, by that, is far from where it should be
	Bed        BedThen // while its air was so
}

// FanShort is more air than the fan of a floor drives.
type FanShort struct {
	Met
	Asked, Fan model.Quantity // as written
}

// BandOff is a bed that the air blown through it does not keep in its band.
type BandOff struct {
	Met
	Missed BandMissed
}

// RanHot is a bed that nothing cools, and that no band was asked of that it would be told of by: some of it is so hot
// that the grain is lost.
type RanHot struct {
	Met
	Lost    float64 // above which it is
	Highest float64
	Time    float64 // s above that
}

// KilnShort is a kiln that gives another temperature than is asked of it.
type KilnShort struct {
	Met
	Target     kiln.Target
	Asked, Got float64 // where the malt holds it back the mean of the time, else at its end; NaN where that is not forecast
	Limit      kiln.Limit
	Set        quantity.Quantity // as the step writes its temperature
	Time       float64           // s in which it is so
	Late       bool              // it is a roast that ends before it is as hot
	ByDoor     bool              // the heater is too weak for what a door that stands ajar lets out
}

// ByDrying tells whether nothing of the kiln lacks: air-off is held back by the malt that dries
// below it, and air-on goes no farther ahead of it than it may.
func (t KilnShort) ByDrying() bool { return t.Limit == kiln.Unlimited || t.Limit == kiln.ByLead }

// BeyondReach tells whether what the kiln reaches is the reason.
func (t KilnShort) BeyondReach() bool {
	return t.Limit == kiln.ByReachLow || t.Limit == kiln.ByReachHigh
}

// DrumFull is a drum that its malt fills so far that it hardly tumbles.
type DrumFull struct {
	Met
	Malt, Holds float64 // m³
	Weight      float64 // kg of the malt
	Takes       float64 // kg of it that would fill half
}

// Quenched is malt on which water was poured, trouble or not.
type Quenched struct {
	Met
	Water model.Quantity // as written
	kiln.Quenched
	Malt   float64 // kg of its dry matter
	Enough float64 // kg that would bring it to the boil and wet it no more, as of [QuenchedBy]
	Beyond bool    // the malt was where the model ends: what the water does is a coarse sum of heat
}

// Wets tells whether the water leaves the malt wetter than roasted malt may be.
func (q Quenched) Wets() bool {
	if q.Beyond {
		return q.Moisture > surelyWet
	}
	return q.Moisture > quenchedWet
}

// Lacks tells whether all of the water boils off and leaves the malt hot.
func (q Quenched) Lacks() bool { return q.After > quenchedHot }

// CannotCool is malt that is to be cooler than the air of the room.
type CannotCool struct {
	Met
	Asked quantity.Range
	Room  float64
}

// StillWarm is malt that is not as cool as asked when the time of its cooling is over.
type StillWarm struct {
	Met
	Of    string // what is asked to be so cool: malt or air-off
	Asked quantity.Quantity
	Got   float64 // °C, of that
	Malt  float64 // °C, of the warmest malt
	Time  float64 // s that it cooled
}

// AirShort is a step whose air cannot carry the water of the malt away.
type AirShort struct {
	Met
	Water, Carries float64 // kg that the malt has to give off, and that the air takes at the most
	Moisture       float64 // down to which the malt is to be dried
	Took           float64 // s
	Limit          quantity.Quantity
	Charge         quantity.Quantity // as the process writes it
	Driven         *Driven           // nil where the air is there whatever the bed
}

// KilnAirShort is a step on the kiln that asks for more air than fan or draught drive through
// the bed.
type KilnAirShort struct {
	Met
	Asked quantity.Quantity // as written
	Got   float64           // m³/s, the mean of the time
	Time  float64           // s
	Gives float64           // Pa, that drives it
	Takes float64           // Pa, that the air that is asked for would be lost in
	By    Driver
}

// HotWet is malt that is hotter than it bears while it is wet: where it is farthest beyond.
// Less than half an hour of it, or less than a fifth of the bed, is none.
type HotWet struct {
	Met
	Temperature, Moisture, Limit float64
	ByAir                        bool              // the step is set by the air, or by the malt of which only a part gets so hot
	Set                          quantity.Quantity // as the step writes its temperature
	Share                        float64           // of the bed's dry matter that is too hot for half an hour and more, 0 to 1
	Time                         float64           // s for which that is so, in the mean
}

// FloorsApart is a kiln of which the floors hang on each other in such a way that no exhaust was
// found which fits: the forecast of the upper one is then of little worth.
type FloorsApart struct {
	Met
	Rounds        int
	Kelvin, Ratio float64 // what is missing, as in [Fed]
}

// Unable is the end of a forecast that cannot go on. The cause is a [NoMalt], a
// [LongSteep], a [TooDear], or what a model refuses.
type Unable struct {
	Met
	Stage model.StageKind
	Cause error
}

// Troubles gives the troubles of a kind, in their order.
func Troubles[T Trouble](f *Forecast) []T {
	var list []T
	for _, t := range f.Trouble {
		if t, ok := t.(T); ok {
			list = append(list, t)
		}
	}
	return list
}

// BrokenOff tells whether the forecast had to stop before the end of the process;
// its totals are then of what came before.
func (f *Forecast) BrokenOff() bool {
	return slices.ContainsFunc(f.Trouble, func(t Trouble) bool { _, broke := t.(Unable); return broke })
}

// meets is where and when a trouble at a place is met.
func (r *run) meets(place source.Place) Met { return Met{Place: place, At: r.clock} }

func (r *run) trouble(t Trouble) { r.f.Trouble = append(r.f.Trouble, t) }
