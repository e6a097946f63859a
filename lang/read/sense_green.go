package read

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// greenSense looks at a process that is a part of the whole: one that ends with green malt,
// and one that begins with it, or with malt.
func (b *builder) greenSense(p *model.Process) {
	if p.Grain.Grown() {
		b.partOf(p, grownAlready, p.Grain.Already.Place, "the lot", "%s stands in a process whose lot is green malt already",
			model.SteepStage, model.GerminateStage)
	}
	if p.Grain.Kilned() {
		b.partOf(p, kilnedAgain, p.Grain.Already.Place, "the lot", "%s stands in a process whose lot is malt already",
			model.SteepStage, model.GerminateStage, model.WitherStage)
	}
	if p.Make.Text == vocabulary.MaltGreen {
		b.partOf(p, greenGoesOn, p.Make.Place, "the malt that is made", "%s stands behind the growing, with which green malt is made",
			model.KilnStage, model.DeculmStage, model.StoreStage)
	}
}

// partOf reports the first stage of kinds that the process has no need of, with the others.
func (b *builder) partOf(p *model.Process, r finding.Rule, because source.Place, what, says string, kinds ...model.StageKind) {
	var out []model.Stage
	for _, st := range p.Stages {
		if slices.Contains(kinds, st.Kind()) {
			out = append(out, st)
		}
	}
	if len(out) == 0 {
		return
	}
	f := r.At(out[0].Place(), fmt.Sprintf(says, out[0].Kind()))
	f.Related = []finding.Related{{Place: because, Message: what}}
	for _, st := range out[1:] {
		f.Related = append(f.Related, finding.Related{Place: st.Place(), Message: fmt.Sprintf("and %s", st.Kind())})
	}
	b.note(f)
}
