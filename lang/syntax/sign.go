package syntax

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/finding"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
)

// How it works
//
// People write signs that the language has no use for, and mean something by them: 14..17 °C,
// moisture: 12 %, // for a comment, brackets for braces. A text with findings in it is read
// once more for such signs, and each is written as the language has it. Of what comes of that
// the lines count that then read; the others keep their findings. So what is told of a sign is
// what to write for it, and what was written so all over a file is told once.

// A Meant is a text with the signs that people write put into words of the language.
type Meant struct {
	File  *source.File      // the text so written
	Found []finding.Finding // what is told of the signs, in the text as it was
	was   *source.File
	edits []change // in order
}

// change is what stands for a sign.
type change struct {
	source.Span
	text string
	sign *sign
	says string // in place of what is told of the sign in general
	do   string
}

// Signs gives the text of a file with its signs put right; ok is false where none is.
func Signs(f *source.File) (m *Meant, ok bool) {
	if f.Size() > largestSigned || longestLine(f.Bytes()) > longestSigned || len(f.BadBytes()) > 0 || mergeMark.Match(f.Bytes()) {
		return nil, false
	}
	all := changesIn(f)
	if len(all) > mostSigns {
		return nil, false
	}
	for range 3 {
		if len(all) == 0 {
			return nil, false
		}
		m = &Meant{was: f, edits: all, File: source.New(f.Name(), written(f.Bytes(), all))}
		_, found := statements(m.File)
		kept := m.without(found)
		if len(kept) == len(all) {
			m.Found = m.tell()
			return m, true
		}
		all = kept
	}
	return nil, false
}

// largestSigned is the size of a file in which signs are looked for, and longestSigned that of its
// lines, in bytes. A larger one was not typed; and a sign may be looked for to the end of its line.
const (
	largestSigned = 128 << 10
	longestSigned = 4 << 10
)

// longestLine is the length of the longest line of a text.
func longestLine(text []byte) (longest int) {
	for len(text) > longest {
		end := bytes.IndexAny(text, "\r\n")
		if end < 0 {
			end = len(text)
		}
		longest, text = max(longest, end), text[min(end+1, len(text)):]
	}
	return longest
}

// mostSigns is how many of them are told, and mostNames how many ends of names are looked for: past
// them it is no process file.
const (
	mostSigns = 3000
	mostNames = 100
)

// mergeMark begins a line between two versions of a file, of which neither is put right.
var mergeMark = regexp.MustCompile(`(?m)^(<{7}|>{7}|={7}|\|{7})( |\r?$)`)

// changesIn lists what stands for the signs of a file, in order; of two that touch the first.
func changesIn(f *source.File) (list []change) {
	r := newSignReader(f)
	for _, pass := range []func(){r.margins, r.letters, r.numberedNames, func() { r.structure(); r.read() }} {
		if pass(); len(r.changes) > 0 {
			break
		}
	}
	sorted.Stable(r.changes, func(a, b change) int { return a.Start - b.Start })
	end := -1
	for _, c := range r.changes {
		if c.Start < end || c.Start == end && c.Empty() {
			continue
		}
		list, end = append(list, c), c.End
	}
	return list
}

func written(text []byte, edits []change) []byte {
	out, at := make([]byte, 0, len(text)+8*len(edits)), 0
	for _, e := range edits {
		out = append(append(out, text[at:e.Start]...), e.text...)
		at = e.End
	}
	return append(out, text[at:]...)
}

// Back gives where a span of the new text stands in the one that it was made of.
func (m *Meant) Back(s source.Span) source.Span {
	out := source.Span{Start: m.back(s.Start, false), End: m.back(s.End, true)}
	out.End = max(out.Start, out.End)
	return out
}

func (m *Meant) back(at int, end bool) int {
	grown := 0
	for _, e := range m.edits {
		start := e.Start + grown
		switch {
		case at == start && end && e.text == "" && !e.Empty(): // what was taken out behind it belongs to it
			grown -= e.End - e.Start
			continue
		case at < start || at == start && end:
			return at - grown
		case at < start+len(e.text) || at == start+len(e.text) && end:
			if end {
				return e.End
			}
			return e.Start
		}
		grown += len(e.text) - (e.End - e.Start)
	}
	return at - grown
}

// Place gives where a place of the new text stands in the one that it was made of.
func (m *Meant) Place(p source.Place) source.Place {
	if p.File != m.File {
		return p
	}
	return source.Place{File: m.was, Span: m.Back(p.Span)}
}

// Finding gives what was found in the new text as of the one that it was made of. An edit that
// touches a sign goes without.
func (m *Meant) Finding(f finding.Finding) finding.Finding {
	if f.Place.File == m.File {
		f.Place = m.place([]change{{Span: m.Back(f.Place.Span)}})
	}
	f.Related = slices.Clone(f.Related)
	for i := range f.Related {
		f.Related[i].Place = m.Place(f.Related[i].Place)
	}
	f.Fixes = m.movedBack(f.Fixes)
	var offers []finding.Offer
	for _, o := range f.Offers {
		if o.Edits = m.movedBack(o.Edits); len(o.Edits) > 0 {
			offers = append(offers, o)
		}
	}
	f.Offers = offers
	return f
}

func (m *Meant) movedBack(edits []finding.Edit) []finding.Edit {
	out := slices.Clone(edits)
	for i, e := range out {
		out[i].Place = m.Place(e.Place)
	}
	return out
}

// without leaves out the changes of lines in which something still does not read.
func (m *Meant) without(found []finding.Finding) []change {
	if len(found) == 0 {
		return m.edits
	}
	bad, amiss := map[int]bool{}, false
	for _, f := range found {
		was := m.Back(f.Place.Span)
		bad[m.line(was.Start)] = true
		amiss = amiss || was.Empty() || f.Rule == unclosedBlock.Name || f.Rule == strayBrace.Name
	}
	return slices.DeleteFunc(slices.Clone(m.edits), func(c change) bool {
		return c.sign.whole && amiss || !c.sign.whole && bad[m.line(c.Start)]
	})
}

func (m *Meant) line(at int) int { return m.was.Position(at, source.Bytes).Line }

// meant tells of signs in the place of findings about the lines that they stand in.
func meant(f *source.File, found []finding.Finding) []finding.Finding {
	if slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Rule == tooManyStatements.Name || f.Rule == NotText }) {
		return found
	}
	m, ok := Signs(f)
	if !ok {
		return found
	}
	_, left := statements(m.File)
	if len(left) > len(found) {
		return found
	}
	list := m.Found
	for _, l := range left {
		list = append(list, m.Finding(l))
	}
	sorted.Stable(list, func(a, b finding.Finding) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
	return list
}

// tokensOf cuts a text into tokens; the last is the end of the file.
func tokensOf(text string) (list []lexer.Token) {
	scan := &scanner{text: text}
	for {
		t, _ := scan.Next()
		if list = append(list, t); t.EOF() {
			return list
		}
	}
}

// tell makes the findings: one for all lines with the same signs.
func (m *Meant) tell() (list []finding.Finding) {
	at := map[string]int{}
	more := map[string]int{}
	for _, group := range m.groups() {
		key := keyOf(group)
		k, told := at[key]
		if !told {
			at[key] = len(list)
			list = append(list, m.first(group))
			continue
		}
		more[key]++
		m.again(&list[k], group, more[key])
	}
	return list
}

// groups gives the changes of each line together, and those that make sense together alone.
func (m *Meant) groups() (list [][]change) {
	of, above := map[any]int{}, map[int]int{}
	for _, c := range m.edits {
		own := m.line(c.Start)
		if line, goesOn := above[own]; goesOn {
			own = line
		}
		if c.sign == signLine { // the line below goes on with this one
			above[m.line(c.End)] = own
		}
		key := any(own)
		if c.sign.whole {
			key = c.sign
		}
		k, there := of[key]
		if !there {
			k, of[key] = len(list), len(list)
			list = append(list, nil)
		}
		list[k] = append(list[k], c)
	}
	return list
}

func keyOf(group []change) string {
	var b strings.Builder
	for _, s := range signsOf(group) {
		fmt.Fprintf(&b, "%p ", s)
	}
	for _, c := range group {
		b.WriteString(c.says)
	}
	return b.String()
}

func signsOf(group []change) (list []*sign) {
	for _, c := range group {
		if !slices.Contains(list, c.sign) {
			list = append(list, c.sign)
		}
	}
	return list
}

func covers(group []change) source.Span {
	return source.Span{Start: group[0].Start, End: group[len(group)-1].End}
}

// place is where the changes are told: at words, which blanks are not.
func (m *Meant) place(group []change) source.Place {
	s := covers(group)
	if strings.TrimSpace(m.was.Text(s)) == "" {
		line := m.was.Line(m.line(s.Start))
		if strings.TrimSpace(m.was.Text(line)) == "" {
			line = m.was.FirstLine()
		}
		s = source.Span{Start: min(line.Start+len(m.was.Text(line))-len(strings.TrimLeft(m.was.Text(line), blanks)), s.Start), End: max(line.End, s.End)}
	}
	return source.Place{File: m.was, Span: s}
}

func (m *Meant) edit(c change) finding.Edit {
	return finding.Edit{Place: source.Place{File: m.was, Span: c.Span}, New: c.text}
}

func (m *Meant) first(group []change) finding.Finding {
	kinds := signsOf(group)
	f := kinds[0].rule.At(m.place(group), m.message(group, kinds))
	if n := len(group) - 1; kinds[0].whole && n > 0 {
		f.Place = m.place(group[:1])
		f.Related = []finding.Related{{Place: m.place(group[1:]), Message: "and as far as it goes from here"}}
	}
	f.Hint = m.hint(group, kinds)
	certain := !slices.ContainsFunc(kinds, func(s *sign) bool { return !s.certain })
	var edits []finding.Edit
	for _, c := range group {
		edits = append(edits, m.edit(c))
	}
	if certain {
		f.Fixes = edits
	} else {
		f.Offers = []finding.Offer{{Says: m.lineWritten(group), Edits: edits}}
		if kinds[0].whole {
			f.Offers[0].Says = f.Hint
		}
	}
	return f
}

// again adds further changes to a finding that was told of the same signs.
func (m *Meant) again(f *finding.Finding, group []change, n int) {
	p := m.place(group)
	if n == 1 {
		f.Related = append(f.Related, finding.Related{Place: p, Message: "here too"})
	} else {
		r := &f.Related[len(f.Related)-1]
		r.Place.End, r.Message = p.End, fmt.Sprintf("and in %d more lines, from here on", n)
	}
	for _, c := range group {
		if len(f.Fixes) > 0 {
			f.Fixes = append(f.Fixes, m.edit(c))
		} else {
			f.Offers[0].Edits = append(f.Offers[0].Edits, m.edit(c))
		}
	}
}

func (m *Meant) message(group []change, kinds []*sign) string {
	if len(kinds) == 1 {
		if group[0].says != "" {
			return group[0].says
		}
		return strings.ReplaceAll(kinds[0].says, "%s", m.shown(group[0]))
	}
	var list []string
	for _, c := range group {
		if text := fmt.Sprintf("%q", m.shown(c)); text != `""` && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	last := len(list) - 1
	if last == 0 {
		return list[0] + " is no sign of the language"
	}
	return strings.Join(list[:last], ", ") + " and " + list[last] + " are no signs of the language"
}

// shown is the sign as it was written.
func (m *Meant) shown(c change) string {
	text := strings.TrimSpace(m.was.Text(c.Span))
	if line, _, more := strings.Cut(text, "\n"); more {
		text = strings.TrimSpace(line)
	}
	return text
}

// decimalComma is that of a number, not one between thousands.
var decimalComma = regexp.MustCompile(`(\d),(\d{1,2})([^\d,]|$)`)

func (m *Meant) hint(group []change, kinds []*sign) string {
	var general []string
	for _, c := range group {
		do := c.sign.do
		if c.do != "" {
			do = c.do
		}
		if do != "" && !slices.Contains(general, do) {
			general = append(general, do)
		}
	}
	if kinds[0].whole {
		return strings.Join(general, "; ")
	}
	line := m.lineWritten(group)
	if !strings.Contains(line, `"`) { // a name may hold what it likes
		line = decimalComma.ReplaceAllString(line, "$1.$2$3") // it is told beside this, and not repeated here
	}
	write := "write " + line
	if len(general) == 0 {
		return write
	}
	return strings.Join(general, "; ") + ": " + write
}

// lineWritten is the line of the first change as it is then written.
func (m *Meant) lineWritten(group []change) string {
	first := m.was.Line(m.line(group[0].Start))
	for _, c := range group {
		if c.sign == signLine {
			first.End = m.was.Line(m.line(c.End)).End
		}
	}
	var own []change
	for _, c := range m.edits {
		if c.Start >= first.Start && c.End <= first.End {
			own = append(own, c)
		}
	}
	text := written(m.was.Bytes()[:first.End], own)[first.Start:]
	line, _, _ := strings.Cut(strings.TrimSpace(string(text)), "\n")
	return strings.TrimSpace(line)
}
