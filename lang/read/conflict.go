package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Conflicts gives the places where a merge that knows only lines has left both of two
// versions between its marks, the marks included. A mark is seven of one sign at the
// beginning of a line; what stands between < and > is one conflict, and a mark of which
// the other is lost is one by itself.
func Conflicts(f *source.File) []source.Span {
	var list []source.Span
	open := -1
	for n := 1; n <= f.Lines(); n++ {
		switch line := f.Line(n); mark(f.Text(line)) {
		case '<':
			if open < 0 {
				list = append(list, line)
			}
			open = len(list) - 1
		case '>':
			if open < 0 {
				list = append(list, line)
				continue
			}
			list[open], open = list[open].Join(line), -1
		}
	}
	return list
}

// mark tells which mark a line is: '<', '>', or 0 for none.
func mark(line string) byte {
	for _, sign := range []string{"<", ">"} {
		if rest, ok := strings.CutPrefix(line, strings.Repeat(sign, 7)); ok && (rest == "" || rest[0] == ' ') {
			return sign[0]
		}
	}
	return 0
}

// conflicted notes each conflict of a file once, in place of all that is said of what
// stands in it: both versions are there, and one of them is to go.
func conflicted(f *source.File, found []finding.Finding) []finding.Finding {
	for _, s := range Conflicts(f) {
		found = slices.DeleteFunc(found, func(o finding.Finding) bool {
			return o.Place.File == f && o.Place.Start >= s.Start && o.Place.End <= s.End
		})
		first := f.Line(f.Position(s.Start, source.Bytes).Line)
		n := mergeUnsettled.At(source.Place{File: f, Span: first}, "a merge left two versions here, between its markers")
		n.Hint = "keep the lines that are meant, and delete the others and the marks"
		found = append(found, n)
	}
	return found
}
