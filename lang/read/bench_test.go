package read

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func BenchmarkLoadExample(b *testing.B) {
	text, err := os.ReadFile("testdata/loft/pale.malt")
	require.NoError(b, err)
	in := loft(b)
	b.SetBytes(int64(len(text) + len(in["loft.malt"])))
	for b.Loop() {
		Load("pale.malt", text, ".", in)
	}
}

// Many names, none of them known: looking for the nearest must not take the
// product of the two.
func BenchmarkLoadUnknownNames(b *testing.B) {
	var text strings.Builder
	for i := range 4000 {
		fmt.Fprintf(&text, "vessel \"the blue tub by the window %d\" { holds 25 l }\n", i)
	}
	for i := range 900 {
		fmt.Fprintf(&text, "process \"p%d\" { steep in \"the bleu tub by the wall %d\" { soak 7 h at 13 °C } }\n", i, i)
	}
	b.SetBytes(int64(text.Len()))
	for b.Loop() {
		Load("main.malt", []byte(text.String()), ".", files{})
	}
}
