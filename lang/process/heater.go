package process

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/finding"
)

// Air that is warmed, as it leaves the heater (handbook), and what the walls of a kiln
// lose at the least: four times its floor of a hand of mineral wool (derived from
// 0.04 W/(m·K) and 4 cm).
const (
	roomOfKiln = 293.15 // K
	densityAt  = 1.2    // kg/m³ at roomOfKiln
	heatOfAir  = 1006.0 // J/(kg·K)
	wallLoss   = 4.0    // W for each m² of floor and K
	farTooWeak = 0.6    // of the heat that it takes: less is told
)

// heaterForReach reports a heater that cannot warm the kiln's own air to what the kiln
// is said to reach, by a balance of heat.
func (b *builder) heaterForReach(k *Kiln) {
	if k.Heater == nil || k.Reaches == nil || k.Reaches.High.SI <= roomOfKiln {
		return
	}
	hot := k.Reaches.High.SI
	rise := hot - roomOfKiln
	needs, over := 0.0, ""
	if k.Airflow != nil {
		fresh := k.Airflow.SI
		if k.Returns != nil {
			fresh *= 1 - k.Returns.SI
		}
		needs = fresh * densityAt * roomOfKiln / hot * heatOfAir * rise
		over = fmt.Sprintf(" for %s of air", k.Airflow)
	}
	if k.Area != nil {
		needs += wallLoss * k.Area.SI * rise
		over += fmt.Sprintf(" and the walls around %s", k.Area)
	}
	if k.Airflow == nil {
		over = strings.Replace(over, " and", " for", 1)
	}
	if k.Heater.SI >= farTooWeak*needs {
		return
	}
	one := unitSI(k.Heater.Unit())
	takes := k.Heater.Like(twoDigits(needs/one) * one)
	f := outOfProportion.At(k.Heater.Place, fmt.Sprintf("a heater of %s is weak for a kiln that reaches %s: it takes some %s%s", k.Heater, k.Reaches.High, takes, over))
	f.Hint = "look at the heater, the airflow and what the kiln reaches"
	f.Related = []finding.Related{{Place: k.Reaches.Place, Message: "what it reaches"}}
	b.note(f)
}

// twoDigits rounds to two digits that mean something.
func twoDigits(v float64) float64 {
	scale := math.Pow10(int(math.Floor(math.Log10(v))) - 1)
	return math.Round(v/scale) * scale
}
