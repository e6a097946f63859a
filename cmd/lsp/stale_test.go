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

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// alone is a session that nothing runs in, for what happens between two of its goroutines. What it says is read off
// the stream.
func alone(t *testing.T) (*session, io.Reader) {
	t.Helper()
	heard, out := io.Pipe()
	s := newSession(out, Options{}.whole())
	s.ctx, s.leave = context.WithCancel(context.Background())
	t.Cleanup(func() {
		s.leave()
		heard.Close()
		s.work.Wait()
	})
	return s, heard
}

// opened is what is open under an address.
func opened(t *testing.T, s *session, uri string) (*desk.View, *desk.Doc) {
	t.Helper()
	view := s.desk.Now()
	doc, err := view.At(uri)
	require.NoError(t, err)
	return view, doc
}

// An editor that reads a file anew closes and opens it, and counts its versions from the start. A look at the words of
// before that ends late must not stand in the way of those that are open now.
func TestALookThatEndsLateSaysNothingOfABufferThatWasOpenedAnew(t *testing.T) {
	s, heard := alone(t)
	go func() { _, _ = io.Copy(io.Discard, heard) }()
	const uri = "untitled:a"
	s.desk.Open(uri, 7, "soka 7 h\n")
	before, old := opened(t, s, uri)
	s.desk.Close(uri)
	s.judge.closed(old.Path, uri)
	s.desk.Open(uri, 1, "vessel \"tub\" { holds 25 l }\n")
	s.judge.words(before, old)
	assert.Nil(t, s.judge.docs[old.Path], "it is told of what is closed")
	after, doc := opened(t, s, uri)
	s.judge.words(after, doc)
	require.NotNil(t, s.judge.docs[doc.Path])
	assert.Equal(t, int32(1), s.judge.docs[doc.Path].version)
	assert.Same(t, s.judge.docs[doc.Path].words.Doc, doc)

	checked, err := before.Checked(old.Path)
	require.NoError(t, err)
	s.margins.take(before, old, checked, before.Check(old, check.Options{Context: s.ctx}))
	assert.Empty(t, s.margins.docs, "nor is anything kept of it")
}

// Whoever waits for a forecast of words that are no more would wait in vain, and hold up those behind.
func TestNobodyWaitsForAForecastOfWordsThatAreGone(t *testing.T) {
	serve := func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Quiet: time.Hour, Wait: time.Hour})
	}
	c := typist.Sit(t, serve, nil, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	var waiting []wire.ID
	for range 2 * mostAtOnce {
		waiting = append(waiting, c.Send("textDocument/inlayHint", wire.InlayHintParams{TextDocument: c.Document("pale.malt"), Range: all}))
	}
	c.TypeAt("pale.malt", 0, 0, "#\n")
	for _, id := range waiting {
		assert.Nil(t, c.Wait(id).Error)
	}
}

func TestNothingOfAForecastStaysOnceTheyAreSwitchedOff(t *testing.T) {
	c := typing(t, "pale.malt", strings.Replace(example(t, "pale.malt"), "soak 7 h", "soak 2 h", 1), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	c.Until("pale.malt", "a finding of the forecast", func(list []wire.Diagnostic) bool { return len(list) > 0 })
	require.NotEmpty(t, hints(c, "pale.malt"))
	c.Tell("workspace/didChangeConfiguration", wire.DidChangeConfigurationParams{Settings: []byte(`{"maltwright":{"forecast":false}}`)})
	c.Until("pale.malt", "nothing", func(list []wire.Diagnostic) bool { return len(list) == 0 })
	assert.Empty(t, hints(c, "pale.malt"))
	assert.Empty(t, lenses(c, "pale.malt"))
	c.Tell("workspace/didChangeConfiguration", wire.DidChangeConfigurationParams{Settings: []byte(`{"maltwright":{"forecast":true}}`)})
	c.Until("pale.malt", "it again", func(list []wire.Diagnostic) bool { return len(list) > 0 })
	assert.NotEmpty(t, hints(c, "pale.malt"))
}

// An editor that is slow to answer is not told the same again and again.
func TestAnEditorIsToldOnceAtATimeToAskAgain(t *testing.T) {
	s, heard := alone(t)
	frames := wire.NewReader(heard)
	told := func() wire.Message {
		content, err := frames.Read()
		require.NoError(t, err)
		m, err := wire.Parse(content)
		require.NoError(t, err)
		assert.Equal(t, refreshLenses, m.Method)
		return m
	}
	for range 5 {
		s.refreshes.tell(s, refreshLenses, true)
		s.refreshes.tell(s, refreshHints, false)
	}
	first := told()
	s.answered(wire.Message{ID: first.ID, Result: json.RawMessage("null")})
	second := told()
	assert.NotEqual(t, *first.ID, *second.ID)
	s.answered(wire.Message{ID: second.ID, Error: &wire.Error{Message: "not now"}})
	s.work.Wait() // nothing is under way any more
	assert.False(t, s.refreshes.under[refreshLenses])
	s.refreshes.tell(s, refreshLenses, true)
	told()
}

// Whatever breaks on its own goroutine breaks alone, holds nothing up, and is told once.
func TestWhatBreaksInTheBackgroundHoldsNothingUp(t *testing.T) {
	s, heard := alone(t)
	go func() { _, _ = io.Copy(io.Discard, heard) }()
	var log strings.Builder
	s.options.Err = &log
	const uri = "untitled:a"
	s.desk.Open(uri, 1, "vessel \"tub\" { holds 25 l }\n")
	view, doc := opened(t, s, uri)
	checked, err := view.Checked(doc.Path)
	require.NoError(t, err)
	report := view.Check(doc, check.Options{Context: s.ctx})
	close(s.margins.came) // it breaks when it is closed again
	s.margins.take(view, doc, checked, report)
	require.True(t, s.margins.mu.TryLock(), "the margins stay locked")
	s.margins.came = make(chan struct{})
	s.margins.mu.Unlock()
	assert.Contains(t, log.String(), "the margin of untitled:a broke")

	saves := s.saves
	s.saves = nil
	for range 3 {
		s.judge.pass()
	}
	assert.Equal(t, 1, strings.Count(log.String(), "what is told of untitled:a broke"), log.String())
	s.saves = saves
	s.judge.pass()
	require.NotNil(t, s.judge.docs[doc.Path])
	assert.True(t, s.judge.docs[doc.Path].told)
}
