package read

import (
	"fmt"
	"strings"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/value"
)

// moment is a time of a record as it is written.
type moment struct {
	place  source.Place
	date   string // "" where it goes by the line above
	second int    // of the day
	began  bool   // it is that of the beginning
}

// misfit says why a time cannot be where it stands.
type misfit int

const (
	inOrder     misfit = iota
	undated            // it has no date, and no line above gives one
	noNight            // it lies before the one above, and no night lies between
	beforeBegin        // it lies before the beginning
	goesBack           // it lies before the one above
)

// follow gives when a time is by the time above it, the zero time where there is none.
func (m moment) follow(before, began time.Time) (time.Time, misfit) {
	var at time.Time
	switch {
	case m.date != "":
		date, _ := time.Parse(time.DateOnly, m.date) // readMoment has read it
		at = value.Instant(date, m.second)
	case before.IsZero():
		return at, undated
	default:
		next, ok := value.Follow(before, m.second)
		if !ok {
			return at, noNight
		}
		at = next
	}
	switch {
	case !began.IsZero() && at.Before(began):
		return at, beforeBegin
	case !before.IsZero() && at.Before(before):
		return at, goesBack
	}
	return at, inOrder
}

// halfDay is what the morning and the evening of a twelve-hour clock lie apart, s.
const halfDay = 12 * 3600

// meant are the times that may have been meant where another was written: in the other half
// of the day, or a day, a month or a year off; and of one without a date, on the next day.
func (m moment) meant(last time.Time) []moment {
	other := m
	if other.second += halfDay; other.second >= 2*halfDay {
		other.second -= 2 * halfDay
	}
	if m.date == "" {
		next := m
		next.date = last.AddDate(0, 0, 1).Format(time.DateOnly)
		return []moment{other, next}
	}
	list := []moment{other}
	date, _ := time.Parse(time.DateOnly, m.date)
	for _, off := range [][3]int{{0, 0, -1}, {0, 0, 1}, {0, -1, 0}, {0, 1, 0}, {-1, 0, 0}, {1, 0, 0}} {
		moved := m
		moved.date = date.AddDate(off[0], off[1], off[2]).Format(time.DateOnly)
		list = append(list, moved)
	}
	return list
}

// withinADay is the last of the times meant that lie a day off at the most: those a month or a
// year off are not looked at where one of them fits.
const withinADay = 2

// visit is the time within which lines are of one visit to the grain, s: whose clock was
// misread for one was misread for all.
const visit = 3600

// mostOfVisit is how many lines of a visit are tried together.
const mostOfVisit = 4

// remedy is a time that, were another written, would leave all in order.
type remedy struct {
	at    int // of the moments
	lines int // that are moved with it, itself included
	fits  []string
}

// remedies seeks the times that leave all in order where another is written, each alone; and
// where there are none, those of one visit together, by half a day. There are none where that
// asks for too many tries.
func (r *recorder) remedies() (list []remedy) {
	t := sequenceOf(r.moments)
	for n := 1; n <= mostOfVisit && len(list) == 0; n++ {
		for i := range min(len(r.moments)-n, t.first) + 1 {
			if x := r.remedyAt(t, i, n); len(x.fits) > 0 {
				list = append(list, x)
			}
		}
	}
	if t.tried > mostTried {
		return nil
	}
	return list
}

func (r *recorder) remedyAt(t *sequence, i, n int) remedy {
	x := remedy{at: i, lines: n}
	var last time.Time
	if i > 0 {
		last = r.came[i-1]
	}
	for k, other := range t.list[i].meant(last) {
		if n > 1 && k > 0 || k > withinADay && len(x.fits) > 0 { // of several only the half of the day
			break
		}
		others := []moment{other}
		for _, m := range t.list[i+1 : i+n] {
			if late := m.second - t.list[i].second; late < 0 || late > visit || m.began {
				return x
			}
			others = append(others, m.meant(last)[0])
		}
		if at, ok := t.with(i, others); ok && (k <= withinADay || t.near(i, at)) {
			x.fits = append(x.fits, stampOf(model.Instant{Time: at[0]}))
		}
	}
	return x
}

// near tells whether a time, with those below it, lies within a week of the one before it, or
// the beginning of the one behind it: at the end of a record any later month would be in order.
func (t *sequence) near(i int, at []time.Time) bool {
	const week = 7 * 24 * time.Hour
	if i == 0 {
		return len(at) > 1 && at[1].Sub(at[0]) <= week
	}
	return at[0].Sub(t.at[i-1]) <= week
}

// lookAtTime is what to do about a time that is settled to be wrong.
const lookAtTime = "look at the date, and whether the hour is in the morning or in the evening"

// inDisorder tells of the times that go back. Where one time is settled to be wrong it is
// told in place of all others; where it is one of several, the first that goes back is told
// with them; and else each.
func (r *recorder) inDisorder() {
	if len(r.backs) == 0 {
		return
	}
	list := r.remedies()
	switch first := r.backs[0]; {
	case len(list) == 1:
		r.note(r.told(list[0]))
	case len(list) > 1:
		if len(list) <= mostRemedies {
			first.Hint = "one of the times below is wrong, and changing any one of them puts all in order: look at the date and the hour"
			for _, x := range list {
				first.Related = append(first.Related, finding.Related{Place: r.moments[x.at].place, Message: fmt.Sprintf("%s in its place", strings.Join(x.fits, " or "))})
			}
		}
		r.note(first)
	default:
		for _, f := range r.backs {
			r.note(f)
		}
	}
}

// mostRemedies is how many times of which one is wrong are named.
const mostRemedies = 3

func (r *recorder) told(x remedy) finding.Finding {
	at := r.moments[x.at].place
	what, it := at.Text()+" is", "it"
	if x.lines > 1 {
		what, it = fmt.Sprintf("%s and what is written until %s are", at.Text(), r.moments[x.at+x.lines-1].place.Text()), "they"
	}
	f := timeGoesBack.At(at, fmt.Sprintf("%s not in order with the times around; from %s on %s would fit, and so would all others", what, strings.Join(x.fits, ", or "), it))
	if x.lines == 1 {
		f.Message = fmt.Sprintf("%s not in order with the times around it; at %s it would fit, and so would all others", what, strings.Join(x.fits, ", or at "))
	}
	f.Hint = lookAtTime
	f.Related = []finding.Related{{Place: r.backs[0].Place, Message: "the first time that does not fit with it"}}
	if r.backs[0].Place == at {
		f.Related = r.backs[0].Related
	}
	return f
}
