package founding

import (
	"bytes"
	"context"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/forecast"
)

// written makes the files of answers for an empty folder.
func written(t require.TestingT, a Answers) Result {
	r, err := Write(context.Background(), a, There{})
	require.NoError(t, err)
	return r
}

// rulesOf lists the rules by which a report finds a caution or worse.
func rulesOf(r check.Report) (rules []string) {
	for _, f := range r.Findings {
		if f.Severity >= finding.Caution && !slices.Contains(rules, f.Rule) {
			rules = append(rules, f.Rule)
		}
	}
	return rules
}

// grown is for how long the grain grew, days.
func grown(f *forecast.Forecast) (days float64) {
	for _, s := range f.Stages {
		if s.Kind == "germinate" {
			days += (s.Steps[len(s.Steps)-1].End - s.Steps[0].Start) / 86400
		}
	}
	return days
}

// believable holds a forecast to what barley malt comes to (common practice).
func believable(t *testing.T, name string, f *forecast.Forecast) {
	t.Helper()
	require.NotNil(t, f, name)
	assert.Empty(t, f.Beyond, name)
	assert.InDelta(t, 44, 100*f.Totals.SteepOutMoisture, 4, "%s: steep-out", name)
	assert.InDelta(t, 6, grown(f), 2, "%s: days of growth", name)
	assert.InDelta(t, 4.5, 100*f.Totals.FinalMoisture, 1.5, "%s: moisture of the malt", name)
	assert.InDelta(t, 84, 100*f.Totals.Yield, 6, "%s: yield", name)
	for _, g := range f.Gates {
		assert.True(t, g.Met, "%s: %s", name, g)
	}
}

// tidyText holds a text to the layout.
func tidyText(t require.TestingT, f File) {
	tree, found := syntax.Parse(source.New(f.Name, f.Text))
	require.Empty(t, found, f.Name)
	require.Equal(t, string(f.Text), string(layout.Write(tree)))
}

// tidy holds what is written to the layout and to the width of a screen.
func tidy(t require.TestingT, name string, f File) {
	tidyText(t, f)
	for _, line := range strings.Split(string(f.Text[len(f.Was):]), "\n") {
		require.LessOrEqual(t, len([]rune(line)), columns, "%s: %s", name, line)
	}
}

func TestAStarterIsCleanAndBelievableInBothUnits(t *testing.T) {
	t.Parallel()
	for _, like := range Likes() {
		for _, units := range []string{Metric, Pounds} {
			name := like + ", " + units
			a, ok := Like(like, units)
			require.True(t, ok)
			r := written(t, a)
			require.Len(t, r.Files, 2, name)
			for _, f := range r.Files {
				tidy(t, name, f)
			}
			assert.Equal(t, []string{"treated-unknown"}, rulesOf(r.Report), "%s: nobody was asked", name)
			assert.Len(t, r.WhyNot, 1, name)
			require.Len(t, r.Before, 3, name)
			assert.Contains(t, r.Before[0], "treated as seed", name)
			assert.NotContains(t, string(r.Files[0].Text), "treated no", name)
			assert.NotContains(t, string(r.Files[1].Text), "Mind:", "it is of the lot, and goes with a word of the seller")
			assert.Empty(t, r.Changed, name)
			believable(t, name, r.Forecast)
			alone := check.File(r.Files[0].Name, r.Files[0].Text, ".", nil, check.Options{})
			assert.Empty(t, rulesOf(alone), name)
			assert.Equal(t, units == Pounds, r.Report.House.Processes[0].Units().British, name)
		}
	}
	_, ok := Like("mansion", Metric)
	assert.False(t, ok)
}

// why lists what is found of houses in which no process can be clean, as far as the questions go.
var why = map[string][]string{
	"nothing known":          {"treated-unknown"},
	"nothing known, pounds":  {"treated-unknown"},
	"a handful":              {"guard-came-first", "out-of-proportion"}, // too thin a layer to keep warm, and a dryer that is too large
	"cold room":              {"room-too-cold-for-bed"},
	"warm room":              {"room-too-warm-for-bed"},
	"hot room":               {"steep-water-warm", "room-too-warm-for-bed"},
	"gas oven":               {"gas-oven-indoors"},
	"two tonnes in a box":    {"co2-room"},
	"barn over wood, pounds": {"co2-room"},
}

func TestAHouseIsCleanOrSaysWhyNot(t *testing.T) {
	t.Parallel()
	require.GreaterOrEqual(t, len(sets), 24)
	for _, name := range slices.Sorted(maps.Keys(sets)) {
		a, err := ReadAnswers("answers.txt", []byte(sets[name]), There{})
		require.NoError(t, err, name)
		r := written(t, a)
		for _, f := range r.Files {
			tidy(t, name, f)
			assert.Empty(t, f.Was)
		}
		assert.ElementsMatch(t, why[name], rulesOf(r.Report), name)
		assert.Equal(t, len(why[name]) == 0, len(r.WhyNot) == 0, name)
		if len(why[name]) == 0 && !strings.Contains(sets[name], "grain:") && !strings.Contains(sets[name], "malt:") && !strings.Contains(string(r.Files[1].Text), "distilling") {
			believable(t, name, r.Forecast)
		}
	}
}

func TestWhatDoesNotFitIsSaid(t *testing.T) {
	a, err := ReadAnswers("answers.txt", []byte(sets["too much for the tub"]), There{})
	require.NoError(t, err)
	r := written(t, a)
	require.Len(t, r.Changed, 1)
	assert.Contains(t, r.Changed[0], "of the 40 lb are taken")
	assert.Contains(t, string(r.Files[1].Text), "You asked for 40 lb, but more does not fit the steeping vessel; make\n  # several batches, or steep in a larger vessel.")
}

// folder is a folder with files of the examples, and what it holds.
func folder(t *testing.T, paths ...string) There {
	t.Helper()
	dir := t.TempDir()
	for _, path := range paths {
		text, err := os.ReadFile("../../examples/" + path)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(dir+"/"+path[strings.LastIndex(path, "/")+1:], text, 0o600))
	}
	there, done, err := Look(dir)
	require.NoError(t, err)
	t.Cleanup(func() { _ = done() })
	return there
}

func TestWhatIsAddedLeavesWhatStands(t *testing.T) {
	for _, house := range []string{"home/porch.malt", "loft.malt", "hall/hall.malt", "mill/mill.malt"} {
		there := folder(t, house)
		require.NotNil(t, there.House, house)
		for _, add := range []string{AddGrain, AddDryer, AddVessel, AddFloor} {
			whole, _, ok := Completed(Answers{"add": add, "treated": "no"}, there)
			require.True(t, ok)
			r, err := Write(context.Background(), whole, there)
			require.NoError(t, err)
			require.Len(t, r.Files, 1)
			f := r.Files[0]
			assert.Equal(t, there.Main, f.Name)
			assert.True(t, bytes.HasPrefix(f.Text, f.Was), "%s: %s", house, add)
			assert.Greater(t, len(f.Text), len(f.Was))
			tidy(t, house+": "+add, f)
			assert.Empty(t, r.WhyNot, "%s: %s", house, add)
			assert.Len(t, namesIn(r.Report.House, add), len(namesIn(there.House, add))+1)
		}
	}
}

func TestAProcessIsAddedInAFileOfItsOwn(t *testing.T) {
	there := folder(t, "home/porch.malt")
	a, err := ReadAnswers("answers.txt", []byte("add: process\nuse grain: Creek side 2026\nuse dryer 1: fruit dryer\nuse dryer 2: kitchen oven\nmalt: vienna\ncharge: 9 lb\n"), there)
	require.NoError(t, err)
	r, err := Write(context.Background(), a, there)
	require.NoError(t, err)
	require.Len(t, r.Files, 1)
	assert.Equal(t, "porch-vienna.malt", r.Files[0].Name)
	tidy(t, "porch", r.Files[0])
	assert.Empty(t, rulesOf(r.Report))
	assert.Contains(t, string(r.Files[0].Text), "use \"porch.malt\"")
	assert.Contains(t, string(r.Files[0].Text), "9 lb")
	assert.Contains(t, string(r.Files[0].Text), "°F")
}

func TestAFileThatDoesNotReadIsNotAddedTo(t *testing.T) {
	text := []byte("vessel \"tub\" { holds 20 l }\nfloor \"tray\" { area 1 m2 }\nkiln \"oven\" {\n area 1 m2\n")
	there := Among([]File{{Name: "h.malt", Text: text}}, nil)
	require.NotNil(t, there.House)
	whole, _, _ := Completed(Answers{"add": AddVessel}, there)
	_, err := Write(context.Background(), whole, there)
	assert.ErrorContains(t, err, "h.malt is not added to")
}

func TestLineEndsOfAFileStay(t *testing.T) {
	text := []byte("vessel \"bucket\" { holds 20 l }\r\n\r\nfloor \"tray\" { area 1 m2 }")
	there := Among([]File{{Name: "h.malt", Text: text}}, nil)
	whole, _, _ := Completed(Answers{"add": AddVessel}, there)
	r, err := Write(context.Background(), whole, there)
	require.NoError(t, err)
	assert.Equal(t, string(text)+"\r\n\r\nvessel \"bucket 2\" {\r\n  holds 16 l  # usual; find it out: fill it from a jug\r\n}\r\n", string(r.Files[0].Text))
}

func TestAFileNameIsFreeAndWritable(t *testing.T) {
	assert.Equal(t, "home-pale.malt", fileName("Home, pale!", nil))
	assert.Equal(t, "home-2.malt", fileName("Home", []string{"HOME.malt"}))
	assert.Equal(t, "house.malt", fileName("Ωδή", nil))
	assert.Equal(t, "house-con.malt", fileName("con", nil))
}

func TestWriteEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	a, _ := Like("box", Metric)
	_, err := Write(ctx, a, There{})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestDryersStandInTheOrderOfTheirHeat(t *testing.T) {
	a, err := ReadAnswers("answers.txt", []byte(sets["oven, then dehydrator"]), There{})
	require.NoError(t, err)
	r := written(t, a)
	require.Len(t, r.Changed, 1)
	assert.Contains(t, r.Changed[0], "another order")
	text := string(r.Files[1].Text)
	assert.Less(t, strings.Index(text, `kiln in "dehydrator"`), strings.Index(text, `kiln in "oven"`))
	a, err = ReadAnswers("answers.txt", []byte(sets["three in a row"]), There{})
	require.NoError(t, err)
	assert.Len(t, written(t, a).Forecast.Kilns, 3)
}

func TestAnotherMaltIsMadeWhereNothingIsHotEnough(t *testing.T) {
	a, err := ReadAnswers("answers.txt", []byte(sets["a cool dryer, pounds"]), There{})
	require.NoError(t, err)
	r := written(t, a)
	assert.Equal(t, "Home distilling", r.Process)
	require.Len(t, r.Changed, 1)
	assert.Contains(t, r.Changed[0], "nothing here gets hotter than 140 °F")
}
