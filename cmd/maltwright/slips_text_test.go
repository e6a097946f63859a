package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/contrast"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// reading is a file as the language has it.
type reading struct {
	file  *source.File
	tree  *syntax.Tree
	found []finding.Finding
}

// alone reads no file: a slip stands in one that uses none.
type alone struct{}

func (alone) Read(string) ([]byte, error) { return nil, fs.ErrNotExist }

// readings keeps what was read, since many slips lead to the same text.
var readings = map[string]reading{}

func readingOf(text string) reading {
	r, ok := readings[text]
	if !ok {
		r = readingAnew(text)
		readings[text] = r
	}
	return r
}

func readingAnew(text string) reading {
	report := check.File("slip.malt", []byte(text), ".", alone{}, check.Options{NoForecast: true})
	file := report.House.Files[0]
	tree, _ := syntax.Parse(file)
	tree.Top.Walk(timeInFront)
	return reading{file, tree, report.Findings}
}

// timeInFront writes the time of a soak or a rest right behind its word, where it means the
// same as in its "for".
func timeInFront(s *syntax.Statement) {
	if s.Verb.Text != "soak" && s.Verb.Text != "rest" || len(s.Terms) > 0 {
		return
	}
	if i := slices.IndexFunc(s.Clauses, func(c *syntax.Clause) bool { return c.Word.Text == "for" }); i >= 0 {
		s.Terms, s.Clauses = s.Clauses[i].Terms, slices.Delete(slices.Clone(s.Clauses), i, i+1)
	}
}

// ofLanguage are the rules of what is written, and not of what it comes to.
var ofLanguage = func() map[string]bool {
	out := map[string]bool{}
	for _, r := range slices.Concat(syntax.Rules(), read.Rules()) {
		out[r.Name] = true
	}
	return out
}()

// reads tells whether the file has no fault of the language.
func (r reading) reads() bool {
	return !slices.ContainsFunc(r.found, func(f finding.Finding) bool { return f.Severity >= finding.Fault && ofLanguage[f.Rule] })
}

// same tells whether two files mean the same.
func same(a, b reading) bool {
	return len(contrast.Files([]*syntax.Tree{a.tree}, []*syntax.Tree{b.tree})) == 0
}

// fresh lists what is found in a file that is not found in another.
func fresh(r, base reading) (list []finding.Finding) {
	for _, f := range r.found {
		if !slices.ContainsFunc(base.found, func(g finding.Finding) bool { return g.Rule == f.Rule && g.Message == f.Message }) {
			list = append(list, f)
		}
	}
	return list
}

// saysToWrite begins the hints that say what to write.
var saysToWrite = regexp.MustCompile(`^(write|did you mean) `)

// bare tells whether a hint says to write something, and no edit does it, or whether it does not
// say what an offer writes.
func bare(f finding.Finding) bool {
	untold := slices.ContainsFunc(f.Offers, func(o finding.Offer) bool { return !strings.Contains(f.Hint, o.Says) })
	return untold || saysToWrite.MatchString(f.Hint) && len(f.Fixes)+len(f.Offers) == 0
}

// remedy is one thing that a finding says to do, as edits.
type remedy struct {
	says  string
	edits []finding.Edit
	drops bool // it says to take something out
	words bool // it is taken from the words of the hint alone
}

var (
	toWrite   = regexp.MustCompile(`(?:write it so: |write it small: |write it as |write |did you mean |such as: |such as |so: )(.+)`)
	toDrop    = regexp.MustCompile(`\b(?:take|leave) [^,;]{0,40}\bout\b|\btake out\b|\bleave out\b|\bdelete it\b`)
	behindIt  = []string{", if ", ", as ", ", such as", "; ", "?", ", or ", " if ", " in its place", " behind ", " in front", ": ", ", and "}
	numbers   = regexp.MustCompile(`\d+`)
	quotation = regexp.MustCompile(`"[^"\n]*"`)
)

// remedies lists what a finding says to do.
func remedies(f finding.Finding) (list []remedy) {
	if len(f.Fixes) > 0 {
		list = append(list, remedy{says: f.Hint, edits: f.Fixes})
	}
	for _, o := range f.Offers {
		list = append(list, remedy{says: o.Says, edits: o.Edits})
	}
	if len(list) == 0 && toDrop.MatchString(f.Hint) && f.Place.Known() {
		list = append(list, remedy{says: f.Hint, edits: []finding.Edit{{Place: f.Place}}, drops: true})
	}
	if len(f.Fixes)+len(f.Offers) > 0 || !f.Place.Known() || strings.Contains(f.Hint, "add a line") {
		return list
	}
	line := f.Place
	at := line.File.Line(line.File.Position(line.Start, source.Bytes).Line)
	line.Span = at
	text := line.Text()
	line.Start += len(text) - len(strings.TrimLeft(text, " "))
	for _, m := range toWrite.FindAllStringSubmatch(f.Hint, -1) {
		for _, words := range wordings(m[1]) {
			for _, place := range []source.Place{f.Place, line} {
				list = append(list, remedy{says: words, edits: []finding.Edit{{Place: place, New: words}}, words: true})
			}
		}
	}
	return list
}

// wordings are what the words of a hint may mean as a text to write.
func wordings(text string) []string {
	list := []string{text}
	for _, end := range behindIt {
		for from := 0; ; {
			i := strings.Index(text[from:], end)
			if i < 0 {
				break
			}
			list = append(list, text[:from+i])
			if end == ", or " || end == "; " {
				list = append(list, text[from+i+len(end):])
			}
			from += i + len(end)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// drops is all that is said to be taken out.
func drops(found []finding.Finding) (edits []finding.Edit) {
	for _, f := range found {
		for _, r := range remedies(f) {
			if r.drops {
				edits = append(edits, r.edits...)
			}
		}
	}
	return edits
}

// applied makes edits in a text, those first that stand last; of two that touch the first.
func applied(text string, edits []finding.Edit) string {
	edits = slices.Clone(edits)
	slices.SortStableFunc(edits, func(a, b finding.Edit) int { return cmp.Compare(b.Place.Start, a.Place.Start) })
	end := len(text) + 1
	for _, e := range edits {
		if !e.Place.Known() || e.Place.End > end || e.Place.End > len(text) {
			continue
		}
		text, end = text[:e.Place.Start]+e.New+text[e.Place.End:], e.Place.Start
	}
	return text
}

// judgeLine judges a slip in a line of a base.
func judgeLine(t *testing.T, bases map[string]base, s slip) verdict {
	b, ok := bases[s.base]
	require.True(t, ok, s.base)
	meant := make([]string, len(s.meant))
	for i, text := range s.meant {
		meant[i] = b.with(t, s.where, text)
	}
	also := make([]reading, len(s.also))
	for i, text := range s.also {
		also[i] = readingOf(b.with(t, s.where, text))
	}
	return judgeText(t, s, readingOf(b.text), b.with(t, s.where, s.typed), meant, also...)
}

// judgeText judges a whole file.
func judgeText(t *testing.T, s slip, base reading, typed string, texts []string, also ...reading) verdict {
	meant := make([]reading, len(texts))
	for i, text := range texts {
		meant[i] = readingOf(text)
		assert.True(t, meant[i].reads(), "%s: what was meant reads: %v", s.name(), meant[i].found)
	}
	which := func(r reading) int {
		if slices.ContainsFunc(also, func(m reading) bool { return same(r, m) }) {
			return 0
		}
		return slices.IndexFunc(meant, func(m reading) bool { return same(r, m) })
	}
	first := readingOf(typed)
	found := fresh(first, base)
	told := slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Severity >= finding.Caution })
	v := verdict{}
	if first.reads() && s.ask == "" {
		switch i := which(first); {
		case i >= 0 && len(meant) == 1:
			v.right = true
		case !told:
			v.harm = "it reads in silence as what may not be meant"
		}
	}
	for _, f := range found {
		if bare(f) {
			v.bare = append(v.bare, f.Hint)
		}
	}
	reached := map[int]bool{}
	dropped := which(readingOf(applied(typed, drops(found)))) >= 0 // all signs at once
	for _, f := range found {
		list := remedies(f)
		offered := len(f.Offers) > 1
		fits := slices.ContainsFunc(list, func(r remedy) bool { return which(readingOf(applied(typed, r.edits))) >= 0 })
		for _, r := range list {
			after := readingOf(applied(typed, r.edits))
			if i := which(after); i >= 0 && after.reads() {
				reached[i] = true
				continue
			}
			if r.drops && dropped {
				continue
			}
			if h := harmOf(s, v.right, after, typed, texts, r, offered && fits); h != "" && v.harm == "" {
				v.harm = fmt.Sprintf("%q, of %q", h, f.Message)
			}
		}
	}
	if s.ask != "" {
		v.right = slices.ContainsFunc(found, func(f finding.Finding) bool { return strings.Contains(f.Message+" "+f.Hint, s.ask) })
		v.because = "it does not ask; " + said(found)
		return v
	}
	if v.right {
		return v
	}
	round(typed, found, func(after reading) {
		if i := which(after); i >= 0 && after.reads() {
			reached[i] = true
		}
	})
	v.right = len(reached) == len(meant)
	v.because = said(found)
	return v
}

// harmOf says how a remedy does harm; "" where it does none.
func harmOf(s slip, right bool, after reading, typed string, meant []string, r remedy, choice bool) string {
	before := numbers.FindAllString(s.typed, -1)
	switch {
	case r.drops && strings.TrimSpace(r.edits[0].Place.Text()) != "":
		return "take out: " + r.edits[0].Place.Text()
	case choice:
		return ""
	case after.reads() && s.ask == "" && len(before) > 0:
		return "it reads as something else with: " + r.says
	case r.words:
		return ""
	}
	lost := ""
	for _, e := range r.edits {
		for _, of := range []*regexp.Regexp{numbers, quotation} {
			now := of.FindAllString(e.New, -1)
			for _, was := range of.FindAllString(e.Place.Text(), -1) {
				if !slices.ContainsFunc(now, func(n string) bool { return n == was || of == quotation && strings.Contains(n, strings.Trim(was, `"`)) }) && !(len(meant) > 0 && every(now, func(n string) bool { return strings.Contains(strings.Join(s.meant, " "), n) })) {
					lost = was
				}
			}
		}
	}
	if lost != "" {
		return fmt.Sprintf("%s is lost with: %s", lost, r.says)
	}
	return ""
}

func every(list []string, is func(string) bool) bool {
	return len(list) > 0 && !slices.ContainsFunc(list, func(x string) bool { return !is(x) })
}

// round puts right all that was found at once: by the first remedy of each finding, and by
// each other one of one of them.
func round(typed string, found []finding.Finding, try func(reading)) {
	lists := make([][]remedy, 0, len(found))
	for _, f := range found {
		if list := remedies(f); len(list) > 0 {
			lists = append(lists, list)
		}
	}
	for i := range lists {
		for k := range lists[i] {
			var edits []finding.Edit
			for j := range lists {
				if j == i {
					edits = append(edits, lists[j][k].edits...)
				} else {
					edits = append(edits, lists[j][0].edits...)
				}
			}
			try(readingOf(applied(typed, edits)))
		}
	}
}

// said is what was said of a slip, for whoever reads the misses.
func said(found []finding.Finding) string {
	var b bytes.Buffer
	for _, f := range found {
		fmt.Fprintf(&b, "[%s: %s; %s]", f.Rule, f.Message, f.Hint)
	}
	return cmp.Or(b.String(), "nothing is said")
}
