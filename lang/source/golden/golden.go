// Package golden compares what a test got with what a file under testdata says.
//
// With MALTWRIGHT_UPDATE=1 in the environment every such file is written anew
// instead; nothing else updates one. The flag -long runs long studies whole (long.go).
// Only tests use this package.
package golden

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/require"
)

// Updating tells whether the files are to be written instead of compared.
func Updating() bool { return os.Getenv("MALTWRIGHT_UPDATE") == "1" }

// File compares got with the file at path, or writes it there.
func File(t testing.TB, path, got string) {
	t.Helper()
	if Updating() {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	Same(t, path, string(want), got)
}

// Same compares what a golden file holds with what was got, and shows the lines that
// differ and no others.
func Same(t testing.TB, name, want, got string) bool {
	t.Helper()
	if want == got {
		return true
	}
	t.Errorf("%s; MALTWRIGHT_UPDATE=1 writes it anew\n%s", name, diff.Diff("golden", []byte(want), "got", []byte(got)))
	return false
}

// Case is one case of an archive: the files below one of its folders.
type Case struct {
	Name  string
	Files map[string]string
}

// Output is the name, in a case, of what the test must get from the other files.
const Output = "findings"

// Archive runs each case of a txtar file. A case is a folder of the archive; what
// run makes of its files is compared with its file "findings", or written there.
func Archive(t *testing.T, path string, run func(*testing.T, Case) string) {
	archive, err := txtar.ParseFile(path)
	require.NoError(t, err)
	got := map[string]string{}
	cases := casesOf(archive)
	require.NotEmpty(t, cases, "%s holds no case", path)
	for _, c := range cases {
		t.Run(c.Name, func(t *testing.T) {
			got[c.Name] = run(t, c)
			if !Updating() {
				Same(t, path+", "+c.Name, c.Files[Output], got[c.Name])
			}
		})
	}
	if Updating() {
		archive.Files = updated(archive.Files, cases, got)
		require.NoError(t, os.WriteFile(path, txtar.Format(archive), 0o644))
	}
}

func casesOf(archive *txtar.Archive) []Case {
	var list []Case
	for _, f := range archive.Files {
		name, file, _ := strings.Cut(f.Name, "/")
		if n := len(list); n == 0 || list[n-1].Name != name {
			list = append(list, Case{name, map[string]string{}})
		}
		list[len(list)-1].Files[file] = string(f.Data)
	}
	return list
}

// updated puts what was got behind the inputs of each case.
func updated(files []txtar.File, cases []Case, got map[string]string) []txtar.File {
	var out []txtar.File
	for _, c := range cases {
		for _, f := range files {
			if strings.HasPrefix(f.Name, c.Name+"/") && f.Name != c.Name+"/"+Output {
				out = append(out, f)
			}
		}
		if text, ok := got[c.Name]; ok {
			out = append(out, txtar.File{Name: c.Name + "/" + Output, Data: []byte(text)})
		}
	}
	return out
}
