package margin

import (
	"fmt"
	"slices"

	"maltwright/check"
	"maltwright/check/records"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// accept writes that a finding is right here, into the innermost block in which that silences it once the reason
// stands between the quotes. They are left empty: the reason is the writer's, and until it is there the file has
// a fault, which asks for it. A danger is never accepted, nor what is wrong with the words themselves.
func (a *actor) accept(f *finding.Finding) []Action {
	if f.Severity >= finding.Danger || !acceptable(f.Rule) {
		return nil
	}
	line := fmt.Sprintf("%s %s %s ", vocabulary.VerbAccept, f.Rule, vocabulary.ClauseBecause)
	for _, block := range a.around(f.Place.Span) {
		if len(block.Body.Statements) == 0 {
			continue
		}
		first := block.Body.Statements[0]
		given := Action{Edits: []finding.Edit{a.put(first, line+`"."`)}} // as if a reason were there
		if a.accepted(given, *f) {
			return []Action{{Deed: Accept, Title: fmt.Sprintf("accept %s here, and say why", f.Rule), Edits: []finding.Edit{a.put(first, line+`""`)}, Of: f}}
		}
	}
	return nil
}

// accepted tells whether a finding is accepted in the text after an action that puts something in. No forecast is
// needed for that: what silences a finding is told by where both stand.
func (a *actor) accepted(x Action, f finding.Finding) bool {
	r := a.check(x.Applied(a.Text), check.Options{Context: a.ctx, NoForecast: true})
	moved := func(p source.Place) source.Place {
		if p.File == nil || p.File.Name() != a.tree.File.Name() {
			return p
		}
		p.File = r.House.Files[0]
		for _, e := range x.Edits {
			if by := len(e.New); e.Place.Start <= p.Start {
				p.Start, p.End = p.Start+by, p.End+by
			}
		}
		return p
	}
	f.Place = moved(f.Place)
	related := f.Related
	f.Related = nil
	for _, one := range related {
		one.Place = moved(one.Place)
		f.Related = append(f.Related, one)
	}
	return a.ctx.Err() == nil && check.Silenced(r.House, f)
}

// acceptable tells whether a rule is one that a writer may say is wrong here.
func acceptable(rule string) bool {
	return slices.ContainsFunc(rules.All(), func(r rules.Rule) bool { return r.Name == rule }) ||
		slices.ContainsFunc(records.Rules(), func(r finding.Rule) bool { return r.Name == rule })
}

// around are the statements whose blocks stand around a stretch and may hold an acceptance, the inner ones first.
func (a *actor) around(at source.Span) (list []*syntax.Statement) {
	var into func(b *syntax.Block, in vocabulary.Block)
	into = func(b *syntax.Block, in vocabulary.Block) {
		for _, s := range b.Statements {
			if s.Body == nil || at.Start < s.Start || s.End < at.End {
				continue
			}
			inside := vocabulary.Opens(in, s.Verb.Text)
			if _, ok := vocabulary.Lookup(inside, vocabulary.VerbAccept); ok && inside != vocabulary.Repeat {
				list = append(list, s)
			}
			into(s.Body, inside)
		}
	}
	into(&a.tree.Top, vocabulary.File)
	slices.Reverse(list)
	return list
}

// silences tells whether after an action the finding is gone, and nothing else has come.
func (a *actor) silences(x Action, f finding.Finding) bool {
	r := a.check(x.Applied(a.Text), check.Options{Context: a.ctx})
	return a.ctx.Err() == nil && times(r, f.Rule) < times(a.r, f.Rule) && !worse(a.r, r)
}

// times is how often a rule speaks.
func times(r check.Report, rule string) (n int) {
	for _, g := range r.Findings {
		if g.Rule == rule {
			n++
		}
	}
	return n
}

// worse tells whether a report has a finding, more than a note, of a rule that another has fewer of.
func worse(was, is check.Report) bool {
	count := func(r check.Report) map[string]int {
		n := map[string]int{}
		for _, f := range r.Findings {
			if f.Severity > finding.Note {
				n[f.Rule]++
			}
		}
		return n
	}
	before := count(was)
	for rule, n := range count(is) {
		if n > before[rule] {
			return true
		}
	}
	return false
}
