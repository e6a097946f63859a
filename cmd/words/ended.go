package words

import "maltwright/sim/forecast"

// endings are what may end a step, in words.
var endings = map[string]string{string(forecast.ByTime): "its time", string(forecast.ByGate): "condition met", string(forecast.ByGuard): "latest time", string(forecast.ByRecord): "by the record"}

// EndedBy says what ended a step.
func EndedBy(by string) string {
	if text, ok := endings[by]; ok {
		return text
	}
	return by
}
