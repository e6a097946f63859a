package desk

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
)

// hunk is a change of whole lines: those from one up to another are replaced.
type hunk struct {
	from, to int
	lines    []string
}

func (h hunk) same(o hunk) bool {
	return h.from == o.from && h.to == o.to && slices.Equal(h.lines, o.lines)
}

// apart tells whether two hunks touch different lines: neither changes a line that the other does, nor
// puts something between two such.
func (h hunk) apart(o hunk) bool { return h.to <= o.from || o.to <= h.from }

var hunkHead = regexp.MustCompile(`^@@ -(\d+)(?:,(\d+))? \+`)

// hunksOf are the changes that make one text of another. Both end their lines with a line feed, also the last.
func hunksOf(from, to string) []hunk {
	var list []hunk
	at, open := 0, false
	for i, line := range strings.SplitAfter(string(diff.Diff("a", []byte(from), "b", []byte(to))), "\n") {
		if m := hunkHead.FindStringSubmatch(line); m != nil {
			at, _ = strconv.Atoi(m[1])
			if m[2] != "0" {
				at-- // lines are counted from 1, but for an empty range, which stands behind its line
			}
			open = false
			continue
		}
		if i < 3 || line == "" { // the heads of the files
			continue
		}
		switch line[0] {
		case ' ':
			at, open = at+1, false
			continue
		case '-', '+':
			if !open {
				list = append(list, hunk{from: at, to: at})
				open = true
			}
		}
		h := &list[len(list)-1]
		if line[0] == '-' {
			at++
			h.to = at
		} else {
			h.lines = append(h.lines, line[1:])
		}
	}
	return list
}

// joined makes the changes of two people in a text, and tells whether they go together: each line was
// changed by one of them, or by both in the same way. Where both put lines into one place those of the
// first stand in front, or with late behind.
func joined(base, ours, theirs string, late bool) (string, bool) {
	lines := strings.SplitAfter(base, "\n")
	a, b := hunksOf(base, ours), hunksOf(base, theirs)
	var out strings.Builder
	at := 0
	put := func(h hunk) {
		out.WriteString(strings.Join(lines[at:h.from], ""))
		out.WriteString(strings.Join(h.lines, ""))
		at = h.to
	}
	for len(a) > 0 || len(b) > 0 {
		switch {
		case len(b) == 0:
			put(a[0])
			a = a[1:]
		case len(a) == 0:
			put(b[0])
			b = b[1:]
		case a[0].same(b[0]):
			put(a[0])
			a, b = a[1:], b[1:]
		case a[0].from == a[0].to && b[0].from == b[0].to && a[0].from == b[0].from:
			first, second := a[0], b[0]
			if late {
				first, second = second, first
			}
			put(first)
			put(second)
			a, b = a[1:], b[1:]
		case !a[0].apart(b[0]):
			return "", false
		case a[0].from < b[0].from || a[0].from == b[0].from && a[0].to < b[0].to:
			put(a[0])
			a = a[1:]
		default:
			put(b[0])
			b = b[1:]
		}
	}
	out.WriteString(strings.Join(lines[at:], ""))
	return out.String(), true
}
