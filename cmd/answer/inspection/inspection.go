// Package inspection is what check answers: findings with their places, and what could not
// be judged.
package inspection

import (
	"path/filepath"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Result is what was found. Neither list is nil.
type Result struct {
	Findings  []Finding
	NotJudged []finding.NotJudged
}

// Finding is one finding. Line and Column are 0 where it is about no words of a file.
type Finding struct {
	Stretch
	Severity string
	Rule     string
	Message  string
	Why      string `json:",omitempty"`
	Hint     string
	Related  []Related `json:",omitempty"`
	Fixes    []Edit    `json:",omitempty"`
	Offers   []Offer   `json:",omitempty"`
}

// Stretch is a stretch of a file. Lines and columns count from 1, columns in characters;
// the end is behind the last of them.
type Stretch struct {
	File               string
	Line, Column       int
	EndLine, EndColumn int
}

// Edit puts a text in the place of a stretch.
type Edit struct {
	Stretch
	New string
}

// Offer is what may have been meant: what would then stand there, and the edits that write it.
type Offer struct {
	Says  string
	Edits []Edit
}

// Related is another place that has a part in a finding.
type Related struct {
	File         string
	Line, Column int
	Message      string
}

// Of gives findings and what could not be judged, with files named from the folder.
func Of(list []finding.Finding, notJudged []finding.NotJudged, folder string) Result {
	out := Result{Findings: []Finding{}, NotJudged: []finding.NotJudged{}}
	for _, n := range notJudged {
		n.File = source.Text(n.File)
		out.NotJudged = append(out.NotJudged, n)
	}
	for _, f := range list {
		out.Findings = append(out.Findings, one(f, folder))
	}
	return out
}

func one(f finding.Finding, folder string) Finding {
	out := Finding{Stretch: stretch(f.Place, folder), Severity: f.Severity.String(), Rule: f.Rule, Message: f.Message, Why: f.Why, Hint: f.Hint}
	for _, r := range f.Related {
		if r.Place.Known() {
			at := stretch(r.Place, folder)
			out.Related = append(out.Related, Related{at.File, at.Line, at.Column, r.Message})
		}
	}
	out.Fixes = edits(f.Fixes, folder)
	for _, o := range f.Offers {
		out.Offers = append(out.Offers, Offer{o.Says, edits(o.Edits, folder)})
	}
	return out
}

func edits(list []finding.Edit, folder string) (out []Edit) {
	for _, e := range list {
		if e.Place.Known() {
			out = append(out, Edit{stretch(e.Place, folder), e.New})
		}
	}
	return out
}

func stretch(p source.Place, folder string) Stretch {
	if !p.Known() {
		return Stretch{}
	}
	from, to := p.File.Position(p.Start, source.Characters), p.File.Position(p.End, source.Characters)
	return Stretch{source.Text(Named(folder, p.File.Name())), from.Line, from.Column, to.Line, to.Column}
}

// Named is the name of a file as it is shown: from the folder where it lies below it.
func Named(folder, name string) string {
	if folder == "" || !filepath.IsAbs(name) {
		return name
	}
	if rel, err := filepath.Rel(folder, name); err == nil && !strings.HasPrefix(rel, "..") {
		return rel
	}
	return name
}
