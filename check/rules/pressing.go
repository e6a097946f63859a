package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// A fan of a hand's size in a pipe presses so hard, Pa (common practice). One that gives more
// air may be made for a deep bed.
const (
	smallPresses = 100.0
	smallFan     = 300.0 / hour // m³/s
)

// roomAir is that of 20 °C at sea level, for which the resistance of a bed is told.
var roomAir = air.State{T: 20, P: air.StandardPressure}

// clearlyMore is how much more pressure than there is counts as more.
const clearlyMore = 1.2

// tooTight reports a bed through which what moves the air does not press it.
func (c *Case) tooTight(r finding.Rule, st *model.Kilning, k *model.Kiln, depth float64) {
	if k.Airflow == nil || k.Draught.Text == vocabulary.DraughtStill || len(k.Fan) > 0 || k.Chimney != nil {
		return // of what drives its air by itself the forecast tells
	}
	most, what := presses(k)
	speed := k.Airflow.SI / k.Area.SI
	species, _ := grain.Of(c.Profile.Grain.Name) // of none known the malt of barley
	takes := species.Malt.Packing().Loss(speed, roomAir) * depth
	if most == 0 || takes < most*clearlyMore {
		return
	}
	like := lengthsOf(k.Area.Quantity)
	f := r.At(st.Place(), fmt.Sprintf("%s of air through malt %s deep on %s needs %s the pressure that %s has", k.Airflow, like(depth), k.Area, timesAs(takes/most), what))
	f.Hint = fmt.Sprintf("dry smaller charges, or dry on %s and more; or write the airflow that gets through the malt", k.Area.Like(k.Area.SI*math.Sqrt(takes/most))) // it lies thinner there, and the air is slower
	f.Related = []finding.Related{{Place: k.Area.Place, Message: "its area"}, {Place: k.Airflow.Place, Message: "its air"}}
	c.Note(f)
}

// presses gives the most pressure that moves the air of a kiln, and by what; 0 for a fan
// that may press as hard as it takes.
func presses(k *model.Kiln) (most float64, what string) {
	switch {
	case k.Draught.Text == vocabulary.DraughtNatural:
		return forecast.DrawsHard, "a flue"
	case k.Airflow.SI < smallFan:
		return smallPresses, "a fan so small"
	}
	return 0, ""
}
