package term

import (
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// panels writes the panels over one another, and below the last one the axis of time.
func (p *page) panels(c chart.Chart) {
	if len(c.Panels) == 0 || !(c.To > c.From) {
		return
	}
	rows := p.plotRows(len(c.Panels))
	plots := make([]*plot, len(c.Panels))
	margin := 0
	for i, panel := range c.Panels {
		plots[i] = &plot{page: p, panel: panel, values: axisOf(panel, rows, p.down)}
		for row := range plots[i].values.rows {
			margin = max(margin, uniseg.StringWidth(plots[i].values.label(row)))
		}
	}
	width := p.columns() - margin - 1
	for _, x := range plots {
		x.grid = newGrid(p.signs, width, x.values.rows)
		x.times = stretch{c.From, c.To, width * p.across}
		if x.draw(c.Now); x.panel.Field != nil {
			x.field(*x.panel.Field)
		}
	}
	for i, x := range plots {
		p.line(p.paint(bold, p.clip(p.heading(x.panel), p.columns())))
		x.write(margin)
		if i == len(plots)-1 {
			p.timeAxis(c, x, margin)
		} else if slices.Equal(x.legend, plots[i+1].legend) { // it stands below the next one
			continue
		}
		x.legends()
	}
}

// plotRows is how many rows each of so many panels has.
func (p *page) plotRows(panels int) int {
	const around = 10 // lines of titles, the axis of time and legends
	return max(leastPlot, min(mostPlot, (usualRows-around)/panels))
}

// heading names a panel and its unit.
func (p *page) heading(x chart.Panel) string {
	return p.said(words.Joined(", ", x.Name, x.Unit))
}

// write writes the rows, each behind the label of its value.
func (p *plot) write(margin int) {
	for row := range p.height {
		label := p.values.label(row)
		side := p.side
		if label != "" {
			side = p.value
		}
		p.page.line(strings.Repeat(" ", margin-uniseg.StringWidth(label)) + label + side + p.row(p.Options, row))
	}
}

// timeAxis writes the axis of time: its line, thick where it is night, its labels, and the stages below.
func (p *page) timeAxis(c chart.Chart, x *plot, margin int) {
	marks := marksOf(c, x.column)
	ticks := map[int]bool{}
	for _, m := range marks {
		ticks[x.column(m.At)] = true
	}
	line, night := strings.Repeat(" ", margin)+p.side, false
	for column := range x.width {
		dark := inNight(c, x, column)
		night = night || dark
		switch {
		case ticks[column] && dark:
			line += p.nightTick
		case ticks[column]:
			line += p.tick
		case dark:
			line += p.signs.night
		default:
			line += p.axis
		}
	}
	p.line(line)
	labels := newRibbon(margin+1, x.width)
	for _, m := range marks {
		labels.put(x.column(m.At), p.said(m.Text))
	}
	p.line(labels.String())
	p.stages(c, x, margin)
	if c.Start.IsZero() && c.Since != "" {
		x.enter("", "", "time from "+c.Since)
	}
	if night {
		x.enter(p.signs.night, "", "night")
	}
}

// inNight tells whether the middle of a column lies in a night.
func inNight(c chart.Chart, x *plot, column int) bool {
	at := (x.times.at(column*x.across) + x.times.at(column*x.across+x.across-1)) / 2
	return slices.ContainsFunc(c.Nights, func(s chart.Span) bool { return at >= s.From && at < s.To })
}

// mostStageRows is how many rows the names of the stages may take.
const mostStageRows = 3

// stages names them below the axis, each behind the sign that stands where it begins; near the right edge the
// name stands in front of it.
func (p *page) stages(c chart.Chart, x *plot, margin int) {
	var rows []*ribbon
	for _, s := range c.Stages {
		if s.To <= c.From || s.From >= c.To {
			continue
		}
		column, name := x.column(max(s.From, c.From)), p.said(s.Name)
		for n := 0; n < mostStageRows; n++ {
			if n == len(rows) {
				rows = append(rows, newRibbon(margin+1, x.width))
			}
			if rows[n].put(column, p.stage+name) || column+uniseg.StringWidth(name) >= x.width && rows[n].put(column-uniseg.StringWidth(name), name+p.stageEnd) {
				break
			}
		}
	}
	for _, r := range rows {
		p.line(r.String())
	}
}

// ribbon is a row of words of which none overlaps another.
type ribbon struct {
	margin, width int
	end           int // behind the last word
	text          string
}

func newRibbon(margin, width int) *ribbon { return &ribbon{margin: margin, width: width, end: -1} }

// put writes a word at a column, if there is room: one blank behind the last word, and none over the edge.
func (r *ribbon) put(column int, text string) bool {
	wide := uniseg.StringWidth(text)
	if column < 0 || column <= r.end || column+wide > r.width {
		return false
	}
	used := max(r.end, 0)
	r.text += strings.Repeat(" ", column-used) + text
	r.end = column + wide
	return true
}

func (r *ribbon) String() string { return strings.Repeat(" ", r.margin) + r.text }

// legends writes the legend, as many entries on a line as have room.
func (p *plot) legends() {
	line, used := "", 0
	for _, e := range p.legend {
		sign, text := e.sign, e.text
		if sign != "" {
			sign += " "
		}
		room := p.columns() - 2 - uniseg.StringWidth(sign)
		for i, part := range words.Wrap(text, room) {
			part = p.clip(part, room)
			shown, wide := p.paint(e.ink, sign)+part, uniseg.StringWidth(sign+part)
			if i > 0 {
				shown = strings.Repeat(" ", uniseg.StringWidth(sign)) + part
			}
			if used > 0 && (i > 0 || used+3+wide > p.columns()) {
				p.page.line(line)
				line, used = "", 0
			}
			if used > 0 {
				line, used = line+"   ", used+3
			} else {
				line, used = "  ", 2
			}
			line, used = line+shown, used+wide
		}
	}
	if used > 0 {
		p.page.line(line)
	}
}
