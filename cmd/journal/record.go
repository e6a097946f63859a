package journal

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
	"maltwright/sim/work"
)

// Record is a file with the record of a batch, as it stands.
type Record struct {
	Name   string // as it is shown
	Text   []byte
	Reader read.Reader // of the files that it uses
	Dir    string      // its folder below what Reader reads
	Batch  string      // which batch, where the file holds several
}

// Entry is a record with a line more in it.
type Entry struct {
	Text  []byte // of the whole file
	Line  source.Span
	Batch string // its name
	house *model.House
	found []finding.Finding
}

// Words are those of the new line, as they stand in the file.
func (e Entry) Words() string { return string(e.Text[e.Line.Start:e.Line.End]) }

// clockSlack is how far ahead of this computer's clock a reading may lie: its clock or
// its zone may be off.
const clockSlack = 24 * time.Hour

// With gives the record with the reading in it, which is of now where it says no time.
// The error is a Misuse or a Refusal.
func (r Record) With(x Reading, now time.Time) (e Entry, err error) {
	line, err := x.line(now)
	if err != nil {
		return e, err
	}
	tree, found := syntax.Parse(source.New(r.Name, r.Text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return e, Refusal(fmt.Sprintf("not noted: %s does not read; see maltwright check %[1]s", r.Name))
	}
	home, name, err := r.home(tree)
	if err != nil {
		return e, err
	}
	e.Batch = name
	e.Text, e.Line = layout.Append(tree, home, line, vocabulary.Batch)
	e.house, e.found = read.Load(r.Name, e.Text, r.Dir, r.Reader)
	for _, f := range e.found {
		if f.Severity >= finding.Fault && e.holds(f.Place) {
			return e, refused(f)
		}
	}
	if f, spoilt := r.spoils(e); spoilt {
		at := f.Place.File.Position(f.Place.Start, source.Bytes)
		f.Message = fmt.Sprintf("with it line %d of %s can no longer stand: %s", at.Line, f.Place.File.Name(), f.Message)
		return e, refused(f)
	}
	for _, b := range e.house.Batches {
		for _, x := range b.Lines() {
			if e.holds(x.Place()) && x.When().Sub(now) > clockSlack {
				return e, Refusal(fmt.Sprintf("not noted: %s lies ahead of this computer's clock, and no line could follow it until then; look at the date", x.When().Format("2006-01-02 15:04")))
			}
		}
	}
	return e, nil
}

// spoils gives a fault that the new line makes of what was sound without it.
func (r Record) spoils(e Entry) (f finding.Finding, spoilt bool) {
	isFault := func(f finding.Finding) bool { return f.Severity >= finding.Fault && f.Place.Known() }
	if !slices.ContainsFunc(e.found, isFault) {
		return f, false
	}
	of := func(f finding.Finding) string { return f.Rule + "\x00" + f.Place.File.Name() + "\x00" + f.Place.Text() }
	_, before := read.Load(r.Name, r.Text, r.Dir, r.Reader)
	were := map[string]int{}
	for _, f := range before {
		if isFault(f) {
			were[of(f)]++
		}
	}
	for _, f := range e.found {
		if !isFault(f) {
			continue
		}
		if were[of(f)]--; were[of(f)] < 0 {
			return f, true
		}
	}
	return f, false
}

// holds tells whether a place begins in the new line.
func (e Entry) holds(p source.Place) bool {
	return p.File == e.house.Files[0] && e.Line.Start <= p.Start && p.Start <= e.Line.End
}

// home finds the batch that is meant.
func (r Record) home(t *syntax.Tree) (*syntax.Statement, string, error) {
	var names []string
	var home *syntax.Statement
	var last string
	for _, s := range t.Top.Statements {
		if vocabulary.Opens(vocabulary.File, s.Verb.Text) != vocabulary.Batch || s.Body == nil || len(s.Terms) == 0 {
			continue
		}
		name, ok := s.Terms[0].(syntax.Text)
		if !ok || r.Batch != "" && name.Value != r.Batch {
			continue
		}
		names, home, last = append(names, strconv.Quote(name.Value)), s, name.Value
	}
	switch {
	case len(names) == 1:
		return home, last, nil
	case len(names) > 1:
		return nil, "", misuse("%s holds %d batches; say which with --batch: %s", r.Name, len(names), strings.Join(names, ", "))
	case r.Batch != "":
		return nil, "", misuse("%s holds no batch called %q", r.Name, r.Batch)
	}
	return nil, "", misuse("%s holds no batch; begin one with: batch \"its name\" of \"the process\" { began 2026-03-06 07:00 }", r.Name)
}

// Judge holds the new line beside the process and the rest of the record. What cannot be
// is a Refusal; what is doubtful is listed.
func (e Entry) Judge(ctx context.Context) (doubts []finding.Finding, err error) {
	for _, f := range e.found {
		if f.Severity == finding.Caution && e.holds(f.Place) {
			doubts = append(doubts, f)
		}
	}
	for _, b := range e.house.Batches {
		whole := b.Scope.File == e.house.Files[0] && b.Scope.Start <= e.Line.Start && e.Line.End <= b.Scope.End
		if b.Name != e.Batch || !whole {
			continue
		}
		for _, f := range check.Record(ctx, e.house, b, e.found, work.NewPool(work.Records)) {
			switch {
			case f.Severity <= finding.Note || !e.holds(f.Place):
			case f.Severity >= finding.Fault:
				f.Hint += fmt.Sprintf("; if it is so all the same, first note: accept %s because, and why", f.Rule)
				return nil, refused(f)
			default:
				doubts = append(doubts, f)
			}
		}
	}
	return doubts, nil
}
