package main

import (
	"fmt"
	"math"
	"strings"

	"maltwright/sim/outside/figure"
)

// text is a fit as Markdown: its constants, the rows it was made to, the rows held out.
func (p *problem) text(r result) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "\n### %s\n\n%s\n\n", p.name, p.says)
	b.WriteString("| constant | before | fitted | interval | drawn to | in the code |\n|---|---|---|---|---|---|\n")
	for i, c := range p.parameters {
		n := func(v float64) string { return number(v, c.digits) }
		drawn := fmt.Sprintf("%s ± %s", n(c.drawnTo), number(c.by, c.digits+1))
		if c.log {
			drawn = fmt.Sprintf("%s, by a factor of %.2f", n(c.drawnTo), math.Exp(c.by))
		}
		if !p.constant(i) {
			fmt.Fprintf(&b, "| %s, %s | | %s | | %s: %s | |\n", c.name, c.unit, n(r.values[i]), drawn, c.source)
			continue
		}
		code := n(c.code)
		if p.kept {
			code += ", kept"
		}
		fmt.Fprintf(&b, "| `%s`, %s | %s | %s | %s to %s | %s: %s | %s |\n", c.name, c.unit, n(c.before), n(r.values[i]), n(r.low[i]), n(r.high[i]), drawn, c.source, code)
	}
	fmt.Fprintf(&b, "\nIntervals are profiles: where the sum of squares, made least over the other constants, is one above its least of %.2f (one standard deviation).\n", r.sum)
	b.WriteString("\n| row | source | before | as fitted | counts as |\n|---|---|---|---|---|\n")
	for _, o := range p.fitted {
		if err := p.row(&b, o.Figure, o.model, r, "fitted"); err != nil {
			return "", err
		}
	}
	for _, h := range p.held {
		if err := p.row(&b, h.Figure, h.model, r, "held"); err != nil {
			return "", err
		}
	}
	return b.String(), nil
}

// row is a line of the table of figures.
func (p *problem) row(b *strings.Builder, f figure.Figure, model func([]float64) (float64, error), r result, basis string) error {
	before := make([]float64, len(p.parameters))
	for i, c := range p.parameters {
		before[i] = c.before
	}
	was, err := model(before)
	if err != nil {
		return fmt.Errorf("%s: %w", f.What, err)
	}
	is, err := model(r.values)
	if err != nil {
		return fmt.Errorf("%s: %w", f.What, err)
	}
	says := f.Says
	if says == "" {
		says = number(f.Source, f.Digits)
	}
	if f.Key != "" {
		says += " " + f.Unit + " [" + f.Key + "]"
	} else {
		says += " " + f.Unit
	}
	fmt.Fprintf(b, "| %s | %s | %s | %s | %s |\n", f.What, says, judged(f, was), judged(f, is), basis)
	return nil
}

// judged is a value, with a mark where it lies outside what is accepted.
func judged(f figure.Figure, v float64) string {
	text := number(v, f.Digits)
	if v < f.Accepted.Low || v > f.Accepted.High {
		text += " (outside)"
	}
	return text
}

func number(v float64, digits int) string {
	return strings.Replace(fmt.Sprintf("%.*f", digits, v), "-", "−", 1)
}
