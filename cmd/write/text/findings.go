package text

import (
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"

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
// to do. Why a rule is there is told with the first of its findings.
func Findings(w io.Writer, list []finding.Finding, o Options) error {
	told := map[[2]string]bool{}
	for i, f := range list {
		if i > 0 {
			fmt.Fprintln(w)
		}
		why := [2]string{f.Rule, f.Why}
		if told[why] {
			f.Why = ""
		}
		told[why] = true
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
	front, shown := fmt.Sprintf("%s%s:", where, f.Severity), fmt.Sprintf("%s%s:", where, p.severity(f.Severity))
	for i, line := range headLines(front, head+" ["+f.Rule+"]", o) {
		said, rule := line, ""
		if before, whole := strings.CutSuffix(line, "["+f.Rule+"]"); whole {
			said, rule = strings.TrimSuffix(before, " "), line[len(strings.TrimSuffix(before, " ")):]
		}
		if i == 0 {
			b.WriteString(strings.TrimSuffix(shown+" "+p.bold(said)+rule, " ") + "\n")
			continue
		}
		b.WriteString(margin + p.bold(said) + rule + "\n")
	}
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

// headLines gives the lines of what a finding says behind its front. On a terminal they are folded
// to its width; for a program that reads them, or a search, they are one.
func headLines(front, said string, o Options) []string {
	if o.Width == 0 {
		return []string{said}
	}
	// the front stands for itself, so that no line is broken in a name with blanks; and it has no margin
	held := strings.Repeat("x", max(1, uniseg.StringWidth(front)-len(margin)))
	lines := words.Wrap(held+" "+said, o.width()-len(margin))
	lines[0] = strings.TrimPrefix(strings.TrimPrefix(lines[0], held), " ")
	return lines
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
