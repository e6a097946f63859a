package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// peopleRules are of what can hurt somebody, and of who has to be up.
func peopleRules() []Rule {
	return []Rule{causticSteep, co2Room, directFired, flueNotSaid, gasOvenIndoors, fireUnattended, heaterOnExtension, hotSurfaces, dust, visitAtNight}
}

// localCodes closes what a rule of this family tells people to do.
const localCodes = "; follow local codes and licensed practice"

// theKiln is the kiln as a related place.
func theKiln(k *model.Kiln) []finding.Related {
	return []finding.Related{{Place: k.Place, Message: "the kiln"}}
}
