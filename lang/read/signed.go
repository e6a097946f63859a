package read

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/syntax"
)

// signed joins what is told of signs to what was found in the text with the signs put right.
// Where a hint of that writes the whole statement anew, it is the one that is told.
func signed(m *syntax.Meant, found []finding.Finding) []finding.Finding {
	list := slices.Clone(m.Found)
	for _, f := range found {
		f = m.Finding(f)
		list = slices.DeleteFunc(list, func(sign finding.Finding) bool { return rewrites(f, sign) })
		list = append(list, f)
	}
	return finding.Sort(list)
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
