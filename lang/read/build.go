package read

import (
	"fmt"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// builder makes a house out of trees. Definitions come before processes, since a
// process may stand above what it names.
type builder struct {
	house    *model.House
	main     *source.File
	found    []finding.Finding
	defining []func()  // definitions that are read once all limits are known
	pending  []*filled // processes of the file itself
	// processes of the files it uses, which only a batch of this file calls for
	elsewhere []*filled
	away      []*model.Process // the same, built
	records   []*filled        // batches of the file itself
	learning  []*filled        // blocks of what the house has learnt
	used      map[any]bool
	beds      map[*model.Vessel][]*filled // the facts of vessels that only a piece asks for
	grownIn   map[*model.Vessel]bool
	piped     []*drying               // kilns that are given the exhaust of another one
	scales    map[string]*model.Scale // by their names; see listScales
	holders   map[string][]*model.Holder
	anyHolder []*model.Holder // in the order in which they are defined
	weighedIn map[string]bool // names of vessels, floors and kilns that a record names
	recall    Recaller        // nil where nothing knows the past
	unread    map[any]bool    // processes, stages and steps of which some did not read: what they lack may only be unread
	siteNamed map[*model.Process]bool
	written   map[model.Stage]source.Place    // the whole of each stage
	beside    map[string]bool                 // the words of the statements of the block that is read
	home      *home                           // what the files say by themselves
	dropped   int                             // values that were reported and left out
	tried     int                             // texts that were tried for others that do not read
	trials    map[trialText][]finding.Finding // what is wrong with each of them
	sought    int                             // names for which the nearest was looked for
	misread   bool                            // some of the main file is no statement
	lost      bool                            // a used file is not there, and the names it defines are not known
}

func (b *builder) note(f finding.Finding) { b.found = append(b.found, f) }

// refuse reports a value that is left out. That it is then missing is no further
// finding.
func (b *builder) refuse(f finding.Finding) {
	b.note(f)
	b.dropped++
}

// file takes one file's statements. Processes wait until all files are in.
func (b *builder) file(t *syntax.Tree) {
	if b.used == nil {
		b.used = map[any]bool{}
	}
	whole := source.Place{File: t.File, Span: t.Top.Span}
	b.block(t.File, &t.Top, vocabulary.File, whole, whole, func(r *filled) {
		if do := fileStatements[r.Verb.Text]; do != nil {
			do(b, r)
		}
	})
}

// fileStatements takes what stands at the top of a file, by its word. What use names the
// loader has brought in.
var fileStatements = map[string]func(*builder, *filled){
	"limits": (*builder).houseLimits,
	"grain":  later((*builder).grain), "site": later((*builder).site), "vessel": later((*builder).vessel),
	"floor": later((*builder).floor), "kiln": later((*builder).kiln), "scale": later((*builder).scale),
	"house": func(b *builder, r *filled) { b.learning = append(b.learning, r) },
	"process": func(b *builder, r *filled) {
		if r.place.File == b.main {
			b.pending = append(b.pending, r)
		} else {
			b.elsewhere = append(b.elsewhere, r)
		}
	},
	"batch": func(b *builder, r *filled) {
		if r.place.File == b.main {
			b.records = append(b.records, r)
		}
	},
}

// later puts a definition off until all limits are known.
func later(define func(*builder, *filled)) func(*builder, *filled) {
	return func(b *builder, r *filled) {
		b.defining = append(b.defining, func() { define(b, r) })
	}
}

// finish builds the processes and looks for what nothing uses.
func (b *builder) finish() {
	for _, define := range b.defining {
		define()
	}
	b.pipes()
	for _, l := range b.learning {
		b.learnt(l)
	}
	for _, p := range b.pending {
		b.process(p)
	}
	b.usedProcesses()
	for _, t := range b.records {
		b.batch(t)
	}
	b.stock()
	b.sameNames()
	b.unused()
}

// block reads each statement of a block and hands it on. It tells whether all of
// them could be read. What every block may hold - acceptances - is taken here.
// Scope is the whole of the block; blame is what to underline when it lacks something.
func (b *builder) block(f *source.File, body *syntax.Block, in vocabulary.Block, scope, blame source.Place, each func(*filled)) (whole bool) {
	r := &statementReader{file: f, found: &b.found, in: in, tried: &b.tried, trials: b.trials, home: b.home, block: body}
	whole = true
	seen := map[string]source.Place{}
	outer := b.beside
	b.beside = verbsIn(body)
	defer func() { b.beside = outer }()
	for _, s := range body.Statements {
		read, ok := r.read(s)
		seen[s.Verb.Text] = b.onlyOnce(r, s, seen)
		if !ok {
			whole = false
		}
		if read == nil {
			continue
		}
		if do := everywhere[s.Verb.Text]; do != nil {
			do(b, read, scope)
			continue
		}
		before := b.dropped
		sensible := b.sensible(read)
		read.whole = ok && sensible
		each(read)
		whole = whole && b.dropped == before
	}
	b.needed(in, seen, blame, whole)
	return whole
}

// verbsIn are the words of the statements of a block, and each with the word behind it.
func verbsIn(body *syntax.Block) map[string]bool {
	words := map[string]bool{}
	for _, s := range body.Statements {
		words[s.Verb.Text] = true
		if len(s.Terms) > 0 {
			if w, ok := s.Terms[0].(syntax.Word); ok {
				words[s.Verb.Text+" "+w.Text] = true
			}
		}
	}
	return words
}

func (b *builder) onlyOnce(r *statementReader, s *syntax.Statement, seen map[string]source.Place) source.Place {
	place := r.at(s.Head())
	before, again := seen[s.Verb.Text]
	row, ok := vocabulary.Lookup(r.in, s.Verb.Text)
	if !again || !ok || !row.Once {
		return place
	}
	b.again(place, before, s.Verb.Text+" is given twice in this block")
	return before
}

// again reports a fact that was given before.
func (b *builder) again(place, before source.Place, message string) {
	f := saidTwice.At(place, message)
	f.Related = []finding.Related{{Place: before, Message: "given here before"}}
	b.note(f)
}

func (b *builder) needed(in vocabulary.Block, seen map[string]source.Place, scope source.Place, whole bool) {
	for _, word := range vocabulary.NeededIn(in) {
		if _, there := seen[word]; !there && whole {
			row, _ := vocabulary.Lookup(in, word)
			f := missingStatement.At(scope, fmt.Sprintf("%s needs %s", blockName(in), word))
			f.Hint = "add a line such as: " + row.Example
			b.note(f)
		}
	}
}

func (b *builder) accept(r *filled, scope source.Place) {
	a := model.Accept{Rule: r.slot(0).chosen(), Place: r.place, Scope: scope}
	if why := r.clause("because", 0); why != nil {
		a.Reason = why.word
	}
	if a.Rule.Text == "" {
		return
	}
	if strings.TrimSpace(a.Reason) == "" && r.has("because") {
		b.note(acceptWithoutReason.At(r.place, fmt.Sprintf("%s is accepted without a reason", a.Rule.Text)))
		return
	}
	if a.Reason != "" {
		b.house.Accepts = append(b.house.Accepts, a)
	}
}

// checked reports a quantity outside the interval and drops it.
func (b *builder) checked(q *model.Quantity, low, high float64, what, interval string) *model.Quantity {
	if q == nil || q.SI >= low && q.SI <= high {
		return q
	}
	b.refuse(outOfRange.At(q.Place, fmt.Sprintf("%s of %s is outside %s", what, q, interval)))
	return nil
}

// upright reports a range that is upside down and drops it.
func (b *builder) upright(v *given) *model.Range {
	if v == nil || (&statementReader{found: &b.found}).upright(v) {
		return v.ranged()
	}
	b.dropped++
	return nil
}

// moisture checks a moisture against what living grain can hold.
func (b *builder) moisture(q *model.Quantity, limits []model.Limit) *model.Quantity {
	if q == nil {
		return nil
	}
	if q.SI <= mostMoisture(limits) {
		return b.checked(q, 0, 1, "a moisture", "0 to 100 %")
	}
	b.refuse(tooMoist(q, livingGrain))
	return nil
}

// moistureOfLot checks the moisture of raw grain, or of what was grown or dried before.
func (b *builder) moistureOfLot(q *model.Quantity) *model.Quantity {
	if q == nil || q.SI <= mostMoisture(b.house.Limits) {
		return b.moisture(q, b.house.Limits)
	}
	sense := senseIn(vocabulary.Grain, vocabulary.MeasureMoisture).Beside(b.beside)
	b.refuse(tooMoist(q, sense.Can))
	return nil
}

// livingGrain is the moisture of what a process deals with.
var livingGrain = func() quantity.Range {
	r, _ := between("1", "60", "%")
	return r
}()

// grainHolds is the most moisture that is read, where the house says nothing.
const grainHolds = 0.6

func mostMoisture(limits []model.Limit) float64 {
	if l, ok := model.FindLimit(limits, vocabulary.LimitMoisture); ok {
		return l.Bound.Range.High.SI
	}
	return grainHolds
}

// tooMoist reports more moisture than grain holds: it may be of the dry matter, or its point
// is missing, where that lies in the band of what it is of.
func tooMoist(q *model.Quantity, band quantity.Range) finding.Finding {
	said := quantity.Range{Low: q.Quantity, High: q.Quantity}
	moved, ok := pointMoved(said, -1)
	ok = ok && q.SI > 1 && within(band, moved)
	if strings.Contains(q.String(), "dry basis") {
		f := moistureOver60.At(q.Place, fmt.Sprintf("a moisture of %s, %.1f %% of the whole weight, is more than grain can hold", q, 100*q.SI))
		f.Hint = "look at the number"
		return f
	}
	f := moistureOver60.At(q.Place, fmt.Sprintf("a moisture of %s of the whole weight is more than grain can hold", q))
	switch dry := q.SI / (1 + q.SI); {
	case ok && !band.Contains(dry):
		f.Hint = fmt.Sprintf("look at the decimal point: it may be %s", moved)
	case ok:
		f.Hint = fmt.Sprintf("look at the decimal point: it may be %s; or %s", moved, f.Hint)
	case !band.Contains(dry):
		f.Hint = "look at the number"
	}
	return f
}
