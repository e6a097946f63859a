package records

import (
	"fmt"

	"maltwright/lang/vocabulary"
)

// heeded are the contents from which on a poison in malt is told of, kg/kg: the maximum
// level of DON in unprocessed cereals in the European Union (Regulation (EU) 2023/915, of
// which 2024/1022 made 1 mg/kg; oats may have more), and the action level of NDMA in
// barley malt in the United States (Compliance Policy Guide 578.500). Both from memory.
var heeded = map[string]struct {
	from  float64
	where string
}{
	vocabulary.AnalysisDON:  {1e-6, "1 mg/kg, the most that the European Union allows in most unprocessed cereals"},
	vocabulary.AnalysisNDMA: {10e-9, "10 µg/kg, the level from which the United States acts against barley malt"},
}

// contaminants finds more of a poison than law usually allows.
func (r *record) contaminants() {
	for i := range r.batch.Tested {
		x := &r.batch.Tested[i]
		if limit, ok := heeded[x.What.Text]; ok && x.Found.SI > limit.from {
			r.note(contaminantHigh.At(x.Found.Place, fmt.Sprintf("%s of %s is above %s", x.Found, poisons[x.What.Text], limit.where)))
		}
	}
}

// poisons is how the trade writes a poison.
var poisons = map[string]string{vocabulary.AnalysisDON: "DON", vocabulary.AnalysisNDMA: "NDMA"}
