package founding

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"maltwright/check/profile"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/reckon"
)

// begin asks for what a house is called and writes in, or what is added to one.
func (a asking) begin() func(func(Question) bool) {
	if a.House != nil {
		can := a.toAdd()
		return these(Question{Key: "add", Ask: "What shall be added to " + a.Main + "?", Kind: OneOf, Choices: can, Usual: can[0].Word,
			About: "What stands in the file stays as it is, to the letter.",
			also:  map[string]string{"lot": AddGrain, "kiln": AddDryer, "oven": AddDryer, "dehydrator": AddDryer, "tray": AddFloor, "floor": AddFloor, "box": AddFloor, "bucket": AddVessel}})
	}
	return these(
		Question{Key: "units", Ask: "Which units does your house read?", Kind: OneOf, Choices: choices(Metric, Pounds), Usual: Metric,
			About: "The files use these units. You may still answer with another unit.",
			also: map[string]string{"c": Metric, "kg": Metric, "metric": Metric, "°c": Metric, "celsius": Metric, "°c, kg": Metric, "°c and l": Metric,
				"f": Pounds, "lb": Pounds, "us": Pounds, "°f": Pounds, "fahrenheit": Pounds, "pounds": Pounds, "°f, lb": Pounds}},
		Question{Key: "house", Ask: "What is the place called?", Kind: Text, Usual: "Home",
			About: "The file of the house is named after it, as home.malt."},
	)
}

// toAdd lists what can be added to a house that is there: a process only where nothing lacks
// that it uses.
func (a asking) toAdd() []Choice {
	can := choices(AddProcess+": a way to make malt of what is here", AddGrain+": another lot", AddDryer+": another oven, dehydrator or kiln", AddVessel+": another bucket or tank", AddFloor+": another tray, floor or box")
	if !slices.ContainsFunc(a.House.Grains, (*model.Grain).Raw) || len(a.House.Kilns) == 0 || len(a.House.Floors) == 0 || len(a.House.Vessels) == 0 {
		can = can[1:]
	}
	return can
}

// lot asks for the grain.
func (a asking) lot() func(func(Question) bool) {
	if !a.adds(AddGrain) {
		return these()
	}
	list := []Question{
		{Key: "grain", Ask: "Which grain is it?", Kind: OneOf, Choices: choices(speciesWords()...), Usual: vocabulary.GrainBarley,
			About: "Barley is the usual one, and the easiest. Ask for grain that is whole, clean and not treated as seed.",
			also:  map[string]string{"corn": "maize", "oat": "oats", "barleys": "barley"}},
		{Key: "lot", Ask: "What is this lot called?", Kind: Text, Usual: a.lotName(), check: a.free(AddGrain),
			About: "A name by which you know the bag again: the farm and the year, as Hill farm 2026."},
		{Key: "treated", Ask: "Was the grain treated as seed?", Kind: OneOf, Choices: choices(vocabulary.SaidNo, vocabulary.SaidYes), Usual: vocabulary.SaidUnknown,
			About: "Seed grain is dressed with poison, often coloured pink, blue or green. Grain sold as feed, food or for malting is not.",
			check: never(vocabulary.SaidYes, "treated seed is poison, and never malt", "get grain that is sold as food, as feed or for malting")},
	}
	list = append(list, a.moisture()...)
	list = append(list, Question{Key: "germination", Ask: "How many kernels sprouted in a test, of how many?", Kind: Count, Usual: "not tested yet",
		About: "Lay 100 kernels on wet paper for 3 days and count those that sprouted. Fewer than 90 make poor malt.", FindOut: "lay 100 kernels on wet paper for 3 days and count those that sprout"})
	list = append(list, Question{Key: "mould", Ask: "Did you look for mould and ergot?", Kind: OneOf, Choices: choices("none: looked, and found none", "found: there is some"), Usual: vocabulary.SaidUnknown,
		About: "Pink, white or shrunken kernels are mould; black horns are ergot. Both hold poisons. Feed grain has them oftener than other grain.", FindOut: "spread a handful on a white cloth and look it over",
		also:  map[string]string{"no": "none", "yes": "found"},
		check: never(vocabulary.SaidFound, "grain with mould or ergot is poison, and never malt", "throw it away, do not breathe its dust, and get another lot")})
	return these(list...)
}

// never refuses an answer of which no malt can come.
func never(answer, message, do string) func(string) error {
	return func(text string) error {
		if text == answer {
			return refuse(do, "%s", message)
		}
		return nil
	}
}

// moisture asks how moist the grain is: by a value, or by a sample on the spot.
func (a asking) moisture() (list []Question) {
	if a.Answers["moisture"] == "" || a.Answers["moisture known"] != "" { // a file may give the value alone
		list = append(list, Question{Key: "moisture known", Ask: "How do you know the moisture of the grain?", Kind: OneOf,
			Choices: choices("value: the bag or a meter says it", "sample: I dried a sample in an oven"), Usual: "value",
			About: "Moisture is the share of water in the whole weight. Every weight of the batch is calculated from it.", FindOut: moistureBySample,
			also: map[string]string{"bag": "value", "meter": "value", "oven": "sample"}})
	}
	switch a.Answers["moisture known"] {
	case "sample":
		wet := Question{Key: "sample wet", Ask: "What did the sample weigh before drying?", Kind: Amount, Unit: "g", of: quantity.Mass,
			About: "Weigh 20 to 100 g of ground grain, dry it about 3 h at 130 °C (266 °F) and weigh it again, without its dish."}
		dry := wet
		dry.Key, dry.Ask, dry.check = "sample dry", "What did it weigh when dry?", a.sampled
		list = append(list, wet, dry)
	case "value", "":
		list = append(list, Question{Key: "moisture", Ask: "What is its moisture?", Kind: Amount, Unit: "%", Usual: "12 %", of: quantity.Share, sense: senseOf(vocabulary.Grain, "moisture"),
			About: "12 to 14 % is usual for grain in store.", FindOut: moistureBySample})
	}
	return list
}

const moistureBySample = "weigh 100 g, grind it, dry it 3 h at 130 °C (266 °F), weigh it again and type maltwright reckon moisture 100g 88g"

// amount asks for the charge of a new house.
func (a asking) amount() func(func(Question) bool) {
	if a.House != nil {
		return these()
	}
	return these(a.charge())
}

// speciesWords lists the grains, by the language.
func speciesWords() []string {
	row, _ := vocabulary.Lookup(vocabulary.Grain, "species")
	return row.Slots[0].Words
}

func (a asking) species() string {
	if a.House != nil && a.has("use grain") {
		return byName(a.House.Grains, a.Answers["use grain"], func(g *model.Grain) string { return g.Name }).Species.Text
	}
	if a.has("grain") {
		return a.Answers["grain"]
	}
	return vocabulary.GrainBarley
}

// profileOf is what is usual for a grain, and for a malt of it.
func profileOf(species, malt string) profile.Profile {
	p := &model.Process{Grain: &model.Grain{}}
	p.Grain.Species.Text, p.Make.Text = species, malt
	return profile.Of(p)
}

// lotName is a name for a lot that no other has.
func (a asking) lotName() string {
	name := a.species() + " 1"
	name = strings.ToUpper(name[:1]) + name[1:]
	return unused(name, namesIn(a.House, AddGrain))
}

// unused is the name, with another number behind it where it is taken.
func unused(name string, taken []string) string {
	stem := strings.TrimRight(name, "0123456789")
	for n := 2; slices.Contains(taken, name); n++ {
		name = strings.TrimSpace(stem) + " " + strconv.Itoa(n)
	}
	return name
}

// free refuses a name that is taken.
func (a asking) free(of string) func(string) error {
	return func(name string) error {
		if slices.Contains(namesIn(a.House, of), name) {
			return refuse("call it "+unused(name, namesIn(a.House, of)), "there is a %s %q already", of, name)
		}
		return nil
	}
}

// sampled refuses a sample of which no moisture can be.
func (a asking) sampled(dry string) error {
	_, err := sampleMoisture(a.Answers["sample wet"], dry)
	return err
}

// sampleMoisture reckons the moisture of a sample by its weights.
func sampleMoisture(wet, dry string) (float64, error) {
	first, err1 := quantity.Parse(wet)
	last, err2 := quantity.Parse(dry)
	if err1 != nil || err2 != nil {
		return 0, refuse("type both weights", "the weights of the sample are not known")
	}
	r, err := reckon.Moisture([]reckon.Sample{{Wet: first, Dried: last}}, nil)
	if why := (*reckon.Error)(nil); errors.As(err, &why) {
		return 0, refuse(why.Hint, "%s", why.Message)
	}
	if band := *senseOf(vocabulary.Grain, "moisture").Usual; !band.Contains(r.Mean) {
		return 0, refuse("weigh both again, without the dish", "%s of %s is a moisture of %s, and %s is usual", dry, wet, quantity.Say(r.Mean, "%"), band)
	}
	return r.Mean, nil
}
