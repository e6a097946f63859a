package offer

import (
	"bytes"
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// list gathers what may stand at a place.
type list struct {
	*spot
	known Known
	row   *vocabulary.Row
	at    Asked
	items []Item
	seen  map[string]bool
	class int // of what is added next, less comes first
}

// behind lists what may stand behind the beginning of a statement.
func (l *list) behind() {
	row, ok := rowOf(l.in, l.head.Verb.Text)
	if !ok {
		return
	}
	l.row = row
	l.at = Asked{In: l.in, Verb: row.Word}
	c := l.courseOf(l.head)
	l.want(c)
	l.twoWords()
	if l.open() {
		return
	}
	if c.done && l.bound == "" {
		l.clauses()
		l.brace()
	}
	if len(l.head.Terms)+len(l.head.Clauses) == 0 && !(row.Once && row.Ordered) {
		for i := range l.items { // hardly a word says all by itself, whatever of it may be left out
			l.items[i].Needed = true
		}
	}
}

// open tells whether a quoted text is begun at the place, so that nothing but one may stand.
func (l *list) open() bool { return l.kind == syntax.TextLexeme }

// courseOf walks the values that stand last in a header.
func (l *list) courseOf(head *syntax.Statement) course {
	slots, terms, joins := led(l.row), head.Terms, false
	if n := len(head.Clauses); n > 0 {
		last := head.Clauses[n-1]
		if c := l.highEnd(head, last); len(c.wants) > 0 {
			return c
		}
		def, ok := l.row.Clause(last.Word.Text)
		if !ok {
			return course{}
		}
		slots, terms, joins = def.Slots, last.Terms, def.Joins
		l.at.Clause = def.Word
	}
	if !joins {
		c := walk(slots, terms)
		if n := len(slots); c.done && len(terms) > 0 && n > 0 && slots[n-1].Kind == vocabulary.Condition {
			c.wants = append(c.wants, and)
		}
		return c
	}
	parts := value.Joined(terms)
	c := walk(slots, parts[len(parts)-1])
	for i := range c.wants {
		c.wants[i].said = texts(terms)
	}
	if c.done {
		c.wants = append(c.wants, and)
	}
	return c
}

// and joins another value or test to the one in front.
var and = want{slot: &vocabulary.Slot{Kind: vocabulary.Literal, Words: []string{vocabulary.And}}}

// highEnd is a "to" behind one end of a range, which only a number behind it makes one.
func (l *list) highEnd(head *syntax.Statement, last *syntax.Clause) (c course) {
	if last.Word.Text != vocabulary.To || len(last.Terms) > 0 {
		return c
	}
	before := *head
	before.Clauses = head.Clauses[:len(head.Clauses)-1]
	for _, w := range l.courseOf(&before).wants {
		if w.to {
			w.high, w.needed = true, true
			c.wants = append(c.wants, w)
		}
	}
	return c
}

// led are the slots of a row, with the value in front that may stand without its clause.
func led(row *vocabulary.Row) []vocabulary.Slot {
	def, ok := row.Clause(row.Leads)
	if row.Leads == "" || !ok {
		return row.Slots
	}
	lead := def.Slots[0]
	lead.Optional = true
	return append([]vocabulary.Slot{lead}, row.Slots...)
}

func texts(terms []syntax.Term) (list []string) {
	for _, t := range terms {
		switch t := t.(type) {
		case syntax.Text:
			list = append(list, t.Value)
		case syntax.Word:
			list = append(list, t.Text)
		}
	}
	return list
}

// want lists what fills the slots that come next.
func (l *list) want(c course) {
	for i := range c.wants {
		w := &c.wants[i]
		l.class = 3
		if w.needed {
			l.class = 1
		}
		if l.bound != "" {
			if !w.takesBound(l.bound) {
				continue
			}
			w.bounded, w.needed = true, true
		}
		if l.open() && w.slot.Kind != vocabulary.Name && w.slot.Kind != vocabulary.Text {
			continue
		}
		l.slot(w)
	}
}

// takesBound tells whether a bound may stand in front of the value.
func (w *want) takesBound(bound string) bool {
	op, ok := vocabulary.BoundOp(bound)
	switch {
	case !ok || w.unit || w.to || w.bounded:
		return false
	case w.measure != nil:
		return w.measure.Words == nil && !w.measure.Bare || op == quantity.Is && w.measure.Words != nil
	}
	return w.slot.Kind == vocabulary.Amount && w.slot.Bound
}

// clauses lists those that the statement takes and has not.
func (l *list) clauses() {
	for _, c := range l.row.Clauses {
		if l.has(c.Word) || c.Not != "" && l.has(c.Not) {
			continue
		}
		l.class = 5
		if c.Required {
			l.class = 2
		}
		l.add(Item{Label: c.Word, Kind: Clause, Detail: clauseForm(c), Doc: c.Doc, Needed: c.Required, Filter: filter(c.Word, vocabulary.PhrasesFor(c.Word))})
	}
}

// has tells whether the statement has a clause already, in front of the place or behind it.
func (l *list) has(word string) bool {
	if slices.ContainsFunc(l.head.Clauses, func(c *syntax.Clause) bool { return c.Word.Text == word }) {
		return true
	}
	if word == l.row.Leads && value.Led(l.head, l.in) != l.head {
		return true
	}
	return slices.Contains(l.after, word)
}

func clauseForm(c vocabulary.Clause) string {
	form := vocabulary.Form(vocabulary.Row{Word: c.Word, Slots: c.Slots})
	if c.Joins {
		form += " (" + vocabulary.And + " …)"
	}
	return form
}

// brace lists the block of a statement that has none yet.
func (l *list) brace() {
	if l.row.Opens == vocabulary.None || l.typed != "" || len(l.after) > 0 || l.opensBehind() {
		return
	}
	l.class = 4
	l.add(Item{Label: "{ … }", Kind: Join, Detail: "the block of " + l.row.Word, Needed: !slices.ContainsFunc(l.row.Clauses, func(c vocabulary.Clause) bool { return c.Required && !l.has(c.Word) }),
		Edit: Edit{l.word, "{\n" + l.margin() + "  \n" + l.margin() + "}"}, Filter: "{", Stops: stop("{\n" + l.margin() + "  ")})
}

// opensBehind tells whether a block stands behind the place already.
func (l *list) opensBehind() bool {
	return bytes.HasPrefix(bytes.TrimLeft(l.file.Bytes()[l.word.End:], " \t\r\n"), []byte("{"))
}

// margin is the blank in front of the line.
func (l *list) margin() string {
	line := lineAt(l.file, l.start)
	text := l.file.Text(line)
	return text[:indent(l.file, line)]
}

// twoWords lists bounds and measures of two words of which the first stands: at | of at least.
func (l *list) twoWords() {
	if l.bound != "" || l.open() || len(l.after) > 0 && l.typed != "" {
		return
	}
	first := l.file.Text(l.last)
	rests := vocabulary.BoundRests(first)
	if len(rests) == 0 || rests[0] == "" || l.last.Start <= l.start {
		return
	}
	head := header(l.file, span(l.start, l.last.Start))
	if head == nil {
		return
	}
	was, clause := l.word, l.at.Clause
	l.at.Clause = ""
	l.word.Start = l.last.Start
	for _, w := range l.courseOf(head).wants {
		for _, rest := range rests {
			if whole := first + " " + rest; w.takesBound(whole) {
				l.class = 3
				l.addBound(&w, whole)
			}
		}
	}
	l.word, l.at.Clause = was, clause
}
