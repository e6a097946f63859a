package lsp

import (
	"context"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// offered asks what may stand behind the first such words of a file.
func offered(c *typist.Typist, file, behind string, context *wire.CompletionContext) wire.CompletionList {
	c.T.Helper()
	at := c.Behind(file, behind)
	var list wire.CompletionList
	c.Ask("textDocument/completion", wire.CompletionParams{TextDocument: at.TextDocument, Position: at.Position, Context: context}, &list)
	return list
}

func itemOf(t *testing.T, list wire.CompletionList, label string) wire.CompletionItem {
	t.Helper()
	for _, it := range list.Items {
		if it.Label == label {
			return it
		}
	}
	require.Failf(t, "not offered", "%s among %v", label, list.Items)
	return wire.CompletionItem{}
}

func TestSteepWaterIsOfferedAsIsUsual(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "water at 13 °C", "water at ")
	list := offered(c, "pale.malt", "water at ", nil)
	first := list.Items[0]
	assert.Equal(t, "12 to 15 °C", first.Label)
	assert.Equal(t, "usual", first.Detail)
	require.NotNil(t, first.Documentation)
	assert.Equal(t, "12 to 15 °C is usual for the steep water of barley; above 16 °C it is warm for the grain", first.Documentation.Value)
	assert.False(t, list.IsIncomplete)
}

func TestWhatIsUsualIsThatOfTheGrainAndInTheUnitsOfTheHouse(t *testing.T) {
	c := typing(t, "x.malt", `grain "s" { species sorghum; moisture 12 % }
process "x" {
  make pale malt
  from 10 lb of "s"
  steep to moisture 43 % {
    soak 8 h in water at 
  }
  kiln {
    dry at air-on 113 °F for 20 h
    cure at air-on 120 °F for 2 h
  }
}
`)
	c.Open("x.malt")
	assert.Equal(t, "77 to 86 °F", offered(c, "x.malt", "water at ", nil).Items[0].Label)
}

func TestNamesComeFromTheFilesThatAreUsed(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", `of "Far field 2026"`, `of "`)
	it := itemOf(t, offered(c, "pale.malt", `of "`, nil), "Mill bend 2026")
	assert.Equal(t, "grain, species wheat, moisture 13.1 %", it.Detail)
	assert.Equal(t, `"Mill bend 2026"`, it.TextEdit.NewText)
	assert.Equal(t, `"Mill bend 2026"`, it.FilterText)
	assert.Equal(t, uint32(1), it.TextEdit.Range.End.Character-it.TextEdit.Range.Start.Character)
}

func TestALotThatDoesNotReadIsOfferedAllTheSame(t *testing.T) {
	c := typing(t, "pale.malt", example(t, "pale.malt"), "loft.malt", strings.Replace(example(t, "loft.malt"), "species       wheat", "species of of wheat", 1))
	c.Open("pale.malt")
	c.Type("pale.malt", "soak 7 h", "soak 7 7 h h")
	c.Type("pale.malt", `of "Far field 2026"`, "of ")
	itemOf(t, offered(c, "pale.malt", "kg of ", nil), "Mill bend 2026")
}

func TestABlankAsksOnlyWhereSomethingMustStand(t *testing.T) {
	c := loft(t)
	blank := &wire.CompletionContext{TriggerKind: triggered, TriggerCharacter: " "}
	c.Type("pale.malt", "rest 9 h in air at 14 °C", "rest 9 h in air at ")
	assert.NotEmpty(t, offered(c, "pale.malt", "rest 9 h in air at ", blank).Items)
	assert.Empty(t, offered(c, "pale.malt", "rest 9 h ", blank).Items)
	assert.NotEmpty(t, offered(c, "pale.malt", "rest 9 h ", nil).Items)
	assert.NotEmpty(t, offered(c, "pale.malt", "soak ", blank).Items)
	quote := &wire.CompletionContext{TriggerKind: triggered, TriggerCharacter: `"`}
	assert.NotEmpty(t, offered(c, "pale.malt", `steep in "`, quote).Items)
	assert.Empty(t, offered(c, "pale.malt", `steep in "blue tub"`, quote).Items)
}

func TestAWholeStageHasStopsWhereAnEditorTakesThem(t *testing.T) {
	for _, snippets := range []bool{true, false} {
		c := typingAs(t, func(p *wire.InitializeParams) {
			item := &p.Capabilities.TextDocument.Completion.CompletionItem
			item.SnippetSupport = snippets
			item.InsertTextModeSupport = &wire.ClientCompletionItemInsertTextModeOptions{ValueSet: []uint32{1, 2}}
		}, "pale.malt", "use \"loft.malt\"\nprocess \"x\" {\n  make pale malt\n  \n}\n", "loft.malt", example(t, "loft.malt"))
		c.Open("pale.malt")
		it := itemOf(t, offered(c, "pale.malt", "make pale malt\n  ", nil), "steep …")
		assert.Equal(t, uint32(wire.InsertAsIs), it.InsertTextMode)
		if snippets {
			assert.Equal(t, uint32(wire.InsertSnippet), it.InsertTextFormat)
			assert.Contains(t, it.TextEdit.NewText, "steep in ${1:\"blue tub\"} to moisture ${2:43 to 45 %} {\n")
			assert.Contains(t, it.TextEdit.NewText, "      soak ${5:7 h} in water at ${6:13 °C}\n")
		} else {
			assert.Zero(t, it.InsertTextFormat)
			assert.Contains(t, it.TextEdit.NewText, "      soak 7 h in water at 13 °C\n")
		}
		assert.Contains(t, it.Documentation.Value, "```malt\nsteep in \"blue tub\"")
	}
}

func TestUnitsOfANumberAreAskedForAgain(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "soak 7 h", "soak 7")
	list := offered(c, "pale.malt", "soak 7", nil)
	assert.True(t, list.IsIncomplete)
	assert.Equal(t, "7 h", itemOf(t, list, "h").TextEdit.NewText)
}

func TestNothingIsOfferedInAComment(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "soak 7 h", "soak 7 h # at ")
	assert.Empty(t, offered(c, "pale.malt", "soak 7 h # at ", nil).Items)
}

func BenchmarkCompletion(b *testing.B) {
	text := example(b, "pale.malt")
	head, process, _ := strings.Cut(text, "process ")
	process = "process " + process
	for i := 'A'; strings.Count(head, "\n") < 300; i++ {
		head += strings.Replace(process, "Loft pale", "Loft "+string(i), 1)
	}
	quiet := func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Quiet: time.Hour})
	}
	c := typist.Sit(b, quiet, nil, "pale.malt", head+strings.Replace(process, "water at 13 °C", "water at 14.5 °C", 1), "loft.malt", example(b, "loft.malt"))
	c.Open("pale.malt")
	for was, is := "14.5", "13.5"; b.Loop(); was, is = is, was {
		c.Type("pale.malt", "water at "+was, "water at "+is) // every keystroke is another text
		if len(offered(c, "pale.malt", "water at ", nil).Items) == 0 {
			b.Fatal("nothing is offered")
		}
	}
}

func TestRulesThatHaveFoundSomethingStandInFront(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "final moisture 3.5 to 4.8 %", "final moisture 1.5 to 2 %")
	c.Has("pale.malt", "expectation-broken")
	c.Type("pale.malt", "  deculm within", "  accept \n  deculm within")
	first := offered(c, "pale.malt", "accept ", nil).Items[0]
	assert.Equal(t, "expectation-broken", first.Label)
	assert.Equal(t, "the forecast does not keep a promise of the process", first.Detail)
}
