package words

import (
	"fmt"
	"math"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/quantity"
)

// NotForecast says which processes cannot be compared by their forecasts.
func NotForecast(r effect.Result) (list []string) {
	for _, e := range r.Effects {
		which := r.New
		if e.NotForecast == effect.OldSide {
			which = r.Old
		}
		if !e.Complete {
			list = append(list, fmt.Sprintf("%q cannot be forecast in %s; see maltwright check", e.Process, which))
		}
	}
	return list
}

// EffectRow is a figure of two forecasts; More is how much more the new one is, and may
// be "".
type EffectRow struct{ What, Old, New, More string }

// EffectRows tells the figures of a process that are shown otherwise.
func (h House) EffectRows(e effect.Effect) (rows []EffectRow) {
	add := func(r EffectRow) {
		if r.Old != r.New {
			rows = append(rows, r)
		}
	}
	for _, m := range h.effects() {
		if m.gates {
			for _, g := range e.Gates {
				add(gateRow(g))
			}
			continue
		}
		add(m.row(&e))
	}
	return rows
}

// told is how a figure of two forecasts is told.
type told struct {
	what  string
	of    func(*effect.Effect) (old, new float64)
	show  func(float64) string
	more  func(float64) string // of a difference; nil where none is told
	none  string               // what is said where a side has none
	gates bool                 // the gates come here
}

// What is said in place of a figure of a stage that the process does not have.
const (
	noSteep = "no steep"
	noKiln  = "no kiln"
	noFan   = "no fan"
	noBed   = "no bed"

	notForecast = "not forecast" // malt that came on to a kiln has it, and the model does not
	noNight     = "-"            // nobody says when somebody is awake
)

func (h House) effects() []told {
	mass := func(kg float64) string { return Mass(h, kg) }
	each := func(perTonne float64) string { return Heat(perTonne/1000) + "/kg" }
	if h.British {
		each = func(perTonne float64) string { return Heat(perTonne/1000*quantity.Pound) + "/lb" }
	}
	return []told{
		{"steep-out time", func(e *effect.Effect) (float64, float64) { return e.SteepOut.Plain() }, Lasting[float64], More, noSteep, false},
		{"steep-out moisture", func(e *effect.Effect) (float64, float64) { return e.SteepOutMoisture.Plain() }, Percent[float64], pointsMore, noSteep, false},
		{"total time", func(e *effect.Effect) (float64, float64) { return e.Total.Plain() }, Lasting[float64], More, "", false},
		{gates: true},
		{"final moisture", func(e *effect.Effect) (float64, float64) { return e.FinalMoisture.Plain() }, Percent[float64], pointsMore, "", false},
		{"malt", func(e *effect.Effect) (float64, float64) { return e.Malt.Plain() }, mass, nil, "", false},
		{"yield as is", func(e *effect.Effect) (float64, float64) { return e.Yield.Plain() }, Percent[float64], pointsMore, "", false},
		{"dry matter lost", func(e *effect.Effect) (float64, float64) { return e.DryMatterLost.Plain() }, Percent[float64], pointsMore, "", false},
		{"diastatic enzymes kept", func(e *effect.Effect) (float64, float64) { return e.DiastaticKept.Plain() }, Percent[float64], pointsMore, noKiln, false},
		{"alpha enzymes kept", func(e *effect.Effect) (float64, float64) { return e.AlphaKept.Plain() }, Percent[float64], pointsMore, noKiln, false},
		{"colour", func(e *effect.Effect) (float64, float64) { return e.Colour.Plain() }, colour, nil, noKiln, false},
		{"water for the steep", func(e *effect.Effect) (float64, float64) { return e.SteepWater.Plain() }, h.Water, nil, "", false},
		{"water sprinkled", func(e *effect.Effect) (float64, float64) { return e.Sprinkled.Plain() }, mass, nil, "", false},
		{"fans run", func(e *effect.Effect) (float64, float64) { return e.Fan.Plain() }, Lasting[float64], More, noFan, false},
		{"the fans draw", func(e *effect.Effect) (float64, float64) { return e.FanEnergy.Plain() }, Heat[float64], nil, noFan, false},
		{"heat of blown air", func(e *effect.Effect) (float64, float64) { return e.AirHeat.Plain() }, Heat[float64], nil, noFan, false},
		{"cold of blown air", func(e *effect.Effect) (float64, float64) { return e.AirCold.Plain() }, Heat[float64], nil, noFan, false},
		{"water sprayed into it", func(e *effect.Effect) (float64, float64) { return e.Sprayed.Plain() }, mass, nil, noFan, false},
		{"bed, bottom to top", func(e *effect.Effect) (float64, float64) { return e.Apart.Plain() }, h.apart, nil, noFan, false},
		{"heat of the kiln", func(e *effect.Effect) (float64, float64) { return e.KilnHeat.Plain() }, Heat[float64], nil, "", false},
		{"fuel for malt", func(e *effect.Effect) (float64, float64) { return e.FuelPerTonne.Plain() }, each, nil, "", false},
		{"power for malt", func(e *effect.Effect) (float64, float64) { return e.PowerPerTonne.Plain() }, each, nil, "", false},
		{"most heat of a bed", func(e *effect.Effect) (float64, float64) { return e.BedPeak.Plain() }, Power[float64], nil, noBed, false},
		{"visits at night, at best", nights, number, nil, noNight, false},
	}
}

// absent is what is said where a side has no such figure.
func (t told) absent(kilned bool) string {
	if kilned && (t.none == noKiln || t.none == "") {
		return notForecast
	}
	return t.none
}

func (t told) row(e *effect.Effect) EffectRow {
	old, new := t.of(e)
	r := EffectRow{What: t.what, Old: t.absent(e.OldKilned), New: t.absent(e.NewKilned)}
	if known(old) {
		r.Old = t.show(old)
	}
	if known(new) {
		r.New = t.show(new)
	}
	if t.more != nil && known(old) && known(new) {
		r.More = t.more(new - old)
	}
	return r
}

func colour(ebc float64) string { return Colours.Write(ebc) + " EBC" }

// nights are the visits at night of both sides, NaN where that is not known.
func nights(e *effect.Effect) (old, new float64) {
	old, new = math.NaN(), math.NaN()
	if n := e.NightVisits.Old; n != nil {
		old = float64(*n)
	}
	if n := e.NightVisits.New; n != nil {
		new = float64(*n)
	}
	return old, new
}

func number(n float64) string { return fmt.Sprintf("%.0f", n) }

func pointsMore(share float64) string { return more(100*share, 1, "points") }

// more writes a difference with its unit; it is "" where nothing is left of it.
func more(by float64, places int, unit string) string {
	if text := quantity.Signed(by, places); text != "" {
		return text + " " + unit
	}
	return ""
}

func gateRow(g effect.Gates) EffectRow {
	r := EffectRow{Old: gateText(g.Old), New: gateText(g.New)}
	switch {
	case g.New == nil:
		r.What = gateName(g.Old)
	case g.Old != nil && g.Old.Awaits() != g.New.Awaits():
		r.What = gateName(g.Old) + " → " + g.New.Awaits()
	case g.Old == nil || g.Old.Text == g.New.Text:
		r.What = gateName(g.New)
	default:
		r.What = gateName(g.Old) + " → " + g.New.Text
	}
	if g.Old != nil && g.New != nil && g.Old.Met && g.New.Met && !g.Old.Unjudged && !g.New.Unjudged {
		r.More = More(float64(g.New.Reached - g.Old.Reached))
	}
	return r
}

func gateName(g *outlook.Gate) string {
	return g.Awaits() + ", " + g.Text
}

func gateText(g *outlook.Gate) string {
	switch {
	case g == nil:
		return ""
	case g.Unjudged:
		return "not judged"
	case !g.Met:
		return "not met, " + Percent(g.Moisture)
	}
	return Lasting(g.Reached) + ", " + Percent(g.Moisture)
}

// apart writes by how much two temperatures differ, K.
func (h House) apart(k float64) string {
	return fmt.Sprintf("%s %s", quantity.Fixed(k*h.Step(), 1), h.Degree())
}
