package words

import (
	"fmt"

	"maltwright/cmd/answer/outlook"
)

// Enzymes says what the enzymes of the malt suffice for, and on what that stands.
func (h House) Enzymes(e outlook.Enzymes) string {
	said := sufficing[e.Enough](e)
	switch {
	case e.Hottest != nil:
		said += fmt.Sprintf("; %s at %s moisture is hotter than the %s that they bear so wet", h.Shown(e.Hottest.Temperature), Percent(e.Hottest.Moisture), h.Shown(e.Hottest.Bears))
	case e.Gentle != nil && *e.Gentle:
		said += "; dried gently to 10 % moisture"
	}
	return said + " (" + standings[e.Standing] + ")"
}

var sufficing = map[outlook.Suffice]func(outlook.Enzymes) string{
	outlook.ForUnmalted: func(e outlook.Enzymes) string {
		return fmt.Sprintf("enough for itself and for up to %s of unmalted grain in the mash", Part(*e.Unmalted))
	},
	outlook.ForItself: func(outlook.Enzymes) string {
		return "enough for itself; for unmalted grain it cannot be said"
	},
	outlook.CannotSay: func(e outlook.Enzymes) string {
		return "it cannot be said whether they are enough for itself" + lacks[e.Why] + "; mash it beside pale malt"
	},
	outlook.NotEnough: func(e outlook.Enzymes) string {
		return "not enough for itself" + lacks[e.Why] + "; mash it beside pale malt"
	},
}

var standings = map[string]string{
	outlook.ByPractice: "common practice; how strong those of this lot are is not forecast",
	outlook.ByMeasure:  "by the diastatic power that was measured, where a mash needs 35 °Lintner by common practice",
}

var lacks = map[outlook.Lack]string{
	outlook.LackHeat:   ", for heat has taken most of them",
	outlook.LackGrain:  ", for malt of this grain may have too few",
	outlook.LackPower:  "",
	outlook.LackGrowth: ", for it is hardly modified",
}
