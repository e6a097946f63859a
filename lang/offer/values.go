package offer

import (
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

func span(from, to int) source.Span { return source.Span{Start: from, End: to} }

// stop is the place behind a text.
func stop(text string) []source.Span {
	return []source.Span{{Start: len(text), End: len(text)}}
}

// slot lists what fills a slot.
func (l *list) slot(w *want) {
	if w.high {
		return // a number, of which nobody knows
	}
	at := l.at
	l.at.Place, l.at.Beside = w.place, w.beside
	switch w.slot.Kind {
	case vocabulary.Amount:
		l.amount(w)
	case vocabulary.Condition:
		l.condition(w)
	case vocabulary.Name:
		l.names(w)
	case vocabulary.Text:
		l.files()
	case vocabulary.Choice:
		l.choices(w)
	case vocabulary.Literal:
		for _, word := range w.slot.Words {
			g, _ := vocabulary.GlossOf(word)
			l.add(Item{Label: word, Kind: Join, Doc: g.Doc, Needed: w.needed})
		}
	default:
		l.times(w)
	}
	l.at = at
}

func (l *list) choices(w *want) {
	for _, word := range w.slot.Words {
		it := Item{Label: word, Kind: Choice, Detail: w.slot.Label, Doc: about(word), Needed: w.needed, Filter: filter(word, vocabulary.SynonymsOf(word))}
		if w.closes != "" && len(l.after) == 0 {
			it.Edit = Edit{l.word, word + " " + w.closes}
		}
		l.add(it)
	}
	if len(w.slot.Words) == 0 {
		for _, r := range l.known.Rules {
			l.add(Item{Label: r.Text, Kind: Choice, Detail: r.Detail, Needed: w.needed})
		}
	}
}

// about is what a word means.
func about(word string) string {
	if m, ok := vocabulary.FindMeasure(word); ok {
		return m.Doc
	}
	if a, ok := vocabulary.FindAnalysis(word); ok {
		return a.Doc
	}
	g, _ := vocabulary.GlossOf(word)
	if g.Doc == "" {
		return g.Looks
	}
	return g.Doc
}

func (l *list) names(w *want) {
	for _, n := range l.known.Names {
		if n.Block != w.slot.Of && !slices.Contains(w.slot.Or, n.Block) || slices.Contains(w.said, n.Text) {
			continue
		}
		l.quoted(n.Text, Item{Kind: Name, Detail: n.Detail, Needed: w.needed})
	}
}

// quoted adds a quoted text.
func (l *list) quoted(text string, it Item) {
	it.Label, it.Edit.New = text, quote(text)
	it.Filter = text
	if l.open() { // an editor holds the label against what stands there, which is the quote too
		it.Label, it.Filter = it.Edit.New, it.Edit.New
	}
	l.add(it)
}

func quote(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}

func (l *list) files() {
	if !l.row.Includes {
		return
	}
	for _, name := range l.known.Files {
		l.quoted(name, Item{Kind: Name, Detail: "a file of this folder", Needed: true})
	}
}

func (l *list) amount(w *want) {
	dims := l.dims(w)
	switch {
	case w.unit || w.to:
		if w.unit {
			l.units(w, dims, w.slot.Sense)
		}
		if w.to {
			l.join(w, vocabulary.To, "the other end of the range")
		}
		return
	case w.place == "" && len(w.slot.Places) > 0 && !w.bounded:
		for _, p := range w.slot.Places {
			l.add(Item{Label: p, Kind: Choice, Detail: "where it is measured", Doc: about(p), Needed: w.needed && w.slot.Placed, Filter: filter(p, vocabulary.SynonymsOf(p))})
		}
	}
	l.unitOfNumber(w, dims)
	l.figures(w, w.slot.Range && !w.bounded, dims, w.slot.Sense)
	if w.slot.Bound && !w.bounded {
		for _, op := range l.ops(w) {
			l.addBound(w, op.String())
		}
	}
}

func limitSlot(limit vocabulary.Limit) vocabulary.Slot {
	return vocabulary.Slot{Kind: vocabulary.Amount, Label: limit.Word, Dims: []quantity.Dimension{limit.Dim}, Bound: true, Sense: limit.Sense}
}

func (l *list) join(w *want, word, doc string) {
	l.add(Item{Label: word, Kind: Join, Detail: doc, Needed: w.needed})
}

// dims are the dimensions of a value, of an analysis those of what was tested.
func (l *list) dims(w *want) []quantity.Dimension {
	if a, ok := vocabulary.FindAnalysis(w.beside); ok && l.in == vocabulary.Batch {
		return a.Dims()
	}
	return w.slot.Dims
}

// samples are the values of the row's own example that stand where the statement goes on.
func (l *list) samples() (list []string) {
	if l.row.Example == "" {
		return nil
	}
	tree, _ := syntax.Parse(source.New("", []byte(l.row.Example)))
	if len(tree.Top.Statements) != 1 {
		return nil
	}
	s := tree.Top.Statements[0]
	terms := s.Terms
	if l.at.Clause != "" {
		terms = nil
		for _, c := range s.Clauses {
			if c.Word.Text == l.at.Clause {
				terms = c.Terms
			}
		}
	}
	for _, t := range terms {
		if b, ok := t.(syntax.Bounded); ok {
			t = b.Value
		}
		if a, ok := t.(syntax.Amount); ok {
			list = append(list, tree.File.Text(a.Span))
		}
	}
	return list
}
