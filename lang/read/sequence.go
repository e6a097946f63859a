package read

import "time"

// sequence is the times of a record as they are written, where some of them go back.
type sequence struct {
	list  []moment
	at    []time.Time // when each is, up to the first that goes back
	first int         // that one
	tried int         // times that were looked at where others are written
}

// mostTried is how many times are looked at until it is given up: those of a long record
// without dates all move with one of them.
const mostTried = 1_000_000

// sequenceOf reads times as far as they are in order.
func sequenceOf(list []moment) *sequence {
	t := &sequence{list: list}
	var before, began time.Time
	for t.first < len(list) {
		at, why := t.follow(t.first, list[t.first], before, began)
		if why != inOrder {
			break
		}
		t.at = append(t.at, at)
		if before = at; t.first == 0 {
			began = t.beginning(at)
		}
		t.first++
	}
	return t
}

// beginning is when the batch began, by the first time.
func (t *sequence) beginning(first time.Time) time.Time {
	if t.list[0].began {
		return first
	}
	return time.Time{}
}

// follow gives when a time is by the one above it and the beginning. A beginning that does not
// stand first is in no order.
func (t *sequence) follow(i int, m moment, before, began time.Time) (time.Time, misfit) {
	at, why := m.follow(before, began)
	if why == inOrder && m.began && i > 0 {
		why = goesBack
	}
	return at, why
}

// with tells whether every time can be where it stands once those from i on are others, and
// gives when they are, from i on.
func (t *sequence) with(i int, others []moment) (at []time.Time, ok bool) {
	if i > t.first { // what goes back is above
		return nil, false
	}
	var before, began time.Time
	if i > 0 {
		before, began = t.at[i-1], t.beginning(t.at[0])
	}
	for j := i; j < len(t.list); j++ {
		m := t.list[j]
		if j < i+len(others) {
			m = others[j-i]
		}
		when, why := t.follow(j, m, before, began)
		if t.tried++; why != inOrder || t.tried > mostTried {
			return nil, false
		}
		if i > 0 && j >= i+len(others) && j < t.first && when.Equal(t.at[j]) { // all that follows is as it was
			return nil, false
		}
		at = append(at, when)
		if before = when; j == 0 {
			began = t.beginning(when)
		}
	}
	return at, true
}
