package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// sense looks at a process as a whole. Of one that did not read in full it only
// says what cannot be due to the words that are missing.
func (b *builder) sense(p *model.Process) {
	b.stageOrder(p)
	if !b.unread[p] {
		b.missingStages(p)
	}
	for _, st := range p.Stages {
		b.stageSense(p, st)
		b.endSense(st)
		if b.countSteps(st) { // there is nothing in it that could be judged
			p.Broken = true
		}
	}
	if b.countStages(p) {
		p.Broken = true
	}
	b.proportions(p)
	b.moistureSense(p)
	b.greenSense(p)
}

func (b *builder) missingStages(p *model.Process) {
	var missing []string
	for _, kind := range neededStages(p) {
		if p.Stage(kind) == nil {
			missing = append(missing, string(kind))
		}
	}
	if len(missing) > 0 {
		b.note(missingStage.At(p.Place, fmt.Sprintf("%q has no %s stage", p.Name, quoted(missing))))
	}
}

// neededStages are those without which there is no malt: of bought malt the kiln, and
// of green malt that is made all but that.
func neededStages(p *model.Process) []model.StageKind {
	switch {
	case p.Grain.Grown(), p.Grain.Kilned():
		return []model.StageKind{model.KilnStage}
	case p.Make.Text == vocabulary.MaltGreen:
		return []model.StageKind{model.SteepStage, model.GerminateStage}
	}
	return []model.StageKind{model.SteepStage, model.GerminateStage, model.KilnStage}
}

func (b *builder) stageSense(p *model.Process, st model.Stage) {
	switch st := st.(type) {
	case *model.Steep:
		b.steepSense(p, st.Steps)
	case *model.Germination:
		b.germinateSense(st)
	case *model.Withering:
		b.witherSense(p, st)
	case *model.Kilning:
		b.kilnSense(st)
	}
	if len(model.StepsOf(st)) == 0 && !b.unread[st] && (st.Kind() == model.SteepStage || st.Kind() == model.KilnStage) {
		b.note(missingStatement.At(st.Place(), fmt.Sprintf("%s has no steps", st.Kind())))
	}
}

func (b *builder) steepSense(p *model.Process, steps []model.Step) {
	for _, s := range steps {
		if r, ok := s.(*model.Repeat); ok {
			if r.Times == nil && !b.unread[s] {
				b.note(missingGuard.At(s.Place(), "repeat does not say at most how many times"))
			}
			b.steepSense(p, r.Steps)
			continue
		}
		b.ends(s)
		if s.Warmth().At == nil && s.Kind() != model.GateStep && !b.unread[s] {
			b.needsTemperature(s, p)
		}
	}
}

// needsTemperature reports a step without a temperature that the site does not give.
func (b *builder) needsTemperature(s model.Step, p *model.Process) {
	if b.siteNamed[p] && p.Site == nil {
		return // what it would say is not known
	}
	given := p.Site != nil && (s.Kind() == model.SoakStep && p.Site.Water != nil || s.Kind() == model.RestStep && p.Site.Air != nil)
	if !given {
		b.note(stepNeedsTemperature.At(s.Place(), fmt.Sprintf("%s does not say how warm, and the site does not either", s.Kind())))
	}
}

func (b *builder) germinateSense(st *model.Germination) {
	holds := model.Only[*model.Hold](st.Steps)
	for i, s := range holds {
		if i < len(holds)-1 { // the last lasts to the end of the stage
			b.ends(s)
		}
		b.warmed(s)
	}
	if b.unread[st] {
		return
	}
	if len(holds) == 0 && len(st.Blown) == 0 {
		f := stepNeedsTemperature.At(st.Place(), "germinate does not say in which band the bed is held")
		f.Hint = "add a line such as: hold bed at 14 to 17 °C"
		if st.Floor.Blown() {
			f.Hint = "add a line such as: air at air-on 13 to 14 °C; or: hold bed at 14 to 17 °C"
		}
		b.note(f)
	}
	b.endsBy(st.Place(), string(st.Kind()), st.Ending)
}

func (b *builder) witherSense(p *model.Process, st *model.Withering) {
	if b.unread[st] {
		return
	}
	if st.Air == nil && len(st.Blown) == 0 && (p.Site == nil && !b.siteNamed[p] || p.Site != nil && p.Site.Air == nil) {
		b.note(stepNeedsTemperature.At(st.Place(), "wither does not say how warm its air is, and the site does not either"))
	}
	b.endsBy(st.Place(), string(st.Kind()), st.Ending)
}

func (b *builder) kilnSense(st *model.Kilning) {
	b.stirredDrum(st)
	for _, s := range st.Steps {
		if b.unread[s] {
			continue
		}
		b.ends(s)
		b.moreThanBlown(st.Kiln, s)
		if s.Kind() != model.GateStep && !asWarmAsItComes(st.Kiln, s) {
			b.warmed(s)
		}
	}
}

// asWarmAsItComes tells whether a step that does not say how warm is dried with the exhaust
// of another kiln, by one that has no heater of its own.
func asWarmAsItComes(k *model.Kiln, s model.Step) bool {
	heat := s.Warmth()
	return k != nil && k.AirFrom != nil && k.Heater == nil && heat.At == nil && heat.From == nil
}

// warmed reports a step that does not say how warm, or not how fast it changes.
func (b *builder) warmed(s model.Step) {
	heat := s.Warmth()
	switch {
	case b.unread[s]:
	case heat.At == nil && heat.From == nil:
		b.note(stepNeedsTemperature.At(s.Place(), fmt.Sprintf("%s does not say how warm", s.Kind())))
	case heat.From != nil && heat.Over == nil:
		b.note(stepNeedsEnd.At(s.Place(), fmt.Sprintf("%s %s from %s, but not over what time", s.Kind(), goesWith(heat.From), heat.From.Range.Range)))
	}
}

// goesWith is what a temperature does that runs from one value to another.
func goesWith(from *model.Temperature) string {
	if from.Low.SI > from.High.SI {
		return "falls"
	}
	return "rises"
}

// ends reports a step with no end, or with one that may never come.
func (b *builder) ends(s model.Step) {
	if b.unread[s] || s.Kind() == model.CoolStep {
		return
	}
	if s.Kind() == model.GateStep {
		return // a gate is met by the step before it, or the forecast says it is not
	}
	end, heat := s.Ends(), s.Warmth()
	if end.For == nil && end.Until == nil && (heat.Over != nil || heat.From != nil) {
		return // a rise ends when it is through; kilnSense asks for its time
	}
	b.endsBy(s.Place(), string(s.Kind()), orOver(s))
}

// orOver is the end of a step, with the time of a rise as the time of one that has no
// other.
func orOver(s model.Step) model.Ending {
	end := s.Ends()
	if end.For == nil && !model.HeldOn(end, s.Warmth()) {
		end.For = s.Warmth().Over
	}
	return end
}

// endsBy reports a step or a stage with no end, or with one that may never come.
func (b *builder) endsBy(place source.Place, what string, end model.Ending) {
	switch {
	case end.For != nil:
	case end.Until == nil && end.Allow == nil:
		b.note(stepNeedsEnd.At(place, fmt.Sprintf("%s does not say when it ends", what)))
	case end.Allow == nil || end.Allow.Latest == nil:
		f := missingGuard.At(place, fmt.Sprintf("%s waits for a condition, but has no latest time", what))
		if end.Until != nil {
			f.Related = []finding.Related{{Place: end.Until.Place, Message: "this is its condition"}}
		}
		b.note(f)
	}
}
