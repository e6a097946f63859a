package desk

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/merge"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Overtaken is a buffer whose file has changed on disk since: to save it would write over that.
type Overtaken struct {
	Lines   []string // that have come to the file and are not in the buffer, without blanks around them
	Gone    bool     // lines have gone from it too, or are others
	Merged  string   // the buffer with what came to the file put in; "" where that cannot be told
	Certain bool     // both read, and what came means the same in it
}

// Overtaking compares a buffer with its file: base is what both were once. It gives nil where nothing of
// the file is missing in the buffer. Line ends, a byte-order mark and what stands behind the last line
// make no difference; in what is merged lines end with a line feed.
//
// What is merged is put together by lines, and held against the merge by meaning; where the lines do not
// go together, as when both have written behind the same reading, that is taken itself, if it settles
// everything and the buffer is laid out as it writes.
func Overtaking(base, ours, theirs []byte) *Overtaken {
	if string(base) == string(theirs) || string(ours) == string(theirs) {
		return nil
	}
	b, o, t := evened(base), evened(ours), evened(theirs)
	if b == t || o == t {
		return nil
	}
	meant, settled := byMeaning(b, o, t)
	out := &Overtaken{}
	for _, late := range []bool{false, true} {
		text, ok := joined(b, o, t, late)
		if !ok {
			break
		}
		if text == o {
			return nil
		}
		if settled && laidOut(text) == meant {
			out.Merged, out.Certain = text, true
			break
		}
		if out.Merged == "" {
			out.Merged = text
		}
	}
	if settled && !out.Certain {
		if own := laidOut(o); own == meant {
			return nil // it is all in it, put in another way
		} else if out.Certain = own == o; out.Certain || out.Merged == "" {
			out.Merged = meant
		}
	}
	out.Lines, out.Gone = missing(b, o, t)
	return out
}

// begun is the base of a buffer that is opened. A file that has all of the buffer and more has got more
// since the editor read it, or since it kept a buffer that was not saved.
func begun(buffer, disk []byte) *Base {
	b, d := evened(buffer), evened(disk)
	if b == d || slices.ContainsFunc(hunksOf(b, d), func(h hunk) bool { return h.to > h.from }) {
		return &Base{Text: disk}
	}
	return &Base{Text: buffer, Guess: true}
}

// evened is a text with its lines ended by line feeds, also the last.
func evened(text []byte) string {
	s := strings.TrimPrefix(string(text), mark)
	s = strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
	if s = strings.TrimRight(s, "\n"); s == "" {
		return ""
	}
	return s + "\n"
}

// byMeaning merges by meaning, and tells whether all read and everything could be settled.
func byMeaning(base, ours, theirs string) (string, bool) {
	var trees [3]*syntax.Tree
	for i, text := range []string{base, ours, theirs} {
		tree, found := syntax.Parse(source.New("", []byte(text)))
		if worst, any := finding.Worst(found); any && worst >= finding.Fault {
			return "", false
		}
		trees[i] = tree
	}
	r, err := merge.Trees(trees[0], trees[1], trees[2])
	if err != nil || r.Unsettled > 0 {
		return "", false
	}
	return string(r.Text), true
}

// laidOut is a text in the one layout; "" where it does not read.
func laidOut(text string) string {
	tree, found := syntax.Parse(source.New("", []byte(text)))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return ""
	}
	return string(layout.Write(tree))
}

// missing are the lines that came to theirs and that ours has not got, and whether others went.
func missing(base, ours, theirs string) (lines []string, gone bool) {
	own, has := hunksOf(base, ours), map[string]int{}
	for line := range strings.Lines(ours) {
		has[strings.TrimSpace(line)]++
	}
	for line := range strings.Lines(base) {
		has[strings.TrimSpace(line)]--
	}
	for _, h := range hunksOf(base, theirs) {
		if slices.ContainsFunc(own, h.same) {
			continue
		}
		gone = gone || h.to > h.from
		for _, line := range h.lines {
			if line = strings.TrimSpace(line); line == "" {
				continue
			}
			if has[line]--; has[line] < 0 {
				lines = append(lines, line)
			}
		}
	}
	return lines, gone
}

// Edits are the changes that make one text of another, as few lines as can be: spans of the first, and
// what stands there then. Its line ends are kept.
func Edits(f *source.File, to string) []Edit {
	end := "\n"
	if strings.Contains(string(f.Bytes()), "\r\n") {
		end = "\r\n"
	}
	var list []Edit
	for _, h := range hunksOf(evened(f.Bytes()), to) {
		start, stop := lineStart(f, h.from), lineStart(f, h.to)
		text := strings.ReplaceAll(strings.Join(h.lines, ""), "\n", end)
		if start == f.Size() && start > f.Start() && h.from >= f.Lines() {
			text = end + strings.TrimSuffix(text, end) // behind a last line without its end
		}
		list = append(list, Edit{source.Span{Start: start, End: stop}, text})
	}
	return list
}

// Edit replaces a span of a file.
type Edit struct {
	source.Span
	New string
}

// lineStart is where a line begins, counted from 0; one that is not there begins at the end.
func lineStart(f *source.File, n int) int {
	if n >= f.Lines() {
		return f.Size()
	}
	return f.Offset(source.Position{Line: n + 1, Column: 1}, source.Characters)
}
