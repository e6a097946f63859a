package margin

import (
	"context"
	"slices"
	"strings"
	"unicode/utf8"

	"maltwright/check"
	"maltwright/check/mend"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Deed is a kind of action.
type Deed string

// The deeds.
const (
	Repair  Deed = "repair"  // the certain repair of a finding
	Offer   Deed = "offer"   // what may have been meant
	Accept  Deed = "accept"  // the finding is right here, and why
	Gate    Deed = "gate"    // a gate that is missing
	Convert Deed = "convert" // a value in another unit
)

// Action is something that may be done about the text. Each leaves a file that reads as well as before; an acceptance
// is found fault with until the writer has put the reason between its quotes.
type Action struct {
	Deed  Deed
	Title string
	Edits []finding.Edit   // all in the file itself, in order
	Of    *finding.Finding // what it is about; nil where it is about no finding
}

// Actions lists what may be done at a stretch of a file: about the findings of a report that touch it, the worst
// first, and about the number there. What is offered was tried, so it costs up to some checks of the file for each
// finding. Once the context ends what was found so far is given.
func Actions(ctx context.Context, c Case, tree *syntax.Tree, r check.Report, at source.Span) (list []Action) {
	a := &actor{ctx: ctx, Case: c, tree: tree, r: r}
	found := touching(tree, r, at)
	for i := range found {
		list = append(list, a.repair(&found[i])...)
	}
	for i := range found {
		list = append(list, a.offers(&found[i])...)
	}
	for i := range found {
		list = append(list, a.gate(&found[i])...)
	}
	for i := range found {
		list = append(list, a.accept(&found[i])...)
	}
	list = append(list, a.convert(at)...)
	if ctx.Err() != nil {
		return nil
	}
	told := map[string]bool{}
	return slices.DeleteFunc(list, func(x Action) bool { // two findings of a rule in one place may want the same
		again := told[x.Title]
		told[x.Title] = true
		return again
	})
}

// Mended makes all certain repairs of a file, as check --mend does; false where there are none.
func Mended(ctx context.Context, c Case) ([]byte, bool) {
	r := mend.Text(c.Text, func(text []byte) (*source.File, []finding.Finding) { return c.found(ctx, text, true) })
	return r.Text, r.Changed && ctx.Err() == nil
}

func (c Case) found(ctx context.Context, text []byte, forecast bool) (*source.File, []finding.Finding) {
	r := c.check(text, check.Options{Context: ctx, NoForecast: !forecast})
	return r.House.Files[0], r.Findings
}

// touching are the findings of the file itself that share a byte with a stretch or meet it, the worst first.
func touching(tree *syntax.Tree, r check.Report, at source.Span) (list []finding.Finding) {
	for _, f := range r.Findings {
		if f.Place.File == nil || f.Place.File.Name() != tree.File.Name() {
			continue
		}
		if f.Place.Start <= at.End && at.Start <= f.Place.End {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b finding.Finding) int { return int(b.Severity - a.Severity) })
	return list
}

// actor finds actions.
type actor struct {
	ctx context.Context
	Case
	tree *syntax.Tree
	r    check.Report
}

// ofWords tells whether a finding is of the words of a file alone, which no forecast has a part in.
func ofWords(f *finding.Finding) bool {
	is := func(r finding.Rule) bool { return r.Name == f.Rule }
	return slices.ContainsFunc(syntax.Rules(), is) || slices.ContainsFunc(read.Rules(), is)
}

// repair is the certain repair of a finding, where it is one.
func (a *actor) repair(f *finding.Finding) []Action {
	if len(f.Fixes) == 0 {
		return nil
	}
	forecast := !ofWords(f)
	edits := mend.Only(a.Text, *f, func(text []byte) (*source.File, []finding.Finding) {
		return a.found(a.ctx, text, forecast)
	})
	if len(edits) == 0 {
		return nil
	}
	return []Action{{Deed: Repair, Title: titled(f.Hint, f.Rule), Edits: a.own(edits), Of: f}}
}

// longest is how long a title is at the most, of what a finding says to do.
const longest = 100

func titled(hint, rule string) string {
	hint = words.Safe(words.OneLine(hint))
	if meant, ok := strings.CutPrefix(hint, "did you mean "); ok {
		return "write " + strings.TrimSuffix(meant, "?")
	}
	if hint == "" || len([]rune(hint)) > longest {
		return "repair " + rule
	}
	return hint
}

// offers are what may have been meant.
func (a *actor) offers(f *finding.Finding) (list []Action) {
	for _, o := range f.Offers {
		edits := a.own(o.Edits)
		if edits == nil {
			continue
		}
		list = append(list, Action{Deed: Offer, Title: "write " + words.Safe(words.OneLine(o.Says)), Edits: edits, Of: f})
	}
	return list
}

// own gives edits with places in the tree's own file, in their order; nil where one is elsewhere.
func (a *actor) own(edits []finding.Edit) (list []finding.Edit) {
	for _, e := range edits {
		if e.Place.File == nil || e.Place.File.Name() != a.tree.File.Name() {
			return nil
		}
		e.Place.File = a.tree.File
		list = append(list, e)
	}
	slices.SortStableFunc(list, func(a, b finding.Edit) int { return a.Place.Start - b.Place.Start })
	return list
}

// Applied makes the edits of an action.
func (x Action) Applied(text []byte) []byte {
	var out []byte
	at := 0
	for _, e := range x.Edits {
		out = append(append(out, text[at:e.Place.Start]...), e.New...)
		at = e.Place.End
	}
	return append(out, text[at:]...)
}

// put is the edit that puts a line in front of a statement and its comments, set in as far.
func (a *actor) put(before *syntax.Statement, line string) finding.Edit {
	at := before.Start
	if len(before.Lead) > 0 {
		at = before.Lead[0].Start
	}
	return finding.Edit{Place: source.Place{File: a.tree.File, Span: source.Span{Start: at, End: at}}, New: line + a.parting(at)}
}

// behind is the edit that puts a line behind a statement.
func (a *actor) behind(s *syntax.Statement, line string) finding.Edit {
	end := s.End
	if s.Trail != nil && s.Body == nil {
		end = s.Trail.End
	}
	between := a.parting(s.Start)
	if between == "; " && s.Trail != nil && s.Body == nil {
		between = "\n"
	}
	return finding.Edit{Place: source.Place{File: a.tree.File, Span: source.Span{Start: end, End: end}}, New: between + line}
}

// parting is what stands between two statements of which one begins there: a new line set in as far or, where
// something else stands on its line, a semicolon.
func (a *actor) parting(at int) string {
	text := a.tree.File.Text(source.Span{End: at})
	begins := 0
	for i := len(text) - 1; i >= 0; i-- {
		switch text[i] {
		case '\n':
			begins = i + 1
		case ' ', '\t':
			continue
		default:
			return "; "
		}
		break
	}
	end := "\n"
	if begins > 1 && text[begins-2] == '\r' {
		end = "\r\n"
	}
	return end + text[begins:]
}

// Between is the edit that makes one text of another: what is between the first and the last bytes in which they differ.
func Between(was *source.File, is []byte) finding.Edit {
	a := was.Bytes()
	head := 0
	for head < len(a) && head < len(is) && a[head] == is[head] {
		head++
	}
	tail := 0
	for tail < len(a)-head && tail < len(is)-head && a[len(a)-1-tail] == is[len(is)-1-tail] {
		tail++
	}
	for head > 0 && !boundary(a, head) { // no character and no line end is cut in two
		head--
	}
	for tail > 0 && !boundary(a, len(a)-tail) {
		tail--
	}
	return finding.Edit{Place: source.Place{File: was, Span: source.Span{Start: head, End: len(a) - tail}}, New: string(is[head : len(is)-tail])}
}

func boundary(text []byte, at int) bool {
	return at >= len(text) || utf8.RuneStart(text[at]) && (at == 0 || text[at-1] != '\r' || text[at] != '\n')
}
