package sheet

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sums"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/reckon"
)

// opening is what page 1 begins with.
func (m *maker) opening() []Block {
	list := []Block{m.head()}
	for lots := range slices.Chunk(m.lots()[min(fewLots, len(m.lots())):], fewLots) { // a mixture of many
		list = append(list, Head{Fields: m.lotsIn(lots)})
	}
	return append(list, m.steepSums()...)
}

// fewLots is how many lots stand in a head.
const fewLots = 3

// hazards names what can hurt somebody.
func (m *maker) hazards() Block {
	return Words{Small: true, Text: "Dangers: " + words.HazardNames(outlook.CautionsOf(m.p)) + ". What to do stands on the last page."}
}

// hazardsInBrief names it in a line.
func (m *maker) hazardsInBrief() []Block {
	names, _, _ := strings.Cut(words.HazardNames(outlook.CautionsOf(m.p)), ";")
	return []Block{Words{Small: true, Text: "Dangers: " + names + ": see the last page."}}
}

// aimLabel stands in front of the moisture that a steep aims at.
const aimLabel = "target"

// head says what the paper is of, and where its grain comes from.
func (m *maker) head() Head {
	fields := []Field{{Label: "batch"}, {Label: "first soak"}}
	if m.batch != nil {
		fields[0].Text = words.Safe(m.batch.Name)
	}
	if !m.p.Grain.Raw() {
		fields[1].Label = "begun"
	}
	if m.clock {
		fields[1].Text = m.o.Start.Format(onDay + " 2006 " + onClock)
	}
	fields = append(fields, Field{Label: "process", Text: words.Safe(m.p.Name)}, Field{Label: "malt", Text: m.p.Make.Text}, m.charge())
	if m.batch == nil {
		fields = append(fields, Field{Label: "weighed in"})
	} else {
		fields = append(fields, Field{Label: "sheet as of", Text: m.until.Format(onDay + " " + onClock)})
	}
	fields = append(fields, m.lotsIn(m.lots()[:min(fewLots, len(m.lots()))])...)
	for i := range fields {
		fields[i].Text = short(fields[i].Text)
	}
	return Head{Fields: fields}
}

// lotsIn says what is known of some lots.
func (m *maker) lotsIn(list []model.Taken) (fields []Field) {
	for _, lot := range list {
		for _, f := range m.lot(lot) {
			f.Text = short(f.Text)
			fields = append(fields, f)
		}
	}
	return fields
}

func (m *maker) charge() Field {
	f := Field{Label: "charge"}
	if m.p.Charge != nil {
		f.Text = m.p.Charge.String()
		if bag := m.bag(); bag != nil {
			f.Text += ", " + bag.String() + " of it in the marked bag"
		}
	}
	return f
}

func (m *maker) bag() *model.Quantity {
	if m.batch != nil {
		return m.batch.RawBag()
	}
	return m.p.Bag
}

// lots are what it is made from.
func (m *maker) lots() []model.Taken {
	if list := m.p.Taken(); len(list) > 0 {
		return list
	}
	return []model.Taken{{Grain: m.p.Grain}}
}

// lot says what is known of a lot, with lines for what an inspector asks and the house does not say.
func (m *maker) lot(t model.Taken) []Field {
	g := t.Grain
	if g == nil {
		return []Field{{Label: "lot"}, {Label: "grain"}, {Label: "supplier"}, {Label: "delivery, year"}}
	}
	name := words.Safe(g.Name)
	if len(m.p.Lots) > 1 && t.Weight != nil {
		name = t.Weight.String() + " of " + name
	}
	grain := g.Species.Text
	if g.Already.Text != "" {
		grain += ", already " + g.Already.Text
	}
	if g.Moisture != nil {
		grain += ", " + g.Moisture.String() + " moisture"
	}
	if t := g.Treated.Text; t == vocabulary.SaidYes || t == vocabulary.SaidUnknown {
		grain += ", treated: " + t
	}
	var suppliers, came []string
	for _, d := range g.Delivered {
		if d.From.Text != "" {
			suppliers = append(suppliers, words.Safe(d.From.Text))
		}
		came = append(came, delivery(d))
	}
	return []Field{{Label: "lot", Text: name}, {Label: "grain", Text: grain},
		{Label: "supplier", Text: strings.Join(unique(suppliers), "; ")}, {Label: "delivery, year", Text: strings.Join(came, "; ")}}
}

// delivery is how much came, when and under which number.
func delivery(d model.Delivery) string {
	out := words.Joined(" on ", d.Weight.String(), d.On.Text)
	return words.Joined(" as ", out, words.Safe(d.As.Text))
}

func unique(list []string) (out []string) {
	seen := map[string]bool{}
	for _, x := range list {
		if !seen[x] {
			out, seen[x] = append(out, x), true
		}
	}
	return out
}

func stated(q *model.Quantity) string {
	if q == nil {
		return ""
	}
	return q.String()
}

// steepSums reckon the weight to look for at the end of the first steep, a line each.
func (m *maker) steepSums() []Block {
	st := model.First[*model.Steep](m.p)
	if st == nil || m.batch != nil && m.f.Stages[m.present()].Kind != model.SteepStage {
		return nil
	}
	return []Block{Heading{Text: "Weight to look for at steep-out"}, Sums{Rows: m.rows(st)}}
}

func (m *maker) rows(st *model.Steep) []Sum {
	if m.p.Charge == nil || m.p.Grain == nil || m.p.Grain.Moisture == nil || st.Target == nil {
		return emptySums(stated(m.p.Charge), target(st))
	}
	from := reckon.Start{Weight: m.p.Charge.Quantity, Moisture: m.p.Grain.Moisture.Quantity}
	low, err := sums.ToMoisture(from, st.Target.Low, nil)
	if err != nil {
		return emptySums(stated(m.p.Charge), target(st))
	}
	rows := []Sum{{Label: "raw weight", Working: "at " + m.p.Grain.Moisture.String() + " moisture", Result: m.p.Charge.String()}, worked(low, "dry matter", "")}
	rows = append(rows, Sum{Label: aimLabel, Working: "moisture of the whole weight", Result: target(st)})
	ends := []quantity.Quantity{st.Target.Low}
	if st.Target.High.SI > st.Target.Low.SI {
		ends = append(ends, st.Target.High)
	}
	holder := model.HolderOf(st)
	for _, w := range ends {
		r, err := sums.ToMoisture(from, w, nil)
		if err != nil {
			continue
		}
		row := worked(r, "weight", "at "+w.String())
		row.Strong = true
		if gross, known := holder.With(float64(r.Weight)); known {
			row.Working += " = " + row.Result + ", + " + holder.Weighs.String() + ` of "` + short(words.Safe(holder.Name)) + `"`
			row.Result = words.Weighed(m.h, gross)
		} else {
			row.Result = words.Weighed(m.h, r.Weight)
		}
		rows = append(rows, row)
	}
	return rows
}

// worked is a step of a working as a row.
func worked(r sums.Target, step, called string) Sum {
	for _, s := range r.Working {
		l := words.WorkingStep(s)
		if l.Label != step {
			continue
		}
		working, result, _ := strings.Cut(l.Text, " = ")
		return Sum{Label: words.Joined(" ", step, called), Working: working, Result: result}
	}
	return Sum{Label: step}
}

func target(st *model.Steep) string {
	if st == nil || st.Target == nil {
		return ""
	}
	return st.Target.String()
}

// emptySums are the reckoning with empty places.
func emptySums(weight, target string) []Sum {
	or := func(text, empty string) string {
		if text == "" {
			return empty
		}
		return text
	}
	return []Sum{
		{Label: "raw weight", Working: "its moisture: " + blank + " %", Result: or(weight, blank)},
		{Label: "dry matter", Working: fmt.Sprintf("%s × (1 − %s %% / 100)", or(weight, blank), blank), Result: blank},
		{Label: aimLabel, Working: "moisture of the whole weight", Result: or(target, blank+" %")},
		{Label: "weight to look for", Working: fmt.Sprintf("dry matter %s / (1 − %s %% / 100)", blank, blank), Result: blank, Strong: true},
		{Label: "with the vessel", Working: fmt.Sprintf("%s + %s", blank, blank), Result: blank, Strong: true},
	}
}
