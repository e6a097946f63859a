package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
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
	b.proportions(p)
	b.moistureSense(p)
}

func (b *builder) missingStages(p *model.Process) {
	var missing []string
	for _, kind := range []model.StageKind{model.Steep, model.Germinate, model.KilnStage} {
		if p.Stage(kind) == nil {
			missing = append(missing, string(kind))
		}
	}
	if len(missing) > 0 {
		b.note(missingStage.At(p.Place, fmt.Sprintf("%q has no %s stage", p.Name, quoted(missing))))
	}
}

func (b *builder) stageSense(p *model.Process, st *model.Stage) {
	switch st.Kind {
	case model.Steep:
		b.steepSense(p, st.Steps)
	case model.Germinate, model.Wither:
		b.growingSense(p, st)
	case model.KilnStage:
		b.kilnSense(st)
	}
	if len(st.Steps) == 0 && !b.unread[st] && (st.Kind == model.Steep || st.Kind == model.KilnStage) {
		b.note(missingStatement.At(st.Place, fmt.Sprintf("%s has no steps", st.Kind)))
	}
}

func (b *builder) steepSense(p *model.Process, steps []*model.Step) {
	for _, s := range steps {
		if s.Kind == model.Repeat {
			if s.Times == nil && !b.unread[s] {
				b.note(missingGuard.At(s.Place, "repeat does not say how many times at the most"))
			}
			b.steepSense(p, s.Steps)
			continue
		}
		b.ends(s)
		if s.At == nil && s.Kind != model.Gate && !b.unread[s] {
			b.needsTemperature(s, p)
		}
	}
}

// needsTemperature reports a step without a temperature that the site does not give.
func (b *builder) needsTemperature(s *model.Step, p *model.Process) {
	if b.siteNamed[p] && p.Site == nil {
		return // what it would say is not known
	}
	given := p.Site != nil && (s.Kind == model.Soak && p.Site.Water != nil || s.Kind == model.Rest && p.Site.Air != nil)
	if !given {
		b.note(stepNeedsTemperature.At(s.Place, fmt.Sprintf("%s does not say how warm, and the site does not either", s.Kind)))
	}
}

func (b *builder) growingSense(p *model.Process, st *model.Stage) {
	lastHold := -1 // it lasts to the end of the stage
	for i, s := range st.Steps {
		if s.Kind == model.Hold {
			lastHold = i
		}
	}
	for i, s := range st.Steps {
		if s.Kind == model.Hold && i < lastHold {
			b.ends(s)
		}
	}
	if b.unread[st] {
		return
	}
	if st.Kind == model.Germinate && lastHold < 0 {
		b.note(stepNeedsTemperature.At(st.Place, "germinate does not say in which band the bed is held"))
	}
	if st.Kind == model.Wither && st.Air == nil && (p.Site == nil && !b.siteNamed[p] || p.Site != nil && p.Site.Air == nil) {
		b.note(stepNeedsTemperature.At(st.Place, "wither does not say how warm its air is, and the site does not either"))
	}
	b.endsBy(st.Place, string(st.Kind), st.For, st.Until, st.Allow)
}

func (b *builder) kilnSense(st *model.Stage) {
	for _, s := range st.Steps {
		if b.unread[s] {
			continue
		}
		b.ends(s)
		if s.Kind != model.Gate && s.At == nil && s.From == nil {
			b.note(stepNeedsTemperature.At(s.Place, fmt.Sprintf("%s does not say how warm", s.Kind)))
		}
		if s.From != nil && s.Over == nil {
			b.note(stepNeedsEnd.At(s.Place, fmt.Sprintf("%s rises from %s, but not over what time", s.Kind, s.From.Range.Range)))
		}
	}
}

// ends reports a step with no end, or with one that may never come.
func (b *builder) ends(s *model.Step) {
	if b.unread[s] || s.Kind == model.Cool {
		return
	}
	if s.Kind == model.Gate {
		return // a gate is met by the step before it, or the forecast says it is not
	}
	if s.For == nil && s.Until == nil && (s.Over != nil || s.From != nil) {
		return // a rise ends when it is through; kilnSense asks for its time
	}
	b.endsBy(s.Place, string(s.Kind), orOver(s), s.Until, s.Allow)
}

// orOver takes the time of a rise as the time of a step that has no other.
func orOver(s *model.Step) *model.Quantity {
	if s.For == nil {
		return s.Over
	}
	return s.For
}

func (b *builder) endsBy(place source.Place, what string, time *model.Quantity, until *model.Condition, allow *model.Guard) {
	switch {
	case time != nil:
	case until == nil && allow == nil:
		b.note(stepNeedsEnd.At(place, fmt.Sprintf("%s does not say when it ends", what)))
	case allow == nil || allow.Latest == nil:
		f := missingGuard.At(place, fmt.Sprintf("%s waits for something, but has no latest time", what))
		if until != nil {
			f.Related = []finding.Related{{Place: until.Place, Message: "it waits for this"}}
		}
		b.note(f)
	}
}
