package layout

import (
	"bytes"
	"slices"
	"unicode/utf8"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Edits are those by which the text of a file becomes another, the canonical one: few and small, so that a cursor
// in a line that says the same stays in it. They stand in order and do not overlap.
//
// Lines that differ in their blanks alone are laid side by side, and each run of blanks is changed by itself. What
// is left between them is treated the same where it differs in its blanks alone, and is else replaced.
func Edits(f *source.File, out []byte) []finding.Edit {
	e := &edits{file: f, old: linesOf(f.Bytes()), new: linesOf(out)}
	e.between(0, len(e.old), 0, len(e.new))
	return e.list
}

// textLine is one line of a text with its end.
type textLine struct {
	start int
	text  []byte
	bare  string // without any blanks; "" for an empty line
}

func linesOf(text []byte) []textLine {
	var list []textLine
	for start := 0; start < len(text); {
		end := start + 1
		for end < len(text) && text[end-1] != '\n' && !(text[end-1] == '\r' && text[end] != '\n') {
			end++
		}
		list = append(list, textLine{start, text[start:end], bare(text[start:end])})
		start = end
	}
	return list
}

func isGap(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

func bare(line []byte) string {
	return string(slices.DeleteFunc(slices.Clone(line), isGap))
}

type edits struct {
	file     *source.File
	old, new []textLine
	list     []finding.Edit
}

// between makes edits of the lines i to j of the old text and k to l of the new one: those that stand
// once in each and say the same hold the others together.
func (e *edits) between(i, j, k, l int) {
	for i < j && k < l && e.old[i].bare == e.new[k].bare {
		e.line(i, k)
		i, k = i+1, k+1
	}
	same := 0 // at the end; edited behind what is in front of them
	for i < j-same && k < l-same && e.old[j-1-same].bare == e.new[l-1-same].bare {
		same++
	}
	j, l = j-same, l-same
	if anchors := e.anchors(i, j, k, l); len(anchors) > 0 {
		for _, a := range anchors {
			e.between(i, a[0], k, a[1])
			e.line(a[0], a[1])
			i, k = a[0]+1, a[1]+1
		}
		e.between(i, j, k, l)
	} else {
		e.replace(i, j, k, l)
	}
	for n := range same {
		e.line(j+n, l+n)
	}
}

// anchors are lines that say something that stands once on both sides, in an order that both have.
func (e *edits) anchors(i, j, k, l int) [][2]int {
	where := map[string][2]int{} // place in the new text, and how often it stands
	for n := k; n < l; n++ {
		w := where[e.new[n].bare]
		where[e.new[n].bare] = [2]int{n, w[1] + 1}
	}
	often := map[string]int{}
	for n := i; n < j; n++ {
		often[e.old[n].bare]++
	}
	var pairs [][2]int
	for n := i; n < j; n++ {
		say := e.old[n].bare
		if w := where[say]; say != "" && w[1] == 1 && often[say] == 1 {
			pairs = append(pairs, [2]int{n, w[0]})
		}
	}
	return rising(pairs)
}

// rising is the longest run of pairs whose second rises with the first.
func rising(pairs [][2]int) [][2]int {
	var tails []int // by length of run, the pair at which the lowest such run ends
	before := make([]int, len(pairs))
	for n, p := range pairs {
		at, _ := slices.BinarySearchFunc(tails, p[1], func(t, want int) int { return pairs[t][1] - want })
		before[n] = -1
		if at > 0 {
			before[n] = tails[at-1]
		}
		if at == len(tails) {
			tails = append(tails, n)
		} else {
			tails[at] = n
		}
	}
	var run [][2]int
	if len(tails) > 0 {
		for n := tails[len(tails)-1]; n >= 0; n = before[n] {
			run = append(run, pairs[n])
		}
	}
	slices.Reverse(run)
	return run
}

// line makes a line into one that differs from it in its blanks alone.
func (e *edits) line(i, k int) { e.gaps(e.old[i].start, e.old[i].text, e.new[k].text) }

// gaps makes a text that begins at a place into one that differs from it in its blanks alone.
func (e *edits) gaps(start int, old, new []byte) {
	for a, b := 0, 0; a < len(old) || b < len(new); {
		endA, endB := gapEnd(old, a), gapEnd(new, b)
		if !bytes.Equal(old[a:endA], new[b:endB]) {
			e.edit(start+a, start+endA, new[b:endB])
		}
		for a, b = endA, endB; a < len(old) && !isGap(old[a]) && b < len(new) && old[a] == new[b]; {
			a, b = a+1, b+1
		}
	}
}

// gapEnd is the end of the blanks that begin at a place of a line.
func gapEnd(text []byte, at int) int {
	for at < len(text) && isGap(text[at]) {
		at++
	}
	return at
}

// replace puts lines in the place of others: as many one by one, unless all of them differ in their blanks alone, and
// others all together.
func (e *edits) replace(i, j, k, l int) {
	old, new := together(e.old[i:j]), together(e.new[k:l])
	if j-i == l-k && bare(old) != bare(new) {
		for ; i < j; i, k = i+1, k+1 {
			e.part(e.old[i].start, e.old[i].text, e.new[k].text)
		}
		return
	}
	start := e.file.Size()
	if i < len(e.old) {
		start = e.old[i].start
	}
	e.part(start, old, new)
}

func together(lines []textLine) (text []byte) {
	for _, l := range lines {
		text = append(text, l.text...)
	}
	return text
}

// part makes a text that begins at a place into another: by its blanks where they alone differ, as of a block that
// is put on one line, and else without what both begin and end with.
func (e *edits) part(start int, old, new []byte) {
	if bare(old) == bare(new) {
		e.gaps(start, old, new)
		return
	}
	head, tail, most := 0, 0, min(len(old), len(new))
	for head < most && old[head] == new[head] {
		head++
	}
	for head > 0 && (head < len(old) && !utf8.RuneStart(old[head]) || head < len(new) && !utf8.RuneStart(new[head]) || old[head-1] == '\r') {
		head-- // into no character, and between the two of a line end
	}
	for tail < most-head && old[len(old)-1-tail] == new[len(new)-1-tail] {
		tail++
	}
	for tail > 0 && (!utf8.RuneStart(old[len(old)-tail]) || old[len(old)-tail] == '\n') {
		tail--
	}
	e.edit(start+head, start+len(old)-tail, new[head:len(new)-tail])
}

func (e *edits) edit(start, end int, new []byte) {
	if start == end && len(new) == 0 {
		return
	}
	e.list = append(e.list, finding.Edit{Place: source.Place{File: e.file, Span: source.Span{Start: start, End: end}}, New: string(new)})
}
