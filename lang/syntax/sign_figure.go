package syntax

import (
	"regexp"
	"slices"
	"strings"

	"maltwright/lang/calendar"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// figureForm is a form in which people write a figure, and what the language has in its place.
type figureForm struct {
	form *regexp.Regexp // at the start of the value
	text string         // what stands for it, of its parts
	do   string
	is   func(r *signReader, i int) bool // nil where it may stand anywhere
}

var figureForms = []figureForm{
	{form: regexp.MustCompile(`^(\d{1,3}(?:[ '’\x{202f}]\d{3})+)([ \t]*[A-Za-z°%])`), do: "a number has no sign between its digits", is: (*signReader).alone},
	{form: regexp.MustCompile(`^(\d{1,2}):([0-5]\d)[ \t]*(?:h|hr|hrs|hours?)\b\.?`), text: "$1 h $2 min", do: "a length of time is said with its units", is: (*signReader).lasts},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)\.(h|min|kg|g|l|lb|oz|cm|m2?|days?)\b`), text: "$1 $2", do: "a value is a number and its unit"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?[ \t]*(?:m|ft|feet|metres|meters))\b[ \t]*(?:\.?[ \t]?a\.?[ \t]?s\.?[ \t]?l\b\.?|above sea(?:[ -]level)?)`), text: "$1", do: "an altitude is one above the sea"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)[ \t]*m[3³][ \t]?h\b`), text: "$1 m3/h", do: "so much in each hour is said with a slash"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)[ \t]*(?i:us|u\.s\.)[ \t]+(?i:gallons?|gals?)\b`), text: "$1 gal-us", do: "a gallon says which one it is"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)[ \t]*(?i:imp|imperial|uk)\.?[ \t]+(?i:gallons?|gals?)\b`), text: "$1 gal-imp", do: "a gallon says which one it is"},
	{form: regexp.MustCompile(`^(\d+)[ \t]+out[ \t]+of\b`), text: "$1 of", do: "so many of all are said with of"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?[ \t]*m?g)[ \t]*/[ \t]*1[ ,.]?000\b`), text: "$1", do: "the weight is that of a thousand", is: (*signReader).ofThousand},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)[ \t]+to([ \t]+of\b)`), text: "$1 t$2", do: "a ton of 1000 kg is written t"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)[ \t]*\*[ \t]*([CF])\b`), text: "$1 °$2", do: "the sign of a degree is °"},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)[ \t]*(c?m|ft)[ \t]([23])\b`), text: "$1 $2$3", do: "the 2 or 3 stands right behind its unit", is: (*signReader).ofSize},
	{form: regexp.MustCompile(`^(\d+(?:\.\d+)?)['’′][ \t]*[x×*][ \t]*(\d+(?:\.\d+)?)['’′]`), text: "$1 ft x $2 ft", do: "a unit is written in letters"},
	{form: regexp.MustCompile(`^\+(\d)`), text: "$1", do: "a number has no plus sign"},
}

// figure looks for a figure that is written in a form of other texts: 1 200 kg, 8:30 h, 60 m3h.
func (r *signReader) figure(i int) int {
	t := r.toks[i]
	plus := t.Type == kindStray && t.Value == "+"
	if r.first < 0 || i <= r.first || !valueKind(t.Type) && !plus {
		return i
	}
	if front, ok := r.before(i); plus && (!ok || front.Type != kindWord && front.Type != kindClause) {
		return i
	}
	at := t.Pos.Offset
	rest := r.text[at:r.lineEnd(at)]
	if n := r.sameMonth(i); n > i {
		return n
	}
	if n := r.boundBehind(i); n > i {
		return n
	}
	for _, f := range figureForms {
		m := f.form.FindStringSubmatchIndex(rest)
		if m == nil || f.is != nil && !f.is(r, i) {
			continue
		}
		end, text := m[1], string(f.form.ExpandString(nil, f.text, rest, m))
		if f.text == "" { // the digits alone are written anew
			end = m[3]
			text = strings.NewReplacer(" ", "", "'", "", "’", "", "\u202f", "").Replace(rest[:end])
		}
		said := strings.TrimSpace(rest[:end])
		r.said(signFigure, at, at+end, text, "\""+said+"\" is no form of a value", f.do)
		return r.from(i, at+end)
	}
	return r.listed(i)
}

// daysOfMonth are two days of one month, which is said once: 3 to 6 April 2026.
var daysOfMonth = regexp.MustCompile(`^(\d{1,2})(?:st|nd|rd|th)?\.?[ \t]*(?:to|until|till|-|–)[ \t]*(\d{1,2})((?:st|nd|rd|th)?\.?[ \t]+\pL{3,9}\.?,?[ \t]+\d{4})\b`)

// sameMonth looks for two days of which the first goes without its month.
func (r *signReader) sameMonth(i int) int {
	at := r.toks[i].Pos.Offset
	m := daysOfMonth.FindStringSubmatch(r.text[at:r.lineEnd(at)])
	if m == nil {
		return i
	}
	first, okFirst := calendar.Canonical(m[1] + m[3])
	last, okLast := calendar.Canonical(m[2] + m[3])
	if !okFirst || !okLast {
		return i
	}
	r.said(signFigure, at, at+len(m[0]), first+" "+vocabulary.To+" "+last, "\""+m[0]+"\" is no form of two dates", "a date is written as "+first)
	return r.from(i, at+len(m[0]))
}

// boundBehind looks for a bound that stands behind its value: 3 weeks at least.
func (r *signReader) boundBehind(i int) int {
	t, bound, next := r.toks[i], r.tok(i+1), r.tok(i+2)
	front, ok := r.before(i)
	if t.Type != kindQuantity || bound.Type != kindBound || !ok || front.Type == kindBound || front.Type == kindTo || !terminal(next.Type) && next.Type != kindClause {
		return i
	}
	if op, known := vocabulary.BoundOp(strings.Join(strings.Fields(bound.Value), " ")); !known || op == quantity.Is {
		return i
	}
	r.said(signFigure, t.Pos.Offset, endOf(bound), bound.Value+" "+t.Value, "\""+bound.Value+"\" stands behind its value", "a bound stands in front")
	return i + 2
}

// alone tells whether no other number stands in front of one, so that its digits may be parted.
func (r *signReader) alone(i int) bool {
	front, ok := r.before(i)
	return ok && !valueKind(front.Type)
}

// lasts tells whether a length of time is wanted and no time of day: behind a step, or for, every or over.
func (r *signReader) lasts(i int) bool {
	front, ok := r.before(i)
	return ok && (i-1 == r.first && vocabulary.IsStep(front.Value) || slices.Contains(lasting, front.Value))
}

var lasting = []string{vocabulary.ClauseFor, vocabulary.ClauseOver, vocabulary.ClauseEvery, vocabulary.ClauseWithin}

func (r *signReader) ofThousand(int) bool {
	row, ok := r.row()
	return ok && row.Word == vocabulary.KernelWeight
}

// ofSize tells whether an area or a volume is wanted.
func (r *signReader) ofSize(int) bool {
	row, ok := r.row()
	return ok && slices.ContainsFunc(vocabulary.Wanted(row.Slots), func(d quantity.Dimension) bool { return d == quantity.Area || d == quantity.Volume })
}

// manyCounted are the counts of something that are written with a sign between each.
var manyCounted = regexp.MustCompile(`^\d+(?:(?:/\d+){2,}|(?:-\d+){3,})\b`)

// listed looks for counts with a sign between each: 2/6/22/55.
func (r *signReader) listed(i int) int {
	row, ok := r.row()
	at := r.toks[i].Pos.Offset
	said := manyCounted.FindString(r.text[at:r.lineEnd(at)])
	if !ok || row.Word != vocabulary.RecordCounted || said == "" {
		return i
	}
	r.said(signFigure, at, at+len(said), strings.NewReplacer("/", " ", "-", " ").Replace(said), "\""+said+"\" is no form of counts", "counts stand side by side")
	return r.from(i, at+len(said))
}

// heatAt looks for a warmth behind the at of a reading, where its time would stand: read bed at 17.2 °C.
func (r *signReader) heatAt(i int) int {
	row, ok := r.row()
	t, next := r.toks[i], r.tok(i+1)
	if !ok || row.Word != vocabulary.RecordRead || t.Value != vocabulary.ClauseAt || !warmth.MatchString(r.text[next.Pos.Offset:r.lineEnd(next.Pos.Offset)]) {
		return i
	}
	r.said(signColon, t.Pos.Offset, next.Pos.Offset, "", "\"at\" stands in front of the time of a reading", "what was read stands right behind its word")
	return r.from(i, next.Pos.Offset+len(warmth.FindString(r.text[next.Pos.Offset:])))
}

var warmth = regexp.MustCompile(`^-?\d+(?:\.\d+)?[ \t]*(?:°[ \t]?)?[CF]\b`)

// shortened are words that people shorten, with a full stop behind.
var shortened = strings.Fields("incl excl approx temp max min avg ca germ moist")

// pointed tells whether the point behind a word is that of a shortened one.
func pointed(word string) bool { return slices.Contains(shortened, strings.ToLower(word)) }
