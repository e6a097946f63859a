package source

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLinesAreWithoutTheirEnds(t *testing.T) {
	f := New("x", []byte("\ufeffone\r\ntwo\rthree\n\nfive"))
	want := []string{"one", "two", "three", "", "five"}
	assert.Equal(t, len(want), f.Lines())
	for i, text := range want {
		assert.Equal(t, text, f.Text(f.Line(i+1)))
	}
	assert.Equal(t, Span{f.Size(), f.Size()}, f.Line(0))
	assert.Equal(t, Span{f.Size(), f.Size()}, f.Line(6))
	assert.Equal(t, 3, f.Start())
}

func TestEmptyFileHasOneEmptyLine(t *testing.T) {
	f := New("x", nil)
	assert.Equal(t, 1, f.Lines())
	assert.Equal(t, "", f.Text(f.Line(1)))
	assert.Equal(t, Position{1, 1}, f.Position(0, Characters))
}

func TestFileOfOnlyAByteOrderMarkIsEmpty(t *testing.T) {
	f := New("x", []byte("\ufeff"))
	assert.Equal(t, "", f.Text(f.Line(1)))
	assert.Equal(t, 3, f.Offset(Position{1, 1}, Characters))
}

func TestTextOutsideTheFileIsCutToIt(t *testing.T) {
	f := New("x", []byte("soak"))
	assert.Equal(t, "soak", f.Text(Span{-3, 99}))
	assert.Equal(t, "", f.Text(Span{9, 12}))
	assert.Equal(t, "", f.Text(Span{3, 1}))
}

func TestBadBytesAreFoundAsRuns(t *testing.T) {
	for text, want := range map[string][]Span{
		"13 °C 🌾":               nil,
		"13 \xb0C":              {{3, 4}},
		"a\xff\xfe\xfdb\xffc":   {{1, 4}, {5, 6}},
		"a\x00b":                {{1, 2}},
		"end \xe2\x82":          {{4, 6}},
		"\xc0\xaf overlong":     {{0, 2}},
		"\xed\xa0\x80 half":     {{0, 3}},
		"\ufffd is a character": nil,
	} {
		assert.Equal(t, want, New("x", []byte(text)).BadBytes(), "%q", text)
	}
}

func TestSpansJoinAndContain(t *testing.T) {
	assert.Equal(t, Span{2, 9}, Span{2, 4}.Join(Span{7, 9}))
	assert.Equal(t, Span{2, 4}, Span{2, 4}.Join(Span{}))
	assert.Equal(t, Span{2, 4}, Span{}.Join(Span{2, 4}))
	assert.True(t, Span{4, 4}.Empty())
}

func TestPlaceWithoutFileHasNoText(t *testing.T) {
	assert.False(t, Place{}.Known())
	assert.Equal(t, "", Place{Span: Span{0, 4}}.Text())
	p := Place{New("x", []byte("soak 7 h")), Span{5, 8}}
	assert.True(t, p.Known())
	assert.Equal(t, "7 h", p.Text())
}

func TestTheFirstAndLastLineThatHoldSomething(t *testing.T) {
	for _, c := range []struct{ text, first, last string }{
		{"", "", ""}, {"\n \n", "", ""}, {"\ufeff", "", ""}, {"a", "a", "a"}, {"\n\n a\nb\n\n", " a", "b"}, {"\ufeff\r\n# c\r\n", "# c", "# c"},
	} {
		f := New("x", []byte(c.text))
		assert.Equal(t, c.first, f.Text(f.FirstLine()), "%q", c.text)
		assert.Equal(t, c.last, f.Text(f.LastLine()), "%q", c.text)
		assert.GreaterOrEqual(t, f.FirstLine().Start, f.Start())
	}
}
