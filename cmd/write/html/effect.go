// Package html writes answers as pages that need nothing else. Whatever comes from a file
// is escaped, and its controls are written out.
package html

import (
	_ "embed"
	"io"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/words"
	"maltwright/cmd/write/fill"
)

//go:embed effect.html
var effectPage string

var effectTemplate = fill.New(nil, effectPage)

// group is the rows that stand under one head.
type group struct {
	Name string
	Rows []row
}

// row is a row of the page: a change or a figure.
type row struct {
	What, Old, New, More string
	OldLine, NewLine     int
}

type found struct{ Word, Severity, Text string }

// whole is all that the page asks for.
type whole struct {
	Old, New, Count   string
	Changes, Forecast []group
	Findings          []found
	Unable            []string
}

// Effect writes what changed, and what the forecasts make of it, in the units of a house.
func Effect(w io.Writer, r effect.Result, h words.House) error {
	filled := whole{Old: words.Safe(r.Old), New: words.Safe(r.New), Count: words.Plural(len(r.Changes), "change")}
	if len(r.Changes) == 0 {
		filled.Count = "no change"
	}
	for _, c := range words.ChangeRows(r) {
		filled.Changes = grouped(filled.Changes, c.Group, row{c.What, c.Old, c.New, "", c.OldLine, c.NewLine})
	}
	for _, e := range r.Effects {
		for _, f := range h.EffectRows(e) {
			filled.Forecast = grouped(filled.Forecast, e.Process, row{What: f.What, Old: f.Old, New: f.New, More: f.More})
		}
	}
	for _, f := range words.CameRows(r.Findings) {
		filled.Findings = append(filled.Findings, found{f.Kind, f.Severity, f.Text})
	}
	for _, why := range words.NotForecast(r) {
		filled.Unable = append(filled.Unable, words.Safe(why))
	}
	return effectTemplate.Write(w, filled)
}

// grouped adds a row to the last group, or to a new one where the name changes.
func grouped(list []group, name string, r row) []group {
	r.What, r.Old, r.New = words.Safe(r.What), words.Safe(r.Old), words.Safe(r.New)
	if n := len(list); n == 0 || list[n-1].Name != words.Safe(name) {
		list = append(list, group{Name: words.Safe(name)})
	}
	last := &list[len(list)-1]
	last.Rows = append(last.Rows, r)
	return list
}
