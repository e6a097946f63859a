package anyhouse

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"
)

// draw writes a house from what is drawn.
type draw struct {
	*rapid.T
	strings.Builder
	kg   float64 // of the charge
	drum bool    // the kiln tumbles
}

func (d *draw) linef(form string, values ...any) { fmt.Fprintf(&d.Builder, form+"\n", values...) }

func (d *draw) float(low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(d.T, "value")
}
func (d *draw) count(low, high int) int { return rapid.IntRange(low, high).Draw(d.T, "count") }
func (d *draw) odds(of int) bool        { return d.count(1, of) == 1 }
func (d *draw) one(of ...string) string { return rapid.SampledFrom(of).Draw(d.T, "word") }

// sometimes is a text in one of so many cases.
func (d *draw) sometimes(of int, text func() string) string {
	if d.odds(of) {
		return text()
	}
	return ""
}

// Quantities come in either of two units.

func (d *draw) temperature(low, high float64) string {
	v := d.float(low, high)
	if d.odds(4) {
		return fmt.Sprintf("%.0f °F", v*1.8+32)
	}
	return fmt.Sprintf("%.1f °C", v)
}

// band is one of temperature.
func (d *draw) band(low, high float64) string {
	v := d.float(low, high)
	return fmt.Sprintf("%.1f to %.1f °C", v, v+d.float(0.5, 6))
}

func (d *draw) hours(low, high float64) string {
	v := d.float(low, high)
	if d.odds(4) {
		return fmt.Sprintf("%.0f min", 60*v)
	}
	return fmt.Sprintf("%.2f h", v)
}

func (d *draw) weight(kg float64) string {
	if d.odds(4) {
		return fmt.Sprintf("%.3f lb", kg/0.45359237)
	}
	return fmt.Sprintf("%.3f kg", kg)
}

func (d *draw) flow(low, high float64) string {
	v := d.float(low, high)
	if d.odds(4) {
		return fmt.Sprintf("%.1f cfm", v/1.699)
	}
	return fmt.Sprintf("%.1f m3/h", v)
}

func (d *draw) litres(low, high float64) string {
	v := d.float(low, high)
	if d.odds(4) {
		return fmt.Sprintf("%.2f gal-us", v/3.785411784)
	}
	return fmt.Sprintf("%.2f l", v)
}

var species = []string{"barley", "wheat", "rye", "oats", "sorghum", "millet", "maize", "buckwheat", "spelt", "triticale"}

// house writes a whole file with one process.
func house(t *rapid.T) string {
	d := &draw{T: t}
	d.kg = d.float(0.5, 20)
	if d.odds(4) {
		d.kg *= 100
	}
	green, malted := d.odds(12), d.odds(12)
	lot := fmt.Sprintf("moisture %.1f %%", d.float(9, 22))
	switch {
	case malted:
		green, lot = true, fmt.Sprintf("already kilned malt; moisture %.1f %%", d.float(1, 12))
	case green:
		lot = "already green malt; moisture 44 %"
	}
	d.linef("grain %q { species %s; %s }", "lot", d.one(species...), lot)
	d.linef("site %q { air %s; humidity %.0f to 90 %%; water %s%s }", "site", d.band(2, 30), d.float(15, 85), d.band(2, 24),
		d.sometimes(4, func() string { return fmt.Sprintf("; altitude %.0f m", d.float(0, 2500)) }))
	d.linef("vessel %q { holds %s }", "tub", d.litres(2.5*d.kg, 6*d.kg))
	boxed := d.floor("floor")
	second, moved := d.odds(6), false
	if second {
		moved = d.floor("other")
	}
	still := d.kilnFacts("kiln")
	again := d.odds(6)
	if again {
		d.linef("kiln %q { area %.4f m2; airflow %s }", "stove", max(0.002, d.kg/d.float(8, 100)), d.flow(d.kg+1, 12*d.kg+2))
	}
	attic := d.odds(5)
	if attic {
		d.linef("kiln %q { area %.4f m2; air from %q%s%s%s }", "attic", max(0.002, d.kg/d.float(8, 100)), "kiln",
			d.sometimes(4, func() string { return "; airflow " + d.flow(d.kg+1, 12*d.kg+2) }),
			d.sometimes(4, func() string { return fmt.Sprintf("; returns %.0f %%", d.float(0, 95)) }),
			d.sometimes(4, func() string { return fmt.Sprintf("; walls %s", d.one("brick", "wood", "metal")) }))
	}
	kilned := green || !d.odds(12)
	d.linef("process %q {\n  make %s malt\n  from %s of %q\n  at %q", "p", map[bool]string{true: d.one("pale", "munich", "chit"), false: "green"}[kilned], d.weight(d.kg), "lot", "site")
	if !green {
		d.steep(2, 4)
		d.germinate("floor", boxed)
		if second {
			d.germinate("other", moved)
		}
		if d.odds(8) {
			d.steep(1, 1)
			d.germinate("floor", boxed)
		}
	}
	if d.odds(3) && !malted {
		d.wither(boxed)
	}
	if kilned {
		if attic {
			d.linef("  kiln in %q { dry %s }", "attic", d.one("for "+d.hours(1, 30), fmt.Sprintf("until moisture at most %.0f %% allow %.0f to %s", d.float(8, 40), d.float(0, 4), d.hours(5, 40)),
				"at air-on "+d.temperature(25, 75)+" for "+d.hours(1, 20)))
		}
		d.kiln("kiln", still)
		if again {
			d.linef("  kiln in %q { dry for %s at air-on 55 °C; cool to malt 35 °C }", "stove", d.hours(1, 12))
		}
		if d.odds(2) && !malted {
			d.linef("  deculm within 12 h")
		}
		d.linef("  store in %q", "drum")
	}
	d.linef("}")
	return d.String()
}

// floor writes a bed between two faces, a box or a drum, and tells whether air is blown
// through it.
func (d *draw) floor(name string) (blown bool) {
	blown = d.odds(3)
	area, more := d.kg/d.float(8, 80), ""
	if blown {
		area = d.kg / d.float(80, 600)
		more = "; airflow " + d.flow(0.2*d.kg+1, 1.2*d.kg+2) + d.sometimes(2, func() string { return fmt.Sprintf("; returns %.0f %%", d.float(0, 95)) }) +
			d.sometimes(4, func() string { return "; tumbles yes" })
	}
	area = max(area, 0.002)
	d.linef("floor %q { area %.4f m2%s%s%s }", name, area, more,
		d.sometimes(2, func() string { return fmt.Sprintf("; heater %.0f W", d.kg*d.float(1, 20)+5) }),
		d.sometimes(2, func() string { return fmt.Sprintf("; cooler %.0f W", d.kg*d.float(1, 20)+5) }))
	return blown
}

func (d *draw) kilnFacts(name string) (still bool) {
	still = d.odds(4)
	if still {
		d.linef("kiln %q { area %.4f m2; draught still%s%s%s }", name, max(0.01, d.kg/d.float(4, 20)), d.sometimes(2, func() string { return "; airflow " + d.flow(1+d.kg/8, 40+d.kg/2) }),
			d.sometimes(2, func() string { return fmt.Sprintf("; door ajar %.1f cm", d.float(0.5, 60)) }), d.sometimes(4, d.walls))
		return true
	}
	if d.odds(5) {
		d.drum = true
		d.linef("kiln %q { holds %.3f l; tumbles yes%s%s; reaches %.0f to %.0f °C }", name, d.kg*d.float(3, 15), d.sometimes(2, func() string { return "; airflow " + d.flow(d.kg/2+1, 4*d.kg+2) }),
			d.sometimes(2, func() string { return fmt.Sprintf("; heater %.2f kW", d.kg*d.float(0.05, 1)+0.1) }), d.float(20, 60), d.float(100, 260))
		return false
	}
	d.linef("kiln %q { area %.4f m2; %s%s%s%s%s%s%s }", name, max(0.002, d.kg/d.float(8, 250)), d.draught(),
		d.sometimes(2, func() string {
			return fmt.Sprintf("; heater %.2f kW", d.kg*d.float(0.02, 0.3)+0.1) + d.sometimes(3, func() string { return fmt.Sprintf(" at %.0f %%", d.float(20, 100)) })
		}),
		d.sometimes(4, d.walls), d.sometimes(5, func() string { return fmt.Sprintf("; recovers %.0f %%", d.float(5, 95)) }),
		d.sometimes(4, func() string {
			return fmt.Sprintf("; fired %s by %s", d.one("gas", "wood", "oil", "peat"), d.one("direct", "indirect"))
		}),
		d.sometimes(3, func() string { return fmt.Sprintf("; returns %.0f %%", d.float(0, 95)) }),
		d.sometimes(2, func() string { return "; reaches 15 to 110 °C" }))
	return false
}

// draught is what moves the air of a kiln: its airflow, a curve, a chimney, or several of them.
func (d *draw) draught() string {
	most, list := d.kg*d.float(1, 12)+2, []string{}
	if d.odds(3) {
		for i := range d.count(2, 5) {
			list = append(list, fmt.Sprintf("fan %.2f m3/h at %d Pa", most*(1-0.2*float64(i)), 250*i))
		}
		if d.odds(2) {
			list = append(list, fmt.Sprintf("fan %.0f W", most+5))
		}
	}
	if d.odds(4) {
		list = append(list, fmt.Sprintf("chimney %.1f m", d.float(0.5, 30)))
	}
	if len(list) == 0 || d.odds(4) {
		list = append(list, fmt.Sprintf("airflow %.2f m3/h", most))
	}
	return strings.Join(list, "; ")
}

func (d *draw) walls() string {
	return "; walls " + d.one("brick", "metal", "wood", "stone") + d.sometimes(2, func() string { return fmt.Sprintf(" %.3f m2", d.kg*d.float(0.02, 0.5)+0.02) }) +
		d.sometimes(3, func() string { return " with insulation" })
}

// with is what a step on the kiln is with.
func (d *draw) with(still bool) string {
	list := []string{}
	if d.odds(8) && !still {
		list = append(list, fmt.Sprintf("returns %.0f %%", d.float(0, 98)))
	}
	if d.odds(8) && !still {
		list = append(list, fmt.Sprintf("airflow %.2f m3/h", d.kg*d.float(0.5, 12)+0.1))
	}
	if d.odds(8) {
		list = append(list, "smoke")
	}
	if len(list) == 0 {
		return ""
	}
	return " with " + strings.Join(list, " and ")
}

func (d *draw) steep(least, most int) {
	d.linef("  steep in %q%s {", "tub", d.sometimes(3, func() string { return " to moisture 40 to 46 %" }))
	if d.odds(5) {
		d.linef("    aerate every 30 min for 5 min")
	}
	again := d.odds(4)
	if again {
		d.linef("    repeat at most 3 times until moisture at least %.0f %% {", d.float(36, 46))
	}
	for range d.count(least, most) {
		d.linef("    soak %s in %swater%s%s%s", d.hours(0.5, 12), d.sometimes(4, func() string { return d.litres(1.2*d.kg, 4*d.kg) + " " }),
			d.sometimes(2, func() string { return " at " + d.temperature(3, 32) }),
			d.sometimes(3, func() string {
				return " with " + d.one("air", "lime", "overflow "+d.litresAnHour(), "airflow "+d.flow(0.005*d.kg+0.1, 0.05*d.kg+0.2))
			}),
			d.sometimes(6, func() string { return fmt.Sprintf(" until moisture at least %.0f %%", d.float(30, 46)) }))
		if d.odds(4) {
			continue
		}
		d.linef("    rest %s in air%s%s%s", d.hours(0.5, 20), d.sometimes(2, func() string { return " at " + d.temperature(5, 28) }),
			d.sometimes(4, func() string {
				return " with " + d.one("spray", "spray "+d.litresAnHour(), "airflow "+d.flow(0.02*d.kg+0.1, 0.2*d.kg+0.2))
			}),
			d.sometimes(6, func() string { return fmt.Sprintf(" until chit at least %.0f %%", d.float(20, 90)) }))
	}
	if again {
		d.linef("    }")
	}
	if d.odds(5) {
		d.linef("    gate moisture at least %.0f %% allow 0 to %s", d.float(36, 46), d.hours(2, 12))
	}
	d.linef("  }")
}

func (d *draw) litresAnHour() string { return fmt.Sprintf("%.2f l/h", d.kg*d.float(0.05, 3)) }

func (d *draw) germinate(on string, boxed bool) {
	d.linef("  germinate on %q {", on)
	switch {
	case boxed && d.odds(2):
		d.linef("    air at air-on %s when bed above %s", d.temperature(9, 18), d.temperature(12, 20))
		if d.odds(2) {
			d.linef("    air at air-on %s with airflow %s for 15 min every 1 h", d.temperature(9, 18), d.flow(0.1*d.kg+1, 0.2*d.kg+1))
		}
	case d.odds(5):
		d.linef("    hold bed from %s to %s over %.1f days", d.temperature(15, 20), d.temperature(11, 15), d.float(0.5, 4))
	case d.odds(4):
		d.linef("    hold room at %s", d.band(8, 24))
	default:
		d.linef("    hold bed at %s", d.band(10, 26))
	}
	if d.odds(2) {
		d.linef("    turn every %s", d.hours(2, 24))
	}
	if d.odds(4) {
		d.linef("    sprinkle %.2f l every 24 h", d.kg*d.float(0.01, 0.15))
	}
	if d.odds(3) {
		d.linef("    humidity %.0f %%", d.float(40, 100))
	}
	if boxed && d.odds(3) {
		d.linef("    humidity air-on %.0f %%", d.float(70, 100))
	}
	if d.odds(3) {
		d.linef("    for %.1f days", d.float(0.5, 9))
	} else {
		d.linef("    until %s\n    allow %.0f to %.0f days", d.one("acrospire at least 3/4", "rub is chalky", "acrospire at least 1/2 and rub is gritty", "moisture at most 40 %"), d.float(0, 3), d.float(4, 11))
	}
	d.linef("  }")
}

func (d *draw) wither(boxed bool) {
	at := "air"
	if boxed {
		at = "air-on"
	}
	d.linef("  wither on %q {\n    air at %s %s", "floor", at, d.temperature(12, 32))
	if d.odds(2) {
		d.linef("    turn every %s", d.hours(2, 12))
	}
	if d.odds(2) {
		d.linef("    for %s", d.hours(2, 40))
	} else {
		d.linef("    until moisture at most %.0f %%\n    allow 1 to %s", d.float(15, 42), d.hours(8, 60))
	}
	d.linef("  }")
}

func (d *draw) kiln(in string, still bool) {
	place := d.one("air-on", "air-on", "air-on", "malt", "air-off")
	if still {
		place = "oven"
	}
	d.linef("  kiln in %q {", in)
	if d.odds(3) {
		d.linef("    stir every %s", d.hours(0.5, 6))
	}
	if d.odds(8) {
		d.linef("    stew at %s %s for %s", place, d.temperature(40, 72), d.hours(0.5, 4))
	}
	for range d.count(1, 3) {
		switch d.count(1, 3) {
		case 1:
			d.linef("    dry at %s %s for %s%s", place, d.temperature(25, 75), d.hours(1, 20), d.with(still))
		case 2:
			d.linef("    dry at %s %s until moisture at most %.0f %% allow %.0f to %s", place, d.temperature(30, 75), d.float(6, 30), d.float(0, 4), d.hours(5, 40))
		case 3:
			low := d.float(30, 55)
			d.linef("    dry from %s %.0f to %.0f °C over %s", place, low, low+d.float(2, 25), d.hours(1, 10))
		}
	}
	if d.odds(2) {
		d.linef("    gate moisture at most %.0f %%%s", d.float(5, 15), d.sometimes(2, func() string { return " allow 0 to " + d.hours(1, 20) }))
	}
	if !d.odds(3) {
		d.linef("    cure at %s %s for %s%s", place, d.temperature(65, 110), d.hours(0.5, 8), d.with(still))
	}
	if d.drum || d.odds(8) {
		for range d.count(0, 2) {
			d.linef("    roast at %s %s for %s", place, d.temperature(100, 240), d.hours(0.2, 2))
		}
		if d.odds(4) {
			d.linef("    gate moisture at most %.0f %%", d.float(1, 6))
		}
	}
	if d.odds(2) {
		d.linef("    cool to malt %s%s", d.temperature(24, 40), d.sometimes(3, func() string { return fmt.Sprintf(" with water %.3f l", d.kg*d.float(0.001, 0.2)) }))
	}
	d.linef("  }")
}
