package visits

import (
	"testing"
	"time"
	_ "time/tzdata" // the zones of the tests, on every machine

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/model"
)

func upFrom(from, to int) model.Hours {
	return model.Hours{Awake: []model.Shift{{Clock: model.Clock{From: from, To: to}}}}
}

func TestAnHourEarlyOrLateIsNotTheNight(t *testing.T) {
	late := upFrom(20*3600, 3*3600)
	clock := Daily(0)
	assert.False(t, clock.Night(late, 26*hour, 0))
	assert.False(t, clock.Night(late, 3.5*hour, 0), "half an hour late")
	assert.True(t, clock.Night(late, 5*hour, 0))
}

func TestWhatMayWaitUntilSomebodyIsUpIsNotTheNight(t *testing.T) {
	awake := upFrom(6*3600+1800, 22*3600+1800)
	clock := Daily(0)
	assert.True(t, clock.Night(awake, 2*hour, 4*hour), "until 06:00")
	assert.False(t, clock.Night(awake, 2*hour, 4.5*hour), "until 06:30")
}

// Visits every eight hours hit a night of eight hours once a day, whenever they
// begin; an hour early or late is enough to miss it.
func TestBestStartMissesTheNight(t *testing.T) {
	awake := upFrom(6*3600+1800, 22*3600+1800)
	var list []Task
	for at := 8 * hour; at < 5*day; at += 8 * hour {
		list = append(list, Task{At: at})
	}
	best, worst := Best(list, awake, Daily)
	assert.Empty(t, best.Missed)
	assert.Len(t, worst.Missed, len(list)/3+1, "the one in the middle of the night, every night")
	assert.Equal(t, 6*3600+1800, best.At)
}

// anyTasks draws a list of tasks within twelve days, and when somebody is awake.
func anyTasks(r *rapid.T) ([]Task, model.Hours) {
	var list []Task
	for _, m := range rapid.SliceOfN(rapid.IntRange(0, 12*1440), 1, 30).Draw(r, "minutes") {
		list = append(list, Task{At: 60 * float64(m), Waits: hour * float64(rapid.IntRange(0, 12).Draw(r, "waits"))})
	}
	from, to := rapid.IntRange(0, 47).Draw(r, "from"), rapid.IntRange(0, 47).Draw(r, "to")
	return list, upFrom(from*halfHour, to*halfHour)
}

func TestNoHalfHourMissesFewerThanTheBestOrMoreThanTheWorst(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		list, awake := anyTasks(r)
		best, worst := Best(list, awake, Daily)
		for at := 0; at < int(day); at += halfHour {
			if awake.Up(at) {
				n := len(Missed(list, Daily(at), awake))
				assert.LessOrEqual(r, len(best.Missed), n)
				assert.GreaterOrEqual(r, len(worst.Missed), n)
			}
		}
	})
}

func TestWhereNoClockIsChangedTheDateMakesNoDifference(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	require.NoError(t, err)
	june := time.Date(2026, 6, 1, 9, 0, 0, 0, berlin)
	rapid.Check(t, func(r *rapid.T) {
		list, awake := anyTasks(r)
		best, worst := Best(list, awake, Daily)
		dated, last := Best(list, awake, func(s int) Clock { return From(On(june, s)) })
		assert.Equal(r, best, dated)
		assert.Equal(r, worst, last)
	})
}

// On 29 March 2026 the clocks of Berlin are put from 02:00 to 03:00, on 1 November
// those of New York from 02:00 back to 01:00 (time zone database): 12 h after 20:00 it is
// 09:00 in the one and 07:00 in the other.
func TestTheClockOnTheWallFollowsTheChange(t *testing.T) {
	for _, c := range []struct {
		zone  string
		start string
		want  int
	}{
		{"Europe/Berlin", "2026-03-28T20:00", 9 * 3600},
		{"America/New_York", "2026-10-31T20:00", 7 * 3600},
	} {
		zone, err := time.LoadLocation(c.zone)
		require.NoError(t, err)
		start, err := time.ParseInLocation("2006-01-02T15:04", c.start, zone)
		require.NoError(t, err)
		assert.Equal(t, c.want, From(start)(12*hour).Second, c.zone)
		awake := upFrom(c.want, c.want+60)
		assert.True(t, From(start).Awake(awake, 12*hour), c.zone)
	}
}
