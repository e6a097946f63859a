package command

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/seasons"
)

const exampleBatches = "../../examples/batches"

// shownSeasons runs seasons over the examples in the zone of the machine, in which
// nothing but the offset of a time depends on it.
func shownSeasons(t *testing.T, width int, env map[string]string, args ...string) string {
	t.Helper()
	return once(t, func() string {
		var out, errs strings.Builder
		here, err := os.Getwd()
		require.NoError(t, err)
		w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: here, Terminal: width > 0, Width: width, Env: func(k string) string { return env[k] }}
		require.Equal(t, ExitClean, Main(w, append([]string{"seasons"}, args...)), errs.String())
		require.Empty(t, errs.String())
		return out.String()
	}, "seasons", width, env, args)
}

// A reader of RFC 4180 finds a line a batch, and in it what the record says.
func TestSeasonsAsCSVAreReadBack(t *testing.T) {
	longSums(t)
	lines, err := csv.NewReader(strings.NewReader(shownSeasons(t, 0, nil, exampleBatches, "--format", "csv"))).ReadAll()
	require.NoError(t, err)
	require.Len(t, lines, 4)
	column := map[string]int{}
	for i, head := range lines[0] {
		column[head] = i
	}
	assert.Len(t, column, len(lines[0]), "no head stands twice")
	for i, want := range []map[string]float64{ // as written in the records; yields of 6 kg
		{"malt_kg": 4.98, "green_malt_kg": 8.68, "cast_h": 39, "chit_pct": 86, "yield_as_is_pct": 83, "bed_warmest_c": 18.4, "changes": 0},
		{"malt_kg": 5.04, "green_malt_kg": 8.44, "cast_h": 39, "chit_pct": 94, "yield_as_is_pct": 84, "bed_warmest_c": 18.1, "changes": 0},
		{"malt_kg": 4.93, "green_malt_kg": 8.79, "cast_h": 38, "chit_pct": 93, "yield_as_is_pct": 82.17, "bed_warmest_c": 18.4, "changes": 1},
	} {
		for head, value := range want {
			got, err := strconv.ParseFloat(lines[i+1][column[head]], 64)
			require.NoError(t, err, head)
			assert.Equal(t, value, got, "%s of batch %d", head, i+1)
		}
		assert.Contains(t, lines[i+1][column["standing"]], "end_moisture_wb_pct=reckoned")
		assert.NotContains(t, lines[i+1][column["standing"]], "malt_kg")
	}
}

func TestSeasonsFitTheWidth(t *testing.T) {
	longSums(t)
	for _, width := range []int{40, 80, 120} {
		for line := range strings.Lines(shownSeasons(t, width, map[string]string{"NO_COLOR": "1"}, exampleBatches)) {
			assert.LessOrEqual(t, uniseg.StringWidth(strings.TrimRight(line, "\n")), width, line)
		}
	}
}

// What the bold of a terminal says, the words say without it.
func TestSeasonsAreTheSameWithoutColour(t *testing.T) {
	longSums(t)
	plain := shownSeasons(t, 80, map[string]string{"NO_COLOR": "1"}, exampleBatches)
	bold := shownSeasons(t, 80, nil, exampleBatches)
	assert.NotContains(t, plain, escape)
	assert.Contains(t, bold, "\x1b[1m")
	assert.Equal(t, plain, strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(bold))
}

// The table in the guide is what the program prints.
func TestSeasonsOfTheGuideAreReal(t *testing.T) {
	guideShows(t, "3 batches of ", shownSeasons(t, 0, nil, exampleBatches))
}

// By hand: 39 and 38 h are 38.5 h in the mean.
func TestSumsOfBatches(t *testing.T) {
	known := func(v float64) seasons.Figure { return seasons.Figure{Value: v, Standing: seasons.Measured} }
	reckoned := func(v float64) seasons.Figure { return seasons.Figure{Value: v, Standing: seasons.Reckoned} }
	none, over := seasons.Figure{}, seasons.Figure{Value: 1, Standing: seasons.Over}
	three, two := seasonSums[3], seasonSums[2]
	for _, c := range []struct {
		what string
		sum  seasonSum
		u    seasonUnits
		kind seasonKind
		all  []seasons.Figure
		want string
	}{
		{"mean", three[0], seasonUnits{}, inHours, []seasons.Figure{known(39 * 3600), known(38 * 3600), none}, "38.5"},
		{"lowest", three[1], seasonUnits{}, inShare, []seasons.Figure{known(0.043), reckoned(0.047), known(0.05)}, "~4.3"},
		{"highest", three[2], seasonUnits{}, inMass, []seasons.Figure{known(4.97), known(5.02), known(5.04)}, "5.04"},
		{"of one", three[0], seasonUnits{}, inMass, []seasons.Figure{known(4.97), none, none}, ""},
		{"of none", three[1], seasonUnits{}, inMass, []seasons.Figure{none, none, none}, ""},
		{"with a bound", three[0], seasonUnits{}, inDays, []seasons.Figure{known(86400), known(86400), over}, ""},
		{"more", two[0], seasonUnits{}, inMass, []seasons.Figure{known(5), known(5.25)}, "+0.25"},
		{"less", two[0], seasonUnits{}, inDegrees, []seasons.Figure{known(13), known(12.6)}, "-0.4"},
		{"less by what is not shown", two[0], seasonUnits{}, inHours, []seasons.Figure{known(3600), known(3500)}, "0.0"},
		{"a difference in °F has no offset", two[0], seasonUnits{fahrenheit: true}, inDegrees, []seasons.Figure{known(10), known(15)}, "+9.0"},
	} {
		assert.Equal(t, c.want, c.sum.cell(c.u, c.kind, c.all), c.what)
	}
}

func TestWeightsOfSmallAndLargeBatches(t *testing.T) {
	for _, c := range []struct {
		u    seasonUnits
		kg   float64
		want string
	}{
		{seasonUnits{}, 5.02, "5.02 kg"}, {seasonUnits{}, 50.25, "50.2 kg"}, {seasonUnits{}, 820.4, "820 kg"},
		{seasonUnits{small: true}, 0.0836, "83.6 g"}, {seasonUnits{small: true}, 0.836, "836 g"},
		{seasonUnits{pounds: true}, 4.6, "10.1 lb"},
		{seasonUnits{pounds: true, small: true}, 0.226796185, "8.00 oz"},
	} {
		f := seasons.Figure{Value: c.kg, Standing: seasons.Measured}
		assert.Equal(t, c.want, c.u.cell(inMass, f)+" "+c.u.name(inMass))
	}
}

func TestLongNamesAreClippedBetweenCharacters(t *testing.T) {
	assert.Equal(t, "26-03", clipped("26-03"))
	assert.Equal(t, "exactly twel", clipped("exactly twel"))
	assert.Equal(t, "longer than…", clipped("longer than that"))
	assert.Equal(t, "a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308…", clipped(strings.Repeat("a\u0308", 20)))
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
	rows, _, err := rowsOf(t.Context(), files, seasonsPool)
	require.NoError(t, err)
	require.Len(t, rows, 3)
	for _, r := range rows[:2] {
		assert.Equal(t, faults, r.process.faults, r.Batch.Name)
		assert.Equal(t, cautions, r.process.cautions, r.Batch.Name)
	}
	assert.Zero(t, rows[2].process.faults+rows[2].process.cautions)
}
