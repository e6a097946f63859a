package syntax

import (
	"unicode/utf8"

	"maltwright/lang/source"
)

// Inner is the place of a text of a file without its quotes. One that is not closed on its line has only
// that in front.
func (t Text) Inner(f *source.File) source.Span {
	written, s := f.Text(t.Span), t.Span
	_, size := utf8.DecodeRuneInString(written)
	s.Start += size
	if _, closed := quoteEnd(written, 0); closed {
		_, n := utf8.DecodeLastRuneInString(written)
		s.End -= n
	}
	s.End = max(s.Start, s.End)
	return s
}
