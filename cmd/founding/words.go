package founding

import (
	"fmt"
	"strconv"
	"strings"

	"maltwright/lang/vocabulary"
)

// percent writes a share of 1 in per cent, to a tenth.
func percent(share float64) string {
	return strconv.FormatFloat(float64(int(share*1000+0.5))/10, 'f', -1, 64) + " %"
}

// hours writes a time of h in days where that is shorter.
func hours(h float64) string {
	if h >= 48 && int(h)%24 == 0 {
		return strconv.Itoa(int(h)/24) + " days"
	}
	if h < 1 {
		return strconv.Itoa(int(h*60+0.5)) + " min"
	}
	return strconv.FormatFloat(h, 'f', -1, 64) + " h"
}

// quoted is a name as the language has it, several with "and" between them.
func quoted(names ...string) string {
	list := make([]string, len(names))
	for i, n := range names {
		list[i] = `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(n) + `"`
	}
	return strings.Join(list, " and ")
}

// charge writes the charge: as it was answered, or less.
func (p *plan) charge(u system) string {
	if p.share == 1 {
		return p.written
	}
	return u.mass(p.asked * p.share)
}

// process writes the plan as the language has it.
func (p *plan) process(s *sheet) {
	s.open("process", p.name)
	if p.instead != "" {
		s.comment("This is " + p.cooler(s.system) + ".")
	}
	s.line("make %s malt", p.malt)
	if p.share != 1 {
		s.comment(fmt.Sprintf("You asked for %s, but %s.", p.written, p.less()))
	}
	s.line("from %s of %s", p.charge(s.system), quoted(p.grain.Name))
	if p.site != nil {
		s.line("at %s", quoted(p.site.Name))
	}
	p.wordsOfSteep(s)
	p.wordsOfGrowth(s)
	if w := p.wither; w != nil {
		s.line("")
		s.comment("In a warm room, in moving air, until it feels dry outside.")
		s.line("wither on %s {", quoted(p.spread.Name))
		s.line("air at %s", s.band(w.low, w.high))
		if w.turn > 0 {
			s.line("turn %s", p.turnedByDay(int(24/w.turn)))
		}
		s.line("until moisture at most %s", percent(w.to))
		s.line("allow 12 h to %s\n}", hours(w.most))
	}
	s.line("")
	s.comment(p.heatCaution())
	for i := range p.heats {
		p.heats[i].words(s, p)
	}
	s.line("")
	s.comment("Rub the rootlets off while they are brittle. Their dust harms the lungs: wear a mask.")
	s.line("deculm within 12 h")
	s.line("store in \"lidded pail\" for at least 3 weeks\n}")
}

func (p *plan) wordsOfSteep(s *sheet) {
	var names []string
	for _, v := range p.vessels {
		names = append(names, v.Name)
	}
	band := p.profile.CastBand()
	s.line("")
	s.comment(p.beginning() + " Use fresh water for each soak; the drained grain breathes in between.")
	s.line("steep in %s to moisture %s to %s {", quoted(names...), strings.TrimSuffix(percent(band.Low), " %"), percent(band.High))
	for i, h := range p.soaks {
		s.line("soak %s in water at %s", hours(h), s.degrees(p.water))
		if i < len(p.soaks)-1 {
			s.line("rest %s in air at %s", hours(p.day-h), s.degrees(p.rest))
		}
	}
	s.line("}")
}

func (p *plan) wordsOfGrowth(s *sheet) {
	s.line("")
	s.comment("Growing grain gives off carbon dioxide, which has no smell: air the room before you go in.")
	s.line("germinate on %s {", quoted(p.floor.Name))
	s.line("hold bed at %s", s.band(p.low, p.bed))
	if b := p.box; b != nil {
		flow := s.flow(p.floor.Airflow.SI * b.share)
		switch {
		case b.breathes:
			s.line("air at air-on %s when bed above %s", s.degrees(b.air), s.degrees(p.bed-1))
			s.line("air at air-on %s with airflow %s for 15 min every 1 h", s.degrees(b.air), flow)
		case b.held:
		case b.share < 1:
			s.line("air at air-on %s with airflow %s", s.degrees(b.air), flow)
		default:
			s.line("air at air-on %s", s.degrees(b.air))
		}
		s.line("humidity air-on 98 %%")
		if b.sprinkled {
			low := p.profile.CastBand().Low
			s.line("sprinkle to moisture %s when moisture below %s", percent(low+0.01), percent(low-0.01))
		}
	}
	s.line("turn %s", p.turning())
	if p.goal > 0 {
		rub := ""
		if p.profile.Name == vocabulary.GrainBarley {
			rub = " and rub is chalky"
		}
		goal := "3/4"
		if p.goal > 0.8 {
			goal = "7/8"
		}
		s.line("until acrospire at least %s%s", goal, rub)
		s.line("allow %g to %g days\n}", p.days.Low, p.days.High+1)
	} else {
		s.line("for %g days\n}", (p.days.Low+p.days.High)/2)
	}
}

// heatCaution says what can go wrong in the heat.
func (p *plan) heatCaution() string {
	for _, h := range p.heats {
		if vocabulary.Burns(h.kiln.Fired.Text) {
			return "Never leave the fire: rootlets burn, and its gas kills. Hang up an alarm for smoke and carbon monoxide. Hot metal burns the skin."
		}
	}
	return "Stay within call while it heats: rootlets and dust can burn, and hot metal burns the skin."
}

// words writes the stage of one kiln.
func (h *heating) words(s *sheet, p *plan) {
	place := vocabulary.PlaceAirOn
	if still(h.kiln) {
		place = vocabulary.PlaceOven
	}
	s.line("kiln in %s {", quoted(h.kiln.Name))
	if h.stir > 0 {
		s.line("stir every %s", hours(h.stir))
	}
	for _, d := range h.dry {
		if w := p.wither; w != nil && h.kiln == p.kilns[0] && !d.broken && d.until >= w.to {
			continue // it comes withered drier than that
		}
		how := "at " + place + " " + s.degrees(d.from)
		if d.over > 0 {
			how = fmt.Sprintf("from %s %s over %s", place, s.band(d.from, d.to), hours(d.over))
		}
		switch {
		case d.broken:
			s.line("dry %s until break allow %s to %s", how, hours(d.least), hours(d.most))
		case d.over > 0:
			s.line("dry %s until moisture at most %s", how, percent(d.until))
		default:
			s.line("dry %s until moisture at most %s allow %s to %s", how, percent(d.until), hours(d.least), hours(d.most))
		}
	}
	if h.gate > 0 {
		s.line("gate moisture at most %s", percent(h.gate))
	}
	if c := h.cure; c != nil {
		if c.rise > 0 && len(h.dry) > 0 {
			s.line("dry from %s %s over %s", place, s.band(h.dry[len(h.dry)-1].to, c.at), hours(c.rise))
		}
		s.line("cure at %s %s for %s", place, s.degrees(c.at), hours(c.hours))
		s.line("gate moisture at most %s", percent(c.gate))
	}
	_, warm := p.room()
	s.line("cool to malt %s\n}\n", s.degrees(max(30, warm+8)))
}
