package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// helpWord is a word of a help text or of a page.
var helpWord = regexp.MustCompile(`[\p{L}\p{N}][\p{L}\p{N}'./:_-]*`)

// readPage is a page as it is read, but for its layout.
func readPage(page string) string {
	page = regexp.MustCompile(`(?m)^\.\\".*$|^\.[A-Za-z]+`).ReplaceAllString(page, "")
	page = strings.NewReplacer(`\fB`, "", `\fI`, "", `\fR`, "", `\-`, "-", `\(aq`, "'", `\(dq`, `"`, `\(ti`, "~", `\(ha`, "^", `\(ga`, "`", `\&`, "", `\e`, `\`).Replace(page)
	return regexp.MustCompile(`\\\[u[0-9A-F]+\]`).ReplaceAllStringFunc(page, func(sign string) string {
		var r rune
		for _, c := range sign[3 : len(sign)-1] {
			r = r*16 + rune(strings.IndexRune("0123456789ABCDEF", c))
		}
		return string(r)
	})
}

func TestEachCommandHasAPageThatSaysAllThatItsHelpSays(t *testing.T) {
	frame := "Usage Arguments Flags Commands Examples Exit code: Run for more information on a command"
	paths := [][]string{}
	for _, c := range commandWords {
		paths = append(paths, []string{c})
	}
	for _, sum := range []string{"basis", "germination", "moisture", "target", "weight", "yield"} {
		paths = append(paths, []string{"reckon", sum})
	}
	for _, path := range paths {
		help, errs, code := run(append(path, "--help")...)
		require.Zero(t, code, errs)
		page, errs, code := run(append([]string{"man"}, path...)...)
		require.Zero(t, code, errs)
		has := map[string]bool{}
		for _, w := range helpWord.FindAllString(readPage(page)+frame, -1) {
			has[strings.Trim(w, ".:")] = true
		}
		for _, w := range helpWord.FindAllString(help, -1) {
			assert.True(t, has[strings.Trim(w, ".:")], "%v: %q of the help is not on the page", path, w)
		}
	}
}

func TestThePageOfTheLanguageHasEachWordOfIt(t *testing.T) {
	page, errs, code := run("man", "language")
	require.Zero(t, code, errs)
	page = readPage(page)
	for _, e := range entries() {
		assert.Contains(t, page, "\n"+e.Name, "a statement or a measure of that name")
		for _, c := range e.Clauses {
			assert.Contains(t, page, c.Doc)
		}
	}
}

// The example of the page is a file of which nothing is found.
func TestTheExampleOfThePageOfTheLanguageIsSound(t *testing.T) {
	page, _, _ := run("man", "language")
	_, example, found := strings.Cut(readPage(page), "The house and the lot are invented.")
	require.True(t, found)
	_, example, _ = strings.Cut(example, "process ")
	example, _, _ = strings.Cut(example, "\n\n\n")
	file := filepath.Join(t.TempDir(), "example.malt")
	require.NoError(t, os.WriteFile(file, []byte("process "+example+"\n"), 0o644))
	out, errs, code := run("check", "--quiet", file)
	assert.Zero(t, code, out+errs)
}

// The pages are read without a complaint by what is there to read them.
func TestProgramsThatReadManualsHaveNothingToSay(t *testing.T) {
	dir := t.TempDir()
	_, errs, code := run("man", "--into", dir)
	require.Zero(t, code, errs)
	pages, err := filepath.Glob(filepath.Join(dir, "man?", "*"))
	require.NoError(t, err)
	require.Greater(t, len(pages), len(commandWords)+1)
	t.Run("mandoc", func(t *testing.T) {
		out, err := exec.Command(installed(t, "mandoc"), append([]string{"-Tlint", "-Wwarning"}, pages...)...).Output()
		for line := range strings.Lines(string(out)) {
			assert.Contains(t, line, "missing date", "the tests are of no version")
		}
		_ = err // it tells of the date by its exit code too
	})
	t.Run("man", func(t *testing.T) {
		man := installed(t, "man")
		for _, page := range pages {
			var said strings.Builder
			c := exec.Command(man, "--warnings", "-l", page)
			c.Env, c.Stderr = append(os.Environ(), "MANWIDTH=80", "LC_ALL=C.UTF-8", "MAN_KEEP_FORMATTING="), &said
			out, err := c.Output()
			require.NoError(t, err, "%s: %s", page, said.String())
			assert.Empty(t, said.String(), page)
			if strings.HasSuffix(page, ".5") { // the commands of examples may be longer, and stay whole
				for line := range strings.Lines(string(out)) {
					assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimSuffix(line, "\n")), 80, line)
				}
			}
		}
	})
}

func TestPagesAreWrittenOverAndOtherFilesAreNot(t *testing.T) {
	dir := t.TempDir()
	for range 2 {
		_, errs, code := run("man", "--into", dir)
		require.Zero(t, code, errs)
	}
	other := filepath.Join(dir, "man1", "maltwright-card.1")
	require.NoError(t, os.WriteFile(other, []byte("mine\n"), 0o644))
	_, errs, code := run("man", "--into", dir)
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "is no page that maltwright man has written")
	_, errs, code = run("man", "nonsense")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "there is no page of nonsense")
	_, errs, code = run("man", "card", "--into", dir)
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "leave card out")
}
