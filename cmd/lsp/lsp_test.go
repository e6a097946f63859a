package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"os/exec"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

func TestAServerEndsAsTheProtocolSays(t *testing.T) {
	c := loft(t)
	c.Ask("shutdown", nil, nil)
	assert.Equal(t, wire.InvalidRequest, code(t, c.Try("textDocument/hover", nil, nil)), "nothing is asked after shutdown")
	c.Tell("exit", nil)
	assert.Equal(t, ExitClean, c.Code())
	c = loft(t)
	c.Tell("exit", nil)
	assert.Equal(t, ExitBroken, c.Code())
	c = loft(t)
	assert.Equal(t, ExitBroken, c.Ended(), "the stream has ended before anybody said so")
	c = loft(t)
	c.Ask("shutdown", nil, nil)
	assert.Equal(t, ExitClean, c.Ended(), "it was told to end, and the stream did")
	c = typist.Begin(t, served)
	c.Tell("exit", nil)
	assert.Equal(t, ExitBroken, c.Code())
}

func TestAServerEndsWithTheProcessThatStartedIt(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("needs sleep")
	}
	editor := exec.Command("sleep", "100")
	if err := editor.Start(); err != nil {
		t.Skip("needs sleep: ", err)
	}
	pid := int32(editor.Process.Pid)
	c := typingAs(t, func(p *wire.InitializeParams) { p.ProcessID = &pid })
	require.NoError(t, editor.Process.Kill())
	_ = editor.Wait()
	assert.Equal(t, ExitBroken, c.Code())
}

// code is the code of an error of the server.
func code(t *testing.T, err error) int {
	t.Helper()
	var bad *wire.Error
	require.ErrorAs(t, err, &bad)
	return bad.Code
}

func TestWhatComesOutOfTurnIsRefused(t *testing.T) {
	c := typist.Begin(t, served)
	c.Tell("textDocument/didOpen", wire.DidOpenTextDocumentParams{})
	assert.Equal(t, wire.ServerNotInitialized, code(t, c.Try("textDocument/hover", nil, nil)))
	assert.Equal(t, wire.ServerNotInitialized, code(t, c.Try("shutdown", nil, nil)))
	assert.Equal(t, wire.InvalidParams, code(t, c.Try("initialize", []int{1}, nil)))
	c.Ask("initialize", wire.InitializeParams{}, &c.Server)
	assert.Equal(t, wire.InvalidRequest, code(t, c.Try("initialize", wire.InitializeParams{}, nil)))
	assert.Equal(t, "utf-16", c.Server.Capabilities.PositionEncoding)
}

func TestWhatIsNotKnownIsRefusedOrPassedOver(t *testing.T) {
	c := loft(t)
	assert.Equal(t, wire.MethodNotFound, code(t, c.Try("textDocument/moniker", nil, nil)))
	assert.Equal(t, wire.MethodNotFound, code(t, c.Try("$/unheardOf", nil, nil)))
	c.Tell("$/setTrace", map[string]string{"value": "verbose"})
	c.Tell("workspace/unheardOf", nil)
	c.Tell("textDocument/didChange", "nonsense")
	c.Tell("textDocument/didChange", wire.DidChangeTextDocumentParams{TextDocument: wire.VersionedTextDocumentIdentifier{URI: "file:///not/open.malt"}})
	c.Raw(wire.Message{Version: wire.Version, Method: "$/cancelRequest", Params: json.RawMessage(`{"id":"nobody"}`)})
	id := wire.ID("999")
	c.Raw(wire.Message{Version: wire.Version, ID: &id, Result: json.RawMessage("null")}) // an answer that nobody asked for
	assert.Empty(t, c.Found("pale.malt"))
}

// said is everything that a server answers to a text, and its exit code.
func said(t *testing.T, text string) (string, int) {
	t.Helper()
	var out bytes.Buffer
	code := Serve(context.Background(), strings.NewReader(text), &out, Options{})
	return out.String(), code
}

func TestBytesThatAreNoTalkAreAnsweredByErrors(t *testing.T) {
	hello := `{"jsonrpc":"2.0","id":"a","method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}`
	for text, want := range map[string]string{
		"":              "",
		"hello\r\n\r\n": "-32700",
		framed("{"):     "-32700",
		framed("[]"):    "-32600",
		framed(`{"jsonrpc":"2.0","id":7,"method":"textDocument/hover"}`):                   `"id":7,"error":{"code":-32002`,
		framed(`{"jsonrpc":"2.0","id":{},"method":"x"}`):                                   `"id":null,"error":{"code":-32600`,
		"nonsense\n" + framed(hello):                                                       `"id":"a","result":{"capabilities"`,
		framed(hello) + framed(`{"jsonrpc":"2.0","id":1,"method":"shutdown"}`):             `"id":1,"result":null`,
		"Content-Length: 17000000\r\n\r\n" + strings.Repeat(" ", 17000000) + framed(hello): `"id":"a","result":{"capabilities"`,
	} {
		out, _ := said(t, text)
		assert.Contains(t, out, want, "%.60q", text)
	}
}

func framed(content string) string {
	var b bytes.Buffer
	_ = wire.NewWriter(&b).Write([]byte(content))
	return b.String()
}

func TestAPanicIsAnAnswerAndTheServerGoesOn(t *testing.T) {
	var log bytes.Buffer
	s := newSession(io.Discard, Options{Err: &log}.whole())
	s.ctx, s.leave = context.WithCancel(context.Background())
	breaks := func(context.Context, *session, *desk.View, json.RawMessage) (any, error) { panic("a hole") }
	_, err := s.guarded(s.ctx, wire.Message{Method: "textDocument/hover"}, breaks, s.desk.Now())
	assert.Equal(t, wire.InternalError, code(t, err))
	assert.Contains(t, err.Error(), "a hole")
	assert.Contains(t, log.String(), "textDocument/hover broke: a hole")
	assert.Contains(t, log.String(), "lsp_test.go", "the log says where")
	assert.NotPanics(t, func() {
		func() {
			defer s.judge.recovered("the check")
			panic("another")
		}()
	})
	assert.Contains(t, log.String(), "the check broke: another")
}

func TestARequestIsCancelled(t *testing.T) {
	var out bytes.Buffer
	s := newSession(&out, Options{}.whole())
	s.ctx, s.leave = context.WithCancel(context.Background())
	id := wire.ID(`"slow"`)
	ctx, cancel := context.WithCancel(s.ctx)
	s.running[id] = cancel
	waits := func(ctx context.Context, _ *session, _ *desk.View, _ json.RawMessage) (any, error) {
		require.NoError(t, cancelRequest(s, wire.CancelParams{ID: id}))
		<-ctx.Done()
		return nil, ctx.Err()
	}
	s.answer(ctx, wire.Message{ID: &id}, waits, s.desk.Now())
	assert.Contains(t, out.String(), `"id":"slow","error":{"code":-32800`)
}

func TestEncodingsAreAgreed(t *testing.T) {
	for _, c := range []struct {
		offered []string
		want    string
	}{
		{nil, "utf-16"}, {[]string{"utf-16"}, "utf-16"}, {[]string{"utf-16", "utf-8"}, "utf-8"}, {[]string{"utf-32", "utf-16"}, "utf-16"}, {[]string{"utf-32"}, "utf-32"}, {[]string{"ebcdic"}, "utf-16"},
	} {
		c2 := typingAs(t, func(p *wire.InitializeParams) { p.Capabilities.General.PositionEncodings = c.offered }, "a.malt", "# °🌾\nprocess \"°🌾\" { soka 7 h }\n")
		assert.Equal(t, c.want, c2.Server.Capabilities.PositionEncoding, "%v", c.offered)
		c2.Open("a.malt")
		found := c2.Found("a.malt")
		require.NotEmpty(t, found)
		assert.Contains(t, c2.Words("a.malt", found[0].Range), "soka", c.want)
	}
}

func TestEveryMessageIsInTheLog(t *testing.T) {
	var log bytes.Buffer
	text := framed(`{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}`)
	Serve(context.Background(), strings.NewReader(text), io.Discard, Options{Log: &log})
	assert.Regexp(t, `(?s)^-> \{"jsonrpc":"2.0","id":1,"method":"initialize".*\n<- \{"jsonrpc":"2.0","id":1,"result"`, log.String())
}

func TestEveryCapabilityHasItsHandler(t *testing.T) {
	c := loft(t)
	for name, is := range methods() {
		assert.NotNil(t, is.run, name)
	}
	assert.NotNil(t, c.Server.Capabilities.TextDocumentSync)
	assert.Equal(t, "maltwright", c.Server.ServerInfo.Name)
	assert.Nil(t, c.Server.Capabilities.DiagnosticProvider, "they are pushed")
}

func TestFilesAreWatchedWhereTheEditorDoes(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) {
		p.Capabilities.Workspace.DidChangeWatchedFiles.DynamicRegistration = true
	})
	m := c.Heard("client/registerCapability", 0)
	assert.Contains(t, string(m.Params), `"globPattern":"**/*.malt"`)
}

func TestSettingsAreTaken(t *testing.T) {
	s := usualSettings
	assert.True(t, s.Lenses && s.Forecast && s.Hints.Ends && s.Hints.Gates && s.Hints.Readings)
	s = s.with(json.RawMessage(`{"maltwright":{"hints":{"gates":false},"lenses":false}}`))
	assert.False(t, s.Hints.Gates || s.Lenses)
	assert.True(t, s.Hints.Ends && s.Forecast, "what is not said stays")
	for _, none := range []string{"", "null", "7", `"x"`, `{"hints":7}`, `{"maltwright":null}`, "{"} {
		assert.Equal(t, s, s.with(json.RawMessage(none)), none)
	}
	assert.False(t, s.with(json.RawMessage(`{"forecast":false}`)).Forecast)
}

func TestSettingsAreAskedForWhereTheEditorKeepsThem(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) { p.Capabilities.Workspace.Configuration = true })
	c.Answer(func(m wire.Message) any {
		if m.Method == "workspace/configuration" {
			return []any{map[string]any{"forecast": false}}
		}
		return nil
	})
	c.Tell("workspace/didChangeConfiguration", wire.DidChangeConfigurationParams{Settings: json.RawMessage("null")})
	c.Heard("workspace/configuration", 0)
	c.Heard("workspace/inlayHint/refresh", 0)
}

// Whether its stream ends or it is told to by a signal, and however much is yet to be written: nobody takes it.
func TestAnEditorThatDoesNotReadIsNotWaitedForAtTheEnd(t *testing.T) {
	hello := framed(`{"jsonrpc":"2.0","id":"a","method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}`)
	hover := framed(`{"jsonrpc":"2.0","id":"b","method":"textDocument/hover","params":{}}`)
	for _, signalled := range []bool{true, false} {
		in, typed := io.Pipe()
		unread, out := io.Pipe()
		t.Cleanup(func() { unread.Close(); typed.Close() }) // what hangs ends with the test
		ctx, cancel := context.WithCancel(context.Background())
		defer cancel()
		ended := make(chan int, 1)
		go func() { ended <- Serve(ctx, in, out, Options{}) }()
		_, err := io.WriteString(typed, hello)
		require.NoError(t, err)
		if signalled {
			cancel() // it hangs in the answer
		} else {
			_, err := wire.NewReader(unread).Read()
			require.NoError(t, err)
			_, err = io.WriteString(typed, hover)
			require.NoError(t, err)
			typed.Close()
		}
		select {
		case code := <-ended:
			assert.Equal(t, ExitBroken, code)
		case <-time.After(typist.Patience):
			t.Fatal("it does not end")
		}
	}
}
