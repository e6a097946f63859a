package merge

import (
	"slices"
	"strings"

	"maltwright/lang/layout"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// inOrder puts the merged statements in order. One side leads: the one that moved
// something. What only the other has is put behind what it stands behind there.
func (m *merging) inOrder(a *alignment) []*syntax.Statement {
	o, t, base := staying(a.o), staying(a.t), staying(a.base)
	leader := a.leads(base, o, t)
	disputed := leader == neither
	if leader == either || disputed { // by what they say, so that it does not depend on whose is which
		leader = ours
		if a.text(t) < a.text(o) {
			leader = theirs
		}
	}
	if disputed {
		m.markOrder(a, o, t, leader)
	}
	if leader == theirs {
		return m.woven(a, t, o, theirs)
	}
	return m.woven(a, o, t, ours)
}

func staying(list []*item) []*item {
	return slices.DeleteFunc(slices.Clone(list), func(it *item) bool { return it.out == nil })
}

// which says whose order leads.
type which int

const (
	either which = iota
	ours
	theirs
	neither // both moved things, and differ
)

// leads looks first at the statements whose order means something.
func (a *alignment) leads(base, o, t []*item) which {
	if w := moved(a.shared(base, true), a.shared(o, true), a.shared(t, true)); w != either {
		return w
	}
	if w := moved(a.shared(base, false), a.shared(o, false), a.shared(t, false)); w != neither {
		return w
	}
	return either
}

func moved(base, o, t []*item) which {
	switch {
	case slices.Equal(o, t):
		return either
	case slices.Equal(o, base):
		return theirs
	case slices.Equal(t, base):
		return ours
	}
	return neither
}

// shared are the items that stand in all three.
func (a *alignment) shared(list []*item, steps bool) []*item {
	return slices.DeleteFunc(slices.Clone(list), func(it *item) bool {
		return it.b == nil || it.o == nil || it.t == nil || steps && !vocabulary.Ordered(a.in, it.b.Verb.Text)
	})
}

// markOrder marks the first statement at which two orders differ, as the leader has
// it.
func (m *merging) markOrder(a *alignment, o, t []*item, leader which) {
	x, y := a.shared(o, true), a.shared(t, true)
	for i := range x {
		if x[i] == y[i] {
			continue
		}
		marked := x[i]
		if leader == theirs {
			marked = y[i]
		}
		m.markItem(marked, "has "+a.head(x[i].o)+" here", "has "+a.head(y[i].t)+" here")
		return
	}
}

func (m *merging) markItem(it *item, we, they string) {
	out := *it.out
	m.mark(&out, we, they, "")
	it.out = &out
}

// head is the first line of a statement.
func (a *alignment) head(s *syntax.Statement) string {
	alone := *bare(s)
	alone.Body = nil
	return strings.Join(strings.Fields(layout.Statement(&alone, a.in)), " ")
}

// woven puts runs of what only the other side has between those of the lead.
func (m *merging) woven(a *alignment, lead, other []*item, leader which) []*syntax.Statement {
	inLead, inOther := setOf(lead), setOf(other)
	runs := map[*item][]*item{}
	var behind *item
	for _, it := range other {
		if inLead[it] {
			behind = it
		} else {
			runs[behind] = append(runs[behind], it)
		}
	}
	var out []*item
	put := func(behind *item, rest []*item) (used int) {
		mine := rest
		if i := slices.IndexFunc(rest, func(it *item) bool { return inOther[it] }); i >= 0 {
			mine = rest[:i]
		}
		out = append(out, m.meeting(a, mine, runs[behind], leader)...)
		return len(mine)
	}
	for i := put(nil, lead); i < len(lead); {
		out = append(out, lead[i])
		i += 1 + put(lead[i], lead[i+1:])
	}
	list := make([]*syntax.Statement, len(out))
	for i, it := range out {
		list[i] = it.out
	}
	return list
}

func setOf(list []*item) map[*item]bool {
	set := make(map[*item]bool, len(list))
	for _, it := range list {
		set[it] = true
	}
	return set
}

// meeting puts two runs that stand in one place one behind the other. Which comes
// first is told by their times, and otherwise chosen by what they say; where they hold
// steps, it is for a person to say.
func (m *merging) meeting(a *alignment, lead, other []*item, leader which) []*item {
	if len(lead) == 0 || len(other) == 0 {
		return append(slices.Clone(lead), other...)
	}
	if out, ok := a.timed(lead, other); ok {
		return out
	}
	first, second := lead, other
	if a.text(other) < a.text(lead) {
		first, second = other, lead
	}
	x, y := a.firstStep(lead), a.firstStep(other)
	if x != nil && y != nil {
		if leader == theirs {
			x, y = y, x
		}
		m.markItem(a.firstStep(second), "has "+a.head(version(x))+" here", "has "+a.head(version(y))+" here")
	}
	return append(slices.Clone(first), second...)
}

func (a *alignment) firstStep(list []*item) *item {
	for _, it := range list {
		if vocabulary.Ordered(a.in, version(it).Verb.Text) {
			return it
		}
	}
	return nil
}

// version is an item as one of the sides has it.
func version(it *item) *syntax.Statement {
	if it.o != nil {
		return it.o
	}
	return it.t
}

// text is what a run says, to choose by what does not depend on whose it is.
func (a *alignment) text(list []*item) string {
	var b strings.Builder
	for _, it := range list {
		s := it.o
		if s == nil || it.t != nil && layout.Statement(it.t, a.in) < layout.Statement(s, a.in) {
			s = it.t
		}
		b.WriteString(layout.Statement(s, a.in))
	}
	return b.String()
}
