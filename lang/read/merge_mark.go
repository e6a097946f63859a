package read

import (
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// UnsettledMark begins the comment that a merge leaves where two versions of a file
// say different things: "# both: ours 7 h; theirs 8 h; before 6 h".
const UnsettledMark = "# both: ours "

var mergeUnsettled = rule("merge-unsettled", fault,
	"a merge left two values here, and nobody has chosen",
	"the statement shows one of the two only because it needs a value; a person must choose",
	"write the right value into the statement, then delete this comment",
	shortest+shortKiln+"  # both: ours within 12 h; theirs within 20 h; before within 24 h\n  deculm within 12 h\n}",
	shortest+shortKiln+"  deculm within 20 h\n}")

// unsettled finds the comments that a merge left.
func unsettled(t *syntax.Tree) []finding.Finding {
	var found []finding.Finding
	t.Top.Comments(func(c *syntax.Comment) {
		if text := "# " + strings.TrimSpace(strings.TrimLeft(c.Text, "#")); strings.HasPrefix(text, UnsettledMark) && strings.Contains(text, "; theirs ") {
			found = append(found, mergeUnsettled.At(source.Place{File: t.File, Span: c.Span}, "two versions were merged here and say different things"))
		}
	})
	return found
}
