package merge

import (
	"slices"
	"strings"

	"maltwright/lang/syntax"
)

// Comments never conflict: where both sides changed one, both stay.

// comment merges the comment on a line. Where both sides changed it, one stays on
// the line and extra is the other.
func comment(b, o, t *syntax.Comment) (stays, extra *syntax.Comment) {
	switch {
	case textOf(o) == textOf(b):
		return t, nil
	case textOf(t) == textOf(b), textOf(o) == textOf(t), t == nil:
		return o, nil
	case o == nil:
		return t, nil
	case t.Text < o.Text:
		return t, o
	}
	return o, t
}

func textOf(c *syntax.Comment) string {
	if c == nil {
		return ""
	}
	return c.Text
}

// comments merges the comments above a statement, or at the end of a block. Those
// that a side took out go, and those that a side brought stay.
func comments(b, o, t []syntax.Comment) []syntax.Comment {
	switch {
	case sameComments(o, b):
		return t
	case sameComments(t, b) || sameComments(o, t):
		return o
	}
	first, second := o, t
	if joined(t) < joined(o) { // which side is whose makes no difference
		first, second = t, o
	}
	was, inSecond := counted(b), counted(second)
	var out []syntax.Comment
	for _, c := range first {
		old := take(was, c.Text)
		if there := take(inSecond, c.Text); !old || there {
			out = append(out, c)
		}
	}
	was, inFirst := counted(b), counted(first)
	for _, c := range second {
		old := take(was, c.Text)
		if there := take(inFirst, c.Text); !old && !there {
			out = append(out, c)
		}
	}
	return out
}

func sameComments(a, b []syntax.Comment) bool {
	return slices.EqualFunc(a, b, func(x, y syntax.Comment) bool { return x.Text == y.Text && x.Spaced == y.Spaced })
}

func joined(list []syntax.Comment) string {
	var b strings.Builder
	for _, c := range list {
		b.WriteString(c.Text + "\n")
	}
	return b.String()
}

func counted(list []syntax.Comment) map[string]int {
	m := map[string]int{}
	for _, c := range list {
		m[c.Text]++
	}
	return m
}

// take takes one of the text, and tells whether there was one.
func take(m map[string]int, text string) bool {
	m[text]--
	return m[text] >= 0
}
