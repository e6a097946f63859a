package founding

import (
	"context"
	"fmt"
	"math"
	"strings"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// trial tries plans of one process.
type trial struct {
	*sheet
	house File
	name  string
	ctx   context.Context
	pool  *work.Pool // from which all its forecasts spend
}

// tried is a plan that was written, checked and forecast.
type tried struct {
	plan   *plan
	text   []byte
	report check.Report
	score  float64
	broken error // where it does not read
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
	s := &sheet{questions: t.questions, asking: t.asking}
	s.comment(fmt.Sprintf("%s: planned to fit the house in %s. Check it again when the house changes.", p.name, t.house.Name))
	for _, note := range p.notes {
		s.line("#")
		s.comment("Mind: " + note + ".")
	}
	s.line("use \"%s\"", t.house.Name)
	p.process(s)
	text, err := tidied(t.name, s.String())
	if err != nil {
		return tried{plan: p, text: []byte(s.String()), score: math.Inf(1), broken: err}
	}
	out := tried{plan: p, text: text}
	r := beside{t.house, t.Root}
	out.report = check.File(t.name, out.text, ".", r, check.Options{Context: t.ctx, Pool: t.pool})
	for _, f := range out.report.Findings {
		out.score += []float64{0.3, 10, 30, 100}[f.Severity]
	}
	out.score += 4 * (1 - p.share)
	return out
}

// mostWork is what the forecasts of all plans may spend: some 600 usual ones.
const mostWork = 16_000_000

// search looks for a plan in which check finds nothing: each round tries every change in the
// parts that the findings are about, and keeps the best.
func (t *trial) search(p *plan) tried {
	if !t.seeks {
		return t.try(p)
	}
	best := t.try(t.steeped(p))
	for !t.spent() {
		parts, any := best.toMend()
		if !any {
			break
		}
		next := best
		for _, m := range best.plan.moves() {
			if len(parts) > 0 && !parts[m.of] || t.spent() {
				continue
			}
			q := best.plan.copy()
			if !m.do(q) {
				continue
			}
			if m.of == ofSteep {
				q = t.steeped(q)
			}
			if now := t.try(q); now.score < next.score-0.05 && !t.spent() { // a spent pool judges nothing
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

// spent tells whether no more plans are to be tried.
func (t *trial) spent() bool { return t.ctx.Err() != nil || t.pool.Err() != nil }

// forecast forecasts a plan that was tried.
func (t tried) forecast() *forecast.Forecast {
	for _, p := range t.report.House.Processes {
		if p.Name == t.plan.name {
			if f, err := forecast.Run(p, forecast.Options{}); err == nil {
				return f
			}
		}
	}
	return nil
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
			in = t.around(f)
		}
		if in == nil {
			return nil, true
		}
		for _, p := range in {
			parts[p] = true
		}
	}
	return parts, any
}

// around gives the parts that bear on the stage in which a finding is; nil for all.
func (t tried) around(f finding.Finding) []part {
	if f.Place.File == nil || f.Place.Span.Start > len(t.text) || f.Place.File.Name() != t.report.House.Files[0].Name() {
		return []part{ofCharge}
	}
	stage, at := "", -1
	for word := range partsIn {
		if i := strings.LastIndex(string(t.text[:f.Place.Span.Start])+" ", "\n  "+word+" "); i > at {
			stage, at = word, i
		}
	}
	return partsIn[stage]
}

// changed tells what is otherwise than it was asked for.
func (p *plan) changed(u system) (list []string) {
	if p.instead != "" {
		list = append(list, p.cooler(u))
	}
	if p.turned {
		list = append(list, "the dryers are used in another order: malt is cured in the hottest, which comes last")
	}
	if p.share != 1 {
		list = append(list, fmt.Sprintf("%s of the %s are taken: %s", p.charge(u), p.written, p.less()))
	}
	return list
}

// less tells why less grain is taken than was asked for, and what would take more.
func (p *plan) less() string {
	room := 0.0
	for _, v := range p.vessels {
		if v.Holds != nil {
			room += v.Holds.SI
		}
	}
	if room < roomEach*p.asked {
		return "more does not fit the steeping vessel; make several batches, or steep in a larger vessel"
	}
	return "more would lie too deep here; make several batches, or lay it on more trays"
}

// roomEach is the room that a kg of grain asks for with its water, m³ (common practice).
const roomEach = 0.0022

// cooler tells why another malt is made.
func (p *plan) cooler(u system) string {
	return fmt.Sprintf("%s: it is cured at %s, and nothing here gets hotter than %s", p.instead, u.degrees(p.need), u.degrees(p.have))
}

// whyNot tells what check still finds.
func (t tried) whyNot() []string { return t.left(func(string) bool { return true }) }

// lasting tells the same without what one word of the seller settles: that stands at the lot.
func (t tried) lasting() []string {
	return t.left(func(rule string) bool { return rule != "treated-unknown" })
}

func (t tried) left(of func(rule string) bool) (list []string) {
	seen := map[string]bool{}
	for _, f := range t.report.Findings {
		if f.Severity >= finding.Caution && !seen[f.Rule+f.Message] && of(f.Rule) {
			seen[f.Rule+f.Message] = true
			list = append(list, said(f))
		}
	}
	return list
}
