package main

import (
	"encoding/csv"
	"fmt"
	"maps"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/ledger"
	"maltwright/lang/source/golden"
)

const exampleBatches = "../../examples/batches"

// shownSeasons writes the batches of the examples side by side, in the zone of the
// machine, in which nothing but the offset of a time depends on it.
func shownSeasons(t *testing.T, width int, env map[string]string, format string) string {
	t.Helper()
	var out, errs strings.Builder
	here, err := os.Getwd()
	require.NoError(t, err)
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: here, Terminal: width > 0, Width: width, Env: func(k string) string { return env[k] }}
	r := once(t, func() ledger.Result {
		files, err := w.gather([]string{exampleBatches}, "")
		require.NoError(t, err)
		book := ledger.New(t.Context(), nil)
		read, err := Seasons{}.enter(book, files)
		require.NoError(t, err)
		require.Empty(t, read.faults)
		return book.Result()
	}, "seasons")
	require.NoError(t, seasonsWriters[format](&w, r))
	require.Empty(t, errs.String())
	return out.String()
}

// A reader of RFC 4180 finds a line a batch, and in it what the record says.
func TestSeasonsAsCSVAreReadBack(t *testing.T) {
	longSums(t)
	text := shownSeasons(t, 0, nil, "csv")
	golden.File(t, "testdata/seasons.csv", regexp.MustCompile(`(T\d\d:\d\d:\d\d)[^,]+`).ReplaceAllString(text, "$1"))
	lines, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	require.Len(t, lines, 4)
	column := map[string]int{}
	for i, head := range lines[0] {
		column[head] = i
	}
	assert.Len(t, column, len(lines[0]), "no head stands twice")
	for i, more := range []map[string]float64{
		{"steep_out_h": 39, "steps_changed": 0}, {"steep_out_h": 39, "steps_changed": 0}, {"steep_out_h": 38, "steps_changed": 1},
	} {
		want := asWritten(t, i+3)
		maps.Copy(want, more)
		want["yield_as_is_pct"] = math.Round(1e4*want["malt_kg"]/6) / 100 // of 6 kg
		for head, value := range want {
			got, err := strconv.ParseFloat(lines[i+1][column[head]], 64)
			require.NoError(t, err, head)
			assert.Equal(t, value, got, "%s of batch %d", head, i+1)
		}
		assert.Equal(t, "reckoned", lines[i+1][column["final_moisture_wb_standing"]])
		assert.Equal(t, "measured", lines[i+1][column["malt_standing"]])
	}
}

// asWritten are figures that stand in the words of one of the records themselves.
func asWritten(t *testing.T, batch int) map[string]float64 {
	text, err := os.ReadFile(fmt.Sprintf("../../examples/batches/26-%02d.malt", batch))
	require.NoError(t, err)
	figures := map[string]float64{}
	for head, pattern := range map[string]string{
		"malt_kg": `([\d.]+) kg clean malt`, "green_malt_kg": `([\d.]+) kg at .* after germinate`, "chit_pct": `chit (\d+) of 100`, "bed_warmest_c": `bed ([\d.]+) °C`,
	} {
		for _, found := range regexp.MustCompile(pattern).FindAllStringSubmatch(string(text), -1) {
			value, err := strconv.ParseFloat(found[1], 64)
			require.NoError(t, err)
			figures[head] = max(figures[head], value)
		}
		require.NotZero(t, figures[head], head)
	}
	return figures
}

func TestSeasonsFitTheWidth(t *testing.T) {
	longSums(t)
	for _, width := range []int{40, 80, 120} {
		for line := range strings.Lines(shownSeasons(t, width, map[string]string{"NO_COLOR": "1"}, "text")) {
			assert.LessOrEqual(t, uniseg.StringWidth(strings.TrimRight(line, "\n")), width, line)
		}
	}
}

// What the bold of a terminal says, the words say without it.
func TestSeasonsAreTheSameWithoutColour(t *testing.T) {
	longSums(t)
	plain := shownSeasons(t, 80, map[string]string{"NO_COLOR": "1"}, "text")
	bold := shownSeasons(t, 80, nil, "text")
	assert.NotContains(t, plain, escape)
	assert.Contains(t, bold, "\x1b[1m")
	assert.Equal(t, plain, strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(bold))
}

// The table in the guide is what the program prints.
func TestSeasonsOfTheGuideAreReal(t *testing.T) {
	guideShows(t, "3 batches of ", shownSeasons(t, 0, nil, "text"))
}

// What check says of a process is counted for its batches: not what it says of the
// other process of the file, nor of the record.
func TestFindingsOfTheProcessAreCounted(t *testing.T) {
	dir := t.TempDir()
	house, err := os.ReadFile(exampleBatches + "/loft.malt")
	require.NoError(t, err)
	pale, err := os.ReadFile(exampleBatches + "/pale.malt")
	require.NoError(t, err)
	warm := strings.NewReplacer("water at 13 °C", "water at 24 °C", "deculm within 12 h", "deculm within 40 days").Replace(string(pale))
	_, second, ok := strings.Cut(string(pale), "process \"Loft pale\"")
	require.True(t, ok)
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(dir+"/"+name, []byte(text), 0o644))
	}
	write("loft.malt", string(house))
	write("warm.malt", warm)
	write("both.malt", warm+"\nprocess \"Second\""+second)
	write("a.malt", "use \"warm.malt\"\nbatch \"a\" of \"Loft pale\" { began 2026-03-06 07:00 }\n")
	write("b.malt", "use \"both.malt\"\nbatch \"b\" of \"Loft pale\" { began 2026-03-06 07:00 }\n")
	write("c.malt", "use \"both.malt\"\nbatch \"c\" of \"Second\" { began 2026-03-06 07:00 }\n")

	_, found, _ := onScreen(false, nil, "", "check", dir+"/warm.malt", "--format", "lines")
	faults, cautions := strings.Count(found, ": fault: ")+strings.Count(found, ": danger: "), strings.Count(found, ": caution: ")
	require.Greater(t, cautions, 1, found)

	files, err := World{Folder: dir}.gather([]string{"a.malt", "b.malt", "c.malt"}, "")
	require.NoError(t, err)
	book := ledger.New(t.Context(), nil)
	_, err = Seasons{}.enter(book, files)
	require.NoError(t, err)
	rows := book.Result().Batches
	require.Len(t, rows, 3)
	for _, b := range rows[:2] {
		assert.Equal(t, faults, b.ProcessFaults, b.Batch)
		assert.Equal(t, cautions, b.ProcessCautions, b.Batch)
	}
	assert.Zero(t, rows[2].ProcessFaults+rows[2].ProcessCautions)
}
