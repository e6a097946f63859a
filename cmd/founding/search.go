package founding

import (
	"context"
	"fmt"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// trial tries plans of one process.
type trial struct {
	*sheet
	house File
	name  string
	ctx   context.Context
	runs  int
}

// tried is a plan that was written, checked and forecast.
type tried struct {
	plan     *plan
	text     []byte
	report   check.Report
	forecast *forecast.Forecast
	score    float64
	err      error
}

// beside reads the house that is being written beside what the folder holds.
type beside struct {
	file File
	read.Reader
}

func (b beside) Read(path string) ([]byte, error) {
	if path == b.file.Name {
		return b.file.Text, nil
	}
	if b.Reader == nil {
		return nil, fmt.Errorf("%s is not there", path)
	}
	return b.Reader.Read(path)
}

// try writes, checks and forecasts a plan.
func (t *trial) try(p *plan) tried {
	t.runs++
	s := &sheet{questions: t.questions, asking: t.asking}
	s.line("use \"%s\"", t.house.Name)
	p.process(s)
	out := tried{plan: p}
	if out.text, out.err = tidied(t.name, s.String()); out.err != nil {
		out.score = 1e9
		return out
	}
	r := beside{t.house, t.Root}
	out.report = check.File(t.name, out.text, ".", r, check.Options{Context: t.ctx})
	for _, proc := range out.report.House.Processes {
		if proc.Name == p.name {
			out.forecast, out.err = forecast.Run(proc, forecast.Options{})
		}
	}
	for _, f := range out.report.Findings {
		out.score += []float64{0.3, 10, 30, 100}[f.Severity]
	}
	out.score += 4 * (1 - p.share)
	if f := out.forecast; f != nil {
		out.score += p.unusual(f)
	}
	return out
}

// mostRuns is how many plans are checked and forecast at the most.
const mostRuns = 240

// search looks for a plan in which check finds nothing: each round tries every change in the
// parts that the findings are about, and keeps the best.
func (t *trial) search(p *plan) tried {
	best := t.try(t.steeped(p))
	for t.runs < mostRuns && t.ctx.Err() == nil {
		parts, any := best.toMend()
		if !any {
			break
		}
		next := best
		for _, m := range best.plan.moves() {
			if len(parts) > 0 && !parts[m.of] || t.runs >= mostRuns || t.ctx.Err() != nil {
				continue
			}
			q := best.plan.copy()
			if !m.do(q) {
				continue
			}
			if now := t.try(q); now.score < next.score-0.05 {
				next = now
				if _, any := now.toMend(); !any {
					break // the changes that matter least stand first
				}
			}
		}
		if next.plan == best.plan {
			break
		}
		best = next
	}
	return best
}

// toMend gives the parts in which the findings may be mended, none for all of them, and
// whether there is anything to mend.
func (t tried) toMend() (parts map[part]bool, any bool) {
	parts = map[part]bool{}
	for _, f := range t.report.Findings {
		if f.Severity < finding.Caution || isGiven(f.Rule) {
			continue
		}
		any = true
		in, known := partsOf[f.Rule]
		if !known {
			return nil, true
		}
		for _, p := range in {
			parts[p] = true
		}
	}
	return parts, any
}

// changed tells what is otherwise than it was asked for.
func (p *plan) changed(u system) (list []string) {
	if p.share != 1 {
		list = append(list, fmt.Sprintf("%s of the %s are taken: more does not fit", p.charge(u), p.written))
	}
	return list
}

// whyNot tells what check still finds.
func (t tried) whyNot() (list []string) {
	for _, f := range t.report.Findings {
		if f.Severity >= finding.Caution {
			list = append(list, said(f))
		}
	}
	return list
}

// unusual is how far a forecast is from what is usual, beside what is found.
func (p *plan) unusual(f *forecast.Forecast) (cost float64) {
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if s.EndedBy == forecast.ByGuard {
				cost += 3
			}
		}
	}
	return cost
}
