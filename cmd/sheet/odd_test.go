package sheet_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/sheet"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// otherwise is the everyday malt of the loft with words of its file replaced by others.
func otherwise(t *testing.T, replaced ...string) *model.Process {
	t.Helper()
	folder := sample.Folder(t)
	text, err := os.ReadFile(filepath.Join(folder, "pale.malt"))
	require.NoError(t, err)
	for i := 0; i < len(replaced); i += 2 {
		require.Contains(t, string(text), replaced[i])
	}
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	house, found := read.Load("pale.malt", []byte(strings.NewReplacer(replaced...).Replace(string(text))), ".", root)
	if worst, any := finding.Worst(found); any {
		require.Less(t, worst, finding.Fault, "%v", found)
	}
	return house.Processes[len(house.Processes)-1]
}

// whole asks of a sheet what is asked of all: each visit once, and no page overfull.
func whole(t *testing.T, p *model.Process) (*forecast.Forecast, sheet.Sheet) {
	t.Helper()
	f, s := made(t, p, sheet.Options{Start: begins})
	r := timetable.UntilBroken(f, begins)
	if !f.BrokenOff() {
		var err error
		r, err = timetable.Of(f, begins, false)
		require.NoError(t, err)
	}
	assert.Equal(t, tasks(r.Visits), done(blocksOf[sheet.Visit](s.Pages...)))
	for i, page := range s.Pages {
		used := 0.0
		for _, b := range page.Blocks {
			used += b.Tall(s.Size) + sheet.Gap
		}
		assert.LessOrEqual(t, used, s.Size.Room()+sheet.Gap, "page %d", i+1)
	}
	return f, s
}

// tasks counts those of a timetable, and done those that stand on a sheet for them.
func tasks(list []timetable.Visit) (n int) {
	for _, v := range list {
		n += len(v.Tasks)
	}
	return n
}

func done(list []sheet.Visit) (n int) {
	for _, v := range list {
		if !v.Beside {
			n += len(v.Do)
		}
	}
	return n
}

func of(s sheet.Sheet) (names []string) {
	for _, p := range s.Pages {
		names = append(names, p.Of)
	}
	return names
}

func TestManyVisitsStandOnManyPages(t *testing.T) {
	_, s := whole(t, otherwise(t, "every 8 h", "every 2 h"))
	assert.Greater(t, len(blocksOf[sheet.Visit](s.Pages...)), 60)
	assert.Contains(t, of(s), "germinate, page 6")
}

func TestSeveralVesselsHaveABoxEach(t *testing.T) {
	p := otherwise(t, "process", "vessel \"left\" { holds 9 l; weighs 500 g }\nvessel \"mid\" { holds 9 l; weighs 510 g }\nvessel \"right\" { holds 9 l; weighs 520 g }\nprocess",
		`steep in "blue tub"`, `steep in "left" and "mid" and "right"`)
	_, s := whole(t, p)
	drained := blocksOf[sheet.Visit](s.Pages...)[1]
	var labels []string
	for _, b := range drained.Boxes {
		labels = append(labels, b.Label)
	}
	assert.Equal(t, []string{`in "left"`, `in "mid"`, `in "right"`, "time"}, labels)
}

func TestASecondSteepHasAPageOfItsOwn(t *testing.T) {
	_, s := whole(t, otherwise(t, "  germinate on", "  germinate on \"growing tray\" for 20 h { hold bed at 14 °C }\n  steep in \"blue tub\" { soak 2 h in water at 13 °C }\n  germinate on"))
	assert.Contains(t, of(s), "steep 1")
	assert.Contains(t, of(s), "steep 2")
	assert.Contains(t, of(s), "germinate 2")
}

func TestAProcessThatEndsGreenHasNoPageOfAKiln(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), "pale.malt"))
	require.NoError(t, err)
	_, behind, found := strings.Cut(string(text), "  wither on")
	require.True(t, found)
	p := otherwise(t, "make pale malt", "make green malt", "  wither on"+behind, "}\n")
	_, s := whole(t, p)
	assert.Equal(t, "dangers", s.Pages[len(s.Pages)-1].Of)
	for _, name := range of(s) {
		assert.NotContains(t, name, "kiln")
	}
}

func TestLotsStandWithTheirDeliveries(t *testing.T) {
	p := otherwise(t, "process", "grain \"Hill\" { species barley; moisture 13 %; germination 97 %; treated no\n delivered 2.5 t from \"Hügel & Söhne\" on 2026-02-01 as \"L-118\" }\nprocess",
		`from 6 kg of "Far field 2026"`, "from 3 kg of \"Hill\"\n  from 3 kg of \"Far field 2026\"")
	_, s := whole(t, p)
	text := map[string][]string{}
	for _, f := range blocksOf[sheet.Head](s.Pages[0])[0].Fields {
		text[f.Label] = append(text[f.Label], f.Text)
	}
	assert.Equal(t, []string{"3 kg of Hill", "3 kg of Far field 2026"}, text["lot"])
	assert.Equal(t, []string{"Hügel & Söhne", ""}, text["supplier"], "a line to write on where the house does not say")
	assert.Equal(t, []string{"2.5 t on 2026-02-01 as L-118", ""}, text["delivery, year"])
}

func TestAMixtureOfManyLotsFits(t *testing.T) {
	var grains, from strings.Builder
	for i := range 20 {
		fmt.Fprintf(&grains, "grain \"Lot %d\" { species barley; moisture 13 %%; germination 97 %%; treated no; delivered 2.5 t from \"Farm %[1]d\" on 2026-02-01 }\n", i)
		fmt.Fprintf(&from, "  from 300 g of \"Lot %d\"\n", i)
	}
	_, s := whole(t, otherwise(t, "process", grains.String()+"process", `  from 6 kg of "Far field 2026"`, from.String()))
	lots := 0
	for _, h := range blocksOf[sheet.Head](s.Pages...) {
		for _, f := range h.Fields {
			if f.Label == "lot" {
				lots++
			}
		}
	}
	assert.Equal(t, 20, lots)
}

// What breaks off says so behind the last visit that is known, and shows no end of the step it broke off in.
func TestABrokenForecastSaysSoOnPaper(t *testing.T) {
	f, s := whole(t, otherwise(t, "soak 7 h in water at 13 °C", "soak 7 h in water at 60 °C"))
	require.True(t, f.BrokenOff())
	visits := blocksOf[sheet.Visit](s.Pages...)
	require.Len(t, visits, 1)
	assert.Equal(t, []string{`fill "blue tub" for soak 1: 7 h in water at 60 °C`}, visits[0].Do)
	said := blocksOf[sheet.Words](s.Pages[0])
	assert.Contains(t, said[len(said)-1].Text, "The forecast of steep ends here: water temperature 60 °C is outside 0 to 40 °C.")
	assert.NotEmpty(t, blocksOf[sheet.SpareRows](s.Pages[0]))
}

// Names may be as long as they like, and hold what they like: nothing acts on a terminal, and no block is
// taller than a page.
func TestLongNamesFit(t *testing.T) {
	long := strings.Repeat("very long name of a tub ", 60) + strings.Repeat("x", 400)
	p := otherwise(t, "process \"Loft pale\"", "vessel \""+long+"\" { holds 25 l; weighs 990 g }\nprocess \""+long+"\"", `steep in "blue tub"`, `steep in "`+long+`"`)
	p.Name += "\u202e" // which no file can hold
	_, s := whole(t, p)
	assert.NotContains(t, s.Title+s.Batch, "\u202e")
	for _, v := range blocksOf[sheet.Visit](s.Pages...) {
		for _, text := range append(v.Do, v.Expect...) {
			assert.Less(t, len([]rune(text)), 300)
		}
	}
}

func TestNakedKernelsAreDrawnNaked(t *testing.T) {
	for name, naked := range map[string]bool{"wheat.malt": true, "pale.malt": false, "oats.malt": false} {
		_, s := whole(t, sample.Process(t, name))
		assert.Equal(t, naked, blocksOf[sheet.Tally](s.Pages...)[0].Classes[0].Naked, name)
	}
}

func TestAGateThatAsksForChitHasABoxForIt(t *testing.T) {
	_, s := whole(t, otherwise(t, "      rest 9 h in air at 14 °C\n    }\n", "      rest 9 h in air at 14 °C\n    }\n    gate chit at least 10 %\n"))
	for _, v := range blocksOf[sheet.Visit](s.Pages...) {
		if strings.Contains(strings.Join(v.Do, " "), "gate: chit") {
			assert.Contains(t, v.Boxes, sheet.Box{Label: "chitted, of 100"})
			return
		}
	}
	t.Fatal("no gate asks for chit")
}
