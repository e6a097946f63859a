package command

import (
	_ "embed"
	"html/template"
	"io"

	"maltwright/cmd/words"
)

//go:embed contrast.html
var contrastPage string

var contrastTemplate = template.Must(template.New("contrast").Parse(contrastPage))

// contrastGroup is the changes of one block, for the page.
type contrastGroup struct {
	Name string
	Rows []contrastRow
}

// contrastRow is a row of the page: a change or a figure.
type contrastRow struct {
	What, Old, New, More string
	OldLine, NewLine     int
}

type contrastFinding struct{ Word, Severity, Text string }

func contrastHTML(w *World, x *comparison) error {
	page := struct {
		Old, New, Count   string
		Changes, Forecast []contrastGroup
		Findings          []contrastFinding
		Unable            []string
	}{Old: words.Safe(x.old.name), New: words.Safe(x.new.name), Count: plural(len(x.changes), "change")}
	if len(x.changes) == 0 {
		page.Count = "no change"
	}
	for _, r := range x.rows() {
		page.Changes = grouped(page.Changes, r.group, contrastRow{r.what, r.old, r.new, "", r.oldLine, r.newLine})
	}
	for _, f := range x.figures {
		page.Forecast = grouped(page.Forecast, f.process, contrastRow{What: f.what, Old: f.old, New: f.new, More: f.more})
	}
	for _, c := range x.findings {
		page.Findings = append(page.Findings, contrastFinding{c.word(), c.f.Severity.String(), words.Safe(c.f.Message + " [" + c.f.Rule + "]")})
	}
	for _, why := range x.unable {
		page.Unable = append(page.Unable, words.Safe(why))
	}
	return contrastTemplate.Execute(io.Writer(w.Out), page)
}

// grouped adds a row to the last group, or to a new one where the name changes.
func grouped(list []contrastGroup, name string, row contrastRow) []contrastGroup {
	row.What, row.Old, row.New = words.Safe(row.What), words.Safe(row.Old), words.Safe(row.New)
	if n := len(list); n == 0 || list[n-1].Name != words.Safe(name) {
		list = append(list, contrastGroup{Name: words.Safe(name)})
	}
	last := &list[len(list)-1]
	last.Rows = append(last.Rows, row)
	return list
}
