package contrast

import (
	"strings"

	"maltwright/lang/layout"
	"maltwright/lang/syntax"
)

// written gives values in their canonical spelling.
func written(terms []syntax.Term) string {
	words := make([]string, len(terms))
	for i, t := range terms {
		words[i] = layout.Term(t)
	}
	return strings.Join(words, " ")
}
