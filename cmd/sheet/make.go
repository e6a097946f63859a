package sheet

import (
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
)

// Options are what is asked for beside what is made. The zero value is a sheet without a clock, on
// the paper of the house.
type Options struct {
	Start time.Time // when the first soak begins; zero where that is not known yet
	Size  Size      // of the paper; zero for that of the house
	Begin string    // the line to type that begins the batch; "" where there is none to tell
	Note  string    // what to type in front of a reading; "" where the batch is not begun

	Follow *follow.Following // of a batch under way, what its readings tell; nil where it has none
	Past   bool              // of a batch under way: its last line is so old that the sheet is as of that
}

// Of is the sheet of a process by its forecast. The error is that of a process without steps, or of
// one that takes longer than a timetable goes.
func Of(f *forecast.Forecast, o Options) (Sheet, error) {
	var r timetable.Result
	if f.BrokenOff() {
		r = timetable.UntilBroken(f, o.Start)
	} else {
		var err error
		if r, err = timetable.Of(f, o.Start, false); err != nil {
			return Sheet{}, err
		}
	}
	m := maker{f: f, p: f.Process, h: words.Of(f.Process), o: o, clock: !o.Start.IsZero(), visits: r.Visits}
	m.name = short(words.Safe(f.Process.Name))
	return m.sheet(m.name), nil
}

// OfBatch is the sheet of a batch under way: by a forecast that goes by its record until a time, with
// the visits that are yet to come.
func OfBatch(b *model.Batch, f *forecast.Forecast, due []visits.Visit, until time.Time, o Options) (Sheet, error) {
	o.Start = b.Began.Time
	m := maker{f: f, p: f.Process, h: words.OfBatch(f.Process, b), o: o, clock: true, batch: b, until: until}
	if f.BrokenOff() {
		due = timetable.BeforeBreak(f, due)
		for _, v := range due {
			m.visits = append(m.visits, timetable.VisitOf(v, o.Start, outlook.BagOfBatch(b)))
		}
	} else {
		r, err := timetable.Ahead(f, due, o.Start)
		if err != nil {
			return Sheet{}, err
		}
		m.visits = r.Visits
	}
	m.name = short(words.Safe(b.Name))
	return m.sheet("Batch " + m.name), nil
}

// maker makes a sheet.
type maker struct {
	f      *forecast.Forecast
	p      *model.Process
	h      words.House
	o      Options
	name   string // at the head of each page
	clock  bool   // the times of the clock are known
	visits []timetable.Visit
	batch  *model.Batch // nil of a process
	until  time.Time    // of a batch: as of when
	begun  bool         // the line that begins the batch stands on page 1
}

// sheet puts together what stands on it.
func (m *maker) sheet(title string) Sheet {
	s := Sheet{Title: title, Batch: m.name, Code: words.Safe(m.o.Note), Size: m.size(), Misses: m.misses()}
	for _, p := range m.sections() {
		s.Pages = append(s.Pages, paged(p, s.Size)...)
	}
	return s
}

// size is that of the paper: letter where the house writes lb or °F.
func (m *maker) size() Size {
	switch {
	case m.o.Size.Wide > 0:
		return m.o.Size
	case m.h.British || m.h.Fahrenheit:
		return Letter
	}
	return A4
}

// sections are the parts that begin a page of their own.
func (m *maker) sections() []section {
	var list []section
	for i := range m.f.Stages {
		s, some := m.stage(i)
		switch {
		case !some:
		case m.f.Stages[i].Kind == model.StoreStage && len(list) > 0: // malt whose rootlets stay on, or that has none
			list[len(list)-1].visits = append(list[len(list)-1].visits, s.visits...)
		default:
			list = append(list, s)
		}
	}
	if len(list) == 0 {
		list = append(list, section{of: "the batch"})
	}
	list[0].visits = append(m.late(), list[0].visits...)
	list[0] = m.opened(list[0])
	if m.f.BrokenOff() {
		list[len(list)-1].last = append(list[len(list)-1].last, m.brokenOff())
	}
	if so := m.soFar(); so != nil {
		list = append(list, *so)
	}
	return placed(append(list, m.dangers()), unmetBlock(m.unmetRows()), m.size())
}

// brokenOff says that the forecast goes no further.
func (m *maker) brokenOff() Block {
	text := "The forecast ends here"
	if b := outlook.Of(m.f, time.Time{}).BrokenOff; b != nil {
		text = capital(m.h.Say(b.Why))
	}
	return Words{Text: short(text) + ". What comes behind it is not known: write it into the spare rows."}
}

// stage is the section of a stage of the forecast; false where it has nothing to come. Taking the
// rootlets off and storing are one.
func (m *maker) stage(i int) (section, bool) {
	st := m.f.Stages[i]
	if st.Kind == model.StoreStage && i > 0 && m.f.Stages[i-1].Kind == model.DeculmStage {
		return section{}, false
	}
	of := []int{i}
	name := m.called(i)
	if m.stores(i) {
		of = append(of, i+1)
	}
	s := section{of: name}
	last := 0.0
	for _, v := range m.parts() {
		if !slices.Contains(of, v.stage) {
			continue
		}
		s.visits = append(append(s.visits, m.between(i, last, float64(v.At))...), m.visit(v))
		last = float64(v.At)
	}
	if len(s.visits) == 0 {
		return s, false
	}
	if h := model.HolderOf(st.Of); h != nil && h.Name != "" {
		name += " " + at[st.Kind] + ` "` + short(words.Safe(h.Name)) + `"`
	}
	s.first = append(s.first, Heading{Text: name})
	if piece := model.PieceOf(st.Of); !m.clock && piece != nil && piece.TurnAt != nil {
		s.first = append(s.first, Words{Small: true, Text: "Turn by the clock: at " + short(words.Safe(words.OneLine(piece.TurnAt.Place().Text()))) + ". The times below are of as many turns at even times."})
	}
	s.first = append(s.first, rules(st)...)
	s.looks = m.looks(st, m.lookedAt(i))
	if st.Kind == model.GerminateStage {
		s.more = tally(m.naked())
	}
	switch last := model.Last[*model.Deculming](m.p) == nil && i == m.lastKiln(); {
	case st.Kind == model.DeculmStage || last:
		s.few = st.Kind == model.DeculmStage // little is left to be done otherwise
		s.looks = append(s.looks, sampleSum("the finished malt"))
	case st.Kind == model.KilnStage:
		s.may = append(s.may, sampleSum("malt from the kiln"))
	}
	return s, true
}

// at is what stands in front of what a stage lies in.
var at = map[model.StageKind]string{model.SteepStage: "in", model.GerminateStage: "on", model.WitherStage: "on", model.KilnStage: "in"}

// lastKiln is the last stage on a kiln, -1 where there is none.
func (m *maker) lastKiln() int {
	for i, st := range slices.Backward(m.f.Stages) {
		if st.Kind == model.KilnStage {
			return i
		}
	}
	return -1
}

// called is what the page of a stage is called.
func (m *maker) called(i int) string {
	if m.stores(i) {
		return outlook.NameOf(m.p, m.f.Stages[i].Of).Called() + " and store"
	}
	return outlook.NameOf(m.p, m.f.Stages[i].Of).Called()
}

// stores tells whether what is rubbed in a stage is put away in the next one, on the same page.
func (m *maker) stores(i int) bool {
	return m.f.Stages[i].Kind == model.DeculmStage && i+1 < len(m.f.Stages) && m.f.Stages[i+1].Kind == model.StoreStage
}

// stageOf is the stage of the forecast that a part of a visit is of: of several at once that which ends
// then, or begins where the part begins one.
func (m *maker) stageOf(v timetable.Visit) int {
	kind := v.Tasks[0].Stage
	if begins[v.Tasks[0].Kind] {
		for i, st := range m.f.Stages {
			if st.Kind == kind && len(st.Steps) > 0 && math.Abs(st.Steps[0].Start-float64(v.At)) <= 60 {
				return i
			}
		}
	}
	for _, slack := range []float64{60, 1e12} {
		for i, st := range m.f.Stages {
			if st.Kind != kind || len(st.Steps) == 0 {
				continue
			}
			from, to := st.Steps[0].Start, st.Steps[len(st.Steps)-1].End
			if float64(v.At) >= from-slack && float64(v.At) <= to+slack {
				return i
			}
		}
	}
	return 0
}

// short cuts what no line of a form has room for.
func short(text string) string {
	const most = 240
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + " …"
	}
	return text
}
