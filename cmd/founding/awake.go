package founding

import (
	"fmt"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

const (
	quarter = 15      // min: times of day are planned by the quarter of an hour
	ofDay   = 24 * 60 // min
)

// up tells of each quarter of an hour of the day whether somebody is awake.
type up [ofDay / quarter]bool

// upOf is when somebody is awake at a site: by day where it does not say.
func upOf(s *model.Site) (u up) {
	for _, shift := range hoursOf(s).Awake {
		from, to := shift.From/60, shift.To/60
		if to <= from {
			to += ofDay
		}
		for m := from; m <= to; m += quarter {
			u[m%ofDay/quarter] = true
		}
	}
	return u
}

// at tells whether somebody is awake at a minute of some day.
func (u up) at(minute int) bool { return u[((minute%ofDay)+ofDay)%ofDay/quarter] }

// begins gives the first minute of a day from which somebody is awake then and after each of
// some times, min.
func (u up) begins(after ...int) (minute int, ok bool) {
	for m := 6 * 60; m < 6*60+ofDay; m += quarter {
		fits := u.at(m)
		for _, a := range after {
			fits = fits && u.at(m+a)
		}
		if fits {
			return m % ofDay, true
		}
	}
	return 0, false
}

// spread chooses so many times of a day at which somebody is awake that the longest time
// between two of them is the shortest.
func (u up) spread(n int) []int {
	var can []int
	for m := 0; m < ofDay; m += quarter {
		if u.at(m) && (u.at(m-quarter) && u.at(m+quarter) || n == 1) {
			can = append(can, m)
		}
	}
	best, least := []int(nil), 2*ofDay
	var choose func(from int, chosen []int)
	choose = func(from int, chosen []int) {
		if len(chosen) == n {
			longest := chosen[0] + ofDay - chosen[n-1]
			even := 0
			for i := 1; i < n; i++ {
				gap := chosen[i] - chosen[i-1]
				longest = max(longest, gap)
				even = max(even, gap)
			}
			if score := 2*longest + even; score < 2*least {
				least, best = (score+1)/2, append([]int(nil), chosen...)
			}
			return
		}
		for i := from; i < len(can); i += 2 {
			choose(i+1, append(chosen, can[i]))
		}
	}
	choose(0, nil)
	return best
}

// turning writes when the piece is turned: at times of day when somebody is awake.
func (p *plan) turning() string {
	if p.floor.Tumbles.Text == vocabulary.SaidYes || p.box != nil {
		return "every 12 h by " + vocabulary.ByMachine
	}
	return p.turnedByDay(p.turns)
}

// clocks writes minutes of a day as times.
func clocks(minutes []int) string {
	var at []string
	for _, m := range minutes {
		at = append(at, fmt.Sprintf("%02d:%02d", m/60, m%60))
	}
	return strings.Join(at, " and ")
}

func (u up) filled() up {
	for i := range u {
		u[i] = true
	}
	return u
}
