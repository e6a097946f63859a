package lsp

import (
	"context"
	"io"
	"testing"
	"time"

	"maltwright/cmd/lsp/typist"
)

// What hints take from the keystroke on, without the pause: the forecast, and the way to the editor and back.
func BenchmarkHints(b *testing.B) {
	for _, name := range []string{"pale.malt", "deep-bed.malt", "box.malt"} {
		b.Run(name, func(b *testing.B) {
			serve := func(ctx context.Context, in io.Reader, out io.Writer) int {
				return Serve(ctx, in, out, Options{Quiet: time.Nanosecond, Members: 10})
			}
			c := typist.Sit(b, serve, nil, name, example(b, name), "loft.malt", example(b, "loft.malt"))
			c.Open(name)
			hints(c, name)
			texts := []string{"soak 7 h in", "soak 6.9 h in"}
			var took []time.Duration
			for i := 0; b.Loop(); i++ {
				from := time.Now()
				c.Type(name, texts[i%2], texts[1-i%2])
				if with(hints(c, name), "soak") == "" {
					b.Fatal("there are no hints")
				}
				took = append(took, time.Since(from))
			}
			spread(b, took)
		})
	}
}
