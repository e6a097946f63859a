package lsp

import (
	"context"
	"encoding/json"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// all is the whole of a document.
var all = wire.Range{End: wire.Position{Line: 10_000}}

func hints(c *typist.Typist, name string) (list []string) {
	var got []wire.InlayHint
	c.Ask("textDocument/inlayHint", wire.InlayHintParams{TextDocument: c.Document(name), Range: all}, &got)
	lines := strings.Split(c.Text(name), "\n")
	for _, x := range got {
		list = append(list, strings.TrimSpace(string([]rune(lines[x.Position.Line])[:x.Position.Character]))+" « "+x.Label)
	}
	return list
}

// soon waits until something holds that is asked of the server.
func soon(t testing.TB, what string, is func() bool) {
	t.Helper()
	for end := time.Now().Add(typist.Patience); !is(); time.Sleep(20 * time.Millisecond) {
		require.True(t, time.Now().Before(end), what)
	}
}

func with(list []string, start string) string {
	for _, x := range list {
		if strings.HasPrefix(x, start) {
			return x
		}
	}
	return ""
}

func TestHintsStandBesideTheLinesOfAProcess(t *testing.T) {
	c := loft(t)
	list := hints(c, "pale.malt")
	assert.Equal(t, "soak 7 h in water at 13 °C « 3×: 1 d 15 h, 43.8 %, 9.26 kg", with(list, "soak"))
	assert.Regexp(t, `^gate moisture at most 10 % « holds after 8 d 2 h`, with(list, "gate"))
	c.Heard("workspace/inlayHint/refresh", 0)
	soon(t, "how sure it is", func() bool { return strings.HasSuffix(with(hints(c, "pale.malt"), "gate"), " in 10") })
	c.Type("pale.malt", "cure at air-on 82 °C for 5 h", "cure at air-on 82 °C for 6 h")
	assert.Regexp(t, `for 6 h « after`, with(hints(c, "pale.malt"), "cure"))
}

func TestHintsOfTheStagesBeforeStayWhileAStatementIsBroken(t *testing.T) {
	c := loft(t)
	before := hints(c, "pale.malt")
	require.NotEmpty(t, with(before, "cure"))
	c.Type("pale.malt", "cure at air-on 82", "cure at air-n 82")
	list := hints(c, "pale.malt")
	assert.NotEmpty(t, with(list, "soak"))
	assert.NotEmpty(t, with(list, "wither"))
	assert.Empty(t, with(list, "cure"))
	assert.Empty(t, with(list, "dry"))
	c.Open("loft.malt")
	c.Type("pale.malt", "cure at air-n 82", "cure at air-on 82")
	soon(t, "the forecast", func() bool { return with(hints(c, "pale.malt"), "cure") != "" })
	c.Type("loft.malt", "species", "specis of")
	c.Has("loft.malt", c.Rules("loft.malt")[0])
	soon(t, "all of it stays", func() bool {
		list := hints(c, "pale.malt")
		return with(list, "cure") != "" && with(list, "soak") != ""
	})
}

func TestEachKindOfHintIsSwitchedOffAlone(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) { p.InitializationOptions = json.RawMessage(`{"hints":{"ends":false}}`) }, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	list := hints(c, "pale.malt")
	assert.Empty(t, with(list, "soak"))
	assert.NotEmpty(t, with(list, "gate"))
	c.Tell("workspace/didChangeConfiguration", map[string]any{"settings": json.RawMessage(`{"maltwright":{"hints":{"ends":true,"gates":false}}}`)})
	list = hints(c, "pale.malt")
	assert.NotEmpty(t, with(list, "soak"))
	assert.Empty(t, with(list, "gate"))
	c.Tell("workspace/didChangeConfiguration", map[string]any{"settings": json.RawMessage(`{"maltwright":{"lenses":false}}`)})
	assert.Empty(t, lenses(c, "pale.malt"))
}

func TestWithADayOfTheFirstSoakHintsHaveTimesOfTheClock(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) {
		p.InitializationOptions = json.RawMessage(`{"start":"2026-03-06 07:00"}`)
	}, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	assert.Equal(t, "soak 7 h in water at 13 °C « 3×: Sat 7 Mar 22:00, 43.8 %, 9.26 kg", with(hints(c, "pale.malt"), "soak"))
	c.Tell("workspace/didChangeConfiguration", map[string]any{"settings": json.RawMessage(`{"maltwright":{"start":"no time"}}`)})
	assert.Equal(t, "soak 7 h in water at 13 °C « 3×: 1 d 15 h, 43.8 %, 9.26 kg", with(hints(c, "pale.malt"), "soak"))
}

func lenses(c *typist.Typist, name string) (list []string) {
	var got []wire.CodeLens
	c.Ask("textDocument/codeLens", wire.CodeLensParams{TextDocument: c.Document(name)}, &got)
	for _, x := range got {
		list = append(list, x.Command.Title)
	}
	return list
}

func TestALensSaysWhatAProcessComesTo(t *testing.T) {
	c := loft(t)
	list := lenses(c, "pale.malt")
	require.Len(t, list, 3)
	assert.Regexp(t, `^no findings; (the .* gate holds in [0-9] in 10; )?8 d 8 h, 4\.98 kg of malt, moisture 4\.5 %$`, list[0])
	assert.Equal(t, []string{"chart", "sheet by the bucket"}, list[1:])
}

func TestALensCountsWhatTheEditorIsToldAtTheUseLine(t *testing.T) {
	c := loft(t)
	c.Open("loft.malt")
	c.Type("loft.malt", "treated       no", "treated       yes")
	soon(t, "the danger", func() bool {
		list := lenses(c, "pale.malt")
		return len(list) > 0 && strings.HasPrefix(list[0], "1 danger; ")
	})
	c.Type("loft.malt", "treated       yes\n}", "treated       yes\n")
	soon(t, "where the fault is", func() bool {
		list := lenses(c, "pale.malt")
		return len(list) > 0 && strings.Contains(list[0], "not forecast: put loft.malt, line ")
	})
	assert.NotContains(t, lenses(c, "pale.malt")[0], "no findings")
}

// record is typing in a record of the examples at a time.
func record(t testing.TB, now string) *typist.Typist {
	t.Helper()
	at, err := time.ParseInLocation("2006-01-02 15:04", now, time.Local)
	require.NoError(t, err)
	cache := t.TempDir()
	serve := func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Version: "test", Quiet: 5 * time.Millisecond, Look: 20 * time.Millisecond, Wait: typist.Patience, Members: 20, Cache: cache, Clock: func() time.Time { return at }})
	}
	text, _, _ := strings.Cut(example(t, "batches/26-05.malt"), "  read    water 13.7")
	c := typist.Sit(t, serve, nil, "26-05.malt", text+"}\n", "pale.malt", example(t, "batches/pale.malt"), "loft.malt", example(t, "batches/loft.malt"))
	c.Open("26-05.malt")
	return c
}

func TestARecordSaysWhatEachReadingComesToAndWhatIsNext(t *testing.T) {
	c := record(t, "2026-04-11 06:00")
	soon(t, "what the readings come to", func() bool { return len(hints(c, "26-05.malt")) == 4 })
	assert.Equal(t, "weighed 8.54 kg at 2026-04-11 05:30 after soak 2 « moisture 38.8 % (forecast 38.8 %)", with(hints(c, "26-05.malt"), "weighed 8.54"))
	assert.Contains(t, lenses(c, "26-05.malt")[0], "no findings; next: rest 2 ends at 14:30, then soak 3; ready ")
	c.Type("26-05.malt", "}\n", "  weighed 9.3\n}\n")
	assert.NotEmpty(t, with(hints(c, "26-05.malt"), "weighed 8.54"), "the line that is typed is not read yet")
}

func TestWhatIsDrawnIsShownByAnEditorThatCan(t *testing.T) {
	c := loft(t)
	var uri string
	c.Ask("workspace/executeCommand", map[string]any{"command": commandChart, "arguments": []any{c.URI("pale.malt")}}, &uri)
	assert.Contains(t, string(c.Heard("window/showDocument", 0).Params), uri)
}

func TestTheForecastStandsInTheHover(t *testing.T) {
	c := loft(t)
	hints(c, "pale.malt")
	var got wire.Hover
	c.Ask("textDocument/hover", c.At("pale.malt", "7 h in water"), &got)
	assert.Contains(t, got.Contents.Value, "soak 1 (water 13 °C) is over 7 h after the first soak: moisture 28.7 %, weight 7.34 kg")
	assert.Contains(t, got.Contents.Value, "with 8 h: steep-out moisture 44.4 % (+0.5 points)")
}

func TestWhatOneMoreOfANumberChangesIsSaidWhereItIsAsked(t *testing.T) {
	c := loft(t)
	hints(c, "pale.malt")
	at := c.At("pale.malt", "7 h in water")
	var said string
	c.Ask("workspace/executeCommand", map[string]any{"command": "maltwright.otherwise", "arguments": []any{at.TextDocument.URI, at.Position}}, &said)
	assert.Contains(t, said, "with 8 h: steep-out moisture 44.4 % (+0.5 points)")
	assert.Contains(t, string(c.Heard("window/showMessage", 0).Params), "with 6 h")
	assert.Error(t, c.Try("workspace/executeCommand", map[string]any{"command": "maltwright.otherwise", "arguments": []any{at.TextDocument.URI, wire.Position{}}}, nil))
}

func actions(c *typist.Typist, name, at string, only ...string) (list []wire.CodeAction) {
	from := c.At(name, at).Position
	c.Ask("textDocument/codeAction", wire.CodeActionParams{TextDocument: c.Document(name), Range: wire.Range{Start: from, End: from}, Context: wire.CodeActionContext{Only: only, Diagnostics: c.Found(name)}}, &list)
	return list
}

// done makes the edits of an action in the buffer.
func done(t *testing.T, c *typist.Typist, name string, a wire.CodeAction) {
	require.NotNil(t, a.Edit)
	require.Len(t, a.Edit.DocumentChanges, 1)
	edits := a.Edit.DocumentChanges[0].Edits
	for i := len(edits) - 1; i >= 0; i-- {
		c.Type(name, c.Text(name), typed(c, name, edits[i]))
	}
}

func typed(c *typist.Typist, name string, e wire.TextEdit) string {
	before := wire.Range{End: e.Range.Start}
	behind := wire.Range{Start: e.Range.End, End: wire.Position{Line: 10_000}}
	return c.Words(name, before) + e.NewText + c.Words(name, behind)
}

func TestARepairIsOfferedAndAfterItTheFindingIsGone(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "until moisture at most 35 %", "until moistur at most 35 %")
	list := actions(c, "pale.malt", "moistur at")
	require.NotEmpty(t, list)
	assert.Equal(t, wire.ActionQuickFix, list[0].Kind)
	assert.True(t, list[0].IsPreferred)
	assert.NotEmpty(t, list[0].Diagnostics)
	done(t, c, "pale.malt", list[0])
	assert.Empty(t, c.Found("pale.malt"))
	assert.Equal(t, example(t, "pale.malt"), c.Text("pale.malt"))
}

func TestAllRepairsAreMadeAtOnceOrFetchedLater(t *testing.T) {
	slip := strings.NewReplacer("until moisture at most 35 %", "until moistur at most 35 %", "soak 7 h", "soka 7 h").Replace(example(t, "pale.malt"))
	for _, later := range []bool{false, true} {
		c := typingAs(t, func(p *wire.InitializeParams) {
			if later {
				p.Capabilities.TextDocument.CodeAction.ResolveSupport = &wire.ClientCodeActionResolveOptions{Properties: []string{"edit"}}
			}
		}, "pale.malt", slip, "loft.malt", example(t, "loft.malt"))
		c.Open("pale.malt")
		list := actions(c, "pale.malt", "process", "source.fixAll")
		require.Len(t, list, 1)
		assert.Equal(t, "source.fixAll.maltwright", list[0].Kind)
		a := list[0]
		if later {
			assert.Nil(t, a.Edit)
			c.Ask("codeAction/resolve", list[0], &a)
		}
		done(t, c, "pale.malt", a)
		assert.Equal(t, example(t, "pale.malt"), c.Text("pale.malt"))
	}
}

func TestAnAcceptanceIsPutIntoItsBlock(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "every 8 h", "every 20 h")
	c.Has("pale.malt", "turn-gap-long")
	var a wire.CodeAction
	soon(t, "an acceptance", func() bool {
		for _, x := range actions(c, "pale.malt", "20 h") {
			if strings.HasPrefix(x.Title, "accept turn-gap-long") {
				a = x
			}
		}
		return a.Title != ""
	})
	done(t, c, "pale.malt", a)
	assert.Contains(t, c.Text("pale.malt"), "\n    accept turn-gap-long because \"\"\n    hold ")
	asks := c.Has("pale.malt", "accept-without-reason")
	assert.Contains(t, asks.Message, "say between the quotes why it is right")
	c.Has("pale.malt", "turn-gap-long")
	c.Type("pale.malt", `because ""`, `because "the neighbour turns it"`)
	c.Until("pale.malt", "it is gone", func(list []wire.Diagnostic) bool {
		for _, d := range list {
			if d.Code == "turn-gap-long" || d.Code == "accept-without-reason" {
				return false
			}
		}
		return true
	})
}

func TestAValueIsConvertedInItsPlace(t *testing.T) {
	c := loft(t)
	list := actions(c, "pale.malt", "13 °C", "refactor")
	require.Len(t, list, 1)
	assert.Equal(t, "convert to 55.4 °F", list[0].Title)
	done(t, c, "pale.malt", list[0])
	assert.Contains(t, c.Text("pale.malt"), "soak 7 h in water at 55.4 °F")
}
