package text_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/write/text"
	"maltwright/lang/source/golden"
)

const cardHead = "# The card\n\nThe whole language on one printed page, as `maltwright card` prints it. What each word means in full is in\n[language.md](language.md), and `maltwright explain soak` says it for one word.\n\n```text\n"

func TestThePageOfTheCardIsTheCard(t *testing.T) {
	golden.File(t, "../../../docs/card.md", cardHead+text.Card(reference.Card(), text.Options{Width: reference.CardColumns})+"```\n")
}

func TestTheCardFitsOnePageAndEveryTerminal(t *testing.T) {
	page := text.Card(reference.Card(), text.Options{Width: reference.CardColumns})
	assert.LessOrEqual(t, strings.Count(page, "\n"), reference.CardRows)
	squeezed := func(text string) string { return strings.Join(strings.Fields(strings.ReplaceAll(text, "#", "")), " ") }
	for _, width := range []int{40, 60, 80, reference.CardColumns, 200} {
		shown := text.Card(reference.Card(), text.Options{Width: width})
		for line := range strings.Lines(shown) {
			assert.LessOrEqual(t, len([]rune(strings.TrimSuffix(line, "\n"))), width, line)
		}
		assert.Equal(t, squeezed(page), squeezed(shown), "no word is lost at %d columns", width)
	}
}
