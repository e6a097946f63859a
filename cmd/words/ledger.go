package words

import (
	"fmt"

	"maltwright/cmd/answer/ledger"
)

// Doubt says why a weight cannot be.
func (h House) Doubt(d ledger.Doubt) string {
	what := string(d.What)
	if d.What == ledger.AtCast {
		what = "batch at cast"
	}
	return fmt.Sprintf("the %s of %s weighs less than the dry matter that the forecast leaves in it, %s; some was lost, or a weight or the sample is wrong",
		what, Mass(h, d.Weight), Mass(h, d.DryMatter))
}

// Plural counts things by their word: 1 batch, 3 changes.
func Plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
