package offer

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// Meaning is what the word or value at a place means.
type Meaning struct {
	source.Span
	Title string   // the word, or what the value is
	Doc   string   // what it means
	Form  string   // of its statement; "" where it stands in none
	Facts []string // a line each: the value in other units, what is usual
	Says  string   // of a name: the lines of its definition
	From  source.Place
	// Of a value, what it was asked as; the zero value of what is none.
	Asked Asked
}

// MeaningAt tells what stands at an offset. It is false in comments, and where nothing stands.
func MeaningAt(f *source.File, tree *syntax.Tree, offset int, k Known) (Meaning, bool) {
	offset = min(max(offset, f.Start()), f.Size())
	at, start, ok := pieceAt(f, offset)
	if !ok {
		return Meaning{}, false
	}
	in, block := blockAt(f, tree, offset, lineAt(f, offset))
	sp := &spot{file: f, tree: tree, in: in, block: block, start: start, word: at.Span}
	head := header(f, span(start, at.End))
	if at.Kind == syntax.BoundLexeme {
		head = header(f, span(start, at.Start))
	}
	if head == nil {
		return Meaning{}, false
	}
	row, ok := rowOf(in, head.Verb.Text)
	if !ok {
		return Meaning{}, false
	}
	l := &list{spot: sp, known: k, row: row, at: Asked{In: in, Verb: row.Word}}
	m := Meaning{Span: at.Span, Form: formOf(in, *row)}
	return m, l.tell(&m, head, at)
}

// pieceAt finds the piece of a line at an offset, and where its statement begins. A range is told
// of as a whole.
func pieceAt(f *source.File, offset int) (at syntax.Lexeme, start int, ok bool) {
	start = -1
	line := pieces(f, lineAt(f, offset))
	for i, p := range line {
		if start < 0 && !ends(p.Kind) {
			start = p.Start
		}
		if p.Start <= offset && offset <= p.End && p.Start < p.End && !(offset == p.End && i+1 < len(line) && line[i+1].Start == offset) {
			return p, start, !ends(p.Kind)
		}
		if ends(p.Kind) {
			start = -1
		}
	}
	return at, start, false
}

// tell says what a piece means, which is the last of a header.
func (l *list) tell(m *Meaning, head *syntax.Statement, at syntax.Lexeme) bool {
	text := strings.Join(strings.Fields(l.file.Text(at.Span)), " ")
	n := len(head.Clauses)
	switch {
	case at.Kind == syntax.BoundLexeme:
		m.Title, m.Doc = text, about(boundWord(text))
	case len(head.Terms) == 0 && n == 0:
		m.Title, m.Doc = l.row.Word, l.row.Doc
		if g, ok := vocabulary.GlossOf(l.row.Word); ok && g.Looks != "" {
			m.Facts = append(m.Facts, g.Looks)
		}
	case n > 0 && len(head.Clauses[n-1].Terms) == 0 && at.Kind != syntax.ToLexeme:
		c, ok := l.row.Clause(head.Clauses[n-1].Word.Text)
		if !ok {
			return false
		}
		m.Title, m.Doc = l.row.Word+" … "+c.Word, c.Doc
	default:
		return l.tellValue(m, head, at, text)
	}
	return m.Doc != ""
}

// boundWord is the word of a bound that is written with a sign.
func boundWord(text string) string {
	if op, ok := vocabulary.BoundOp(text); ok {
		return op.String()
	}
	return text
}

// tellValue says what the last value of a header is.
func (l *list) tellValue(m *Meaning, head *syntax.Statement, at syntax.Lexeme, text string) bool {
	terms, doc := head.Terms, l.row.Doc
	before := *head
	if n := len(head.Clauses); n > 0 {
		last := *head.Clauses[n-1]
		terms = last.Terms
		if c, ok := l.row.Clause(last.Word.Text); ok {
			doc = c.Doc
		}
		last.Terms = terms[:max(0, len(terms)-1)]
		before.Clauses = append(append([]*syntax.Clause{}, head.Clauses[:n-1]...), &last)
	} else {
		before.Terms = terms[:max(0, len(terms)-1)]
	}
	if len(terms) == 0 {
		return false
	}
	term := terms[len(terms)-1]
	if b, ok := term.(syntax.Bounded); ok {
		term = b.Value
	}
	wants := l.courseOf(&before).wants
	switch term := term.(type) {
	case syntax.Amount:
		return l.tellAmount(m, at, wants, doc)
	case syntax.Text:
		return l.tellName(m, term.Value, wants, doc)
	case syntax.Word:
		return l.tellWord(m, term.Text, wants)
	}
	m.Title, m.Doc = text, doc
	return true
}

// tellWord says what a word of a list, a place or a measure is.
func (l *list) tellWord(m *Meaning, word string, wants []want) bool {
	m.Title, m.Doc = word, about(word)
	for _, w := range wants {
		if whole, behind := l.twoWordsFrom(m.Span); w.slot.Kind == vocabulary.Condition && w.first == "" && about(whole) != "" {
			m.Title, m.Doc, m.Span = whole, about(whole), behind
		}
		if w.first != "" {
			if whole := w.first + " " + word; about(whole) != "" {
				m.Title, m.Doc = whole, about(whole)
			}
		}
		if m.Doc == "" && w.slot.Label != "" {
			m.Doc = w.slot.Label
		}
	}
	for _, r := range l.known.Rules {
		if r.Text == word {
			m.Doc = r.Detail
		}
	}
	if g, ok := vocabulary.GlossOf(word); ok && g.Looks != "" && g.Looks != m.Doc {
		m.Facts = append(m.Facts, g.Looks)
	}
	return m.Doc != ""
}

// twoWordsFrom gives the word at a place and the one behind it, as they name a measure of two.
func (l *list) twoWordsFrom(at source.Span) (string, source.Span) {
	line := pieces(l.file, lineAt(l.file, at.Start))
	for i := 0; i+1 < len(line); i++ {
		if line[i].Start == at.Start && line[i+1].Kind == syntax.WordLexeme {
			return l.file.Text(line[i].Span) + " " + l.file.Text(line[i+1].Span), line[i].Span.Join(line[i+1].Span)
		}
	}
	return "", at
}

// tellName says what is named, with its definition.
func (l *list) tellName(m *Meaning, name string, wants []want, doc string) bool {
	m.Title, m.Doc = quote(name), doc
	for _, w := range wants {
		if w.slot.Kind != vocabulary.Name {
			m.Title = w.slot.Label
			continue
		}
		for _, n := range l.known.Names {
			if n.Text == name && (n.Block == w.slot.Of || slices.Contains(w.slot.Or, n.Block)) {
				m.Title, m.Says, m.From = quote(name), definition(n), n.Place
				m.Doc = n.Detail
				return true
			}
		}
		m.Facts = append(m.Facts, "no definition of "+quote(name)+" is known here")
	}
	return true
}

// mostLines of a definition are shown.
const mostLines = 12

// definition is the text of what is named, of a long one its beginning.
func definition(n Named) string {
	if !n.Place.Known() {
		return ""
	}
	f := n.Place.File
	text := string(f.Bytes()[n.Place.Start:n.whole(f)])
	lines := strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	if len(lines) > mostLines {
		lines = append(lines[:mostLines], "  …")
	}
	return strings.Join(lines, "\n")
}

// whole is where the definition ends, with its block.
func (n Named) whole(f *source.File) int {
	if n.end > n.Place.End && n.end <= f.Size() {
		return n.end
	}
	return n.Place.End
}

// tellAmount says what a value is, in other units too, and what is usual.
func (l *list) tellAmount(m *Meaning, at syntax.Lexeme, wants []want, doc string) bool {
	whole, a, ok := l.amountAt(at)
	if !ok {
		return false
	}
	m.Span, m.Doc, m.Title = whole, doc, l.file.Text(whole)
	for i := range wants {
		w := &wants[i]
		if w.slot.Kind != vocabulary.Amount && w.measure == nil {
			continue
		}
		dims, label := l.dims(w), w.slot.Label
		m.Asked = l.at
		m.Asked.Place, m.Asked.Beside = w.place, w.beside
		if w.measure != nil {
			dims, label, m.Asked.Measure = w.measure.Dims, w.measure.Word, w.measure.Word
		}
		r, err := value.Range(a, dims)
		if err != nil {
			continue
		}
		if label != "" {
			m.Title = label + ": " + strings.Join(strings.Fields(m.Title), " ")
		}
		m.Facts = append(m.Facts, otherwise(r, a, moistureOf(dims))...)
		usual := l.known.usual(m.Asked)
		for _, u := range usual {
			m.Facts = append(m.Facts, u.Why)
		}
		if s := w.slot.Sense.OfAny(r.Low.Dimension); len(usual) == 0 && w.measure == nil && s != nil && s.Usual != nil {
			m.Facts = append(m.Facts, "usual is "+l.known.System.Retold(s.Usual.String())+standing(s.Standing))
		}
		break
	}
	return true
}

func standing(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}

func moistureOf(dims []quantity.Dimension) bool {
	return slices.Contains(dims, quantity.DryShare)
}

// amountAt is the amount at a piece, with both of its ends where it is a range.
func (l *list) amountAt(at syntax.Lexeme) (whole source.Span, a syntax.Amount, ok bool) {
	line := pieces(l.file, lineAt(l.file, at.Start))
	i := slices.IndexFunc(line, func(p syntax.Lexeme) bool { return p.Start == at.Start })
	if i < 0 {
		return whole, a, false
	}
	from, to := run(line, i)
	if to+1 < len(line) && line[to+1].Kind == syntax.ToLexeme {
		_, to = run(line, to+2)
	} else if from >= 2 && line[from-1].Kind == syntax.ToLexeme {
		from, _ = run(line, from-2)
	}
	whole = line[from].Span.Join(line[min(to, len(line)-1)].Span)
	a, ok = amountOf(l.file.Text(whole))
	return whole, a, ok
}

// run is the quantity of which the i-th piece is a part: numbers and their units in turn.
func run(line []syntax.Lexeme, i int) (from, to int) {
	from, to = i, i
	follows := func(a, b int) bool {
		return a >= 0 && b < len(line) && (line[a].Kind == syntax.NumberLexeme && line[b].Kind == syntax.UnitLexeme || line[a].Kind == syntax.UnitLexeme && line[b].Kind == syntax.NumberLexeme)
	}
	for follows(from-1, from) {
		from--
	}
	for follows(to, to+1) {
		to++
	}
	return from, to
}

// otherwise gives a value in the other units in which people say it.
func otherwise(r quantity.Range, a syntax.Amount, moisture bool) (list []string) {
	written := map[string]bool{}
	for _, q := range []*syntax.Quantity{&a.Low, a.High} {
		if q != nil {
			for _, p := range q.Parts {
				if u, ok := quantity.Lookup(p.Unit.Text); ok {
					written[u.Name] = true
				}
			}
		}
	}
	var says []string
	for _, unit := range others(r) {
		if !written[unit] {
			if text, ok := in(r, unit); ok {
				says = append(says, text)
			}
		}
	}
	if len(says) > 0 {
		list = append(list, "= "+strings.Join(says, " = "))
	}
	if moisture {
		list = append(list, wetAndDry(r)...)
	}
	return list
}

// others are the units in which values of a size are said.
func others(r quantity.Range) []string {
	si := max(r.Low.SI, r.High.SI)
	switch r.Low.Dimension {
	case quantity.Temperature:
		return []string{"°C", "°F"}
	case quantity.Mass:
		if si < 1 {
			return []string{"g", "oz"}
		}
		return []string{"kg", "lb"}
	case quantity.Volume:
		if si < 1e-3 {
			return []string{"ml"}
		}
		return []string{"l", "gal-us", "gal-imp"}
	case quantity.Length:
		if si < 1 {
			return []string{"cm", "inch"}
		}
		return []string{"m", "ft"}
	case quantity.Area:
		return []string{"m2", "ft2"}
	case quantity.Flow:
		if si < 1e-3 {
			return []string{"l/min"}
		}
		return []string{"m3/h", "cfm"}
	case quantity.Power:
		return []string{"kW", "Btu/h"}
	case quantity.Pressure:
		return []string{"Pa", "inches of water"}
	case quantity.Colour:
		return []string{"EBC", "Lovibond"}
	case quantity.DiastaticPower:
		return []string{"°WK", "°Lintner"}
	case quantity.TemperatureRate:
		return []string{"°C/h", "°F/h"}
	case quantity.Time:
		if si >= 36*3600 {
			return []string{"h", "days"}
		}
	}
	return nil
}

// in writes a range in a unit.
func in(r quantity.Range, unit string) (string, bool) {
	low, err := quantity.In(r.Low.SI, unit)
	high, other := quantity.In(r.High.SI, unit)
	return quantity.Range{Low: low, High: high}.String(), err == nil && other == nil
}

// wetAndDry gives a moisture on the other basis, and as water for each kg of dry matter.
func wetAndDry(r quantity.Range) []string {
	var dry [2]float64
	unit, other := "% dry basis", r
	for i, q := range []quantity.Quantity{r.Low, r.High} {
		wet, err := q.As(quantity.Share)
		if err != nil || wet.SI >= 1 || wet.SI < 0 {
			return nil
		}
		dry[i] = wet.SI / (1 - wet.SI)
		is := dry[i]
		if q.WrittenAs() == quantity.DryShare {
			unit, is = "%", wet.SI
		}
		if i == 0 {
			other.Low.SI = is
		}
		other.High.SI = is
	}
	water := quantity.Fixed(dry[0], 2)
	text, ok := in(other, unit)
	if !ok {
		return nil
	}
	if !r.Single() {
		water += " to " + quantity.Fixed(dry[1], 2)
	}
	return []string{fmt.Sprintf("= %s = %s kg of water for each kg of dry matter", text, water)}
}
