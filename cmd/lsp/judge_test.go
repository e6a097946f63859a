package lsp

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/finding"
	"maltwright/lang/source"
)

func TestFindingsComeAsOneTypes(t *testing.T) {
	c := loft(t)
	assert.Empty(t, c.Found("pale.malt"))
	c.Type("pale.malt", "soak 7 h", "soka 7 h")
	assert.NotEmpty(t, c.Rules("pale.malt"))
	c.Type("pale.malt", "soka 7 h", "soak 7 h")
	assert.Empty(t, c.Found("pale.malt"))
}

func TestAForecastFollowsAndItsFindingsStayWhileOneTypes(t *testing.T) {
	c := loft(t)
	c.Close("pale.malt")
	c.OpenWith("pale.malt", strings.Replace(example(t, "pale.malt"), "soak 7 h", "soak 2 h", 1))
	of := c.Until("pale.malt", "a finding of the forecast", func(list []wire.Diagnostic) bool { return len(list) > 0 })
	before := of[0]
	c.TypeAt("pale.malt", 0, 0, "# a remark above\n")
	after := c.Found("pale.malt")
	require.NotEmpty(t, after, "what the forecast found stays where its words do")
	assert.Equal(t, before.Message, after[0].Message)
	assert.Equal(t, before.Range.Start.Line+1, after[0].Range.Start.Line)
}

func TestFindingsHaveTheirVersion(t *testing.T) {
	c := loft(t)
	for range 20 {
		c.TypeAt("pale.malt", 0, 0, "#\n")
	}
	assert.Empty(t, c.Found("pale.malt"), "those of the last version come, whatever is left out before")
}

func TestAChangeOfTheHouseIsSeenInTheProcess(t *testing.T) {
	c := loft(t)
	assert.Empty(t, c.Found("pale.malt"))
	c.Open("loft.malt")
	c.Type("loft.malt", "\nvessel", "\nvesel")
	d := c.Has("pale.malt", "unknown-word")
	assert.Equal(t, `use "loft.malt"`, c.Words("pale.malt", d.Range))
	assert.Contains(t, d.Message, "loft.malt, line ")
	require.NotEmpty(t, d.RelatedInformation)
	assert.Equal(t, c.URI("loft.malt"), d.RelatedInformation[0].Location.URI)
	assert.Contains(t, c.Words("loft.malt", d.RelatedInformation[0].Location.Range), "vesel")
	c.Type("loft.malt", "\nvesel", "\nvessel")
	c.Until("pale.malt", "nothing any more", func(list []wire.Diagnostic) bool { return len(list) == 0 })
}

func TestAHouseThatIsBrokenOnDiskIsToldInTheProcess(t *testing.T) {
	house := strings.Repeat("nonsense 7 h\n", 9)
	c := typing(t, "pale.malt", example(t, "pale.malt"), "loft.malt", house, "mid.malt", "use \"loft.malt\"\n", "far.malt", strings.Replace(example(t, "pale.malt"), "loft.malt", "mid.malt", 1))
	for _, name := range []string{"pale.malt", "far.malt"} {
		c.Open(name)
		var at []string
		for _, d := range c.Found(name) {
			if strings.HasPrefix(d.Message, "loft.malt") {
				at = append(at, d.Message)
				assert.Contains(t, c.Words(name, d.Range), "use ", d.Message)
			}
		}
		require.Len(t, at, mostElsewhere+1, name)
		assert.Contains(t, at[mostElsewhere], "loft.malt: 4 findings more")
	}
	c.Write("loft.malt", example(t, "loft.malt"))
	c.Until("pale.malt", "nothing any more, since the file was changed on disk", func(list []wire.Diagnostic) bool { return len(list) == 0 })
}

func TestADangerSaysSoInWords(t *testing.T) {
	f := finding.Finding{Severity: finding.Danger, Message: "the kiln smokes", Why: "it is shut", Hint: "open it"}
	assert.Equal(t, "danger: the kiln smokes\nwhy: it is shut\ndo: open it", message(f))
	assert.Equal(t, "the kiln smokes", message(finding.Finding{Severity: finding.Fault, Message: "the kiln smokes"}))
	assert.Equal(t, uint32(wire.SeverityError), severities[finding.Danger])
	for s := finding.Note; s <= finding.Danger; s++ {
		assert.NotZero(t, severities[s], s)
	}
}

func TestWhatHasNoEffectIsFaded(t *testing.T) {
	for _, name := range needless {
		assert.True(t, slices.ContainsFunc(check.Rules(), func(r finding.Rule) bool { return r.Name == name }), "%s is no rule", name)
	}
	c := typing(t, "a.malt", "", "loft.malt", example(t, "loft.malt"))
	text, err := os.ReadFile("../../examples/broken/unused-definition.malt")
	require.NoError(t, err)
	c.OpenWith("a.malt", string(text))
	assert.Equal(t, []uint32{wire.TagUnnecessary}, c.Has("a.malt", "unused-definition").Tags)
}

func TestAFindingCarriesItsRepairsAndItsPage(t *testing.T) {
	cache := t.TempDir()
	c := typist.Sit(t, func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Cache: cache, Quiet: 5 * time.Millisecond})
	}, nil, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	c.Type("pale.malt", "soak 7 h", "soka 7 h")
	d := c.Has("pale.malt", "unknown-word")
	assert.Contains(t, string(d.Data), `"newText":"soak"`)
	require.NotNil(t, d.CodeDescription)
	page, err := os.ReadFile(filepath.Join(cache, "rules", "unknown-word.md"))
	require.NoError(t, err)
	assert.Contains(t, string(page), "# unknown-word")
	assert.True(t, strings.HasSuffix(d.CodeDescription.Href, "/rules/unknown-word.md"), d.CodeDescription.Href)
}

func TestFindingsArePulledWhereAnEditorAsks(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) {
		p.Capabilities.TextDocument.Diagnostic = &wire.DiagnosticClientCapabilities{}
		p.Capabilities.Workspace.Diagnostics.RefreshSupport = true
	}, "pale.malt", strings.Replace(example(t, "pale.malt"), "soak 7 h", "soak 2 h", 1), "loft.malt", example(t, "loft.malt"))
	require.NotNil(t, c.Server.Capabilities.DiagnosticProvider)
	c.Open("pale.malt")
	ask := wire.DocumentDiagnosticParams{TextDocument: c.Document("pale.malt")}
	var full wire.FullDocumentDiagnosticReport
	c.Ask("textDocument/diagnostic", ask, &full)
	assert.Equal(t, "full", full.Kind)
	c.Heard("workspace/diagnostic/refresh", 0)
	c.Ask("textDocument/diagnostic", ask, &full)
	assert.NotEmpty(t, full.Items, "the findings of the forecast")
	var same wire.UnchangedDocumentDiagnosticReport
	ask.PreviousResultID = full.ResultID
	c.Ask("textDocument/diagnostic", ask, &same)
	assert.Equal(t, "unchanged", same.Kind)
	c.Type("pale.malt", "soak 2 h", "soka 2 h")
	c.Ask("textDocument/diagnostic", ask, &full)
	assert.Equal(t, "full", full.Kind)
	assert.Empty(t, c.Pushed(), "nothing is pushed as well")
}

func TestFindingsGoWithTheDocumentThatIsClosed(t *testing.T) {
	c := loft(t)
	c.Type("pale.malt", "soak 7 h", "soka 7 h")
	c.Has("pale.malt", "unknown-word")
	c.Close("pale.malt")
	c.Until("pale.malt", "nothing", func(list []wire.Diagnostic) bool { return len(list) == 0 })
}

func TestNothingIsForecastWhereThatIsSwitchedOff(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) { p.InitializationOptions = []byte(`{"forecast":false}`) },
		"pale.malt", strings.Replace(example(t, "pale.malt"), "soak 7 h", "soak 2 h", 1), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	c.Found("pale.malt")
	assert.False(t, c.Within(200*time.Millisecond, func() bool { return c.Count("pale.malt") > 1 }))
	c.Tell("workspace/didChangeConfiguration", wire.DidChangeConfigurationParams{Settings: []byte(`{"maltwright":{"forecast":true}}`)})
	c.Until("pale.malt", "a finding of the forecast", func(list []wire.Diagnostic) bool { return len(list) > 0 })
}

func TestPlacesMoveWithTheirWords(t *testing.T) {
	from := source.New("a", []byte("one two three"))
	place := func(start, end int) source.Place {
		return source.Place{File: from, Span: source.Span{Start: start, End: end}}
	}
	for _, c := range []struct {
		to         string
		start, end int
		want       string // "" where it is gone
	}{
		{"one two three", 4, 7, "two"},
		{"one 2 three", 0, 3, "one"},
		{"one 2 three", 8, 13, "three"},
		{"one 2 three", 4, 7, ""},
		{"one two three four", 8, 13, ""}, // it may go on
		{"zero one two three", 4, 7, "two"},
		{"one two", 0, 3, "one"},
		{"", 0, 3, ""},
	} {
		to := source.New("a", []byte(c.to))
		got, ok := moveOf(from, to).place(place(c.start, c.end))
		assert.Equal(t, c.want != "", ok, "%q", c.to)
		if ok {
			assert.Equal(t, c.want, got.Text())
			assert.Same(t, to, got.File)
		}
	}
	other := source.Place{File: source.New("b", []byte("x")), Span: source.Span{End: 1}}
	got, ok := moveOf(from, source.New("a", nil)).place(other)
	assert.True(t, ok)
	assert.Equal(t, other, got, "a place in another file stays")
}

func TestWhatAUsedFileTellsItselfIsNotToldWhereItIsUsed(t *testing.T) {
	house := strings.Replace(example(t, "loft.malt"), "heater  1.5 kW", "heater 150 kW", 1)
	c := typingAs(t, func(p *wire.InitializeParams) { p.InitializationOptions = []byte(`{"forecast":false}`) }, "pale.malt", example(t, "pale.malt"), "loft.malt", house)
	c.Open("pale.malt")
	elsewhere := func(list []wire.Diagnostic) bool {
		return slices.ContainsFunc(list, func(d wire.Diagnostic) bool { return strings.HasPrefix(d.Message, "loft.malt, line ") })
	}
	c.Until("pale.malt", "what is wrong in the house", elsewhere)
	c.Open("loft.malt")
	require.NotEmpty(t, c.Found("loft.malt"))
	c.Until("pale.malt", "it is told in the house", func(list []wire.Diagnostic) bool { return !elsewhere(list) })
	c.Close("loft.malt")
	c.Until("pale.malt", "what is wrong in the house", elsewhere)
}
