package talk

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// names is what keys are called, and what they type where that is something else.
func names(keys []key) (out []string) {
	for _, k := range keys {
		if k.name == pasted {
			k.name = pasted + " " + k.text
		}
		out = append(out, k.name)
	}
	return out
}

func TestKeysOfATerminal(t *testing.T) {
	for _, c := range []struct{ sent, want string }{
		{"1°?", "1|°|?"},
		{"\r\n\t\x7f\x08\x03\x04", "enter|ctrl+j|tab|backspace|ctrl+h|ctrl+c|ctrl+d"},
		{"\x01\x02\x05\x06\x0b\x0e\x10\x15", "ctrl+a|ctrl+b|ctrl+e|ctrl+f|ctrl+k|ctrl+n|ctrl+p|ctrl+u"},
		{"\x1b[A\x1b[B\x1b[C\x1b[D\x1b[H\x1b[F", "up|down|right|left|home|end"},
		{"\x1bOA\x1bOB\x1bOC\x1bOD\x1bOH\x1bOF", "up|down|right|left|home|end"},
		{"\x1b[1~\x1b[4~\x1b[7~\x1b[8~\x1b[3~\x1b[Z", "home|end|home|end|delete|shift+tab"},
		{"\x1b", "esc"},
		{"\x1b\x1b", "esc|esc"},
		{"\x1b\x03", "esc|ctrl+c"},
		{"\x1b[200~12 °C\nand\x1b[A\x1b[201~x", "paste 12 °C\nand\x1b[A|x"},
		{"\x1b[200~\xff12\x1b[201~", "paste 12"},
		{"\x1b[200~its end does not come", "paste its end does not come"},
		{"\x1bx\x1bü\x1b\x7f\x1b\x1b[A5", "5"},            // with the Alt key
		{"\x1b[15~\x1bOP\x1b[1;5A\x1b[[A\x1b[2;3R5", "5"}, // function keys, and what was not asked for
		{"\x1b[1;\r5", "enter|5"},                         // broken off
		{"\xff\xfe5\xc2", "5"},
		{"\x00\x1c", ""},
	} {
		for cut := range len(c.sent) { // in two pieces, wherever they end
			var k keyboard
			got := append(k.take([]byte(c.sent[:cut])), k.take([]byte(c.sent[cut:]))...)
			for k.patience() > 0 {
				got = append(got, k.late()...)
			}
			assert.Equal(t, c.want, strings.Join(names(got), "|"), "%q, %d bytes first", c.sent, cut)
		}
	}
}

func TestEscapeIsTakenOnceNothingFollows(t *testing.T) {
	var k keyboard
	assert.Empty(t, k.take([]byte("\x1b")))
	assert.Positive(t, k.patience())
	assert.Equal(t, []string{"up"}, names(k.take([]byte("[A"))))
	assert.Zero(t, k.patience())
}

// Whatever comes, in whatever pieces, ends in keys; and no letter is lost that is not part of one.
func TestNoBytesAreTooMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var k keyboard
		for _, piece := range rapid.SliceOf(rapid.SliceOf(rapid.OneOf(rapid.Byte(), rapid.SampledFrom([]byte("\x1b\x1b[[O1;2~0A\xc2"))))).Draw(t, "pieces") {
			k.take(piece)
		}
		k.late()
		assert.Empty(t, k.rest)
		text := rapid.StringOf(rapid.RuneFrom(nil, unicode.PrintRanges...)).Filter(utf8.ValidString).Draw(t, "text")
		at := rapid.IntRange(0, len(text)).Draw(t, "at")
		var typed strings.Builder
		for _, key := range append(k.take([]byte(text[:at])), k.take([]byte(text[at:]))...) {
			typed.WriteString(key.text)
		}
		assert.Equal(t, text, typed.String())
	})
}

// Of a paste that is far too long the begin is kept, and what comes behind it is heard.
func TestALongPasteEnds(t *testing.T) {
	var k keyboard
	got := k.take([]byte(pasteBegin + "first "))
	for range 1000 {
		got = append(got, k.take([]byte(strings.Repeat("malt ", 200)))...)
		assert.LessOrEqual(t, len(k.rest), mostKept)
	}
	got = append(got, append(k.take([]byte(pasteEnd[:3])), k.take([]byte(pasteEnd[3:]+"\r"))...)...)
	assert.Len(t, got, 2)
	assert.True(t, strings.HasPrefix(got[0].text, "first malt "))
	assert.Equal(t, "enter", got[1].name)
}
