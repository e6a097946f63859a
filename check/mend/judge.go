package mend

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// judgement is of one round.
type judgement struct {
	before, after look
	todo          []int          // the findings mended, by their numbers before
	edits         []finding.Edit // in order
	heads         []source.Span  // of the statements after, once somebody asks
}

// judge gives the findings that are to blame where the round is no gain, and the
// faults that it leaves to the next one.
func (j *judgement) judge() (owed []finding.Finding, blamed []int) {
	for _, i := range j.todo {
		if slices.ContainsFunc(j.after.found, func(g finding.Finding) bool { return j.same(j.before.found[i], g) }) {
			blamed = append(blamed, i) // it still stands
		}
	}
	for _, g := range j.after.found {
		if slices.ContainsFunc(j.before.found, func(f finding.Finding) bool { return j.same(f, g) }) {
			continue
		}
		near := j.near(g)
		switch {
		case of(syntax.Rules(), g), !j.hid() && g.Severity >= finding.Caution:
			if near == nil {
				near = j.todo
			}
			blamed = append(blamed, near...)
		case len(near) == 0 || g.Severity != finding.Fault || !of(read.Rules(), g) && !j.turned(near):
		case len(g.Fixes) > 0:
			owed = append(owed, g)
		default:
			blamed = append(blamed, near...)
		}
	}
	for _, f := range j.before.owed {
		for _, g := range j.after.found {
			if j.same(f, g) {
				owed = append(owed, g)
			}
		}
	}
	slices.Sort(blamed)
	return owed, slices.Compact(blamed)
}

// turned tells whether one of the findings was of a range the wrong way round. What is
// found of such a range once it is turned was not hidden: rather a digit was lost, as
// in 144 to 17 °C.
func (j *judgement) turned(near []int) bool {
	return slices.ContainsFunc(near, func(i int) bool { return strings.HasSuffix(j.before.found[i].Rule, "-upside-down") })
}

func of(rules []finding.Rule, f finding.Finding) bool {
	return slices.ContainsFunc(rules, func(r finding.Rule) bool { return r.Name == f.Rule })
}

// unread tells whether the file did not read as statements at all.
func (l look) unread() bool {
	rules := syntax.Rules()
	if len(read.Conflicts(l.file)) > 0 {
		return true // which of the versions is meant only a person knows
	}
	return slices.ContainsFunc(l.found, func(f finding.Finding) bool { return f.Place.File == l.file && of(rules, f) })
}

// forbids is the first finding for which the file does not read as statements, one without a
// repair of its own if there is one; nil where there is none.
func (l look) forbids() (first *finding.Finding) {
	rules := syntax.Rules()
	for i, f := range l.found {
		switch {
		case f.Place.File != l.file || !of(rules, f):
		case len(f.Fixes) == 0:
			return &l.found[i]
		case first == nil:
			first = &l.found[i]
		}
	}
	return first
}

// hid tells whether what was mended could hide other findings: past a fault not
// everything is looked at.
func (j *judgement) hid() bool {
	return slices.ContainsFunc(j.todo, func(i int) bool { return j.before.found[i].Severity >= finding.Fault })
}

// same tells whether a finding from before is still there, where its words are now.
func (j *judgement) same(f, g finding.Finding) bool {
	switch {
	case f.Rule != g.Rule:
		return false
	case f.Place.File != j.before.file || g.Place.File != j.after.file: // another file, or none
		return f.Place.Span == g.Place.Span && f.Place.Known() == g.Place.Known() && f.Message == g.Message
	}
	return touch(j.now(f.Place.Span), g.Place.Span)
}

// near gives the findings whose edits wrote some of the statement that a new one is
// about.
func (j *judgement) near(g finding.Finding) (list []int) {
	if g.Place.File != j.after.file {
		return nil
	}
	about := j.statement(g.Place.Span)
	for _, i := range j.todo {
		if slices.ContainsFunc(j.before.found[i].Fixes, func(e finding.Edit) bool { return touch(j.now(e.Place.Span), about) }) {
			list = append(list, i)
		}
	}
	return list
}

// statement gives the head of the statement that a span lies in, or the span itself.
func (j *judgement) statement(s source.Span) source.Span {
	if j.heads == nil {
		tree, _ := syntax.Parse(j.after.file)
		tree.Top.Walk(func(st *syntax.Statement) { j.heads = append(j.heads, st.Head()) })
	}
	out := s
	for _, head := range j.heads {
		if touch(head, s) {
			out = out.Join(head)
		}
	}
	return out
}

// now gives where a span from before lies after the edits. What was put in at its
// edges belongs to it.
func (j *judgement) now(s source.Span) source.Span {
	out, ahead, all := s, 0, 0
	for _, e := range j.edits {
		p, grown := e.Place.Span, len(e.New)-(e.Place.End-e.Place.Start)
		if p.End <= s.Start && !(p.Empty() && p.Start == s.Start) {
			ahead += grown
		} else {
			out.Start = min(out.Start, p.Start)
		}
		if p.Start < s.End || p.Empty() && p.Start == s.End {
			all, out.End = all+grown, max(out.End, p.End)
		}
	}
	return source.Span{Start: out.Start + ahead, End: out.End + all}
}
