package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
)

func TestALineThatNobodyTypedIsNotSearchedForSigns(t *testing.T) {
	for _, end := range []string{"\n", "\r\n", "\r"} {
		line := strings.Repeat("soak: 8 h; ", longestSigned/len("soak: 8 h; "))
		_, ok := Signs(source.New("a.malt", []byte("process \"a\" {"+end+line+end+"}"+end)))
		assert.True(t, ok, "one within the bound is: %q", end)
		_, ok = Signs(source.New("a.malt", []byte("process \"a\" {"+end+line+line+end+"}"+end)))
		assert.False(t, ok, "%q", end)
	}
}

func TestTheLongestLine(t *testing.T) {
	for text, want := range map[string]int{"": 0, "\n": 0, "abc": 3, "a\r\nbcd\re": 3, "a\n\nbcde": 4, "bcde\nabc\n": 4} {
		assert.Equal(t, want, longestLine([]byte(text)), "%q", text)
	}
}

// A quote that nothing closes is looked for to the end of its line, behind every one that opens.
func BenchmarkQuotesThatNothingCloses(b *testing.B) {
	line := strings.Repeat("'a ", longestSigned/len("'a ")) + "\n"
	f := source.New("a.malt", []byte(strings.Repeat(line, largestSigned/len(line))))
	for b.Loop() {
		Signs(f)
	}
}
