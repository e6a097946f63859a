package serve

import (
	"cmp"
	"context"
	"fmt"
	"net/http"
	"slices"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/sim/infer/follow"
)

type batchView struct {
	ID                      folder.ID
	Name, What, Process     string
	ProcessID               folder.ID
	Began                   string
	Said                    *saidView
	Alarms, Doubts          []mark
	Danger                  bool // of people, told by a remark
	Lates                   []string
	Next                    *dueView
	IsOver, Unknown         bool      // unknown is what is due, because the record does not read
	At                      time.Time // as of when its figures are; zero where that is told beside them
	Stage, NowHead, NowAsOf string
	Now, Longer, Further    table
	Missed                  table // what should have left a line in the record
	MissedSays              string
	Came                    table // what came of a batch that is over
	Visits, Later, Readings table
	VisitsBy                string // which forecast their times are of
	Notes                   []string
	Forms                   []form
	Charts                  []chartView
	Figures                 table
	Findings                []findingView
	LastLine, Once          string
	Sheet, Report           string
}

// mark is a word that stands out, and what it is of.
type mark struct{ Word, Text string }

// saidView is what was just written or taken back.
type saidView struct{ Head, Line, Says, Undo string }

// seen is all that a page of a batch is made of.
type seen struct {
	state  folder.State
	opened folder.Opened
	on     *folder.Batch // nil where it is over
	brief  folder.Brief
	told   folder.Batch // what its lines come to
	lines  []journal.Line
	ahead  folder.Ahead // what is to come, with the times of the timetable
	now    time.Time
}

// see looks at a batch. A batch that is in no list is gone.
func (s *server) see(ctx context.Context, id folder.ID) (v seen, err error) {
	v.now = s.Clock()
	if v.state, err = s.keep.Look(ctx, v.now); err != nil {
		return v, err
	}
	on := slices.IndexFunc(v.state.Underway, func(b folder.Batch) bool { return b.ID == id })
	over := slices.IndexFunc(v.state.Over, func(b folder.Brief) bool { return b.ID == id })
	switch {
	case on >= 0:
		v.on, v.told = &v.state.Underway[on], v.state.Underway[on]
	case over >= 0:
		if v.told, err = s.keep.Stands(ctx, id, v.now); err != nil {
			return v, err
		}
	default:
		return v, &folder.Gone{ID: id}
	}
	v.brief = v.told.Brief
	if v.opened, err = s.keep.Batch(id, v.now); err != nil && !isUnsound(err) {
		return v, err
	}
	if v.ahead, err = s.keep.Ahead(ctx, id, v.now); err != nil && !isUnsound(err) {
		return v, err
	}
	v.lines, err = s.keep.Lines(id)
	if isRefused(err) { // a record that does not read has no lines to show, and its findings say so
		err = nil
	}
	return v, err
}

// batch shows one batch.
func (s *server) batch(w http.ResponseWriter, r *http.Request) error {
	v, err := s.see(r.Context(), idOf(r))
	if err != nil {
		return err
	}
	p := s.batchPage(r, v)
	b := s.batchOf(r.Context(), v, p.Write)
	b.Said = s.saidOf(r.URL.Query(), v)
	if !b.At.IsZero() { // one time for all figures
		p.AsOf, p.Stamp = b.At.Format(asOfLayout), b.At.Format(time.RFC3339)
	}
	p.Body = b
	s.write(w, batchPage, http.StatusOK, p)
	return nil
}

func (s *server) batchPage(r *http.Request, v seen) *page {
	title := v.brief.Name + " of " + v.brief.Process
	if v.on != nil {
		if next := nextOf(*v.on); next != nil {
			title = fmt.Sprintf("%s: %s", v.brief.Name, words.Joined(", ", words.Clock(next.At, v.now), next.Says))
			if next.Late {
				title = "late: " + title
			}
		}
		if len(v.on.Dangers) > 0 {
			title = dangerMark + ": " + v.brief.Name
		}
	}
	p := s.page(r, title+" – maltwright")
	p.Version, p.Batch = v.state.Version, v.brief.ID
	p.under(v.state.Underway, v.brief.ID)
	return p
}

func (s *server) batchOf(ctx context.Context, v seen, write bool) batchView {
	out := batchView{ID: v.brief.ID, Name: v.brief.Name, Process: v.brief.Process, ProcessID: v.told.Of, Began: words.Clock(v.brief.Began, v.now), IsOver: v.on == nil, What: "a batch", Once: once(),
		Sheet: "/batch/" + string(v.brief.ID) + "/sheet.pdf", Report: "/batch/" + string(v.brief.ID) + "/report"}
	if p := v.opened.Process; p != nil {
		out.What = whatOf(outlook.HeadOf(p))
	}
	out.Findings = findingsOf(v.opened.Findings)
	out.told(v.told)
	if v.on != nil {
		out.underway(v)
	}
	charts := s.charts(ctx, v.state.Version, v.brief.ID, v.opened, v.now)
	out.Charts, out.Figures = chartsOf("/batch/"+string(v.brief.ID), charts), figuresOf(charts)
	out.followed(v)
	out.opening(ctx, v)
	out.readings(v)
	if out.IsOver {
		out.Sheet = ""
		out.came(s, ctx, v)
	}
	if n := len(v.lines); n > 0 && !v.lines[n-1].Opens {
		out.LastLine = v.lines[n-1].Words
	}
	if write && v.opened.Batch != nil {
		out.Forms = formsOf(offersOf(v), nil)
	}
	return out
}

// whatOf says of what malt a batch or a process is, and of how much grain.
func whatOf(h outlook.Head) string {
	said := h.Make + " malt"
	if h.Written != "" {
		said += " from " + h.Written
	}
	if h.Grain != "" {
		said += " of " + words.Safe(h.Grain)
	}
	return said
}

// told is what is said of a batch, be it under way or over.
func (b *batchView) told(x folder.Batch) {
	b.Danger = len(x.Dangers) > 0
	for _, d := range x.Dangers {
		b.Alarms = append(b.Alarms, mark{dangerMark, d})
	}
	if x.Unsound != "" {
		b.Alarms = append(b.Alarms, mark{"no forecast", x.Unsound})
	}
	for _, d := range x.Doubts {
		b.Doubts = append(b.Doubts, mark{"in doubt", d})
	}
}

// underway is what is said of a batch by its own forecast.
func (b *batchView) underway(v seen) {
	on := v.on
	b.Stage, b.Unknown = stageOf(on.Now), on.Unsound != ""
	if next := nextOf(*on); next != nil && !next.Late {
		b.Next = dueOf(*next, v.now)
	} else if len(on.Due) > 0 {
		b.Next = dueOf(on.Due[0], v.now)
	}
	for _, d := range on.Late {
		b.Lates = append(b.Lates, lateOf(d, v.now))
	}
	b.Now = table{Class: "spread", Head: []string{"figure", "by the forecast"}}
	for _, x := range [][2]string{{"moisture", on.Now.Moisture}, {"weight on the scale", cmp.Or(on.Now.Gross, on.Now.Weight)}, {"until", until(on.Now, v.now)}, {"all of it is done", doneOf(on.Now, v.now)}} {
		if x[1] != "" {
			b.Now.add(cellOf(x[0]), figure(x[1]))
		}
	}
	b.missed(on.Missed, v.now)
	if on.Short != "" {
		b.Notes = append(b.Notes, "At steep-out: "+on.Short+".")
	}
	n := min(mostVisits, len(on.Due))
	b.Visits, b.Later = visitsOf(on.Due[:n], v.now), visitsOf(on.Due[n:], v.now)
	b.VisitsBy = visitsBy(v)
	b.asOf(on.At, on.AsOf, len(on.Readings) > 0, v.now)
}

// lateOf says what should have been done, and since when.
func lateOf(d folder.Due, now time.Time) string {
	if d.Kind == string(follow.LateStep) { // its sentence says since when
		return d.Says
	}
	return fmt.Sprintf("%s, due %s, %s ago", d.Says, words.Clock(d.At, now), d.Left)
}

func until(n folder.Now, now time.Time) string {
	if n.Until.IsZero() {
		return ""
	}
	return words.Clock(n.Until, now)
}

func doneOf(n folder.Now, now time.Time) string {
	if n.Ready.IsZero() {
		return ""
	}
	return words.Joined(", in ", words.Clock(n.Ready, now), n.Left)
}

// visitsBy says by which forecast the visits are told, on the page and on its sheet.
func visitsBy(v seen) string {
	switch a := v.ahead; {
	case a.Forecast == nil:
		return ""
	case a.Followed:
		return fmt.Sprintf("By all readings, as of %s; the sheet has the same times.", words.Clock(a.At, v.now))
	case len(v.opened.Batch.Readings) > 0:
		return "By the one forecast that fits the readings best, until all of them are reckoned through; the sheet has the same times."
	}
	return "By the process and its start; the sheet has the same times."
}

// mostVisits is how many visits are shown at once.
const mostVisits = 6

// visitsOf is the timetable of what is due: under each day its visits.
func visitsOf(list []folder.Due, now time.Time) table {
	t := table{Class: "times", Head: []string{"At", "To do", "Scale"}}
	shown := ""
	for _, d := range list {
		if day := words.Day(d.At, now); day != shown {
			t.Rows, shown = append(t.Rows, row{Between: day}), day
		}
		do := cellOf(d.Says)
		if d.Night {
			do.Below = "nobody is awake then"
		}
		t.add(cellOf(d.At.In(now.Location()).Format("15:04")), do, figure(expected(d)))
	}
	return t
}
