package read

import (
	"fmt"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// endSense looks at what each step and the stage say of their end and their warmth.
func (b *builder) endSense(st model.Stage) {
	for _, s := range model.StepsOf(st) {
		b.eachStepSense(st, s)
	}
	if b.unread[st] {
		return
	}
	b.wrongWay(st.Kind(), st.Ends().Until, finding.Fault)
	if model.PieceOf(st) != nil {
		b.guarded(string(st.Kind()), st.Ends())
	}
	if grow, ok := st.(*model.Germination); ok {
		b.lastHold(grow)
	}
}

func (b *builder) eachStepSense(st model.Stage, s model.Step) {
	b.wrongWay(st.Kind(), s.Ends().Until, finding.Fault)
	b.wrongWay(st.Kind(), model.Asked(s), finding.Caution)
	for _, inner := range model.Inner(s) {
		b.eachStepSense(st, inner)
	}
	if b.unread[s] || s.Kind() == model.GateStep || s.Kind() == model.CoolStep {
		return
	}
	b.guarded(string(s.Kind()), orOver(s))
	heat := s.Warmth()
	if heat.Over != nil && heat.From == nil {
		b.note(overWithoutRise.At(heat.Over.Place, fmt.Sprintf("%s is given %s for a rise, and its temperature does not rise", s.Kind(), heat.Over)))
	}
	if heat.From != nil && heat.At != nil {
		f := twoTemperatures.At(heat.At.Place, fmt.Sprintf("%s is to be at %s, and to go from %s", s.Kind(), heat.At.Place.Text(), heat.From.Place.Text()))
		f.Related = []finding.Related{{Place: heat.From.Place, Message: "the change"}}
		b.note(f)
	}
	if heat.From != nil && heat.From.Low.SI > heat.From.High.SI && s.Kind() != model.HoldStep { // a bed may well be led down
		f := riseFalls.At(heat.From.Place, fmt.Sprintf("the temperature falls from %s to %s", heat.From.Low, heat.From.High))
		f.Hint = fmt.Sprintf("write %s if it is to rise, or cool", quantity.Range{Low: heat.From.High, High: heat.From.Low})
		b.note(f)
	}
}

// guarded reports an allow that has nothing to guard.
func (b *builder) guarded(what string, end model.Ending) {
	switch allow := end.Allow; {
	case allow == nil || end.Until != nil:
	case end.For != nil:
		b.note(guardOfNothing.At(allow.Place, fmt.Sprintf("%s takes %s and waits for nothing, so allow %s does nothing", what, end.For, allow.Place.Text())))
	case allow.Earliest != nil && allow.Latest != nil:
		b.note(guardOfNothing.At(allow.Place, fmt.Sprintf("%s waits for nothing, so it always lasts %s", what, allow.Latest)))
	}
}

// lastHold reports an end of the last hold. Holds that are all given a time that comes
// to that of the stage say the same twice, and that is no harm.
func (b *builder) lastHold(st *model.Germination) {
	holds := model.Only[*model.Hold](st.Steps)
	if len(holds) == 0 {
		return
	}
	last := holds[len(holds)-1]
	sum, timed := 0.0, st.For != nil
	for _, s := range holds {
		time := orOver(s).For
		if timed = timed && time != nil; timed {
			sum += time.SI
		}
	}
	if b.unread[last] || st.For == nil && st.Until == nil && st.Allow == nil {
		return
	}
	const says = "the last hold lasts until germinate ends, so %s of the hold does nothing"
	switch {
	case last.Until != nil:
		b.note(lastHoldEnd.At(last.Until.Place, fmt.Sprintf(says, "until "+last.Until.Place.Text())))
	case last.For != nil && !(timed && sum > 0.999*st.For.SI && sum < 1.001*st.For.SI):
		b.note(lastHoldEnd.At(last.For.Place, fmt.Sprintf(says, "for "+last.For.String())))
	}
}

// goesUp tells which way a measure goes in a stage; ok is false where it may go either.
func goesUp(kind model.StageKind, measure string) (up, ok bool) {
	m, _ := vocabulary.FindMeasure(measure)
	return m.GoesUp(vocabulary.Opens(vocabulary.Process, string(kind)))
}

// wrongWay reports a bound that a measure comes from the wrong side to.
func (b *builder) wrongWay(kind model.StageKind, c *model.Condition, as finding.Severity) {
	if c == nil {
		return
	}
	for i := range c.Tests {
		t := &c.Tests[i]
		up, known := goesUp(kind, t.Measure)
		if t.Bound == nil || !known || t.Bound.Op == quantity.Is {
			continue
		}
		if from := t.Bound.Op == quantity.AtLeast || t.Bound.Op == quantity.Above; from == up {
			continue
		}
		b.turned(kind, t, as, up)
	}
}

func (b *builder) turned(kind model.StageKind, t *model.Test, as finding.Severity, up bool) {
	way := "falls"
	if up {
		way = "rises"
	}
	if t.Measure == vocabulary.MeasureTime {
		way = "goes on"
	}
	f := boundWrongWay.At(t.Place, fmt.Sprintf("%s only %s in %s, so %s holds from the start or never", measureName(t.Measure), way, stageWord(kind), t.Place.Text()))
	f.Severity = as
	said := t.Bound.Op.String()
	if text := t.Place.Text(); strings.Count(text, said) == 1 {
		other := strings.Replace(text, said, t.Bound.Op.Turned().String(), 1)
		f.Hint = "write " + other
		if t.Measure == vocabulary.MeasureTime {
			f.Hint += ", or allow with the latest time"
		}
		if as == finding.Fault && t.Measure != vocabulary.MeasureTime { // its latest may be meant, which is allow
			f.Fixes = []finding.Edit{{Place: t.Place, New: other}}
		}
	}
	b.note(f)
}

func measureName(m string) string {
	if m == vocabulary.MeasureChit {
		return "the share of chitted kernels"
	}
	return "the " + m
}

func stageWord(kind model.StageKind) string {
	return map[model.StageKind]string{model.SteepStage: "the steep", model.GerminateStage: "germination", model.WitherStage: "withering", model.KilnStage: "the kiln"}[kind]
}
