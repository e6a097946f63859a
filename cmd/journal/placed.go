package journal

import (
	"context"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// placed settles what a reading leaves to the record: the date of a time that does not follow
// from the line above, and the place of a temperature.
func (r Record) placed(x typed, home *syntax.Statement, now time.Time) (typed, error) {
	last, at := lastOf(timesIn(home.Body.Statements)), now
	if m, timed := stampOf(x.Statement); timed {
		when, ok := m.meant(last, now)
		if !ok {
			return x, nil // what is wrong with it is told when it is read
		}
		at = when
		if m.From.Date.Text == "" && !last.IsZero() && !follows(last, m, at) {
			var err error
			if x, err = typedAs(x.text[:m.Start] + stampText(at) + x.text[m.End:]); err != nil {
				return x, err
			}
		}
	}
	return r.withPlace(x, at)
}

// withPlace gives a temperature that says no place that of its time.
func (r Record) withPlace(x typed, at time.Time) (typed, error) {
	if where := r.place(x.Statement, at); where != "" {
		return typedAs(x.text[:x.Verb.End] + " " + where + x.text[x.Verb.End:])
	}
	return x, nil
}

// follows tells whether a time alone is read as the time that it was meant as.
func follows(last time.Time, m stamp, at time.Time) bool {
	second, _ := value.Second(m.From.Clock)
	next, ok := value.Follow(last, second)
	return ok && next.Equal(at)
}

// place is where a temperature was most likely read that says no place: in the water of a soak,
// the air of a rest, the bed of the growing piece; "" where it says one, or may mean several.
func (r Record) place(line *syntax.Statement, at time.Time) string {
	if line.Verb.Text != readAt || len(line.Terms) == 0 {
		return ""
	}
	if _, amount := line.Terms[0].(syntax.Amount); !amount {
		return ""
	}
	house, _ := read.Load(r.Name, r.Text, r.Dir, r.Reader)
	for _, b := range house.Batches {
		if r.Batch != "" && b.Name != r.Batch || b.Broken || b.Process == nil {
			continue
		}
		return usualPlace(b, at)
	}
	return ""
}

func usualPlace(b *model.Batch, at time.Time) string {
	t, err := evidence.New(b, at)
	if err != nil {
		return ""
	}
	t.Bound(context.Background(), work.NewPool(work.Records))
	f, err := t.Run(make([]float64, len(t.Axes)), true)
	if err != nil || len(f.Seen) == 0 {
		return ""
	}
	switch s := f.Seen[len(f.Seen)-1]; {
	case s.Step == string(model.SoakStep):
		return vocabulary.PlaceWater
	case s.Step == string(model.RestStep):
		return vocabulary.PlaceAir
	case s.Stage == model.GerminateStage:
		return vocabulary.PlaceBed
	}
	return ""
}
