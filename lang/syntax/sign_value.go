package syntax

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// header looks at a whole statement for how often something is done: 2x/day, 3 x 8 h.
func (r *signReader) header(i int) {
	end := i
	for !terminal(r.toks[end].Type) && !r.opens[r.toks[end].Pos.Offset] {
		end++
	}
	if end == i {
		return
	}
	start, stop := r.toks[i].Pos.Offset, endOf(r.toks[end-1])
	if stop-start > longestSaid {
		return
	}
	r.each(start, stop)
	r.times(start, stop)
}

const longestSaid = 300 // bytes of a statement in which such forms are looked for

var eachDay = regexp.MustCompile(`(?i)(?:^|[ \t])((?:every[ \t]+)?(\d{1,2}|once|twice|thrice)[ \t]*(?:x|×|times)?[ \t]*(?:/|per[ \t]+|an?[ \t]+|each[ \t]+|every[ \t]+)[ \t]*(day|d|hour|hr|h))(?:[ \t]|$)`)

// each looks for so many times a day, and writes the time between.
func (r *signReader) each(start, stop int) {
	row, ok := r.row()
	if !ok || !slices.ContainsFunc(row.Clauses, func(c vocabulary.Clause) bool { return c.Word == vocabulary.ClauseEvery }) {
		return
	}
	at := eachDay.FindStringSubmatchIndex(r.text[start:stop])
	if at == nil {
		return
	}
	said := r.text[start+at[2] : start+at[3]]
	n := numberOfTimes(r.text[start+at[4] : start+at[5]])
	hours := 24.0
	if unit := r.text[start+at[6] : start+at[7]]; unit[0] == 'h' || unit[0] == 'H' {
		hours = 1
	}
	if n == 0 {
		return
	}
	text := vocabulary.ClauseEvery + " " + timeBetween(hours/float64(n))
	r.said(signEach, start+at[2], start+at[3], text, fmt.Sprintf("%q is no form of the language", said), "how often is said by the time between")
}

func numberOfTimes(said string) int {
	if i := slices.Index([]string{"once", "twice", "thrice"}, strings.ToLower(said)); i >= 0 {
		return i + 1
	}
	n, _ := strconv.Atoi(said)
	return n
}

// timeBetween writes so many hours.
func timeBetween(hours float64) string {
	if minutes := hours * 60; hours < 2 && minutes == float64(int(minutes)) && hours != 1 {
		return strconv.Itoa(int(minutes)) + " min"
	}
	return strconv.FormatFloat(hours, 'g', 3, 64) + " h"
}

var severalTimes = []*regexp.Regexp{
	regexp.MustCompile(`^(?P<verb>[a-z]+)[ \t]+(?P<n>\d{1,2})[ \t]*(?:x|×|times)[ \t]*(?P<what>\d.*)$`),
	regexp.MustCompile(`^(?P<n>\d{1,2})[ \t]*(?:x|×|times)[ \t]*(?P<verb>[a-z]+)[ \t]+(?P<what>.*)$`),
	regexp.MustCompile(`^(?P<verb>[a-z]+)[ \t]+(?P<what>\d.*?)[ \t]*(?:x|×)[ \t]*(?P<n>\d{1,2})$`),
	regexp.MustCompile(`^(?P<verb>[a-z]+)[ \t]+(?P<what>\d.*?)[ \t]+(?P<n>\d{1,2})[ \t]*(?:x|×|times)$`),
}

// times looks for steps that are done several times, and writes the repeat that does so.
func (r *signReader) times(start, stop int) {
	if _, ok := vocabulary.Lookup(r.block(), vocabulary.VerbRepeat); !ok {
		return
	}
	said := r.text[start:stop]
	for _, form := range severalTimes {
		m := form.FindStringSubmatch(said)
		if m == nil {
			continue
		}
		part := func(name string) string { return m[form.SubexpIndex(name)] }
		if row, ok := vocabulary.Lookup(r.block(), part("verb")); !ok || !row.Ordered || row.Opens != vocabulary.None {
			continue
		}
		text := fmt.Sprintf("%s %s times { %s %s }", vocabulary.VerbRepeat, part("n"), part("verb"), part("what"))
		r.said(signTimes, start, stop, text, fmt.Sprintf("%q says a step several times", said), "steps that are done again stand in a repeat")
		return
	}
}

// spread looks for a value and how far it may be off, 15 ± 2 °C, and writes the range.
func (r *signReader) spread(i int) int {
	at := r.toks[i].Pos.Offset
	mark := spreadSign(r.text[at:])
	front, ok := r.before(i)
	if mark == 0 || !ok || front.Type != kindQuantity {
		return i
	}
	s := scanner{text: r.text, at: at + mark}
	s.skipBlanks()
	begins := s.at
	if begins >= len(r.text) || !isDigit(r.text[begins]) {
		return i
	}
	s.part()
	off := quantityOf(lexerToken(r.text[begins:s.at], begins))
	text, ok := spreadOut(quantityOf(front), off)
	if !ok {
		return i
	}
	start := front.Pos.Offset
	said := r.text[start:s.at]
	r.said(signBetween, start, s.at, text, fmt.Sprintf("%q has no meaning here: a value that may lie between two is a range", said), fmt.Sprintf("%s is %s", said, text))
	return r.from(i, s.at)
}

func spreadSign(text string) int {
	for _, sign := range []string{"±", "+/-", "+-", "+/−"} {
		if strings.HasPrefix(text, sign) {
			return len(sign)
		}
	}
	return 0
}

// spreadOut is the range from a value less what it may be off to the value and as much more.
func spreadOut(mid, off Quantity) (string, bool) {
	if len(mid.Parts) != 1 || len(off.Parts) != 1 {
		return "", false
	}
	unit := off.Parts[0].Unit.Text
	if own := mid.Parts[0].Unit.Text; own != "" && unit != "" && own != unit || own == "" && unit == "" {
		return "", false
	} else if unit == "" {
		unit = own
	}
	a, errA := strconv.ParseFloat(mid.Parts[0].Number.Text, 64)
	b, errB := strconv.ParseFloat(off.Parts[0].Number.Text, 64)
	if errA != nil || errB != nil {
		return "", false
	}
	places := max(places(mid.Parts[0].Number.Text), places(off.Parts[0].Number.Text))
	write := func(x float64) string { return strconv.FormatFloat(x, 'f', places, 64) }
	return fmt.Sprintf("%s %s %s %s", write(a-b), vocabulary.To, write(a+b), unit), true
}

func places(number string) int {
	_, behind, _ := strings.Cut(number, ".")
	return len(behind)
}

// ranged looks for what stands between the ends of a range in the place of to.
func (r *signReader) ranged(i int) int {
	front, ok := r.before(i)
	if !ok || !valueKind(front.Type) || r.toks[i].Type != kindStray {
		return i
	}
	at := r.toks[i].Pos.Offset
	n := rangeSign(r.text[at:])
	if n == 0 {
		return i
	}
	j := r.from(i, at+n)
	if !valueKind(r.tok(j).Type) {
		return i
	}
	end := r.tok(j).Pos.Offset
	r.add(signRange, at, at+n, r.apart(at, at+n, vocabulary.To))
	return r.from(j, end)
}

// rangeSign is the length of the sign of a range at the start of a text.
func rangeSign(text string) int {
	switch {
	case strings.HasPrefix(text, ".."):
		return len(text) - len(strings.TrimLeft(text, "."))
	case strings.HasPrefix(text, "-->"):
		return len("-->")
	case strings.HasPrefix(text, "->"):
		return len("->")
	}
	for _, sign := range []string{"…", "~", "∼", "〜", "→", "⇒", "➔", "➜", "÷", "‒", "―", "‐", "‑"} {
		if strings.HasPrefix(text, sign) {
			return len(sign)
		}
	}
	return 0
}

// abouts are words and signs that make a value a rough one.
var abouts = []string{"about", "approx", "approximately", "ca", "circa", "around", "roughly", "nearly", "abt", "some", "c"}

// about takes out what makes a value a rough one.
func (r *signReader) about(i int) int {
	t := r.toks[i]
	j := i + 1
	switch {
	case t.Type == kindStray && strings.ContainsAny(t.Value, "~≈∼≅"):
	case t.Type == kindWord && slices.Contains(abouts, strings.ToLower(t.Value)):
		if r.is(j, ".") {
			j++
		} else if t.Value == "c" {
			return i
		}
	default:
		return i
	}
	if next := r.tok(j).Type; next != kindQuantity && next != kindClock {
		return i
	}
	at, end := t.Pos.Offset, r.tok(j).Pos.Offset
	r.add(signAbout, at, end, "")
	return j
}

// small looks for signs that stand for a word: @ for at, & and + for and.
func (r *signReader) small(i int) int {
	t := r.toks[i]
	if t.Type != kindStray {
		return i
	}
	at, end := t.Pos.Offset, endOf(t)
	next := r.tok(i + 1)
	switch t.Value {
	case "@":
		r.add(signAt, at, end, r.apart(at, end, vocabulary.ClauseAt))
	case "&", "+":
		if r.is(i+1, t.Value) && r.tok(i+1).Pos.Offset == end { // && of programs
			end, next = endOf(r.tok(i+1)), r.tok(i+2)
		}
		if n := r.more(i); n > i {
			return n
		}
		if _, ok := r.before(i); !ok || terminal(next.Type) {
			return i
		}
		if r.begins(next) && next.Type == kindWord && !r.measures(i, next.Value) {
			return r.endHere(i, i+1)
		}
		if next.Value == vocabulary.And {
			r.add(signAnd, at, next.Pos.Offset, "")
			return r.from(i, end)
		}
		r.add(signAnd, at, end, r.apart(at, end, vocabulary.And))
	default:
		return i
	}
	return i + 1
}

// more looks for a value with a plus right behind its number: 3+ weeks.
func (r *signReader) more(i int) int {
	front, ok := r.before(i)
	t := r.toks[i]
	if !ok || t.Value != "+" || front.Type != kindQuantity || endOf(front) != t.Pos.Offset || strings.Trim(front.Value, "0123456789./") != "" {
		return i
	}
	bound := r.tok(i - 2)
	if i-2 > r.first && bound.Type == kindBound {
		r.add(signPlus, t.Pos.Offset, endOf(t), "")
	} else {
		r.said(signPlus, front.Pos.Offset, endOf(t), quantity.AtLeast.String()+" "+front.Value, fmt.Sprintf("%q is no form of a value", front.Value+"+"), "a bound is said in words")
	}
	return i + 1
}

// split looks for a bound that has a blank between its signs: > =.
func (r *signReader) split(i int) int {
	t, next := r.toks[i], r.tok(i+1)
	if t.Type != kindBound || next.Type != kindBound || len(t.Value) != 1 || next.Pos.Offset == endOf(t) {
		return i
	}
	if _, ok := vocabulary.BoundOp(t.Value + next.Value); !ok {
		return i
	}
	r.add(signBound, t.Pos.Offset, endOf(next), t.Value+next.Value)
	return i + 2
}

// counted looks for the number of a step behind its word, in front of its time: soak 1: 7 h.
func (r *signReader) counted(i int) int {
	t := r.toks[i]
	j := i + 1
	if r.is(j, ":") || r.is(j, ".") || r.is(j, ")") {
		j++
	}
	next := r.tok(j)
	if i-1 != r.first || r.first < 0 || !vocabulary.IsStep(r.toks[r.first].Value) || t.Type != kindQuantity || len(t.Value) > 2 || strings.Trim(t.Value, "0123456789") != "" ||
		next.Type != kindQuantity || strings.Trim(next.Value, "0123456789.") == "" {
		return i
	}
	r.add(signStep, t.Pos.Offset, next.Pos.Offset, "")
	return j
}

// measures tells whether a word is what a condition names, in a statement with one.
func (r *signReader) measures(i int, word string) bool {
	if !r.conditional(i) {
		return false
	}
	return slices.ContainsFunc(vocabulary.Measures(), func(m vocabulary.Measure) bool {
		first, _, _ := strings.Cut(m.Word, " ")
		return first == word
	})
}

// conditional tells whether a condition may stand in front of a token in its statement.
func (r *signReader) conditional(i int) bool {
	row, ok := r.row()
	if !ok {
		return false
	}
	is := func(s vocabulary.Slot) bool { return s.Kind == vocabulary.Condition }
	found := slices.ContainsFunc(row.Slots, is)
	for k := r.first; k < i; k++ {
		if c, ok := row.Clause(r.toks[k].Value); ok {
			found = found || slices.ContainsFunc(c.Slots, is)
		}
	}
	return found
}
