package read

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// signed joins what is told of signs to what was found in the text with the signs put right.
// Where a hint of that writes the whole statement anew, it is the one that is told.
func signed(m *syntax.Meant, house, again *model.House, found []finding.Finding) []finding.Finding {
	for _, f := range again.Files[1:] { // what was read once more is the same, but that of a use which did not read before
		if !slices.ContainsFunc(house.Files, func(g *source.File) bool { return g.Name() == f.Name() }) {
			house.Files = append(house.Files, f)
		}
	}
	list := slices.Clone(m.Found)
	for _, f := range found {
		f = inFiles(house.Files, m.Finding(f))
		list = slices.DeleteFunc(list, func(sign finding.Finding) bool { return rewrites(f, sign) })
		list = append(list, f)
	}
	return finding.Sort(list)
}

// inFiles gives a finding with its places in the files of that list, by their names.
func inFiles(files []*source.File, f finding.Finding) finding.Finding {
	place := func(p *source.Place) {
		if i := slices.IndexFunc(files, func(g *source.File) bool { return p.File != nil && g.Name() == p.File.Name() }); i >= 0 {
			p.File = files[i]
		}
	}
	place(&f.Place)
	for i := range f.Related {
		place(&f.Related[i].Place)
	}
	for i := range f.Fixes {
		place(&f.Fixes[i].Place)
	}
	for _, o := range f.Offers {
		for i := range o.Edits {
			place(&o.Edits[i].Place)
		}
	}
	return f
}

// rewrites tells whether each edit of one finding lies in what another one writes anew.
func rewrites(f, sign finding.Finding) bool {
	edits := editsOf(f)
	return len(edits) > 0 && !slices.ContainsFunc(editsOf(sign), func(e finding.Edit) bool {
		return !slices.ContainsFunc(edits, func(o finding.Edit) bool { return e.Place.Within(o.Place) })
	})
}

func editsOf(f finding.Finding) []finding.Edit {
	edits := slices.Clone(f.Fixes)
	for _, o := range f.Offers {
		edits = append(edits, o.Edits...)
	}
	return edits
}
