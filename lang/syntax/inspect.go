package syntax

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// maxBadBytes is how many places of bad bytes a text may have and still be read.
const maxBadBytes = 20

// inspect looks at the file as bytes, before it is read as words, and tells
// whether it is worth reading.
func inspect(f *source.File) (found []finding.Finding, readable bool) {
	if f.Size() > source.MaxBytes {
		whole := source.Place{File: f, Span: f.FirstLine()}
		return []finding.Finding{fileTooLarge.At(whole,
			fmt.Sprintf("the file has more than %d MiB, which is the most", source.MaxBytes>>20))}, false
	}
	bad := f.BadBytes()
	for _, b := range bad {
		if nul := strings.IndexByte(f.Text(b), 0); nul >= 0 {
			b.Start += nul
			return []finding.Finding{noText(f, b)}, false
		}
	}
	if len(bad) > 0 {
		found = append(found, badBytes(f, bad))
	}
	if len(bad) > maxBadBytes {
		return found, false
	}
	found = append(found, hidden(f)...)
	return found[:min(len(found), maxFindings/2)], true
}

// badBytes is told at the first place for all of them: their cause is one, the
// encoding in which the file was saved.
func badBytes(f *source.File, bad []source.Span) finding.Finding {
	message := fmt.Sprintf("byte 0x%02X at offset %d is not UTF-8 text", f.Bytes()[bad[0].Start], bad[0].Start)
	if len(bad) > 1 {
		message += fmt.Sprintf(", the first of %d such places", len(bad))
	}
	return notText.At(source.Place{File: f, Span: bad[0]}, message)
}

// noText is of a file with a NUL, which no UTF-8 text holds. Two bytes at its
// beginning tell the other Unicode encoding that editors offer.
func noText(f *source.File, nul source.Span) finding.Finding {
	if mark := string(f.Bytes()[:min(2, f.Size())]); mark == "\xff\xfe" || mark == "\xfe\xff" {
		return notText.At(source.Place{File: f, Span: source.Span{End: 2}}, "this file is UTF-16 text, and a process file is UTF-8")
	}
	found := notText.At(source.Place{File: f, Span: nul},
		fmt.Sprintf("this is not a text file: byte 0x%02X at offset %d", f.Bytes()[nul.Start], nul.Start))
	found.Why, found.Hint = "what it holds cannot be read as words", "give a process file, which is UTF-8 text"
	return found
}

// joiner holds the parts of one emoji together; it turns nothing and hides nothing.
const joiner = '\u200d'

// hidden finds control characters and those that turn the direction of writing.
func hidden(f *source.File) (found []finding.Finding) {
	text := f.Bytes()
	for i := f.Start(); i < len(text) && len(found) < maxFindings/2; {
		if c := text[i]; c >= ' ' && c < 0x7f || c == '\n' || c == '\r' || c == '\t' {
			i++
			continue
		}
		r, size := utf8.DecodeRune(text[i:])
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) && r != joiner {
			found = append(found, hiddenCharacter.At(source.Place{File: f, Span: source.Span{Start: i, End: i + size}},
				fmt.Sprintf("the hidden character U+%04X stands here", r)))
		}
		i += size
	}
	return found
}

// unclosed notes quoted names that are not closed on their line.
func (p *parser) unclosed(s *Statement) {
	for _, t := range s.Terms {
		p.unclosedTerm(t)
	}
	for _, c := range s.Clauses {
		for _, t := range c.Terms {
			p.unclosedTerm(t)
		}
	}
}

func (p *parser) unclosedTerm(t Term) {
	if b, ok := t.(Bounded); ok {
		t = b.Value
	}
	text, ok := t.(Text)
	if !ok {
		return
	}
	if _, closed := quoteEnd(p.file.Text(text.Span), 0); !closed {
		p.note(unclosedText.At(p.place(text.Span), "this name is not closed on its line"))
	}
}
