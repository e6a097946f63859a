package text

import (
	"fmt"
	"io"
	"strings"

	"maltwright/cmd/answer/inspection"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// margin stands in front of the words of the file.
const margin = "      "

func (o Options) width() int {
	if o.Width == 0 {
		return usualWidth
	}
	return max(o.Width, leastWidth)
}

// Findings writes findings for a reader: the words each is about, why it matters and what
// to do.
func Findings(w io.Writer, list []finding.Finding, o Options) error {
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
	where, head := o.where(f.Place), words.Safe(f.Message)
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
	return fmt.Sprintf("%s:%d:%d", words.Safe(inspection.Named(o.Folder, p.File.Name())), at.Line, at.Column)
}

// field writes one labelled paragraph, wrapped to the width.
func field(b *strings.Builder, p paint, label, text string, o Options) {
	if text == "" {
		return
	}
	const indent = 10
	for i, line := range words.Wrap(words.Safe(text), o.width()-indent) {
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
		if _, err := fmt.Fprintf(w, "%s%s: %s [%s]\n", where, f.Severity, words.Safe(f.Message), f.Rule); err != nil {
			return err
		}
	}
	return nil
}
