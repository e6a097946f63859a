package highlight_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/write/highlight"
	"maltwright/lang/source/golden"
)

const (
	vimFolder   = "../../../docs/editors/vim"
	emacsFolder = "../../../docs/editors/emacs"
)

func TestTheModesHaveTheWordsOfTheVocabulary(t *testing.T) {
	golden.Between(t, filepath.Join(vimFolder, "syntax", "malt.vim"), `"`+highlight.ListsBegin, `"`+highlight.ListsEnd, highlight.Vim())
	golden.Between(t, filepath.Join(emacsFolder, "malt-mode.el"), `;;`+highlight.ListsBegin, `;;`+highlight.ListsEnd, "\n"+highlight.Emacs())
}

// tidy tells whether a sample is laid out as the language would.
func (s *sample) tidy() bool {
	return strings.HasPrefix(s.name, "..") && !strings.Contains(s.name, "broken")
}

// written puts the samples into a folder, and gives the file that lists them.
func written(t *testing.T, list []sample) (names []string, index string) {
	t.Helper()
	folder := t.TempDir()
	for i, s := range list {
		name := filepath.Join(folder, fmt.Sprintf("%03d.malt", i))
		require.NoError(t, os.WriteFile(name, []byte(s.text), 0o644))
		if s.tidy() {
			require.NoError(t, os.WriteFile(name+".tidy", nil, 0o644))
		}
		names = append(names, name)
	}
	index = filepath.Join(folder, "texts")
	require.NoError(t, os.WriteFile(index, []byte(strings.Join(names, "\n")+"\n"), 0o644))
	return names, index
}

// lookUp gives the path of an editor, or skips the test.
func lookUp(t *testing.T, program, what string) string {
	t.Helper()
	if golden.Raced || golden.Updating() {
		t.Skip("an editor reads the files alike again")
	}
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skipf("%s is not here: %s is NOT TESTED; .ci/run installs it", program, what)
	}
	return path
}

// run starts an editor and fails the test with what it says.
func run(t *testing.T, index string, program string, args ...string) {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Env = append(os.Environ(), "MALTWRIGHT_TEXTS="+index, "HOME="+t.TempDir(), "LC_ALL=C.UTF-8")
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	if told, err := os.ReadFile(index + ".failed"); err == nil {
		t.Fatalf("%s\n%s", told, out)
	}
}

// looked compares what an editor wrote beside each file, a name for each byte, with the samples.
func looked(t *testing.T, list []sample, names []string, kinds map[string]kind) {
	t.Helper()
	words := 0
	for i, s := range list {
		rows, err := os.ReadFile(names[i] + ".groups")
		require.NoError(t, err)
		seen := make([]kind, 0, len(s.text))
		lines := strings.SplitAfter(s.text, "\n")
		for n, row := range strings.Split(strings.TrimSuffix(string(rows), "\n"), "\n") {
			if n == 0 && strings.HasPrefix(s.text, "\ufeff") {
				seen = append(seen, "", "", "") // an editor does not show it
			}
			for _, name := range strings.Fields(row) {
				k, known := kinds[name]
				require.True(t, known, "%s: no kind for %q", s.name, name)
				seen = append(seen, k)
			}
			if strings.HasSuffix(lines[n], "\n") {
				seen = append(seen, "")
			}
		}
		words += s.compare(t, seen)
	}
	assert.Greater(t, words, 20_000)
	t.Logf("%d words of %d texts", words, len(list))
}

// indented compares what an editor makes of a file whose lines all begin at the margin with the
// file as it was.
func indented(t *testing.T, list []sample, names []string) {
	t.Helper()
	for i, s := range list {
		if !s.tidy() {
			continue
		}
		got, err := os.ReadFile(names[i] + ".indented")
		require.NoError(t, err)
		golden.Same(t, s.name, s.text, string(got))
	}
}

// byGroup are the groups of the syntax file for Vim.
var byGroup = map[string]kind{
	"-": "", "maltBlock": "", "maltComment": ofComment, "maltInclude": ofVerb, "maltDefinition": ofVerb, "maltAct": ofVerb, "maltFact": ofVerb, "maltClause": ofClause,
	"maltBound": ofBound, "maltAnd": ofWord, "maltRange": ofRange, "maltNumber": ofNumber, "maltPart": ofNumber, "maltUnit": ofUnit,
	"maltTime": ofTime, "maltTimeMark": ofStray, "maltPlace": ofWord, "maltChoice": ofWord, "maltWord": ofWord, "maltText": ofText, "maltName": ofText,
	"maltEscape": ofText, "maltBrace": ofSign, "maltEnd": ofSign, "maltMark": ofStray, "maltUnknownUnit": ofStray, "maltStray": ofStray,
}

// The two read the file alike, and -long asks both.
func TestVimColoursEveryWordAsWhatItIs(t *testing.T) {
	folder, err := filepath.Abs(vimFolder)
	require.NoError(t, err)
	for _, editor := range []struct {
		program string
		args    []string
	}{
		{"nvim", []string{"--headless", "-u", "NONE", "-i", "NONE", "-n"}},
		{"vim", []string{"-e", "-s", "-N", "-u", "NONE", "-i", "NONE", "-n"}},
	} {
		t.Run(editor.program, func(t *testing.T) {
			path := lookUp(t, editor.program, "the syntax file in it")
			if _, err := exec.LookPath("nvim"); err == nil && editor.program != "nvim" && !golden.Long() {
				t.Skip("asked with -long: nvim has read the file")
			}
			if out, _ := exec.Command(path, "--version").Output(); strings.Contains(string(out), "-syntax") {
				t.Skip("this build of Vim has no syntax: the syntax file in it is NOT TESTED")
			}
			list := samples(t, 2)
			names, index := written(t, list)
			run(t, index, path, append(editor.args, "--cmd", "set runtimepath^="+folder, "-S", filepath.Join("testdata", "groups.vim"))...)
			looked(t, list, names, byGroup)
			indented(t, list, names)
		})
	}
}

// byFace are the faces of the mode for Emacs.
var byFace = map[string]kind{
	"-": "", "font-lock-comment-face": ofComment, "font-lock-comment-delimiter-face": ofComment, "font-lock-string-face": ofText, "malt-name": ofText,
	"malt-include": ofVerb, "malt-definition": ofVerb, "malt-act": ofVerb, "malt-fact": ofVerb, "malt-clause": ofClause, "malt-bound": ofBound,
	"malt-range": ofRange, "malt-and": ofWord, "malt-number": ofNumber, "malt-unit": ofUnit, "malt-time": ofTime, "malt-place": ofWord,
	"malt-choice": ofWord, "malt-word": ofWord, "malt-brace": ofSign, "malt-stray": ofStray,
}

func TestEmacsColoursEveryWordAsWhatItIs(t *testing.T) {
	path := lookUp(t, "emacs", "the mode for it")
	list := samples(t, 2)
	names, index := written(t, list)
	run(t, index, path, "--batch", "-Q", "-L", emacsFolder, "-l", "malt-mode", "-l", filepath.Join("testdata", "faces.el"))
	looked(t, list, names, byFace)
	indented(t, list, names)
}

// A mode is compiled where it is installed as a package, and a warning there is one too many.
func TestTheModeForEmacsCompilesWithoutAWarning(t *testing.T) {
	path := lookUp(t, "emacs", "the mode for it")
	text, err := os.ReadFile(filepath.Join(emacsFolder, "malt-mode.el"))
	require.NoError(t, err)
	copied := filepath.Join(t.TempDir(), "malt-mode.el")
	require.NoError(t, os.WriteFile(copied, text, 0o644))
	out, err := exec.Command(path, "--batch", "-Q", "--eval", "(setq byte-compile-error-on-warn t)", "-f", "batch-byte-compile", copied).CombinedOutput()
	assert.NoError(t, err, "%s", out)
}
