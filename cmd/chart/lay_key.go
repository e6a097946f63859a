package chart

import (
	"math"
	"slices"
	"strings"
)

// entry is a word of the key of a panel, with what it stands for.
type entry struct {
	text   string
	sample func(at XY) // drawn about the middle of 24 px
}

const sampled = 24 // px of a sample in the key

// heading writes over a panel what it shows, and the key.
func (p *panel) heading() {
	p.y += p.leading() + 2
	base := p.y - 4
	text := p.Name
	if p.Unit != "" {
		text = strings.TrimPrefix(text+", "+p.Unit, ", ")
	}
	l := Lettering{Size: p.Letters, Bold: true, Ink: Letters}
	text = fitted(p.m, text, l.Size, true, p.Width-2*edge)
	p.put(XY{edge, base}, text, l)
	p.key(edge + p.m.Width(text, l.Size, true) + 18)
	if p.Field != nil {
		p.legend()
	}
}

// key writes the entries from x on, in as many rows as they take.
func (p *panel) key(x float64) {
	l := Lettering{Size: p.Letters, Ink: Letters}
	for _, e := range p.entries() {
		text := fitted(p.m, e.text, l.Size, false, p.Width-2*edge-sampled-6)
		wide := sampled + 6 + p.m.Width(text, l.Size, false)
		if x+wide > p.Width-edge {
			x = edge
			p.y += p.leading()
		}
		at := XY{x + sampled/2, p.y - 4 - 0.3*p.Letters}
		e.sample(at)
		p.put(XY{x + sampled + 6, p.y - 4}, text, l)
		x += wide + 16
	}
}

// entries are the words of the key: of lines that have no name at their end, of bands, of points.
func (p *panel) entries() (list []entry) {
	if p.Field != nil {
		return nil
	}
	if p.keyed(p.Panel) {
		for _, l := range p.named() {
			list = append(list, entry{l.Name, func(at XY) { p.lineSample(at, l) }})
		}
	}
	for i, b := range p.Bands {
		again := slices.ContainsFunc(p.Bands[:i], func(a Band) bool { return a.Name == b.Name && a.Role == b.Role })
		if b.Name != "" && !again {
			list = append(list, entry{b.Name, func(at XY) { p.bandSample(at, b) }})
		}
	}
	return append(list, p.pointEntries()...)
}

// pointEntries say what the marks of measured points mean.
func (p *panel) pointEntries() (list []entry) {
	var sure, doubted *Point
	for i, q := range p.Points {
		if q.Doubted && doubted == nil {
			doubted = &p.Points[i]
		}
		if !q.Doubted && sure == nil {
			sure = &p.Points[i]
		}
	}
	if sure != nil {
		list = append(list, entry{"measured", func(at XY) { p.measured(at, sure.Role) }})
	}
	if doubted != nil {
		list = append(list, entry{"in doubt", func(at XY) { p.doubt(at, doubted.Role.Ink()) }})
	}
	return list
}

func (p *panel) lineSample(at XY, l Line) {
	p.polyline([]XY{{at.X - sampled/2, at.Y}, {at.X + sampled/2, at.Y}}, pen(l.Role))
	if p.marked(l) {
		p.mark(at, l.Role.Shape(), markSize, l.Role.Ink())
	}
}

func (p *panel) bandSample(at XY, b Band) {
	h := math.Round(0.35 * p.Letters)
	p.box(box{at.X - sampled/2, at.Y - h, at.X + sampled/2, at.Y + h}, bandFill(b.Role))
	if b.Middle != nil {
		p.polyline([]XY{{at.X - sampled/2, at.Y}, {at.X + sampled/2, at.Y}}, pen(b.Role))
	}
}
