package check

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
)

// A consequence is what one slip brings about elsewhere. Where the slip is told of, at
// least as severely, its consequence is not told of too: who mends the one mends the
// other, and whoever has accepted the one is told of the other after all.
type consequence struct {
	rule, of string // of: the rules that tell the cause
	near     nearness
	ruins    bool // it is no mere consequence where it is a fault: the batch is lost
}

// nearness is where the cause must stand for a consequence to be one. A fact of the house
// is near to all that uses it.
type nearness int

const (
	sameLine nearness = iota
	sameStage
	before // in front of it
	sameProcess
)

// misreckoned are the rules that tell of a figure with which all else is reckoned.
const misreckoned = " unusual-figure out-of-proportion"

var consequences = []consequence{
	{rule: "room-too-cold-for-bed", of: "bed-too-warm", near: sameLine},
	{rule: "room-too-warm-for-bed", of: "bed-too-cold", near: sameLine},
	{rule: "piece-overheats", of: "room-too-warm-for-bed bed-too-cold piece-too-deep", near: sameStage},
	{rule: "piece-too-deep", of: "box-cannot", near: sameStage}, // it lies there for want of its fan
	{rule: "piece-overheats", of: "box-cannot air-cannot-hold-bed", near: sameStage, ruins: true},
	{rule: "air-cannot-hold-bed", of: "box-cannot", near: sameStage},
	{rule: "bed-uneven", of: "box-cannot", near: sameStage},
	{rule: "box-line-idle", of: "box-cannot air-cannot-hold-bed", near: sameStage},
	{rule: "room-too-cold-for-bed", of: "bed-dries-out", near: sameStage},
	{rule: "rest-too-cold-or-warm", of: "room-too-cold-for-bed room-too-warm-for-bed", near: sameProcess}, // one room
	{rule: "guard-came-first", of: "room-too-cold-for-bed piece-too-deep piece-overheats", near: sameStage},
	{rule: "forecast-unable", of: "room-too-cold-for-bed", near: sameStage},
	{rule: "forecast-unable", of: "grain-not-covered", near: sameLine}, // so little water is not forecast
	{rule: "soak-too-long", of: "bound-wrong-way", near: sameLine},
	{rule: "cure-too-hot-for-claim", of: "equipment-cannot", near: sameLine},
	{rule: "ramp-too-steep", of: "equipment-cannot", near: sameLine},
	{rule: "cure-without-gate", of: "equipment-cannot", near: sameLine},
	{rule: "equipment-cannot", of: "kiln-too-deep", near: sameStage}, // less air comes than is asked for
	{rule: "target-not-reached", of: "rest-before-soak no-air-rest step-time-odd", near: sameStage},
	{rule: "target-not-reached", of: "unusual-figure", near: before},
	{rule: "target-overshot", of: "steep-water-warm", near: sameStage},
	{rule: "target-overshot", of: "unusual-figure", near: sameProcess},
	{rule: "bed-dries-out", of: "too-long-to-modify step-time-odd bed-too-warm", near: sameStage},
	{rule: "bed-dries-out", of: misreckoned, near: before},
	{rule: "test-holds-already", of: "bed-dries-out target-not-reached rest-before-soak no-air-rest step-time-odd too-long-to-modify cure-before-drying" + misreckoned, near: before},
	{rule: "gate-waits-long", of: "equipment-cannot guard-came-first", near: sameStage},
	{rule: "growth-end-odd", of: "too-short-to-modify guard-came-first bound-wrong-way growth-by-dryness", near: sameStage},
	{rule: "forecast-unable", of: "wither-too-warm", near: sameStage},
	{rule: "cure-cool-or-short", of: "cure-before-drying", near: sameLine},
	{rule: "never-stirred", of: "equipment-cannot", near: sameStage},
}

// withoutConsequences drops what comes of something else that is found.
func withoutConsequences(h *model.House, found []finding.Finding) []finding.Finding {
	kept := make([]finding.Finding, 0, len(found))
	for _, f := range found {
		if !slices.ContainsFunc(consequences, func(c consequence) bool { return c.rule == f.Rule && c.told(h, f, found) }) {
			kept = append(kept, f)
		}
	}
	return kept
}

// told tells whether a cause of a finding is found.
func (c consequence) told(h *model.House, f finding.Finding, found []finding.Finding) bool {
	if c.ruins && f.Severity >= finding.Fault {
		return false
	}
	return f.Severity >= finding.Caution && slices.ContainsFunc(found, func(cause finding.Finding) bool {
		return cause.Severity >= f.Severity && slices.Contains(strings.Fields(c.of), cause.Rule) && c.near.holds(h, cause.Place, f.Place)
	})
}

func (n nearness) holds(h *model.House, cause, of source.Place) bool {
	p := processAt(h, of)
	switch other := processAt(h, cause); {
	case p == nil || !cause.Known():
		return false
	case n == sameLine:
		return cause.File == of.File && lineStart(cause) == lineStart(of)
	case other == nil:
		return true
	case other != p:
		return false
	case n == sameStage:
		return stageAt(p, cause) == stageAt(p, of)
	case n == before:
		return cause.Start < of.Start
	}
	return true
}

// lineStart is where the line of a place begins.
func lineStart(p source.Place) int {
	return p.File.Line(p.File.Position(p.Start, source.Bytes).Line).Start
}

// processAt gives the process that a place lies in, or nil.
func processAt(h *model.House, at source.Place) *model.Process {
	for _, p := range h.Processes {
		if p.Scope.File == at.File && p.Scope.Start <= at.Start && at.Start < p.Scope.End {
			return p
		}
	}
	return nil
}

// stageAt gives the stage of a process that a place lies in, or nil.
func stageAt(p *model.Process, at source.Place) model.Stage {
	var in model.Stage
	for _, st := range p.Stages {
		if st.Place().Start <= at.Start {
			in = st
		}
	}
	return in
}
