// Package margin says what a forecast has to say at the places of a file: when each step is over, when and how often
// each gate holds, what each reading comes to, what a process or a batch comes to in all, and what may be done
// about a finding or a number.
//
// # How it works
//
// Nothing is reckoned and nothing is formatted here. The forecasts are those by which package check judged the file
// (check.Report), how sure they are is told by one ensemble of each process (Likely), and a record is held beside its
// forecasts as note does it (Record). The sentences are those of package words. Here each of them is put beside the
// statement that it is about, as an offset into the text that was forecast.
//
// While the text is typed at, it mostly does not read. What was told of the last one that did is then kept of
// those stages before the change whose words are the same (keep.go).
package margin

import (
	"cmp"
	"slices"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/forecast"
)

// Kind is what a hint is about. Each kind can be left out by itself.
type Kind string

// The kinds of hint.
const (
	Ends     Kind = "ends"     // when a step is over
	Gates    Kind = "gates"    // when a gate holds, and how often
	Readings Kind = "readings" // what a reading comes to
)

// Hint is what stands beside a statement.
type Hint struct {
	Kind Kind
	At   int         // the offset behind which it stands
	Of   source.Span // the head of the statement that it is about
	Text string      // some thirty characters at the most
	More string      // the whole of it, a line for each time that the step is done
}

// Lens is what stands above a process or a batch.
type Lens struct {
	Of    source.Span // the words that name it
	Name  string
	Batch bool
	Drawn bool // a forecast of it can be drawn
	Text  string
	says  string // the text without the findings
}

// Beside is what a forecast has at a step, for who points at it.
type Beside struct {
	Of    source.Span // the head of the statement
	Lines []string
}

// Margin is what stands beside the lines of one file. All offsets are into its text.
type Margin struct {
	File   *source.File
	Hints  []Hint // by their places
	Lenses []Lens
	Steps  []Beside

	tree *syntax.Tree
	told []source.Span // the names of the processes and batches that were forecast
}

// Options say what is asked for. The zero value is all of what a forecast says, without times of the clock.
type Options struct {
	Start time.Time // of the first soak; the zero time where it is not known
}

// Of is what the forecasts of a report have to say beside the lines of its main file. Likely has for each process how
// sure its forecast is; it may be nil or hold nil.
func Of(tree *syntax.Tree, r check.Report, likely []*Likely, o Options) Margin {
	m := Margin{File: tree.File, tree: tree}
	w := writer{m: &m, places: placesOf(tree), o: o}
	for i, p := range r.House.Processes {
		if p.Scope.File == nil || p.Scope.File.Name() != tree.File.Name() {
			continue
		}
		w.process(p, r, i, nth(likely, i))
	}
	m.sort()
	return m
}

func nth[T any](list []*T, i int) *T {
	if i < len(list) {
		return list[i]
	}
	return nil
}

func (m *Margin) sort() {
	slices.SortStableFunc(m.Hints, func(a, b Hint) int { return cmp.Compare(a.At, b.At) })
	slices.SortStableFunc(m.Lenses, func(a, b Lens) int { return cmp.Compare(a.Of.Start, b.Of.Start) })
}

// Join adds what stands in another margin of the same text.
func (m *Margin) Join(o Margin) {
	m.Hints, m.Lenses, m.Steps = slices.Concat(m.Hints, o.Hints), slices.Concat(m.Lenses, o.Lenses), slices.Concat(m.Steps, o.Steps)
	m.told = slices.Concat(m.told, o.told)
	m.sort()
}

// writer writes the margin of a file.
type writer struct {
	m      *Margin
	places places
	o      Options
}

// process writes what is said of one process, the nth of its house.
func (w *writer) process(p *model.Process, r check.Report, i int, likely *Likely) {
	found := bearing(r.House, r.Findings, p, nil)
	lens := Lens{Of: p.Place.Span, Name: p.Name}
	f := nth(r.Forecasts, i)
	if f == nil {
		lens.say(found, false, w.unforecast(r, p))
		w.m.Lenses = append(w.m.Lenses, lens)
		return
	}
	w.m.told = append(w.m.told, p.Place.Span)
	h, told := words.Of(p), outlook.Of(f, w.o.Start)
	lens.Drawn = true
	lens.say(found, true, words.Joined("; ", unsure(f, told, likely), h.MarginTotal(told)))
	w.m.Lenses = append(w.m.Lenses, lens)
	w.ends(h, f, told, likely)
	w.gates(h, f, told, likely)
}

// run is a step as it runs, in two tellings.
type run struct {
	of   forecast.Step
	told outlook.Step
}

// runs are the steps of a forecast by the words that ask for them, in the order in which those first run.
func runs(f *forecast.Forecast, told outlook.Result) (list [][]run) {
	at := map[source.Place]int{}
	for i, st := range f.Stages {
		for j, s := range st.Steps {
			if i >= len(told.Stages) || j >= len(told.Stages[i].Steps) || !s.Place.Known() {
				continue // what is behind wet malt is not told
			}
			k, ok := at[s.Place]
			if !ok {
				k, list = len(list), append(list, nil)
				at[s.Place] = k
			}
			list[k] = append(list[k], run{s, told.Stages[i].Steps[j]})
		}
	}
	return list
}

// ends writes when each step is over.
func (w *writer) ends(h words.House, f *forecast.Forecast, told outlook.Result, likely *Likely) {
	for _, list := range runs(f, told) {
		at, ok := w.places.of(list[0].of.Place)
		if !ok {
			continue
		}
		var lines []string
		for _, r := range list {
			if r.of.Label == forecast.Waiting {
				continue // the gate says when it holds
			}
			lines = append(lines, h.Ended(r.told, told.Green))
			if within := h.EndedWithin(likely.step(f.Process, r.of)); within != "" {
				lines = append(lines, within)
			}
		}
		if len(lines) == 0 {
			continue
		}
		w.m.Steps = append(w.m.Steps, Beside{at.head, lines})
		last := list[len(list)-1]
		w.m.Hints = append(w.m.Hints, Hint{Ends, at.behind, at.head, h.MarginEnd(last.told, len(list)), joined(lines)})
	}
}

// gates writes when each condition holds.
func (w *writer) gates(h words.House, f *forecast.Forecast, told outlook.Result, likely *Likely) {
	ends := map[source.Span]bool{} // statements that say when their step is over
	for _, x := range w.m.Hints {
		ends[x.Of] = ends[x.Of] || x.Kind == Ends
	}
	told.Gates = told.Gates[:min(len(told.Gates), len(f.Gates))]
	seen := map[source.Place]int{} // of a condition that is looked at several times, the last counts
	for i, g := range told.Gates {
		at, ok := w.places.of(f.Gates[i].Place)
		if !ok {
			continue
		}
		odds := likely.gate(f, i)
		var clock time.Time
		if !w.o.Start.IsZero() && g.Met {
			clock = outlook.ClockAt(w.o.Start, g.Reached)
		}
		hint := Hint{Gates, at.behind, at.head, words.MarginGate(g, clock, odds, ends[at.head]), h.Gated(g, clock, odds)}
		if k, again := seen[f.Gates[i].Place]; again {
			w.m.Hints[k] = hint
		} else if hint.Text != "" {
			seen[f.Gates[i].Place] = len(w.m.Hints)
			w.m.Hints = append(w.m.Hints, hint)
		}
		w.beside(at.head, hint.More)
	}
}

// beside adds a line to what a statement says.
func (w *writer) beside(of source.Span, line string) {
	for i := range w.m.Steps {
		if w.m.Steps[i].Of == of {
			w.m.Steps[i].Lines = append(w.m.Steps[i].Lines, line)
			return
		}
	}
	w.m.Steps = append(w.m.Steps, Beside{of, []string{line}})
}

// At is what stands beside the statement that an offset lies in; nil where nothing does.
func (m Margin) At(offset int) []string {
	for _, s := range m.Steps {
		if s.Of.Start <= offset && offset <= s.Of.End {
			return s.Lines
		}
	}
	return nil
}

// share is a part of ten.
func share(x float64) *answer.Share {
	s := answer.Share(x)
	return &s
}
