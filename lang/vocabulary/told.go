package vocabulary

import (
	"slices"
	"strings"
)

// told are the words by which people tell of steps, by the beginnings of the words.
var told = []struct {
	step   string
	begins []string
}{
	{VerbSoak, []string{"soak", "steep", "immers", "wash"}},
	{VerbRest, []string{"rest", "drain"}},
	{VerbTurn, []string{"turn", "stir", "flip", "rake", "mix"}},
	{VerbGerminate, []string{"germinat", "sprout", "grow", "chit"}},
	{VerbCure, []string{"kiln", "cure", "curing", "toast", "bake", "finish"}},
	{VerbDry, []string{"dry", "dried", "dries", "wither", "dehydrat"}},
}

// Told gives the step that a word tells of, in whatever form it stands: drained, sprouting.
func Told(word string) (step string, ok bool) {
	word = strings.ToLower(word)
	for _, t := range told {
		for _, b := range t.begins {
			if strings.HasPrefix(word, b) {
				return t.step, true
			}
		}
	}
	return "", false
}

// ToldEnd tells whether a condition stands behind the word: until it cracks.
func ToldEnd(word string) bool {
	return word == ClauseUntil || word == "till" || word == "when"
}

// ToldNoun tells whether a word behind this one is a thing, and no step: the steep, in the kiln.
func ToldNoun(before string) bool {
	return slices.Contains([]string{"the", "my", "a", "an", "in", "of", "from", "each", "per"}, before)
}
