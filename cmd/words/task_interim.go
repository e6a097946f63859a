package words

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/progress"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// say writes a task in the words of a maltster.
func (t House) Task(task visits.Task) string { return Safe(taskWords[task.Kind](t, task)) }

// taskWords has the words of every kind of task.
var taskWords = map[visits.Kind]func(House, visits.Task) string{
	visits.Fill: func(t House, k visits.Task) string {
		return Joined(": ", "fill"+named(" ", k.Where)+" for "+k.Name, Joined(" in ", Span(k.Lasts), t.medium(k.Temperature)))
	},
	visits.Drain: func(t House, k visits.Task) string {
		return Joined("; then ", "drain "+k.Name+", weigh", Joined(" in ", Span(k.Lasts), t.medium(k.Temperature)))
	},
	visits.EndRest: func(_ House, k visits.Task) string { return k.Name + " is over" },
	visits.Spread: func(t House, k visits.Task) string {
		return Joined("; ", "spread"+named(" on ", k.Where)+spreadFor[k.Stage], t.warmth(k.Temperature))
	},
	visits.Turn:     func(House, visits.Task) string { return "turn" },
	visits.Sprinkle: func(_ House, k visits.Task) string { return "sprinkle " + k.Amount + " of water" },
	visits.Change: func(t House, k visits.Task) string {
		return Joined(" for ", Joined(": ", "from now on", t.warmth(k.Temperature)), Span(k.Lasts))
	},
	visits.Look: func(_ House, k visits.Task) string { return "look: " + OneLine(k.Until) + "?" },
	visits.EndFloor: func(_ House, k visits.Task) string {
		return Joined(": ", floorOver[k.Stage], OneLine(k.Until))
	},
	visits.Load: func(t House, k visits.Task) string {
		return Joined("; ", "load"+named(" ", k.Where), t.heating(k))
	},
	visits.Heat: func(t House, k visits.Task) string { return t.heating(k) },
	visits.Stir: func(House, visits.Task) string { return "stir" },
	visits.Gate: func(_ House, k visits.Task) string {
		out := "weigh for the gate: " + OneLine(k.Until)
		if k.Missed {
			out += "; by the forecast it does not hold even now"
		}
		return out
	},
	visits.Cool: func(t House, k visits.Task) string {
		return Joined(" to ", "heat off, cool", t.coolTo(k.Temperature))
	},
	visits.Unload: func(_ House, k visits.Task) string { return "take the malt off" + named(" ", k.Where) + ", weigh" },
	visits.Deculm: func(_ House, k visits.Task) string {
		return Joined(", within ", "rub and sieve the rootlets off", Span(k.Within))
	},
	visits.Put: func(_ House, k visits.Task) string {
		return Joined(", to rest for ", "weigh the malt, put it away"+named(" in ", k.Where), Span(k.Lasts))
	},
	visits.Rested: func(House, visits.Task) string { return "the rest is over: the malt may be used" },
}

var spreadFor = map[model.StageKind]string{model.GerminateStage: " to grow", model.WitherStage: " to wither"}

var floorOver = map[model.StageKind]string{model.GerminateStage: "the growing ends", model.WitherStage: "the withering ends"}

// heating says what the kiln is set to, and how long or until when.
func (t House) heating(k visits.Task) string {
	out := Joined(" at ", k.Name, t.warmth(k.Temperature))
	if k.Over > 0 {
		out = Joined(" from ", k.Name, t.warmth(k.Temperature)) + ", rising over " + Span(k.Over)
	} else {
		out = Joined(" for ", out, Span(k.Lasts))
	}
	return Joined(" until ", out, OneLine(k.Until))
}

// temperature writes where a temperature is taken and what it is.
func (t House) warmth(x forecast.Temperature) string {
	if !x.Known {
		return ""
	}
	low, high := t.degrees(x.From), t.degrees(x.To)
	if low == high {
		return strings.TrimSpace(fmt.Sprintf("%s %s %s", x.Place, low, t.Degree()))
	}
	return strings.TrimSpace(fmt.Sprintf("%s %s to %s %s", x.Place, low, high, t.Degree()))
}

// medium is the water or the air of a step of the steep: water at 13 °C.
func (t House) medium(x forecast.Temperature) string {
	return strings.Replace(t.warmth(x), " ", " at ", 1)
}

func (t House) coolTo(x forecast.Temperature) string {
	x.From = x.To
	return t.warmth(x)
}

func (t House) degrees(c float64) string {
	if t.Fahrenheit {
		return quantity.Rounded(t.System.Temperature(c), 0)
	}
	return quantity.Rounded(c, 1)
}

// named writes a name in quotes behind a word, if there is a name.
func named(before, name string) string {
	if name == "" {
		return ""
	}
	return before + `"` + name + `"`
}

// Say puts a value into a sentence.
func (h House) Say(t answer.Told) string {
	switch t := t.(type) {
	case progress.Work:
		return h.Task(t.Task)
	case progress.Doubt:
		return h.suspected(t)
	}
	return ""
}
