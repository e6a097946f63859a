package tell

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/sim/air"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/infer/learn"
)

// Dearest says what to look for where forecasts cost too much together.
const Dearest = "work that repeats every few minutes, or goes on for months, takes most of them"

// DearestOf says it of a forecast that is known.
func DearestOf(f *forecast.Forecast) string {
	if list := forecast.Troubles[forecast.HeatsItself](f); len(list) > 0 {
		return fmt.Sprintf("the kiln stands almost without air for %s", quantity.Lasting(list[0].Time))
	}
	return Dearest
}

// Cause says in one line why a forecast ended, or could not begin.
func Cause(err error, units quantity.System) string {
	var long forecast.LongSteep
	var dear forecast.TooDear
	var forgotten follow.Forgotten
	var many learn.TooMany
	var water forecast.MuchWater
	var unlearnt learn.TooDear
	switch {
	case errors.Is(err, forecast.ErrNothing):
		return "the process does not say what grain it is made from"
	case errors.Is(err, forecast.NoMalt{}):
		return "no malt comes to it: the process has no kiln stage before it"
	case errors.As(err, &long):
		return fmt.Sprintf("the steep lasts over %.0f days, and the grain in it is dead", long.Most/86400)
	case errors.As(err, &water):
		return muchWater(water, units)
	case errors.As(err, &dear):
		return tooDear(dear)
	case errors.As(err, &forgotten):
		return fmt.Sprintf("the record has no line for %.0f days, and none that ends the batch; a batch is followed for %.0f days after its last reading", forgotten.Silent/86400, forgotten.Most/86400)
	case errors.As(err, &many):
		return fmt.Sprintf("there are %d batches, and learn takes %d at most; leave the oldest out", many.Batches, many.Most)
	case errors.As(err, &unlearnt):
		return fmt.Sprintf("one forecast of it takes over %d steps of the model, and hundreds of forecasts are needed; %s", unlearnt.Most, Dearest)
	}
	said := err.Error()
	for _, r := range refusals(err) {
		said = strings.Replace(said, r.Error(), refused(*r, units), 1)
	}
	return strings.ReplaceAll(said, "\n", "; ")
}

func tooDear(e forecast.TooDear) string {
	why := fmt.Sprintf("a forecast may take %d million steps of the model", e.Most/1_000_000)
	if math.IsNaN(e.Share) {
		return why + ", and this one takes more"
	}
	return fmt.Sprintf("%s, and most of them go into this, %.0f %%", why, 100*e.Share)
}

// refusals lists what models refused, through all that wraps it.
func refusals(err error) []*air.RangeError {
	switch e := err.(type) {
	case *air.RangeError:
		return []*air.RangeError{e}
	case interface{ Unwrap() error }:
		if inner := e.Unwrap(); inner != nil {
			return refusals(inner)
		}
	case interface{ Unwrap() []error }:
		var list []*air.RangeError
		for _, inner := range e.Unwrap() {
			list = append(list, refusals(inner)...)
		}
		return list
	}
	return nil
}

// refused says in the units of the house what a model refused.
func refused(e air.RangeError, units quantity.System) string {
	turn := func(unit string, into func(float64) float64) {
		e.Unit, e.Value, e.Low, e.High = unit, into(e.Value), into(e.Low), into(e.High)
	}
	as, isBritish := british[e.Unit]
	switch {
	case e.Unit == "°C" && units.Fahrenheit:
		turn("°F", quantity.Fahrenheit)
	case isBritish && units.British:
		turn(as.unit, func(x float64) float64 { return x / as.size })
	}
	return e.Error()
}

// british has, for a unit of the models, that in which a house of pounds and feet reads
// it, and how much of the first it is.
var british = map[string]struct {
	unit string
	size float64
}{
	"kg": {"lb", quantity.Pound}, "m": {"in", quantity.Inch}, "m²": {"ft2", quantity.Foot * quantity.Foot},
	"m³/s": {"cfm", one("cfm")}, "W": {"Btu/h", one("Btu/h")}, "m/s": {"ft/min", one("ft/min")},
	"kg/m³": {"lb/ft3", quantity.Pound / one("ft3")}, "l/kg": {"gal-us/lb", 1000 * one("gal-us") / quantity.Pound},
}

// one is one of a unit of the language in SI.
func one(unit string) float64 {
	u, _ := quantity.Lookup(unit)
	return u.Factor
}
