package founding

import (
	"fmt"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// What malt can be dried in.
const (
	Oven       = "oven"
	Dehydrator = "dehydrator"
	TrayKiln   = "tray kiln"
	BoxKiln    = "box kiln"
	FireKiln   = "floor kiln"
)

// dryer is what is usual for a kind of dryer.
type dryer struct {
	load      float64 // kg of raw grain on each m²
	low, high float64 // °C that it reaches
	lowF      float64 // °F, where the dial of such a house begins elsewhere; 0 where it does not
	air       float64 // m³/h through each m²
	heat      float64 // W for each m²
	returns   float64 // % of the air that is blown round
	burns     bool    // it may be heated by a fire
	says      string
}

// dryers are the usual figures of small equipment (common practice).
var dryers = map[string]dryer{
	Oven:       {load: 10, low: 50, high: 230, lowF: 150, air: 20, heat: 6000, burns: true, says: "a kitchen oven, without a fan"},
	Dehydrator: {load: 10, low: 35, high: 70, air: 200, heat: 1400, returns: 70, says: "a food dryer with trays and a fan"},
	TrayKiln:   {load: 12, low: 30, high: 95, air: 120, heat: 3000, burns: true, says: "a cabinet with trays, a heater and a fan"},
	BoxKiln:    {load: 250, low: 20, high: 100, air: 1000, heat: 22000, burns: true, says: "a deep bed over a strong fan and a heater"},
	FireKiln:   {load: 25, low: 25, high: 100, air: 230, heat: 6000, burns: true, says: "a slatted floor over a fire, without a fan"},
}

// dryerKinds are the kinds in the order in which they are offered.
var dryerKinds = []string{Oven, Dehydrator, TrayKiln, BoxKiln, FireKiln}

// dryers asks for what the malt is dried in, one after the other.
func (a asking) dryers() func(func(Question) bool) {
	if !a.adds(AddDryer) {
		return these()
	}
	return func(yield func(Question) bool) {
		if a.House != nil && !yield(a.name("kiln", AddDryer, "kiln")) {
			return
		}
		for n := 1; n <= mostOf; n++ {
			key := fmt.Sprintf("dryer %d", n)
			kind := Question{Key: key, Ask: "What is the malt dried in?", Kind: OneOf, Choices: dryerChoices(), Usual: Oven,
				About: "Green malt is dried gently, below 50 °C (122 °F), and cured at 80 °C (176 °F) when it is dry.",
				also:  map[string]string{"kiln": TrayKiln, "cabinet": TrayKiln, "dryer": Dehydrator, "food dryer": Dehydrator, "fruit dryer": Dehydrator, "fire": FireKiln}}
			if n > 1 {
				kind.Ask, kind.Usual = "What is it moved to after that? (none)", None
				kind.Choices = append(choices(None+": it is finished there"), kind.Choices...)
			}
			if !yield(kind) || n > 1 && !a.has(key) || !a.dryer(key, yield) || a.House != nil {
				return
			}
			if n == 1 && a.kindBurns(key) && !yield(fireWatch()) {
				return
			}
			if n == 1 && a.withers() && !yield(a.witherSize()) {
				return
			}
		}
	}
}

// withers tells whether green malt is dried in the air of the room first: an oven has no
// fan, and is too hot for it.
func (a asking) withers() bool {
	if a.House != nil {
		return false
	}
	if parts := between.FindStringSubmatch(a.Answers["dryer 1 reaches"]); parts != nil {
		unit := a.Answers["dryer 1 reaches"][strings.LastIndex(a.Answers["dryer 1 reaches"], " ")+1:]
		if low, err := quantity.Parse(parts[1] + " " + unit); err == nil && low.SI-quantity.ZeroCelsius > tooHot {
			return true
		}
	}
	return a.dryerKind("dryer 1") == Oven
}

// tooHot is the coolest that a dryer may begin with for green malt as it has grown, °C (common practice).
const tooHot = 45

// kindBurns tells whether a dryer is heated by a fire that burns for long.
func (a asking) kindBurns(key string) bool {
	fired := a.Answers[key+" fired"]
	return vocabulary.Burns(fired) || (fired == "" || fired == DontKnow) && a.dryerKind(key) == FireKiln
}

func fireWatch() Question {
	return Question{Key: "fire watch", Ask: "Does somebody stay by the fire all night?", Kind: OneOf, Choices: choices(vocabulary.SaidYes, vocabulary.SaidNo), Usual: vocabulary.SaidNo,
		About: "Rootlets and dust that fall into a fire burn the house down. A fire burns only while somebody watches it."}
}

func (a asking) witherSize() Question {
	return Question{Key: "wither size", Ask: "On what area can you spread it to dry off first?", Kind: Amount, Unit: a.pick("m2", "ft2"), Usual: a.area(a.kilograms() / 2.5), of: quantity.Area, sense: senseOf(vocabulary.Floor, vocabulary.FactArea),
		About: "Green malt is too wet for an oven. Spread 2 to 3 kg on 1 m2 of a clean sheet in a warm room (a pound on 2 ft2).", FindOut: "measure length and width"}
}

func dryerChoices() (list []Choice) {
	for _, kind := range dryerKinds {
		list = append(list, Choice{kind, dryers[kind].says})
	}
	return list
}

// dryerKind is the kind that was answered.
func (a asking) dryerKind(key string) string {
	if a.has(key) {
		return a.Answers[key]
	}
	return Oven
}

// dryer asks for the facts of one dryer. It is false where no more is wanted.
func (a asking) dryer(key string, yield func(Question) bool) bool {
	kind := a.dryerKind(key)
	d := dryers[kind]
	area := a.si(key+" size", max(0.02, a.kilograms()/d.load))
	list := []Question{
		{Key: key + " size", Ask: "What area does malt lie on in the " + kind + "?", Kind: Amount, Unit: a.pick("m2", "ft2"), Usual: a.area(max(0.02, a.kilograms()/d.load)), of: quantity.Area, sense: senseOf(vocabulary.KilnFacts, vocabulary.FactArea),
			About: "Length times width, all trays or racks together, as 2 racks of 40 x 45 cm.", FindOut: "measure length and width"},
		{Key: key + " reaches", Ask: "From which to which temperature can the " + kind + " be set?", Kind: Span, Unit: a.degree(), Usual: a.reach(d), check: driesMalt, of: quantity.Temperature, sense: senseOf(vocabulary.KilnFacts, "reaches"),
			About: "The lowest and the highest that its dial or its fire allows.", FindOut: "try it, with a thermometer"},
		{Key: key + " heater", Ask: "What power does its heater have?", Kind: Amount, Unit: "kW", Usual: a.power(d.heat * area), of: quantity.Power, sense: senseOf(vocabulary.KilnFacts, "heater"),
			About: "The label says it, in W or kW.", FindOut: "see its label"},
	}
	if kind != Oven {
		list = append(list, Question{Key: key + " airflow", Ask: "How much air goes through the malt in it?", Kind: Amount, Unit: a.pick("m3/h", "cfm"), Usual: a.flow(d.air * area / 3600), of: quantity.Flow, sense: senseOf(vocabulary.KilnFacts, "airflow"),
			About: "The label or the papers of the fan say it.", FindOut: "see its papers"})
	}
	if d.burns {
		fuels := choices(vocabulary.FiredElectric, vocabulary.FiredGas, vocabulary.FiredWood, vocabulary.FiredOil)
		usual := vocabulary.FiredElectric
		switch kind {
		case Oven:
			fuels = fuels[:2]
		case FireKiln:
			usual = vocabulary.FiredWood
		}
		list = append(list, Question{Key: key + " fired", Ask: "What heats the " + kind + "?", Kind: OneOf, Choices: fuels, Usual: usual,
			About: "A fire needs a flue of its own: its smoke makes poison in malt, and its carbon monoxide kills."})
	}
	for _, q := range list {
		if !yield(q) {
			return false
		}
	}
	if d.burns && kind != Oven && vocabulary.Burns(a.Answers[key+" fired"]) {
		return yield(Question{Key: key + " flue", Ask: "Does the fire have a flue of its own, away from the malt?", Kind: OneOf, Choices: choices(vocabulary.SaidYes, vocabulary.SaidNo), Usual: vocabulary.SaidYes,
			About: "Smoke that goes through malt makes poison in it (nitrosamines), and carbon monoxide kills."})
	}
	return true
}

// driesMalt refuses a dryer in which malt cannot be dried.
func driesMalt(taken string) error {
	parts := between.FindStringSubmatch(taken)
	if parts == nil {
		return refuse("type the lowest and the highest, as 35 to 70 °C or 95 to 158 °F", "%s is one temperature", taken)
	}
	if high, err := quantity.Parse(parts[2]); err == nil && high.SI-quantity.ZeroCelsius < 45 {
		return refuse("malt is dried at 45 °C (113 °F) and more: look at the unit, or use another dryer", "its hottest is %s", high)
	}
	return nil
}

// reach writes what a dryer usually reaches.
func (a asking) reach(d dryer) string {
	if a.british && d.lowF != 0 {
		return "150 to 500 °F"
	}
	return a.band(d.low, d.high)
}
