package sheet

import "fmt"

// section is a part that begins a page of its own.
type section struct {
	of     string
	first  []Block // above the visits
	visits []Visit
	looks  []Block // below them: what to look for, and counts
	last   []Block
	spares []Box // of a spare row; none where there are no spare rows
}

const (
	leastSpare  = 2 // spare rows behind the last visit of a section, where there is room or a page of them begins
	mostSpare   = 5
	mostRemarks = 6
)

// foot is what every page has room for at its end.
func foot(s Size) float64 {
	return Remarks{Lines: 1}.Tall(s) + Gap + Initials{Count: initials}.Tall(s) + Gap
}

// initials is how many people have a place on a page.
const initials = 5

// paged breaks a section into pages.
func paged(p section, s Size) []Page {
	l := &laying{size: s, of: p.of}
	for _, b := range p.first {
		l.add(b)
	}
	for _, v := range p.visits {
		l.add(v)
	}
	for _, b := range p.last {
		l.add(b)
	}
	if len(p.visits) > 0 {
		l.spare(leastSpare, leastSpare)
	}
	for _, b := range p.looks {
		l.add(b)
	}
	l.end()
	for i := range l.pages {
		if len(l.pages) > 1 && i > 0 {
			l.pages[i].Of = fmt.Sprintf("%s, page %d", p.of, i+1)
		}
	}
	return l.pages
}

// laying puts blocks onto pages.
type laying struct {
	size  Size
	of    string
	pages []Page
	now   []Block
	used  float64
}

// room is how tall what is still to come on the page may be.
func (l *laying) room() float64 { return l.size.Room() - foot(l.size) - l.used }

// add puts a block onto the page, or onto the next one. A heading stays with what is below it.
func (l *laying) add(b Block) {
	tall := b.Tall(l.size) + Gap
	if tall > l.room() && len(l.now) > 0 {
		var with []Block
		for n := len(l.now); n > 1 && isHead(l.now[n-1]); n-- {
			with, l.now = append([]Block{l.now[n-1]}, with...), l.now[:n-1]
			l.used -= with[0].Tall(l.size) + Gap
		}
		l.end()
		for _, h := range with {
			l.add(h)
		}
	}
	l.now, l.used = append(l.now, b), l.used+tall
}

func isHead(b Block) bool { _, is := b.(Heading); return is }

// spare puts spare rows onto the page, as many as there is room for.
func (l *laying) spare(least, most int) {
	one := SpareRows{Count: 1}.Tall(l.size)
	n := min(most, int((l.room()-Gap)/one))
	if n < least && len(l.now) > 0 {
		return
	}
	l.add(SpareRows{Count: n, Boxes: spareBoxes()})
}

// end fills the page up, and closes it.
func (l *laying) end() {
	if len(l.now) == 0 {
		return
	}
	lines := 1 + max(0, min(mostRemarks-1, int(l.room()/RowTall)))
	l.now = append(l.now, Remarks{Lines: lines}, Initials{Count: initials})
	l.pages = append(l.pages, Page{Of: l.of, Blocks: l.now})
	l.now, l.used = nil, 0
}

// spareBoxes are those of a row that nobody foresaw.
func spareBoxes() []Box { return []Box{{Label: "what"}, {Label: "value"}, {Label: "time"}} }
