package founding

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Where grain can grow.
const (
	Tray  = "tray"
	Floor = "floor"
	Box   = "box"
	Drum  = "drum"
)

// perArea is how much raw grain lies on a square metre, kg (common practice).
var perArea = map[string]float64{Tray: 12, Floor: 25, Box: 300, Drum: 250}

// vessels asks for what the grain is steeped in: one, or several that share it.
func (a asking) vessels() func(func(Question) bool) {
	if !a.adds(AddVessel) {
		return these()
	}
	return func(yield func(Question) bool) {
		if a.House != nil && !yield(a.name("vessel", AddVessel, "bucket")) {
			return
		}
		for n := 1; n <= mostOf; n++ {
			key := fmt.Sprintf("vessel %d", n)
			holds := Question{Key: key + " holds", Ask: "How much does the steeping vessel hold, to the brim?", Kind: Amount, Unit: a.pick("l", "gal-us"), Usual: a.volume(usualRoom(a.kilograms())),
				of: quantity.Volume, sense: senseOf(vocabulary.Vessel, vocabulary.FactHolds),
				About: "A food-safe bucket, tub or tank. Grain swells: each kg (2.2 lb) needs 2.2 l (0.6 gal-us).", FindOut: "fill it from a jug"}
			if n > 1 {
				holds.Ask, holds.free, holds.Usual = "How much does a further one hold? (none)", true, None
			}
			if !yield(holds) || n > 1 && !a.has(holds.Key) || !yield(a.weighs(key+" weighs", "What does it weigh when it is empty?")) || a.House != nil {
				return
			}
		}
	}
}

// weighs asks for an empty weight, which can be left out.
func (a asking) weighs(key, ask string) Question {
	return Question{Key: key, Ask: ask, Kind: Amount, Unit: a.pick("kg", "lb"), Usual: None, of: quantity.Mass, sense: senseOf(vocabulary.Vessel, "weighs"), free: true,
		About: "Then you can weigh the grain in the vessel. Otherwise you weigh the drained grain by itself.", FindOut: "put it on the scale, empty and dry"}
}

// name asks what a new thing of a house is called.
func (a asking) name(key, of, usual string) Question {
	return Question{Key: key, Ask: "What is it called?", Kind: Text, Usual: unused(usual, namesIn(a.House, of)), check: a.free(of), About: "A name by which you know it."}
}

// place asks for where the grain grows.
func (a asking) place() func(func(Question) bool) {
	if !a.adds(AddFloor) {
		return these()
	}
	return func(yield func(Question) bool) {
		if a.House != nil && !yield(a.name("floor", AddFloor, "tray")) {
			return
		}
		if !yield(Question{Key: "grows", Ask: "Where does the grain grow?", Kind: OneOf, Usual: Tray,
			Choices: choices(Tray+": a tray, a towel or a sheet: shallow, turned by hand", Floor+": a clean floor, turned by hand", Box+": a box with a fan that blows air up through it", Drum+": a drum that turns, with a fan"),
			also:    map[string]string{"towel": Tray, "towels": Tray, "sheet": Tray, "cloth": Tray, "trays": Tray, "pan": Tray, "garage": Floor, "cellar": Floor},
			About:   "On a tray or a floor the grain lies 5 to 15 cm (2 to 6 in) deep. A deeper bed needs a fan."}) {
			return
		}
		grows := a.Answers["grows"]
		if grows == DontKnow || grows == "" {
			grows = Tray
		}
		size := Question{Key: "grows size", Ask: "What area does the grain lie on, all trays together?", Kind: Amount, Unit: a.pick("m2", "ft2"), of: quantity.Area, sense: senseOf(vocabulary.Floor, vocabulary.FactArea),
			About: "Length times width, as 50 x 60 cm, 27 x 54 in or 2 trays of 18 x 24 in. 1 m2 (11 ft2) of tray takes about 15 kg (33 lb) of grain.", FindOut: "measure length and width", Usual: a.area(max(0.02, a.kilograms()/perArea[grows]))}
		if grows == Box || grows == Drum {
			size.Ask, size.About = "What area does the bed lie on?", "Length times width of the bed; for a drum, of the bed at half its height."
		}
		if !yield(size) {
			return
		}
		if grows == Box || grows == Drum {
			if !yield(Question{Key: "grows airflow", Ask: "How much air does its fan blow through the bed?", Kind: Amount, Unit: a.pick("m3/h", "cfm"), of: quantity.Flow, sense: senseOf(vocabulary.Floor, "airflow"),
				Usual: a.flow(a.kilograms() * 0.8 / 3600), About: "0.5 to 1 m3/h for each kg (0.15 to 0.3 cfm for each lb) is usual.", FindOut: "see its papers"}) {
				return
			}
		}
		power := Question{Key: "grows heater", Ask: "What power does its heater have?", Kind: Amount, Unit: "W", of: quantity.Power, sense: senseOf(vocabulary.Floor, "heater"), free: true, Usual: None,
			About: "A heating mat under the tray, or a heater in the air of the box. Answer none if there is none.", FindOut: "see its label"}
		if !yield(power) {
			return
		}
		if grows == Box || grows == Drum {
			power.Key, power.Ask, power.About = "grows cooler", "What power does its air cooler have?", "The heat that it takes out, not the power that it draws. Answer none if there is none."
			yield(power)
			return
		}
		if grows == Tray {
			yield(a.weighs("grows weighs", "What do the empty trays weigh, all together?"))
		}
	}
}

// si is the value of an answer, in SI, or another where there is none.
func (a asking) si(key string, usual float64) float64 {
	if q, err := quantity.Parse(a.Answers[key]); a.has(key) && err == nil {
		return q.SI
	}
	return usual
}

// surroundings asks for the room, the water, the scale and the people of a new house.
func (a asking) surroundings() func(func(Question) bool) {
	if a.House != nil {
		return these()
	}
	list := []Question{
		{Key: "air", Ask: "How warm is it where it grows, by night and by day?", Kind: Span, Unit: a.degree(), Usual: a.band(10, 16), of: quantity.Temperature, sense: senseOf(vocabulary.Site, "air"),
			About: "The coldest and the warmest of the room in these days. A cellar or garage in spring or fall is best.", FindOut: "leave a thermometer there"},
		{Key: "water", Ask: "How warm is the water as it is drawn?", Kind: Span, Unit: a.degree(), Usual: a.band(9, 13), of: quantity.Temperature, sense: senseOf(vocabulary.Site, "water"),
			About: "Cold water from the tap, after it has run for a minute.", FindOut: "thermometer in a glass"},
		{Key: "altitude", Ask: "How high above the sea is it?", Kind: Amount, Unit: a.pick("m", "ft"), Usual: None, of: quantity.Length, sense: senseOf(vocabulary.Site, "altitude"), free: true,
			About: "Thin air dries less. Below 500 m (1600 ft) it does not matter.", FindOut: "look at a map"},
		{Key: "scale division", Ask: "What is the smallest step that your scale shows?", Kind: Amount, Unit: a.pick("g", "oz"), Usual: None, of: quantity.Mass, sense: senseOf(vocabulary.Scale, "division"), free: true,
			About: "Weights are then shown as your scale shows them. Answer none if you have no scale yet.", FindOut: "look at the difference between two weights that it shows next to each other"},
		{Key: "awake", Ask: "When is somebody awake?", Kind: Hours, Usual: "07:00 to 22:00",
			About: "Turns and changes of water are planned between these times."},
	}
	if a.kilograms() > roomful {
		list = append(list, Question{Key: "fresh air", Ask: "Is fresh air let in there, and does a CO2 alarm hang at knee height?", Kind: OneOf, Choices: choices(vocabulary.SaidYes, vocabulary.SaidNo), Usual: vocabulary.SaidNo,
			About: "So much growing grain can fill a room with carbon dioxide, which lies low, has no smell and kills."})
	}
	return these(list...)
}

// roomful is the charge, kg, whose carbon dioxide can fill a room (common practice: a floor,
// not a tray).
const roomful = 100
