package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// home is what the files of a house say by themselves, before anything is built: which units
// they are written in, and which names they define.
type home struct {
	files []*source.File
	names map[vocabulary.Block][]string
	still [2]int              // how many kilns have air blown or drawn through, and how many stand still
	text  []finding.Finding   // what was found where the text is no statements
	units map[unitsIn][2]bool // whether a file writes metric units, and those of pounds; each is looked through once
}

// unitsIn is a file, and a dimension.
type unitsIn struct {
	file *source.File
	dim  quantity.Dimension
}

func (h *home) count() int {
	if h == nil {
		return 0
	}
	return len(h.files)
}

func (h *home) has(f *source.File) bool { return h != nil && slices.Contains(h.files, f) }

// systems tells whether a file of the house writes values of a dimension in metric units, and
// whether in those of pounds: the i-th, or for -1 the one given.
func (h *home) systems(f *source.File, i int, d quantity.Dimension) (metric, british bool) {
	if i >= 0 {
		f = h.files[i]
	}
	key := unitsIn{f, d}
	is, ok := h.units[key]
	if !ok {
		is = [2]bool{unitWritten[d].metric.Match(f.Bytes()), unitWritten[d].british.Match(f.Bytes())}
		h.units[key] = is
	}
	return is[0], is[1]
}

// homeOf looks the files of a house through.
func homeOf(trees []*syntax.Tree) *home {
	h := &home{names: map[vocabulary.Block][]string{}, units: map[unitsIn][2]bool{}}
	for _, t := range trees {
		h.files = append(h.files, t.File)
		for _, s := range t.Top.Statements {
			if text, ok := onlyText(s.Terms); ok {
				in := vocabulary.Opens(vocabulary.File, s.Verb.Text)
				h.names[in] = append(h.names[in], text.Value)
				if in == vocabulary.KilnFacts && s.Body != nil {
					h.still[stillness(s.Body)]++
				}
			}
		}
	}
	return h
}

// stillness is 1 of the facts of a kiln that stands still, 0 of another.
func stillness(facts *syntax.Block) int {
	for _, s := range facts.Statements {
		if len(s.Terms) == 1 && s.Verb.Text == vocabulary.FactDraught {
			if w, ok := s.Terms[0].(syntax.Word); ok && w.Text == vocabulary.DraughtStill {
				return 1
			}
		}
	}
	return 0
}

// besides lists the places of a temperature that no kiln of the house has: the air of a still
// oven is that of the oven, and in any other it is that on to the malt or off it.
func (h *home) besides() []string {
	switch {
	case h == nil || h.still[0] > 0 == (h.still[1] > 0):
		return nil
	case h.still[1] > 0:
		return []string{vocabulary.PlaceAirOn, vocabulary.PlaceAirOff}
	}
	return []string{vocabulary.PlaceOven}
}

// fitting leaves out the texts with a place that no kiln of the house has, unless that is all of them.
func (h *home) fitting(texts []string) []string {
	besides := h.besides()
	left := slices.DeleteFunc(slices.Clone(texts), func(text string) bool {
		return slices.ContainsFunc(strings.Fields(text), func(word string) bool { return slices.Contains(besides, word) })
	})
	if len(left) == 0 {
		return texts
	}
	return left
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

// knows tells whether something of the house has a name, in its quotes.
func (h *home) knows(quoted string) bool {
	name := strings.Trim(quoted, `"`)
	if h == nil {
		return false
	}
	for _, names := range h.names {
		if slices.Contains(names, name) {
			return true
		}
	}
	return false
}

// named lists the names of the definitions of a kind; of no home there are none.
func (h *home) named(of vocabulary.Block) []string {
	if h == nil {
		return nil
	}
	return h.names[of]
}
