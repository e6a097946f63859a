package sheet

import (
	"fmt"
	"slices"
)

// section is a part that begins a page of its own.
type section struct {
	of     string
	first  []Block // above the visits
	visits []Visit
	looks  []Block // below them: what to look for, and counts
	last   []Block
	may    []Block // as looks, where they have room on the page that is last then
	few    bool    // no more spare rows than the least
	bare   bool    // without lines for remarks and initials: nothing is done on its pages
	more   Block   // once more, as often as it has room on that; nil for none
}

const (
	leastSpare  = 2 // spare rows behind the last visit of a section, where there is room or a page of them begins
	mostSpare   = 5
	mostRemarks = 6
	mostMore    = 2
)

// foot is what every page has room for at its end.
func foot(s Size) float64 {
	return Remarks{Lines: 1}.Tall(s) + Gap + Initials{Count: initials}.Tall(s) + Gap
}

// initials is how many people have a place on a page.
const initials = 5

// paged breaks a section into pages.
func paged(p section, s Size) []Page {
	l := &laying{size: s, of: p.of, bare: p.bare, full: p.bare}
	for _, b := range p.first {
		l.add(b)
	}
	for i, v := range p.visits {
		l.close(p.visits[i:])
		l.add(v)
	}
	for _, b := range p.last {
		l.add(b)
	}
	if len(p.visits) > 0 {
		l.spare(leastSpare, p.few, slices.Concat(p.looks, p.may))
	}
	for _, b := range p.looks {
		l.add(b)
	}
	for _, b := range p.may {
		if b.Tall(s)+Gap <= l.room() {
			l.add(b)
		}
	}
	for range mostMore {
		if p.more != nil && p.more.Tall(s)+Gap <= l.room() {
			l.add(p.more)
		}
	}
	l.end()
	for i := range l.pages {
		if i > 0 {
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
	full  bool // the page has no room for remarks and initials
	bare  bool // no page has
}

// room is how tall what is still to come on the page may be.
func (l *laying) room() float64 {
	if l.full {
		return l.size.Room() + Gap - l.used // nothing comes behind the last gap
	}
	return l.size.Room() - foot(l.size) - l.used
}

// close gives the last visits of a section the room of remarks and initials, where the page has no
// other for them: so the steep of most processes stands on one page.
func (l *laying) close(left []Visit) {
	need := 0.0
	for _, v := range left {
		need += v.Tall(l.size) + Gap
	}
	l.full = l.full || need > l.room() && need-Gap <= l.size.Room()-l.used
}

// add puts a block onto the page, or onto the next one. A heading or a drawing stays with what is below it.
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

// isHead tells whether a block is of what is below it: a heading, or a drawing above a count.
func isHead(b Block) bool {
	switch b.(type) {
	case Heading, Drawing:
		return true
	}
	return false
}

// spare puts spare rows onto the page: two at the least, and more where nothing else comes behind them
// or that has room all the same.
func (l *laying) spare(least int, few bool, behind []Block) {
	room := l.room() - Gap
	need := 0.0
	for _, b := range behind {
		need += b.Tall(l.size) + Gap
	}
	if need < room {
		room -= need
	}
	n := min(mostSpare, int(room/SpareRows{Count: 1}.Tall(l.size)))
	if need >= room || few {
		n = min(n, least)
	}
	if n > 0 {
		l.add(SpareRows{Count: n, Boxes: spareBoxes()})
	}
}

// end fills the page up, and closes it.
func (l *laying) end() {
	if len(l.now) == 0 {
		return
	}
	if !l.full {
		lines := 1 + max(0, min(mostRemarks-1, int(l.room()/RowTall)))
		l.now = append(l.now, Remarks{Lines: lines}, Initials{Count: initials})
	}
	l.pages = append(l.pages, Page{Of: l.of, Blocks: l.now})
	l.now, l.used, l.full = nil, 0, l.bare
}

// spareBoxes are those of a row that nobody foresaw.
func spareBoxes() []Box { return []Box{{Label: "what"}, {Label: "value"}, {Label: "time"}} }
