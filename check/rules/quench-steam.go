package rules

import (
	"fmt"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var quenchSteam = Rule{
	Rule: finding.Rule{Name: "quench-steam", Severity: finding.Note,
		Title: "water on hot malt goes off as steam, which scalds",
		Why:   "a litre of water becomes 1.7 m3 of steam within seconds, and steam burns worse than dry air as hot; a closed drum may blow its lid (steam tables, common practice)",
		Do:    "spray it on a little at a time, through an opening that stays open, with face and arms to the side; wear long gloves and a shield, and send children away" + localCodes,
		Bad: `kiln "base kiln" { area 0.5 m2; draught fan; reaches 25 to 240 °C; heater 3 kW; fired electric; accept heater-on-extension because "an example" }
make black malt
stir every 10 min
roast at malt 215 °C for 45 min
cool to malt 30 °C with water 0.3 l`,
		Good:   "cure at air-on 82 °C for 5 h\ncool to malt 30 °C",
		Limits: "it does not know whether a machine pours the water, with nobody near"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, _ *model.Kiln) {
		s, top, _ := hottestOfAll(st.Steps)
		if s == nil || top.SI-zeroC <= steamsAt {
			return
		}
		if cool := coolAfter(st, s); cool != nil && cool.Water != nil {
			from := c.roastedAt(st, roast{s, top, s.Place()})
			f := r.At(cool.Water.Place, fmt.Sprintf("%s of water on malt that comes from %s goes off as steam", cool.Water, from))
			if malt := c.maltOn(st); malt > 0 {
				reached, _ := c.reached(st, roast{s, top, s.Place()})
				if enough := forecast.QuenchedBy(malt, reached.SI-zeroC); 1000*model.WaterVolume(cool.Water.Quantity) > allOf*enough {
					f.Message = fmt.Sprintf("of %s of water on malt that comes from %s about %s goes off as steam, and the rest wets the malt or runs off", cool.Water, from, c.waterFor(malt, reached))
					if enough < tell.LeastSteam {
						f.Message = fmt.Sprintf("%s of water on malt that comes from %s wets it: hardly any goes off as steam by the forecast; more does if the malt is as hot as the kiln is set", cool.Water, from)
					}
				}
			}
			c.Note(f)
		}
	}),
}

// allOf is so many times the water that boils off: less of it goes off whole, for all that is known.
const allOf = 1.3
