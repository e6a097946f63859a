package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/founding"
)

// newLines runs new in a folder with lines that are typed behind one another, Enter alone for
// each question but the last, which is whether to write.
func newLines(t *testing.T, folder, last string) (int, string, string) {
	t.Helper()
	a := founding.Answers{}
	for {
		q, open := founding.Next(a, founding.There{})
		if !open {
			break
		}
		a[q.Key] = q.Usual
		if q.Kind != founding.OneOf && q.FindOut != "" || q.Kind == founding.OneOf && choiceOf(q, q.Usual) == len(q.Choices) {
			a[q.Key] = founding.DontKnow
		}
	}
	var out, errs strings.Builder
	w := World{In: strings.NewReader(strings.Repeat("\n", len(a)) + last), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
	return Main(w, []string{"new"}), out.String(), errs.String()
}

func TestNoAtLastWritesNothing(t *testing.T) {
	folder := t.TempDir()
	code, out, errs := newLines(t, folder, "no\n")
	assert.Equal(t, ExitClean, code, errs)
	assert.Contains(t, out, "Write these files?")
	assert.True(t, strings.HasSuffix(out, "\nNothing is written.\n"), out)
	assert.Empty(t, begun(t, folder))
}

func TestBackAtLastOpensTheLastQuestion(t *testing.T) {
	folder := t.TempDir()
	code, out, errs := newLines(t, folder, "back\nEveryday\nyes\n")
	assert.NotEqual(t, ExitUsage, code, errs)
	assert.Contains(t, out, `process "Everyday"`)
	assert.Equal(t, []string{"everyday.malt", "home.malt"}, begun(t, folder))
}

// Where the second file cannot be written the first is taken back.
func TestBothFilesAreWrittenOrNone(t *testing.T) {
	folder := t.TempDir()
	a, ok := founding.Like("home-oven", founding.Metric)
	require.True(t, ok)
	made, err := founding.Write(t.Context(), a, founding.There{})
	require.NoError(t, err)
	require.Len(t, made.Files, 2)
	var out strings.Builder
	f := founded{New: New{Folder: "."}, world: &World{Out: &out, Err: &out, Folder: folder}, ctx: t.Context(), folder: folder}
	second := filepath.Join(folder, made.Files[1].Name)
	require.NoError(t, os.WriteFile(second, []byte("# mine\n"), 0o644))
	err = f.put(made.Files)
	assert.ErrorContains(t, err, "is there already, and is left as it is")
	assert.Equal(t, []string{made.Files[1].Name}, begun(t, folder))
	text, err := os.ReadFile(second)
	require.NoError(t, err)
	assert.Equal(t, "# mine\n", string(text))
}
