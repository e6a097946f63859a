package lsp

import (
	"context"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
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
	assert.Equal(t, `Mill bend 2026"`, it.TextEdit.NewText)
	assert.Empty(t, it.FilterText, "the label says it")
	assert.Equal(t, uint32(0), it.TextEdit.Range.End.Character-it.TextEdit.Range.Start.Character)
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
		if snippets {
			assert.Equal(t, uint32(wire.InsertAsIs), it.InsertTextMode)
			assert.Equal(t, uint32(wire.InsertSnippet), it.InsertTextFormat)
			assert.Contains(t, it.TextEdit.NewText, "steep in ${1:\"blue tub\"} to moisture ${2:43 to 45 %} {\n")
			assert.Contains(t, it.TextEdit.NewText, "      soak ${5:7 h} in water at ${6:13 °C}\n")
		} else {
			assert.Zero(t, it.InsertTextFormat)
			assert.Zero(t, it.InsertTextMode)
			assert.Contains(t, it.TextEdit.NewText, "{ soak 7 h in water at 13 °C; rest 9 h in air at 14 °C } }")
		}
		assert.Contains(t, it.Documentation.Value, "```malt\nsteep in \"blue tub\"")
	}
}

// An editor without snippets may put other signs in for line ends. What it puts in reads, and is laid out as
// the text of several lines is.
func TestWithoutSnippetsEachOfferIsOneLine(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) {
		plainly(p)
		p.Capabilities.TextDocument.Completion.CompletionItem.SnippetSupport = false
	}, "x.malt", "\n", "pale.malt", "use \"loft.malt\"\nprocess \"x\" {\n  make pale malt\n  \n}\n", "loft.malt", example(t, "loft.malt"))
	c.Open("x.malt")
	c.Open("pale.malt")
	wholes := 0
	for _, list := range []wire.CompletionList{offered(c, "x.malt", "", nil), offered(c, "pale.malt", "make pale malt\n  ", nil), offered(c, "pale.malt", "process \"x\" ", nil)} {
		for _, it := range list.Items {
			assert.NotContains(t, it.TextEdit.NewText, "\n", it.Label)
			if it.Kind != wire.ItemSnippet {
				continue
			}
			wholes++
			tree, found := syntax.Parse(source.New("x", []byte(it.TextEdit.NewText)))
			assert.Empty(t, found, it.Label)
			_, text, _ := strings.Cut(it.Documentation.Value, "```malt\n")
			text, _, _ = strings.Cut(text, "```")
			whole, _ := syntax.Parse(source.New("x", []byte(text)))
			assert.Equal(t, string(layout.Plain(whole)), string(layout.Plain(tree)), it.Label)
		}
	}
	assert.GreaterOrEqual(t, wholes, 12)
}

// An editor that goes by the label where an item has no other words holds it against the text of the range,
// and finds it there.
func TestWhatIsHeldAgainstTheTextBeginsWithIt(t *testing.T) {
	c := loft(t)
	for typed, behind := range map[string]string{`of "`: "", `of "Fa`: "", `of "F`: `"`, "of ": ""} {
		c.OpenWith("x.malt", "use \"loft.malt\"\nprocess \"x\" {\n  from 6 kg "+typed+behind+"\n}\n")
		it := offered(c, "x.malt", "from 6 kg "+typed, nil).Items[0]
		assert.Empty(t, it.FilterText)
		assert.Equal(t, "Far field 2026", it.Label)
		held := c.Words("x.malt", it.TextEdit.Range)
		assert.True(t, strings.HasPrefix(it.Label, held), "%s in the place of %s", it.Label, held)
		c.Make("x.malt", []wire.TextEdit{*it.TextEdit})
		assert.Contains(t, c.Text("x.malt"), "from 6 kg of \"Far field 2026\"\n")
	}
}

func TestAUnitThatStandsIsNotWrittenTwice(t *testing.T) {
	c := loft(t)
	for _, it := range offered(c, "pale.malt", "cure at air-on 82", nil).Items {
		assert.NotContains(t, it.TextEdit.NewText, "°", it.Label)
	}
	c.OpenWith("x.malt", strings.Replace(example(t, "pale.malt"), "cure at air-on 82 °C", "cure at air-on 8 °C", 1))
	list := offered(c, "x.malt", "cure at air-on 8", nil)
	require.NotEmpty(t, list.Items)
	assert.Equal(t, "80 to 95 °C", list.Items[0].Label)
	assert.Equal(t, "80 to 95", list.Items[0].TextEdit.NewText)
}

func TestHiddenFilesAreNotOffered(t *testing.T) {
	c := typing(t, "x.malt", "use \n", "loft.malt", example(t, "loft.malt"), ".#x.malt", "limits { }\n")
	c.Open("x.malt")
	list := offered(c, "x.malt", "use ", nil)
	require.Len(t, list.Items, 1)
	assert.Equal(t, "loft.malt", list.Items[0].Label)
}

func TestUseOffersTheHouseFirst(t *testing.T) {
	c := typing(t, "x.malt", "use \n", "amber.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("x.malt")
	assert.Equal(t, "loft.malt", offered(c, "x.malt", "use ", nil).Items[0].Label)
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
	c.Until("pale.malt", "it is not forecast, since it does not read", func(list []wire.Diagnostic) bool {
		return !slices.ContainsFunc(list, func(d wire.Diagnostic) bool { return d.Code == "expectation-broken" })
	})
	first := offered(c, "pale.malt", "accept ", nil).Items[0]
	assert.Equal(t, "expectation-broken", first.Label)
	assert.Equal(t, "the forecast does not keep a promise of the process", first.Detail)
}
