package sheet

import (
	"slices"
	"strings"
	"time"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
)

// together is how many rows of readings stay together on a page.
const together = 8

// lastRead are the last readings of the stage that goes on, above what is yet to come, and what is done
// otherwise than the process says.
func (m *maker) lastRead() []Block {
	if m.batch == nil {
		return nil
	}
	_, last := m.read()
	return rowsOf(append(m.changes(), last...))
}

// soFar is the section of what was read before those; nil where nothing was.
func (m *maker) soFar() *section {
	if m.batch == nil {
		return nil
	}
	earlier, _ := m.read()
	if len(earlier) == 0 {
		return nil
	}
	return &section{of: "read so far", first: append([]Block{Heading{Text: "Read so far"}}, rowsOf(earlier)...)}
}

// read are the readings until now: the last few of the stage that goes on, and all before them.
func (m *maker) read() (earlier, last []Reading) {
	earlier = m.readings(func(at time.Time) bool { return m.stageAt(at) != m.present() })
	last = m.readings(func(at time.Time) bool { return m.stageAt(at) == m.present() })
	if n := len(last) - together; n > 0 {
		earlier, last = append(earlier, last[:n]...), last[n:]
	}
	return earlier, last
}

// rowsOf are readings in blocks that fit a page.
func rowsOf(rows []Reading) (list []Block) {
	for some := range slices.Chunk(rows, together) {
		list = append(list, Readings{some})
	}
	return list
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
			list = append(list, line{last, Reading{when, m.doubted(x.Place()) + untimed(x.Place(), x.When())}})
		}
	}
	sorted.Stable(list, func(a, b line) int { return a.at.Compare(b.at) })
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

// doubted marks a reading that the others speak against.
func (m *maker) doubted(at source.Place) string {
	if m.o.Follow == nil {
		return ""
	}
	for _, d := range m.o.Follow.Doubts {
		if d.Observation >= 0 && d.Observation < len(m.o.Follow.Judged) && m.o.Follow.Judged[d.Observation].Observation.Reading.Place() == at {
			return "doubtful: "
		}
	}
	return ""
}

// untimed is a line of a record without its time, which stands in front of it.
func untimed(at source.Place, when model.Instant) string {
	w := when.Place
	if when.IsZero() || w.File == nil || w.Start < at.Start || w.End > at.End {
		return written(at)
	}
	before, behind := at.File.Text(source.Span{Start: at.Start, End: w.Start}), at.File.Text(source.Span{Start: w.End, End: at.End})
	before, had := strings.CutSuffix(strings.TrimRight(before, " \t"), " at")
	if !had {
		return written(at)
	}
	return short(words.Safe(words.OneLine(before + " " + behind)))
}

// written is a line of a file as it is written.
func written(at source.Place) string { return short(words.Safe(words.OneLine(at.Text()))) }
