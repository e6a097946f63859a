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
		out.score += []float64{0.3, 10, 100, 1000}[f.Severity]
	}
	return out
}

// search looks for a plan in which check finds nothing.
func (t *trial) search(p *plan) tried {
	best := t.try(p)
	return best
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
