package text

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
)

const (
	atNight = "night" // nobody is awake, and it cannot wait
	isAway  = "away"  // nobody works on that day
	itWaits = "~"     // nobody is awake, and it may wait, or be done an hour early or late
)

// Timetable writes the visits under the days they fall on, then when the malt is ready
// and which hour to begin at is the best. It fits 80 columns.
func Timetable(w io.Writer, r timetable.Result, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	s.head(r.Head, r.Start)
	s.line("")
	scale := s.scaleWidth(r.Visits)
	if !s.narrow() {
		s.line("%s", s.bold(fmt.Sprintf("  time           after     wet %*s  what to do", scale, "scale")))
	}
	shown := ""
	for i := 0; i < len(r.Visits); {
		if d := r.Visits[i].Time.Format(day); d != shown {
			s.line("%s", s.bold(d))
			shown = d
		}
		n := alike(r.Visits[i:])
		s.visit(r.Visits[i:i+n], scale)
		i += n
	}
	s.line("")
	s.asked(r.Asked)
	s.finish(r)
	s.nights(r)
	_, err := io.WriteString(w, s.String())
	return err
}

// manyAlike is from how many on visits that only repeat the one before are one line.
const manyAlike = 4

// alike is how many visits from the first on one line may stand for: turns or stirrings
// of one day at even intervals, all of them in the night or none.
func alike(list []timetable.Visit) int {
	first := list[0]
	if do := first.Tasks[0]; len(first.Tasks) > 1 || !do.Kind.Again() {
		return 1
	}
	n := 1
	for ; n < len(list); n++ {
		next := list[n]
		if len(next.Tasks) > 1 || next.Tasks[0].Kind != first.Tasks[0].Kind || mark(next) != mark(first) || there(next) != there(first) || next.Time.Format(day) != first.Time.Format(day) {
			break
		}
		if gap := list[1].At - first.At; math.Abs(float64(next.At-list[n-1].At-gap)) > 1 {
			break
		}
	}
	if n < manyAlike {
		return 1
	}
	return n
}

// scaleWidth is how wide the weights of visits are.
func (s *Sheet) scaleWidth(list []timetable.Visit) int {
	wide := len("10.25 kg")
	for _, v := range list {
		if !math.IsNaN(float64(v.Weight)) {
			wide = max(wide, uniseg.StringWidth(words.Weighed(s.House, v.Weight)))
		}
		if v.Gross != nil {
			wide = max(wide, uniseg.StringWidth(words.Weighed(s.House, v.Gross.Weight)))
		}
	}
	return wide
}

// visit writes one visit, or one line for several that are alike, the words in as
// many lines as they need.
func (s *Sheet) visit(list []timetable.Visit, wide int) {
	v := list[0]
	moist, scale := "", ""
	if !math.IsNaN(float64(v.Moisture)) {
		moist = words.Percent(v.Moisture)
	}
	if !math.IsNaN(float64(v.Weight)) {
		scale = words.Weighed(s.House, v.Weight)
	}
	if s.narrow() {
		s.stackedVisit(list, moist)
		return
	}
	left := fmt.Sprintf("  %s %-5s %9s  %6s %*s  ", v.Time.Format("15:04"), mark(v), words.After(v.At), moist, wide, scale)
	blank := strings.Repeat(" ", uniseg.StringWidth(left))
	below := s.onScale(v.OnScale, uniseg.StringWidth(left)-2, wide)
	next := func() {
		if left = blank; len(below) > 0 {
			left, below = below[0]+"  ", below[1:]
		}
	}
	for i, task := range v.Tasks {
		do := s.toDo(list, i, task)
		for j, line := range words.Wrap(do, s.columns()-len(blank)-2) {
			if j > 0 {
				line = "  " + line
			}
			s.line("%s", strings.TrimRight(left+line, " "))
			next()
		}
	}
	for ; left != blank; next() {
		s.line("%s", strings.TrimRight(left, " "))
	}
}

// toDo says what a task of a visit, or of visits that are alike, is.
func (s *Sheet) toDo(list []timetable.Visit, i int, task timetable.Task) string {
	v, last := list[0], list[len(list)-1]
	do := s.Say(task.Words)
	if i == len(v.Tasks)-1 && mark(v) != isAway {
		do += there(v)
	}
	if n := len(list); n > 1 {
		do += fmt.Sprintf(" every %s until %s, %d times", words.Span(list[1].At-v.At), last.Time.Format("15:04"), n)
	}
	return do
}

// stackedVisit writes a visit, or those that are alike, as a record: when, and below it what is read
// then and what is to be done.
func (s *Sheet) stackedVisit(list []timetable.Visit, moist string) {
	v := list[0]
	when := []string{strings.TrimSpace(v.Time.Format("15:04") + " " + mark(v)), "after " + words.After(v.At)}
	if moist != "" {
		when = append(when, moist+" wet")
	}
	if !math.IsNaN(float64(v.Weight)) {
		when = append(when, words.OnScale(s.House, v.Weight, v.OnScale))
	}
	s.item("%s", strings.Join(when, ", "))
	for i, task := range v.Tasks {
		s.hang("    ", s.toDo(list, i, task))
	}
}

// there says that too few are there, "" where they are enough or not known: how many there
// are at each hour is known to whoever wrote the shifts.
func there(v timetable.Visit) string {
	switch {
	case v.Away:
		return " (nobody works on that day)"
	case v.Hands == nil || !v.Short:
		return ""
	}
	return " (" + words.Hands(*v.Hands, v.Short) + ")"
}

func mark(v timetable.Visit) string {
	switch {
	case v.Night == nil || v.Awake == nil:
		return ""
	case *v.Night && v.Away:
		return isAway
	case *v.Night:
		return atNight
	case !*v.Awake:
		return itWaits
	}
	return ""
}

// finish says when the malt is ready, and whether it has had its rest then; or that it is no malt.
func (s *Sheet) finish(r timetable.Result) {
	s.para("visits", "%d", len(r.Visits))
	asked := ""
	if r.Back {
		asked = ", as asked: begin on " + r.Start.Format(dayAndTime)
	}
	if r.NoMalt != nil {
		s.para("ends", "%s%s", r.Ready.Format(dayAndTime), asked)
		s.para("no malt", "%s", words.NoMalt(*r.NoMalt, r.Green))
		return
	}
	s.para("ready", "%s%s", r.Ready.Format(dayAndTime), asked)
	if r.Rested.IsZero() {
		s.para("rested", "the process asks for no rest in store")
		return
	}
	early := r.Start.Add(r.Ready.Sub(r.Rested))
	s.para("rested", "not before %s; to have rested malt on %s, begin on %s",
		r.Rested.Format(dayAndTime), r.Ready.Format(day), early.Format(dayAndTime))
}

// nightsAhead says how many visits of a batch under way fall in the night.
func (s *Sheet) nightsAhead(list []timetable.Visit) {
	n := 0
	for _, v := range list {
		if v.Night != nil && *v.Night {
			n++
		}
	}
	s.para("night", "%d of the %s to come, with nobody awake within an hour", n, words.Plural(len(list), "visit"))
}

// nights says how many visits fall in the night, and which hour to begin at is better.
func (s *Sheet) nights(r timetable.Result) {
	n := r.Night
	if r.Ahead && len(r.Visits) > 0 && r.Visits[0].Night != nil {
		s.nightsAhead(r.Visits)
		return
	}
	if n == nil {
		s.para("night", "not known: the site does not say when somebody is awake, such as awake 06:30 to 22:30")
		return
	}
	s.para("night", "%d, begun at %s; %s", n.Given.Visits, r.Start.Format("15:04"), better(n, r.NoMalt == nil))
	if n.Given.Visits > 0 {
		s.para("", "night: nobody is awake within an hour of this time")
	}
	for _, v := range r.Visits {
		if mark(v) == isAway {
			s.para("", "away: nobody works on that day, nor within an hour of this time")
			break
		}
	}
	for _, v := range r.Visits {
		if mark(v) == itWaits {
			s.para("", "~: nobody is awake, but an hour early or late does no harm, or the task may wait")
			return
		}
	}
}

func better(n *timetable.Nights, malt bool) string {
	ready := "ready"
	if !malt {
		ready = "at its end"
	}
	if n.Best.Visits == n.Given.Visits {
		return "no other half hour to begin at is better"
	}
	return fmt.Sprintf("at best %d, begun on %s and %s on %s; at worst %d, begun at %s",
		n.Best.Visits, n.Best.Start.Format(dayAndTime), ready, n.Best.Ready.Format(dayAndTime), n.Worst.Visits, n.Worst.Start.Format("15:04"))
}
