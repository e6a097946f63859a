package command

import (
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// say writes a task in the words of a maltster.
func (t timetable) say(task visits.Task) string { return words.Safe(taskWords[task.Kind](t, task)) }

// taskWords has the words of every kind of task.
var taskWords = map[visits.Kind]func(timetable, visits.Task) string{
	visits.Fill: func(t timetable, k visits.Task) string {
		return joinedBy(": ", "fill"+named(" ", k.Where)+" for "+k.Name, joinedBy(" in ", span(k.Lasts), t.medium(k.Temperature)))
	},
	visits.Drain: func(t timetable, k visits.Task) string {
		return joinedBy("; then ", "drain "+k.Name+", weigh", joinedBy(" in ", span(k.Lasts), t.medium(k.Temperature)))
	},
	visits.EndRest: func(_ timetable, k visits.Task) string { return k.Name + " is over" },
	visits.Spread: func(t timetable, k visits.Task) string {
		return joinedBy("; ", "spread"+named(" on ", k.Where)+spreadFor[k.Stage], t.temperature(k.Temperature))
	},
	visits.Turn:     func(timetable, visits.Task) string { return "turn" },
	visits.Sprinkle: func(_ timetable, k visits.Task) string { return "sprinkle " + k.Amount + " of water" },
	visits.Change: func(t timetable, k visits.Task) string {
		return joinedBy(" for ", joinedBy(": ", "from now on", t.temperature(k.Temperature)), span(k.Lasts))
	},
	visits.Look: func(_ timetable, k visits.Task) string { return "look: " + oneLine(k.Until) + "?" },
	visits.EndFloor: func(_ timetable, k visits.Task) string {
		return joinedBy(": ", floorOver[k.Stage], oneLine(k.Until))
	},
	visits.Load: func(t timetable, k visits.Task) string {
		return joinedBy("; ", "load"+named(" ", k.Where), t.heating(k))
	},
	visits.Heat: func(t timetable, k visits.Task) string { return t.heating(k) },
	visits.Stir: func(timetable, visits.Task) string { return "stir" },
	visits.Gate: func(_ timetable, k visits.Task) string {
		out := "weigh for the gate: " + oneLine(k.Until)
		if k.Missed {
			out += "; by the forecast it does not hold even now"
		}
		return out
	},
	visits.Cool: func(t timetable, k visits.Task) string {
		return joinedBy(" to ", "heat off, cool", t.coolTo(k.Temperature))
	},
	visits.Unload: func(_ timetable, k visits.Task) string { return "take the malt off" + named(" ", k.Where) + ", weigh" },
	visits.Deculm: func(_ timetable, k visits.Task) string {
		return joinedBy(", within ", "rub and sieve the rootlets off", span(k.Within))
	},
	visits.Put: func(_ timetable, k visits.Task) string {
		return joinedBy(", to rest for ", "weigh the malt, put it away"+named(" in ", k.Where), span(k.Lasts))
	},
	visits.Rested: func(timetable, visits.Task) string { return "the rest is over: the malt may be used" },
}

var spreadFor = map[model.StageKind]string{model.GerminateStage: " to grow", model.WitherStage: " to wither"}

var floorOver = map[model.StageKind]string{model.GerminateStage: "the growing ends", model.WitherStage: "the withering ends"}

// heating says what the kiln is set to, and how long or until when.
func (t timetable) heating(k visits.Task) string {
	out := joinedBy(" at ", k.Name, t.temperature(k.Temperature))
	if k.Over > 0 {
		out = joinedBy(" from ", k.Name, t.temperature(k.Temperature)) + ", rising over " + span(k.Over)
	} else {
		out = joinedBy(" for ", out, span(k.Lasts))
	}
	return joinedBy(" until ", out, oneLine(k.Until))
}

// temperature writes where a temperature is taken and what it is.
func (t timetable) temperature(x forecast.Temperature) string {
	if !x.Known {
		return ""
	}
	low, high := t.degrees(x.From), t.degrees(x.To)
	if low == high {
		return strings.TrimSpace(fmt.Sprintf("%s %s %s", x.Place, low, t.degree()))
	}
	return strings.TrimSpace(fmt.Sprintf("%s %s to %s %s", x.Place, low, high, t.degree()))
}

// medium is the water or the air of a step of the steep: water at 13 °C.
func (t timetable) medium(x forecast.Temperature) string {
	return strings.Replace(t.temperature(x), " ", " at ", 1)
}

func (t timetable) coolTo(x forecast.Temperature) string {
	x.From = x.To
	return t.temperature(x)
}

func (t timetable) degrees(c float64) string {
	if t.fh {
		return quantity.Rounded(fahrenheitOf(c), 0)
	}
	return quantity.Rounded(c, 1)
}

func (t timetable) degree() string { return (&sheet{fahrenheit: t.fh}).degree() }

// joinedBy joins those of two parts that say something.
func joinedBy(by, a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + by + b
}

// named writes a name in quotes behind a word, if there is a name.
func named(before, name string) string {
	if name == "" {
		return ""
	}
	return before + `"` + name + `"`
}

// oneLine writes words of a file as one line.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// span writes a length of time: 20 s, 7 h, 1 h 30 min, 21 days; "" where there is none.
func span(s float64) string {
	m := int(math.Round(s / 60))
	switch h := m / 60; {
	case s >= 1 && s < 60:
		return quantity.Rounded(s, 0) + " s"
	case m <= 0:
		return ""
	case m%1440 == 0 && m > 2*1440:
		return fmt.Sprintf("%d days", m/1440)
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m%60)
	}
}
