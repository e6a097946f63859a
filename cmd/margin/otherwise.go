package margin

import (
	"context"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/cmd/answer/effect"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Case is a file as it is to be checked: what check.File takes.
type Case struct {
	Name   string
	Text   []byte
	Dir    string
	Reader read.Reader
}

// check checks another text in the place of the file.
func (c Case) check(text []byte, o check.Options) check.Report {
	return check.File(c.Name, text, c.Dir, c.Reader, o)
}

// Otherwise is what a process would come to if a number were another one.
type Otherwise struct {
	Of    source.Span // the number
	Text  string      // as it is written: 7 h
	Sides []Side      // with more of it, and with less
	Dear  bool        // it takes more steps of the model than were given, and was not reckoned
}

// Side is what it would come to with one other number.
type Side struct{ Text, Says string } // 8 h, of a range 4 to 8 h; total time 8 d 9 h (+1 h) ...

// Steps is what the forecasts of one side of Otherwise may spend where somebody waits for the answer.
const Steps = 400_000

// OtherwiseAt says what would come of it if the number at an offset were one more or one less, beside the report of
// the file as it stands. It is nil where there is no number at the offset, it is of no process that is forecast,
// or the context ends. Each side spends from a pool of so many steps of the model; 0 is as many as a file may have.
func OtherwiseAt(ctx context.Context, c Case, tree *syntax.Tree, r check.Report, offset, steps int) *Otherwise {
	n, ok := numberAt(tree, offset)
	value, counts := n.value()
	p, f := processAt(r, tree.File, n.place)
	if !ok || !counts || f == nil {
		return nil
	}
	out := &Otherwise{Of: n.place, Text: shownWith(n.text, n.unit)}
	by := n.step(value)
	for _, by := range []float64{by, -by} {
		text := n.moved(value, by)
		if by < 0 && value > 0 && value+by <= 0 && n.step(value) == 1 && !warm(n.unit) {
			continue // there is no such number of it
		}
		if steps == 0 {
			steps = work.File
		}
		says, dear := c.with(ctx, n.place, text, r, p, f, steps)
		if ctx.Err() != nil {
			return nil
		}
		if dear {
			return &Otherwise{Of: out.Of, Text: out.Text, Dear: true}
		}
		out.Sides = append(out.Sides, Side{n.shown(tree, text), says})
	}
	return out
}

func warm(unit string) bool { return strings.HasSuffix(unit, "C") || strings.HasSuffix(unit, "F") }

func shownWith(number, unit string) string { return strings.TrimSpace(number + " " + unit) }

// shown is the number written otherwise, of a range both ends: 4 to 8 days.
func (n number) shown(tree *syntax.Tree, text string) string {
	if n.in.High == nil {
		return shownWith(text, n.unit)
	}
	whole := tree.File.Text(n.in.Span)
	return words.OneLine(whole[:n.place.Start-n.in.Start] + text + whole[n.place.End-n.in.Start:])
}

// Lines says both sides, a line each.
func (o *Otherwise) Lines() (list []string) {
	for _, s := range o.Sides {
		list = append(list, "with "+s.Text+": "+s.Says)
	}
	return list
}

// processAt is the process that words of a file are in, or the only one of their file, with its forecast.
func processAt(r check.Report, file *source.File, at source.Span) (*model.Process, *forecast.Forecast) {
	var own []int
	for i, p := range r.House.Processes {
		if p.Scope.File == nil || p.Scope.File.Name() != file.Name() {
			continue
		}
		if p.Scope.Start <= at.Start && at.End <= p.Scope.End {
			return p, nth(r.Forecasts, i)
		}
		own = append(own, i)
	}
	if len(own) == 1 && !inBatch(r.House, source.Place{File: file, Span: at}) {
		return r.House.Processes[own[0]], nth(r.Forecasts, own[0])
	}
	return nil, nil
}

func inBatch(h *model.House, at source.Place) bool {
	return slices.ContainsFunc(h.Batches, func(b *model.Batch) bool { return at.Within(b.Scope) })
}

// with says what the process comes to with another text at a place. It is dear where that takes too many steps.
func (c Case) with(ctx context.Context, at source.Span, text string, was check.Report, p *model.Process, old *forecast.Forecast, steps int) (says string, dear bool) {
	altered := slices.Concat(c.Text[:at.Start], []byte(text), c.Text[at.End:])
	pool := work.NewPool(steps)
	is := c.check(altered, check.Options{Context: ctx, Pool: pool, Records: work.NewPool(0)})
	if pool.Err() != nil {
		return "", true
	}
	q, f := namedIn(is, p)
	if f == nil || f.BrokenOff() != old.BrokenOff() {
		return notWith(is), false
	}
	r := effect.OfForecasts(p.Name, old, f)
	r.Old, r.New, r.Written = "as written", text, q
	r.Findings = effect.Findings(ofProcesses(was), ofProcesses(is))
	return words.Of(p).MarginEffect(r), false
}

func namedIn(r check.Report, p *model.Process) (*model.Process, *forecast.Forecast) {
	for i, q := range r.House.Processes {
		if q.Name == p.Name {
			return q, nth(r.Forecasts, i)
		}
	}
	return nil, nil
}

// notWith says why nothing comes of it.
func notWith(r check.Report) string {
	for _, f := range r.Findings {
		if f.Severity == finding.Fault {
			return words.Safe("it cannot be forecast: " + f.Message)
		}
	}
	return "it cannot be forecast"
}

// ofProcesses are the findings that are not of a record.
func ofProcesses(r check.Report) []finding.Finding {
	return slices.DeleteFunc(slices.Clone(r.Findings), func(f finding.Finding) bool { return inBatch(r.House, f.Place) })
}
