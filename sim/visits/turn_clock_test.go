package visits

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

func byClock(t *testing.T, begun time.Time) []Task {
	t.Helper()
	grow := `germinate on "tray" { hold bed at 14 to 16 °C; turn at 07:00 and 19:00; for 4 days; humidity 98 % }` + "\n"
	h, _ := read.Load("x.malt", []byte(house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+grow+kilnText+"}\n"), ".", nowhere{})
	require.Len(t, h.Processes, 1)
	f, err := forecast.Run(h.Processes[0], forecast.Options{Begun: begun})
	require.NoError(t, err)
	var turns []Task
	for _, x := range List(f) {
		if x.Kind == Turn {
			turns = append(turns, x)
		}
	}
	require.Greater(t, len(turns), 6)
	return turns
}

func TestTurnsAtTimesOfDayAreVisitsAtThem(t *testing.T) {
	begun := time.Date(2026, 3, 6, 8, 20, 0, 0, time.UTC)
	for _, x := range byClock(t, begun) {
		at := begun.Add(time.Duration(x.At) * time.Second)
		assert.True(t, at.Minute() == 0 && (at.Hour() == 7 || at.Hour() == 19), "%s", at)
		assert.Equal(t, at.Hour()*3600, *x.Wall)
	}
}

// Whatever hour the batch begins at, what stands at the clock falls in the night or not by its
// own time of day.
func TestTheStartDoesNotMoveWhatStandsAtTheClock(t *testing.T) {
	for _, begun := range []time.Time{{}, time.Date(2026, 3, 6, 8, 20, 0, 0, time.UTC)} {
		turns := byClock(t, begun)
		byDay, from9 := upFrom(6*3600, 20*3600), upFrom(9*3600, 20*3600)
		for start := 0; start < int(day); start += halfHour {
			assert.Empty(t, Missed(turns, Daily(start), byDay))
			early := Missed(turns, Daily(start), from9)
			assert.InDelta(t, len(turns)/2, len(early), 1, "each of 07:00")
		}
	}
	two, one := 7*3600, Visit{Tasks: []Task{{Kind: Turn}, {Kind: Look}}}
	assert.Nil(t, one.wall(), "a turn at an even interval")
	one.Tasks[0].Wall = &two
	assert.Equal(t, &two, one.wall())
	one.Tasks = append(one.Tasks, Task{Kind: Sprinkle})
	assert.Nil(t, one.wall(), "what else is due moves with the start")
}
