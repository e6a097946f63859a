package check

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
)

// tally counts what came of the cases of one kind, or of all.
type tally struct{ kinds, cases, caught, placed, silent, unrelated int }

func (t *tally) add(v verdict) {
	t.cases++
	t.unrelated += v.unrelated
	for _, c := range []struct {
		is bool
		n  *int
	}{{v.caught, &t.caught}, {v.placed, &t.placed}, {v.silent(), &t.silent}} {
		if c.is {
			*c.n++
		}
	}
}

func (t tally) share() float64 { return float64(t.caught) / float64(max(t.cases, 1)) }

func (t tally) String() string {
	each := float64(t.unrelated) / float64(max(t.cases, 1))
	return fmt.Sprintf("%d kinds, %d cases: %d caught by a fitting rule (%.1f %%), %d of them at the right place, %d missed, %d of them in silence; %.2f unrelated findings a case",
		t.kinds, t.cases, t.caught, 100*t.share(), t.placed, t.cases-t.caught, t.silent, each)
}

// result is a mutant and what came of it.
type result struct {
	mutant
	verdict
}

// table writes a line for each kind, the cases that are missed or told elsewhere below
// it, and the totals at the top.
func table(title string, results []result) (string, tally) {
	total, lines := tally{}, &strings.Builder{}
	for len(results) > 0 {
		n := slices.IndexFunc(results, func(r result) bool { return r.kind.name != results[0].kind.name })
		if n < 0 {
			n = len(results)
		}
		t := tally{kinds: 1}
		for _, r := range results[:n] {
			t.add(r.verdict)
			total.add(r.verdict)
		}
		total.kinds++
		fmt.Fprintf(lines, "%5d %6d %6d %6d %9d  %s\n", t.cases, t.caught, t.placed, t.silent, t.unrelated, results[0].kind.name)
		shortfalls(lines, results[:n])
		results = results[n:]
	}
	head := fmt.Sprintf("%s: %s\n\n%5s %6s %6s %6s %9s\n", title, total, "cases", "caught", "placed", "silent", "unrelated")
	return head + lines.String(), total
}

// shortfalls names the cases of a kind that are missed, and what was said instead, and
// those that are told where nobody would look. Examples of which the same is said share
// a line.
func shortfalls(lines *strings.Builder, results []result) {
	of, order := map[string][]string{}, []string(nil)
	for _, r := range results {
		said := r.shortfall()
		if said == "" {
			continue
		}
		if of[said] == nil {
			order = append(order, said)
		}
		of[said] = append(of[said], strings.TrimSuffix(r.example, ".malt"))
	}
	for _, said := range order {
		how, what, _ := strings.Cut(said, ": ")
		fmt.Fprintf(lines, "      %s %s: %s\n", how, strings.Join(of[said], " "), what)
	}
}

// shortfall tells how a case is missed, and by what; "" where all is well.
func (r result) shortfall() string {
	switch {
	case !r.caught && r.silent():
		return "missed: nothing is said"
	case !r.caught:
		return "missed: " + rulesOf(r.told)
	case !r.placed:
		return "elsewhere: " + rulesOf(slices.DeleteFunc(slices.Clone(r.told), func(f finding.Finding) bool { return !r.kind.fitting(f) }))
	}
	return ""
}

// rulesOf lists what rules said, each with the first word of the line it is said of.
func rulesOf(list []finding.Finding) string {
	var out []string
	for _, f := range list {
		of := ""
		if f.Place.Known() {
			first, _, _ := strings.Cut(strings.TrimSpace(f.Place.File.Text(f.Place.File.Line(lineOf(f.Place)))), " ")
			of = " of " + first
		}
		out = append(out, f.Severity.String()+" "+f.Rule+of)
	}
	slices.Sort(out)
	return strings.Join(slices.Compact(out), ", ")
}
