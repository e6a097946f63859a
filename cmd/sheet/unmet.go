package sheet

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// What to do where the scale or a look is not as it was meant. Common practice; the hours from memory.
var (
	tooLight = Wrong{"too light at steep-out", "Let it stop dripping, and weigh again, with the vessel as the sum has it. If it is still below the lower weight, leave it in air for an hour or more, " +
		"then give another soak, shorter than the last, drain and weigh; so often until the weight is there. Where little is lacking, sprinkle it on the first day of growth."}
	tooHeavy = Wrong{"too heavy at steep-out", "Let it drip longer, and weigh again: water that runs off counts on the scale. If it stays above the upper weight give it no more: rest it in air, " +
		"spread it thinner, turn it more often on the first day, and do not sprinkle. Smell it: what smells sour, or has not chitted after two days, has drowned."}
	notMet = Wrong{"a gate or a look is not met", "Do not go on. Leave the step as it is set, and look again: on the kiln within the hour, on the floor at the next turn. " +
		"Raise no heat on malt that is wetter than its gate asks: it turns glassy and dark. At the latest time weigh or count once more, in another way if you can: a growing bed then goes on before it overgrows, " +
		"malt on the kiln is dried on at the heat it has, with more air. Note what you found and what you did otherwise."}
)

// unmetRows is what to do where a figure of the process is not met.
func (m *maker) unmetRows() []Block {
	var rows []Wrong
	if model.First[*model.Steep](m.p) != nil {
		rows = append(rows, tooLight, tooHeavy)
	}
	if model.First[*model.Kilning](m.p) != nil || model.First[*model.Germination](m.p) != nil {
		rows = append(rows, notMet)
	}
	return unmetBlock(rows)
}

func unmetBlock(rows []Wrong) []Block {
	if len(rows) == 0 {
		return nil
	}
	return []Block{GoesWrong{Title: "When a figure is not met", Small: "Common practice, where the house has no rule of its own.", Rows: rows}}
}

func steepOf(st forecast.Stage) *model.Steep {
	s, _ := st.Of.(*model.Steep)
	return s
}
