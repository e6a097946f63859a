package offer

import (
	"fmt"
	"strings"
	"time"

	"maltwright/lang/nearest"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// add adds an item, once.
func (l *list) add(it Item) {
	if it.Edit.New == "" {
		it.Edit = Edit{l.word, it.Label}
	}
	if it.Edit.Span.Empty() && it.Edit.Start == 0 {
		it.Edit.Span = l.word
	}
	if l.seen[it.Edit.New] {
		return
	}
	l.seen[it.Edit.New] = true
	if it.Filter == "" {
		it.Filter = it.Edit.New
	}
	if l.meansIt(it) {
		it.Filter = l.typed + " " + it.Filter
	}
	it.Sort = fmt.Sprintf("%02d%03d", max(0, l.class), len(l.items))
	l.items = append(l.items, it)
}

// quiet leaves out what is said beside one choice as beside another: it tells none from the others.
func (l *list) quiet() {
	said := map[string]int{}
	for _, it := range l.items {
		said[it.Detail]++
	}
	for i, it := range l.items {
		if (it.Kind == Choice || it.Kind == Name || it.Kind == Value) && said[it.Detail] > 1 && it.Detail != "usual" {
			l.items[i].Detail = ""
		}
	}
}

// meansIt tells whether what is typed is a slip, or another form, of the word of an item.
func (l *list) meansIt(it Item) bool {
	if len(l.typed) < 3 || strings.HasPrefix(it.Filter, l.typed) || it.Kind == Value || it.Kind == Unit || l.open() {
		return false
	}
	words := []string{strings.Fields(it.Edit.New)[0]}
	if _, ok := nearest.Word(l.typed, words); ok && l.typed[0] == words[0][0] { // few slips are of the first letter
		return true
	}
	_, ok := vocabulary.Inflected(l.typed, words)
	return ok
}

// filter is what people may type for a word: the word, and others that mean it.
func filter(word string, others []string) string {
	if len(others) == 0 {
		return word
	}
	return word + " " + strings.Join(others, " ")
}

// lastTime is the time of the line above in a record.
func (l *list) lastTime() (last time.Time) {
	if l.in != vocabulary.Batch {
		return last
	}
	times := value.Times(l.block.Statements)
	for _, s := range l.block.Statements {
		if at, ok := times[s]; ok && s.Start < l.start {
			last = at
		}
	}
	return last
}
