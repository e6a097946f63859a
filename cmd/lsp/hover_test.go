package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// pointed asks what the first such words of a file mean, at their start.
func pointed(c *typist.Typist, file, words string) *wire.Hover {
	c.T.Helper()
	var h *wire.Hover
	c.Ask("textDocument/hover", c.At(file, words), &h)
	return h
}

func TestAHoverSaysWhatAWordMeansAndWhatIsUsual(t *testing.T) {
	c := loft(t)
	h := pointed(c, "pale.malt", "13 °C")
	require.NotNil(t, h)
	assert.Equal(t, wire.Markdown, h.Contents.Kind)
	for _, want := range []string{"**how warm: 13 °C**", "the temperature of the water", "- = 55 °F", "- 12 to 15 °C is usual for the steep water of barley; above 16 °C it is warm for the grain", "```text\nsoak ("} {
		assert.Contains(t, h.Contents.Value, want)
	}
	hints(c, "pale.malt")
	last := 0
	for _, part := range []string{"**how warm", "- = 55 °F", "is over 7 h after", "- with 14 °C: ", "is usual", "```text\nsoak ("} {
		at := strings.Index(pointed(c, "pale.malt", "13 °C").Contents.Value, part)
		require.Greater(t, at, last-1, part)
		last = at + 1
	}
	require.NotNil(t, h.Range)
	assert.Equal(t, h.Range.Start.Character+5, h.Range.End.Character)
}

func TestAHoverOfANameShowsItsDefinitionAndWhereThatStands(t *testing.T) {
	h := pointed(loft(t), "pale.malt", "tray kiln")
	require.NotNil(t, h)
	assert.Contains(t, h.Contents.Value, "kiln \"tray kiln\" {\n  area    0.5 m2")
	assert.Contains(t, h.Contents.Value, "in loft.malt")
}

func TestAHoverIsPlainWhereAnEditorTakesNoMarkdown(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) { p.Capabilities.TextDocument.Hover.ContentFormat = nil },
		"x.malt", "vessel \"a*b_c\" { holds 20 l }\nprocess \"x\" { steep in \"a*b_c\" { soak 7 h } }\n")
	c.Open("x.malt")
	h := pointed(c, "x.malt", "a*b_c\" { soak")
	require.NotNil(t, h)
	assert.Equal(t, wire.PlainText, h.Contents.Kind)
	assert.Contains(t, h.Contents.Value, `"a*b_c"`)
	assert.NotContains(t, h.Contents.Value, "```")
}

func TestNamesAreEscapedInAHover(t *testing.T) {
	c := typing(t, "x.malt", "process \"x\" { steep in \"a*b [c](d) <script>\" { soak 7 h } }\n")
	c.Open("x.malt")
	h := pointed(c, "x.malt", "a*b")
	require.NotNil(t, h)
	assert.Contains(t, h.Contents.Value, `"a\*b \[c\](d) &lt;script&gt;"`)
	assert.NotContains(t, strings.Split(h.Contents.Value, "```")[0], "<script>")
}

func TestAHoverOverNothingIsNothing(t *testing.T) {
	c := typing(t, "x.malt", "# soak\n\nvessel \"x\" { holds 20 l }\n")
	c.Open("x.malt")
	assert.Nil(t, pointed(c, "x.malt", "soak"))
}
