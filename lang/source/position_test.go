package source

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestPositionCountsCharactersBytesAndUTF16(t *testing.T) {
	for _, c := range []struct {
		name, before      string // the text in front of the place asked for
		line              int
		chars, bytes, u16 int
	}{
		{"start", "", 1, 1, 1, 1},
		{"plain", "soak ", 1, 6, 6, 6},
		{"degree sign", "13 °", 1, 5, 6, 5},
		{"micro sign", "5 µ", 1, 4, 5, 4},
		{"superscript two", "0.8 m²", 1, 7, 8, 7},
		{"emoji", "# 🌾", 1, 4, 7, 5},
		{"tab is one", "\tsoak", 1, 6, 6, 6},
		{"line feed", "a\nbc", 2, 3, 3, 3},
		{"carriage return and line feed", "a\r\nbc", 2, 3, 3, 3},
		{"lone carriage return", "a\rbc", 2, 3, 3, 3},
		{"byte-order mark counts as nothing", "\ufeffab", 1, 3, 3, 3},
		{"byte-order mark then a line", "\ufeffa\nb", 2, 2, 2, 2},
		{"byte that is no text is one", "8 \xb0C", 1, 5, 5, 5},
		{"character cut short by the line's end", "\xc2\n\xe2\x82", 2, 3, 3, 3},
		{"empty lines", "\n\n\r\r\n", 5, 1, 1, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := New("x", []byte(c.before+"z°"))
			at := len(c.before)
			assert.Equal(t, Position{c.line, c.chars}, f.Position(at, Characters), "characters")
			assert.Equal(t, Position{c.line, c.bytes}, f.Position(at, Bytes), "bytes")
			assert.Equal(t, Position{c.line, c.u16}, f.Position(at, UTF16), "UTF-16")
		})
	}
}

func TestOffsetInsideACharacterCountsAsItsStart(t *testing.T) {
	f := New("x", []byte("a🌾b"))
	for offset := 1; offset < 5; offset++ {
		for _, enc := range []Encoding{Characters, Bytes, UTF16} {
			assert.Equal(t, Position{1, 2}, f.Position(offset, enc), "offset %d, encoding %d", offset, enc)
		}
	}
}

func TestPositionOutsideTheFileIsItsNearestEnd(t *testing.T) {
	f := New("x", []byte("ab\ncd"))
	assert.Equal(t, Position{1, 1}, f.Position(-5, Characters))
	assert.Equal(t, Position{2, 3}, f.Position(99, Characters))
	assert.Equal(t, 0, f.Offset(Position{0, 7}, Characters))
	assert.Equal(t, 2, f.Offset(Position{1, 99}, Characters))
	assert.Equal(t, 5, f.Offset(Position{9, 1}, Characters))
	assert.Equal(t, 0, f.Offset(Position{1, -3}, Characters))
}

func TestColumnInsideASurrogatePairIsTheCharactersStart(t *testing.T) {
	f := New("x", []byte("a🌾b"))
	assert.Equal(t, 1, f.Offset(Position{1, 2}, UTF16))
	assert.Equal(t, 1, f.Offset(Position{1, 3}, UTF16))
	assert.Equal(t, 5, f.Offset(Position{1, 4}, UTF16))
}

// pieces are what a file may hold that could put a column off.
var pieces = []string{"soak", " ", "\t", "°", "µ", "²", "🌾", "\n", "\r\n", "\r", "\ufeff", "\xb0", "\xc2", "\xf0\x9f", "\x00", "粒", "e\u0301"}

func drawText(t *rapid.T) string {
	text := ""
	for _, p := range rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 40).Draw(t, "pieces") {
		text += p
	}
	return text
}

func TestOffsetUndoesPosition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := New("x", []byte(drawText(t)))
		for line := 1; line <= f.Lines(); line++ {
			s := f.Line(line)
			for at := s.Start; at <= s.End; {
				for _, enc := range []Encoding{Characters, Bytes, UTF16} {
					p := f.Position(at, enc)
					assert.Equal(t, line, p.Line)
					assert.Equal(t, at, f.Offset(p, enc), "offset %d is %v in encoding %d", at, p, enc)
				}
				_, size := utf8.DecodeRune(f.Bytes()[at:])
				at += max(size, 1)
			}
		}
	})
}

func TestPositionsNeverGoBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := New("x", []byte(drawText(t)))
		last := Position{1, 1}
		for at := 0; at <= f.Size(); at++ {
			p := f.Position(at, Characters)
			assert.False(t, p.Line < last.Line || p.Line == last.Line && p.Column < last.Column, "%v behind %v at %d", p, last, at)
			last = p
		}
		assert.Equal(t, f.Lines(), last.Line)
	})
}

// A line that is long is counted by stones along it; what comes of it is what counting from the start of the line does.
func TestColumnsFarOutAreThoseThatCountingGives(t *testing.T) {
	pieces := []string{"a", "°", "🌾", "\xff", "\xf0\x9f", "x y z ", strings.Repeat("k", 700)}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom([]string{"", "short\n", "\ufeff", "\ufeff\n"}).Draw(t, "front")
		for _, p := range rapid.SliceOfN(rapid.SampledFrom(pieces), 30, 60).Draw(t, "line") {
			text += p
		}
		text += rapid.SampledFrom([]string{"", "\n", "\r\nend"}).Draw(t, "behind")
		f := New("x", []byte(text))
		for range 20 {
			offset := f.characterStart(rapid.IntRange(0, len(text)).Draw(t, "offset"))
			enc := rapid.SampledFrom([]Encoding{Characters, Bytes, UTF16}).Draw(t, "encoding")
			is := f.Position(offset, enc)
			start := f.Line(is.Line).Start
			if offset >= start && offset <= f.Line(is.Line).End {
				require.Equal(t, 1+width(f.text[start:offset], enc), is.Column, "%d", offset)
				require.Equal(t, offset, f.Offset(is, enc))
			}
		}
	})
}

func BenchmarkPositionsOnALongLine(b *testing.B) {
	f := New("x", []byte(strings.Repeat("soak 7 h at 13 °C; ", 50000)))
	for b.Loop() {
		for at := 0; at < f.Size(); at += 97 {
			f.Position(at, UTF16)
		}
	}
}
