package words

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

// task says what is to do in the words of a maltster.
func (h House) task(k timetable.Sentence) string { return tasks[k.Kind](h, k) }

// tasks has the words of every kind of task.
var tasks = map[visits.Kind]func(House, timetable.Sentence) string{
	visits.Fill: func(h House, k timetable.Sentence) string {
		return Joined(": ", "fill"+named(" ", k.Where)+h.portions(k.Shares)+" for "+k.Name, h.steeping(k))
	},
	visits.Drain: func(h House, k timetable.Sentence) string {
		return Joined("; then ", "drain "+k.Name+", weigh"+h.each(k.Each), h.steeping(k))
	},
	visits.EndRest: func(_ House, k timetable.Sentence) string { return k.Name + " is over" },
	visits.Spread: func(h House, k timetable.Sentence) string {
		return Joined("; ", "spread"+named(" on ", k.Where)+spreadFor[k.Stage], Joined("; ", h.Setting(k.Temperature), ending("", k)))
	},
	visits.Turn:     func(House, timetable.Sentence) string { return "turn" },
	visits.Sprinkle: func(_ House, k timetable.Sentence) string { return "sprinkle " + k.Amount + " of water" },
	visits.Change: func(h House, k timetable.Sentence) string {
		return ending(Joined(" for ", Joined(": ", "from now on", h.Setting(k.Temperature)), Span(k.Lasts)), k)
	},
	visits.Look: func(_ House, k timetable.Sentence) string {
		return "look: " + OneLine(k.Until) + "?" + strings.TrimPrefix(missed(k), ";")
	},
	visits.EndFloor: func(_ House, k timetable.Sentence) string {
		return Joined(": ", floorOver[k.Stage], OneLine(k.Until)) + missed(k)
	},
	visits.Load: func(h House, k timetable.Sentence) string {
		return Joined("; ", "load"+named(" ", k.Where), h.heating(k))
	},
	visits.Heat: House.heating,
	visits.Stir: func(House, timetable.Sentence) string { return "stir" },
	visits.Gate: func(_ House, k timetable.Sentence) string {
		return "weigh for the gate: " + OneLine(k.Until) + missed(k)
	},
	visits.Cool: func(h House, k timetable.Sentence) string {
		off := "heat off"
		if k.Amount != "" {
			off += ", pour " + k.Amount + " of water over the malt"
		}
		return Joined(" to ", off+", cool", h.Setting(end(k.Temperature)))
	},
	visits.Unload: func(_ House, k timetable.Sentence) string {
		if k.With != "" {
			return "when" + named(" ", k.With) + " below is free: take the malt off" + named(" ", k.Where) + " and turn it down, weigh"
		}
		return "take the malt off" + named(" ", k.Where) + ", weigh"
	},
	visits.Deculm: func(_ House, k timetable.Sentence) string {
		return Joined(", within ", "rub and sieve the rootlets off", Span(k.Within))
	},
	visits.Put: func(_ House, k timetable.Sentence) string {
		return Joined(", to rest for ", "weigh the malt, put it away"+named(" in ", k.Where), Span(k.Lasts))
	},
	visits.Rested: func(House, timetable.Sentence) string { return "the rest is over: the malt may be used" },
}

var spreadFor = map[model.StageKind]string{model.GerminateStage: " to grow", model.WitherStage: " to wither"}

var floorOver = map[model.StageKind]string{model.GerminateStage: "the growing ends", model.WitherStage: "the withering ends"}

// missed says that a condition is given up.
func missed(k timetable.Sentence) string {
	if k.Missed {
		return "; its latest time, and the forecast does not expect it met by then"
	}
	return ""
}

// heating says what the kiln is set to, and how long or until when.
func (h House) heating(k timetable.Sentence) string {
	out := Joined(" at ", k.Name, h.Setting(k.Temperature))
	if k.With != "" {
		out = k.Name + named(" in the exhaust of ", k.With)
	}
	if k.Rise > 0 {
		out = Joined(" from ", k.Name, h.Setting(k.Temperature)) + ", rising over " + Span(k.Rise)
	} else {
		out = Joined(" for ", out, Span(k.Lasts))
	}
	return ending(out, k)
}

// ending says until when something goes on, with the times that hold beside the condition: for at least
// 6 h, then until moisture at most 25 %, but no longer than 14 h.
func ending(out string, k timetable.Sentence) string {
	if k.Until == "" {
		return out
	}
	until := "until " + OneLine(k.Until)
	if k.Earliest > 0 {
		until = "for at least " + Span(k.Earliest) + ", then " + until
	}
	if k.Latest > 0 {
		until += ", but no longer than " + Span(k.Latest)
	}
	return Joined(" ", out, until)
}

// portions says what goes into each of several vessels.
func (h House) portions(list []timetable.Portion) string {
	var out []string
	for _, p := range list {
		out = append(out, fmt.Sprintf("%q (%s of grain, %s of water)", p.In, Mass(h, p.Grain), h.Water(float64(p.Water))))
	}
	if len(out) == 0 {
		return ""
	}
	return " " + strings.Join(out, " and ")
}

// each says what each of several vessels weighs with what is in it.
func (h House) each(list []outlook.Gross[answer.Kilograms]) string {
	var out []string
	for _, g := range list {
		out = append(out, Weighed(h, g.Weight)+" "+Holding(g.In))
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, ", ") + ")"
}

// steeping is how long a step of the steep lasts, in what, and with what.
func (h House) steeping(k timetable.Sentence) string {
	in := h.medium(k.Temperature)
	if k.Amount != "" {
		in = strings.TrimSpace(k.Amount + " " + in)
	}
	return Joined(" with ", Joined(" in ", Span(k.Lasts), in), k.With)
}

// medium is the water or the air of a step of the steep: water at 13 °C.
func (h House) medium(t *answer.Temperature) string {
	return strings.Replace(h.Setting(t), " ", " at ", 1)
}

// end is a temperature that is come to.
func end(t *answer.Temperature) *answer.Temperature {
	if t == nil {
		return nil
	}
	return &answer.Temperature{Place: t.Place, From: t.To, To: t.To}
}

// named writes a name in quotes behind a word, if there is a name.
func named(before, name string) string {
	if name == "" {
		return ""
	}
	return before + `"` + name + `"`
}
