package golden

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Findings writes findings for an archive: the stable line of each, then the words
// it is about, its hint, other places and its repair.
func Findings(list []finding.Finding) string {
	var b strings.Builder
	for _, f := range list {
		fmt.Fprintf(&b, "%s%s: %s [%s]\n", where(f.Place), f.Severity, f.Message, f.Rule)
		line(&b, "words", shown(f.Place.Text()))
		line(&b, "do", f.Hint)
		for _, r := range f.Related {
			line(&b, "see", where(r.Place)+r.Message)
		}
		for _, e := range f.Fixes {
			line(&b, "write", e.New)
		}
	}
	return b.String()
}

// Lines writes findings a line each.
func Lines(list []finding.Finding) string {
	var b strings.Builder
	for _, f := range list {
		fmt.Fprintf(&b, "%s%s: %s [%s]\n", where(f.Place), f.Severity, source.Safe(f.Message), f.Rule)
	}
	return b.String()
}

func line(b *strings.Builder, label, text string) {
	if text != "" {
		fmt.Fprintf(b, "  %-6s%s\n", label, text)
	}
}

func where(p source.Place) string {
	if !p.Known() {
		return ""
	}
	at := p.File.Position(p.Start, source.Characters)
	return fmt.Sprintf("%s:%d:%d: ", p.File.Name(), at.Line, at.Column)
}

// shown writes the words on one line of plain text.
func shown(words string) string {
	if utf8.ValidString(words) && !strings.ContainsFunc(words, unseen) {
		return words
	}
	return fmt.Sprintf("%+q", words)
}

func unseen(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }
