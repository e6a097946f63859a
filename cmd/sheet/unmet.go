package sheet

import (
	"slices"

	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// What to do where the scale or a look is not as it was meant. Common practice; the hours from memory.
var (
	tooLight = Wrong{"too light at steep-out", "Let it stop dripping and weigh again, with the vessel. Still too light: an hour or more in air, then a shorter soak, drain, weigh; so on until the weight is there. " +
		"If little is lacking, sprinkle it on the first day of growth."}
	tooHeavy = Wrong{"too heavy at steep-out", "Let it drip and weigh again: loose water counts. Still too heavy: no more water; rest it in air, spread it thinner, turn it more often on the first day, do not sprinkle. " +
		"What smells sour, or has not chitted after two days, has drowned."}
	notMet = Wrong{"a gate or a look is not met", "Do not go on: leave the step as it is set, and look again, on the kiln within the hour, on the floor at the next turn. " +
		"No more heat on malt wetter than its gate asks: it turns glassy and dark. At the latest time a growing bed goes on before it overgrows, and malt on the kiln dries on at the heat it has, with more air. " +
		"Note what you did otherwise."}
)

// unmetRows is what to do where a figure of the process is not met.
func (m *maker) unmetRows() (rows []Wrong) {
	if model.First[*model.Steep](m.p) != nil {
		rows = append(rows, tooLight, tooHeavy)
	}
	if model.First[*model.Kilning](m.p) != nil || model.First[*model.Germination](m.p) != nil {
		rows = append(rows, notMet)
	}
	return rows
}

func unmetBlock(rows []Wrong) Block {
	if len(rows) == 0 {
		return nil
	}
	return GoesWrong{Title: "When a figure is not met", Small: "Common practice, where the house has no rule of its own.", Rows: rows}
}

// placed puts a block onto the last page of a section that has room for it, but for page 1 and
// what can hurt somebody; else behind all.
func placed(list []section, b Block, size Size) []section {
	if b == nil {
		return list
	}
	for i := len(list) - 2; i >= 0; i-- {
		with := list[i]
		with.looks = append(slices.Clone(with.looks), b)
		if n := len(paged(with, size)); n == len(paged(list[i], size)) && (i > 0 || n > 1) {
			list[i] = with
			return list
		}
	}
	last := &list[len(list)-1]
	last.first = append(last.first, b)
	return list
}

// misses tells whether a steep misses its aim, or a condition is given up.
func (m *maker) misses() bool {
	return len(m.unmet()) > 0 || slices.ContainsFunc(m.visits, func(v timetable.Visit) bool {
		return slices.ContainsFunc(v.Tasks, func(t timetable.Task) bool { return t.Missed })
	})
}

func steepOf(st forecast.Stage) *model.Steep {
	s, _ := st.Of.(*model.Steep)
	return s
}
