package founding

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// BeforeItIsWet tells what is not known of a lot of raw grain, as sentences with what to do:
// whether it is poisoned comes first, what spoils the malt last. There is none of a lot that is
// not raw.
func BeforeItIsWet(g *model.Grain) (list []string) {
	if g == nil || !g.Raw() {
		return nil
	}
	unknown := func(w model.Word) bool { return w.Text == "" || w.Text == vocabulary.SaidUnknown }
	if unknown(g.Treated) {
		list = append(list, fmt.Sprintf("ask who sold %s whether it was treated as seed: treated seed is poison, and never malt", quoted(g.Name)))
	}
	switch {
	case unknown(g.Mould) && unknown(g.Ergot):
		list = append(list, fmt.Sprintf("look through %s for mould and ergot: both hold poisons that outlast malting", quoted(g.Name)))
	case unknown(g.Mould):
		list = append(list, fmt.Sprintf("look through %s for mould: its poisons outlast malting", quoted(g.Name)))
	case unknown(g.Ergot):
		list = append(list, fmt.Sprintf("look through %s for ergot: its poisons outlast malting", quoted(g.Name)))
	}
	if len(g.Germination) == 0 {
		list = append(list, fmt.Sprintf("test how much of %s sprouts: lay 100 kernels on wet paper for 3 days; fewer than 90 make poor malt", quoted(g.Name)))
	}
	return list
}
