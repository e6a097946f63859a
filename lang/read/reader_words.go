package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// describe says what a slot wants, for a message.
func describe(s *vocabulary.Slot) string {
	switch s.Kind {
	case vocabulary.Amount:
		if words := dimensionWords(s.Dims); words != strings.TrimPrefix(s.Label, "its ") {
			return fmt.Sprintf("%s (%s)", s.Label, words)
		}
		return s.Label
	case vocabulary.Name:
		return fmt.Sprintf("the name of %s in quotes", s.Label)
	case vocabulary.Text:
		return s.Label + " in quotes"
	case vocabulary.Choice:
		return fmt.Sprintf("%s (%s)", s.Label, strings.Join(s.Words, ", "))
	case vocabulary.Clock:
		return "two times of day, such as 06:30 to 22:30"
	case vocabulary.Date:
		return "a date, such as 2026-03-06"
	case vocabulary.Hour:
		return s.Label + ", such as 07:00"
	case vocabulary.Moment:
		return s.Label + ", such as 2026-03-06 07:00"
	}
	return s.Label
}

func dimensionWords(dims []quantity.Dimension) string {
	if slices.Equal(dims, []quantity.Dimension{quantity.Share, quantity.DryShare}) {
		return "moisture"
	}
	words := make([]string, 0, len(dims))
	for _, d := range dims {
		words = append(words, d.String())
	}
	if last := len(words) - 1; last > 1 {
		return strings.Join(words[:last], ", ") + " or " + words[last]
	}
	return strings.Join(words, " or ")
}

func blockName(b vocabulary.Block) string {
	if b == vocabulary.File {
		return "the file itself"
	}
	return withArticle(string(b))
}

func withArticle(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

func joinOr(homes []vocabulary.Block) string {
	words := make([]string, len(homes))
	for i, h := range homes {
		words[i] = blockName(h)
	}
	return strings.Join(words, " or ")
}
