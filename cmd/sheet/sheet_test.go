package sheet_test

import (
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/sheet"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

var begins = time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)

// examples calls for each good process of the examples.
func examples(t *testing.T, each func(t *testing.T, p *model.Process)) {
	t.Helper()
	folder, n := sample.Folder(t), 0
	require.NoError(t, filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == "broken":
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".malt"):
			return nil
		}
		for _, p := range processes(t, path) {
			n++
			name, _ := filepath.Rel(folder, path)
			t.Run(name, func(t *testing.T) { each(t, p) })
		}
		return nil
	}))
	require.Greater(t, n, 15)
}

func processes(t *testing.T, path string) []*model.Process {
	t.Helper()
	root, err := read.OpenRoot(filepath.Dir(path))
	require.NoError(t, err)
	defer root.Close()
	text, err := root.Read(filepath.Base(path))
	require.NoError(t, err)
	house, _ := read.Load(filepath.Base(path), text, ".", root)
	return house.Processes
}

func made(t *testing.T, p *model.Process, o sheet.Options) (*forecast.Forecast, sheet.Sheet) {
	t.Helper()
	f, err := forecast.Run(p, forecast.Options{Begun: o.Start})
	require.NoError(t, err)
	s, err := sheet.Of(f, o)
	require.NoError(t, err)
	return f, s
}

// blocksOf lists those of a kind on some pages.
func blocksOf[T sheet.Block](pages ...sheet.Page) (list []T) {
	for _, p := range pages {
		for _, b := range p.Blocks {
			if x, ok := b.(T); ok {
				list = append(list, x)
			}
		}
	}
	return list
}

// Every task of the timetable stands on the sheet once, at its time, and with a box for a value and one
// for the time. A visit at which a stage begins is cut there.
func TestEveryVisitStandsOnTheSheetOnce(t *testing.T) {
	examples(t, func(t *testing.T, p *model.Process) {
		f, s := made(t, p, sheet.Options{Start: begins})
		table, err := timetable.Of(f, begins, false)
		require.NoError(t, err)
		h := words.Of(p)
		left := map[string]int{}
		for _, v := range table.Visits {
			for _, k := range v.Tasks {
				left[v.Time.Format("Mon 2 Jan 15:04")+" "+h.Say(k.Words)]++
			}
		}
		for _, v := range blocksOf[sheet.Visit](s.Pages...) {
			for _, do := range v.Do {
				if !v.Beside {
					left[v.When.Day+" "+v.When.Clock+" "+do]--
				}
			}
			require.GreaterOrEqual(t, len(v.Boxes), 2)
			assert.Equal(t, "time", v.Boxes[len(v.Boxes)-1].Label)
		}
		for what, n := range left {
			assert.Zero(t, n, what)
		}
	})
}

// What is expected of the scale stands with a visit as the timetable has it.
func TestWhatTheScaleShowsStandsInSmallPrint(t *testing.T) {
	f, s := made(t, sample.Process(t, "pale.malt"), sheet.Options{Start: begins})
	table, err := timetable.Of(f, begins, false)
	require.NoError(t, err)
	h := words.Of(f.Process)
	drained := table.Visits[1]
	visit := blocksOf[sheet.Visit](s.Pages...)[1]
	assert.Equal(t, "expect "+words.OnScale(h, drained.Weight, drained.OnScale)+", "+words.Percent(drained.Moisture)+" moisture", visit.Expect[0])
	assert.Equal(t, `note weighed ____ in "blue tub" after soak 1`, visit.Expect[1])
	assert.Equal(t, []sheet.Box{{Label: `in "blue tub"`, Unit: "kg"}, {Label: "time"}}, visit.Boxes)
	assert.Equal(t, sheet.When{Day: "Fri 6 Mar", Clock: "14:00", After: "after 7 h"}, visit.When)
}

// Page 1 alone serves the steep: the head, the sums and all of its visits.
func TestPageOneServesTheSteep(t *testing.T) {
	examples(t, func(t *testing.T, p *model.Process) {
		for _, size := range []sheet.Size{sheet.A4, sheet.Letter} {
			for _, start := range []time.Time{begins, {}} {
				_, s := made(t, p, sheet.Options{Start: start, Size: size})
				assert.Len(t, blocksOf[sheet.Head](s.Pages[0]), 1)
				if model.First[*model.Steep](p) == nil {
					continue
				}
				assert.Len(t, blocksOf[sheet.Sums](s.Pages[0]), 1)
				for _, page := range s.Pages[1:] {
					assert.NotEqual(t, "steep, page 2", page.Of, size.Name)
				}
			}
		}
	})
}

// No page is fuller than it is tall, on either paper, with a clock and without.
func TestNoPageIsOverfull(t *testing.T) {
	holds := func(t *testing.T, s sheet.Sheet) {
		for i, page := range s.Pages {
			used := 0.0
			for _, b := range page.Blocks {
				used += b.Tall(s.Size) + sheet.Gap
			}
			assert.LessOrEqual(t, used, s.Size.Room()+sheet.Gap, "page %d of %s", i+1, s.Size.Name)
			assert.NotEmpty(t, page.Of)
		}
	}
	examples(t, func(t *testing.T, p *model.Process) {
		for _, size := range []sheet.Size{sheet.A4, sheet.Letter} {
			for _, o := range []sheet.Options{{Size: size, Start: begins, Begin: "maltwright begin pale.malt"}, {Size: size}} {
				_, s := made(t, p, o)
				holds(t, s)
			}
		}
	})
	for _, size := range []sheet.Size{sheet.A4, sheet.Letter} {
		holds(t, sheet.Blank(sheet.EitherUnits(), size, "maltwright begin ____"))
	}
}

func TestWithoutAStartTheClockIsLeftOpen(t *testing.T) {
	_, s := made(t, sample.Process(t, "pale.malt"), sheet.Options{})
	for _, v := range blocksOf[sheet.Visit](s.Pages...) {
		assert.Empty(t, v.When.Clock+v.When.Day+v.When.Mark)
		assert.NotEmpty(t, v.When.After)
	}
}

func TestThePaperIsThatOfTheHouse(t *testing.T) {
	for name, size := range map[string]sheet.Size{"pale.malt": sheet.A4, "home/porch.malt": sheet.Letter} {
		p := processes(t, filepath.Join(sample.Folder(t), name))[0]
		_, s := made(t, p, sheet.Options{})
		assert.Equal(t, size, s.Size)
		assert.Equal(t, size, sheet.SizeOf(p))
	}
}

// Turns at times of day stand at the clock; without one the sheet says what it has in their place.
func TestTurnsByTheClockSaySoWhereNoneIsKnown(t *testing.T) {
	p := processes(t, filepath.Join(sample.Folder(t), "home/porch.malt"))[0]
	const says = "Turn by the clock: at 07:00 and 14:30 and 22:00."
	said := func(o sheet.Options) (text string) {
		_, s := made(t, p, o)
		for _, w := range blocksOf[sheet.Words](s.Pages...) {
			text += w.Text
		}
		return text
	}
	assert.Contains(t, said(sheet.Options{}), says)
	assert.NotContains(t, said(sheet.Options{Start: begins}), says)
}
