package syntax

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
)

func TestLexemesAreTheWordsOfAStatementThatReadsAndOfOneThatDoesNot(t *testing.T) {
	f := source.New("x", []byte("soak 1 h 30 min in ) at 13 – 15 °C; began 6 March 2026 07:00 { } \"tub\" >= ½ # c"))
	got := ""
	for _, l := range Lexemes(f) {
		got += fmt.Sprintf("%d:%s|", l.Kind, f.Text(l.Span))
	}
	assert.Equal(t, "1:soak|5:1|6:h|5:30|6:min|2:in|0:)|2:at|5:13|4:–|5:15|6:°C|12:;|1:began|7:6 March 2026|8:07:00|10:{|11:}|9:\"tub\"|3:>=|5:½|13:# c|", got)
}

func TestLexemesStandInOrderAndWithinTheText(t *testing.T) {
	for name, text := range corpus(t) {
		for seed := range spoil.Seeds(2, 50) {
			broken := text
			if seed > 0 {
				broken = spoil.Text(spoil.Random(seed), text, spoil.Words(text))
			}
			end := 0
			for _, l := range Lexemes(source.New("x", []byte(broken))) {
				assert.LessOrEqual(t, end, l.Start, name)
				assert.Less(t, l.Start, l.End, name)
				end = l.End
			}
			assert.LessOrEqual(t, end, len(broken), name)
		}
	}
}

func TestWhatIsNoTextHasNoLexemes(t *testing.T) {
	assert.Empty(t, Lexemes(source.New("x", []byte("a\x00b\x00c"))))
}
