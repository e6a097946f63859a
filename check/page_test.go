package check

import (
	"slices"
	"strings"

	"maltwright/lang/vocabulary"
)

// page is a process as lines, into which statements are put.
type page struct{ lines []string }

func (p page) text() string { return strings.Join(p.lines, "\n") }

// inserted gives the page with a line more behind line i.
func (p page) inserted(i int, line string) page {
	return page{slices.Insert(slices.Clone(p.lines), i+1, line)}
}

// without gives the page without the statements of a word in the block at the line.
func (p page) without(head int, word string) page {
	var kept []string
	depth := 0
	for i, l := range p.lines {
		if i > head && depth == 1 && strings.Fields(l + " ")[0] == word && !strings.HasSuffix(l, "{") {
			continue
		}
		if i >= head {
			depth += strings.Count(l, "{") - strings.Count(l, "}")
			if depth <= 0 {
				head = len(p.lines) // behind the block
			}
		}
		kept = append(kept, l)
	}
	return page{kept}
}

// heads are the lines that open each block, by the first word.
var heads = map[vocabulary.Block]string{
	vocabulary.Process: "process ", vocabulary.Steep: "  steep ", vocabulary.Repeat: "    repeat ",
	vocabulary.Germinate: "  germinate ", vocabulary.Wither: "  wither ", vocabulary.Kiln: "  kiln ", vocabulary.Grain: "grain ",
	vocabulary.Site: "site ", vocabulary.Vessel: "vessel ", vocabulary.Floor: "floor ", vocabulary.KilnFacts: "kiln ", vocabulary.House: "house ", vocabulary.Scale: "scale ",
}

func (p page) head(b vocabulary.Block) int {
	return slices.IndexFunc(p.lines, func(l string) bool { return strings.HasPrefix(l, heads[b]) && strings.HasSuffix(l, "{") })
}

// places are the lines of a block behind which a statement of it may stand.
func (p page) places(head int) []int {
	var list []int
	depth := 0
	for i := head; i < len(p.lines); i++ {
		depth += strings.Count(p.lines[i], "{") - strings.Count(p.lines[i], "}")
		if depth == 0 {
			break
		}
		if depth == 1 {
			list = append(list, i)
		}
	}
	return list
}
