package outside

import (
	"math"
	"testing"
)

// wholeKilns are examples from loading to the end of the last kiln beside what the air that they
// are given lets them do, reckoned by hand from the formulas of byhand_test.go, and beside what
// practice has. They try the whole forecast: fan, heater, returns and several kilns.
func wholeKilns() []row {
	list := deep("a tonne in a deep bed, 55 °C", ".", "deep-bed.malt")
	list = append(list, deep("2.5 t in the hall, 55 °C", "hall", "pale.malt")...)
	list = append(list, deep("the mill's tonne, fan with a curve, 60 °C", "mill", "craft.malt")...)
	fresh := spends("a tonne in a deep bed that leads nothing round", ".", "deep-bed.malt")[:1]
	fresh[0] = fresh[0].butMissed(about(1345, 60), "its cure is held by all its air, fresh; the source does not say how much is led round or recovered")
	list = append(list, fresh...)
	list = append(list, spends("the mill's tonne, which leads air round and recovers heat", "mill", "craft.malt")...)
	list = append(list, trays("6 kg on a tray, 50 °C, until 25 %", ".", "pale.malt", 0)...)
	list = append(list, trays("150 kg on a floor kiln over wood, 45 °C, until 25 %", ".", "floor-kiln.malt", 0)...)
	list = append(list, trays("10 lb in a dryer that returns 70 %, 115 °F, until 25 %", "home", "porch.malt", 0.7)...)
	list = append(list, twoFloors()...)
	return each(append(list, drum()...), row.untried)
}

// twoFloors are those of a kiln of two floors, beside the same malt on its lower one alone.
func twoFloors() []row {
	one, two := seenOnce("mill", "one-floor.malt"), seenOnce("mill", "two-floor.malt")
	const what = "the mill's tonne on two floors, the exhaust of the lower through the upper"
	return []row{
		{what: what + ": fuel, of that on one", unit: "%", digits: 0, says: "60–75 (a quarter to two fifths less)", accepted: band{60, 75}, standing: "common practice, from memory",
			model: func(t testing.TB) float64 { return 100 * two(t).Totals.Energy.Fuel / one(t).Totals.Energy.Fuel }},
		{what: what + ": water driven off, more than the moistures of its dry matter say", unit: "%", digits: 2, source: 0, accepted: about(0, 0.01),
			standing: "balance", model: func(t testing.TB) float64 { return two(t).balanced() }},
		{what: what + ": heat that it saves, of what the exhaust brings above outside air", unit: "%", digits: 0, says: "50–100", accepted: band{50, 100}, standing: "first principles; the lower bound is ours",
			model: func(t testing.TB) float64 {
				return 100 * (one(t).Totals.KilnEnergy - two(t).Totals.KilnEnergy) / two(t).Kilns[0].Fed.Heat
			}},
	}
}

// drum is a drum, of which the exhaust can be no fuller than saturated at the heat of the malt, and
// that must warm malt and water, boil the water off and bear what its bare shell loses.
func drum() []row {
	x := seenOnce("mill", "caramel.malt")
	const what = "25 kg of caramel malt in a drum"
	return []row{
		byHand(what+": water until 12 %, of what its vent carries full at the heat of the malt", "%", "10–100", 0, band{10, 100}, x, func(x onKilns) float64 { return x.vented(0.12) }),
		byHand(what+": heat, of that which evaporates its water, warms its malt and air, and leaves by its shell", "%", "95–130", 0, band{95, 130}, x, onKilns.drumHeat),
		{what: what + ": water driven off, more than the moistures of its dry matter say", unit: "%", digits: 2, source: 0, accepted: about(0, 0.01),
			standing: "balance", model: func(t testing.TB) float64 { return x(t).balanced() }},
	}
}

// spends are what a whole kiln takes for a tonne of malt, beside what a trade association gives for its
// maltings, recovery of heat not stated: 750 kWh of gas, and 150 of power for the kiln's fan and
// all else. A fifth is ours.
func spends(what, folder, file string) []row {
	x := seenOnce(folder, file)
	of := func(what, unit, says string, accepted band, figure func(onKilns) float64) row {
		return row{what: what, unit: unit, digits: 0, says: says, accepted: accepted, key: "magb-malt-facts", standing: "seen; the band is ours",
			model: func(t testing.TB) float64 { return figure(x(t)) }}
	}
	return []row{
		of(what+": fuel for a tonne of malt", "kWh", "about 750", band{600, 900}, func(x onKilns) float64 { return x.eachTonne(x.Totals.Energy.Fuel) }),
		of(what+": power for a tonne of malt", "kWh", "at most 150, with all else", band{15, 150}, func(x onKilns) float64 { return x.eachTonne(x.Totals.Energy.Power) }),
	}
}

// seenOnce forecasts an example when it is first asked for.
func seenOnce(folder, file string) func(testing.TB) onKilns {
	var x *onKilns
	return func(t testing.TB) onKilns {
		if x == nil {
			x = new(example(t, folder, file))
		}
		return *x
	}
}

// byHand is a row of what follows from the air alone.
func byHand(what, unit, says string, digits int, accepted band, x func(testing.TB) onKilns, figure func(onKilns) float64) row {
	return row{what: what, unit: unit, says: says, digits: digits, accepted: accepted, standing: "first principles, by hand; the band is ours",
		model: func(t testing.TB) float64 { return figure(x(t)) }}
}

// deep are those of a deep bed: a front climbs through it, above which the malt stands at the wet
// bulb of air-on and all air leaves full. What is not carried until it comes out is the front itself,
// which is a tenth of the bed, the warmth of the malt, and what the malt holds back where it
// is no longer wet; so the bed is between six sevenths and all of what the air could do.
func deep(what, folder, file string) []row {
	x := seenOnce(folder, file)
	free := math.NaN()
	return append([]row{
		byHand(what+": water until the break, of what its air can carry", "%", "85–100", 1, band{85, 100}, x, func(x onKilns) float64 { return x.carried(free, 0) }),
		byHand(what+": air-off from the wet bulb of air-on, at the most, while the front climbs", "K", "0–1", 2, band{0, 1}, x, onKilns.plateau),
		byHand(what+": heat until the break, of that which warms its air", "%", "98–102", 1, band{98, 102}, x, func(x onKilns) float64 { return x.heatByHand(free) }),
		{what: what + ": on the kiln", unit: "h", digits: 1, says: "18–24, ± 2", accepted: band{16, 26}, standing: "common practice of one floor, from memory; two hours are ours",
			model: func(t testing.TB) float64 { return x(t).hours() }},
	}, anyKiln(what, x)...)
}

// trays are those of a bed that is no deeper than a hand: its air leaves long before it is full.
func trays(what, folder, file string, returns float64) []row {
	x := seenOnce(folder, file)
	return append([]row{
		byHand(what+": water by then, of what its air can carry", "%", "50–100", 1, band{50, 100}, x, func(x onKilns) float64 { return x.carried(0.25, returns) }),
	}, anyKiln(what, x)...)
}

// anyKiln are those of every kiln. A kilogram of water takes 2.45 MJ to evaporate [fao-56] and the
// malt and the air are warmed besides.
func anyKiln(what string, x func(testing.TB) onKilns) []row {
	return []row{
		byHand(what+": air-off falls behind the break while air-on does not, at the most", "K", "0–0.1", 2, band{0, 0.1}, x, onKilns.falls),
		{what: what + ": water driven off, more than the moistures of its dry matter say", unit: "%", digits: 2, source: 0, accepted: about(0, 0.01),
			standing: "balance", model: func(t testing.TB) float64 { return x(t).balanced() }},
		{what: what + ": end of the heat, above barley at rest with that air", unit: "points", digits: 1, says: "0–4", accepted: band{0, 4}, key: "asabe-d245",
			standing: "formula, from memory; the upper bound is ours", model: func(t testing.TB) float64 { return x(t).aboveRest() }, basis: sumOnly},
		{what: what + ": heat for a kilogram of water", unit: "MJ", digits: 1, says: "2.45 and more", accepted: atLeast(2.45), key: "fao-56", standing: "seen; a bound",
			model: func(t testing.TB) float64 { return x(t).heatOfWater() }, basis: sumOnly},
	}
}
