package outlook

import (
	"maltwright/lang/model"
	"maltwright/lang/source"
)

// ConditionAt is the condition of a stage that is written there, nil where there is none.
func ConditionAt(of model.Stage, at source.Place) *model.Condition {
	if c := of.Ends().Until; c != nil && c.Place == at {
		return c
	}
	return conditionIn(model.StepsOf(of), at)
}

func conditionIn(steps []model.Step, at source.Place) *model.Condition {
	for _, s := range steps {
		for _, c := range []*model.Condition{s.Ends().Until, model.Asked(s), untilOf(s)} {
			if c != nil && c.Place == at {
				return c
			}
		}
		if c := conditionIn(model.Inner(s), at); c != nil {
			return c
		}
	}
	return nil
}

// untilOf is what a repeat waits for.
func untilOf(s model.Step) *model.Condition {
	if r, ok := s.(*model.Repeat); ok {
		return r.Until
	}
	return nil
}
