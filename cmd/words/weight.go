package words

import (
	"fmt"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/quantity"
)

// Weighed writes a weight that somebody weighs: as finely as the scale of the house that it
// is weighed on shows it, if need be in several goes, and to four figures at the most.
func Weighed[T ~float64](h House, kg T) string {
	if s := h.home.Goes(float64(kg)); s != nil && known(float64(kg)) {
		return h.WeightBy(float64(kg), s.Division.SI)
	}
	return Mass(h, kg)
}

// Bag writes what the marked bag weighs: in pounds and ounces where what is in it is written
// so, whatever the rest of the process is written in.
func Bag[T ~float64](h House, kg T) string {
	if h.bag != nil {
		h.British = quantity.British(h.bag.Unit()) != ""
	}
	return Weighed(h, kg)
}

// Holding names what grain lies in: in "blue tub".
func Holding(name string) string { return fmt.Sprintf("in %q", Safe(name)) }

// OnScale writes what a scale shows of a batch: 5.44 kg, 6.43 kg in "blue tub", the bag
// 131 g.
func OnScale(h House, kg answer.Kilograms, on outlook.OnScale[answer.Kilograms]) string {
	text := Weighed(h, kg)
	if on.Gross != nil {
		text += ", " + Weighed(h, on.Gross.Weight) + " " + Holding(on.Gross.In)
	}
	if on.Bag != nil {
		text += ", the bag " + Bag(h, *on.Bag)
	}
	return text
}
