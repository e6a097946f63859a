package pdf

import (
	"fmt"
	"go/format"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/norm"

	"maltwright/lang/source/golden"
)

// has is what both fonts have, of what can be read.
func has(t *testing.T) func(r rune) bool {
	t.Helper()
	var fonts []*sfnt.Font
	for _, b := range [][]byte{goregular.TTF, gobold.TTF} {
		f, err := sfnt.Parse(b)
		require.NoError(t, err)
		fonts = append(fonts, f)
	}
	return func(r rune) bool {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Co, r) {
			return false
		}
		for _, f := range fonts {
			var b sfnt.Buffer
			if glyph, err := f.GlyphIndex(&b, r); err != nil || glyph == 0 {
				return false
			}
		}
		return true
	}
}

// coverage.go says what the fonts have, so that the program need not read it out of them.
func TestTheLettersAreThoseOfTheFonts(t *testing.T) {
	has := has(t)
	var table, pairs strings.Builder
	for r := rune(0); r <= 0xFFFF; r++ {
		if !has(r) {
			continue
		}
		end := r
		for has(end + 1) {
			end++
		}
		fmt.Fprintf(&table, "\t\t{Lo: 0x%04X, Hi: 0x%04X, Stride: 1},\n", r, end)
		for ; r <= end; r++ {
			if apart := norm.NFD.String(string(r)); apart != string(r) && norm.NFC.String(apart) == string(r) {
				fmt.Fprintf(&pairs, "\t%+q: %q,\n", apart, string(r))
			}
		}
	}
	text, err := format.Source([]byte(`package pdf

import "unicode"

// letters are those that both fonts have.
var letters = &unicode.RangeTable{
	R16: []unicode.Range16{
` + table.String() + `	},
	LatinOffset: 2,
}

// composed are letters that the fonts have, by how they are written with marks of their own.
var composed = map[string]string{
` + pairs.String() + "}\n"))
	require.NoError(t, err)
	golden.File(t, "coverage.go", string(text))
}

func TestNoLetterLiesBeyondTheTable(t *testing.T) {
	has := has(t)
	for r := rune(0x10000); r <= unicode.MaxRune; r += 7 { // fpdf knows none of these
		assert.False(t, has(r), "%U", r)
	}
	for r := rune(0); r <= 0xFFFF; r++ {
		assert.Equal(t, has(r), unicode.Is(letters, r), "%U", r)
	}
}
