package check

import (
	"slices"

	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
)

// What is accepted in the block of a grain, a site, a vessel, a floor or a kiln is
// accepted in every process that uses it: the finding may stand in that block, name it as
// related, or stand in the process of that grain and site, or in the stage that the
// equipment is used in.

// inHouse tells whether an acceptance stands in the block of something that processes use.
func inHouse(h *model.House, a model.Accept) bool {
	return slices.ContainsFunc(usable(h), func(at source.Place) bool { return holds(a.Scope, at) })
}

// holds tells whether a scope holds the whole of a place.
func holds(scope, at source.Place) bool {
	return scope.File == at.File && scope.Start <= at.Start && at.End <= scope.End
}

// usable lists the names of what processes use.
func usable(h *model.House) (list []source.Place) {
	for _, g := range h.Grains {
		list = append(list, g.Place)
	}
	for _, s := range h.Sites {
		list = append(list, s.Place)
	}
	for _, v := range h.Vessels {
		list = append(list, v.Place)
	}
	for _, f := range h.Floors {
		list = append(list, f.Place)
	}
	for _, k := range h.Kilns {
		list = append(list, k.Place)
	}
	return list
}

// concerns tells whether a finding is about what the block of an acceptance defines.
func concerns(h *model.House, a model.Accept, f finding.Finding) bool {
	if holds(a.Scope, f.Place) {
		return true
	}
	if !inHouse(h, a) {
		return false
	}
	if slices.ContainsFunc(f.Related, func(r finding.Related) bool { return holds(a.Scope, r.Place) }) {
		return true
	}
	p := processAt(h, f.Place)
	return p != nil && slices.ContainsFunc(usedAt(p, f.Place), func(at source.Place) bool { return holds(a.Scope, at) })
}

// usedAt lists the names of what a process uses at a place in it.
func usedAt(p *model.Process, at source.Place) (list []source.Place) {
	if p.Grain != nil {
		list = append(list, p.Grain.Place)
	}
	if p.Site != nil {
		list = append(list, p.Site.Place)
	}
	switch st := stageAt(p, at).(type) {
	case *model.Steep:
		for _, v := range st.Vessels() {
			list = append(list, v.Place)
		}
	case *model.Kilning:
		if st.Kiln != nil {
			list = append(list, st.Kiln.Place)
		}
	case model.Stage:
		if piece := model.PieceOf(st); piece != nil && piece.Floor != nil {
			list = append(list, piece.Floor.Place)
		}
	}
	return list
}

// forOthers tells whether an acceptance may silence something in a process of another
// file: it stands in a house block of a file that others use, and its rule is one of
// processes.
func forOthers(h *model.House, a model.Accept) bool {
	if !inHouse(h, a) || a.Scope.File == h.Files[0] && len(h.Processes) > 0 {
		return false
	}
	return slices.ContainsFunc(rules.All(), func(r rules.Rule) bool { return r.Name == a.Rule.Text })
}
