package syntax

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
)

// generated is a process text of about so many bytes: long, but of a shape that
// somebody could have written.
func generated(size int) string {
	var b strings.Builder
	for i := 0; b.Len() < size; i++ {
		fmt.Fprintf(&b, "# batch %d of the season, as it was done\n", i)
		fmt.Fprintf(&b, "process \"Loft pale %d\" {\n  make pale malt\n  from 6 kg of \"Far field 2026\"\n", i)
		b.WriteString("  steep in \"blue tub\" to moisture 43 to 45 % {\n    repeat at most 3 times until moisture at least 43 % {\n" +
			"      soak 7 h in water at 13 °C   # from the well, drawn the evening before\n      rest 9 h in air at 14 °C\n    }\n  }\n")
		b.WriteString("  kiln in \"tray kiln\" {\n    # The fan runs all the time; the flap is half open until the break.\n" +
			"    dry at air-on 50 °C until moisture at most 25 % allow 6 to 14 h\n    gate moisture at most 10 %\n  }\n}\n\n")
	}
	return b.String()
}

func benchmarkParse(b *testing.B, text string) {
	f := source.New("x", []byte(text))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Parse(f)
	}
}

func BenchmarkParseGenerated(b *testing.B) { benchmarkParse(b, generated(1_000_000)) }

func BenchmarkParseExample(b *testing.B) {
	text, err := os.ReadFile("../../examples/pale.malt")
	require.NoError(b, err)
	benchmarkParse(b, string(text))
}

// Texts that nobody writes must not take longer, byte for byte, than one that
// somebody does; a reader that looks ahead too far shows here.
func BenchmarkParseOdd(b *testing.B) {
	for _, piece := range []string{"{", "}", "{}", "\"", "\"\"", "\\", "8 ", "8 h ", "1h", "8-", "- ", "#", "#\n", "in ", "at ", "9 in ", "% dry ", "a", "a ", "a\n", "a;", ";", "\n", "\r", "\t", "8 1/3 ", "½", ".5", "7 am ", "7 to ", "8 deg ", "8 sq", "8,", "°", "\xb0", "\u202e", "“", "at least ", "2026-03-06 to ", "is 8 to "} {
		b.Run(fmt.Sprintf("%q", piece), func(b *testing.B) {
			benchmarkParse(b, strings.Repeat(piece, source.MaxBytes/len(piece)))
		})
	}
}
