package reference

import (
	_ "embed"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// CardPart is a part of the card, which shows the whole language on one page.
type CardPart struct {
	Title string
	Lines []CardLine
}

// CardLine is a line of it.
type CardLine struct {
	Code string // of the language, with its indent; "" where the line is a sentence
	Note string // what is said of it, or the sentence
}

// card is written by hand: its statements are chosen so that each word stands in one of
// them, and all of them together are a file that reads. The lists in it are the vocabulary's.
//
//go:embed card.txt
var card string

// Card gives the card.
func Card() (parts []CardPart) {
	filled := strings.NewReplacer(lists()...).Replace(card)
	for _, line := range strings.Split(strings.TrimSpace(filled), "\n") {
		title, isTitle := strings.CutPrefix(line, "= ")
		note, isText := strings.CutPrefix(line, ". ")
		last := len(parts) - 1
		switch {
		case isTitle:
			parts = append(parts, CardPart{Title: title})
		case isText:
			parts[last].Lines = append(parts[last].Lines, CardLine{Note: note})
		case line != "":
			code, note, _ := strings.Cut(line, " | ") // of the text: a | in the lists has no blanks
			parts[last].Lines = append(parts[last].Lines, CardLine{Code: code, Note: note})
		}
	}
	return parts
}

// lists are what stands in double braces on the card, and what is put there.
func lists() []string {
	var limits, measures, promises, analyses []string
	for _, l := range vocabulary.LimitNames() {
		limits = append(limits, l.Word)
	}
	for _, m := range vocabulary.Measures() {
		switch {
		case m.Promise:
			promises = append(promises, m.Word)
		case m.Words != nil:
			measures = append(measures, m.Word+" is "+strings.Join(m.Words, "|"))
		default:
			measures = append(measures, m.Word)
		}
	}
	for _, a := range vocabulary.Analyses() {
		analyses = append(analyses, a.Word)
	}
	joined := func(words []string) string { return strings.Join(words, ", ") }
	return []string{
		"{{species}}", joined(choicesOf(vocabulary.Grain, "species", 0)),
		"{{malts}}", joined(choicesOf(vocabulary.Process, "make", 0)),
		"{{fired}}", joined(choicesOf(vocabulary.KilnFacts, "fired", 0)),
		"{{walls}}", joined(choicesOf(vocabulary.KilnFacts, "walls", 0)),
		"{{read}}", strings.Join(placesOf(vocabulary.Batch, "read"), " "),
		"{{steps}}", joined(steps()),
		"{{limits}}", joined(limits), "{{measures}}", joined(measures), "{{promises}}", joined(promises), "{{analyses}}", joined(analyses),
		"{{units}}", unitGroups(),
	}
}

// choicesOf are the words of a value of a statement.
func choicesOf(in vocabulary.Block, word string, slot int) []string {
	row, ok := vocabulary.Lookup(in, word)
	if !ok || len(row.Slots) <= slot {
		return nil
	}
	return row.Slots[slot].Words
}

func placesOf(in vocabulary.Block, word string) []string {
	row, ok := vocabulary.Lookup(in, word)
	if !ok || len(row.Slots) == 0 {
		return nil
	}
	return row.Slots[0].Places
}

// steps are those that a weight may stand behind.
func steps() []string {
	row, ok := vocabulary.Lookup(vocabulary.Batch, "weighed")
	if !ok {
		return nil
	}
	if after, ok := row.Clause("after"); ok && len(after.Slots) > 0 {
		return after.Slots[0].Words
	}
	return nil
}

// unitGroups are the units, those of one kind together.
func unitGroups() string {
	var groups []string
	last := quantity.Dimension(-1)
	for _, u := range quantity.Units() {
		if u.Dimension != last {
			groups, last = append(groups, u.Dimension.String()+":"), u.Dimension
		}
		groups[len(groups)-1] += " " + u.Name
	}
	return strings.Join(slices.Compact(groups), "; ")
}

// What a printed page of A4 or letter takes of a common printer's letters.
const (
	CardColumns = 95
	CardRows    = 72
)
