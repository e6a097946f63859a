package founding

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/visits"
)

var (
	beginsAt   = regexp.MustCompile(`Begin at (\d\d):(\d\d)`)
	stillNight = regexp.MustCompile(`(One|\d+) visits? still falls? in the night`)
)

// saysOfNights is when a process says to begin, s of the day, and how many visits it says fall in the night.
func saysOfNights(t *testing.T, text []byte) (begin, night int) {
	t.Helper()
	comment := strings.Join(strings.Fields(strings.ReplaceAll(string(text), "#", " ")), " ")
	at := beginsAt.FindStringSubmatch(comment)
	require.NotNil(t, at, comment)
	h, _ := strconv.Atoi(at[1])
	m, _ := strconv.Atoi(at[2])
	if n := stillNight.FindStringSubmatch(comment); n != nil {
		night, _ = strconv.Atoi(strings.Replace(n[1], "One", "1", 1))
	} else {
		require.Contains(t, comment, "somebody is awake for all that is to be done")
	}
	return h*3600 + m*60, night
}

// What is said of the night is what the timetable of the forecast has, and a kitchen need not get up.
func TestThePlanIsByDayWhereItCanBe(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		answers Answers
		most    int
	}{
		{Answers{"units": Metric}, 0},
		{Answers{"units": Pounds}, 0},
		{Answers{"units": Pounds, "charge": "12 lb", "awake": "06:00 to 23:00", "dryer 1 reaches": "170 to 500 °F", "air": "58 to 64 °F", "water": "58 to 64 °F"}, 0},
		{Answers{"units": Metric, "dryer 1": Dehydrator, "dryer 2": Oven}, 0},
		{Answers{"units": Metric, "awake": "05:00 to 09:00 and 17:00 to 22:00"}, 40},
	} {
		c.answers["treated"] = "no"
		r := written(t, c.answers)
		begin, says := saysOfNights(t, r.Files[len(r.Files)-1].Text)
		f := *r.Forecast
		f.Begun = time.Date(2026, 3, 2, 0, 0, begin, 0, time.UTC)
		hours := model.Hours{}
		for _, p := range r.Report.House.Processes {
			hours = p.Site.Hours
		}
		night := visits.Missed(visits.Gather(visits.List(&f)), visits.Daily(begin), hours)
		assert.Len(t, night, says, "%v", c.answers)
		assert.LessOrEqual(t, len(night), c.most, "%v", c.answers)
		for _, v := range night {
			for _, task := range v.Tasks {
				assert.NotEqual(t, visits.Turn, task.Kind, "turns stand at hours of the day")
			}
		}
	}
}
