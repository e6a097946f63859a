package founding

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"maltwright/lang/vocabulary"
	"maltwright/sim/reckon"
)

// sheet is a text of the language that is being written, line by line. The layout puts it
// in order.
type sheet struct {
	strings.Builder
	questions map[string]Question
	asking
}

func (a asking) sheet() *sheet {
	s := &sheet{questions: map[string]Question{}, asking: a}
	for q := range a.all {
		s.questions[q.Key] = q
	}
	return s
}

func (s *sheet) line(format string, args ...any) { fmt.Fprintf(s, format+"\n", args...) }

// value is the answer, or what is usual, and the comment on it.
func (s *sheet) value(key string) (text, comment string) {
	if s.has(key) {
		return s.Answers[key], ""
	}
	q := s.questions[key]
	if q.Usual == None || s.Answers[key] == None {
		return None, ""
	}
	comment = "  # usual"
	if q.FindOut != "" {
		comment += "; to find it out, " + q.FindOut
	}
	return q.Usual, comment
}

// fact writes a statement of an answer, if there is something to write.
func (s *sheet) fact(word, key string) {
	if text, comment := s.value(key); text != None && text != "" {
		s.line("%s %s%s", word, text, comment)
	}
}

// open begins a block.
func (s *sheet) open(word, name string) { s.line("\n%s \"%s\" {", word, name) }
func (s *sheet) shut()                  { s.line("}") }

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
			s.line("moisture %s  # a sample of %s dried to %s", reckon.Percent().Like(w), s.Answers["sample wet"], s.Answers["sample dry"])
		}
	case s.has("moisture"):
		s.line("moisture %s", s.Answers["moisture"])
	default:
		s.line("moisture 12 %%  # usual; to find it out, %s", moistureBySample)
	}
	if s.has("germination") {
		n, of, _ := strings.Cut(s.Answers["germination"], " of ")
		k, _ := strconv.Atoi(n)
		m, _ := strconv.Atoi(of)
		s.line("germination %s %% of %d kernels", strconv.FormatFloat(math.Round(1000*float64(k)/float64(max(m, 1)))/10, 'f', -1, 64), m)
	} else {
		s.line("# germination is not known yet: %s", s.questions["germination"].FindOut)
	}
	s.fact("treated", "treated")
	if _, ok := s.questions["mould"]; ok {
		g := profileOf(s.species(), "").Grain
		found, comment := s.Answers["mould"], ""
		if found == DontKnow {
			found, comment = s.value("mould")
		}
		if g.ErgotRisk {
			s.line("ergot %s%s", found, comment)
		}
		if g.MouldCheck {
			s.line("mould %s%s", found, comment)
		}
	}
	s.shut()
}

func (s *sheet) site() {
	s.open("site", s.placeCalled())
	s.fact("air", "air")
	s.line("humidity 55 to 80 %%  # usual; to find it out, hang up a hygrometer")
	s.fact("water", "water")
	s.fact("altitude", "altitude")
	text, comment := s.value("awake")
	for i, span := range strings.Split(text, " and ") {
		if i > 0 {
			comment = ""
		}
		s.line("awake %s%s", span, comment)
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
		s.line("airflow %s  # what leaks or is vented, usual", s.flow(d.air*s.si(k.key+" size", s.kilograms()/d.load)/3600))
	case FireKiln:
		s.fact("airflow", k.key+" airflow")
		s.line("draught natural")
	default:
		s.fact("airflow", k.key+" airflow")
		if d.returns > 0 {
			s.line("returns %g %%  # usual: such dryers blow most of their air round", d.returns)
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
	if vocabulary.Burns(fired) {
		s.line("fired %s by indirect  # its smoke has a flue of its own, away from the malt", fired)
	} else {
		s.line("fired %s", fired)
	}
	s.shut()
}
