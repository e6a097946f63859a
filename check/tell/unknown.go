package tell

import (
	"fmt"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/learn"
)

// Open names what a process leaves open: how fast the lot grows.
func Open(o ensemble.Open) string { return open[o].name }

// OpenOf names what is open of one lot or kiln.
func OpenOf(o ensemble.Open, of string) string {
	switch {
	case of == "":
		return Open(o)
	case o == ensemble.KilnDrying:
		return fmt.Sprintf("how fast %q dries", of)
	}
	return fmt.Sprintf("%s (%s)", Open(o), of)
}

// Learn says what a maltster does to know it: count the acrospires.
func Learn(o ensemble.Open, units quantity.System) string { return units.Retold(open[o].learn) }

var open = map[ensemble.Open]struct{ name, learn string }{
	ensemble.LotUptake:         {"how fast the lot takes up water", "weigh the drained grain after the first soak and after the second"},
	ensemble.LotHuskWater:      {"how much water husk and film of the lot hold", "weigh the drained grain, or a bag of it, a quarter of an hour into the first soak too"},
	ensemble.LotGrowth:         {"how fast the lot grows", "count the acrospires of a hundred kernels each morning from the third day on"},
	ensemble.LotChit:           {"how fast the lot chits", "count the chitted kernels of a hundred at steep-out"},
	ensemble.LotRespiration:    {"how much the lot breathes", "weigh the piece when it is turned, and the malt at the end"},
	ensemble.HouseWithering:    {"how fast green malt withers here", "weigh a tray of it every six hours while it withers"},
	ensemble.KilnDrying:        {"how fast this kiln dries", "weigh some of the malt on the kiln, every two hours, in a roast every quarter of an hour"},
	ensemble.DryAirMoisture:    {"the moisture malt keeps in dry air", "dry a sample of the finished malt in an oven"},
	ensemble.RawMoisture:       {"the moisture of the raw grain", "dry a sample of the grain in an oven"},
	ensemble.RoomAir:           {"the warmth of the room", "read a thermometer in the room"},
	ensemble.RoomHumidity:      {"the humidity of the room", "read a hygrometer in the room"},
	ensemble.DrawnWater:        {"the warmth of the water", "measure the water before each soak"},
	ensemble.PlaceInBands:      {"where in its bands the process is held", "read the thermometer at each turn, and narrow the bands"},
	ensemble.LateUptake:        {"how much the lot drinks in the end", "weigh the drained grain after every soak"},
	ensemble.LateGrowth:        {"how much slower the lot grows late", "count the acrospires on every day from the third on"},
	ensemble.LateDrying:        {"how fast the malt gives off its last water", "weigh a tray every hour from 15 % on"},
	ensemble.LateColour:        {"how fast heat colours this malt", "have the colour of the malt tested"},
	ensemble.ThermometerOffset: {"how far the thermometer is off", "hold it in crushed ice that melts: it must show 0 °C"},
}

// Side names one of two figures that readings hardly tell apart, with its lot or kiln.
func Side(s learn.Side) string { return OpenOf(s.Open, s.Of) }

// Corner names a corner of the site: air 15 °C, humidity 80 %.
func Corner(c ensemble.Corner) string {
	var list []string
	for _, e := range c.Ends {
		list = append(list, fmt.Sprintf("%s %s", ends[e.Open], e.High.Like(e.At.SI)))
	}
	return strings.Join(list, ", ")
}

var ends = map[ensemble.Open]string{ensemble.RoomAir: "air", ensemble.RoomHumidity: "humidity", ensemble.DrawnWater: "water"}
