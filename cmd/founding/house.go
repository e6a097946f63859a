package founding

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"maltwright/lang/vocabulary"
	"maltwright/sim/reckon"
)

// facts writes the blocks of what was asked for.
func (s *sheet) facts() {
	if s.adds(AddGrain) {
		s.grain()
	}
	if s.House == nil {
		s.site()
	}
	if s.adds(AddVessel) {
		for _, v := range s.vesselNames() {
			s.open("vessel", v.name)
			s.fact(vocabulary.FactHolds, v.key+" holds")
			s.fact("weighs", v.key+" weighs")
			s.shut()
		}
	}
	if s.House == nil && s.has("scale division") {
		s.open("scale", "scale")
		s.fact("division", "scale division")
		s.shut()
	}
	if s.adds(AddFloor) {
		s.floor()
	}
	if s.withers() {
		s.open("floor", "sheet")
		s.fact(vocabulary.FactArea, "wither size")
		s.shut()
	}
	if s.adds(AddDryer) {
		for _, k := range s.dryerNames() {
			s.kiln(k)
		}
	}
}

func (s *sheet) grain() {
	s.open("grain", s.lotCalled())
	s.line("species %s", s.species())
	switch {
	case s.Answers["moisture known"] == "sample":
		if w, err := sampleMoisture(s.Answers["sample wet"], s.Answers["sample dry"]); err == nil {
			s.noted("moisture "+reckon.Percent().Like(w), fmt.Sprintf("%s dried to %s", s.Answers["sample wet"], s.Answers["sample dry"]))
		}
	case s.has("moisture"):
		s.line("moisture %s", s.Answers["moisture"])
	default:
		s.noted("moisture 12 %", "usual for grain in store; find it out: "+moistureBySample)
	}
	if s.has("germination") {
		n, of, _ := strings.Cut(s.Answers["germination"], " of ")
		k, _ := strconv.Atoi(n)
		m, _ := strconv.Atoi(of)
		counted := ""
		if m != 100 {
			counted = s.Answers["germination"] + " sprouted"
		}
		s.noted(fmt.Sprintf("germination %s %% of %d kernels", strconv.FormatFloat(math.Round(1000*float64(k)/float64(max(m, 1)))/10, 'f', -1, 64), m), counted)
	} else {
		s.comment("The germination is not known yet: " + s.questions["germination"].FindOut + ".")
	}
	if s.has("treated") {
		s.line("treated %s", s.Answers["treated"])
	} else {
		s.noted("treated "+vocabulary.SaidUnknown, "ask the seller: treated seed is poison")
	}
	for _, of := range []string{"ergot", "mould"} {
		if found := s.Answers["mould"]; found != "" && found != DontKnow { // none is an answer here
			s.line("%s %s", of, found)
		} else {
			s.noted(of+" "+vocabulary.SaidUnknown, looks[of])
		}
	}
	s.shut()
}

// looks is what is to be looked for in a lot.
var looks = map[string]string{"ergot": "look for black horns: they are poison", "mould": "look for pink, white or shrunken kernels: poison"}

func (s *sheet) site() {
	s.open("site", s.placeCalled())
	s.fact("air", "air")
	s.noted("humidity 55 to 80 %", "usual; find it out: hang up a hygrometer")
	s.fact("water", "water")
	s.fact("altitude", "altitude")
	if s.Answers["fresh air"] == vocabulary.SaidYes {
		s.line("accept co2-room because \"aired at the floor, with a CO2 alarm\"")
	}
	if s.Answers["fire watch"] == vocabulary.SaidYes {
		s.line("accept fire-unattended because \"somebody stays by the fire all night\"")
	}
	text, comment := s.value("awake")
	for i, span := range strings.Split(text, " and ") {
		if i > 0 {
			comment = ""
		}
		s.noted("awake "+span, comment)
	}
	s.shut()
}

func (s *sheet) floor() {
	kind := s.growsOn()
	s.open("floor", s.floorCalled())
	s.fact(vocabulary.FactArea, "grows size")
	s.fact("weighs", "grows weighs")
	if kind == Box || kind == Drum {
		s.fact("airflow", "grows airflow")
	}
	s.fact("heater", "grows heater")
	if kind == Box || kind == Drum {
		s.fact("cooler", "grows cooler")
	}
	if kind == Drum {
		s.line("tumbles yes")
	}
	s.shut()
}

func (s *sheet) kiln(k named) {
	kind := s.dryerKind(k.key)
	d := dryers[kind]
	s.open("kiln", k.name)
	s.fact(vocabulary.FactArea, k.key+" size")
	switch kind {
	case Oven:
		s.line("draught still")
		s.noted("airflow "+s.flow(d.air*s.si(k.key+" size", max(0.02, s.kilograms()/d.load))/3600), "usual of what leaks from an oven")
	case FireKiln:
		s.fact("airflow", k.key+" airflow")
		s.line("draught natural")
	default:
		s.fact("airflow", k.key+" airflow")
		if d.returns > 0 {
			s.noted(fmt.Sprintf("returns %g %%", d.returns), "usual; most of its air goes round")
		} else {
			s.line("draught fan")
		}
	}
	s.fact("reaches", k.key+" reaches")
	s.fact("heater", k.key+" heater")
	fired := vocabulary.FiredElectric
	if d.burns {
		fired, _ = s.value(k.key + " fired")
	}
	if flue, _ := s.value(k.key + " flue"); vocabulary.Burns(fired) && flue == vocabulary.SaidNo {
		s.noted("fired "+fired+" by direct", "its smoke goes through the malt")
	} else if vocabulary.Burns(fired) {
		s.noted("fired "+fired+" by indirect", "its smoke goes up a flue, not into the malt")
	} else {
		s.line("fired %s", fired)
	}
	s.shut()
}
