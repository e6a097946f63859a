// Package typist is, for tests, somebody at an editor: a client of the server over a pair of
// pipes that writes files, opens them, types, asks, and waits for what it is told.
//
// A test of a handler in cmd/lsp is written so (typing is in cmd/lsp/typing_test.go):
//
//	c := typing(t, "pale.malt", pale, "loft.malt", loft) // names and texts of files in a new folder
//	c.Open("pale.malt")
//	c.Type("pale.malt", "soak 7 h", "soak 9 h")           // replaces the first such words, as an edit of its range
//	var h wire.Hover
//	c.Ask("textDocument/hover", c.At("pale.malt", "soak"), &h) // a position: the start of the first such words
//	c.Found("pale.malt")                                   // the findings told of the version as it is now
//
// Ask fails the test where the answer is an error; Try gives it.
package typist

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

// Patience is how long a typist waits for anything, before the test fails: long, since a machine may have much else to do,
// and look for races besides.
const Patience = 3 * time.Minute

// Serve is a server to be run over streams, which gives its exit code.
type Serve func(ctx context.Context, in io.Reader, out io.Writer) int

// Typist is one who types. Its methods fail the test where something goes wrong.
type Typist struct {
	T      testing.TB
	Folder string // the folder of the files, absolute
	Server wire.InitializeResult
	Took   []time.Duration // from each change to the findings of its version, as they were waited for

	in    *wire.Writer
	close func()
	code  chan int
	texts map[string]*text
	enc   source.Encoding
	last  int

	mu      sync.Mutex
	came    *sync.Cond
	answers map[wire.ID]wire.Message
	told    map[string]told // findings, by the address of their document
	heard   []wire.Message  // everything else, in its order
	answer  func(wire.Message) any
	ended   bool
}

type text struct {
	version int32
	text    string
	changed time.Time
}

type told struct {
	wire.PublishDiagnosticsParams
	when  time.Time
	times int
}

// Able is an editor that can do everything, and is told its findings.
func Able() wire.ClientCapabilities {
	var c wire.ClientCapabilities
	c.Workspace.WorkspaceEdit.DocumentChanges = true
	c.Workspace.ApplyEdit = true
	c.Workspace.InlayHint.RefreshSupport = true
	c.Workspace.CodeLens.RefreshSupport = true
	d := &c.TextDocument
	d.Synchronization = wire.TextDocumentSyncClientCapabilities{WillSave: true, WillSaveWaitUntil: true, DidSave: true}
	d.PublishDiagnostics = wire.PublishDiagnosticsClientCapabilities{RelatedInformation: true, VersionSupport: true, CodeDescriptionSupport: true, DataSupport: true, TagSupport: &wire.ClientDiagnosticTags{ValueSet: []uint32{1, 2}}}
	d.Completion.CompletionItem = wire.ClientCompletionItemOptions{SnippetSupport: true, DocumentationFormat: []string{wire.Markdown, wire.PlainText}, LabelDetailsSupport: true}
	d.Hover.ContentFormat = []string{wire.Markdown, wire.PlainText}
	d.DocumentSymbol.HierarchicalDocumentSymbolSupport = true
	d.Definition.LinkSupport = true
	d.CodeAction = wire.CodeActionClientCapabilities{CodeActionLiteralSupport: &wire.ClientCodeActionLiteralOptions{CodeActionKind: wire.ClientCodeActionKindOptions{ValueSet: []string{""}}}, IsPreferredSupport: true, DisabledSupport: true, DataSupport: true}
	d.Rename.PrepareSupport = true
	c.Window.ShowDocument = &wire.ShowDocumentClientCapabilities{Support: true}
	c.General.PositionEncodings = []string{"utf-16"}
	return c
}

// Sit begins to talk with a server over a new folder with some files: names and texts in turn. The
// folder is open in the editor. What the editor can do is as in Able, but for what change makes of it.
func Sit(t testing.TB, serve Serve, change func(*wire.InitializeParams), files ...string) *Typist {
	t.Helper()
	c := Begin(t, serve)
	for i := 0; i+1 < len(files); i += 2 {
		c.Write(files[i], files[i+1])
	}
	p := wire.InitializeParams{Capabilities: Able(), WorkspaceFolders: []wire.WorkspaceFolder{{URI: desk.URI(c.Folder), Name: "malt"}}}
	if change != nil {
		change(&p)
	}
	c.Ask("initialize", p, &c.Server)
	c.enc = map[string]source.Encoding{"utf-8": source.Bytes, "utf-32": source.Characters}[c.Server.Capabilities.PositionEncoding]
	if c.Server.Capabilities.PositionEncoding == "utf-16" {
		c.enc = source.UTF16
	}
	c.Tell("initialized", struct{}{})
	return c
}

// Begin runs a server over pipes and says nothing to it yet.
func Begin(t testing.TB, serve Serve) *Typist {
	t.Helper()
	toServer, typed := io.Pipe()
	heard, fromServer := io.Pipe()
	c := &Typist{T: t, Folder: folderOf(t), in: wire.NewWriter(typed), code: make(chan int, 1), texts: map[string]*text{}, answers: map[wire.ID]wire.Message{}, told: map[string]told{}}
	c.came = sync.NewCond(&c.mu)
	c.close = func() { typed.Close() }
	ctx, cancel := context.WithCancel(context.Background())
	served := make(chan struct{})
	go func() {
		c.code <- serve(ctx, toServer, fromServer)
		toServer.Close()
		fromServer.Close()
		close(served)
	}()
	go c.listen(wire.NewReader(heard))
	t.Cleanup(func() {
		typed.Close()
		cancel()
		<-served
	})
	return c
}

func folderOf(t testing.TB) string {
	dir, err := filepath.EvalSymlinks(t.TempDir()) // as the server names it
	require.NoError(t, err)
	return dir
}

func (c *Typist) listen(r *wire.Reader) {
	for {
		content, err := r.Read()
		if err != nil {
			c.mu.Lock()
			c.ended = true
			c.came.Broadcast()
			c.mu.Unlock()
			return
		}
		m, err := wire.Parse(content)
		if err != nil {
			m = wire.Message{Method: "no message: " + string(content)}
		}
		c.take(m)
	}
}

func (c *Typist) take(m wire.Message) {
	c.mu.Lock()
	defer c.mu.Unlock()
	defer c.came.Broadcast()
	switch {
	case m.Method == "" && m.ID != nil:
		c.answers[*m.ID] = m
	case m.Method == "textDocument/publishDiagnostics":
		var p wire.PublishDiagnosticsParams
		_ = json.Unmarshal(m.Params, &p)
		was := c.told[p.URI]
		c.told[p.URI] = told{p, time.Now(), was.times + 1}
	default:
		c.heard = append(c.heard, m)
		if m.ID != nil {
			go c.reply(m, c.answer)
		}
	}
}

// reply answers a request of the server: with null, or with what the test says.
func (c *Typist) reply(m wire.Message, answer func(wire.Message) any) {
	var result any
	if answer != nil {
		result = answer(m)
	}
	raw, _ := json.Marshal(result)
	c.Raw(wire.Message{Version: wire.Version, ID: m.ID, Result: raw})
}

// Answer sets what the editor answers to requests of the server.
func (c *Typist) Answer(answer func(wire.Message) any) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.answer = answer
}

// Raw sends a message as it is.
func (c *Typist) Raw(m wire.Message) {
	content, err := json.Marshal(m)
	if err == nil {
		err = c.in.Write(content)
	}
	if err != nil && !errors.Is(err, io.ErrClosedPipe) {
		c.T.Error(err)
	}
}

// Tell sends a notification.
func (c *Typist) Tell(method string, params any) {
	c.T.Helper()
	raw, err := json.Marshal(params)
	require.NoError(c.T, err)
	c.Raw(wire.Message{Version: wire.Version, Method: method, Params: raw})
}

// Send sends a request and gives its ID; Wait waits for the answer.
func (c *Typist) Send(method string, params any) wire.ID {
	c.T.Helper()
	raw, err := json.Marshal(params)
	require.NoError(c.T, err)
	c.last++
	id := wire.ID(strconv.Itoa(c.last))
	c.Raw(wire.Message{Version: wire.Version, ID: &id, Method: method, Params: raw})
	return id
}

// Wait waits for the answer to a request.
func (c *Typist) Wait(id wire.ID) wire.Message {
	c.T.Helper()
	var m wire.Message
	c.until("an answer to "+string(id), func() bool {
		got, ok := c.answers[id]
		m = got
		delete(c.answers, id) // whoever types for long asks much
		return ok
	})
	return m
}

// Try asks and gives the error of the answer, if it is one.
func (c *Typist) Try(method string, params, result any) error {
	c.T.Helper()
	m := c.Wait(c.Send(method, params))
	if m.Error != nil {
		return m.Error
	}
	if result != nil {
		require.NoError(c.T, json.Unmarshal(m.Result, result), "%s", m.Result)
	}
	return nil
}

// Ask asks, and fails where the answer is an error.
func (c *Typist) Ask(method string, params, result any) {
	c.T.Helper()
	require.NoError(c.T, c.Try(method, params, result), method)
}

// until waits for something, and fails where it does not come. The condition has the lock.
func (c *Typist) until(what string, is func() bool) {
	c.T.Helper()
	if !c.Within(Patience, is) {
		require.FailNow(c.T, "this did not come: "+what)
	}
}

// Within waits so long for something, and tells whether it came. The condition has the lock.
func (c *Typist) Within(wait time.Duration, is func() bool) bool {
	end := time.Now().Add(wait)
	timer := time.AfterFunc(wait, func() { c.came.Broadcast() })
	defer timer.Stop()
	c.mu.Lock()
	defer c.mu.Unlock()
	for !is() {
		if time.Now().After(end) || c.ended {
			return is()
		}
		c.came.Wait()
	}
	return true
}

// Heard waits for a message of the server of a method, the n-th of them from 0.
func (c *Typist) Heard(method string, n int) wire.Message {
	c.T.Helper()
	var m wire.Message
	c.until(method, func() bool {
		left := n
		for _, h := range c.heard {
			if h.Method == method {
				if left == 0 {
					m = h
					return true
				}
				left--
			}
		}
		return false
	})
	return m
}

// Ended closes the stream and gives the exit code of the server.
func (c *Typist) Ended() int {
	c.T.Helper()
	c.close()
	return c.Code()
}

// Code waits until the server ends and gives its exit code.
func (c *Typist) Code() int {
	c.T.Helper()
	select {
	case code := <-c.code:
		return code
	case <-time.After(Patience):
		require.FailNow(c.T, "the server does not end")
	}
	return -1
}

// Path is the path of a file of the folder; of untitled:x it is that.
func (c *Typist) Path(name string) string {
	if strings.Contains(name, ":") || filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(c.Folder, filepath.FromSlash(name))
}

// URI is the address of a file of the folder.
func (c *Typist) URI(name string) string { return desk.URI(c.Path(name)) }

// Document names a file of the folder.
func (c *Typist) Document(name string) wire.TextDocumentIdentifier {
	return wire.TextDocumentIdentifier{URI: c.URI(name)}
}

// Write writes a file to disk.
func (c *Typist) Write(name, text string) {
	c.T.Helper()
	require.NoError(c.T, os.MkdirAll(filepath.Dir(c.Path(name)), 0o755))
	require.NoError(c.T, os.WriteFile(c.Path(name), []byte(text), 0o644))
}
