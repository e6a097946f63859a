package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manyFiles fills a folder with so many processes of the pale example, and its house.
func manyFiles(t testing.TB, n int) string {
	t.Helper()
	folder := t.TempDir()
	pale, err := os.ReadFile("../../examples/pale.malt")
	require.NoError(t, err)
	loft, err := os.ReadFile("../../examples/loft.malt")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "loft.malt"), loft, 0o644))
	for i := range n {
		text := strings.Replace(string(pale), "from 6 kg", fmt.Sprintf("from %.3f kg", 5+float64(i)/1000), 1)
		require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("pale-%04d.malt", i)), []byte(text), 0o644))
	}
	return folder
}

func checkFolder(t testing.TB, folder string, args ...string) (string, int) {
	var out, errs bytes.Buffer
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
	code := Main(w, append([]string{"check", "."}, args...))
	require.Empty(t, errs.String())
	return out.String(), code
}

// However many workers there are, what is printed is the same.
func TestManyFilesAreReportedInTheSameOrder(t *testing.T) {
	folder := manyFiles(t, 40)
	for i := 0; i < 40; i += 3 {
		path := filepath.Join(folder, fmt.Sprintf("pale-%04d.malt", i))
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(path, bytes.Replace(text, []byte("soak 7 h"), []byte("soke 7 h"), 1), 0o644))
	}
	first, code := checkFolder(t, folder, "--format", "json", "--no-forecast")
	assert.Equal(t, ExitFindings, code)
	assert.Equal(t, 14, strings.Count(first, `"unknown-word"`))
	for range 2 {
		again, _ := checkFolder(t, folder, "--format", "json", "--no-forecast")
		require.Equal(t, first, again)
	}
}

func TestOneFileOfManyThatCannotBeReadIsAnError(t *testing.T) {
	w := World{}
	files := make([]input, 9)
	for i := range files {
		files[i] = input{name: fmt.Sprint(i), root: t.TempDir(), dir: "."}
	}
	files[4].root = filepath.Join(files[4].root, "gone")
	files[7].root = filepath.Join(files[7].root, "gone too")
	_, err := w.checkAll(files, Check{}.options(t.Context()))
	assert.ErrorContains(t, err, "gone: there is no such file")
}

// BenchmarkCheckThousand checks a folder of a thousand processes, as the command
// does.
func BenchmarkCheckThousand(b *testing.B) {
	folder := manyFiles(b, 1000)
	for name, args := range map[string][]string{"forecast": nil, "no forecast": {"--no-forecast"}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				out, code := checkFolder(b, folder, append(args, "--format", "lines")...)
				require.Equal(b, ExitClean, code, out)
			}
		})
	}
}
