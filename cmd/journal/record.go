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

// Entry is a record with lines more in it, or with a line put right.
type Entry struct {
	Text  []byte // of the whole file
	Line  source.Span
	Lines []source.Span // all that are new, where they are several; Line is the last of them
	Batch string        // its name
	Late  bool          // it stands in front of later lines
	Was   string        // the line in whose place it stands, "" where it is one more
	house *model.House
	found []finding.Finding
}

// Words are those of the new line, as they stand in the file.
func (e Entry) Words() string { return e.words(e.Line) }

func (e Entry) words(at source.Span) string { return string(e.Text[at.Start:at.End]) }

// All lists the words of all new lines, in the order in which they came.
func (e Entry) All() (list []string) {
	for _, at := range e.spans() {
		list = append(list, e.words(at))
	}
	return list
}

func (e Entry) spans() []source.Span {
	if len(e.Lines) == 0 {
		return []source.Span{e.Line}
	}
	return e.Lines
}

// Last tells whether a place begins in the last new line.
func (e Entry) Last(p source.Place) bool {
	return p.File == e.house.Files[0] && e.Line.Start <= p.Start && p.Start <= e.Line.End
}

// Accepts tells whether something in the file accepts what a rule tells of the batch.
func (e Entry) Accepts(rule string) bool {
	return slices.ContainsFunc(e.house.Accepts, func(a model.Accept) bool {
		return a.Rule.Text == rule && (!a.Scope.Known() || a.Scope.File == e.house.Files[0] && a.Scope.Start <= e.Line.Start && e.Line.Start <= a.Scope.End)
	})
}

// Model is the batch with the line in it, and what was noted; nil where the line is none that
// has a time or a step.
func (e Entry) Model() (*model.Batch, model.Dated) {
	for _, b := range e.house.Batches {
		if b.Name != e.Batch {
			continue
		}
		for _, x := range b.Lines() {
			if e.Last(x.Place()) {
				return b, x
			}
		}
		return b, nil
	}
	return nil, nil
}

// News are the lines of the batch that are new and have a time or a step.
func (e Entry) News(b *model.Batch) (list []model.Dated) {
	for _, x := range b.Lines() {
		if e.holds(x.Place()) {
			list = append(list, x)
		}
	}
	return list
}

// clockSlack is how far ahead of this computer's clock a reading may lie: its clock or
// its zone may be off.
const clockSlack = 24 * time.Hour

// With gives the record with the reading in it, which is of now where it says no time. One that
// was taken before lines that stand in the record goes in front of them. The error is a
// Misuse or a Refusal.
func (r Record) With(x Reading, now time.Time) (Entry, error) {
	e, _, err := r.with(x, now)
	return e, err
}

// with gives the offset, too, at which the text was parted.
func (r Record) with(x Reading, now time.Time) (e Entry, parted int, err error) {
	line, err := x.line(now, nil)
	if err != nil {
		return e, 0, err
	}
	tree, home, err := r.open(&e)
	if err != nil {
		return e, 0, err
	}
	if line, err = r.placed(line, home, now); err != nil {
		return e, 0, err
	}
	return r.put(e, tree, home, line.Statement, now)
}

// open reads the file, and finds the batch that is meant.
func (r Record) open(e *Entry) (tree *syntax.Tree, home *syntax.Statement, err error) {
	tree, found := syntax.Parse(source.New(r.Name, r.Text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return nil, nil, Refusal(fmt.Sprintf("not noted: %s does not read; see maltwright check %[1]s", r.Name))
	}
	home, e.Batch, err = r.home(tree)
	return tree, home, err
}

// put puts a line in its place: behind the last, or in front of what is later. It gives the
// offset, too, at which the text was parted.
func (r Record) put(e Entry, tree *syntax.Tree, home, line *syntax.Statement, now time.Time) (Entry, int, error) {
	list := home.Body.Statements
	before := timesIn(list)
	k := len(list)
	if m, timed := stampOf(line); timed {
		if at, ok := m.meant(lastOf(before), now); ok && m.From.Date.Text != "" {
			k = placeOf(before, at)
		}
	}
	if e.Late = k < len(list); e.Late && sameLine(tree, list[k-1], list[k]) {
		return e, 0, Refusal(fmt.Sprintf("not noted: it goes between two statements of one line, %d; lay the record out first: maltwright tidy %s", lineOf(tree, list[k]), r.Name))
	}
	var last *syntax.Statement
	if k > 0 {
		last = list[k-1]
	}
	var parted int
	e.Text, e.Line, parted = layout.Behind(tree, home, last, line, vocabulary.Batch)
	if e.Late {
		after, err := r.again(e.Text)
		if err != nil || !sameTimes(before, after, -1, k) {
			return e, 0, Refusal("not noted: in its place it would move the times of the lines below it, which go by the line above; write their dates first")
		}
	}
	return e, parted, r.judgeWords(&e, now)
}

// placeOf is in front of which line something of a time goes: of the first that is later. What
// lies before the beginning is left to be told.
func placeOf(times []time.Time, at time.Time) int {
	for i, t := range times {
		if !t.IsZero() && t.After(at) {
			if i == 0 || lastOf(times[:i]).IsZero() {
				return len(times)
			}
			return i
		}
	}
	return len(times)
}

func sameLine(t *syntax.Tree, a, b *syntax.Statement) bool {
	return t.File.Position(a.End, source.Bytes).Line == lineOf(t, b)
}

func lineOf(t *syntax.Tree, s *syntax.Statement) int {
	return t.File.Position(s.Start, source.Bytes).Line
}

// again gives the times of the lines of the batch in another text.
func (r Record) again(text []byte) ([]time.Time, error) {
	r.Text = text
	_, home, err := r.open(&Entry{})
	if err != nil {
		return nil, err
	}
	return timesIn(home.Body.Statements), nil
}

// judgeWords reads the text with the line in it, and refuses what does not read.
func (r Record) judgeWords(e *Entry, now time.Time) error {
	e.house, e.found = read.Load(r.Name, e.Text, r.Dir, r.Reader)
	for _, f := range e.found {
		if f.Severity >= finding.Fault && e.holds(f.Place) {
			return refused(f)
		}
	}
	if f, spoilt := r.spoils(*e); spoilt {
		at := f.Place.File.Position(f.Place.Start, source.Bytes)
		f.Message = fmt.Sprintf("with it line %d of %s can no longer stand: %s", at.Line, f.Place.File.Name(), f.Message)
		return refused(f)
	}
	for _, b := range e.house.Batches {
		for _, x := range b.Lines() {
			if e.holds(x.Place()) && x.When().Sub(now) > clockSlack {
				return Refusal(fmt.Sprintf("not noted: %s lies ahead of this computer's clock, and no line could follow it until then; look at the date", x.When().Format(stampLayout)))
			}
		}
	}
	return nil
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
	return p.File == e.house.Files[0] && slices.ContainsFunc(e.spans(), func(at source.Span) bool { return at.Start <= p.Start && p.Start <= at.End })
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
	return nil, "", misuse("%s holds no batch; begin one: maltwright begin, with the file of its process", r.Name)
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
			case f.Severity == finding.Fault && f.Rule != "change-doubtful": // a danger is no slip, and what was done was done: it is written, and told
				f.Hint += fmt.Sprintf("; if it is so all the same, first note: accept %s because, and why", f.Rule)
				return nil, refused(f)
			default:
				doubts = append(doubts, f)
			}
		}
	}
	return doubts, nil
}
