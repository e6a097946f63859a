package forecast

import (
	"math"
	"testing"
	"time"
	_ "time/tzdata" // the zones of the tests, on every machine

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

func pieceAt(hours ...int) *model.Piece {
	d := &model.Daily{}
	for _, h := range hours {
		d.At = append(d.At, h*3600)
	}
	every := &model.Quantity{}
	every.SI = 24 * 3600 / float64(len(hours))
	return &model.Piece{Turn: every, TurnAt: d}
}

func TestTurnsByTheClockStandAtTheClock(t *testing.T) {
	begun := time.Date(2026, 3, 6, 9, 10, 0, 0, time.UTC)
	p := pieceAt(7, 19)
	const spread = 39 * 3600.0 // 00:10 on the 8th
	first := NextTurn(p, begun, spread)
	assert.Equal(t, time.Date(2026, 3, 8, 7, 0, 0, 0, time.UTC), begun.Add(time.Duration(first)*time.Second))
	second := NextTurn(p, begun, first)
	assert.Equal(t, 12*3600.0, second-first)
	assert.Equal(t, second, NextTurn(p, begun, first-20*60), "turned twenty minutes early, it is not turned again on time")
	assert.Equal(t, spread+12*3600, NextTurn(p, time.Time{}, spread), "where no beginning is known, at even times")
	assert.True(t, math.IsInf(NextTurn(&model.Piece{}, begun, spread), 1))
}

// On 29 March 2026 the clocks of Berlin are put from 02:00 to 03:00 (time zone database).
func TestTurnsByTheClockFollowTheChangeOfTheClocks(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	require.NoError(t, err)
	begun := time.Date(2026, 3, 27, 7, 0, 0, 0, berlin)
	p := pieceAt(7, 19)
	at := 0.0
	var gaps []float64
	for range 6 {
		next := NextTurn(p, begun, at)
		gaps = append(gaps, (next-at)/3600)
		at = next
	}
	assert.Equal(t, []float64{12, 12, 12, 11, 12, 12}, gaps)
}

// A forecast that knows when the batch begins turns at the clock, another at even times,
// and says so.
func TestAForecastTurnsByTheClockWhereItKnowsTheStart(t *testing.T) {
	grow := `germinate on "tray" { hold bed at 14 to 16 °C; turn at 07:00 and 19:00; for 4 days; humidity 98 % }` + "\n"
	p := load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+grow+kilnText+"}\n")
	even, err := Run(p, Options{})
	require.NoError(t, err)
	assert.Contains(t, even.Assumed, Assumption(EvenTurns{*model.First[*model.Germination](p).Turn, "07:00 and 19:00"}))
	at := func(hour int) *Forecast {
		f, err := Run(p, Options{Begun: time.Date(2026, 3, 6, hour, 0, 0, 0, time.UTC)})
		require.NoError(t, err)
		for _, a := range f.Assumed {
			assert.NotEqual(t, "turns", a.topic().of)
		}
		return f
	}
	early, late := at(6), at(14)
	assert.Equal(t, 6, early.Begun.Hour())
	warmest := func(f *Forecast) float64 { return Troubles[BedWarm](f)[0].Temperature }
	assert.NotEqual(t, warmest(early), warmest(late), "how warm it gets hangs on when it is turned")
}

func TestWhatTheRecordTurnedComesBeforeTheClock(t *testing.T) {
	grow := `germinate on "tray" { hold bed at 14 to 16 °C; turn at 07:00 and 19:00; for 4 days; humidity 98 % }` + "\n"
	p := load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+grow+kilnText+"}\n")
	r := &run{o: Options{Begun: time.Date(2026, 3, 6, 6, 0, 0, 0, time.UTC), Course: &Course{Turns: []float64{48*3600 - 600}}}, f: &Forecast{}, clock: 40 * 3600}
	ticks := r.turning(&model.First[*model.Germination](p).Piece)
	require.Len(t, ticks, 2)
	done, due := ticks[0], ticks[1]
	assert.InDelta(t, 8*3600-600, done.next, 1e-9)
	assert.InDelta(t, 49*3600-r.clock, due.next, 1e-9, "07:00, 49 h after 06:00")
	due.next = done.next + due.to(&r.o.Course.Turns[0])
	assert.InDelta(t, 49*3600-r.clock, due.next, 1e-9, "an hour and ten minutes later it is due at the clock again")
	late := 48.5 * 3600
	due.next = late - r.clock + due.to(&late)
	assert.InDelta(t, 61*3600-r.clock, due.next, 1e-9, "half an hour later it is not")
}
