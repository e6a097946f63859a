package serve

import (
	"fmt"
	"net/http"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

type listView struct {
	Alarms    []lateView // dangers that remarks tell of; they go before all else
	Unknown   []lateView // batches of which nothing is known, because their records do not read
	Lates     []lateView
	Next      *dueView // of what is not late
	Under     table
	Processes []processRow
	Over      table
	Broken    []brokenFile
}

// dueView is a visit in words.
type dueView struct {
	ID              folder.ID
	Batch           string
	When, Do, Scale string
	In              string // how long until then, or since then
	Stamp           string
	Late            bool
}

// lateView is something that should have been done.
type lateView struct {
	ID          folder.ID
	Batch, Says string
}

type processRow struct {
	ID                folder.ID
	Name, Malt, Found string
}

type brokenFile struct {
	File     string
	Findings []findingView
}

// list shows what is under way, what is due, the processes, and what is over.
func (s *server) list(w http.ResponseWriter, r *http.Request) error {
	now := s.Clock()
	st, err := s.keep.Look(r.Context(), now)
	if err != nil {
		return err
	}
	p := s.page(r, titleOf(st, now))
	p.Home, p.Version = true, st.Version
	p.under(st.Underway, "")
	p.Body = listOf(st, now)
	s.write(w, listPage, http.StatusOK, p)
	return nil
}

// dangerMark stands before what a remark tells of that can hurt somebody.
const dangerMark = "danger"

// titleOf says what is next in the title of the window, where there is room for a line.
func titleOf(st folder.State, now time.Time) string {
	for _, b := range st.Underway {
		if len(b.Dangers) > 0 {
			return fmt.Sprintf("danger: %s – maltwright", b.Name)
		}
	}
	if len(st.Due) == 0 {
		return "Batches – maltwright"
	}
	d := st.Due[0]
	late := ""
	if d.Late {
		late = "late: "
	}
	return fmt.Sprintf("%s%s, %s – maltwright", late, words.Clock(d.At, now), d.Name)
}

func listOf(st folder.State, now time.Time) listView {
	v := listView{Under: table{Class: "times board", Head: []string{"Next", "Batch", "Stands in", "To do", "Scale"}}}
	for _, d := range st.Due {
		if d.Late {
			v.Lates = append(v.Lates, lateView{d.Batch, d.Name, lateOf(d, now)})
		} else if v.Next == nil {
			v.Next = dueOf(d, now)
		}
	}
	for _, b := range st.Underway {
		for _, d := range b.Dangers {
			v.Alarms = append(v.Alarms, lateView{b.ID, b.Name, d})
		}
		if b.Unsound != "" {
			v.Unknown = append(v.Unknown, lateView{b.ID, b.Name, b.Unsound})
		}
		v.Under.Rows = append(v.Under.Rows, underRow(b, now))
	}
	for _, p := range st.Processes {
		v.Processes = append(v.Processes, processRow{p.ID, p.Name, p.Charge, foundIn(p)})
	}
	v.Over = table{Class: "brief", Head: []string{"Batch", "Process", "Begun", "Last line"}}
	for _, b := range st.Over {
		v.Over.add(cell{Text: b.Name, Href: "/batch/" + string(b.ID)}, cellOf(b.Process), figure(dayOf(b.Began)), figure(dayOf(b.Last)))
	}
	for _, u := range st.Unread {
		v.Broken = append(v.Broken, brokenFile{u.File, []findingView{{Message: u.Says, Severity: finding.Fault.String()}}})
	}
	return v
}

func dayOf(t time.Time) string {
	if t.IsZero() {
		return words.None
	}
	return t.Format("Mon 2 Jan 2006")
}

// dueOf puts a visit into words.
func dueOf(d folder.Due, now time.Time) *dueView {
	in := "in " + d.Left
	switch {
	case d.Late && d.Left != "":
		in = "late by " + d.Left
	case d.Left == "":
		in = "now"
	}
	return &dueView{d.Batch, d.Name, words.Clock(d.At, now), d.Says, expected(d), in, d.At.Format(time.RFC3339), d.Late}
}

// expected is what the scale should show at a visit, "" where nothing is known of it.
func expected(d folder.Due) string {
	if d.Expected == words.None {
		return ""
	}
	return d.Expected
}

// underRow is a batch under way: its next visit first.
func underRow(b folder.Batch, now time.Time) row {
	next := nextOf(b)
	name := cell{Text: b.Name, Below: b.Process, Href: "/batch/" + string(b.ID)}
	stage := cellOf(stageOf(b.Now))
	if len(b.Dangers) > 0 {
		name.Mark = dangerMark
	}
	if b.Unsound != "" {
		return row{Cells: []cell{cellOf(words.None), name, {Text: b.Unsound, Mark: "not read"}, cellOf(""), cellOf("")}}
	}
	if next == nil {
		return row{Cells: []cell{cellOf(words.None), name, stage, cellOf("nothing is due"), cellOf("")}}
	}
	d := dueOf(*next, now)
	do := cellOf(d.Do)
	if d.Late {
		do.Mark = "late"
	}
	return row{Late: d.Late, Cells: []cell{{Text: d.When, Below: d.In}, name, stage, do, figure(d.Scale)}}
}

// nextOf is what is late of a batch or, where nothing is, what is next.
func nextOf(b folder.Batch) *folder.Due {
	for _, list := range [][]folder.Due{b.Late, b.Due} {
		if len(list) > 0 {
			return &list[0]
		}
	}
	return nil
}

func stageOf(n folder.Now) string {
	if n.Step == "" || n.Step == n.Stage || n.Step == vocabulary.VerbHold {
		return n.Stage
	}
	return words.Joined(", ", n.Stage, n.Step)
}

func foundIn(p folder.Process) string {
	switch {
	case p.Faults > 0:
		return words.Many(p.Faults, "fault to put right", "faults to put right")
	case p.Cautions > 0:
		return words.Many(p.Cautions, "caution", "cautions")
	}
	return ""
}

// findingView is a finding as a page shows it.
type findingView struct{ Severity, Place, Words, Message, Hint, Why string }

// findingsOf puts findings into views; why a rule is there stands with the first of it.
func findingsOf(list []finding.Finding) (out []findingView) {
	told := map[string]bool{}
	for _, f := range list {
		v := findingView{Severity: f.Severity.String(), Message: words.Safe(f.Message), Hint: words.Safe(f.Hint)}
		if f.Place.Known() {
			at := f.Place.File.Position(f.Place.Start, source.Characters)
			v.Place = fmt.Sprintf("%s, line %d", words.Safe(f.Place.File.Name()), at.Line)
			v.Words = words.Safe(words.OneLine(f.Place.Text()))
		}
		if !told[f.Rule] {
			v.Why, told[f.Rule] = words.Safe(f.Why), true
		}
		out = append(out, v)
	}
	return out
}
