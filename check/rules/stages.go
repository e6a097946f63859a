package rules

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// What the rules ask of stages of which a process may have several.

// steps lists the steps of all stages of a kind: the malt goes from one to the next.
func (c *Case) steps(kind model.StageKind) (list []model.Step) {
	for _, st := range c.Process.Stages {
		if st.Kind() == kind {
			list = append(list, model.StepsOf(st)...)
		}
	}
	return list
}

// eachKilning asks a rule of each stage on a kiln; its kiln is nil where none is known.
func eachKilning(judge func(finding.Rule, *Case, *model.Kilning, *model.Kiln)) func(finding.Rule, *Case) {
	return func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Kilning](c.Process) {
			judge(r, c, st, st.Kiln)
		}
	}
}

// eachKiln asks a rule of each kiln once, with the first stage on it.
func eachKiln(judge func(finding.Rule, *Case, *model.Kilning, *model.Kiln)) func(finding.Rule, *Case) {
	return func(r finding.Rule, c *Case) {
		seen := map[*model.Kiln]bool{}
		for _, st := range model.Every[*model.Kilning](c.Process) {
			if st.Kiln != nil && !seen[st.Kiln] {
				seen[st.Kiln] = true
				judge(r, c, st, st.Kiln)
			}
		}
	}
}

// stepsIn lists the steps on a kiln, in all its stages.
func (c *Case) stepsIn(k *model.Kiln) (list []model.Step) {
	for _, st := range model.Every[*model.Kilning](c.Process) {
		if st.Kiln == k {
			list = append(list, st.Steps...)
		}
	}
	return list
}

// kilnAt is the kiln of the step that stands at a place, nil for none.
func (c *Case) kilnAt(place source.Place) *model.Kiln {
	for _, st := range model.Every[*model.Kilning](c.Process) {
		if slices.ContainsFunc(st.Steps, func(s model.Step) bool { return s.Place() == place }) {
			return st.Kiln
		}
	}
	return nil
}

// onKiln is how the malt fared in a stage on a kiln, nil where it never came there.
func (c *Case) onKiln(st model.Stage) *forecast.Kilned {
	if c.Forecast == nil {
		return nil
	}
	i := slices.IndexFunc(c.Forecast.Kilns, func(k forecast.Kilned) bool { return model.Stage(k.Of) == st })
	if i < 0 {
		return nil
	}
	return &c.Forecast.Kilns[i]
}

// onFloor is how the piece fared in a stage, nil where it never came there.
func (c *Case) onFloor(st model.Stage) *forecast.Piece {
	if c.Forecast == nil {
		return nil
	}
	i := slices.IndexFunc(c.Forecast.Pieces, func(p forecast.Piece) bool { return p.Of == st })
	if i < 0 {
		return nil
	}
	return &c.Forecast.Pieces[i]
}

// lastGrowth is the stage with which the growing ends, nil for none.
func (c *Case) lastGrowth() *model.Germination { return model.Last[*model.Germination](c.Process) }

// growthLooksAt tells whether a stage of the growing waits for one of the measures.
func (c *Case) growthLooksAt(measures ...string) bool {
	return slices.ContainsFunc(c.Process.Stages, func(st model.Stage) bool {
		return st.Kind() == model.GerminateStage && looksAt(st, measures...)
	})
}

// witherLooksAt tells the same of the withering.
func (c *Case) witherLooksAt(measures ...string) bool {
	return slices.ContainsFunc(c.Process.Stages, func(st model.Stage) bool {
		return st.Kind() == model.WitherStage && looksAt(st, measures...)
	})
}
