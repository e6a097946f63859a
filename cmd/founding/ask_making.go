package founding

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// offered are the malts that are made without smoke, souring or a drum.
var offered = []Choice{
	{"pale", "the everyday malt"}, {"pilsner", "the palest"}, {"vienna", "a little darker"}, {"munich", "grown wet and warm, cured hot"}, {"distilling", "dried cool, with all its enzymes"},
}

// making asks for what is made, how much of it, and of which of the things of a house that is there.
func (a asking) making() func(func(Question) bool) {
	if !a.adds(AddProcess) {
		return these()
	}
	return func(yield func(Question) bool) {
		if a.House != nil && (!a.using(yield) || !yield(a.charge())) {
			return
		}
		for _, q := range []Question{
			{Key: "malt", Ask: "Which malt do you want?", Kind: OneOf, Choices: offered, Usual: "pale",
				About: "Pale malt is the one to begin with. Wheat, oats and other grains are made as pale malt too."},
			{Key: "process", Ask: "What do you call it?", Kind: Text, Usual: a.processName(), check: a.free(AddProcess),
				About: "The name of the process; its file is named after it."},
		} {
			if !yield(q) {
				return
			}
		}
	}
}

// charge asks for the weight of the grain. All that is usual of a new house follows from it.
func (a asking) charge() Question {
	return Question{Key: "charge", Ask: "How much grain do you want to malt at a time?", Kind: Amount, Unit: a.pick("kg", "lb"), Usual: a.pick("4 kg", "9 lb"), of: quantity.Mass, sense: chargeSense(),
		About: "If the vessel and the trays take less, the process is written for less."}
}

// kilograms is the charge that is asked for, kg.
func (a asking) kilograms() float64 { return a.si("charge", 4) }

func chargeSense() *vocabulary.Sense { return senseOf(vocabulary.Process, "from") }

// using asks which things of a house a process uses. It is false where no more is wanted.
func (a asking) using(yield func(Question) bool) bool {
	one := func(key, of, ask string) Question {
		names := namesIn(a.House, of)
		if of == AddGrain {
			names = slices.DeleteFunc(names, func(n string) bool { // malt that is only roasted or dried wants another process
				return !byName(a.House.Grains, n, func(g *model.Grain) string { return g.Name }).Raw()
			})
		}
		q := Question{Key: key, Ask: ask, Kind: OneOf, Choices: choicesOf(names), About: "One of those in " + a.Main + "."}
		if len(names) > 0 {
			q.Usual = names[0]
		}
		return q
	}
	list := []Question{one("use grain", AddGrain, "Of which lot?"), one("use vessel", AddVessel, "In which vessel is it steeped?"), one("use floor", AddFloor, "Where does it grow?")}
	if len(a.House.Sites) > 0 {
		list = append(list, one("use site", "site", "At which site?"))
	}
	list = append(list, one("use dryer 1", AddDryer, "In what is it dried?"))
	for _, q := range list {
		if !yield(q) {
			return false
		}
	}
	for n := 2; n <= mostOf && n <= len(a.House.Kilns); n++ {
		q := one(fmt.Sprintf("use dryer %d", n), AddDryer, "What is it moved to after that? (none)")
		q.Choices, q.Usual = append(choices(None+": it is finished there"), q.Choices...), None
		if !yield(q) {
			return false
		}
		if !a.has(q.Key) {
			break
		}
	}
	return true
}

func choicesOf(names []string) (list []Choice) {
	for _, n := range names {
		list = append(list, Choice{Word: n})
	}
	return list
}

// processName is the name of the process where none is given: Home pale.
func (a asking) processName() string {
	malt := "pale"
	if a.has("malt") {
		malt = a.Answers["malt"]
	}
	place, species := "Home", a.species()
	switch {
	case a.House != nil && len(a.House.Sites) > 0:
		place, _, _ = strings.Cut(a.House.Sites[0].Name, ",")
	case a.has("house"):
		place = a.Answers["house"]
	}
	name := place + " " + malt
	if species != vocabulary.GrainBarley {
		name = place + " " + species
	}
	return unused(name, namesIn(a.House, AddProcess))
}
