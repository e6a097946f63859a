package lsp

import (
	"context"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source/golden"
)

// An hour of typing, ten keystrokes a second without a rest, leaves no more behind than its first tenth: what is
// kept by text is let go of. Names are typed letter by letter, numbers change, files come and go.
func TestAnHourOfTypingStaysInItsMemory(t *testing.T) {
	strokes := 600
	if golden.Long() {
		strokes = 36000
	}
	serve := func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Quiet: time.Millisecond, Look: time.Second, Members: 10})
	}
	c := typist.Sit(t, serve, nil, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"), "26-03.malt", example(t, "batches/26-03.malt"))
	for _, name := range []string{"pale.malt", "loft.malt", "26-03.malt"} {
		c.Open(name)
		c.Found(name)
	}
	before := heap()
	var early uint64
	for i := range strokes {
		stroke(t, c, i)
		if i == strokes/10 {
			early = heap()
		}
	}
	late := heap()
	t.Logf("%d keystrokes: the heap has %.1f MB before, %.1f after a tenth, %.1f after all", strokes, mb(before), mb(early), mb(late))
	assert.Less(t, mb(late), mb(early)+48, "it grows with what is typed")
}

// stroke is the i-th keystroke. Each fiftieth has the forecast waited for, and hints asked.
func stroke(t *testing.T, c *typist.Typist, i int) {
	name := "pale.malt"
	is := c.Text(name)
	title := is[strings.Index(is, "process \"")+len("process \""):]
	title = title[:strings.Index(title, "\"")]
	at := strings.Index(is, title)
	switch {
	case i%50 == 49: // another number, and what is said of it
		line := is[strings.Index(is, "soak "):]
		line = line[:strings.Index(line, " in water")]
		c.Type(name, line, fmt.Sprintf("soak %d.%02d h", 6+i/50%3, i/50%97))
		hints(c, name)
		if i%500 == 499 {
			c.Ask("textDocument/codeLens", wire.CodeLensParams{TextDocument: c.Document(name)}, nil)
			c.Ask("textDocument/completion", c.Behind(name, "soak "), nil)
			c.Ask("workspace/symbol", wire.WorkspaceSymbolParams{Query: "l"}, nil)
			other := fmt.Sprintf("untitled:%d", i)
			c.OpenWith(other, example(t, "pale.malt"))
			c.Found(other)
			c.Close(other)
		}
	case len(title) > 30:
		c.TypeAt(name, at, len(title), "L")
	default:
		c.TypeAt(name, at+len(title), 0, string(rune('a'+i*7%26)))
	}
	if i%3 == 0 {
		c.Found(name)
		c.Took = nil
	}
	require.NotEmpty(t, c.Text(name))
}

func heap() uint64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

func mb(bytes uint64) float64 { return float64(bytes) / (1 << 20) }
