package read

import (
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// home is what the files of a house say by themselves, before anything is built: which units
// they are written in, and which names they define.
type home struct {
	files []*source.File
	names map[vocabulary.Block][]string
	text  []finding.Finding // what was found where the text is no statements
}

// homeOf looks the files of a house through.
func homeOf(trees []*syntax.Tree) *home {
	h := &home{names: map[vocabulary.Block][]string{}}
	for _, t := range trees {
		h.files = append(h.files, t.File)
		for _, s := range t.Top.Statements {
			if text, ok := onlyText(s.Terms); ok {
				in := vocabulary.Opens(vocabulary.File, s.Verb.Text)
				h.names[in] = append(h.names[in], text.Value)
			}
		}
	}
	return h
}

// spelt is a name as the house defines it, where that is another only in its capitals.
func (h *home) spelt(name string) string {
	if h == nil {
		return name
	}
	for _, names := range h.names {
		for _, n := range names {
			if strings.EqualFold(n, name) {
				return n
			}
		}
	}
	return name
}

// named lists the names of the definitions of a kind; of no home there are none.
func (h *home) named(of vocabulary.Block) []string {
	if h == nil {
		return nil
	}
	return h.names[of]
}
