package syntax

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// letters looks for characters that some program has put in the place of others. They come
// first, since nothing else can be told of a text before they are right.
func (r *signReader) letters() {
	quoted := false
	for i := 0; i < len(r.text); {
		c, n := utf8.DecodeRuneInString(r.text[i:])
		switch {
		case c == '\n' || c == '\r':
			quoted = false
		case c == '"':
			quoted = !quoted
		case c < utf8.RuneSelf:
		case c > '\uff00' && c < '\uff5f' && !quoted:
			r.add(signWide, i, i+n, string(c-'\uff00'+' '))
		case (c == '⁄' || c == '∕') && r.betweenDigits(i, n):
			r.add(signSlash, i, i+n, "/")
		case (c == '˚' || c == '∘' || c == '⁰') && i+n < len(r.text) && strings.ContainsRune("CF", rune(r.text[i+n])):
			r.add(signDegree, i, i+n, "°")
		case c == '·' && r.betweenDigits(i, n):
			r.add(signPoint, i, i+n, ".")
		default:
			if end, was := garbled(r.text[i:]); end > 0 {
				r.add(signGarbled, i, i+end, was)
				n = end
			}
		}
		i += n
	}
}

func (r *signReader) betweenDigits(at, n int) bool {
	return at > 0 && at+n < len(r.text) && isDigit(r.text[at-1]) && isDigit(r.text[at+n])
}

// garbled takes characters that come of text in UTF-8 which was read as Windows-1252, Â° of °,
// and gives what they were.
func garbled(text string) (end int, was string) {
	var bytes []byte
	for end < len(text) && len(bytes) < utf8.UTFMax {
		c, n := utf8.DecodeRuneInString(text[end:])
		b := byteOf(c)
		if b < utf8.RuneSelf {
			break
		}
		bytes = append(bytes, b)
		if end += n; utf8.Valid(bytes) {
			return end, string(bytes)
		}
	}
	return 0, ""
}

// byteOf is the byte that a character is in Windows-1252; 0 where it is none.
func byteOf(c rune) byte {
	if c >= 0x80 && c <= 0xff {
		return byte(c)
	}
	for b := 0x80; b < 0xa0; b++ {
		if source.Western(byte(b)) == c {
			return byte(b)
		}
	}
	return 0
}

var numberedLine = regexp.MustCompile(`^[ \t]*\d+[.:|)]?([ \t]|$)`)

// margins looks for what a program puts in front of every line: their numbers, or the > of a mail that
// is answered.
func (r *signReader) margins() {
	var quotes, numbers []source.Span
	for n := 1; n <= r.file.Lines(); n++ {
		line := r.file.Line(n)
		text := r.file.Text(line)
		if strings.TrimSpace(text) == "" {
			continue
		}
		if text[0] == '>' {
			quotes = append(quotes, source.Span{Start: line.Start, End: line.Start + min(len(text), len(text)-len(strings.TrimPrefix(text[1:], " ")))})
		} else {
			quotes = append(quotes, source.Span{})
		}
		digits := strings.TrimLeft(text, " \t")
		number := digits[:len(digits)-len(strings.TrimLeft(digits, "0123456789"))]
		if at := numberedLine.FindStringIndex(text); at != nil && number == strconv.Itoa(n) {
			numbers = append(numbers, source.Span{Start: line.Start, End: line.Start + at[1]})
		} else {
			numbers = append(numbers, source.Span{})
		}
	}
	for _, list := range [][]source.Span{quotes, numbers} {
		if !everywhere(list) {
			continue
		}
		for _, s := range list {
			r.add(signMargin, s.Start, s.End, "")
		}
		return
	}
}

func everywhere(list []source.Span) bool {
	for _, s := range list {
		if s.Empty() {
			return false
		}
	}
	return len(list) > 2
}

// goesOnBelow joins a line that ends with a backslash to the next.
func (r *signReader) goesOnBelow(i int) int {
	if !r.is(i, `\`) || r.tok(i+1).Type != kindEnd || terminal(r.tok(i+2).Type) {
		return i
	}
	at := r.toks[i].Pos.Offset
	at -= len(r.text[:at]) - len(strings.TrimRight(r.text[:at], blanks))
	r.said(signLine, at, r.tok(i+2).Pos.Offset, " ", `"\" does not join a line to the next`, "")
	return i + 2
}

// hyphen looks for a dash in a word of the language that has a hyphen: air–on.
func (r *signReader) hyphen(i int) int {
	front, ok := r.before(i)
	next := r.tok(i + 1)
	if t := r.toks[i]; !ok || t.Type != kindStray || !strings.Contains("–—‐‑−", t.Value) || endOf(front) != t.Pos.Offset || next.Pos.Offset != endOf(t) {
		return i
	}
	if _, place := vocabulary.FindPlace(front.Value + "-" + next.Value); !place && len(vocabulary.Homes(front.Value+"-"+next.Value)) == 0 {
		return i
	}
	r.add(signHyphen, r.toks[i].Pos.Offset, endOf(r.toks[i]), "-")
	return i + 2
}

var degreeDash = regexp.MustCompile(`^[\d.]+[ \t]*(?:°|º|%)[CF]?([ \t]*-[ \t]*)\d`)

// degreeRange looks for the dash of a range that stands right behind a degree: 14°-17°C.
func (r *signReader) degreeRange(i int) int {
	t := r.toks[i]
	m := degreeDash.FindStringSubmatchIndex(t.Value)
	if t.Type != kindQuantity || m == nil {
		return i
	}
	r.add(signRange, t.Pos.Offset+m[2], t.Pos.Offset+m[3], " "+vocabulary.To+" ")
	return i + 1
}
