package figures

import (
	"fmt"
	"slices"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// Notes say below every chart of a curve what it does not show. Where a forecast breaks off at once there is no
// chart, and they are all that there is to say.
func Notes(c *curve.Curve, h words.House) (list []string) {
	if b := c.BrokenOff; b != nil {
		list = append(list, fmt.Sprintf("The forecast breaks off after %s: %s.", words.After(b.At), h.Say(b.Why)))
	}
	if e := c.NotForecast; e != nil {
		list = append(list, fmt.Sprintf("Not forecast from %s on: %s.", words.After(e.At), h.Say(e.Why)))
	}
	if n := c.NoMalt; n != nil {
		list = append(list, sentence(words.NoMalt(*n, c.Green)))
	}
	if c.Astray {
		list = append(list, words.Astray)
	}
	return list
}

// ofBands says what the bands of a chart are, where it has any.
func ofBands(c *curve.Curve, panels []chart.Panel) (list []string) {
	if c.Bands != nil && slices.ContainsFunc(panels, func(p chart.Panel) bool {
		return slices.ContainsFunc(p.Bands, func(b chart.Band) bool { return b.Name == eight })
	}) {
		said := fmt.Sprintf("The bands hold eight of ten cases, over %d forecasts%s.", c.Bands.Members, by(c))
		if c.Astray {
			said = fmt.Sprintf("The bands hold eight of ten cases, over %d forecasts that come nearest to the readings.", c.Bands.Members)
		}
		list = append(list, said)
	}
	return list
}

// by says of what the forecasts of the bands are.
func by(c *curve.Curve) string {
	if c.Batch != "" {
		return " that agree with the readings"
	}
	return " of likely lots, houses and weather"
}

// sentence begins with a capital and ends with a full stop.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	first := text[0]
	if 'a' <= first && first <= 'z' {
		first -= 'a' - 'A'
	}
	return string(first) + text[1:] + "."
}
