package report

import (
	"encoding/json"
	"io"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// jsonFinding is one finding as docs/json.md describes it. Lines and columns count
// from 1, columns in characters; the end is behind the last character.
type jsonFinding struct {
	File      string        `json:"file"`
	Line      int           `json:"line"`
	Column    int           `json:"column"`
	EndLine   int           `json:"end_line"`
	EndColumn int           `json:"end_column"`
	Severity  string        `json:"severity"`
	Rule      string        `json:"rule"`
	Message   string        `json:"message"`
	Why       string        `json:"why,omitempty"`
	Hint      string        `json:"hint"`
	Related   []jsonRelated `json:"related,omitempty"`
	Fixes     []jsonEdit    `json:"fixes,omitempty"`
}

// jsonEdit replaces what stands between two places by a text.
type jsonEdit struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"end_line"`
	EndColumn int    `json:"end_column"`
	New       string `json:"new"`
}

type jsonRelated struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Message string `json:"message"`
}

// NotJudged is something that could not be looked at, and why.
type NotJudged struct {
	File    string `json:"file"`
	Process string `json:"process,omitempty"` // its name, where it is of one process
	Rule    string `json:"rule"`
	Reason  string `json:"reason"`
}

// JSON writes the findings and what could not be judged as one object.
func JSON(w io.Writer, list []finding.Finding, notJudged []NotJudged, o Options) error {
	out := struct {
		Findings  []jsonFinding `json:"findings"`
		NotJudged []NotJudged   `json:"not_judged"`
	}{make([]jsonFinding, 0, len(list)), slices.Clone(notJudged)}
	if out.NotJudged == nil {
		out.NotJudged = []NotJudged{}
	}
	for i := range out.NotJudged {
		out.NotJudged[i].File = Name(out.NotJudged[i].File)
	}
	for _, f := range list {
		out.Findings = append(out.Findings, o.json(f))
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func (o Options) json(f finding.Finding) jsonFinding {
	j := jsonFinding{Severity: f.Severity.String(), Rule: f.Rule, Message: f.Message, Why: f.Why, Hint: f.Hint}
	if p := f.Place; p.Known() {
		from, to := p.File.Position(p.Start, source.Characters), p.File.Position(p.End, source.Characters)
		j.File, j.Line, j.Column, j.EndLine, j.EndColumn = Name(o.name(p.File.Name())), from.Line, from.Column, to.Line, to.Column
	}
	for _, r := range f.Related {
		if r.Place.Known() {
			at := r.Place.File.Position(r.Place.Start, source.Characters)
			j.Related = append(j.Related, jsonRelated{Name(o.name(r.Place.File.Name())), at.Line, at.Column, r.Message})
		}
	}
	for _, e := range f.Fixes {
		if p := e.Place; p.Known() {
			from, to := p.File.Position(p.Start, source.Characters), p.File.Position(p.End, source.Characters)
			j.Fixes = append(j.Fixes, jsonEdit{Name(o.name(p.File.Name())), from.Line, from.Column, to.Line, to.Column, e.New})
		}
	}
	return j
}
