// Package report is what stands in a report of a batch, of several, or of a process: for whoever buys the malt,
// inspects the house, or comes back to it years later. It is content alone, in words and shown numbers; how
// it is laid out is for those that write it.
//
// It hides nothing: what is in doubt, what was done otherwise and what is not known stand in it, and each figure
// says how it was come by. It asks no clock: the same answers give the same report.
package report

import (
	"time"

	"maltwright/cmd/chart"
)

// Report is pages, each of a batch or a process, and of several a first one of all.
type Report struct {
	Title  string
	Pages  []Page
	Notice []string // what it is not; it stands on every page
	Letter bool     // letter paper is what its house has; otherwise A4
}

// Page is what is said of one thing.
type Page struct {
	Title, Sub string
	AsOf       string // as of when it is so; "" of a process
	Doubt      string // the gravest doubt, below its title; mostly ""
	Blocks     []Block
}

// Block is one of Facts, Table, Text, Figure and Found.
type Block interface{ block() }

// Facts are names with what is known of them.
type Facts struct {
	Head string
	List []Fact
}

// Fact is one of them. Standing is how it was come by: measured, forecast; "" where that goes without saying.
type Fact struct{ Name, Value, Standing string }

// Table has rows below heads. A row of one cell begins a group.
type Table struct {
	Head    string
	Columns []Column
	Rows    [][]string
	Notes   []string
}

// Column is that of a table.
type Column struct {
	Head  string
	Right bool // its cells are figures
}

// Text is paragraphs, or a list of them.
type Text struct {
	Head  string
	Lines []string
	List  bool
}

// Figure is a chart.
type Figure struct{ Chart Drawing }

// Drawing is a chart.Chart or chart.Bars.
type Drawing interface {
	Lay(chart.Options, chart.Measure) *chart.Drawing
	Tables() []chart.Table
}

// Found are findings, the worst first.
type Found struct {
	Head string
	List []Finding
	None string // what is said where there is none
}

// Finding is one of them.
type Finding struct{ Severity, Text, Do, Rule string }

func (Facts) block()  {}
func (Table) block()  {}
func (Text) block()   {}
func (Figure) block() {}
func (Found) block()  {}

// notice says what a report is not.
var notice = []string{
	"This is the maltster's own account, set out by a program from the record. It is no certificate of analysis: only a figure that names its laboratory method was found by one.",
	"Measured is what a scale, a thermometer or a count showed. Reckoned follows from what was measured, by the forecast that agrees best with it. Forecast is what the model expects, and was not measured.",
}

const (
	dayAndTime = "Monday 2 January 2006, 15:04"
	shortTime  = "Mon 2 Jan 15:04"
)

// New makes a report of pages; of several batches the page of all stands first.
func New(title string, pages ...Page) Report {
	return Report{Title: title, Pages: pages, Notice: notice}
}

// Planned makes a report of a process, in which nothing was measured.
func Planned(p Page) Report {
	return Report{Title: p.Title, Pages: []Page{p}, Notice: []string{
		"This is the forecast of a process as it is written, by a model: nothing in it was measured but what the house says of its lot. It is no certificate of analysis, and a plan, not a promise."}}
}

// asOf says of when a page is.
func asOf(at time.Time, why string) string {
	if at.IsZero() {
		return ""
	}
	text := "as of " + at.Format(dayAndTime)
	if why != "" {
		text += ", " + why
	}
	return text
}

// add appends a block that says something.
func (p *Page) add(b Block) {
	switch b := b.(type) {
	case Facts:
		if len(b.List) == 0 {
			return
		}
	case Table:
		if len(b.Rows) == 0 {
			return
		}
	case Text:
		if len(b.Lines) == 0 {
			return
		}
	}
	p.Blocks = append(p.Blocks, b)
}

// tell adds a fact, where there is one.
func (f *Facts) tell(name, value, standing string) {
	if value != "" {
		f.List = append(f.List, Fact{name, value, standing})
	}
}
