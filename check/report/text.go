// Package report writes findings for people and for programs.
//
// Three forms: text shows each finding with the words it is about, why it
// matters and what to do; lines gives one stable line a finding; json is for
// programs. Whatever came from a source file is made safe first: no control or
// direction character of a file ever reaches the terminal as it is.
package report

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Options say how to write. The zero value is plain text, 80 columns wide.
type Options struct {
	Width  int    // columns; 0 is 80
	Colour bool   // whether to use colours and underlining of the terminal
	Folder string // file names are shown relative to it where they lie below it
}

const (
	defaultWidth = 80
	leastWidth   = 40
	margin       = "      " // in front of the words of the file
)

func (o Options) width() int {
	if o.Width == 0 {
		return defaultWidth
	}
	return max(o.Width, leastWidth)
}

// Text writes the findings for a reader.
func Text(w io.Writer, list []finding.Finding, o Options) error {
	for i, f := range list {
		if i > 0 {
			fmt.Fprintln(w)
		}
		if _, err := io.WriteString(w, oneText(f, o)); err != nil {
			return err
		}
	}
	return nil
}

func oneText(f finding.Finding, o Options) string {
	var b strings.Builder
	p := paint{o.Colour}
	where, head := o.where(f.Place), Safe(f.Message)
	if where != "" {
		where += ": "
	}
	first := fmt.Sprintf("%s%s: %s [%s]", where, p.severity(f.Severity), p.bold(head), f.Rule)
	b.WriteString(first + "\n")
	if f.Place.Known() && !f.Place.Empty() {
		b.WriteString(excerpt(f.Place, o))
	}
	field(&b, p, "why", f.Why, o)
	field(&b, p, "do", f.Hint, o)
	for _, r := range f.Related {
		field(&b, p, "see", strings.TrimSpace(o.where(r.Place)+"  "+r.Message), o)
	}
	return b.String()
}

// where gives file:line:column, counted in characters.
func (o Options) where(p source.Place) string {
	if !p.Known() {
		return ""
	}
	at := p.File.Position(p.Start, source.Characters)
	return fmt.Sprintf("%s:%d:%d", Safe(o.name(p.File.Name())), at.Line, at.Column)
}

func (o Options) name(name string) string {
	if o.Folder == "" || !filepath.IsAbs(name) {
		return name
	}
	if rel, err := filepath.Rel(o.Folder, name); err == nil && !strings.HasPrefix(rel, "..") {
		return rel
	}
	return name
}

// field writes one labelled paragraph, wrapped to the width.
func field(b *strings.Builder, p paint, label, text string, o Options) {
	if text == "" {
		return
	}
	const indent = 10
	for i, line := range Wrap(Safe(text), o.width()-indent) {
		if i > 0 {
			label = ""
		}
		fmt.Fprintf(b, "%s%s%s\n", margin, p.faint(fmt.Sprintf("%-4s", label)), line)
	}
}

// Lines writes one stable line a finding.
func Lines(w io.Writer, list []finding.Finding, o Options) error {
	for _, f := range list {
		where := o.where(f.Place)
		if where != "" {
			where += ": "
		}
		if _, err := fmt.Fprintf(w, "%s%s: %s [%s]\n", where, f.Severity, Safe(f.Message), f.Rule); err != nil {
			return err
		}
	}
	return nil
}
