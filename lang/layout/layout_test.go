package layout

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
	"maltwright/lang/syntax"
)

func parse(text []byte) (*syntax.Tree, bool) {
	t, found := syntax.Parse(source.New("x.malt", text))
	worst, any := finding.Worst(found)
	return t, !any || worst < finding.Fault
}

// holds checks the four properties on a text that reads.
func holds(t testing.TB, text []byte) {
	t.Helper()
	before, ok := parse(text)
	if !ok {
		return
	}
	out := Write(before)
	after, ok := parse(out)
	require.True(t, ok, "the output must read:\n%s", out)
	require.True(t, sameSayings(before, after), "the output must mean the same:\n%s\n%q\n%q", out, sayings(&before.Top, "file", ""), sayings(&after.Top, "file", ""))
	require.Equal(t, allOwners(before), allOwners(after), "every comment must keep its owner:\n%s", out)
	require.Equal(t, string(out), string(Write(after)), "written again it must be the same")
	takesALine(t, text, before)
	takesALine(t, out, after)
}

func samples(t testing.TB) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	for _, pattern := range []string{"../../examples/*.malt", "../../examples/broken/*.malt", "../../examples/batches/*.malt", "../../examples/h*/*.malt", "../../check/testdata/*/*.malt", "testdata/*.malt"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			out[f] = text
		}
	}
	return out
}

func TestTheFourPropertiesHoldOnEverySample(t *testing.T) {
	for name, text := range samples(t) {
		t.Run(filepath.Base(name), func(t *testing.T) { holds(t, text) })
	}
}

// Line ends and a byte-order mark are the editor's: they stay, and nothing else of the
// layout hangs on them.
func TestLineEndsAndAByteOrderMarkStay(t *testing.T) {
	for name, text := range samples(t) {
		tree, ok := parse(text)
		if !ok || bytes.ContainsAny(text, "\r\ufeff") {
			continue
		}
		want := string(Write(tree))
		for _, mark := range []string{"", "\ufeff"} {
			for _, end := range []string{"\n", "\r\n", "\r"} {
				other := []byte(mark + strings.ReplaceAll(string(text), "\n", end))
				tree, ok := parse(other)
				require.True(t, ok, name)
				require.Equal(t, mark+strings.ReplaceAll(want, "\n", end), string(Write(tree)), "%s with %q and %q", name, mark, end)
			}
		}
		holds(t, []byte("\ufeff"+strings.ReplaceAll(string(text), "\n", "\r\n")))
	}
}

func TestOfMixedLineEndsTheFirstCounts(t *testing.T) {
	for text, want := range map[string]string{
		"vessel \"t\" { holds 25 l }\r\nsite \"L\" {}\n":   "vessel \"t\" { holds 25 l }\r\nsite \"L\"   {}\r\n",
		"vessel \"t\" { holds 25 l }\n\nsite \"L\" {}\r\n": "vessel \"t\" { holds 25 l }\n\nsite \"L\" {}\n",
		"# a stray one\rvessel \"t\" { holds 25 l }\r\n":   "# a stray one\r\nvessel \"t\" { holds 25 l }\r\n",
		"\ufeff": "\ufeff", "\r\n\r\n": "",
	} {
		tree, ok := parse([]byte(text))
		require.True(t, ok)
		assert.Equal(t, want, string(Write(tree)))
		holds(t, []byte(text))
	}
}

// The canonical sample shows the whole style on one page.
func TestTheCanonicalSampleIsCanonical(t *testing.T) {
	want, err := os.ReadFile("testdata/canonical.malt")
	require.NoError(t, err)
	tree, ok := parse(want)
	require.True(t, ok)
	assert.Equal(t, string(want), string(Write(tree)))
	messy, err := os.ReadFile("testdata/messy.malt")
	require.NoError(t, err)
	tree, ok = parse(messy)
	require.True(t, ok)
	assert.Equal(t, string(want), string(Write(tree)))
}

func TestThePageShowsTheCanonicalSample(t *testing.T) {
	want, err := os.ReadFile("testdata/canonical.malt")
	require.NoError(t, err)
	page, err := os.ReadFile("../../docs/layout.md")
	require.NoError(t, err)
	assert.Contains(t, string(page), "```malt\n"+string(want)+"```\n")
}

func TestPlainKnowsADifferenceFromATemperature(t *testing.T) {
	for _, text := range []string{"thermometer 1.44 °F error 0.72 °F", "thermometer 0.8 K error 0.4 °C"} {
		tree, ok := parse([]byte("house \"L\" { " + text + " }"))
		require.True(t, ok)
		assert.Equal(t, "house \"L\"\n  thermometer 0.8 °C error 0.4 °C\n", string(Plain(tree)))
	}
}

func TestPlainIsTheSameForWhatSaysTheSame(t *testing.T) {
	files := map[string]string{
		"units":    "site \"L\" { air 46.4 to 59 °F; altitude 140 m }\nvessel \"t\" { holds 25000 ml } # c\n",
		"as plain": "site \"L\"\n{\nair 8 to 15 °C\naltitude 140 m\n}\n# d\nvessel \"t\" { holds 25 l }\n",
	}
	var got []string
	for _, text := range files {
		tree, _ := parse([]byte(text))
		got = append(got, string(Plain(tree)))
	}
	assert.Equal(t, got[0], got[1])
	assert.Contains(t, got[0], "  air 8 to 15 °C\n")
	for name, text := range samples(t) {
		tree, ok := parse(text)
		if !ok {
			continue
		}
		again, _ := parse(Write(tree))
		assert.Equal(t, string(Plain(tree)), string(Plain(again)), name)
		assert.NotContains(t, string(Plain(tree)), "#", name)
	}
}

// FuzzLayout lays out short texts, as FuzzParse reads them and for the same reason;
// TestTheFourPropertiesHoldOnBrokenSamples has whole files.
func FuzzLayout(f *testing.F) {
	const longest = 200 // bytes
	for _, text := range samples(f) {
		for _, piece := range spoil.Pieces(string(text), longest) {
			f.Add([]byte(piece))
			f.Add([]byte("\ufeff" + strings.ReplaceAll(piece, "\n", "\r\n")))
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) <= longest {
			holds(t, text)
		}
	})
}

func TestTheFourPropertiesHoldOnBrokenSamples(t *testing.T) {
	all := samples(t)
	for _, path := range []string{"../../examples/pale.malt", "../../examples/loft.malt", "testdata/messy.malt", "testdata/canonical.malt"} {
		text := string(all[path])
		require.NotEmpty(t, text, path)
		read := 0
		for seed := range spoil.Seeds(40, 5_000) {
			broken := []byte(spoil.Text(spoil.Random(seed), text, spoil.Words(text)))
			if _, ok := parse(broken); ok {
				read++
			}
			holds(t, broken)
		}
		assert.Greater(t, read, 5, "%s: too few still read for this to ask anything", path)
	}
}

func BenchmarkWrite(b *testing.B) {
	text, err := os.ReadFile("../../examples/pale.malt")
	require.NoError(b, err)
	tree, _ := parse(text)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		Write(tree)
	}
}
