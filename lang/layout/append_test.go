package layout

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

func appended(t *testing.T, text, line string) string {
	t.Helper()
	tree, ok := parse([]byte(text))
	require.True(t, ok)
	one, _ := syntax.Parse(source.New("line", []byte(line)))
	out, at := Append(tree, tree.Top.Statements[len(tree.Top.Statements)-1], one.Top.Statements[0], vocabulary.Batch)
	assert.Equal(t, strings.Fields(line), strings.Fields(string(out[at.Start:at.End])), "the place is that of the line")
	return string(out)
}

func TestALineIsPutBehindTheLast(t *testing.T) {
	const head = "batch \"1\" of \"x\" {\n"
	for _, c := range []struct{ name, text, line, want string }{
		{"in the column of the line above", head + "  weighed 7 kg at 08:00\n}\n", "read bed 17 °C at 09:00",
			head + "  weighed 7 kg at 08:00\n  read    bed 17 °C at 09:00\n}\n"},
		{"below an empty line where its verb is too long", head + "  read bed 17 °C at 08:00\n}\n", "weighed 7 kg at 09:00",
			head + "  read bed 17 °C at 08:00\n\n  weighed 7 kg at 09:00\n}\n"},
		{"as far in as its neighbour", head + "\tturned   at 08:00\n}\n", "turned at 09:00",
			head + "\tturned   at 08:00\n\tturned   at 09:00\n}\n"},
		{"behind a comment on the line", head + "  turned at 08:00  # warm; }\n}\n", "turned at 09:00",
			head + "  turned at 08:00  # warm; }\n  turned at 09:00\n}\n"},
		{"above the comments at the end", head + "  turned at 08:00\n  # the end\n}\n", "turned at 09:00",
			head + "  turned at 08:00\n  turned at 09:00\n  # the end\n}\n"},
		{"in a block on one line", head[:len(head)-1] + " turned at 08:00; } # c\n", "turned at 09:00",
			head[:len(head)-1] + " turned at 08:00; \n  turned at 09:00\n} # c\n"},
		{"in an empty block", head + "}", "turned at 09:00", head + "  turned at 09:00\n}"},
		{"in an empty block on one line", "batch \"1\" of \"x\" {}", "turned at 09:00", "batch \"1\" of \"x\" {\n  turned at 09:00\n}"},
		{"with a brace behind the last statement", head + "  turned at 08:00 }\n", "turned at 09:00",
			head + "  turned at 08:00 \n  turned at 09:00\n}\n"},
		{"with the line ends of the file", strings.ReplaceAll(head+"  turned at 08:00\n}\n", "\n", "\r\n"), "turned at 09:00",
			strings.ReplaceAll(head+"  turned at 08:00\n  turned at 09:00\n}\n", "\n", "\r\n")},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, appended(t, c.text, c.line)) })
	}
}

// Whatever line comes, a canonical file stays canonical, and loses nothing.
func TestACanonicalRecordStaysCanonical(t *testing.T) {
	files, err := filepath.Glob("../../examples/batches/26-*.malt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		now := string(text)
		for _, line := range []string{"turned at 08:00", "read bed 17 °C at 08:00", "tare 3 g", "counted chit 3 of 9 at 09:00", "felt rub chalky at 09:00"} {
			before := now
			now = appended(t, before, line)
			tree, ok := parse([]byte(now))
			require.True(t, ok)
			assert.Equal(t, now, string(Write(tree)), path)
			assert.True(t, strings.HasPrefix(now, strings.TrimSuffix(before, "}\n")))
		}
	}
}

// takesALine checks that a line can be appended to each block of a text that reads,
// with everything else as it was.
func takesALine(t testing.TB, text []byte, tree *syntax.Tree) {
	t.Helper()
	one, _ := syntax.Parse(source.New("line", []byte("turned at 08:00")))
	for i, s := range tree.Top.Statements {
		if s.Body == nil {
			continue
		}
		out, at := Append(tree, s, one.Top.Statements[0], vocabulary.Batch)
		again, _ := syntax.Parse(source.New("x", out))
		require.Len(t, again.Top.Statements, len(tree.Top.Statements), "%s", out)
		list := again.Top.Statements[i].Body.Statements
		require.Len(t, list, len(s.Body.Statements)+1, "%s", out)
		require.Equal(t, at, list[len(list)-1].Span, "%s", out)
		added := len(out) - len(text)
		cut := at.End // what was put in ends with the line, or with the end of the line below it
		for cut < len(out) && string(out[:cut-added])+string(out[cut:]) != string(text) && cut < at.End+added {
			cut++
		}
		require.Equal(t, string(text), string(out[:cut-added])+string(out[cut:]), "everything else must be as it was")
	}
}
