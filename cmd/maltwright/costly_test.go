package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/ledger"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/follow"
	"maltwright/sim/work"
)

// costly is the loft's pale malt, turned every minute for so many days; a day of it takes
// some 50,000 steps of the model.
func costly(t *testing.T, days int, files map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		files[name] = string(text)
	}
	files["costly.malt"] = strings.NewReplacer("turn  every 8 h", "turn every 1 min",
		"until acrospire at least 3/4 and rub is chalky", fmt.Sprintf("for %d days", days), "allow 4 to 7 days", "").Replace(files["pale.malt"])
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	return folder
}

// runIn runs a command line in a folder.
func runIn(folder string, args ...string) (code int, out, errs string) {
	var o, e strings.Builder
	w := World{In: strings.NewReader(""), Out: &o, Err: &e, Folder: folder, Env: func(string) string { return "" }}
	code = Main(w, args)
	return code, o.String(), e.String()
}

// What one forecast can bear and hundreds cannot is said, and what costs so much.
func TestASpreadThatCostsTooMuchIsRefused(t *testing.T) {
	var out, errs strings.Builder
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: costly(t, 20, map[string]string{}), Env: func(string) string { return "" }}
	assert.Equal(t, ExitFindings, Main(w, []string{"forecast", "--spread", "--members", "10", "costly.malt"}))
	assert.Contains(t, errs.String(), "costly.malt: no spread, because each forecast would take over 300000 steps of the model;")
	assert.Empty(t, out.String())
}

func TestABatchThatCostsTooMuchIsNotFollowed(t *testing.T) {
	var out, errs strings.Builder
	batch := "use \"costly.malt\"\nbatch \"b\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 8.6 kg at 14:00 after soak 1\n}\n"
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: costly(t, 20, map[string]string{"b.malt": batch}), Env: func(string) string { return "" }}
	assert.Equal(t, ExitFindings, Main(w, []string{"follow", "b.malt", "--members", "20", "--at", "2026-03-06T15:00"}))
	assert.Contains(t, errs.String(), "more steps of the model together than they may have; work that repeats every few minutes")
}

// recorded is a file with so many batches of a process.
func recorded(use string, n int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "use %q\n", use)
	for i := range n {
		fmt.Fprintf(&b, "batch \"n%d\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 8.6 kg at 2026-03-07 06:00 after soak 2\n  weighed 4.98 kg clean malt at 2026-03-28 18:00\n}\n", i+1)
	}
	return b.String()
}

// What is not worth beginning is refused before hundreds of forecasts are made.
func TestWhatTheFirstForecastShowsToBeTooDearIsRefusedAtOnce(t *testing.T) {
	folder := costly(t, 9, map[string]string{"b.malt": recorded("costly.malt", 1)})
	f := houseIn(t, folder, "costly.malt")
	told := 0
	_, err := ensemble.Run(t.Context(), f.Processes[0], ensemble.Options{Progress: func(int, int) { told++ }})
	assert.ErrorIs(t, err, work.ErrPool)
	b := houseIn(t, folder, "b.malt")
	_, err = follow.Of(t.Context(), b.Batches[0], b.Batches[0].Began.AddDate(0, 0, 30), follow.Options{Progress: func(int, int) { told++ }})
	assert.ErrorIs(t, err, work.ErrPool)
	assert.Zero(t, told, "no member is forecast")
}

// houseIn reads a file of a folder.
func houseIn(t *testing.T, folder, name string) *model.House {
	text, err := os.ReadFile(filepath.Join(folder, name))
	require.NoError(t, err)
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	h, found := read.Load(name, text, ".", root)
	require.Empty(t, atLeast(found, finding.Fault))
	return h
}

func TestARecordOfWhichOneForecastIsTooDearIsNotLearntFrom(t *testing.T) {
	folder := costly(t, 9, map[string]string{"b.malt": recorded("costly.malt", 4)})
	code, out, errs := runIn(folder, "learn", "b.malt")
	assert.Equal(t, ExitFindings, code)
	assert.Empty(t, out)
	assert.Equal(t, 4, strings.Count(errs, "one forecast of it takes over 300000 steps of the model"))
}

func TestARecordOfWhichOneForecastIsTooDearIsShownByItsWords(t *testing.T) {
	folder := costly(t, 9, map[string]string{"b.malt": recorded("costly.malt", 2)})
	code, out, errs := runIn(folder, "seasons", "b.malt")
	assert.Equal(t, ExitClean, code)
	assert.Contains(t, errs, `only as written, without a forecast: batch "n1" of b.malt and 1 more;`)
	assert.Contains(t, out, "4.98")
	assert.NotContains(t, out, "no forecast")
}

// The allowance is one for all batches of a file, and what comes first has it.
func TestSeasonsShowByTheirWordsTheBatchesThatNothingIsLeftFor(t *testing.T) {
	folder := costly(t, 9, map[string]string{"b.malt": recorded("pale.malt", 3)})
	w := World{Folder: folder}
	files, err := w.gather([]string{"b.malt"}, "")
	require.NoError(t, err)
	costlyOf := func(pool *work.Pool) (out []bool) {
		book := ledger.New(t.Context(), func() *work.Pool { return pool })
		_, err := Seasons{}.enter(book, files)
		require.NoError(t, err)
		for _, b := range book.Result().Batches {
			out = append(out, b.NotForecast == ledger.TooDear)
		}
		return out
	}
	whole := work.NewPool(work.Seasons)
	assert.Equal(t, []bool{false, false, false}, costlyOf(whole))
	used := work.Seasons - whole.Left()
	assert.Equal(t, []bool{false, true, true}, costlyOf(work.NewPool(used/2)))
	assert.Equal(t, []bool{true, true, true}, costlyOf(work.NewPool(10_000)))
}
