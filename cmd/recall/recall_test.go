package recall_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/recall"
	"maltwright/cmd/repository"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// kept is a folder with the process of the examples, committed.
func kept(t *testing.T) string {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("git is not installed")
	}
	t.Setenv("GIT_CONFIG_NOSYSTEM", "1")
	t.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	folder := t.TempDir()
	for _, name := range []string{"pale.malt", "loft.malt"} {
		text, err := os.ReadFile("../../examples/" + name)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	git(t, folder, "init", "-q")
	commit(t, folder)
	return folder
}

func git(t *testing.T, folder string, args ...string) {
	t.Helper()
	cmd := exec.Command("git", append([]string{"-c", "user.name=Maltster", "-c", "user.email=maltster@example.org"}, args...)...)
	cmd.Dir = folder
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
}

func commit(t *testing.T, folder string) {
	t.Helper()
	git(t, folder, "add", "-A")
	git(t, folder, "commit", "-q", "-m", "x")
}

func edit(t *testing.T, folder, name, old, new string) {
	t.Helper()
	path := filepath.Join(folder, name)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Contains(t, string(text), old)
	require.NoError(t, os.WriteFile(path, []byte(strings.ReplaceAll(string(text), old, new)), 0o644))
}

// batch reads a record with these lines in the folder.
func batch(t *testing.T, folder, lines string) (*model.Batch, recall.Reader) {
	t.Helper()
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	r := recall.Reader{Reader: root, Root: folder, Known: recall.Known{}, Below: func(f *source.File) string { return f.Name() }}
	h, found := read.Load("b.malt", []byte("use \"pale.malt\"\nbatch \"b\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n"+lines+"}\n"), ".", r)
	require.Empty(t, found)
	return h.Batches[0], r
}

func pinned(print, revision string) string {
	return "  pinned \"" + print + "\" from \"" + revision + "\"\n"
}

func firstSoak(p *model.Process) float64 {
	return model.Inner(model.First[*model.Steep](p).Steps[0])[0].Ends().For.SI
}

func TestABatchGoesByTheTextOfItsBeginning(t *testing.T) {
	folder := kept(t)
	b, r := batch(t, folder, "")
	print, revision := fingerprint.Of(b.Process), repository.Head(folder)
	assert.True(t, r.Holds(b.Process, revision))

	edit(t, folder, "pale.malt", "soak 7 h", "soak 9 h")
	edit(t, folder, "loft.malt", "holds 25 l", "holds 26 l")
	b, r = batch(t, folder, pinned(print, revision))
	require.NotNil(t, b.Today)
	assert.Equal(t, 7*3600.0, firstSoak(b.Process))
	assert.Equal(t, 9*3600.0, firstSoak(b.Today))
	assert.ElementsMatch(t, []string{"soak 7 h in water at 13 °C is now soak 9 h in water at 13 °C", "holds 25 l is now holds 26 l"}, b.Since)
	assert.False(t, r.Holds(b.Today, revision))

	b, _ = batch(t, folder, pinned(print, revision)+"  from 5 kg of \"Mill bend 2026\"\n")
	assert.Equal(t, 5.0, b.Process.Charge.SI, "with its own charge")
	assert.Equal(t, 7*3600.0, firstSoak(b.Process))
}

// A step that the process no longer has is no fault of a record that was begun with it.
func TestTheStepsAreThoseOfTheBeginning(t *testing.T) {
	folder := kept(t)
	b, _ := batch(t, folder, "")
	print, revision := fingerprint.Of(b.Process), repository.Head(folder)
	edit(t, folder, "pale.malt", "repeat at most 3 times", "repeat at most 2 times")
	commit(t, folder)
	b, _ = batch(t, folder, pinned(print, revision)+"  weighed 9.29 kg after soak 3\n") // which batch requires to be found nothing
	assert.NotNil(t, b.Today)
}

func TestWhatCannotBeHadLeavesTheBatchAsItIs(t *testing.T) {
	folder := kept(t)
	b, _ := batch(t, folder, "")
	print, revision := fingerprint.Of(b.Process), repository.Head(folder)
	b, _ = batch(t, folder, pinned(print, revision))
	assert.Nil(t, b.Today, "nothing changed")

	edit(t, folder, "pale.malt", "soak 7 h", "soak 9 h")
	for what, pin := range map[string]string{
		"no revision":              "  pinned \"" + print + "\"\n",
		"a revision that is none":  pinned(print, "no such tag"),
		"a revision like a switch": pinned(print, "--help"),
	} {
		b, _ := batch(t, folder, pin)
		assert.Nil(t, b.Today, what)
		assert.Equal(t, 9*3600.0, firstSoak(b.Process), what)
	}
}

// Who writes the signs otherwise, in another version, still pins the same text.
func TestTheRevisionIsBelieved(t *testing.T) {
	folder := kept(t)
	const other = "0123456789ab"
	b, _ := batch(t, folder, pinned(other, repository.Head(folder)))
	assert.Nil(t, b.Today, "nothing changed")
	assert.Equal(t, fingerprint.Of(b.Process), b.Pinned.Print.Text)

	revision := repository.Head(folder)
	edit(t, folder, "pale.malt", "soak 7 h", "soak 9 h")
	b, _ = batch(t, folder, pinned(other, revision))
	require.NotNil(t, b.Today)
	assert.Equal(t, 7*3600.0, firstSoak(b.Process))
	assert.Contains(t, b.Since[0], "another version")
}

func net(b *model.Batch, i int) float64 {
	kg, _, _ := b.Net(b.Readings[i].(*model.Weighed))
	return kg
}

// What a tub weighs is in the fingerprint; that of a box that the process does not use, and
// the marks of a scale, are looked up.
func TestWeightsGoByWhatStoodOnTheScaleThen(t *testing.T) {
	folder := kept(t)
	edit(t, folder, "loft.malt", "grain \"Far field 2026\"", "vessel \"box\" { holds 9 l; weighs 500 g }\ngrain \"Far field 2026\"")
	commit(t, folder)
	b, _ := batch(t, folder, "")
	pin := pinned(fingerprint.Of(b.Process), repository.Head(folder))
	lines := pin + "  weighed 8.37 kg in \"blue tub\" after soak 1\n  weighed 9.16 kg in \"box\" on \"kitchen\" after soak 2\n"
	b, _ = batch(t, folder, lines)
	require.Nil(t, b.Today)
	tub, box, division := net(b, 0), net(b, 1), b.ScaleOf(b.Readings[1].(*model.Weighed)).Division.SI

	edit(t, folder, "loft.malt", "weighs 500 g", "weighs 900 g")
	b, _ = batch(t, folder, lines)
	require.NotNil(t, b.Today)
	assert.Equal(t, []string{`vessel "box" weighs 500 g is now weighs 900 g`}, b.Since)
	assert.Equal(t, box, net(b, 1))
	b, _ = batch(t, folder, pin+"  weighed 8.37 kg in \"blue tub\" after soak 1\n")
	assert.Nil(t, b.Today, "it does not use the box")

	edit(t, folder, "loft.malt", "weighs 990 g", "weighs 1.9 kg")
	edit(t, folder, "loft.malt", "division 5 g", "division 50 g")
	b, _ = batch(t, folder, lines)
	assert.ElementsMatch(t, []string{`vessel "box" weighs 500 g is now weighs 900 g`, "weighs 990 g is now weighs 1.9 kg", `scale "kitchen" division 5 g is now division 50 g`}, b.Since)
	assert.Equal(t, []float64{tub, box}, []float64{net(b, 0), net(b, 1)})
	assert.Equal(t, division, b.ScaleOf(b.Readings[1].(*model.Weighed)).Division.SI)
	assert.Equal(t, 0.99, b.Process.Holders()[0].Weighs.SI, "as it is shown too")
}
