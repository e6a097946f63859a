package read

import (
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// share is one fact over another, held against what makes sense.
type share struct {
	vocabulary.Proportion
	of, over *model.Quantity
	charge   float64 // kg of raw grain for each kg of the charge; 0 is 1
}

// sharesOf makes the shares of which both facts are given.
type sharesOf []share

func (l *sharesOf) add(name string, of, over *model.Quantity) {
	if pr, ok := vocabulary.FindProportion(name); ok && of != nil && over != nil {
		*l = append(*l, share{Proportion: pr, of: of, over: over})
	}
}

// each is the first for one unit of the second, SI.
func (s share) each() float64 {
	each := s.of.SI / s.over.SI * unitSI(s.Unit)
	switch {
	case s.charge == 0:
		return each
	case s.Of == vocabulary.Charged:
		return each * s.charge
	}
	return each / s.charge
}

// rawOfGreen is the raw grain that a kilogram of green malt was, kg: green malt weighs some
// 1.5 to 1.6 times as much (common practice).
const rawOfGreen = 0.65

func unitSI(unit string) float64 {
	one, _ := quantity.Make(quantity.Part{Number: "1", Unit: unit})
	return one.SI
}

// out tells on which side of a band the share lies, 0 for inside.
func (s share) out(band quantity.Range) int {
	switch r := s.each(); {
	case band.Contains(r):
		return 0
	case r < band.Low.SI:
		return -1
	}
	return 1
}

// leans tells whether the share lies outside its usual band on a side, or in the outer
// third of it by the logarithm.
func (s share) leans(side int) bool {
	if s.AtLeast { // of too much it says nothing
		return side > 0 || s.each() < 1.5*s.Can.Low.SI
	}
	low, high := math.Log(s.Usual.Low.SI), math.Log(s.Usual.High.SI)
	at := (math.Log(s.each()) - low) / (high - low)
	return side < 0 && at < 1.0/3 || side > 0 && at > 2.0/3
}

// forCharge turns a side of the share into one of the charge: 1 is much grain for the
// fact, −1 little.
func (s share) forCharge(side int) int {
	if s.Of == vocabulary.Charged {
		return side
	}
	return -side
}

// proportions holds the charge of a process against what it lies in and on. Where all
// of them agree that it is too much, or too little, it is the charge that is
// underlined, once: one slip explains all of it. Otherwise it is the other fact.
func (b *builder) proportions(p *model.Process) {
	list := chargeShares(p)
	told := false
	for i, s := range list {
		side := s.out(s.Usual)
		if side == 0 {
			continue
		}
		others := slices.Delete(slices.Clone(list), i, i+1)
		agree := len(others) > 0 && !slices.ContainsFunc(others, func(o share) bool {
			return o.Name != s.Name && !o.leans(o.forCharge(s.forCharge(side)))
		})
		switch at := s.fact(p); {
		case agree && told:
		case agree:
			told = true
			b.disproportion(s, p.Charge)
		default:
			b.disproportion(s, at)
		}
	}
}

// fact is the one of the two that is not the charge.
func (s share) fact(p *model.Process) *model.Quantity {
	if s.of == p.Charge {
		return s.over
	}
	return s.of
}

func chargeShares(p *model.Process) sharesOf {
	list := sharesOfCharge(p)
	for i := range list {
		if p.Grain.Grown() {
			list[i].charge = rawOfGreen
		}
	}
	return list
}

func sharesOfCharge(p *model.Process) sharesOf {
	var list sharesOf
	for _, st := range p.Stages {
		if piece := model.PieceOf(st); piece != nil && piece.Floor != nil {
			list.add(vocabulary.FloorLoad, p.Charge, piece.Floor.Area)
		}
		switch st := st.(type) {
		case *model.Germination:
			if st.Sprinkle != nil {
				list.add(sprinkledBy(st.Sprinkle.Water, p.Charge))
			}
		case *model.Steep:
			list.add(vocabulary.WaterRoom, st.Room(), p.Charge)
		case *model.Kilning:
			if st.Kiln != nil {
				list.add(vocabulary.KilnLoad, p.Charge, st.Kiln.Area)
				list.add(vocabulary.AirOfGrain, st.Kiln.Air(), p.Charge)
			}
		}
	}
	return list
}

// sprinkledBy names the proportion by how the water is measured. What is given for each
// kilogram is told as the litres that it comes to.
func sprinkledBy(water, charge *model.Quantity) (name string, of, over *model.Quantity) {
	if water == nil || charge == nil || water.Dimension == quantity.Volume {
		return vocabulary.Sprinkled, water, charge
	}
	if water.Dimension == quantity.Mass {
		return vocabulary.SprinkledW, water, charge
	}
	litres, err := quantity.In(water.SI*charge.SI, "l")
	if err != nil {
		return vocabulary.Sprinkled, nil, charge
	}
	return vocabulary.Sprinkled, &model.Quantity{Quantity: litres, Place: water.Place}, charge
}

// floorProportions holds the air of a box against its area.
func (b *builder) floorProportions(f *model.Floor) {
	var list sharesOf
	list.add(vocabulary.AirOfBox, f.Airflow, f.Area)
	list.add(vocabulary.PowerOfFan, f.FanPower, f.Airflow)
	for _, s := range list {
		if s.out(s.Usual) != 0 {
			b.disproportion(s, s.of)
		}
	}
}

// kilnProportions holds the facts of a kiln against each other.
func (b *builder) kilnProportions(k *model.Kiln) {
	var list sharesOf
	list.add(vocabulary.HeatOfArea, k.Heater, k.Area)
	switch {
	case k.Tumbles: // it has no area, and its air is a vent
	case k.Draught.Text == vocabulary.DraughtStill:
		list.add(vocabulary.AirOfOven, k.Airflow, k.Area)
	default:
		list.add(vocabulary.AirOfArea, k.Air(), k.Area)
		list.add(vocabulary.HeatOfAir, k.Heater, k.Air())
	}
	before := len(b.found)
	airIsOut := false
	for _, s := range list {
		switch {
		case s.out(s.Usual) == 0:
		case s.Name == vocabulary.AirOfArea && airFitsHeater(list):
			b.disproportion(s, s.over)
		case s.Name == vocabulary.AirOfArea:
			airIsOut = true
			b.disproportion(s, s.of)
		case s.Name == vocabulary.HeatOfAir && (airIsOut || s.out(s.Usual) < 0 && list.muchAir()):
			b.disproportion(s, s.over)
		default:
			b.disproportion(s, s.of)
		}
	}
	if len(b.found) == before {
		b.heaterForReach(k, list.muchAir())
		b.together(vocabulary.PowerOfFan, k.FanPower, k.Air())
		b.fanForPower(k)
	}
	if k.Walls != nil {
		b.together(vocabulary.WallsRound, k.Walls.Area, k.Area)
	}
	b.hardlyWarm(k)
}

// together holds two facts of one thing against each other.
func (b *builder) together(name string, of, over *model.Quantity) {
	var list sharesOf
	list.add(name, of, over)
	for _, s := range list {
		if s.out(s.Usual) != 0 {
			b.disproportion(s, s.of)
		}
	}
}

// muchAir tells whether, held against the area, the airflow is high and the heater is
// not low: what does not fit is then rather the airflow.
func (l sharesOf) muchAir() bool {
	high, low := false, false
	for _, s := range l {
		high = high || s.Name == vocabulary.AirOfArea && s.leans(1)
		low = low || s.Name == vocabulary.HeatOfArea && s.leans(-1)
	}
	return high && !low
}

// airFitsHeater tells whether the heater says that the airflow is right, so that of
// airflow and area it is the area that is not.
func airFitsHeater(list sharesOf) bool {
	return slices.ContainsFunc(list, func(s share) bool { return s.Name == vocabulary.HeatOfAir && !s.leans(1) && !s.leans(-1) })
}

// disproportion reports a share at one of its facts, unless something no less grave
// was said of the fact: one slip throws it out of proportion with all.
func (b *builder) disproportion(s share, at *model.Quantity) {
	cannot := s.out(s.Can) != 0
	f := outOfProportion.At(at.Place, s.message(cannot))
	if cannot {
		f.Severity = fault
	}
	if slices.ContainsFunc(b.found, func(known finding.Finding) bool {
		return (known.Rule == unusualFigure.Name || known.Rule == outOfProportion.Name) && known.Place == at.Place && known.Severity >= f.Severity
	}) {
		return
	}
	if s.out(s.Usual) < 0 {
		f.Hint = orElse(s.Little, f.Hint)
	}
	f.Hint = orElse(s.slip(at), orElse(s.depth(), f.Hint))
	other := s.of
	if at == s.of {
		other = s.over
	}
	f.Related = []finding.Related{{Place: other.Place, Message: "for this"}}
	b.note(f)
}
