package command

import (
	"fmt"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
	"maltwright/lang/contrast"
	"maltwright/lang/source"
)

// A comparison is one table for people: what, then the old and the new side by
// side. A row is made once, for the terminal and for the page.

// changeRow is a row of the table of changes.
type changeRow struct {
	group    string // the statements around it
	what     string // the statement and what became of it
	old, new string
	oldLine  int // 0 where it does not stand there
	newLine  int
}

func (x *comparison) rows() []changeRow {
	var out []changeRow
	for _, c := range x.changes {
		out = append(out, x.changeRows(c)...)
	}
	return out
}

func (x *comparison) changeRows(c contrast.Change) []changeRow {
	row := changeRow{group: x.group(c), what: verb(c), oldLine: lineOf(c.Old), newLine: lineOf(c.New)}
	if c.Kind != contrast.Changed {
		row.what += ", " + c.Kind.String()
		row.old, row.new = withoutVerb(c.Old.Text), withoutVerb(c.New.Text)
		return []changeRow{row}
	}
	var out []changeRow
	for _, p := range c.Parts {
		r := row
		r.old, r.new = partText(p.What, p.Old), partText(p.What, p.New)
		out = append(out, r)
		row.oldLine, row.newLine, row.what = 0, 0, ""
	}
	return out
}

// partText is a side of a part; one that does not stand there says so.
func partText(what, value string) string {
	if value == "" {
		return strings.TrimSpace("no " + what)
	}
	return strings.TrimSpace(what + " " + value)
}

func verb(c contrast.Change) string {
	text := c.New.Text
	if text == "" {
		text = c.Old.Text
	}
	word, _, _ := strings.Cut(text, " ")
	if c.Of != "" {
		word += " of " + c.Of
	}
	return word
}

func withoutVerb(text string) string {
	if _, rest, ok := strings.Cut(text, " "); ok {
		return rest
	}
	return text
}

// group says where a change is: in which blocks, and in which file if that is not
// the one compared.
func (x *comparison) group(c contrast.Change) string {
	text := strings.Join(c.Path, ", ")
	side, main := c.New, x.new.file
	if side.Place.File == nil {
		side, main = c.Old, x.old.file
	}
	if text == "" {
		text = "the house"
	}
	if name := side.Place.File.Name(); name != main {
		text += " (" + name + ")"
	}
	return text
}

func lineOf(s contrast.Side) int {
	if !s.Place.Known() {
		return 0
	}
	return s.Place.File.Position(s.Place.Start, source.Characters).Line
}

// whatWidth is the width of the first column; the other two share the rest.
const whatWidth = 25

func contrastText(w *World, x *comparison) error {
	p := sheet{World: w}
	if len(x.changes) == 0 {
		p.plain(x.old.name + " and " + x.new.name + " mean the same")
	} else {
		half := (p.width() - whatWidth) / 2
		p.columns3([]string{p.bold(plural(len(x.changes), "change"))}, sideCell(x.old.name, 0, half), sideCell(x.new.name, 0, half), half, p.bold)
	}
	group := ""
	for _, r := range x.rows() {
		if r.group != group {
			group = r.group
			p.line("")
			p.line("%s", words.Safe(group))
		}
		p.changeRow(r)
	}
	p.forecasts(x)
	p.findingsChanged(x)
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

// plain writes a sentence over the whole width.
func (p *sheet) plain(text string) {
	for _, l := range words.Wrap(words.Safe(text), p.width()) {
		p.line("%s", l)
	}
}

func (p *sheet) changeRow(r changeRow) {
	half := (p.width() - whatWidth) / 2
	what := words.Wrap(words.Safe(r.what), whatWidth-3)
	for i := range what {
		what[i] = "  " + what[i]
	}
	p.columns3(what, sideCell(r.old, r.oldLine, half), sideCell(r.new, r.newLine, half), half, nil)
}

// sideCell is one side of a change: its words, and the line where they stand.
func sideCell(text string, number, width int) []string {
	if text == "" {
		return []string{dash(text)}
	}
	text = words.Safe(text)
	if number == 0 {
		return words.Wrap(text, width-2)
	}
	lines, at := words.Wrap(text, width-2), fmt.Sprintf("line %d", number)
	if last := &lines[len(lines)-1]; uniseg.StringWidth(*last)+2+len(at) < width {
		*last += "  " + at
		return lines
	}
	return append(lines, at)
}

// columns3 writes three columns of lines side by side. Cells are wrapped by their
// makers; the widths are of what is seen.
func (p *sheet) columns3(what, old, new []string, half int, style func(string) string) {
	at := func(list []string, i int) string {
		if i < len(list) {
			return list[i]
		}
		return ""
	}
	for i := range max(len(what), len(old), len(new)) {
		a, b, c := at(what, i), at(old, i), at(new, i)
		pads := [2]string{padding(a, whatWidth), padding(b, half)}
		if style != nil {
			b, c = style(b), style(c)
		}
		p.line("%s", strings.TrimRight(a+pads[0]+b+pads[1]+c, " "))
	}
}

func padding(text string, width int) string {
	text = strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(text)
	return strings.Repeat(" ", max(0, width-uniseg.StringWidth(text)))
}

// forecasts writes the figures that came out differently.
func (p *sheet) forecasts(x *comparison) {
	for _, why := range x.unable {
		p.line("")
		p.plain(why)
	}
	last := ""
	for i, f := range x.figures {
		if i == 0 || f.process != last {
			last = f.process
			p.line("")
			p.line("%s", p.bold("forecast of "+words.Safe(f.process)))
		}
		p.figure(f)
	}
}

// figure writes a figure with its name, which may take a line of its own.
func (p *sheet) figure(f figure) {
	half := (p.width() - whatWidth) / 2
	name := "  " + words.Safe(f.what)
	value := f.new
	if f.more != "" {
		value += "  " + f.more
	}
	if uniseg.StringWidth(name) >= whatWidth {
		for _, l := range words.Wrap(name, p.width()-2) {
			p.line("  %s", l)
		}
		name = ""
	}
	pad := padding(name, whatWidth)
	p.line("%s", strings.TrimRight(name+pad+dash(f.old)+padding(dash(f.old), half)+dash(value), " "))
}

func dash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

func (p *sheet) findingsChanged(x *comparison) {
	if len(x.findings) == 0 {
		return
	}
	p.line("")
	p.line("%s", p.bold("findings"))
	for _, c := range x.findings {
		for i, l := range words.Wrap(c.text(), p.width()-8) {
			label := ""
			if i == 0 {
				label = c.word()
			}
			p.line("  %-6s%s", label, l)
		}
	}
}
