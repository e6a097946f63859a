package desk

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
)

const (
	tubs = "vessel \"tub\" { holds 25 l }\n"
	uses = "use \"loft.malt\"\nprocess \"p\" { steep in \"tub\" to moisture 44 % { soak 7 h in water at 13 °C } }\n"
)

// table is a desk over a new folder with files: names and texts in turn.
func table(t *testing.T, files ...string) (*Desk, string) {
	t.Helper()
	dir, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	for i := 0; i+1 < len(files); i += 2 {
		write(t, filepath.Join(dir, files[i]), files[i+1])
	}
	d := New()
	d.SetFolders([]string{dir})
	return d, dir
}

func write(t *testing.T, path, text string) {
	t.Helper()
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
}

// rules are those of which something is found.
func rules(t *testing.T, v *View, path string) []string {
	t.Helper()
	c, err := v.Checked(path)
	require.NoError(t, err)
	list := []string{}
	for _, f := range c.Findings {
		list = append(list, f.Rule)
	}
	return list
}

func TestAnOpenBufferStandsOverTheFileThatIsUsed(t *testing.T) {
	d, dir := table(t, "loft.malt", tubs, "pale.malt", uses)
	pale, house := filepath.Join(dir, "pale.malt"), filepath.Join(dir, "loft.malt")
	before := rules(t, d.Now(), pale)
	assert.NotContains(t, before, "unknown-name")
	d.Open(URI(house), 1, "vessel \"vat\" { holds 25 l }\n")
	assert.Contains(t, rules(t, d.Now(), pale), "unknown-name")
	d.Change(URI(house), 2, nil)
	d.Close(URI(house))
	assert.Equal(t, before, rules(t, d.Now(), pale))
}

func TestAViewStaysAsItWas(t *testing.T) {
	d, dir := table(t, "loft.malt", tubs, "pale.malt", uses)
	pale := filepath.Join(dir, "pale.malt")
	d.Open(URI(pale), 1, uses)
	v := d.Now()
	before := rules(t, v, pale)
	d.Open(URI(pale), 2, "process {")
	write(t, filepath.Join(dir, "loft.malt"), "nothing")
	assert.Equal(t, before, rules(t, v, pale))
	doc, err := v.Doc(pale)
	require.NoError(t, err)
	assert.Equal(t, uses, string(doc.Text()))
	assert.Equal(t, int32(1), doc.Version)
	assert.NotEqual(t, before, rules(t, d.Now(), pale))
}

func TestWhatWasFoundIsKeptByTheTexts(t *testing.T) {
	d, dir := table(t, "loft.malt", tubs, "pale.malt", uses)
	pale, house := filepath.Join(dir, "pale.malt"), filepath.Join(dir, "loft.malt")
	first, err := d.Now().Checked(pale)
	require.NoError(t, err)
	d.Open(URI(house), 1, tubs) // the same text, now of a buffer
	again, err := d.Now().Checked(pale)
	require.NoError(t, err)
	assert.Same(t, first, again)
	d.Open(URI(house), 2, tubs+"\n")
	other, err := d.Now().Checked(pale)
	require.NoError(t, err)
	assert.NotSame(t, first, other)
}

func TestAFileThatChangesAtTheSameMomentIsSeen(t *testing.T) {
	d, dir := table(t, "loft.malt", tubs, "pale.malt", uses)
	pale, house := filepath.Join(dir, "pale.malt"), filepath.Join(dir, "loft.malt")
	assert.NotContains(t, rules(t, d.Now(), pale), "unknown-name")
	info, err := os.Stat(house)
	require.NoError(t, err)
	write(t, house, strings.ReplaceAll(tubs, "tub", "vat")) // as long as before
	require.NoError(t, os.Chtimes(house, info.ModTime(), info.ModTime()))
	assert.Contains(t, rules(t, d.Now(), pale), "unknown-name")
	old := time.Now().Add(-time.Hour)
	require.NoError(t, os.Chtimes(house, old, old))
	assert.Contains(t, rules(t, d.Now(), pale), "unknown-name")
}

func TestAFileThatGoesIsTold(t *testing.T) {
	d, dir := table(t, "loft.malt", tubs, "pale.malt", uses)
	pale, house := filepath.Join(dir, "pale.malt"), filepath.Join(dir, "loft.malt")
	d.Open(URI(pale), 1, uses)
	rules(t, d.Now(), pale)
	require.NoError(t, os.Remove(house))
	assert.Contains(t, rules(t, d.Now(), pale), "use-missing")
	require.NoError(t, os.Remove(pale))
	assert.Contains(t, rules(t, d.Now(), pale), "use-missing", "the buffer stands without its file")
	d.Open(URI(house), 1, tubs)
	assert.NotContains(t, rules(t, d.Now(), pale), "use-missing", "a buffer that is not written yet counts")
	d.Close(URI(pale))
	_, err := d.Now().Doc(pale)
	assert.True(t, Missing(err))
	require.NoError(t, os.RemoveAll(dir))
	d.Open(URI(pale), 1, uses)
	assert.NotContains(t, rules(t, d.Now(), pale), "use-missing")
}

func TestABufferThatIsNoFileUsesTheFirstFolder(t *testing.T) {
	d, dir := table(t, "loft.malt", tubs)
	d.Open("untitled:Untitled-1", 1, uses)
	v := d.Now()
	assert.NotContains(t, rules(t, v, "untitled:Untitled-1"), "use-missing")
	c, err := v.Checked("untitled:Untitled-1")
	require.NoError(t, err)
	assert.Equal(t, "untitled:Untitled-1", v.URIOf(c.House.Files[0]))
	assert.Equal(t, URI(filepath.Join(dir, "loft.malt")), v.URIOf(c.House.Files[1]))
	d.SetFolders(nil)
	d.Open("untitled:Untitled-2", 1, uses)
	assert.Contains(t, rules(t, d.Now(), "untitled:Untitled-2"), "use-missing")
}

func TestNothingIsReadOutsideOfTheFolder(t *testing.T) {
	d, dir := table(t, "in/pale.malt", strings.ReplaceAll(uses, "loft.malt", "../loft.malt"), "in/link.malt", uses, "loft.malt", tubs)
	assert.Contains(t, rules(t, d.Now(), filepath.Join(dir, "in/pale.malt")), "use-outside")
	if err := os.Symlink("../loft.malt", filepath.Join(dir, "in/loft.malt")); err != nil {
		t.Skip("no links here: ", err)
	}
	assert.Contains(t, rules(t, d.Now(), filepath.Join(dir, "in/link.malt")), "use-missing")
}

func TestABufferCountsForALinkToItsFile(t *testing.T) {
	d, dir := table(t, "house.malt", "vessel \"vat\" { holds 25 l }\n", "pale.malt", uses)
	if err := os.Symlink("house.malt", filepath.Join(dir, "loft.malt")); err != nil {
		t.Skip("no links here: ", err)
	}
	pale := filepath.Join(dir, "pale.malt")
	assert.Contains(t, rules(t, d.Now(), pale), "unknown-name")
	d.Open(URI(filepath.Join(dir, "house.malt")), 1, tubs)
	assert.NotContains(t, rules(t, d.Now(), pale), "unknown-name")
	doc, err := d.Now().Doc(filepath.Join(dir, "loft.malt"))
	require.NoError(t, err)
	assert.True(t, doc.Open)
}

func TestAFolderThatMayNotBeReadHurtsNobody(t *testing.T) {
	if os.Getuid() == 0 {
		t.Log("run by root, who may read everything: the folder is taken away instead")
	}
	d, dir := table(t, "in/pale.malt", uses, "in/loft.malt", tubs)
	in := filepath.Join(dir, "in")
	d.Open(URI(filepath.Join(in, "pale.malt")), 1, uses)
	if os.Getuid() == 0 {
		require.NoError(t, os.RemoveAll(in))
	} else {
		require.NoError(t, os.Chmod(in, 0))
		t.Cleanup(func() { _ = os.Chmod(in, 0o755) })
	}
	v := d.Now()
	assert.Contains(t, rules(t, v, filepath.Join(in, "pale.malt")), "use-missing")
	assert.Equal(t, []string{filepath.Join(in, "pale.malt")}, v.Folder(in), "what is open is known")
	assert.NotPanics(t, func() { v.Workspace() })
}

func TestFoldersComeAndGo(t *testing.T) {
	d, dir := table(t, "a/x.malt", tubs, "a/deep/y.malt", tubs, "a/.git/z.malt", tubs, "b/w.malt", tubs, "b/note.txt", "")
	a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	d.SetFolders([]string{a, a + string(filepath.Separator)})
	assert.Equal(t, []string{a}, d.Now().Folders())
	assert.Equal(t, []string{filepath.Join(a, "deep/y.malt"), filepath.Join(a, "x.malt")}, d.Now().Workspace())
	assert.Equal(t, []string{filepath.Join(a, "x.malt")}, d.Now().Folder(a))
	d.ChangeFolders([]string{b}, []string{a})
	d.Open(URI(filepath.Join(a, "x.malt")), 1, tubs)
	assert.Equal(t, []string{filepath.Join(a, "x.malt"), filepath.Join(b, "w.malt")}, d.Now().Workspace(), "what is open counts outside of the folders too")
	assert.Equal(t, []string{b}, d.Now().Folders())
}

func TestABufferThatIsNoFileUsesWhatLiesInTheFolderThatIsFirstNow(t *testing.T) {
	d, dir := table(t, "a/loft.malt", "", "b/loft.malt", tubs)
	d.SetFolders([]string{filepath.Join(dir, "a"), filepath.Join(dir, "b")})
	d.Open("untitled:x", 1, uses)
	assert.Contains(t, rules(t, d.Now(), "untitled:x"), "unknown-name")
	d.ChangeFolders(nil, []string{filepath.Join(dir, "a")})
	assert.NotContains(t, rules(t, d.Now(), "untitled:x"), "unknown-name")
}

func TestABufferThatIsOpenedAnewIsAnother(t *testing.T) {
	d, _ := table(t)
	d.Open("untitled:x", 1, "")
	first, err := d.Now().Doc("untitled:x")
	require.NoError(t, err)
	assert.True(t, d.IsOpen(first) && d.IsLast(first))
	d.Rebase("untitled:x", nil)
	assert.True(t, d.IsOpen(first) && d.IsLast(first), "nothing was typed")
	d.Change("untitled:x", 2, nil)
	assert.True(t, d.IsOpen(first))
	assert.False(t, d.IsLast(first))
	d.Close("untitled:x")
	assert.False(t, d.IsOpen(first) || d.IsLast(first))
	d.Open("untitled:x", 1, "")
	assert.False(t, d.IsOpen(first) || d.IsLast(first))
}

func TestAFileThatIsNoFileIsRefused(t *testing.T) {
	d, dir := table(t, "loft.malt/x", "")
	_, err := d.Now().Doc(filepath.Join(dir, "loft.malt"))
	assert.Error(t, err)
	_, err = d.Now().Doc("untitled:none")
	assert.True(t, Missing(err))
	assert.False(t, d.Change(URI(filepath.Join(dir, "loft.malt")), 1, nil), "it is not open")
}

func TestADocumentIsParsedOnceAndAsTheWholeTextIs(t *testing.T) {
	d, dir := table(t, "pale.malt", uses)
	pale := filepath.Join(dir, "pale.malt")
	doc, err := d.Now().Doc(pale)
	require.NoError(t, err)
	again, err := d.Now().Doc(pale)
	require.NoError(t, err)
	if doc == again {
		assert.Same(t, doc.Tree(), again.Tree())
	}
	assert.Len(t, doc.Tree().Top.Statements, 2)
}

// What check finds over a desk is what it finds over the disk.
func TestADeskFindsWhatCheckFinds(t *testing.T) {
	d := New()
	files, err := filepath.Glob("../../../examples/broken/*.malt")
	require.NoError(t, err)
	require.Greater(t, len(files), 50)
	for i, file := range files {
		if i%5 != 0 && !golden.Long() {
			continue
		}
		path, err := filepath.Abs(file)
		require.NoError(t, err)
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		onDisk := rules(t, d.Now(), path)
		d.Open(URI(path), 1, string(text))
		got := rules(t, d.Now(), path)
		if source.New("", text).BadBytes() == nil { // an editor has no bytes that are no text
			assert.Equal(t, onDisk, got, file)
		}
		d.Close(URI(path))
	}
}

func TestADocumentThatWasOpenedAgainIsAnother(t *testing.T) {
	d := New()
	d.Open("untitled:x", 5, "a")
	first, err := d.Now().Doc("untitled:x")
	require.NoError(t, err)
	d.Change("untitled:x", 6, []wire.TextDocumentContentChangeEvent{{Text: "b"}})
	d.Rebase("untitled:x", []byte("c"))
	assert.True(t, d.IsOpen(first), "it was only changed")
	d.Close("untitled:x")
	assert.False(t, d.IsOpen(first))
	d.Open("untitled:x", 1, "a")
	assert.False(t, d.IsOpen(first))
}
