package report_test

import (
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/report"
	"maltwright/cmd/words"
	"maltwright/lang/read"
	"maltwright/sim/infer/follow"
)

// batch is the first batch of the loft, followed to its end, with words of its record replaced by others.
func batch(t *testing.T, replaced ...string) report.Batch {
	t.Helper()
	const folder, name = "../../examples/batches", "26-03.malt"
	text, err := os.ReadFile(folder + "/" + name)
	require.NoError(t, err)
	for i := 0; i < len(replaced); i += 2 {
		require.Contains(t, string(text), replaced[i])
	}
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	house, found := read.Load(name, []byte(strings.NewReplacer(replaced...).Replace(string(text))), ".", root)
	require.Len(t, house.Batches, 1)
	b := house.Batches[0]
	at := time.Date(2026, 3, 15, 0, 17, 0, 0, time.Local)
	f, err := follow.Of(t.Context(), b, at, follow.Options{Members: 40})
	require.NoError(t, err)
	book := ledger.New(t.Context(), nil)
	book.Enter(ledger.Record{File: name, Reader: root, House: house, Batch: b, Found: found})
	p := progress.Of(f, at, progress.Asked)
	p.Posterior.Trusted = true
	return report.Batch{House: words.OfBatch(b.Process, b), Batch: b, At: at, Ledger: book.Result().Batches[0], Progress: &p,
		Course: outlook.Of(f.Middle(), b.Began.Time), Conditions: progress.ConditionsOf(f), MaltWeighed: progress.MaltWeighedOf(f)}
}

// table is the table of a page with a head.
func table(t *testing.T, p report.Page, head string) report.Table {
	t.Helper()
	for _, b := range p.Blocks {
		if x, ok := b.(report.Table); ok && x.Head == head {
			return x
		}
	}
	require.Failf(t, "no such table", "%s", head)
	return report.Table{}
}

func row(t *testing.T, x report.Table, first string) []string {
	t.Helper()
	i := slices.IndexFunc(x.Rows, func(r []string) bool { return len(r) > 1 && r[0] == first })
	require.GreaterOrEqual(t, i, 0, "%s has no row %s", x.Head, first)
	return x.Rows[i]
}

func lines(t *testing.T, p report.Page, head string) string {
	t.Helper()
	for _, b := range p.Blocks {
		if x, ok := b.(report.Text); ok && x.Head == head {
			return strings.Join(x.Lines, "\n")
		}
	}
	require.Failf(t, "no such text", "%s", head)
	return ""
}

func TestTheGravestDoubtStandsUnderTheTitle(t *testing.T) {
	b := batch(t)
	assert.Empty(t, b.Page().Doubt)
	b.Progress.Posterior.Trusted = false
	p := b.Page()
	assert.Equal(t, words.Astray, p.Doubt)
	assert.Equal(t, "hardly any", row(t, table(t, p, "Figures and yields"), "forecasts")[1])
	assert.Contains(t, lines(t, p, "Doubts"), words.Astray)

	season := report.Season(b.House, []ledger.Batch{b.Ledger, b.Ledger}, []report.Marks{{Astray: true}, {Doubtful: map[string]bool{"warmest bed": true}}})
	assert.NotEmpty(t, season.Doubt)
	figures := table(t, season, "Figures and yields")
	assert.Equal(t, "26-03 *", figures.Columns[1].Head)
	assert.Equal(t, "26-03", figures.Columns[2].Head)
	bed := row(t, figures, "  warmest bed, °C")
	assert.Equal(t, bed[1]+" ?", bed[2])
	assert.NotContains(t, row(t, figures, "  green malt, kg")[2], "?")
}

func TestAFloorThatWasLeftBeforeItsConditionIsADeviation(t *testing.T) {
	p := batch(t).Page()
	done := lines(t, p, "Done otherwise than the process says")
	assert.Contains(t, done, `germinate left on Fri 13 Mar 10:36 before "acrospire at least 3/4 and rub is chalky" held: the last reading was rub gritty`)
	assert.Contains(t, done, `kiln gate left on Sat 14 Mar 21:57 before "moisture at most 4.5 %" held`)
	gates := table(t, p, "Gates and promises")
	assert.Contains(t, row(t, gates, "germinate")[3], "rub gritty, Fri 13 Mar 10:26: does not hold")
	assert.Contains(t, row(t, gates, "promise")[1], "total time")
}

func TestAStepWhoseEndIsNotNotedIsOpen(t *testing.T) {
	steps := table(t, batch(t).Page(), "Steps")
	assert.Equal(t, []string{"not noted", "not noted"}, row(t, steps, "cool")[1:3])
	assert.Equal(t, "not noted", row(t, steps, "deculm")[1])
	assert.Equal(t, "by the record", row(t, steps, "cure")[7])
	for _, r := range steps.Rows {
		assert.NotContains(t, r, "0 s")
	}
}

func TestTheMoistureOfTheMaltIsOneStory(t *testing.T) {
	b := batch(t)
	p := b.Page()
	two := table(t, p, "Moisture of the malt")
	require.Len(t, two.Rows, 2)
	assert.Equal(t, row(t, table(t, p, "Figures and yields"), "moisture")[1], two.Rows[0][2], "that of the figures")
	assert.Equal(t, row(t, table(t, p, "Steps"), "store")[4], two.Rows[1][2], "that of the steps")
	for _, r := range two.Rows {
		assert.NotEmpty(t, r[1], "of when")
		assert.NotEmpty(t, r[3], "its range")
	}
}

func TestAFigureSaysTruly(t *testing.T) {
	said := func(b report.Batch, name string) string {
		return row(t, table(t, b.Page(), "Figures and yields"), name)[2]
	}
	assert.Equal(t, "measured", said(batch(t), "raw grain"))
	assert.Contains(t, said(batch(t, "  sample 20.00 g dried to 17.54 g\n", "\n"), "raw grain"), "as the house says of the lot")
	hot := batch(t, "read    bed 16.5 °C", "read    bed 23.5 °C")
	assert.Equal(t, "measured, in doubt", said(hot, "warmest bed"))
	assert.Equal(t, "measured", said(hot, "green malt"))
}

// What is marked as doubtful is a row of the figures.
func TestWhatMayBeDoubtfulHasARow(t *testing.T) {
	b := batch(t, "read    bed 16.5 °C", "read    bed 26.5 °C", "felt    rub gritty at 10:26", "felt    rub gummy at 10:26", "4.90 kg clean malt", "3.90 kg clean malt")
	var labels, marked []string
	for _, r := range b.House.LedgerRows(b.Ledger) {
		labels = append(labels, r.Label)
	}
	for name := range b.Doubtful() {
		marked = append(marked, name)
	}
	assert.Subset(t, labels, marked)
	assert.Subset(t, marked, []string{"warmest bed", "clean malt", "yield as is"})
}
