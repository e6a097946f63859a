package syntax

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// closers gives, by an opening quote, those that close it.
var closers = map[rune]string{'\'': "'’", '‘': "’'‘", '’': "’'", '‚': "‘’'", '`': "`´'", '´': "´`", '«': "»", '»': "«", '‹': "›", '›': "‹", '『': "』", '「': "」"}

func lexerToken(value string, at int) lexer.Token {
	return lexer.Token{Type: kindQuantity, Value: value, Pos: lexer.Position{Offset: at}}
}

// quoted looks for a name in quotes of another kind.
func (r *signReader) quoted(i int) int {
	t := r.toks[i]
	at := t.Pos.Offset
	quote := firstRune(r.text[at:])
	set := closers[quote]
	if t.Type != kindStray || set == "" {
		return i
	}
	open := utf8.RuneLen(quote)
	double := strings.HasPrefix(r.text[at+open:], string(quote))
	if double {
		open *= 2
	}
	end, size := r.closedBy(at+open, set)
	if n := r.nameEnd(r.text[at+open : r.lineEnd(at)]); end < 0 && r.name(i) && n > 0 && !double {
		r.add(signOpen, at, at+open+n, `"`+r.text[at+open:at+open+n]+`"`)
		return r.from(i, r.lineEnd(at))
	}
	if end < 0 {
		return i
	}
	name := r.text[at+open : end]
	if name == "" || strings.TrimSpace(name) != name || strings.ContainsAny(name, `"\`) {
		return i
	}
	if double {
		if !strings.HasPrefix(r.text[end+size:], r.text[end:end+size]) {
			return i
		}
		size *= 2
	}
	r.add(signQuote, at, end+size, `"`+name+`"`)
	return r.from(i, end+size)
}

// closedBy gives the offset and the length of the quote that closes a name on its line; -1
// where none does. One with a letter behind it is the sign of a name such as Hill's.
func (r *signReader) closedBy(from int, set string) (at, size int) {
	for i, stop := from, r.lineEnd(from); i < stop; {
		c, n := utf8.DecodeRuneInString(r.text[i:])
		if strings.ContainsRune(set, c) {
			if next, _ := utf8.DecodeRuneInString(r.text[i+n:]); !unicode.IsLetter(next) && !unicode.IsDigit(next) {
				return i, n
			}
		}
		i += n
	}
	return -1, 0
}

// unclosed looks for a name with one quote, and offers to write the other.
func (r *signReader) unclosed(i int) int {
	t := r.toks[i]
	if t.Type != kindText {
		return i
	}
	if _, closed := quoteEnd(t.Value, 0); closed {
		return r.closedText(i)
	}
	at := t.Pos.Offset
	line := r.text[at:r.lineEnd(at)]
	_, open := utf8.DecodeRuneInString(line)
	rest := strings.TrimSpace(line[open:])
	front, ok := r.before(i)
	if glued := ok && endOf(front) == at && front.Type == kindWord; rest == "" || rest[0] == '{' || rest[0] == '}' || glued {
		return r.unopened(i, at, open)
	}
	end := r.nameEnd(line[open:])
	if end == 0 {
		return i
	}
	from := at + open + end
	r.add(signOpen, at, from, r.text[at:from]+`"`)
	return r.from(i, r.lineEnd(at))
}

// closedText looks for a name that has its quotes twice, and for quotes around what is no name.
func (r *signReader) closedText(i int) int {
	t := r.toks[i]
	at := t.Pos.Offset
	if len(t.Value) == 2 && endOf(t) == r.tok(i+1).Pos.Offset {
		if n := strings.Index(r.text[endOf(t):r.lineEnd(at)], t.Value); n > 0 {
			end := endOf(t) + n + len(t.Value)
			r.add(signTwice, at, end, r.text[at+1:end-1])
			return r.from(i, end)
		}
	}
	row, ok := r.row()
	name := textOf(t).Value
	if !ok || name == "" || !r.takesValue(row, i, name) {
		return i
	}
	r.add(signUnquote, at, endOf(t), name)
	return i + 1
}

// takesValue tells whether what is quoted at a token is a value there: a quantity or a word that the last clause
// in front of it takes, or the statement itself, and no name.
func (r *signReader) takesValue(row *vocabulary.Row, i int, quoted string) bool {
	slots := row.Slots
	for k := r.first + 1; k < i; k++ {
		if r.toks[k].Type == kindClause {
			c, ok := row.Clause(r.toks[k].Value)
			if !ok {
				return false
			}
			slots = c.Slots
		}
	}
	if slices.ContainsFunc(slots, func(s vocabulary.Slot) bool { return s.Kind == vocabulary.Name || s.Kind == vocabulary.Text }) {
		return false
	}
	_, err := quantity.Parse(quoted)
	return slices.ContainsFunc(slots, func(s vocabulary.Slot) bool {
		return s.Kind == vocabulary.Amount && err == nil || slices.Contains(s.Words, quoted)
	})
}

// unopened puts the first quote in front of the words that one stands behind.
func (r *signReader) unopened(i, at, open int) int {
	j := i
	for j > 0 && j-1 > r.first && r.first >= 0 && (r.toks[j-1].Type == kindWord || r.toks[j-1].Type == kindQuantity) {
		j--
	}
	if j == i {
		return i
	}
	start := r.toks[j].Pos.Offset
	r.add(signOpen, start, at+open, `"`+strings.TrimSpace(r.text[start:at])+`"`)
	return r.from(i, at+open)
}

// inNames are words of clauses that stand in names as well.
var inNames = strings.Fields("of in by at")

// nameEnd is where a name ends that is not closed: behind one that the file has elsewhere, in front of
// a brace, of a clause, or at the end of the line.
func (r *signReader) nameEnd(line string) int {
	best := 0
	if r.named++; r.named > mostNames {
		return 0
	}
	for _, t := range r.toks {
		if _, closed := quoteEnd(t.Value+" ", 0); t.Type != kindText || !closed {
			continue
		}
		name := textOf(t).Value
		if strings.HasPrefix(line, name) && len(name) > best && (len(line) == len(name) || strings.ContainsAny(line[len(name):len(name)+1], blanks+"{};")) {
			best = len(name)
		}
	}
	if best > 0 {
		return best
	}
	stop := len(line)
	if i := strings.IndexAny(line, "{};#"); i >= 0 {
		stop = i
	}
	for _, word := range strings.Fields(line[:stop]) {
		if i := strings.Index(line[:stop], " "+word+" "); i > 0 && vocabulary.IsClause(word) && !slices.Contains(inNames, word) {
			stop = i
		}
	}
	return len(strings.TrimRight(line[:stop], blanks))
}

// bracketed looks for a value, or what is said by the way, in brackets on one line.
func (r *signReader) bracketed(i int) int {
	t := r.toks[i]
	closing := map[string]string{"(": ")", "[": "]"}[t.Value]
	if t.Type != kindStray || closing == "" {
		return i
	}
	j := i + 1
	for !terminal(r.tok(j).Type) && !r.is(j, closing) && !r.is(j, t.Value) {
		j++
	}
	if !r.is(j, closing) || j == i+1 {
		return i
	}
	at, end := t.Pos.Offset, endOf(r.tok(j))
	inner := strings.TrimSpace(r.text[endOf(t):r.tok(j).Pos.Offset])
	front, ok := r.before(i)
	last := r.tok(j + 1)
	atEnd := last.EOF() || last.Type == kindEnd && last.Value != ";"
	value := r.tok(i+1).Type != kindWord && r.tok(i+1).Type != kindClause && !(ok && valueKind(front.Type) && !unlike(front, r.tok(i+1)))
	word := r.wantsAt(i+1, j-1)
	switch {
	case ok && word == "" && !value && atEnd && !r.clause(i+1):
		r.add(signAside, at, end, "# "+inner)
		return j + 1
	case value || word != "" || r.clause(i+1):
		r.changes = append(r.changes,
			change{Span: source.Span{Start: at, End: r.tok(i + 1).Pos.Offset}, sign: signParens, text: r.gapBefore(at) + word},
			change{Span: source.Span{Start: endOf(r.tok(j - 1)), End: end}, sign: signParens, text: r.gapBehind(end)})
	default:
		return i
	}
	return i + 1
}

// wantsAt is the word at, with its blank, where a time of day or a temperature that is the one
// token from first to last lacks it: the (14:00) behind a reading. It is "" elsewhere.
func (r *signReader) wantsAt(first, last int) string {
	row, ok := r.row()
	if !ok || first != last {
		return ""
	}
	for k := r.first; k < first; k++ {
		if t := r.tok(k); t.Type == kindClause && t.Value == vocabulary.ClauseAt {
			return ""
		}
	}
	clause, ok := row.Clause(vocabulary.ClauseAt)
	if !ok || len(clause.Slots) != 1 || clause.Slots[0].Placed {
		return ""
	}
	slot := clause.Slots[0]
	switch t := r.tok(first); {
	case t.Type == kindClock && slot.Kind == vocabulary.Moment:
		return "at "
	case t.Type == kindQuantity && slot.Kind == vocabulary.Amount:
		q, err := quantity.Make(quantityOf(t).Written()...)
		if err == nil && q.Dimension == quantity.Temperature && slices.Contains(slot.Dims, q.Dimension) && !slices.ContainsFunc(row.Slots, func(s vocabulary.Slot) bool { return slices.Contains(s.Dims, q.Dimension) }) {
			return "at "
		}
	}
	return ""
}

// unlike tells whether two values are of different kinds, so that the second is not the first
// in another unit.
func unlike(a, b lexer.Token) bool {
	if a.Type != kindQuantity || b.Type != kindQuantity {
		return false
	}
	x, errX := quantity.Make(quantityOf(a).Written()...)
	y, errY := quantity.Make(quantityOf(b).Written()...)
	return errX == nil && errY == nil && x.Dimension != y.Dimension
}

func (r *signReader) gapBefore(at int) string {
	if at > 0 && !strings.ContainsAny(r.text[at-1:at], blanks+"\r\n") {
		return " "
	}
	return ""
}

func (r *signReader) gapBehind(end int) string {
	if end < len(r.text) && !strings.ContainsAny(r.text[end:end+1], blanks+"\r\n;") {
		return " "
	}
	return ""
}

// clause tells whether a bound stands at a token, or a clause that the statement takes.
func (r *signReader) clause(i int) bool {
	row, ok := r.row()
	if t := r.tok(i); t.Type == kindClause && ok {
		_, ok := row.Clause(t.Value)
		return ok
	}
	return r.tok(i).Type == kindBound
}
