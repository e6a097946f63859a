package sheet_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/sheet"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// said is all that stands on some pages in words.
func said(pages ...sheet.Page) string {
	var b strings.Builder
	for _, w := range blocksOf[sheet.Words](pages...) {
		b.WriteString(w.Text + "\n")
	}
	for _, v := range blocksOf[sheet.Visit](pages...) {
		b.WriteString(strings.Join(v.Do, "\n") + "\n" + strings.Join(v.Expect, "\n") + "\n")
	}
	for _, g := range blocksOf[sheet.Gate](pages...) {
		b.WriteString(g.Asks + "\n" + strings.Join(g.Looks, "\n") + "\n")
	}
	for _, c := range blocksOf[sheet.Code](pages...) {
		b.WriteString(c.Line + "\n")
	}
	return b.String()
}

// pagesOf are those of a stage.
func pagesOf(s sheet.Sheet, stage string) (list []sheet.Page) {
	for _, p := range s.Pages {
		if p.Of == stage || strings.HasPrefix(p.Of, stage+", page") {
			list = append(list, p)
		}
	}
	return list
}

// The page of a stage begins with its loading, and with what it is set to; the steep ends on its own.
func TestThePageOfAStageBeginsWithItsLoading(t *testing.T) {
	_, s := made(t, sample.Process(t, "pale.malt"), sheet.Options{Start: begins})
	for stage, first := range map[string]string{
		"germinate":        `spread on "growing tray" to grow; bed 14 to 17 °C`,
		"wither":           `spread on "larch floor" to wither; air 18 to 22 °C`,
		"kiln":             `load "tray kiln"; dry 1 at air-on 50 °C for at least 6 h, then until moisture at most 25 %, but no longer than 14 h`,
		"deculm and store": "rub and sieve the rootlets off",
	} {
		pages := pagesOf(s, stage)
		require.NotEmpty(t, pages, stage)
		assert.True(t, strings.HasPrefix(blocksOf[sheet.Visit](pages...)[0].Do[0], first), stage)
	}
	steep := blocksOf[sheet.Visit](s.Pages[0])
	last := steep[len(steep)-1]
	assert.Equal(t, []string{"drain soak 3, weigh"}, last.Do)
	assert.Contains(t, last.Expect, `goes on at once on the page "germinate"`)
	assert.Contains(t, said(s.Pages...), "but not before 4 d have passed; wait no longer than 7 d", "with the gate of the growth")
}

// A bed that a fan holds has what the process says of it on its page, and is read at least twice a day.
func TestABedInABoxIsReadTwiceADay(t *testing.T) {
	for name, rows := range map[string]int{"box.malt": 6, "hall/pale.malt": 6, "pale.malt": 0} {
		p := processes(t, filepath.Join(sample.Folder(t), name))[0]
		f, s := made(t, p, sheet.Options{Start: begins})
		require.False(t, f.BrokenOff())
		pages := pagesOf(s, "germinate")
		n, before := 0, time.Time{}
		for _, v := range blocksOf[sheet.Visit](pages...) {
			at, err := time.Parse("Mon 2 Jan 15:04 2006", v.When.Day+" "+v.When.Clock+" 2026")
			require.NoError(t, err)
			if !before.IsZero() {
				assert.LessOrEqual(t, at.Sub(before), 13*time.Hour, "%s: %s", name, v.When.Day)
			}
			if before = at; v.Beside {
				n++
				assert.Equal(t, []string{"bed", "air-on", "air-off", "time"}, []string{v.Boxes[0].Label, v.Boxes[1].Label, v.Boxes[2].Label, v.Boxes[3].Label})
			}
		}
		assert.GreaterOrEqual(t, n, rows, name)
		assert.True(t, rows > 0 || n == 0, "%s: whoever turns by hand reads then", name)
	}
	_, s := made(t, sample.Process(t, "box.malt"), sheet.Options{Start: begins})
	text := said(pagesOf(s, "germinate")...)
	for _, rule := range []string{"hold bed at 14 to 17 °C\n", "air at air-on 13 °C when bed above 16 °C\n", "air at air-on 15 °C with airflow 400 m3/h for 15 min every 1 h\n",
		"humidity air-on 98 %\n", "turn every 12 h by machine\n", "sprinkle to moisture 44 % when moisture below 42 %\n", "held: bed at 14 to 17 °C\n"} {
		assert.Contains(t, text, rule)
	}
	assert.NotContains(t, text, "held: air-on")
	assert.NotContains(t, text, "<U+")
}

// Without a clock no two visits have the same time, unless they are one that is cut between two pages.
func TestVisitsWithoutAClockAreToldApart(t *testing.T) {
	for _, name := range []string{"crystal.malt", "pale.malt"} {
		f, s := made(t, sample.Process(t, name), sheet.Options{})
		for _, p := range s.Pages {
			seen := map[string]bool{}
			for _, v := range blocksOf[sheet.Visit](p) {
				assert.False(t, seen[v.When.After], "%s, %s: %s", name, p.Of, v.When.After)
				seen[v.When.After] = true
			}
		}
		for _, st := range f.Stages {
			if st.Kind == model.KilnStage {
				assert.Contains(t, said(pagesOf(s, "kiln")...), " after loading\n")
			}
		}
	}
}

// At an oven the thermometer that is there is read: it has no air that leaves the malt.
func TestAnOvenIsReadByItsOwnThermometer(t *testing.T) {
	_, s := made(t, sample.Process(t, "crystal.malt"), sheet.Options{Start: begins})
	asked := map[string]bool{}
	for _, v := range blocksOf[sheet.Visit](pagesOf(s, "kiln")...) {
		for _, b := range v.Boxes {
			asked[b.Label] = true
		}
	}
	assert.True(t, asked["malt"] && asked["oven"], "%v", asked)
	assert.False(t, asked["air-off"])
}

// A steep that ends below or above its aim says so above its visits, and what to do stands behind.
func TestASteepThatMissesItsAimSaysSo(t *testing.T) {
	p := otherwise(t, "repeat at most 3 times until moisture at least 43 % {", "repeat 2 times {")
	f, s := whole(t, p)
	missed := forecast.Troubles[forecast.TargetMissed](f)
	require.Len(t, missed, 1)
	require.Less(t, missed[0].Moisture, 0.425)
	assert.Contains(t, said(s.Pages[0]), "below its aim of 43 to 45 %. Weigh before it ends;")
	_, good := whole(t, sample.Process(t, "pale.malt"))
	assert.NotContains(t, said(good.Pages[0]), "its aim")
	assert.Equal(t, []bool{true, false}, []bool{s.Misses, good.Misses})
	for _, s := range []sheet.Sheet{s, good} {
		var rows []string
		for _, g := range blocksOf[sheet.GoesWrong](s.Pages...) {
			for _, r := range g.Rows {
				rows = append(rows, r.What)
			}
		}
		assert.Subset(t, rows, []string{"too light at steep-out", "too heavy at steep-out", "a gate or a look is not met"})
	}
}

// What is wanted before the first reading stands on page 1.
func TestTheBatchIsBegunOnPageOne(t *testing.T) {
	const line = "maltwright begin pale.malt"
	_, s := made(t, sample.Process(t, "pale.malt"), sheet.Options{Start: begins, Begin: line})
	codes := blocksOf[sheet.Code](s.Pages...)
	require.Len(t, codes, 1)
	assert.Equal(t, codes, blocksOf[sheet.Code](s.Pages[0]))
	assert.Equal(t, line, codes[0].Line)
	examples(t, func(t *testing.T, p *model.Process) { // and what can hurt somebody
		for _, size := range []sheet.Size{sheet.A4, sheet.Letter} {
			_, s := made(t, p, sheet.Options{Start: begins, Begin: line, Size: size})
			if size == sheet.A4 || p.Name != "Loft Munich" { // eight visits fill a page of Letter
				assert.Contains(t, said(s.Pages[0]), line+"\n", size.Name)
			}
			assert.Contains(t, said(s.Pages[0]), "Dangers: ", size.Name)
		}
	})
	_, short := made(t, sample.Process(t, "wheat.malt"), sheet.Options{Start: begins, Begin: line})
	assert.Contains(t, said(short.Pages[0]), "Have ready: ")
	blank := sheet.Blank(sheet.EitherUnits(), sheet.A4, line)
	assert.Len(t, blocksOf[sheet.Code](blank.Pages[0]), 1)
}

// Each look that is planned has a count, with its time.
func TestEachLookHasItsCount(t *testing.T) {
	_, s := made(t, sample.Process(t, "pale.malt"), sheet.Options{Start: begins})
	looks := 0
	for _, v := range blocksOf[sheet.Visit](pagesOf(s, "germinate")...) {
		for _, do := range v.Do {
			if strings.HasPrefix(do, "look: ") || strings.HasPrefix(do, "the growing ends") {
				looks++
			}
		}
	}
	dated := 0
	for _, c := range blocksOf[sheet.Tally](s.Pages...) {
		if strings.HasPrefix(c.Title, "Acrospires, look of ") {
			dated++
		}
	}
	assert.Equal(t, min(looks, 4), dated)
	text := said(pagesOf(s, "germinate")...)
	assert.Contains(t, text, "note turned\n")
	assert.Contains(t, text, "note read bed ____\n")
}

// What is late stands first, in words, and not among what is to come.
func TestWhatIsLateIsTheFirstRow(t *testing.T) {
	_, s := underway(t, "2026-03-07 10:00", inTheSteep)
	first := blocksOf[sheet.Visit](s.Pages[0])[0]
	assert.True(t, first.Beside)
	assert.Equal(t, "late", first.When.Mark)
	assert.Equal(t, first.Do, s.Late())
	assert.True(t, strings.HasPrefix(first.Do[0], "late, and not in the record: drain soak 2, weigh"), first.Do[0])
	assert.Contains(t, first.Do[0], "It was due Sat 7 Mar 06:0")
	_, s = underway(t, "2026-03-08 20:00", inTheSteep+"  weighed 9.40 kg in \"blue tub\" at 2026-03-07 06:00 after soak 2\n  weighed 10.10 kg in \"blue tub\" at 22:00 after soak 3\n  turned at 2026-03-08 06:00\n")
	first = blocksOf[sheet.Visit](s.Pages[0])[0]
	assert.Equal(t, "late: the next turn after the last one in the record was due on Sun 8 Mar 14:00, 6 h ago: turn it, and note it", first.Do[0])
	_, s = underway(t, "2026-03-06 15:00", inTheSteep)
	assert.False(t, blocksOf[sheet.Visit](s.Pages[0])[0].Beside, "nothing is late")
}

// A sheet whose record is long past says so; and what others speak against is marked.
func TestAnOldRecordAndADoubtfulReadingAreToldAsSuch(t *testing.T) {
	lines := inTheSteep + "  weighed 4.10 kg in \"blue tub\" at 14:10 after soak 1\n"
	f, _ := underway(t, "2026-03-06 15:00", lines)
	require.NotEmpty(t, f.Doubts)
	s, err := sheet.OfBatch(f.Trial.Batch, f.Middle(), f.Due, time.Date(2026, 3, 6, 15, 0, 0, 0, time.Local), sheet.Options{Follow: f, Past: true})
	require.NoError(t, err)
	assert.Contains(t, said(s.Pages[0]), "Nothing was written down since Fri 6 Mar 2026 15:00")
	marked := 0
	for _, r := range blocksOf[sheet.Readings](s.Pages...) {
		for _, row := range r.Rows {
			if strings.HasPrefix(row.Line, "doubtful: weighed 4.10 kg") {
				marked++
			}
			assert.False(t, strings.HasPrefix(row.Line, "doubtful: weighed 8.33 kg"))
		}
	}
	assert.Equal(t, 1, marked)
}

// The words of the process stand as they are, whatever is in quotes or behind a remark.
func TestTheRulesOfAPieceAreThoseOfItsFile(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), "pale.malt"))
	require.NoError(t, err)
	require.Contains(t, string(text), "turn  every 8 h")
	_, s := whole(t, otherwise(t, "turn  every 8 h", "turn  every 8 h # not \"twice } a day"))
	var rules []string
	for _, w := range blocksOf[sheet.Words](pagesOf(s, "germinate")[0]) {
		rules = append(rules, w.Text)
	}
	assert.Equal(t, []string{"as the process has it:", "hold bed at 14 to 17 °C", "turn every 8 h", "until acrospire at least 3/4 and rub is chalky", "allow 4 to 7 days"}, rules)
}

// What goes on on another page names one that is there.
func TestThePageThatGoesOnIsThere(t *testing.T) {
	examples(t, func(t *testing.T, p *model.Process) {
		_, s := made(t, p, sheet.Options{Start: begins})
		for _, v := range blocksOf[sheet.Visit](s.Pages...) {
			for _, e := range v.Expect {
				if page, is := strings.CutPrefix(e, "goes on at once on the page "); is {
					assert.Contains(t, of(s), strings.Trim(page, `"`))
				}
			}
		}
	})
}
