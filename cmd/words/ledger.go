package words

import (
	"fmt"

	"maltwright/cmd/answer/ledger"
)

// Doubt says why a weight cannot be.
func (h House) Doubt(d ledger.Doubt) string {
	what := string(d.What)
	if d.What == ledger.AtCast {
		what = "batch at steep-out"
	}
	return fmt.Sprintf("the %s of %s weighs less than its dry matter by the forecast, %s; some was lost, or a weight or the sample is wrong",
		what, Mass(h, d.Weight), Mass(h, d.DryMatter))
}
