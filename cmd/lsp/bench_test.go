package lsp

import (
	"context"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// The times of docs/lsp.md: what an editor waits for, over a pair of pipes. Half of the times are below
// p50-ms, and 95 in a hundred below p95-ms; ns/op holds what the one who types takes too.

// at is the server as an editor runs it, but with a pause of its own.
func at(quiet time.Duration) typist.Serve {
	return func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Quiet: quiet})
	}
}

// sat is typing in the loft of the examples, served so.
func sat(b *testing.B, serve typist.Serve) *typist.Typist {
	b.Helper()
	c := typist.Sit(b, serve, nil, "pale.malt", example(b, "pale.malt"), "loft.malt", example(b, "loft.malt"))
	c.Open("pale.malt")
	c.Found("pale.malt")
	return c
}

// spread reports how times are spread.
func spread(b *testing.B, took []time.Duration) {
	b.Helper()
	slices.Sort(took)
	for share, name := range map[int]string{50: "p50-ms", 95: "p95-ms"} {
		b.ReportMetric(float64(took[min(len(took)-1, len(took)*share/100)])/1e6, name)
	}
}

// A step is typed letter by letter on a line of its own, and taken away again: most of what is typed does not read.
func BenchmarkKeystroke(b *testing.B) {
	c := sat(b, at(0))
	at := strings.Index(c.Text("pale.malt"), "soak 7 h") + len("soak 7 h")
	word := "\n      soak 6 h in water at 14 to 15 °C # cold"
	c.Took = nil
	for i := 0; b.Loop(); i++ {
		if n := i % (2 * len(word)); n < len(word) {
			c.TypeAt("pale.malt", at+n, 0, word[n:n+1])
		} else {
			c.TypeAt("pale.malt", at+2*len(word)-n-1, 1, "")
		}
		c.Found("pale.malt")
	}
	spread(b, c.Took)
}

// The same with the pause over at once, to the findings of the forecast: a soak is too short by turns.
func BenchmarkForecast(b *testing.B) {
	c := sat(b, at(time.Nanosecond))
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		from, to := "soak 7 h", "soak 2 h"
		if i%2 == 1 {
			from, to = to, from
		}
		began := time.Now()
		c.Type("pale.malt", from, to)
		c.Until("pale.malt", "findings of the forecast, or none", func(list []wire.Diagnostic) bool { return len(list) > 0 == (i%2 == 0) })
		took = append(took, time.Since(began))
	}
	spread(b, took)
}

// What may stand behind a step that is being typed.
func BenchmarkOffered(b *testing.B) {
	c := sat(b, at(0))
	c.Type("pale.malt", "soak 7 h in water", "soak 7 h ")
	var took []time.Duration
	for b.Loop() {
		began := time.Now()
		var list wire.CompletionList
		c.Ask("textDocument/completion", c.Behind("pale.malt", "soak 7 h "), &list)
		took = append(took, time.Since(began))
	}
	spread(b, took)
}

// Start to the answer of initialize; the program itself starts besides.
func BenchmarkStart(b *testing.B) {
	var took []time.Duration
	for b.Loop() {
		began := time.Now()
		c := typist.Begin(b, at(0))
		c.Ask("initialize", wire.InitializeParams{Capabilities: typist.Able()}, &c.Server)
		took = append(took, time.Since(began))
		c.Ended()
	}
	spread(b, took)
}
