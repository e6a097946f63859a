package syntax

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// bullet looks for what people put in front of the lines of a list.
func (r *signReader) bullet(i int) int {
	at := r.toks[i].Pos.Offset
	if !r.lineStart(at) {
		return i
	}
	j := i
	if (r.toks[j].Type == kindStray || r.toks[j].Type == kindBound) && strings.Contains(bullets, r.toks[j].Value) && (r.toks[j+1].Type != kindStray || r.is(j+1, "[")) {
		j++
	}
	j = r.box(j)
	j = r.numbered(j)
	if j == i || !r.wordy(j) {
		return i
	}
	r.add(signBullet, at, r.tok(j).Pos.Offset, "")
	return j
}

const bullets = "-*•–—·‣▪○●◦+>"

func (r *signReader) wordy(i int) bool {
	t := r.tok(i)
	return t.Type == kindWord || t.Type == kindClause
}

// box passes over the [ ] of a list that is ticked off.
func (r *signReader) box(j int) int {
	if !r.is(j, "[") {
		return j
	}
	k := j + 1
	if x := strings.ToLower(r.tok(k).Value); x == "x" || x == "✓" || x == "✔" {
		k++
	}
	if r.is(k, "]") {
		return k + 1
	}
	return j
}

// numbered passes over 1. and 1) and (1), a) and Step 1: in front of a statement.
func (r *signReader) numbered(j int) int {
	k := j
	if r.is(k, "(") {
		k++
	}
	if word := strings.ToLower(r.tok(k).Value); word == "step" {
		if k++; r.is(k, ".") {
			k++
		}
	}
	t := r.tok(k)
	number := t.Type == kindQuantity && strings.Trim(t.Value, "0123456789") == ""
	letter := t.Type == kindWord && len(t.Value) == 1
	if !number && !letter {
		return j
	}
	for _, sign := range []string{")", ".", ":"} {
		if r.is(k+1, sign) && (number || sign == ")") {
			return k + 2
		}
	}
	return j
}

// colon takes out what stands between a word and its value.
func (r *signReader) colon(i int) int {
	t := r.toks[i]
	front, ok := r.before(i)
	equals := equalSign(t) && !r.compared(i)
	if n := r.ofChange(i, equals); ok && n > i {
		return n
	}
	if !ok || !equals && !r.is(i, ":") || front.Type == kindQuantity && !terminal(r.tok(i+1).Type) {
		return i
	}
	at, end := t.Pos.Offset, endOf(t)
	s := signColon
	if equals {
		s = signEquals
	}
	if next := r.tok(i + 1); !equals && equalSign(next) && next.Pos.Offset == end {
		end = endOf(next)
	}
	text := ""
	switch next := r.tok(r.from(i, end)); {
	case next.Type == kindOpen || terminal(next.Type) && at > 0:
		text = ""
	case next.Pos.Offset == end && !strings.ContainsAny(r.text[at-1:at], blanks):
		text = " "
	case strings.ContainsAny(r.text[at-1:at], blanks) && next.Pos.Offset > end:
		at -= len(r.text[:at]) - len(strings.TrimRight(r.text[:at], blanks))
	}
	r.add(s, at, end, text)
	return r.from(i, end)
}

// ofChange looks for the = in front of what was done instead, and for the : in front of its reason.
func (r *signReader) ofChange(i int, equals bool) int {
	row, ok := r.row()
	if !ok || row.Word != vocabulary.RecordChanged {
		return i
	}
	at, end := r.toks[i].Pos.Offset, endOf(r.toks[i])
	next := r.tok(i + 1).Type
	switch {
	case equals && i > r.first+1 && next == kindQuantity:
		r.add(signTo, at, end, r.apart(at, end, vocabulary.To))
	case strings.Contains(":-–—", r.toks[i].Value) && i > r.first+2 && (next == kindWord || next == kindText) && !strings.Contains(r.text[at:r.lineEnd(at)], vocabulary.ClauseBecause):
		r.add(signReason, at, end, r.apart(at, end, vocabulary.ClauseBecause))
	default:
		return i
	}
	return r.from(i, end)
}

// equalSign tells whether a token is the sign of is.
func equalSign(t lexer.Token) bool {
	op, ok := vocabulary.BoundOp(t.Value)
	return t.Type == kindBound && ok && op == quantity.Is && t.Value != op.String()
}

// compared tells whether something is held to a bound at a token: a fact that may have one, or what
// stands behind the word of a condition.
func (r *signReader) compared(i int) bool {
	row, ok := r.row()
	return !ok || slices.ContainsFunc(row.Slots, func(s vocabulary.Slot) bool { return s.Bound }) || r.conditional(i)
}

// endHere ends the statement in front of a sign; j is the token that begins the next.
func (r *signReader) endHere(i, j int) int {
	at := r.toks[i].Pos.Offset
	at -= len(r.text[:at]) - len(strings.TrimRight(r.text[:at], blanks))
	r.add(signEnd, at, r.tok(j).Pos.Offset, "; ")
	r.first = -1
	return j
}

var joiners = strings.Fields("then and next after afterwards")

// then passes over the words that people join steps with.
func (r *signReader) then(j int) int {
	for r.tok(j).Type == kindWord && slices.Contains(joiners, strings.ToLower(r.tok(j).Value)) && r.wordy(j+1) {
		j++
	}
	return j
}

// starts tells whether a statement of the block begins at a token behind a sign.
func (r *signReader) starts(i, j int) bool {
	t := r.tok(j)
	return r.begins(t) && t.Type == kindWord && !r.measures(i, t.Value)
}

// comma looks at a comma: between statements, at the end of one, or between its parts.
func (r *signReader) comma(i int) int {
	if !r.is(i, ",") {
		return i
	}
	front, ok := r.before(i)
	at, end := r.toks[i].Pos.Offset, endOf(r.toks[i])
	next := r.tok(i + 1)
	switch j := r.then(i + 1); {
	case i > 0 && r.toks[i-1].Type == kindClose:
		r.add(signComma, at, end, "")
	case !ok:
		return i
	case next.Type == kindEnd && next.Value != ";" && r.goesOn(i+2):
		r.goOn(at, i+2)
		return i + 2
	case next.Type == kindEnd || next.Type == kindClose || next.Type == kindOpen || next.Type == kindComment || next.EOF():
		r.add(signComma, at, end, "")
	case dated(front, next):
		return i
	case r.starts(i, j):
		return r.endHere(i, j)
	case front.Type == kindWord && next.Type == kindWord && r.nameAround(i):
		return r.from(i, r.changes[len(r.changes)-1].End)
	case front.Type == kindText && next.Type == kindText, front.Type == kindClock && next.Type == kindClock, r.measures(i, next.Value):
		r.add(signAnd, at, end, r.apart(at, end, vocabulary.And))
	case next.Pos.Offset == end:
		r.add(signComma, at, end, " ")
	default:
		r.add(signComma, at, end, "")
	}
	return i + 1
}

// nameAround puts a name that has a comma in it in quotes, where one is wanted: at Loft, spring.
func (r *signReader) nameAround(i int) bool {
	row, ok := r.row()
	from, to := i, i+1
	for from-1 > r.first && r.toks[from-1].Type == kindWord {
		from--
	}
	for r.tok(to).Type == kindWord {
		to++
	}
	if !ok || !terminal(r.tok(to).Type) && r.tok(to).Type != kindClause {
		return false
	}
	slots := row.Slots
	if c, clause := row.Clause(r.toks[from-1].Value); clause {
		slots = c.Slots
	} else if from-1 != r.first {
		return false
	}
	if len(slots) == 0 || slots[0].Kind != vocabulary.Name && slots[0].Kind != vocabulary.Text {
		return false
	}
	start, end := r.toks[from].Pos.Offset, endOf(r.tok(to-1))
	name := r.text[start:end]
	r.said(signQuote, start, end, "\""+name+"\"", name+" is no name without quotes", "a name stands in double quotes")
	return true
}

// dated tells whether a comma may be of a date: Jan 27, 2026.
func dated(front, next lexer.Token) bool {
	year := next.Type == kindQuantity && len(next.Value) == 4 && strings.Trim(next.Value, "0123456789") == ""
	return year && (front.Type == kindQuantity || front.Type == kindWord)
}

// arrow looks for an arrow between two steps.
func (r *signReader) arrow(i int) int {
	at := r.toks[i].Pos.Offset
	if r.toks[i].Type != kindStray || strings.HasPrefix(r.text[at:], "~") || strings.HasPrefix(r.text[at:], "..") {
		return i
	}
	n := rangeSign(r.text[at:])
	if n == 0 {
		return i
	}
	if j := r.then(r.from(i, at+n)); r.starts(i, j) {
		return r.endHere(i, j)
	}
	return i
}

// dash looks for a dash between a word and its value, between two steps, or in front of what is said by
// the way.
func (r *signReader) dash(i int) int {
	t := r.toks[i]
	front, ok := r.before(i)
	if !ok || t.Type != kindStray || !slices.Contains([]string{"-", "–", "—"}, t.Value) || r.tok(i+1).Type == kindStray {
		return i
	}
	at, end := t.Pos.Offset, endOf(t)
	switch next, j := r.tok(i+1), r.then(i+1); {
	case r.starts(i, j):
		return r.endHere(i, j)
	case front.Type == kindWord && (next.Type == kindQuantity || next.Type == kindText):
		r.add(signColon, at, next.Pos.Offset, "")
	case (next.Type == kindWord || next.Type == kindClause && !r.clause(i+1)) && (valueKind(front.Type) || front.Type == kindText) && !strings.Contains(r.text[end:r.lineEnd(at)], "}"):
		return r.comment(i, len(t.Value))
	default:
		return i
	}
	return i + 1
}

// stop takes a full stop out that ends a statement, or a unit.
func (r *signReader) stop(i int) int {
	front, ok := r.before(i)
	if !ok || !r.is(i, ".") || endOf(front) != r.toks[i].Pos.Offset || r.is(i+1, ".") {
		return i
	}
	next := r.tok(i + 1)
	apart := next.Pos.Offset > endOf(r.toks[i])
	unit := front.Type == kindQuantity && strings.Trim(front.Value[len(front.Value)-1:], "0123456789") != "" && apart
	if !terminal(next.Type) && !unit && !(front.Type == kindWord && apart && pointed(front.Value)) {
		return i
	}
	r.add(signStop, r.toks[i].Pos.Offset, endOf(r.toks[i]), "")
	return i + 1
}

// goesOn tells whether a line begins with a clause, and with no statement of its block.
func (r *signReader) goesOn(i int) bool {
	t := r.tok(i)
	return t.Type == kindClause && r.block() != vocabulary.None && r.block() != vocabulary.File && !r.begins(t)
}

// continued joins a line that goes on with the statement above to it.
func (r *signReader) continued(i int) bool {
	if i < 2 || !r.goesOn(i) || r.toks[i-1].Type != kindEnd || terminal(r.toks[i-2].Type) {
		return false
	}
	if row, ok := vocabulary.Lookup(r.block(), vocabulary.Today(r.toks[r.above(i)].Value)); ok {
		if _, takes := row.Clause(r.toks[i].Value); !takes { // nothing that it could go on with
			return false
		}
	}
	r.goOn(endOf(r.toks[i-2]), i)
	return true
}

// goOn joins a line to the one above.
func (r *signReader) goOn(from, i int) {
	r.said(signLine, from, r.toks[i].Pos.Offset, " ", "the line that begins with "+r.toks[i].Value+" goes on with the statement above", "")
}
