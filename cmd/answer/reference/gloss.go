package reference

import (
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// glossed adds what the glossary says of a name: to the entry of what it is, or as one of
// its own.
func glossed(name string, list []Entry) []Entry {
	g, ok := vocabulary.GlossOf(name)
	if !ok {
		return list
	}
	if g.Doc != "" {
		e := Entry{Name: g.Word, Kind: Term, Doc: g.Doc}
		if in := takers(name); len(in) > 0 {
			e.Kind, e.In = Part, in
		}
		list = append(list, e)
	}
	if len(list) == 0 {
		return nil
	}
	at := max(0, slices.IndexFunc(list, func(e Entry) bool { return e.Kind == Measure }))
	list[at].Looks, list[at].Drawing = g.Looks, g.Drawing
	return list
}

// takers lists the statements that take a word: as a choice, a place or a clause.
func takers(word string) (list []string) {
	for _, r := range vocabulary.Rows() {
		slots, takes := slices.Clone(r.Slots), false
		for _, c := range r.Clauses {
			slots, takes = append(slots, c.Slots...), takes || c.Word == word
		}
		takes = takes || slices.ContainsFunc(slots, func(s vocabulary.Slot) bool {
			return slices.Contains(s.Words, word) || slices.Contains(s.Places, word)
		})
		if takes && !slices.Contains(list, r.Word) {
			list = append(list, r.Word)
		}
	}
	for _, m := range vocabulary.Measures() {
		if slices.Contains(m.Words, word) && !slices.Contains(list, m.Word) {
			list = append(list, m.Word)
		}
	}
	return list
}

// unit is the entry of a unit, by any of its spellings.
func unit(name string) (Entry, bool) {
	for _, u := range quantity.Units() {
		if u.Name == name || slices.Contains(u.Aliases, name) {
			return Entry{Name: u.Name, Kind: Unit, Doc: u.Doc + "; a unit of " + u.Dimension.String(), Words: u.Aliases}, true
		}
	}
	return Entry{}, false
}

// Other is what to look for in place of a word that people use and the language does not.
func Other(name string) (string, bool) {
	for _, in := range vocabulary.Blocks() {
		if o, ok := vocabulary.OtherWord(in, strings.ToLower(name)); ok {
			if o.Means != "" {
				return o.Means, true
			}
		}
	}
	return "", false
}
