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
	if form := f.Form(); form != nil {
		return []finding.Finding{ofForm(f, form)}, false
	}
	bad := f.BadBytes()
	for i, b := range bad {
		nul := strings.IndexByte(f.Text(b), 0)
		switch {
		case nul < 0:
		case nul == 0 && i == len(bad)-1 && strings.Trim(string(f.Bytes()[b.Start:]), "\x00") == "" && i == 0:
			return []finding.Finding{fillers(f, b)}, true
		default:
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
	first := f.Bytes()[bad[0].Start]
	message := fmt.Sprintf("byte 0x%02X at offset %d is not UTF-8 text", first, bad[0].Start)
	if len(bad) > 1 {
		message += fmt.Sprintf(", the first of %d such places", len(bad))
	}
	found := notText.At(source.Place{File: f, Span: bad[0]}, message)
	if c := source.Western(first); c > 0 && bad[0].End == bad[0].Start+1 {
		found.Message = fmt.Sprintf("%s; in Windows-1252 and Latin-1 it is %c", message, c)
		found.Hint = "save the file as UTF-8: where the editor saves it, choose save as and there the encoding UTF-8"
	}
	return found
}

// ofForm is of a file that another program made, or that was saved in another encoding.
func ofForm(f *source.File, form *source.Form) finding.Finding {
	found := notText.At(source.Place{File: f, Span: form.Span}, fmt.Sprintf("this is %s, and a process file is plain text in UTF-8", form.Is))
	found.Why, found.Hint = "what it holds cannot be read as words", saveAs
	return found
}

const saveAs = "open it in the program that made it, choose save as, and there plain text with the encoding UTF-8; or copy the words into a new file of a plain text editor"

// noText is of a file with a NUL, which no UTF-8 text holds.
func noText(f *source.File, nul source.Span) finding.Finding {
	found := notText.At(source.Place{File: f, Span: nul},
		fmt.Sprintf("this is not a text file: byte 0x%02X at offset %d", f.Bytes()[nul.Start], nul.Start))
	found.Why, found.Hint = "what it holds cannot be read as words", "give a process file, which is UTF-8 text"
	return found
}

// fillers is of bytes that some program put behind the end of a text.
func fillers(f *source.File, nul source.Span) finding.Finding {
	nul.End = f.Size()
	found := hiddenCharacter.At(source.Place{File: f, Span: nul}, "empty bytes stand behind the end of the text")
	found.Hint, found.Fixes = "take them out, which changes nothing else", []finding.Edit{{Place: found.Place}}
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
			found = append(found, hiddenAt(source.Place{File: f, Span: source.Span{Start: i, End: i + size}}, r))
		}
		i += size
	}
	return found
}

// softHyphen is seen where a line breaks at it alone.
const softHyphen = '\u00ad'

// hiddenAt tells of a hidden character. One that has no width is taken out; in the place of one
// between two letters a hyphen was meant, where it is the soft one.
func hiddenAt(place source.Place, r rune) finding.Finding {
	f := hiddenCharacter.At(place, fmt.Sprintf("the hidden character U+%04X stands here", r))
	switch r {
	case softHyphen:
		f.Hint, f.Fixes = "write a hyphen in its place", []finding.Edit{{Place: place, New: "-"}}
	case '\u200b', '\u2060', '\ufeff', '\x1a', '\f':
		f.Hint, f.Fixes = "take it out: it shows nothing and says nothing", []finding.Edit{{Place: place}}
	}
	return f
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
