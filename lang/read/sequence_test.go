package read

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// moments draws the times of a record, some of them without a date, and most in order.
func moments(t *rapid.T) []moment {
	list := make([]moment, rapid.IntRange(2, 12).Draw(t, "lines"))
	day := 1
	for i := range list {
		list[i].second = 1800 * rapid.IntRange(0, 47).Draw(t, "second")
		if day += rapid.SampledFrom([]int{0, 0, 1, 1, 1, -1}).Draw(t, "days"); i == 0 || rapid.Bool().Draw(t, "dated") {
			list[i].date = fmt.Sprintf("2026-03-%02d", max(day, 1))
		}
	}
	list[rapid.SampledFrom([]int{0, 0, 0, 1}).Draw(t, "began")].began = true
	return list
}

// Whether other times put a record in order is what reading the whole of it anew tells.
func TestOtherTimesAreInOrderWhereTheWholeRecordIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := moments(t)
		s := sequenceOf(list)
		if s.first == len(list) {
			return
		}
		i := rapid.IntRange(0, len(list)-1).Draw(t, "at")
		for _, m := range list[i].meant(firstOf(list)) {
			changed := slices.Clone(list)
			changed[i] = m
			anew := sequenceOf(changed)
			at, ok := s.with(i, []moment{m})
			assert.Equal(t, anew.first == len(list), ok)
			if ok {
				assert.Equal(t, anew.at[i:], at)
			}
		}
	})
}

// A record of thousands of lines is given up after so many tries, and says of no time that it
// alone is wrong.
func TestALongRecordOutOfOrderIsGivenUp(t *testing.T) {
	list := []moment{{date: "2026-03-01", began: true}}
	for i := range 4000 {
		list = append(list, moment{second: (i * 60) % 86400})
	}
	list = append(list, moment{date: "2026-03-02"}, moment{date: "2026-03-01", second: 60})
	r := &recorder{moments: list}
	for range list {
		r.came = append(r.came, firstOf(list))
	}
	s := sequenceOf(list)
	assert.Empty(t, r.remedies())
	for i := range list {
		r.remedyAt(s, i, 1)
	}
	assert.Greater(t, s.tried, mostTried)
	assert.Less(t, s.tried, 2*mostTried)
}

func firstOf(list []moment) time.Time {
	at, _ := list[0].follow(time.Time{}, time.Time{})
	return at
}
