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
		said += fmt.Sprintf("; %s at %s moisture is hotter than the %s that they stand in malt so wet", h.Shown(e.Hottest.Temperature), Percent(e.Hottest.Moisture), h.Shown(e.Hottest.Bears))
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
		return "enough for itself; whether for unmalted grain too is not known"
	},
	outlook.CannotSay: func(e outlook.Enzymes) string {
		return "whether they are enough for itself is not known" + lacks[e.Why] + "; mash it beside pale malt"
	},
	outlook.NotEnough: func(e outlook.Enzymes) string {
		return "not enough for itself" + lacks[e.Why] + "; mash it beside pale malt"
	},
}

var standings = map[string]string{
	outlook.ByPractice: "common practice; the strength of the enzymes of this lot is not forecast",
	outlook.ByMeasure:  "by the measured diastatic power; a mash needs 35 °Lintner by common practice",
}

var lacks = map[outlook.Lack]string{
	outlook.LackHeat:   ", because heat has destroyed most of them",
	outlook.LackGrain:  ", because malt of this grain may have too few",
	outlook.LackPower:  "",
	outlook.LackGrowth: ", because it is hardly modified",
}
