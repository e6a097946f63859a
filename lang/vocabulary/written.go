package vocabulary

import (
	"slices"
	"strings"
)

// WrittenFor lists the words, folded, by which people mean a statement of the block.
func WrittenFor(in Block, word string) (list []string) {
	for _, o := range others {
		if first, _, _ := strings.Cut(o.Means, " "); first == word && slices.Contains(o.In, in) {
			list = append(list, o.Written...)
		}
	}
	return list
}

// SynonymsOf lists the words, folded, by which people mean a choice, a place or a measure.
func SynonymsOf(word string) (list []string) {
	for _, s := range synonyms {
		if s.means == word {
			list = append(list, s.written...)
		}
	}
	return list
}

// PhrasesFor lists the phrases by which people mean a clause word or a bound.
func PhrasesFor(word string) (list []string) {
	for _, p := range phrases {
		if p.Means == word {
			list = append(list, p.Written)
		}
	}
	return list
}
