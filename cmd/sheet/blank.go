package sheet

import (
	"maltwright/check/tell"
	"maltwright/cmd/answer"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// Units are those that stand in the boxes of a general sheet.
type Units struct{ Weight, Degree string }

// UnitsOf are those that a process is written in.
func UnitsOf(p *model.Process) Units {
	h := words.Of(p)
	u := Units{"kg", h.Degree()}
	if p.Charge != nil {
		u.Weight = (&maker{p: p, h: h}).unit(answer.Kilograms(p.Charge.SI))
	}
	return u
}

// SizeOf is the paper of those who write a process.
func SizeOf(p *model.Process) Size {
	m := maker{h: words.Of(p)}
	return m.size()
}

// EitherUnits are those of a sheet for any house: one is struck out.
func EitherUnits() Units { return Units{"kg / lb", "°C / °F"} }

// Blank is a general sheet of the same form, with every figure left open.
func Blank(u Units, size Size, begin string) Sheet {
	if size.Wide == 0 {
		size = A4
	}
	s := Sheet{Title: "Malting sheet", Batch: "Batch ______________", Size: size}
	last := section{of: "dangers", bare: true, first: []Block{Cautions{Title: "Take care", Lines: everyCaution()}, goesWrong("")}}
	list := placed(append(u.sections(), last), unmetBlock([]Wrong{tooLight, tooHeavy, notMet}), size)
	if begin != "" { // before any reading
		list[0].first = append([]Block{Code{Say: sayBegin, Line: begin}}, list[0].first...)
	}
	for _, p := range list {
		s.Pages = append(s.Pages, paged(p, size)...)
	}
	return s
}

// everyCaution are the cautions of all processes together.
func everyCaution() (lines []string) {
	for c := forecast.Suffocation; c <= forecast.LocalCodes; c++ {
		if c != forecast.OldMalt { // the same is said of wet grain
			lines = append(lines, tell.Caution(c))
		}
	}
	return lines
}

// sections are the stages of a process that is not known.
func (u Units) sections() []section {
	fill := u.openVisit("fill for soak "+blank+": "+blank+" h in water at "+blank, vocabulary.PlaceWater, "")
	drain := u.openVisit("drain soak "+blank+", weigh; then "+blank+" h in air at "+blank, "", "note weighed "+blank+" after soak "+blank)
	turn := u.openVisit("turn; look; sprinkle", vocabulary.PlaceBed, "")
	heat := u.openVisit("air-on "+blank+" for "+blank+" h until "+blank, vocabulary.PlaceAirOn, "note weighed "+blank+" after "+blank)
	rub := u.openVisit("rub and sieve the rootlets off", "", "")
	store := u.openVisit("weigh the malt, put it away in "+blank+", to rest for "+blank, "", "note weighed "+blank+" clean malt")
	return []section{
		{of: "steep", first: openHead(), visits: repeated(3, fill, drain)},
		{of: "germinate", first: []Block{Heading{Text: "germinate"}}, visits: repeated(9, turn),
			looks: []Block{chitted(), rubs(), rubbed(2), acrospires(false), tally(false), tally(false)}, more: tally(false)},
		{of: "wither and kiln", first: []Block{Heading{Text: "wither and kiln"}}, visits: repeated(9, heat),
			looks: []Block{fronts(), broke(), sampleSum("malt from the kiln")}},
		{of: "deculm and store", first: []Block{Heading{Text: "deculm and store"}}, visits: []Visit{rub, store},
			looks: []Block{sampleSum("the finished malt")}},
	}
}

// openHead is what page 1 begins with.
func openHead() []Block {
	var head Head
	for _, label := range []string{"batch", "first soak", "process", "malt", "charge", "weighed in", "lot", "grain, moisture", "supplier", "delivery, year"} {
		head.Fields = append(head.Fields, Field{Label: label})
	}
	return []Block{head, Heading{Text: "Weight to look for at steep-out"}, Sums{emptySums("", "")}, Heading{Text: "steep"}}
}

// openVisit is a visit of which nothing is known but what may be done.
func (u Units) openVisit(do, place, note string) Visit {
	v := Visit{Do: []string{do}}
	if note != "" || place == "" {
		v.Boxes = append(v.Boxes, Box{Label: "weight", Unit: u.Weight})
	}
	if note != "" {
		v.Expect = []string{note}
	}
	if place != "" {
		v.Boxes = append(v.Boxes, Box{Label: place, Unit: u.Degree})
	}
	v.Boxes = append(v.Boxes, Box{Label: "time"})
	return v
}

func repeated(n int, list ...Visit) (out []Visit) {
	for range n {
		out = append(out, list...)
	}
	return out
}
