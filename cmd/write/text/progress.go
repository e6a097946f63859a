package text

import (
	"fmt"
	"io"
	"strings"
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
	n := s.r.Now
	t := spreads("now: " + s.where())
	if s.r.Over {
		t = spreads("it is over")
	}
	stands(t, "moisture", n.Moisture, words.Percent)
	stands(t, "weight on the scale", n.Weight, s.mass)
	if n.Gross != nil {
		stands(t, "  "+fitted(words.Holding(n.Gross.In), labelWidth-2), &n.Gross.Weight, s.mass)
	}
	stands(t, "the marked bag", n.Bag, func(kg answer.Kilograms) string { return words.Bag(s.House, kg) })
	stands(t, "dry matter lost so far", n.DryMatterLost, words.Percent)
	if s.r.Growing {
		stands(t, "kernels chitted", n.Chit, words.Percent)
		stands(t, "acrospire, as a part of the kernel", n.Acrospire, func(v answer.Number) string { return fmt.Sprintf("%.2f", v) })
		if n.Modification != nil && n.Modification.P50 > 0 {
			stands(t, "rub", n.Modification, words.Rub)
		}
	}
	stands(t, "in the middle of the bed", n.Bed, s.Shown)
	stands(t, "air-off", n.AirOff, s.Shown)
	stands(t, "the air in the oven", n.Oven, s.Shown)
	stands(t, "the malt itself", n.Malt, s.Shown)
	s.layOut(t)
}

// counted are the steps of which there may be several: soak 2, but plain cure.
var counted = map[string]bool{string(model.SoakStep): true, string(model.RestStep): true, string(model.DryStep): true}

// where is the stage, and its step where that says more.
func (s *progressSheet) where() string {
	stage, step := outlook.StageName{Stage: s.r.Stage, Number: s.r.StageNumber}.Called(), s.r.Step
	switch {
	case step == "" || step == s.r.Stage || step == string(model.HoldStep):
		return stage
	case counted[step]:
		return fmt.Sprintf("%s, %s %d", stage, step, s.r.StepNumber)
	}
	return stage + ", " + step
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
	doubtful, unjudged := 0, 0
	for _, r := range s.r.Readings {
		if r.Doubt != "" {
			doubtful++
		}
		if r.Unjudged {
			unjudged++
		}
	}
	switch n := len(s.r.Readings) - unjudged; {
	case n == 0 && unjudged > 0:
	case n == 0:
		s.para("readings", "none yet: weigh the drained grain after the next soak, and write the weight with note")
	case n == 1 && doubtful == 0:
		s.para("readings", "the only one agrees with the forecasts")
	case doubtful == 0:
		s.para("readings", "all %d agree with one another and with the forecasts", n)
	default:
		s.para("readings", "%d of %d agree with one another and with the forecasts", n-doubtful, n)
	}
	if unjudged > 0 {
		s.para("not judged", "%s of what is not forecast", words.Plural(unjudged, "reading"))
	}
	for _, r := range s.r.Readings {
		if r.Words == nil {
			continue
		}
		what := r.Text
		if !r.At.IsZero() && !strings.Contains(what, r.At.Format("2006-01-02")) {
			what = r.At.Format("Mon 2 Jan, ") + what
		}
		why := s.Say(r.Words)
		if r.Struck {
			why += ". It does not count"
		}
		s.para("doubt", "%s", words.Safe(what+": "+why))
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
