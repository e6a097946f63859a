package records

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

const (
	sameWarmth = 0.05     // K, finer than is written
	hotFor     = 4 * hour // how long grain bears hot steep water (common practice)
	leastGrown = 0.5      // of the fewest usual days, below which the kernel is raw for all lots
)

// harmed tells what a change does to the grain or the malt, by the limits that the rules of a process
// judge the same value by, and as gravely as those. It is false of what does no harm.
func (r *record) harmed(c model.Change) (f finding.Finding, ok bool) {
	severity, said, hint := finding.Caution, "", ""
	switch warm := c.Is(quantity.Temperature); {
	case warm && (kindOf(c) == vocabulary.VerbHold || kindOf(c) == vocabulary.VerbGerminate):
		severity, said, hint = r.warmBed(c)
	case warm && kindOf(c) == vocabulary.VerbSoak:
		severity, said, hint = r.hotWater(c)
	case warm && kindOf(c) == vocabulary.VerbCure:
		said, hint = r.hotCure(c)
	case c.Is(quantity.Time) && kindOf(c) == vocabulary.VerbSoak:
		severity, said, hint = r.drowned(c)
	case c.Is(quantity.Time) && kindOf(c) == vocabulary.VerbGerminate:
		said, hint = r.hardlyGrown(c)
	}
	if said == "" {
		return f, false
	}
	f = changeDoubtful.At(c.To.Place, fmt.Sprintf("%s was changed to %s: %s", stepWords(&c.Step), c.To.Range.Range, said))
	f.Severity, f.Hint = severity, hint
	return f, true
}

// warmBed is as bed-too-warm has it.
func (r *record) warmBed(c model.Change) (s finding.Severity, said, hint string) {
	name, usual := r.usual.Grain.Name, r.usual.Grows
	like := func(c float64) string { return r.batch.Process.Units().Degrees(c, 0) }
	warm := r.limit(vocabulary.LimitBed, r.usual.GrowWarm()+zeroC) - zeroC
	hint = fmt.Sprintf("keep the bed at %s: turn it, spread it thinner, and cool the room", r.batch.Process.Units().DegreesBetween(usual.Low, usual.High))
	switch mid, high := c.To.Mid()-zeroC, c.To.High.SI-zeroC; {
	case mid > r.usual.GrowsHot+sameWarmth:
		return finding.Fault, fmt.Sprintf("a piece of %s is lost above %s, because the grain dies", name, like(r.usual.GrowsHot)), hint
	case high > warm+sameWarmth:
		return finding.Caution, fmt.Sprintf("%s is the warmest for %s malt of %s; warmer, it grows unevenly and goes mouldy, and above %s the grain dies", like(warm), r.usual.Malt.Name, name, like(r.usual.GrowsHot)), hint
	}
	return finding.Note, "", ""
}

// hotWater is as steep-water-warm has it of water that is too hot for hours; how long is not in the
// change, so the soak of the process is asked.
func (r *record) hotWater(c model.Change) (s finding.Severity, said, hint string) {
	like := r.batch.Process.Units().Degrees
	if low := c.To.Low.SI - zeroC; low > r.usual.HotWater+sameWarmth && r.soaksLong() {
		return finding.Fault, fmt.Sprintf("that kills %s: %s is the most for more than %.0f h", r.usual.Grain.Name, like(r.usual.HotWater, 0), hotFor/hour),
			fmt.Sprintf("draw cooler water, at most %s", like(r.usual.WarmWater, 0))
	}
	return finding.Note, "", ""
}

// soaksLong tells whether a soak of the process lasts longer than grain bears hot water.
func (r *record) soaksLong() bool {
	for _, st := range r.batch.Process.Stages {
		for _, t := range timesOf(model.StepsOf(st), vocabulary.VerbSoak) {
			if t.SI > hotFor {
				return true
			}
		}
	}
	return false
}

// hotCure is of heat that no malt of the kind is cured at.
func (r *record) hotCure(c model.Change) (said, hint string) {
	bears := r.bears(vocabulary.VerbCure, spans[vocabulary.VerbCure].warm)
	if c.To.High.SI-zeroC <= bears {
		return "", ""
	}
	like := r.batch.Process.Units().Degrees
	lost := "the malt roasts, its enzymes are gone, and it does not convert its own starch"
	if !r.usual.Malt.NeedsEnzymes {
		lost = "the malt roasts darker than it is called, and may catch fire"
	}
	return fmt.Sprintf("%s is the hottest that %s malt is cured at; so hot, %s", like(r.usual.HottestCure(), 0), r.usual.Malt.Name, lost),
		"look at the number and its unit; so hot, stay beside it, and have water at hand"
}

// drowned is as soak-too-long has it of grain that is lost.
func (r *record) drowned(c model.Change) (s finding.Severity, said, hint string) {
	if c.To.Low.SI < r.usual.SoakLost*hour+60 || r.aired() {
		return finding.Note, "", ""
	}
	return finding.Fault, fmt.Sprintf("in the same still water that drowns %s, and the grain is dead after %.0f h", r.usual.Grain.Name, r.usual.SoakLost),
		"look at the number and its unit; drain it sooner, and give it a rest in air"
}

// aired tells whether air is blown through the water of the steep, at which no soak is still.
func (r *record) aired() bool {
	for _, st := range model.Every[*model.Steep](r.batch.Process) {
		if st.Aerate != nil {
			return true
		}
		for _, s := range model.EveryStep(st.Steps) {
			if k, ok := s.(*model.Soak); ok && (k.Aerated || k.Airflow != nil || k.Overflow != nil) {
				return true
			}
		}
	}
	return false
}

// hardlyGrown is of growth so short that no lot is modified by it, where it grows nowhere else.
func (r *record) hardlyGrown(c model.Change) (said, hint string) {
	days := r.usual.GrowDays()
	if c.To.High.SI >= leastGrown*days.Low*day || c.To.High.SI < spans[vocabulary.VerbGerminate].least || r.batch.Process.Count(model.GerminateStage) > 1 {
		return "", ""
	}
	return fmt.Sprintf("%.4g to %.4g days are usual for %s; after so short a growth the kernel is raw, and gives little extract", days.Low, days.High, r.usual.Grain.Name),
		"look at the number and its unit; let it grow until the acrospire or the rub says that it is done"
}

func (r *record) limit(word string, usual float64) float64 {
	if l, ok := model.FindLimit(r.batch.Process.Limits, word); ok {
		return l.Bound.Range.High.SI
	}
	return usual
}
