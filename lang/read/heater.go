package read

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Air that is warmed, as it leaves the heater (handbook), and what the walls of a kiln
// lose at the least: four times its floor of a hand of mineral wool (derived from
// 0.04 W/(m·K) and 4 cm).
const (
	roomOfKiln = 20 + quantity.ZeroCelsius // K
	densityAt  = 1.2                       // kg/m³ at roomOfKiln
	heatOfAir  = 1006.0                    // J/(kg·K)
	wallLoss   = 4.0                       // W for each m² of floor and K
	farTooWeak = 0.6                       // of the heat that it takes: less is told
)

// heaterForReach reports a heater that cannot warm the kiln's own air to what the kiln
// is said to reach, by a balance of heat. Where it is rather the airflow that is off, it
// is that which is underlined.
func (b *builder) heaterForReach(k *model.Kiln, muchAir bool) {
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
		if k.Recovers != nil {
			fresh *= 1 - k.Recovers.SI
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
	if k.Efficiency != nil {
		needs /= k.Efficiency.SI
	}
	if k.Heater.SI >= farTooWeak*needs {
		return
	}
	one := unitSI(k.Heater.Unit())
	takes := k.Heater.Like(twoDigits(needs/one) * one)
	f := outOfProportion.At(k.Heater.Place, fmt.Sprintf("a heater of %s is weak for a kiln that reaches %s: it takes %s and more%s", k.Heater, k.Reaches.High, takes, over))
	f.Hint = "look at the heater, the airflow and what the kiln reaches"
	f.Related = []finding.Related{{Place: k.Reaches.Place, Message: "what it reaches"}}
	if k.Airflow != nil {
		f.Related = append(f.Related, finding.Related{Place: k.Airflow.Place, Message: "its air"})
	}
	if muchAir {
		f.Place = k.Airflow.Place
		f.Message = fmt.Sprintf("%s of air is much for a heater of %s and a kiln that reaches %s: it takes %s and more", k.Airflow, k.Heater, k.Reaches.High, takes)
		f.Related[1] = finding.Related{Place: k.Heater.Place, Message: "its heater"}
	}
	b.note(f)
}

// hardlyWarm reports a kiln whose hottest air hardly dries malt, let alone cures it. The
// sun may heat no more.
func (b *builder) hardlyWarm(k *model.Kiln) {
	if k.Reaches == nil || k.Reaches.High.SI >= warmsMalt || k.Fired.Text == vocabulary.FiredSolar || slices.ContainsFunc(b.found, func(f finding.Finding) bool { return f.Place == k.Reaches.Place }) {
		return
	}
	f := unusualFigure.At(k.Reaches.Place, fmt.Sprintf("a kiln that reaches %s hardly dries malt: its hottest air is usually at %s or more", k.Reaches, k.Reaches.High.Like(warmsMalt)))
	if usual, ok := between("45", "280", "°C"); ok {
		slipOf(&f, k.Reaches.Place, quantity.Range{Low: k.Reaches.High, High: k.Reaches.High}, usual)
	}
	b.note(f)
}

const warmsMalt = 45 + quantity.ZeroCelsius // K; the hottest air of a kiln (common practice)

// twoDigits rounds to two digits that mean something.
func twoDigits(v float64) float64 {
	scale := math.Pow10(int(math.Floor(math.Log10(v))) - 1)
	return math.Round(v/scale) * scale
}
