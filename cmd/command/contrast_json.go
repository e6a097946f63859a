package command

import (
	"encoding/json"

	"maltwright/lang/contrast"
	"maltwright/lang/source"
)

// The JSON of a comparison, as docs/json.md describes it.

type jsonChange struct {
	Kind     string     `json:"kind"`
	Path     []string   `json:"path"`
	Old      string     `json:"old,omitempty"`
	New      string     `json:"new,omitempty"`
	OldPlace *jsonPlace `json:"old_place,omitempty"`
	NewPlace *jsonPlace `json:"new_place,omitempty"`
	Parts    []jsonPart `json:"parts,omitempty"`
}

type jsonPlace struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
}

type jsonPart struct {
	What string `json:"what"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

type jsonEffect struct {
	Process string  `json:"process"`
	What    string  `json:"what"`
	Old     *string `json:"old"` // null where that side has none
	New     *string `json:"new"`
}

type jsonFindingChange struct {
	Kind     string     `json:"kind"`
	Severity string     `json:"severity"`
	Rule     string     `json:"rule"`
	Message  string     `json:"message"`
	Place    *jsonPlace `json:"place,omitempty"`
}

func contrastJSON(w *World, x *comparison) error {
	out := struct {
		Changes  []jsonChange        `json:"changes"`
		Effects  []jsonEffect        `json:"effects"`
		Findings []jsonFindingChange `json:"findings"`
		Unable   []string            `json:"not_forecast,omitempty"`
	}{[]jsonChange{}, []jsonEffect{}, []jsonFindingChange{}, x.unable}
	for _, c := range x.changes {
		out.Changes = append(out.Changes, changeJSON(c))
	}
	for _, f := range x.figures {
		out.Effects = append(out.Effects, jsonEffect{f.process, f.what, unless(f.noOld, f.old), unless(f.noNew, f.new)})
	}
	for _, c := range x.findings {
		out.Findings = append(out.Findings, jsonFindingChange{c.word(), c.f.Severity.String(), c.f.Rule, c.f.Message, placeJSON(c.f.Place)})
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func changeJSON(c contrast.Change) jsonChange {
	j := jsonChange{Kind: c.Kind.String(), Path: append([]string{}, c.Path...), Old: c.Old.Text, New: c.New.Text,
		OldPlace: placeJSON(c.Old.Place), NewPlace: placeJSON(c.New.Place)}
	for _, part := range c.Parts {
		j.Parts = append(j.Parts, jsonPart(part))
	}
	return j
}

// unless gives a text, or null.
func unless(none bool, text string) *string {
	if none {
		return nil
	}
	return &text
}

func placeJSON(p source.Place) *jsonPlace {
	if !p.Known() {
		return nil
	}
	at := p.File.Position(p.Start, source.Characters)
	return &jsonPlace{source.Text(p.File.Name()), at.Line, at.Column}
}
