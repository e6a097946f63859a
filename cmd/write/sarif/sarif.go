// Package sarif writes findings as SARIF 2.1.0 (OASIS standard, errata 01), which code
// hosts and editors read.
//
// One run holds every rule with its help, the findings as results,
// and what could not be judged as notifications of the one invocation. Columns are
// UTF-16 code units, the standard's default, and said aloud; files are named from
// the folder that check was run in. Danger and fault are errors there, and keep
// their own words among the properties.
package sarif

import (
	"encoding/json"
	"io"
	"net/url"
	"path/filepath"
	"strings"

	"maltwright/cmd/answer/inspection"
	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Tool is what SARIF says of the program that found it.
type Tool struct {
	Version string
	Rules   []finding.Rule
}

const (
	sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
	sarifRoot   = "SRCROOT" // the folder that check was run in
)

// Write writes findings as one log. Files are named from the folder.
func Write(w io.Writer, list []finding.Finding, notJudged []finding.NotJudged, tool Tool, folder string) error {
	s := log{folder: folder, index: map[string]int{}}
	run := sarifRun{ColumnKind: "utf16CodeUnits", Results: make([]sarifResult, 0, len(list)),
		Tool:  sarifTool{sarifDriver{Name: "maltwright", Version: tool.Version, Rules: make([]sarifRule, 0, len(tool.Rules))}},
		Bases: map[string]sarifBase{sarifRoot: {sarifText{Text: "the folder in which maltwright was run"}}}}
	for i, r := range tool.Rules {
		s.index[r.Name] = i
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, ruleOf(r))
	}
	for _, f := range list {
		run.Results = append(run.Results, s.result(f))
	}
	run.Invocations = []sarifInvocation{{Successful: true, Notes: s.notifications(notJudged)}}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{run}})
}

var sarifLevels = map[finding.Severity]string{
	finding.Danger: "error", finding.Fault: "error", finding.Caution: "warning", finding.Note: "note",
}

func ruleOf(r finding.Rule) sarifRule {
	return sarifRule{ID: r.Name, Short: sarifText{Text: sentence(r.Title)}, Full: sarifText{Text: sentence(r.Why)},
		Help:          sarifHelp{Text: helpText(r, "", ""), Markdown: helpText(r, "**", "`")},
		Configuration: sarifConfiguration{sarifLevels[r.Severity]}, Properties: map[string]string{"severity": r.Severity.String()}}
}

// helpText is the rule's whole page, with strong words and code marked.
func helpText(r finding.Rule, strong, code string) string {
	var parts []string
	for _, p := range []struct{ label, text string }{
		{"When", r.Title}, {"Why", r.Why}, {"Do", r.Do}, {"Limits", r.Limits},
	} {
		if p.text != "" {
			parts = append(parts, strong+p.label+":"+strong+" "+p.text)
		}
	}
	for _, p := range []struct{ label, text string }{{"Not so", r.Bad}, {"But so", r.Good}} {
		if p.text != "" {
			parts = append(parts, strong+p.label+":"+strong, fenced(p.text, code))
		}
	}
	return strings.Join(parts, "\n\n")
}

func fenced(text, code string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = source.Safe(lines[i])
	}
	text = strings.Join(lines, "\n")
	if code == "" {
		return text
	}
	fence := strings.Repeat(code, 3)
	return fence + "\n" + text + "\n" + fence
}

// log knows how to write places, and where each rule stands.
type log struct {
	folder string
	index  map[string]int
}

func (s log) result(f finding.Finding) sarifResult {
	r := sarifResult{Rule: f.Rule, Level: sarifLevels[f.Severity], Message: message(f),
		Properties: map[string]string{"severity": f.Severity.String()}}
	if i, ok := s.index[f.Rule]; ok {
		r.Index = &i
	}
	if f.Why != "" {
		r.Properties["why"] = source.Safe(f.Why)
	}
	if f.Place.Known() {
		r.Locations = []sarifLocation{{Physical: s.place(f.Place)}}
	}
	for _, rel := range f.Related {
		if rel.Place.Known() {
			id := len(r.Related)
			r.Related = append(r.Related, sarifLocation{ID: &id, Physical: s.place(rel.Place), Message: &sarifText{Text: literal(source.Safe(rel.Message))}})
		}
	}
	if len(f.Fixes) > 0 {
		r.Fixes = []sarifFix{s.fix(f.Hint, f.Fixes)}
	}
	for _, o := range f.Offers {
		r.Fixes = append(r.Fixes, s.fix("if this is meant: "+o.Says, o.Edits))
	}
	return r
}

// message is the sentence, and what to do.
func message(f finding.Finding) sarifText {
	text := sentence(f.Message)
	if f.Hint != "" {
		text += " " + sentence(f.Hint)
	}
	return sarifText{Text: literal(text)}
}

// sentence makes a sentence of a finding's words.
func sentence(text string) string {
	text = source.Safe(text)
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".?!{") {
		return text
	}
	return text + "."
}

// literal doubles braces, which in a message of SARIF mark placeholders.
func literal(text string) string { return strings.NewReplacer("{", "{{", "}", "}}").Replace(text) }

// fix is a set of edits that are made together, and what they do.
func (s log) fix(says string, edits []finding.Edit) sarifFix {
	fix := sarifFix{Description: sarifText{Text: literal(sentence(says))}}
	at := map[string]int{}
	for _, e := range edits {
		if !e.Place.Known() {
			continue
		}
		name := e.Place.File.Name()
		i, ok := at[name]
		if !ok {
			i = len(fix.Changes)
			at[name] = i
			fix.Changes = append(fix.Changes, sarifChange{Artifact: s.artifact(name)})
		}
		fix.Changes[i].Replacements = append(fix.Changes[i].Replacements, sarifReplacement{region(e.Place), sarifText{Text: e.New}})
	}
	return fix
}

func (s log) place(p source.Place) *sarifPhysical {
	return &sarifPhysical{Artifact: s.artifact(p.File.Name()), Region: region(p)}
}

func region(p source.Place) *sarifRegion {
	from, to := p.File.Position(p.Start, source.UTF16), p.File.Position(p.End, source.UTF16)
	return &sarifRegion{from.Line, from.Column, to.Line, to.Column}
}

// artifact names a file: from the folder that check was run in where it lies below
// it, as a file address where it does not.
func (s log) artifact(name string) sarifArtifact {
	name = inspection.Named(s.folder, name)
	if filepath.IsAbs(name) {
		path := filepath.ToSlash(name)
		if !strings.HasPrefix(path, "/") { // a drive of Windows
			path = "/" + path
		}
		return sarifArtifact{URI: (&url.URL{Scheme: "file", Path: path}).String()}
	}
	return sarifArtifact{URI: (&url.URL{Path: filepath.ToSlash(filepath.Clean(name))}).String(), Base: sarifRoot}
}

// notifications say what could not be judged.
func (s log) notifications(list []finding.NotJudged) []sarifNotification {
	notes := []sarifNotification{}
	for _, n := range list {
		note := sarifNotification{Level: "note", Message: sarifText{Text: literal(sentence("not judged: " + n.Rule + ", because " + n.Reason))},
			Locations: []sarifLocation{{Physical: &sarifPhysical{Artifact: s.artifact(n.File)}}}}
		if i, ok := s.index[n.Rule]; ok {
			note.Rule = &sarifReference{n.Rule, i}
		}
		notes = append(notes, note)
	}
	return notes
}
