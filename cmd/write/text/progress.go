package text

import (
	"fmt"
	"io"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

// Progress writes how a batch stands: first what the answer rests on and what will come of it, and
// last what is asked for while it is under way, the state now, what is late and what is next. It fits
// 80 columns, and 40.
func Progress(w io.Writer, r progress.Result, h words.House, o Options) error {
	s := &progressSheet{Sheet{House: h, Options: o}, r}
	s.assumedLine(r.Assumed)
	s.cautionsLine(r.Cautions)
	s.posterior()
	s.factors()
	s.open()
	s.line("")
	s.outcome()
	if s.ends(s.r.NotForecast) {
		s.line("")
	}
	s.steps()
	first, later := s.waits()
	s.howLong("how much longer, further on", later)
	s.head()
	s.standing()
	s.readings()
	s.lates()
	s.howLong("how much longer", first)
	s.due()
	s.mistrust()
	s.assumed(r.Assumed)
	s.cautions(r.Cautions)
	_, err := io.WriteString(w, s.String())
	return err
}

type progressSheet struct {
	Sheet
	r progress.Result
}

const (
	byDay  = "Mon 2 Jan 15:04"
	byHour = "Mon 15:04"
)

func (s *progressSheet) head() {
	s.title(fmt.Sprintf("batch %s of %s", words.Safe(s.r.Batch), words.Safe(s.r.Process)))
	s.plain(fmt.Sprintf("as of %s, %s after %s", s.r.At.Format(dayAndTime), words.Lasting(s.r.Elapsed), words.Beginning(s.r.Green)))
	if why := words.AsOf[s.r.AsOf]; why != "" {
		s.para("", "that is %s", why)
	}
	switch n := s.r.Ignored; n {
	case 0:
	case 1:
		s.para("", "one reading is later, and does not count")
	default:
		s.para("", "%d readings are later, and do not count", n)
	}
	if !s.r.Complete {
		s.para("broken off", "the forecast breaks off before the end of the process, and shows nothing after that; maltwright forecast says where, and why")
	}
	s.line("")
}

// clock is the time so long after the first soak.
func (s *progressSheet) clock(t answer.Seconds) time.Time { return outlook.ClockAt(s.r.Began, t) }

// spreads is a table of a middle and the points below which one case in ten and nine in ten lie.
func spreads(what string) *table {
	return &table{columns: []tableColumn{{head: what, key: true, least: spreadLabel}, {head: "middle", right: true, key: true, least: spreadFigure}, {head: "1 in 10", right: true, key: true, least: spreadFigure}, {head: "9 in 10", right: true, key: true, least: spreadFigure}}}
}

// The widths of such a table, the same in each of one answer.
const spreadLabel, spreadFigure = 36, 9

// stands adds a row of a middle and its two points, if there are any.
func stands[T answer.Figure](t *table, name string, x *answer.Spread[T], write func(T) string) {
	if x != nil {
		t.add("  "+name, write(x.P50), write(x.P10), write(x.P90))
	}
}

func (s *progressSheet) mass(kg answer.Kilograms) string { return words.Weighed(s.House, kg) }

// standing writes the state now.
func (s *progressSheet) standing() {
	t := spreads("now: " + words.Where(s.r))
	if s.r.Over {
		t = spreads("it is over")
	}
	for _, x := range s.Standing(s.r) {
		if x.Under {
			x.What = "  " + fitted(x.What, labelWidth-2)
		}
		t.add("  "+x.What, x.Middle, x.Low, x.High)
	}
	s.layOut(t)
}

// lates writes what should have been done.
func (s *progressSheet) lates() {
	for _, l := range s.r.Late {
		since := fmt.Sprintf("%s, %s ago", l.Since.Format(byDay), words.Ago(l.Late))
		s.para("late", "%s", words.Late(follow.LateKind(l.Kind), since, words.Safe(l.Text)))
	}
	if len(s.r.Late) > 0 {
		s.line("")
	}
}

// open writes what to weigh or count next: of the moisture at cast as long as it is
// steeped, and of the whole time from then on.
func (s *progressSheet) open() {
	figure, list := "total time", s.r.Drivers.Total
	if s.r.Stage == string(model.SteepStage) {
		figure, list = "steep-out moisture", s.r.Drivers.SteepOutMoisture
	}
	if !s.r.Over && len(list) > 0 {
		s.drivers(figure, list)
	}
}

// readings writes which readings are in doubt.
func (s *progressSheet) readings() {
	unjudged := 0
	for _, r := range s.r.Readings {
		if r.Unjudged {
			unjudged++
		}
	}
	if said := words.Agree(s.r); said != "" {
		s.para("readings", "%s", said)
	}
	if unjudged > 0 {
		s.para("not judged", "%s of what is not forecast", words.Plural(unjudged, "reading"))
	}
	for _, r := range s.r.Readings {
		if said := s.Suspect(r); said != "" {
			s.para("doubt", "%s", said)
		}
	}
	for _, f := range s.r.Dangers {
		s.para("danger", "%s", words.Safe(f.Message+"; "+f.Hint))
	}
	for _, r := range s.r.Readings {
		if r.Hot != nil && s.r.Growing {
			s.para("hot bed", "%s", words.Safe(s.HotBed(*r.Hot)))
		}
	}
	s.line("")
}
