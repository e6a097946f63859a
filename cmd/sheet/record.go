package sheet

import (
	"slices"
	"time"

	"maltwright/cmd/words"
	"maltwright/lang/source"
)

// readIn are the readings of a stage so far, above what is yet to come of it.
func (m *maker) readIn(i int) []Block {
	if m.batch == nil || i != m.present() {
		return nil
	}
	if rows := append(m.changes(), m.readings(func(at time.Time) bool { return m.stageAt(at) == i })...); len(rows) > 0 {
		return []Block{Readings{rows}}
	}
	return nil
}

// soFar is the section of what was read in the stages that are over; nil where nothing was.
func (m *maker) soFar() *section {
	if m.batch == nil {
		return nil
	}
	rows := m.readings(func(at time.Time) bool { return m.stageAt(at) != m.present() })
	if len(rows) == 0 {
		return nil
	}
	s := section{of: "read so far", first: []Block{Heading{Text: "Read so far"}}}
	const some = 8 // rows that stay together
	for len(rows) > 0 {
		n := min(some, len(rows))
		s.first, rows = append(s.first, Readings{rows[:n]}), rows[n:]
	}
	return &s
}

// present is the stage that the batch is in.
func (m *maker) present() int { return m.stageAt(m.until) }

// stageAt is the stage of the forecast at a time.
func (m *maker) stageAt(at time.Time) int {
	s := at.Sub(m.batch.Began.Time).Seconds()
	for i, st := range m.f.Stages {
		if n := len(st.Steps); n > 0 && s <= st.Steps[n-1].End+60 {
			return i
		}
	}
	return len(m.f.Stages) - 1
}

// readings are the lines of the record until now that are of some of the times, in their order. One
// that says only its step has the time of the line before it.
func (m *maker) readings(of func(time.Time) bool) (rows []Reading) {
	type line struct {
		at time.Time
		Reading
	}
	var list []line
	last := m.batch.Began.Time
	for _, x := range m.batch.Lines() {
		when := ""
		if at := x.When().Time; !at.IsZero() {
			last, when = at, at.Format(onDay+" "+onClock)
		}
		if !last.After(m.until) && of(last) {
			list = append(list, line{last, Reading{when, written(x.Place())}})
		}
	}
	slices.SortStableFunc(list, func(a, b line) int { return a.at.Compare(b.at) })
	for _, l := range list {
		rows = append(rows, l.Reading)
	}
	return rows
}

// changes are what is done otherwise than the process says, which has no time of its own.
func (m *maker) changes() (rows []Reading) {
	for _, c := range m.batch.Changes {
		rows = append(rows, Reading{Line: written(c.Place)})
	}
	return rows
}

// written is a line of a file as it is written.
func written(at source.Place) string { return short(words.Safe(words.OneLine(at.Text()))) }
