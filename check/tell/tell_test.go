package tell

import (
	"cmp"
	"math"
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source/declaration"
	"maltwright/sim/air"
	"maltwright/sim/forecast"
	"maltwright/sim/kiln"
)

var (
	metric = quantity.System{}
	pounds = quantity.System{Fahrenheit: true, British: true}
)

const simulator = "maltwright/sim/forecast"

func bedBand(t *testing.T, low, high string) *model.Temperature {
	return &model.Temperature{Range: model.Range{Range: quantity.Range{Low: written(t, low), High: written(t, high)}}}
}

func written(t *testing.T, text string) quantity.Quantity {
	t.Helper()
	q, err := quantity.Parse(text)
	require.NoError(t, err)
	return q
}

// typesOf lists the types that a table has rows of, by name.
func typesOf[I, S any](rows table[I, S]) []string {
	var list []string
	for of := range rows {
		list = append(list, of.Name())
	}
	return list
}

func TestEveryTroubleAndEveryAssumptionHasItsSentence(t *testing.T) {
	assert.ElementsMatch(t, declaration.Types(t, simulator, "Trouble"), append(typesOf(troubles), "Met"), "Met is a part of each")
	assert.ElementsMatch(t, declaration.Types(t, simulator, "Assumption"), typesOf(assumptions))
}

type untoldTrouble struct {
	forecast.Met
	Figure int
}

func TestWhatHasNoRowIsToldByItsValues(t *testing.T) {
	assert.Contains(t, Trouble(untoldTrouble{Figure: 3}, metric), "Figure:3")
	assert.Equal(t, "<nil>", Assumption(nil, metric).What)
}

func TestTroublesAreToldInTheUnitsOfTheHouse(t *testing.T) {
	bedBand := func(low, high string) *model.Temperature { return bedBand(t, low, high) }
	seen := map[reflect.Type]bool{}
	for _, c := range []struct {
		of             forecast.Trouble
		metric, pounds string // the second is "" where it is the same
	}{
		{forecast.VesselFull{Need: 0.0123}, "the swollen grain with its water needs 12 l", "the swollen grain with its water needs 3.2 gal-us"},
		{forecast.Drowned{Soak: 1, Airless: 40 * 3600, Kernels: 0.417}, "the grain stands in water without oxygen for 1 d 16 h without a break in soak 1: 42 of 100 kernels drown, and the forecast goes on with the rest", ""},
		{forecast.OxygenGone{Soak: 2, Airless: 3 * 3600}, "the grain stands in water without oxygen for 3 h in soak 2", ""},
		{forecast.TargetMissed{Moisture: 0.4234}, "the steep ends at 42.3 % moisture", ""},
		{forecast.BedWarm{Temperature: 21.4, Depth: 0.1}, "the piece gets 21.4 °C warm between turns in a bed 10 cm deep", "the piece gets 70.5 °F warm between turns in a bed 3.9 in deep"},
		{forecast.BedOff{Cold: true, Asked: bedBand("14 °C", "17 °C"), Room: 4, Mean: 8.4, Most: 6.1, Later: 52 * 3600},
			"the process holds the bed at 14 to 17 °C, and in a room of 4 °C it gets to 8 °C on average and 6 °C at its coldest, so its growth takes 2 d 4 h longer", ""},
		{forecast.BedOff{Cold: true, Asked: bedBand("57 °F", "62 °F"), Room: 4, Mean: 8.4, Most: 6.1, Power: 20},
			"the process holds the bed at 57 to 62 °F, and in a room of 39 °F with a heater of 20 W it gets to 47 °F on average and 43 °F at its coldest", ""},
		{forecast.BedOff{Asked: bedBand("14 °C", "17 °C"), Room: 22, Mean: 25, Most: 28, Later: -30 * 3600},
			"the process holds the bed at 14 to 17 °C, and in a room of 22 °C its middle gets to 25 °C on average and 28 °C at its warmest, so its growth ends 1 d 6 h sooner", ""},
		{forecast.BedOff{Asked: bedBand("17 °C", "13 °C"), Led: &forecast.Leading{Since: 30 * 3600, Mean: 1.62, Most: 2.48}, Room: 14, Mean: 15, Most: 15.5},
			"the process leads the bed from 17 to 13 °C, and in a room of 14 °C its middle lies above that from day 2 on, by 1.6 °C on average and 2.5 °C at most", ""},
		{forecast.BedOff{Cold: true, Asked: bedBand("63 °F", "55 °F"), Led: &forecast.Leading{Mean: 1, Most: 2}, Room: 4, Mean: 8.4, Most: 6.1},
			"the process leads the bed from 63 to 55 °F, and in a room of 39 °F it lies below that from day 1 on, by 1.8 °F on average and 3.6 °F at most", ""},
		{forecast.BedFrozen{Room: -6}, "the growing piece freezes in a room of -6 °C", "the growing piece freezes in a room of 21.2 °F"},
		{forecast.AirOnShort{Asked: 12, Got: 14.24, Short: 1234},
			"the process asks for air-on of 12 °C, and the air comes on at 14.2 °C: the cooler lacks 1.2 kW", "the process asks for air-on of 53.6 °F, and the air comes on at 57.6 °F: the cooler lacks 1.2 kW"},
		{forecast.AirOnShort{Asked: 14, Got: 9, Short: 300, ToHold: true},
			"the bed needs air-on of 14 °C to stay in its band, and the air comes on at 9 °C: the heater lacks 300 W",
			"the bed needs air-on of 57.2 °F to stay in its band, and the air comes on at 48.2 °F: the heater lacks 300 W"},
		{forecast.AirOnShort{Asked: 17.5, Got: 4.9, Short: 4900, ToHold: true, Bed: forecast.BedThen{Time: 1, Mean: 6, Most: 5, Later: 70 * 3600}},
			"the bed needs air-on of 17.5 °C to stay in its band, and the air comes on at 4.9 °C: the heater lacks 4.9 kW; the middle of the bed then gets to 6 °C on average and 5 °C at its coldest, so its growth takes 2 d 22 h longer",
			"the bed needs air-on of 63.5 °F to stay in its band, and the air comes on at 40.8 °F: the heater lacks 4.9 kW; the middle of the bed then gets to 43 °F on average and 41 °F at its coldest, so its growth takes 2 d 22 h longer"},
		{forecast.AirOnShort{Asked: 13, Got: 16, Short: 3000, RunsAway: true}, "the process asks for air-on of 13 °C, and the air comes on at 16 °C: the cooler lacks 3 kW before the bed runs away",
			"the process asks for air-on of 55.4 °F, and the air comes on at 60.8 °F: the cooler lacks 3 kW before the bed runs away"},
		{forecast.FanShort{Asked: model.Quantity{Quantity: written(t, "900 m3/h")}, Fan: model.Quantity{Quantity: written(t, "500 m3/h")}},
			"the process asks for an airflow of 900 m3/h, and the fan drives 500 m3/h", ""},
		{forecast.BandOff{Missed: forecast.BandMissed{Asked: bedBand("14 °C", "16 °C"), Above: 90 * 3600, Most: 20, Below: 7 * 3600, Coldest: 12, Later: -31 * 3600}},
			"the middle of the bed is to be held at 14 to 16 °C, and is above that for 3 d 18 h, up to 20 °C, and is below it for 7 h, down to 12 °C, so its growth ends 1 d 7 h sooner", ""},
		{forecast.BandOff{Missed: forecast.BandMissed{Asked: bedBand("18 °C", "13 °C"), Above: 90 * 3600, Most: 20, Led: true}},
			"the middle of the bed is to be led from 18 to 13 °C, and is above that for 3 d 18 h, up to 20 °C", ""},
		{forecast.RanHot{Lost: 30, Highest: 49.8, Time: 90 * 3600},
			"the bed runs hot: part of it is above 30 °C, at which the grain is lost, for 3 d 18 h, and its warmest gets to 50 °C",
			"the bed runs hot: part of it is above 86 °F, at which the grain is lost, for 3 d 18 h, and its warmest gets to 122 °F"},
		{forecast.KilnShort{Target: kiln.AirOn, Asked: 85, Got: 78, Limit: kiln.ByHeater},
			"the step asks for air-on of 85 °C, and the kiln gives 78 °C: heater too weak", "the step asks for air-on of 185 °F, and the kiln gives 172 °F: heater too weak"},
		{forecast.KilnShort{Target: kiln.AirOn, Asked: 85, Got: 78, Limit: kiln.ByReachHigh, Set: written(t, "85 °C")},
			"the step asks for air-on of 85 °C, and the kiln gives 78 °C: above the kiln's reach", ""},
		{forecast.KilnShort{Target: kiln.AirOff, Asked: 50, Got: 44.6, Limit: kiln.ByLead, Time: 5 * 3600},
			"the step asks for air-off of 50 °C, and for 5 h it is 44.6 °C on average, because drying malt cools the air: air-on is set at most 20 °C higher",
			"the step asks for air-off of 122 °F, and for 5 h it is 112.3 °F on average, because drying malt cools the air: air-on is set at most 36 °F higher"},
		{forecast.KilnShort{Target: kiln.Oven, Asked: 85, Got: 68, Limit: kiln.ByHeater, ByDoor: true},
			"the step asks for oven of 85 °C, and the kiln gives 68 °C: its heat goes out by the open door", "the step asks for oven of 185 °F, and the kiln gives 154 °F: its heat goes out by the open door"},
		{forecast.KilnShort{Target: kiln.AirOn, Asked: 50, Got: 38, Limit: kiln.ByFeed},
			"the step asks for air-on of 50 °C, and the kiln gives 38 °C: no warmer air comes from the floor below, and it has no heater",
			"the step asks for air-on of 122 °F, and the kiln gives 100 °F: no warmer air comes from the floor below, and it has no heater"},
		{forecast.FloorsApart{Rounds: 12, Kelvin: 2.04, Ratio: 0.0013},
			"the exhaust of the lower floor and the drying of the upper floor do not agree after 12 rounds: they differ by 2 °C and 1.3 g/kg on average",
			"the exhaust of the lower floor and the drying of the upper floor do not agree after 12 rounds: they differ by 3.7 °F and 1.3 g/kg on average"},
		{forecast.KilnShort{Target: kiln.Malt, Asked: 215, Got: math.NaN(), Limit: kiln.ByReachHigh},
			"the step asks for malt of 215 °C, and the kiln does not reach it: above the kiln's reach", "the step asks for malt of 419 °F, and the kiln does not reach it: above the kiln's reach"},
		{forecast.CannotCool{Asked: quantity.Range{Low: written(t, "12 °C"), High: written(t, "15 °C")}, Room: 20},
			"the malt cannot be cooled to 12 to 15 °C with room air of 20 °C", ""},
		{forecast.StillWarm{Of: "malt", Asked: written(t, "30 °C"), Got: 65.2, Malt: 65.2, Time: 60},
			"the step asks for malt of 30 °C, and after 1 min of cooling it is 65 °C", "the step asks for malt of 30 °C, and after 1 min of cooling it is 65 °C"},
		{forecast.StillWarm{Of: "air-off", Asked: written(t, "86 °F"), Got: 40, Malt: 65.2, Time: 7200},
			"the step asks for air-off of 86 °F, and after 2 h of cooling it is 104 °F, the malt up to 149 °F", "the step asks for air-off of 86 °F, and after 2 h of cooling it is 104 °F, the malt up to 149 °F"},
		{forecast.AirShort{Water: 3, Carries: 2, Moisture: 0.1, Took: 20 * 3600, Charge: written(t, "6 kg")},
			"the malt must give off 3 kg of water before it holds 10 %, and the air of this kiln carries away 2 kg in 20 h at most", ""},
		{forecast.AirShort{Water: 79, Carries: 0.6, Moisture: 0.12, Took: 48 * 3600, Charge: written(t, "150 kg"),
			Driven: &forecast.Driven{By: forecast.ByDraught, Depth: 1.37, Passes: 1.8 / 3600, Gives: 4.1, Needs: 140.0 / 3600, Takes: 371, Dries: 265.1 * 86400}},
			"the malt must give off 79 kg of water before it holds 12 %, and the air of this kiln carries away 0.6 kg in 2 d at most: it lies 1.4 m deep; the 140 m3/h that would dry it in that time need 370 Pa, and its natural draught has 4 Pa; 1.8 m3/h get through, with which it would take 265 days",
			"the malt must give off 79 kg of water before it holds 12 %, and the air of this kiln carries away 0.6 kg in 2 d at most: it lies 4.5 ft deep; the 82 cfm that would dry it in that time need 1.5 inches of water, and its natural draught has 0.02 inches of water; 1.1 cfm get through, with which it would take 265 days"},
		{forecast.AirShort{Water: 79, Carries: 0.6, Moisture: 0.12, Took: 48 * 3600, Charge: written(t, "150 kg"),
			Driven: &forecast.Driven{By: forecast.ByChimney, Over: "high", Depth: 0.9, Passes: 1.8 / 3600, Gives: 4.1, Needs: 140.0 / 3600, Takes: 371, Dries: 265.1 * 86400}},
			`the malt must give off 79 kg of water before it holds 12 %, and the air of this kiln carries away 0.6 kg in 2 d at most: the malt of "high" above lies 90 cm deep; the 140 m3/h that would dry it in that time need 370 Pa, and its chimney has 4 Pa; 1.8 m3/h get through, with which it would take 265 days`,
			`the malt must give off 79 kg of water before it holds 12 %, and the air of this kiln carries away 0.6 kg in 2 d at most: the malt of "high" above lies 35 in deep; the 82 cfm that would dry it in that time need 1.5 inches of water, and its chimney has 0.02 inches of water; 1.1 cfm get through, with which it would take 265 days`},
		{forecast.HeatsItself{Time: 87 * 3600, Moisture: 0.41, Rise: 31.2},
			"the malt lies wet and almost without air for 3 d 15 h, at 41 % moisture, and its own breath would warm it by 31 °C a day, because too little air carries the heat off: it sours and moulds",
			"the malt lies wet and almost without air for 3 d 15 h, at 41 % moisture, and its own breath would warm it by 56 °F a day, because too little air carries the heat off: it sours and moulds"},
		{forecast.KilnAirShort{Asked: written(t, "1400 m3/h"), Got: 980.0 / 3600, Time: 20 * 3600, Gives: 240, Takes: 380, By: forecast.ByFan},
			"the step asks for 1400 m3/h of air, and for 20 h it gets 980 m3/h on average: all of it would need 380 Pa through the malt, and its fan gives 240 Pa",
			"the step asks for 1400 m3/h of air, and for 20 h it gets 980 m3/h on average: all of it would need 1.5 inches of water through the malt, and its fan gives 0.96 inches of water"},
		{forecast.AirShort{Water: 3, Carries: 2, Moisture: 0.1, Took: 20 * 3600, Charge: written(t, "13 lb")},
			"the malt must give off 6.6 lb of water before it holds 10 %, and the air of this kiln carries away 4.4 lb in 20 h at most", ""},
		{forecast.HotWet{Temperature: 60, Moisture: 0.2, Limit: 50, Share: 0.4, Time: 2400},
			"the malt itself gets 60 °C hot in this step while it holds 20.0 % moisture, and malt so wet stands only 50 °C: 40 % of the bed is too hot for its moisture for 40 min",
			"the malt itself gets 140 °F hot in this step while it holds 20.0 % moisture, and malt so wet stands only 122 °F: 40 % of the bed is too hot for its moisture for 40 min"},
		{forecast.HotWet{Temperature: 60, Moisture: 0.2, Limit: 50, Share: 1, Time: 2 * 3600},
			"the malt itself gets 60 °C hot in this step while it holds 20.0 % moisture, and malt so wet stands only 50 °C: all of it is too hot for its moisture for 2 h",
			"the malt itself gets 140 °F hot in this step while it holds 20.0 % moisture, and malt so wet stands only 122 °F: all of it is too hot for its moisture for 2 h"},
		{forecast.NotCovered{Soak: 2, Water: model.Quantity{Quantity: written(t, "3 l")}, Need: 0.0035}, "soak 2 has 3 l of water, and 3.5 l is needed to cover the grain", ""},
		{forecast.NotCovered{Soak: 2, Water: model.Quantity{Quantity: written(t, "6 lb")}, Need: 0.0035}, "soak 2 has 6 lb of water, and 7.716 lb is needed to cover the grain", ""},
		{forecast.AirBlown{Flow: model.Quantity{Quantity: written(t, "2 m3/h")}}, "2 m3/h of air are blown through the water", ""},
		{forecast.AirDrawn{Flow: model.Quantity{Quantity: written(t, "2 m3/h")}, CO2: 0.021}, "2 m3/h of air are drawn through the grain, and 2.1 % of that becomes carbon dioxide", ""},
		{forecast.Beyond{}, "the malt comes above 180 °C, where the model ends: moisture, weight, yield and quality are not forecast from there on. Times are as written; go by smell, by sound and by the cut kernel",
			"the malt comes above 356 °F, where the model ends: moisture, weight, yield and quality are not forecast from there on. Times are as written; go by smell, by sound and by the cut kernel"},
		{forecast.DrumFull{Malt: 0.014, Holds: 0.02, Weight: 6}, "6.00 kg of malt fills 70 % of the drum, and above a half it does not tumble freely", "13.2 lb of malt fills 70 % of the drum, and above a half it does not tumble freely"},
		{forecast.DrumFull{Malt: 0.024, Holds: 0.02, Weight: 12}, "12.0 kg of malt takes 24 l, and the drum holds 20 l", "26.5 lb of malt takes 6.3 gal-us, and the drum holds 5.3 gal-us"},
		{forecast.Quenched{Water: model.Quantity{Quantity: written(t, "0.3 l")}, Quenched: kiln.Quenched{Before: 175, Steam: 0.15, Volume: 0.255, After: 100, Moisture: 0.05}},
			"0.3 l of water falls on malt of 175 °C: 150 g of it boils off as 0.26 m3 of steam, which leaves the malt at 100 °C and 5.0 % moisture",
			"0.3 l of water falls on malt of 347 °F: 5.3 oz of it boils off as 9 ft3 of steam, which leaves the malt at 212 °F and 5.0 % moisture"},
		{forecast.Quenched{Water: model.Quantity{Quantity: written(t, "0.3 l")}, Quenched: kiln.Quenched{Before: 210, Steam: 0.27, Volume: 0.459, After: 100, Moisture: 0.1234}, Beyond: true},
			"0.3 l of water falls on malt of 210 °C: by the heat of the malt about 0.27 l of it boils off, as 0.46 m3 of steam, and the rest leaves the malt at about 12 % moisture",
			"0.3 l of water falls on malt of 410 °F: by the heat of the malt about 270 ml of it boils off, as 16 ft3 of steam, and the rest leaves the malt at about 12 % moisture"},
		{forecast.Quenched{Water: model.Quantity{Quantity: written(t, "0.1 l")}, Quenched: kiln.Quenched{Before: 210, Steam: 0.1, Volume: 0.17, After: 171}, Beyond: true},
			"0.1 l of water falls on malt of 210 °C: by the heat of the malt all of it boils off, as 0.17 m3 of steam, and leaves the malt at about 170 °C",
			"0.1 l of water falls on malt of 410 °F: by the heat of the malt all of it boils off, as 6 ft3 of steam, and leaves the malt at about 338 °F"},
		{forecast.Quenched{Water: model.Quantity{Quantity: written(t, "0.3 l")}, Quenched: kiln.Quenched{Before: 80, After: 60, Moisture: 0.1}},
			"0.3 l of water falls on malt of 80 °C: none of it boils off, and it leaves the malt at 60 °C and 10.0 % moisture",
			"0.3 l of water falls on malt of 176 °F: none of it boils off, and it leaves the malt at 140 °F and 10.0 % moisture"},
		{forecast.KilnShort{Target: kiln.Malt, Asked: 210, Got: 114, Limit: kiln.ByHeater, Late: true},
			"the step asks for malt of 210 °C, and has reached 114 °C when it ends: heater too weak for so much malt in so little time",
			"the step asks for malt of 410 °F, and has reached 237 °F when it ends: heater too weak for so much malt in so little time"},
		{forecast.KilnShort{Target: kiln.Malt, Asked: 210, Got: 79, Limit: kiln.ByLead, Late: true},
			"the step asks for malt of 210 °C, and has reached 79 °C when it ends: too little time", "the step asks for malt of 410 °F, and has reached 174 °F when it ends: too little time"},
		{forecast.Unable{Stage: model.KilnStage, Cause: forecast.MuchWater{Water: model.Quantity{Quantity: written(t, "200 l")}, Malt: 4.775, Before: 175, Enough: 0.233}},
			"the forecast of kiln ends here: 200 l of water on 4.78 kg of malt is 42 times the malt; about 0.23 l ends the roast of malt at 175 °C",
			"the forecast of kiln ends here: 200 l of water on 10.5 lb of malt is 42 times the malt; about 230 ml ends the roast of malt at 347 °F"},
		{forecast.Unable{Stage: model.KilnStage, Cause: forecast.MuchWater{Water: model.Quantity{Quantity: written(t, "12 l")}, Malt: 4.775, Before: 90}},
			"the forecast of kiln ends here: 12 l of water on 4.78 kg of malt is 2.5 times the malt; malt of 90 °C needs none",
			"the forecast of kiln ends here: 12 l of water on 10.5 lb of malt is 2.5 times the malt; malt of 194 °F needs none"},
		{forecast.Beyond{Share: 0.05, Mean: 33}, "the malt next to the heat, 5 % of the bed, comes above 180 °C, where the model ends: moisture, weight, yield and quality are not forecast from there on. Times are as written; go by smell, by sound and by the cut kernel. The bed is then at 33 °C on average",
			"the malt next to the heat, 5 % of the bed, comes above 356 °F, where the model ends: moisture, weight, yield and quality are not forecast from there on. Times are as written; go by smell, by sound and by the cut kernel. The bed is then at 91 °F on average"},
		{forecast.Unable{Stage: model.KilnStage, Cause: air.Within("temperature of the malt", 300, "°C", -20, 260)},
			"the forecast of kiln ends here: temperature of the malt 300 °C is outside -20 to 260 °C",
			"the forecast of kiln ends here: temperature of the malt 572 °F is outside -4 to 500 °F"},
	} {
		seen[reflect.TypeOf(c.of)] = true
		assert.Equal(t, c.metric, Trouble(c.of, metric))
		assert.Equal(t, cmp.Or(c.pounds, c.metric), Trouble(c.of, pounds))
	}
	for of := range troubles {
		assert.True(t, seen[of], "no sample of %s", of)
	}
}

func TestAssumptionsAreToldInTheUnitsOfTheHouse(t *testing.T) {
	const silent = "the site does not say"
	band := &model.Range{Range: quantity.Range{Low: written(t, "12 °C"), High: written(t, "16 °C")}}
	growth := forecast.Used{Figure: forecast.Growth, Factor: model.Factor{Value: model.Quantity{Quantity: written(t, "0.9")}}}
	seen := map[reflect.Type]bool{}
	for _, c := range []struct {
		of             forecast.Assumption
		metric, pounds Assumed // of the second what differs
	}{
		{forecast.RoomAir{Temperature: 15}, Assumed{"air of the room", "15 °C", silent}, Assumed{Value: "59 °F"}},
		{forecast.RoomAir{Temperature: 14, Band: band}, Assumed{"air of the room", "14 °C", "the middle of the site's 12 to 16 °C"}, Assumed{}},
		{forecast.RoomHumidity{Humidity: 0.7}, Assumed{"humidity of the room", "70 %", silent}, Assumed{}},
		{forecast.DrawnWater{Temperature: 12}, Assumed{"water as drawn", "12 °C", silent}, Assumed{Value: "53.6 °F"}},
		{forecast.SeaLevel{}, Assumed{"height above the sea", "0 m", silent}, Assumed{Value: "0 ft"}},
		{forecast.GrainMoisture{Moisture: 0.13}, Assumed{"moisture of the raw grain", "13 %", "the lot does not say; weigh and dry a sample"}, Assumed{}},
		{forecast.GrainMoisture{Moisture: 0.44, Green: true}, Assumed{"moisture of the green malt", "44 %", "the lot does not say; weigh and dry a sample"}, Assumed{}},
		{forecast.GrownBefore{Acrospire: 0.75}, Assumed{"growth of the green malt", "acrospire at 0.75 of the kernel", "it is bought grown; its growth goes on while it is wet"}, Assumed{}},
		{forecast.KilnFan{Ducts: 300, Efficiency: 0.5, Called: "kiln 2"}, Assumed{"fan of kiln 2", "300 Pa beside the bed's own resistance, 50 % of its power in the air", "the kiln does not say what its fan draws; it counts for that alone"}, Assumed{}},
		{forecast.NothingRecovered{Called: "kiln 2"}, Assumed{"heat recovered from the exhaust of kiln 2", "none", "its exhaust goes to the floor above; heat from that floor's exhaust is left out"}, Assumed{}},
		{forecast.KilnHeater{Called: "kiln 2"}, Assumed{"heater of kiln 2", "strong enough", "the kiln does not say its power"}, Assumed{}},
		{forecast.KernelWeight{Thousand: 0.045, Species: "barley"}, Assumed{"weight of a thousand kernels", "45 g", "usual for barley"}, Assumed{Value: "1.6 oz"}},
		{forecast.Germination{Share: 0.96}, Assumed{"germination", "96 %", "the lot was not tested"}, Assumed{}},
		{forecast.SoakWater{Each: 0.002}, Assumed{"water for each soak", "2 l/kg of grain", "enough to stand a hand above the grain"},
			Assumed{Value: "0.24 gal-us/lb of grain"}},
		{forecast.MixedWater{Grain: 15}, Assumed{"grain before its first soak", "15 °C", "as warm as the room; grain and measured water come to one temperature, and the vessel is left out"}, Assumed{Value: "59 °F"}},
		{forecast.Sprayed{}, Assumed{"spray in the rests", "what keeps the kernels wet", "the rest does not say how much; so little water neither cools nor warms"}, Assumed{}},
		{forecast.EvenTurns{Every: model.Quantity{Quantity: written(t, "12 h")}, Written: "07:00 and 19:00"},
			Assumed{"turns at 07:00 and 19:00", "every 12 h", "the first so long after the piece is spread; with the time of the first soak they stand at the clock"}, Assumed{}},
		{forecast.DrainedDepth{Depth: 0.3}, Assumed{"drained grain in the rests", "30 cm deep", "the vessel says no area"}, Assumed{"drained grain in the rests", "12 in deep", "the vessel says no area"}},
		{forecast.BlownAir{Brings: 0.8}, Assumed{"air blown through the soak water", "80 % of the missing oxygen each time", "a pump on a timer, through coarse bubbles; nobody has to come for it"}, Assumed{}},
		{forecast.FloorArea{Stage: model.GerminateStage, Area: 0.5, Depth: 0.1}, Assumed{"area of the germinate floor", "0.50 m2", "a bed 10 cm deep"},
			Assumed{Value: "5.4 ft2", Why: "a bed 3.9 in deep"}},
		{forecast.FloorArea{Stage: model.WitherStage, Area: 0.005}, Assumed{"area of the wither floor", "50 cm2", "the area that the grain covers one kernel deep"},
			Assumed{Value: "0.05 ft2"}},
		{forecast.BedHeld{}, Assumed{"what is held", "the bed", "hold does not say whether the bed or the room"}, Assumed{}},
		{forecast.MoistAir{Humidity: 0.98}, Assumed{"humidity over the growing piece", "98 %", "it is kept from drying by a damp cloth or in a box, and opened where it gets wetter; germinate does not say"}, Assumed{}},
		{forecast.FollowingAir{Flow: 0.2}, Assumed{"air through the bed", "720 m3/h", "all that the fan drives, at the temperature that keeps the bed in the middle of its band; no air at air-on is written"}, Assumed{Value: "420 cfm"}},
		{forecast.RoomAirBlown{Flow: 0.2}, Assumed{"air through the bed", "720 m3/h", "all room air that the fan drives; no air at air-on is written"}, Assumed{Value: "420 cfm"}},
		{forecast.AirGoverns{Hold: bedBand(t, "14 °C", "17 °C")}, Assumed{"what keeps the bed", "the air at air-on, as written", "the band of 14 to 17 °C does not control this air: the forecast says whether the bed stays in it"}, Assumed{}},
		{forecast.RoomAirBlown{Flow: 0.2, Called: "wither"}, Assumed{"air through the bed in wither", "720 m3/h", "all room air that the fan drives; no air at air-on is written"}, Assumed{Value: "420 cfm"}},
		{forecast.WashedAir{Humidity: 0.98}, Assumed{"humidity of air-on", "98 %", "the air is sprayed before it enters the bed; no humidity air-on is written"}, Assumed{}},
		{forecast.BoxPlant{Floor: "box", NoCooler: true, NoHeater: true}, Assumed{"cooler and heater of \"box\"", "none", "the floor does not say: its air is the room's and what its spray cools"}, Assumed{}},
		{forecast.BoxPlant{Floor: "box", NoCooler: true}, Assumed{"cooler of \"box\"", "none", "the floor does not say: its air is no colder than its spray makes it"}, Assumed{}},
		{forecast.BoxPlant{Floor: "box", NoHeater: true}, Assumed{"heater of \"box\"", "none", "the floor does not say: its air is no warmer than what it comes from"}, Assumed{}},
		{forecast.FanPressure{Ducts: 300, Efficiency: 0.5}, Assumed{"the fan", "300 Pa beside the bed's own resistance, 50 % of its power in the air", "ducts and spray; all that it draws warms its air, before spray and cooler"}, Assumed{}},
		{forecast.KilnBreath{Called: "kiln 2"}, Assumed{"breath of the malt on kiln 2", "left out", "a drying kiln carries off far more heat; here the malt gets warmer, and loses more, than the forecast says"}, Assumed{}},
		{forecast.FanWarms{}, Assumed{"warmth of the fan", "all that it draws, before spray and cooler", "they make the air from air that the fan has warmed; a fan after them gives drier air"}, Assumed{}},
		{forecast.WitherAir{Speed: 0.2, Humidity: 0.6, Temperature: 20},
			Assumed{"air over the withering piece", "0.2 m/s, 60 % relative humidity at 20 °C", "a fan or an open door; the site's air, warmed"},
			Assumed{Value: "39 ft/min, 60 % relative humidity at 68 °F"}},
		{forecast.GateWait{Most: 24 * 3600}, Assumed{"longest wait at a gate", "24 h", "a gate without allow waits so long"}, Assumed{}},
		{forecast.FuelHeat{}, Assumed{"fuel of the kiln", "all of its heat reaches the air", "the kiln does not say its efficiency; a flue takes some of the heat, so it burns more"}, Assumed{}},
		{forecast.KilnHeater{}, Assumed{"heater of the kiln", "strong enough", "the kiln does not say its power"}, Assumed{}},
		{forecast.KilnArea{Area: 0.3, Load: 40}, Assumed{"area of the kiln", "0.30 m2", "40 kg of green malt a square metre"},
			Assumed{Value: "3.2 ft2", Why: "8.2 lb of green malt a square foot"}},
		{forecast.OvenAir{Flow: 0.001}, Assumed{"air through the oven", "3.6 m3/h", "what leaks from a household oven; measure how much it loses"}, Assumed{Value: "2.1 cfm"}},
		{forecast.DrumShell{Area: 0.408, At: 200, Loses: 830}, Assumed{"shell of the drum", "0.41 m2, bare", "the kiln does not say what its walls are; at 200 °C it loses 0.83 kW to the room"},
			Assumed{"shell of the drum", "4.4 ft2, bare", "the kiln does not say what its walls are; at 392 °F it loses 0.83 kW to the room"}},
		{forecast.DrumAir{Flow: 0.001, Each: 1.0 / 3600}, Assumed{"air through the drum", "3.6 m3/h", "the kiln does not say; a vent of 1 m3/h for each kg of what comes into it"},
			Assumed{Value: "2.1 cfm", Why: "the kiln does not say; a vent of 0.3 cfm for each lb of what comes into it"}},
		{forecast.GrainMoisture{Moisture: 0.04, Kilned: true}, Assumed{"moisture of the malt", "4 %", "the lot does not say; weigh and dry a sample"}, Assumed{}},
		{forecast.KilnAir{Flow: 0.05, Each: 0.005}, Assumed{"air through the kiln", "180 m3/h", "the kiln does not say; 18 m3/h for each kg of green malt"},
			Assumed{Value: "110 cfm", Why: "the kiln does not say; 4.8 cfm for each lb of green malt"}},
		{forecast.DraughtHeight{Above: 2, Below: 1}, Assumed{"warm air that draws in the kiln", "1 m below the bed and 2 m above it", "a small house with the heater or fire under its bed; it says no chimney"},
			Assumed{"warm air that draws in the kiln", "3.3 ft below the bed and 6.6 ft above it", "a small house with the heater or fire under its bed; it says no chimney"}},
		{forecast.DraughtHeight{Above: 6, Below: 1, Chimney: true}, Assumed{"warm air that draws in the kiln", "1 m below the bed", "from the heater or fire to the bed, beside its chimney"},
			Assumed{"warm air that draws in the kiln", "3.3 ft below the bed", "from the heater or fire to the bed, beside its chimney"}},
		{forecast.DraughtHeight{Above: 6, Below: 1, Chimney: true, Over: "high", Between: 2.5}, Assumed{"warm air that draws in the kiln", `1 m below the bed, 2.5 m from it to that of "high", and 3.5 m above that`, "of the height of its chimney; people stand between two floors, and the air that leaves the upper one draws above it"},
			Assumed{"warm air that draws in the kiln", `3.3 ft below the bed, 8.2 ft from it to that of "high", and 11 ft above that`, "of the height of its chimney; people stand between two floors, and the air that leaves the upper one draws above it"}},
		{forecast.DrivenAir{Flow: 0.25, At: 50, Depth: 0.2, By: forecast.ByChimney, Over: "high"}, Assumed{"air through the kiln once its malt is warm", "900 m3/h", `the air that its chimney drives through green malt 20 cm deep at 50 °C and through the bed of "high" above it, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area`},
			Assumed{"air through the kiln once its malt is warm", "530 cfm", `the air that its chimney drives through green malt 8 in deep at 122 °F and through the bed of "high" above it, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area`}},
		{forecast.DrivenAir{Flow: 0.25, At: 50, Depth: 0.2, By: forecast.ByFan, Flue: 6}, Assumed{"air through the kiln once its malt is warm", "900 m3/h", "the air that its fan, with the draught of its chimney of 6 m, drives through green malt 20 cm deep at 50 °C, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area"},
			Assumed{"air through the kiln once its malt is warm", "530 cfm", "the air that its fan, with the draught of its chimney of 20 ft, drives through green malt 8 in deep at 122 °F, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area"}},
		{forecast.DrivenAir{Flow: 0.25, At: 50, Depth: 0.2, By: forecast.ByFan, Draws: true}, Assumed{"air through the kiln once its malt is warm", "900 m3/h", "the air that its fan drives through green malt 20 cm deep at 50 °C, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area; half of the power of the fan moves the air, and all of it warms the air"},
			Assumed{"air through the kiln once its malt is warm", "530 cfm", "the air that its fan drives through green malt 8 in deep at 122 °F, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area; half of the power of the fan moves the air, and all of it warms the air"}},
		{forecast.DrivenAir{Flow: 0.25, At: 50, Depth: 0.2, By: forecast.ByChimney, Warmed: new(95.0)}, Assumed{"air through the kiln once its malt is warm", "900 m3/h", "its chimney would drive more through green malt 20 cm deep; somebody shuts it to what its heater warms to the 95 °C that it reaches"},
			Assumed{"air through the kiln once its malt is warm", "530 cfm", "its chimney would drive more through green malt 8 in deep; somebody shuts it to what its heater warms to the 203 °F that it reaches"}},
		{forecast.DrivenAir{Flow: 0.005, At: 50, Depth: 1.3, By: forecast.ByDraught, Most: 25}, Assumed{"air through the kiln once its malt is warm", "18 m3/h", "a natural draught pulls 25 Pa at most, with a flue of 10 m to 15 m, and drives only so much air through green malt 1.3 m deep"},
			Assumed{"air through the kiln once its malt is warm", "11 cfm", "a natural draught pulls 0.1 inches of water at most, with a flue of 33 ft to 49 ft, and drives only so much air through green malt 4.3 ft deep"}},
		{forecast.KilnAir{Flow: 0.01, Warmed: new(70.0)}, Assumed{"air through the kiln", "36 m3/h", "the kiln does not say; no more is warmed by its heater to the 70 °C that it reaches"},
			Assumed{Value: "21 cfm", Why: "the kiln does not say; no more is warmed by its heater to the 158 °F that it reaches"}},
		{forecast.KilnFlaps{}, Assumed{"air let through the kiln", "no more than its heater can warm to the set temperature", "its flaps are shut as far as the heat needs; it has no airflow written"}, Assumed{}},
		{forecast.KilnFresh{Reaches: 70}, Assumed{"air led back in the kiln", "none", "the kiln does not say; yet its heater does not warm so much fresh air to the 70 °C that it reaches"},
			Assumed{Why: "the kiln does not say; yet its heater does not warm so much fresh air to the 158 °F that it reaches"}},
		{forecast.KilnWalls{Of: "brick", Area: 60, Height: 4, Thick: 0.24}, Assumed{"walls of the kiln", "60 m2 of brick, 24 cm thick", "four walls 4 m high around the malt, and a ceiling; the usual thickness of such walls; they are as warm as the room when the malt comes on"},
			Assumed{Value: "650 ft2 of brick, 9 in thick", Why: "four walls 13 ft high around the malt, and a ceiling; the usual thickness of such walls; they are as warm as the room when the malt comes on"}},
		{forecast.KilnWalls{Of: "metal", Area: 3, Thick: 0.001, Wool: 0.05}, Assumed{"walls of the kiln", "3 m2 of metal, 1 mm thick, and 5 cm of mineral wool on the side of the room", "the usual thickness of such walls; they are as warm as the room when the malt comes on"},
			Assumed{Value: "32 ft2 of metal, 0.04 in thick, and 2 in of mineral wool on the side of the room"}},
		{forecast.KilnWalls{Of: "wood", Area: 3.6, Height: 1.1, Trays: true, Thick: 0.025}, Assumed{"walls of the kiln", "3.6 m2 of wood, 2.5 cm thick", "a cabinet 1.1 m high around trays one above the other; if it is another, write their area behind walls; the usual thickness of such walls; they are as warm as the room when the malt comes on"},
			Assumed{"walls of the kiln", "39 ft2 of wood, 1 in thick", "a cabinet 3.6 ft high around trays one above the other; if it is another, write their area behind walls; the usual thickness of such walls; they are as warm as the room when the malt comes on"}},
		{forecast.KilnWalls{Of: "metal", Area: 3, Shell: true, Thick: 0.001}, Assumed{"walls of the kiln", "3 m2 of metal, 1 mm thick", "the shell of the drum, as it usually is; the usual thickness of such walls; they are as warm as the room when the malt comes on"},
			Assumed{Value: "32 ft2 of metal, 0.04 in thick"}},
		{forecast.NoWalls{Called: "the second oven"}, Assumed{"walls of the second oven", "take up and lose no heat", "the oven does not say what its walls are, metal or insulated; an oven loses more through them than its air takes, so the energy shown may be a third of what it draws"}, Assumed{}},
		{forecast.NoWalls{Share: 0.94}, Assumed{"walls of the kiln", "take up and lose no heat", "the kiln does not say what its walls are; its heater gets to 94 % of its power, and walls may well take the rest"}, Assumed{}},
		{forecast.OvenDoor{Height: 0.4, Flow: 0.0018, At: 60}, Assumed{"door of the oven", "40 cm high", "usual of a household oven; the gap lets out 6.5 m3/h at 60 °C"},
			Assumed{Value: "16 in high", Why: "usual of a household oven; the gap lets out 3.8 cfm at 140 °F"}},
		{forecast.DoorIdle{}, Assumed{"door of the kiln", "moves no air", "only that of an oven that says draught still does"}, Assumed{}},
		{forecast.DoorIdle{Said: true}, Assumed{"door of the oven", "lets nothing more out", "an airflow is written too, and holds"}, Assumed{}},
		{forecast.OpenOven{}, Assumed{"door of the oven while it cools", "open", "the malt cools as it would on a table; an oven that stays shut takes far longer"}, Assumed{}},
		{forecast.CoolDraught{Above: 3}, Assumed{"draught of the kiln while it cools", "3 m of air as warm as the malt", "the fire that drew its air is out; a small house under and over the malt"}, Assumed{Value: "9.8 ft of air as warm as the malt"}},
		{forecast.AirOfFloor{Floor: "lower floor", Coolest: 28.2, Warmest: 78.6, Cycle: 18 * 3600, Called: "kiln 1"},
			Assumed{"air to kiln 1", "28 to 79 °C as it comes", `the exhaust of "lower floor", where the batch before lies, in the same process 18 h ahead`}, Assumed{Value: "83 to 173 °F as it comes"}},
		{forecast.DeculmTime{Takes: 3600}, Assumed{"deculming", "1 h, right after cooling", "it is done while the rootlets are brittle"}, Assumed{}},
		{forecast.StepByHeat{Read: "air-on 65 °C", At: time.Date(2026, 3, 13, 9, 0, 0, 0, time.UTC), Step: "dry 2"}, Assumed{"step of the kiln", "dry 2 at 2026-03-13 09:00", "no line says when it began, and air-on 65 °C fits best"}, Assumed{}},
		{forecast.ScaleError{Share: 0.004}, Assumed{"error of the scale", "0.4 % of what it shows", "the record does not name the scale, or the scale has no division"}, Assumed{}},
		{forecast.Learnt{Used: growth, House: "Loft"}, Assumed{"growth", "0.9 of the model's", `learnt, house "Loft"`}, Assumed{}},
	} {
		seen[reflect.TypeOf(c.of)] = true
		assert.Equal(t, c.metric, Assumption(c.of, metric))
		assert.Equal(t, Assumed{c.metric.What, cmp.Or(c.pounds.Value, c.metric.Value), cmp.Or(c.pounds.Why, c.metric.Why)}, Assumption(c.of, pounds))
	}
	for of := range assumptions {
		assert.True(t, seen[of], "no sample of %s", of)
	}
}
