package visits

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
)

func TestSomebodyIsUpInAnyOfTheShifts(t *testing.T) {
	shifts := model.Hours{Awake: append(upFrom(6*3600, 14*3600).Awake, upFrom(22*3600, 2*3600).Awake...)}
	clock := Daily(0)
	for at, night := range map[float64]bool{8: false, 13.5: false, 15.5: true, 18: true, 20.5: true, 22: false, 25: false, 27.5: true} {
		assert.Equal(t, night, clock.Night(shifts, at*hour, 0), "%v h", at)
	}
	assert.Equal(t, 12*hour, shifts.Waking())
	assert.Equal(t, day, upFrom(0, 24*3600).Waking())
}

// What falls on a day that nobody works is missed, however early or late in it, and no
// start of the day helps.
func TestADayAwayIsMissed(t *testing.T) {
	start := time.Date(2026, 4, 1, 6, 0, 0, 0, time.UTC)
	shifts := upFrom(6*3600, 22*3600)
	shifts.Away = []model.Days{{First: midnight(start.AddDate(0, 0, 2)), Last: midnight(start.AddDate(0, 0, 3))}}
	list := []Task{{At: 4 * hour}, {At: day + 4*hour}, {At: 2*day + 4*hour}, {At: 3*day + 12*hour}, {At: 4*day + 4*hour}}
	missed := Missed(list, From(start), shifts)
	assert.Equal(t, list[2:4], missed)
	assert.True(t, From(start).Away(shifts, 2*day+4*hour))
	best, worst := Best(list, shifts, func(s int) Clock { return From(On(start, s)) })
	assert.NotEmpty(t, best.Missed)
	assert.GreaterOrEqual(t, len(worst.Missed), 2)
	assert.Empty(t, Missed(list, Daily(6*3600), shifts), "where no date is known, no day is away")
}

func TestWithoutShiftsOnlyDaysAwayAreMissed(t *testing.T) {
	start := time.Date(2026, 4, 1, 2, 0, 0, 0, time.UTC)
	only := model.Hours{Away: []model.Days{{First: midnight(start), Last: midnight(start)}}}
	list := []Task{{At: hour}, {At: day + hour}}
	assert.Equal(t, list[:1], Missed(list, From(start), only))
}

func TestHandsOfShiftsThatOverlapCountTogether(t *testing.T) {
	hands := func(n float64) *model.Quantity {
		q := &model.Quantity{}
		q.SI = n
		return q
	}
	early, late := upFrom(6*3600, 14*3600).Awake[0], upFrom(13*3600, 22*3600).Awake[0]
	early.Hands, late.Hands = hands(2), hands(1)
	shifts := model.Hours{Awake: []model.Shift{early, late}}
	for second, want := range map[int]int{7 * 3600: 2, 13*3600 + 60: 3, 15 * 3600: 1} {
		n, known := shifts.Hands(second)
		assert.True(t, known)
		assert.Equal(t, want, n)
	}
	_, known := shifts.Hands(23 * 3600)
	assert.False(t, known, "nobody is there")
	late.Hands = nil
	_, known = model.Hours{Awake: []model.Shift{early, late}}.Hands(13*3600 + 60)
	assert.False(t, known, "the second shift does not say how many it is")
}

func TestALookNeedsNoHand(t *testing.T) {
	v := Gather([]Task{{Kind: Drain}, {Kind: Gate}, {Kind: Look}, {Kind: Turn}})[0]
	assert.Equal(t, 2, v.Hands())
}
