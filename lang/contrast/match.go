package contrast

import (
	"slices"

	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// How matching works
//
// First the statements whose order means something, in three rounds: those that say
// the same and keep their order (by patience: sayings that stand once on both sides,
// their longest rising run, and the equal neighbours around it); then, between
// these, those of the same verb and name, in order, of stages those of one vessel, floor
// or kiln before the others; then what is left on both sides
// and says the same, or is a stage of one name, which has moved. The others have no
// order to keep: they are matched by what they say, and then by their name. What is
// still left and has the same verb and much the same block was renamed. Each round
// takes n log n steps at most.

// Pair is a statement on both sides, or on one: its places in the two lists, −1
// where it does not stand.
type Pair struct {
	Old, New int
	Moved    bool
}

// line is a statement to be matched.
type line struct {
	s               *syntax.Statement
	say, name, full string // full is the name with the vessel, floor or kiln of a stage
	at              int    // its place in the block
}

// matching is the work on two blocks.
type matching struct {
	old, new     []line
	toNew, toOld []int // place of the partner, −1 for none
	moved        map[int]bool
	in           vocabulary.Block
}

// Match pairs the statements of two blocks of one kind. The pairs stand in the
// order of the new side, with those that are gone where they stood.
func Match(old, new []*syntax.Statement, in vocabulary.Block) []Pair {
	m := &matching{old: lines(old, in), new: lines(new, in), moved: map[int]bool{}, in: in}
	m.toNew, m.toOld = alone(len(old)), alone(len(new))
	a, b := m.ordered(m.old), m.ordered(m.new)
	if len(a) > 0 && len(b) > 0 {
		toNew := alone(len(a))
		link := func(i, j int) {
			toNew[i] = j
			m.link(a[i].at, b[j].at)
		}
		anchor(a, b, link)
		between(a, b, toNew, func(l line) string { return l.full }, link)
		between(a, b, toNew, func(l line) string { return l.name }, link)
	}
	m.byKey(func(l line) string { return l.say })
	m.byKey(m.identity(func(l line) string { return l.full }))
	m.byKey(m.identity(func(l line) string { return l.name }))
	m.reName()
	return m.pairs()
}

func lines(list []*syntax.Statement, in vocabulary.Block) []line {
	out := make([]line, len(list))
	for i, s := range list {
		out[i] = line{s, saying(s, in), name(s, in), Name(s, in), i}
	}
	return out
}

func alone(n int) []int { return slices.Repeat([]int{-1}, n) }

func (m *matching) link(i, j int) { m.toNew[i], m.toOld[j] = j, i }

func (m *matching) ordered(list []line) []line {
	var out []line
	for _, l := range list {
		if vocabulary.Ordered(m.in, l.s.Verb.Text) {
			out = append(out, l)
		}
	}
	return out
}

// identity is the name by which a statement is found again in another place: that
// of a stage, a definition, or anything whose order means nothing. A step has none:
// a soak that went here and another that came there are two changes.
func (m *matching) identity(name func(line) string) func(line) string {
	return func(l line) string {
		if l.s.Body == nil && vocabulary.Ordered(m.in, l.s.Verb.Text) {
			return ""
		}
		return name(l)
	}
}

// byKey links what is left on both sides and has the same key, in order.
func (m *matching) byKey(key func(line) string) {
	left := map[string][]int{}
	for i, l := range m.old {
		if k := key(l); m.toNew[i] < 0 && k != "" {
			left[k] = append(left[k], i)
		}
	}
	for j, l := range m.new {
		if m.toOld[j] >= 0 {
			continue
		}
		if q := left[key(l)]; len(q) > 0 {
			m.link(q[0], j)
			m.moved[j] = vocabulary.Ordered(m.in, l.s.Verb.Text)
			left[key(l)] = q[1:]
		}
	}
}

// renamed links, in order, what is left of one verb and has much the same block;
// and the one process of either file, whatever it is called.
func (m *matching) reName() {
	left := map[string][]int{}
	for i, l := range m.old {
		if m.toNew[i] < 0 && l.s.Body != nil {
			left[l.s.Verb.Text] = append(left[l.s.Verb.Text], i)
		}
	}
	only := m.processes(m.old) == 1 && m.processes(m.new) == 1
	for j, l := range m.new {
		q := left[l.s.Verb.Text]
		if m.toOld[j] >= 0 || l.s.Body == nil || len(q) == 0 {
			continue
		}
		if only && m.isProcess(l) || m.alike(m.old[q[0]].s, l.s) {
			m.link(q[0], j)
			left[l.s.Verb.Text] = q[1:]
		}
	}
}

func (m *matching) isProcess(l line) bool {
	return vocabulary.Opens(m.in, l.s.Verb.Text) == vocabulary.Process
}

func (m *matching) processes(list []line) int {
	n := 0
	for _, l := range list {
		if m.isProcess(l) {
			n++
		}
	}
	return n
}

// alike tells whether half of what two blocks say, or more, is the same.
func (m *matching) alike(a, b *syntax.Statement) bool {
	count := map[string]int{}
	mine, theirs := below(a, m.in, nil), below(b, m.in, nil)
	for _, say := range mine {
		count[say]++
	}
	same := 0
	for _, say := range theirs {
		if count[say] > 0 {
			count[say]--
			same++
		}
	}
	return same > 0 && 2*same >= max(len(mine), len(theirs))
}

// below lists what the statements below one say.
func below(s *syntax.Statement, in vocabulary.Block, out []string) []string {
	if s.Body == nil {
		return out
	}
	inner := vocabulary.Opens(in, s.Verb.Text)
	for _, t := range s.Body.Statements {
		out = below(t, inner, append(out, saying(t, inner)))
	}
	return out
}

// pairs puts what was matched, and what was not, in the order of the new side.
func (m *matching) pairs() []Pair {
	var out []Pair
	i := 0
	gone := func(end int) {
		for ; i < end; i++ {
			if m.toNew[i] < 0 {
				out = append(out, Pair{i, -1, false})
			}
		}
	}
	for j, k := range m.toOld {
		if k >= 0 && !m.moved[j] {
			gone(k)
			i = max(i, k+1)
		}
		out = append(out, Pair{k, j, m.moved[j]})
	}
	gone(len(m.old))
	return out
}
