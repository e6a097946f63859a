package sheet_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/sheet"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
)

// underway is the sheet of a batch of the loft whose record has some lines, at a time of them.
func underway(t *testing.T, until, lines string) (*follow.Following, sheet.Sheet) {
	t.Helper()
	b := sample.Batch(t, "batches", "use \"pale.malt\"\n\nbatch \"26-09\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  from 5.9 kg of \"Far field 2026\"\n"+lines+"}\n")
	at, err := time.ParseInLocation("2006-01-02 15:04", until, time.Local)
	require.NoError(t, err)
	f, err := follow.Of(t.Context(), b, at, follow.Options{Members: 40})
	require.NoError(t, err)
	s, err := sheet.OfBatch(b, f.Middle(), f.Due, at, sheet.Options{Note: "maltwright note 26-09.malt", Follow: f})
	require.NoError(t, err)
	return f, s
}

const inTheSteep = "  weighed 8.33 kg in \"blue tub\" at 14:00 after soak 1\n  remark \"smells <b>fresh</b>\" at 14:05\n"

func TestABatchUnderWayHasWhatIsYetToCome(t *testing.T) {
	f, s := underway(t, "2026-03-06 15:00", inTheSteep)
	r, err := timetable.Ahead(f.Middle(), f.Due, f.Trial.Batch.Began.Time)
	require.NoError(t, err)
	all := blocksOf[sheet.Visit](s.Pages...)
	require.Equal(t, tasks(r.Visits), done(all))
	assert.Equal(t, `fill "blue tub" for soak 2: 7 h in water at 13 °C`, all[0].Do[0])
	assert.Equal(t, r.Visits[0].Time.Format("15:04"), all[0].When.Clock)
	assert.Equal(t, "Batch 26-09", s.Title)
	assert.Equal(t, "maltwright note 26-09.malt", s.Code)
	assert.Equal(t, []sheet.Readings{{Rows: []sheet.Reading{
		{When: "Fri 6 Mar 14:00", Line: `weighed 8.33 kg in "blue tub" after soak 1`},
		{When: "Fri 6 Mar 14:05", Line: `remark "smells <b>fresh</b>"`}}}}, blocksOf[sheet.Readings](s.Pages...))
	sums := blocksOf[sheet.Sums](s.Pages[0])
	require.Len(t, sums, 1, "the steep goes on")
	assert.Equal(t, "5.9 kg", sums[0].Rows[0].Result, "of what went in")
	code := blocksOf[sheet.Code](s.Pages...)
	require.Len(t, code, 1)
	assert.True(t, strings.HasPrefix(code[0].Line, "maltwright note 26-09.malt weighed ____"))
}

func TestWhatIsDoneOtherwiseStandsAboveTheVisits(t *testing.T) {
	_, s := underway(t, "2026-03-06 15:00", inTheSteep+"  changed soak 2 to 5 h because \"left for work\"\n")
	assert.Equal(t, sheet.Reading{Line: `changed soak 2 to 5 h because "left for work"`}, blocksOf[sheet.Readings](s.Pages[0])[0].Rows[0])
	assert.Equal(t, `fill "blue tub" for soak 2: 5 h in water at 13 °C`, blocksOf[sheet.Visit](s.Pages[0])[0].Do[0])
}

func TestWhatWasReadInStagesThatAreOverStandsBehind(t *testing.T) {
	_, s := underway(t, "2026-03-08 12:00", inTheSteep+"  weighed 9.40 kg in \"blue tub\" at 2026-03-07 06:00 after soak 2\n  weighed 10.10 kg in \"blue tub\" at 22:00 after soak 3\n  turned at 2026-03-08 06:00\n")
	assert.Equal(t, "germinate", s.Pages[0].Of)
	assert.Empty(t, blocksOf[sheet.Sums](s.Pages...), "the steep is over")
	now := blocksOf[sheet.Readings](s.Pages[0])
	require.Len(t, now, 1)
	assert.Equal(t, []sheet.Reading{{When: "Sun 8 Mar 06:00", Line: "turned"}}, now[0].Rows)
	n := len(s.Pages)
	assert.Equal(t, "read so far", s.Pages[n-2].Of)
	rows := 0
	for _, r := range blocksOf[sheet.Readings](s.Pages[n-2]) {
		rows += len(r.Rows)
	}
	assert.Equal(t, 4, rows)
}

func TestManyReadingsFit(t *testing.T) {
	lines := inTheSteep + "  weighed 9.40 kg in \"blue tub\" at 2026-03-07 06:00 after soak 2\n  weighed 10.10 kg in \"blue tub\" at 22:00 after soak 3\n"
	for day := 8; day < 11; day++ {
		for hour := range 24 {
			lines += fmt.Sprintf("  read bed 15 °C at 2026-03-%02d %02d:30\n", day, hour)
		}
	}
	_, s := underway(t, "2026-03-11 00:00", lines)
	rows := 0
	for i, page := range s.Pages {
		used := 0.0
		for _, b := range page.Blocks {
			used += b.Tall(s.Size) + sheet.Gap
		}
		assert.LessOrEqual(t, used, s.Size.Room()+sheet.Gap, "page %d", i+1)
		for _, r := range blocksOf[sheet.Readings](page) {
			rows += len(r.Rows)
		}
	}
	assert.Equal(t, 4+72, rows)
	assert.Len(t, blocksOf[sheet.Readings](s.Pages[0])[0].Rows, 8, "the last of the stage that goes on")
}

// A stage whose visits are all past keeps its readings: they stand above what is next.
func TestReadingsOfAStageWithoutVisitsAreNotLost(t *testing.T) {
	f, _ := underway(t, "2026-03-06 15:00", inTheSteep)
	var next []visits.Visit
	for _, v := range f.Due {
		if v.Tasks[0].Stage == model.KilnStage {
			next = append(next, v)
		}
	}
	require.NotEmpty(t, next)
	s, err := sheet.OfBatch(f.Trial.Batch, f.Middle(), next, time.Date(2026, 3, 6, 15, 0, 0, 0, time.Local), sheet.Options{})
	require.NoError(t, err)
	want := 0
	for _, v := range next {
		want += len(v.Tasks)
	}
	assert.Equal(t, want, done(blocksOf[sheet.Visit](s.Pages...)))
	assert.Len(t, blocksOf[sheet.Readings](s.Pages[0])[0].Rows, 2)
}
