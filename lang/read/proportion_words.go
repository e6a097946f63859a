package read

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// message tells of the share, and of what is usual or can be.
func (s share) message(cannot bool) string {
	if s.Counts != "" {
		return s.counted(cannot)
	}
	band, says := s.Usual, ", and %s is usual"
	if cannot {
		band, says = s.Can, ", outside %s"
	}
	text, unit, each := s.inWords(band)
	if s.AtLeast && cannot {
		text, _, _ = strings.Cut(text, " to ")
		text, says = "at least "+text+" "+orElse(quantity.British(s.of.Unit()), band.Low.Unit()), ", and %s is needed"
	}
	return fmt.Sprintf("%s of %s for %s of %s is %s for each %s", s.of, s.Of, s.over, s.On, each, unit) + fmt.Sprintf(says, text)
}

// inWords writes a band, the unit that it is for one of, and the share itself, in the
// units of the table, or in British ones where the facts are.
func (s share) inWords(band quantity.Range) (text, unit, each string) {
	unit, num := orElse(quantity.British(s.over.Unit()), s.Unit), orElse(quantity.British(s.of.Unit()), band.High.Unit())
	scale := unitSI(unit) / unitSI(s.Unit)
	write := func(si float64) string {
		made, err := quantity.In(si, num)
		if err != nil {
			return "unknown"
		}
		if n, fine := si/unitSI(num), finer[num]; n > 0 && n < leastOfUnit && fine != "" {
			return atLeastOf(si, fine)
		} else if n > 0 && n < 10 {
			return inTwoDigits(n) + " " + num
		}
		return made.String()
	}
	each = write(s.each() * scale)
	if unit == s.Unit && num == band.High.Unit() {
		return band.String(), unit, each
	}
	return strings.TrimSuffix(write(band.Low.SI*scale), " "+num) + " to " + write(band.High.SI*scale), unit, each
}

// counted tells of the share as how many of the second fact the first is.
func (s share) counted(cannot bool) string {
	band, says := s.Usual, ", and %s is usual"
	if cannot {
		band, says = s.Can, ", outside %s"
	}
	text := manyOf(band.Low.SI/unitSI(s.Unit)) + " to " + manyOf(band.High.SI/unitSI(s.Unit))
	if s.AtLeast {
		text, says = manyOf(band.Low.SI/unitSI(s.Unit)), ", and at least %s are needed"
	}
	return fmt.Sprintf("%s of %s for %s of %s is %s %s", s.of, s.Of, s.over, s.On, manyOf(s.of.SI/s.over.SI), s.Counts) + fmt.Sprintf(says, text)
}

// manyOf writes a count: 0.31, 15, 100 million.
func manyOf(n float64) string {
	switch {
	case n < leastOfUnit:
		return fmt.Sprintf("less than %g", leastOfUnit)
	case n < 10:
		return inTwoDigits(n)
	case n < 1e6:
		return fmt.Sprintf("%.0f", n)
	}
	return fmt.Sprintf("%.4g million", n/1e6)
}

// finer are the units in which a share is told of which there is less than leastOfUnit.
var finer = map[string]string{"l": "ml", "kg": "g", "m3": "l", "m3/h": "l/min", "kW": "W", "lb": "oz", "m2": "cm2", "g": "mg"}

const leastOfUnit = 0.001

// atLeastOf writes a share, of which there may be next to nothing.
func atLeastOf(si float64, unit string) string {
	if si < leastOfUnit*unitSI(unit) {
		return fmt.Sprintf("less than %g %s", leastOfUnit, unit)
	}
	return quantity.About(si, unit)
}

// inTwoDigits writes a number between nothing and ten: 2.5, 0.0042.
func inTwoDigits(n float64) string {
	text := strconv.FormatFloat(n, 'f', 1-int(math.Floor(math.Log10(n))), 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// slip says which other unit of one fact would put the share right.
func (s share) slip(at *model.Quantity) string {
	if s.Name == vocabulary.BagMarks { // a larger unit would always do
		return ""
	}
	number, ok := numberOf(at.Quantity)
	if !ok {
		return ""
	}
	for _, unit := range likelyUnits[at.Unit()] {
		made, err := quantity.Make(quantity.Part{Number: number, Unit: unit})
		if err != nil || made.SI <= 0 {
			continue
		}
		meant := s
		if at == s.of {
			meant.of = &model.Quantity{Quantity: made, Place: at.Place}
		} else {
			meant.over = &model.Quantity{Quantity: made, Place: at.Place}
		}
		if meant.out(s.Usual) == 0 {
			return fmt.Sprintf("if %s was meant, write it: %s", unit, made)
		}
	}
	return ""
}

// How deep a kilogram of raw barley lies on a square metre, m, as the forecast has it: poured, 680 kg/m³;
// as it comes to grow, swollen by two fifths of that; as green malt, whose rootlets stand, by nine tenths.
var depths = map[string]float64{vocabulary.FloorLoad: 1.4 / 680, vocabulary.KilnLoad: 1.88 / 680}

// depth says how deep the grain of the share would lie, in the units of the house.
func (s share) depth() string {
	of := depths[s.Name]
	if of == 0 {
		return ""
	}
	unit := "m"
	switch deep := of * s.each(); {
	case quantity.British(s.over.Unit()) != "" && deep < 1:
		unit = "in"
	case quantity.British(s.over.Unit()) != "":
		unit = "ft"
	case deep < 0.01:
		unit = "mm"
	case deep < 1:
		unit = "cm"
	}
	deep, err := quantity.In(of*s.each(), unit)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("it would lie about %s deep: look at both numbers and their units", deep)
}
