package curve

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/ledger"
)

// Season is batches over each other, each from its own beginning, in the order in which they began.
type Season struct{ Tracks []Track }

// Track is what the record of a batch says of it over time. It is what was read; nothing of it is forecast, but
// that a moisture goes by the dry matter that the forecast of the batch has left.
type Track struct {
	Batch, Process string
	File           string
	Began          time.Time
	Moments        []Moment // in the order of time

	Steep, Floor, Kiln, Total ledger.Figure[answer.Seconds] // how long each took
}

// Moment is what was read at one time; what was not is NaN.
type Moment struct {
	At       answer.Seconds
	Part     answer.Share // weight of the whole batch, drained, of that of the raw grain
	Moisture answer.Share // wet basis: by that weight, or as tested
	Bed      answer.Celsius
}

// SeasonOf is that of batches side by side; those of which nothing was weighed or read are left out.
func SeasonOf(r ledger.Result) (s Season) {
	for _, b := range r.Batches {
		t := Track{Batch: b.Batch, Process: b.Process, File: string(b.File), Began: b.Began, Steep: b.Cast, Floor: b.Floor, Kiln: b.Kiln, Total: b.Total}
		for _, m := range b.Course {
			t.Moments = append(t.Moments, Moment{answer.Seconds(m.At), answer.Share(m.Part), answer.Share(m.Moisture), answer.Celsius(m.Bed)})
		}
		if len(t.Moments) > 0 {
			s.Tracks = append(s.Tracks, t)
		}
	}
	return s
}
