package read

import (
	"fmt"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// asked is a moisture that a process asks for.
type askedMoisture struct {
	rng   quantity.Range
	place source.Place
}

func (m askedMoisture) dry() bool { return strings.Contains(m.rng.High.String(), "dry basis") }

// moistureSense looks at all moistures that a process asks for, side by side.
func (b *builder) moistureSense(p *model.Process) {
	var list []askedMoisture
	add := func(c *model.Condition) {
		if c == nil {
			return
		}
		for _, t := range c.Tests {
			if m, _ := vocabulary.FindMeasure(t.Measure); t.Bound != nil && m.OfMoisture() {
				list = append(list, askedMoisture{t.Bound.Range, t.Place})
			}
		}
	}
	for _, st := range p.Stages {
		eachCondition(st, add)
	}
	for i := range p.Expect {
		add(&p.Expect[i])
	}
	for _, m := range list {
		if over := (&model.Quantity{Quantity: m.rng.High, Place: m.place}); over.SI > mostMoisture(p.Limits) {
			b.note(tooMoist(over, livingGrain))
		}
	}
	for _, st := range p.Stages {
		if steep, ok := st.(*model.Steep); ok && steep.Target != nil {
			list = append(list, askedMoisture{steep.Target.Range, steep.Target.Place})
		}
	}
	b.mixed(list)
}

// eachCondition calls do with every condition of a stage.
func eachCondition(st model.Stage, do func(*model.Condition)) {
	do(st.Ends().Until)
	for _, s := range model.EveryStep(model.StepsOf(st)) {
		do(s.Ends().Until)
		do(model.Asked(s))
	}
}

// mixed reports the moistures on the basis that fewer of them are on.
func (b *builder) mixed(list []askedMoisture) {
	dry := 0
	for _, m := range list {
		if m.dry() {
			dry++
		}
	}
	wet := len(list) - dry
	if dry == 0 || wet == 0 {
		return
	}
	for _, m := range list {
		if m.dry() != (dry <= wet) {
			continue
		}
		high := m.rng.High
		f := basesMixed.At(m.place, fmt.Sprintf("%s is %.3g %% dry basis, and other moistures of the process are given on the dry basis", high, 100*high.SI/(1-high.SI)))
		f.Hint = fmt.Sprintf("if %s of the dry matter was meant, write dry basis behind it", high)
		if m.dry() {
			f = basesMixed.At(m.place, fmt.Sprintf("%s is %.3g %% of the whole weight, and other moistures of the process are of the whole weight", high, 100*high.SI))
			f.Hint = fmt.Sprintf("if %s of the whole weight was meant, leave dry basis out", strings.TrimSpace(strings.Replace(high.String(), "dry basis", "", 1)))
		}
		b.note(f)
	}
}
