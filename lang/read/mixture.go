package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var lotsDiffer = rule("lots-differ", fault, "a process from lots that do not go together",
	"two grains drink and grow at different speeds, and green malt has already grown: one of them is spoilt (common practice)",
	"make two processes of it, or name a lot of the same grain",
	`use "loft.malt"
grain "Wheat" { species wheat; moisture 12 % }
process "Loft pale" {
  make pale malt
  from 3 kg of "Far field 2026"
  from 3 kg of "Wheat"
  steep in "blue tub" { soak 7 h in water at 13 °C }
  germinate on "larch floor" { hold bed at 14 to 17 °C; for 5 days }
`+shortKiln+"}",
	`use "loft.malt"
grain "Hill" { species barley; moisture 12 % }
process "Loft pale" {
  make pale malt
  from 3 kg of "Far field 2026"
  from 3 kg of "Hill"
  steep in "blue tub" { soak 7 h in water at 13 °C }
  germinate on "larch floor" { hold bed at 14 to 17 °C; for 5 days }
`+shortKiln+"}")

// mixtureOf makes the charge of a record out of its lots, as that of a process is made.
func (b *builder) mixtureOf(t *model.Batch) {
	if len(t.Lots) == 0 {
		return
	}
	place, of := t.Lots[0].Place, model.Process{Lots: t.Lots}
	b.mixture(&of)
	t.From, t.Lots = &model.Taken{Place: place, Weight: of.Charge, Grain: of.Grain}, of.Lots
}

// mixture makes the charge of a process out of its lots, and their mixture where there are
// several.
func (b *builder) mixture(p *model.Process) {
	list := p.Lots
	if len(list) < 2 {
		p.Lots = nil
		if len(list) == 1 {
			p.Charge, p.Grain = list[0].Weight, list[0].Grain
		}
		return
	}
	seen := map[*model.Grain]source.Place{}
	sum := 0.0
	for _, t := range list {
		if t.Weight == nil || t.Grain == nil {
			p.Lots, p.Charge, p.Grain = nil, t.Weight, t.Grain // reported
			return
		}
		if before, again := seen[t.Grain]; again {
			b.again(t.Place, before, fmt.Sprintf("lot %q is given twice", t.Grain.Name))
		}
		seen[t.Grain] = t.Place
		sum += t.Weight.SI
		b.goesWith(list[0], t)
	}
	first := list[0].Weight
	made, err := quantity.In(sum, first.Unit())
	if err != nil {
		made = first.Quantity
		made.SI = sum
	}
	p.Charge, p.Grain = &model.Quantity{Quantity: made, Place: first.Place}, mixed(list)
}

// mixed is the mixture of lots, with the worst of what was seen of them.
func mixed(list []model.Taken) *model.Grain {
	g := model.Mixed(list)
	g.Treated = model.Worst(list, func(g *model.Grain) model.Word { return g.Treated }, vocabulary.SaidYes, "", vocabulary.SaidUnknown, vocabulary.SaidNo)
	g.Ergot = model.Worst(list, func(g *model.Grain) model.Word { return g.Ergot }, vocabulary.SaidFound, "", vocabulary.SaidUnknown, vocabulary.SaidNone)
	g.Mould = model.Worst(list, func(g *model.Grain) model.Word { return g.Mould }, vocabulary.SaidFound, "", vocabulary.SaidUnknown, vocabulary.SaidNone)
	return g
}

// goesWith reports a lot that does not go with the first.
func (b *builder) goesWith(first, t model.Taken) {
	one, other := what(first.Grain), what(t.Grain)
	if one == other || first.Grain.Species.Text == "" || t.Grain.Species.Text == "" {
		return
	}
	f := lotsDiffer.At(t.Place, fmt.Sprintf("%q is %s, and %q is %s", t.Grain.Name, other, first.Grain.Name, one))
	f.Related = []finding.Related{{Place: first.Place, Message: "the first lot"}}
	b.note(f)
}

// what says what a lot is: barley, or green malt of barley.
func what(g *model.Grain) string {
	if g.Grown() || g.Kilned() {
		return g.Already.Text + " malt of " + g.Species.Text
	}
	return g.Species.Text
}
