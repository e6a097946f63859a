package folder

import (
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/sim/infer/follow"
)

// Followed is how a batch stands by all of its readings, as follow has it.
type Followed struct {
	At     time.Time       // as of when it was followed
	Stale  bool            // the record is another since
	Result progress.Result // the plain answer
	Lines  []string        // the chief figures of it, in sentences
	house  words.House
}

// Sheet is the whole answer, as the command follow writes it, in lines of so many columns.
func (f Followed) Sheet(columns int) string {
	var out strings.Builder
	_ = text.Progress(&out, f.Result, f.house, text.Options{Width: columns}) // a builder takes all
	return out.String()
}

// following is how the watcher followed the record as it stands, nil where it has not.
func (d *Folder) following(s *standing) *follow.Following {
	if x := d.watching.of(s.id); x != nil && x.of == s {
		return x.f
	}
	return nil
}

// visits are those of a batch: as it was followed, where its record is still the same, and else by the forecast
// that fits its readings.
func (d *Folder) visits(s *standing, x stood) (list []noted.Visit) {
	was := d.watching.of(s.id)
	if was == nil || was.of != s || was.f == nil {
		return x.of.Visits
	}
	for _, v := range x.of.Visits {
		if v.Time.Before(was.said.At) {
			list = append(list, v)
		}
	}
	return append(list, noted.Visits(s.batch, was.f.Trial.Process, was.f.Due)...)
}

// followed is how a batch was followed last, nil where it was not.
func (d *Folder) followed(s *standing) *Followed {
	x := d.watching.of(s.id)
	if x == nil || x.of != s {
		d.watching.wake()
	}
	if x == nil || x.said == nil {
		return nil
	}
	out := *x.said
	out.Stale = x.of != s
	return &out
}

// saidOf puts what was followed into words.
func saidOf(s *standing, f *follow.Following, at time.Time, why progress.AsOf) *Followed {
	out := &Followed{At: at, Result: progress.Of(f, at, why), house: s.house()}
	h, r := out.house, out.Result
	add := func(what, said string) { // what is not known is left out
		if said != "" {
			out.Lines = append(out.Lines, words.Safe(what+said))
		}
	}
	add("moisture ", words.Spread(r.Now.Moisture, words.Percent))
	add("weight ", words.Spread(r.Now.Weight, func(kg answer.Kilograms) string { return words.Weighed(h, kg) }))
	for _, x := range r.Waits {
		if x.Open {
			add(words.OneLine(x.Text)+": ", words.Spread(&x.Left, words.Until))
		}
	}
	for _, x := range r.Late {
		add("late: ", words.Late(follow.LateKind(x.Kind), words.OnDay(x.Since, at)+", "+words.Ago(x.Late)+" ago", x.Text))
	}
	for _, x := range r.Readings {
		if x.Words != nil {
			add(x.Text+": ", h.Say(x.Words))
		}
	}
	return out
}
