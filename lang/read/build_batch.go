package read

import (
	"fmt"
	"math"
	"slices"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// batch builds the record of one batch.
func (b *builder) batch(r *filled) {
	t := &model.Batch{Scope: r.scope()}
	t.Name, t.Place = r.name()
	t.Process = find(b, r.clause("of", 0), "process", b.known(), func(p *model.Process) string { return p.Name })
	b.house.Batches = append(b.house.Batches, t)
	if r.Body == nil {
		t.Broken = true
		return
	}
	rec := &recorder{builder: b, batch: t, begins: slices.ContainsFunc(r.Body.Statements, func(s *syntax.Statement) bool { return s.Verb.Text == "began" && !s.Broken })}
	t.Broken = !b.block(r.place.File, r.Body, vocabulary.Batch, r.scope(), r.place, func(s *filled) {
		if do := batchStatements[s.Verb.Text]; do != nil && s.whole {
			do(rec, s)
		} else if s.Verb.Text == "began" { // what is wrong with it is told, and then the times that go by it are not
			rec.begins = false
		}
	})
	rec.inDisorder()
	b.mixtureOf(t)
	t.MadeBy(t.Process)
	if b.recall != nil {
		b.recall.Recall(t)
	}
	t.BagsTare = bagsTare(t)
	b.batchSense(t)
}

// known are the processes that a batch can be of: those of this file, and those of
// the files it uses.
func (b *builder) known() []*model.Process {
	list := append([]*model.Process(nil), b.house.Processes...)
	return append(list, b.away...)
}

// usedProcesses builds the processes of used files, so that a batch can name one.
// They are judged where they stand; here only their faults are told, since a batch
// of a process that does not read is of no use.
func (b *builder) usedProcesses() {
	if len(b.records) == 0 {
		return
	}
	outer, found := b.house, b.found
	scratch := *b.house
	b.house, b.found = &scratch, nil
	b.house.Processes, b.house.Accepts = nil, nil
	for _, p := range b.elsewhere {
		b.process(p)
	}
	b.away = b.house.Processes
	for _, p := range b.away {
		p.House = outer
	}
	more := b.found
	b.house, b.found = outer, found
	for _, f := range more {
		if f.Severity >= finding.Fault {
			b.note(f)
		}
	}
}

// recorder goes through the record of a batch line by line and knows the time of
// the line before.
type recorder struct {
	*builder
	batch  *model.Batch
	last   model.Instant
	begins bool // a line says when it began, wherever it stands

	moments []moment          // all times so far
	came    []time.Time       // when each is taken to be; of one that cannot be, the last before it
	backs   []finding.Finding // those that cannot be where they stand
}

// batchStatements builds what stands in a batch, by its word.
var batchStatements = map[string]func(*recorder, *filled){
	"began": func(r *recorder, s *filled) {
		if at, ok := r.instant(s.slot(0), true); ok {
			r.batch.Began = at
		}
	},
	"sample": (*recorder).sample,
	"bag": func(r *recorder, s *filled) {
		r.batch.Bag = r.positive(s.slot(0).quantity(), "a weight")
	},
	"tare": func(r *recorder, s *filled) {
		r.batch.Tare = r.positive(s.slot(0).quantity(), "a weight")
	},
	"weighed": (*recorder).weighed, "counted": (*recorder).counted, "changed": (*recorder).changed,
	"felt": func(r *recorder, s *filled) {
		x := &model.Felt{Rub: s.slot(1).chosen()}
		r.add(s, x, &x.Seen)
	},
	"read": func(r *recorder, s *filled) {
		if t := r.readable(s.slot(0).temperature()); t != nil {
			x := &model.Read{Temperature: *t}
			r.add(s, x, &x.Seen)
		}
	},
	"turned": func(r *recorder, s *filled) {
		x := &model.Turned{}
		r.add(s, x, &x.Seen)
	},
	"from": recordStatements["from"], "pinned": recordStatements["pinned"],
	"remark": recordStatements["remark"], "tested": recordStatements["tested"],
}

// add puts a reading into the batch, unless its time cannot be. Seen is the part of it
// that says where it is written and when it was made.
func (r *recorder) add(s *filled, x model.Reading, seen *model.Seen) {
	if r.seen(s, seen) {
		r.batch.Readings = append(r.batch.Readings, x)
	}
}

// seen notes where a line is written, when it was and by whom. It is false for a time
// that cannot be.
func (r *recorder) seen(s *filled, seen *model.Seen) bool {
	seen.Written, seen.By = s.written(), s.clause("by", 0).chosen()
	if at := s.clause("at", 0); at != nil {
		when, ok := r.instant(at, false)
		if !ok {
			return false
		}
		seen.At = when
	}
	return true
}

// instant resolves the time of a line, by the one before it, and leaves out one that goes
// back. Began tells that the batch began then.
func (r *recorder) instant(v *given, began bool) (model.Instant, bool) {
	at := model.Instant{Place: v.place}
	before := r.last
	m := moment{place: v.place, date: v.word, second: v.clock[0], began: began}
	when, why := m.follow(before.Time, r.batch.Began.Time)
	if why == undated && !r.begins {
		return at, false // told once, of the batch: what it lacks is began
	}
	at.Time = when
	r.moments = append(r.moments, m)
	r.came = append(r.came, before.Time)
	switch why {
	case undated:
		r.refuse(valueNeeded.At(v.place, fmt.Sprintf("%s has no date, and no line above gives one", v.place.Text())))
	case noNight:
		r.disorder(r.back(v, fmt.Sprintf("%s is before %s, and is not in the night after it", v.place.Text(), stampOf(before))))
	case beforeBegin:
		r.disorder(beforeBegan(r.batch, at))
	case goesBack:
		r.disorder(r.back(v, fmt.Sprintf("%s is before %s, the time above it", stampOf(at), stampOf(before))))
	default:
		r.last = at
		r.came[len(r.came)-1] = when
		return at, true
	}
	return at, false
}

// disorder leaves a time out that cannot be where it stands. It is told when all are read,
// since another may be the one that is wrong.
func (r *recorder) disorder(f finding.Finding) {
	r.backs = append(r.backs, f)
	r.dropped++
}

func beforeBegan(t *model.Batch, at model.Instant) finding.Finding {
	f := readingBeforeBegan.At(at.Place, fmt.Sprintf("%s is before the batch began, %s", stampOf(at), stampOf(t.Began)))
	f.Related = []finding.Related{{Place: t.Began.Place, Message: "it began here"}}
	return f
}

func (r *recorder) back(v *given, message string) finding.Finding {
	f := timeGoesBack.At(v.place, message)
	f.Related = []finding.Related{{Place: r.last.Place, Message: "the time before it"}}
	return f
}

func stampOf(at model.Instant) string { return at.Format("2006-01-02 15:04") }

func (r *recorder) sample(s *filled) {
	wet, dry := r.positive(s.slot(0).quantity(), "a weight"), r.positive(s.clause("to", 0).quantity(), "a weight")
	switch {
	case wet == nil || dry == nil:
	case dry.SI > wet.SI:
		f := driedAboveWet.At(dry.Place, fmt.Sprintf("the dried sample weighs %s, more than the %s before drying", dry, wet))
		f.Related = []finding.Related{{Place: wet.Place, Message: "before drying"}}
		r.refuse(f)
	default:
		r.batch.Sample = &model.Sample{Wet: *wet, Dry: *dry}
	}
}

// step reads the name of a step: its kind, and which of them.
func (r *recorder) step(s *filled, slots []*given) (model.StepName, bool) {
	name := model.StepName{Kind: slots[0].chosen(), Place: slots[0].place}
	if len(slots) > 1 && slots[1] != nil {
		n := r.whole(slots[1].quantity(), 1, "a step number")
		if n == nil {
			return name, false
		}
		name.Number = int(n.SI)
		name.Place.Span = name.Place.Join(slots[1].place.Span)
	}
	return name, true
}

// whole reports a number that is no whole one, or less than it can be, and drops it.
func (r *recorder) whole(q *model.Quantity, least float64, what string) *model.Quantity {
	if q == nil || q.SI >= least && q.SI <= 1e6 && q.SI == math.Trunc(q.SI) {
		return q
	}
	r.refuse(outOfRange.At(q.Place, fmt.Sprintf("%s of %s; it is a whole number from %.0f to 1,000,000", what, q, least)))
	return nil
}
