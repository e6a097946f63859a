package text

import (
	"cmp"
	"fmt"
	"io"
	"slices"

	"maltwright/cmd/answer/inspection"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
)

// MostWhole is how many findings are told in full; a danger is told in full whatever the number.
const MostWhole = 5

// WorstFindings writes the worst findings as Findings does, and a line for each rule that has found more.
func WorstFindings(w io.Writer, list []finding.Finding, o Options) error {
	worst, rest := parted(list)
	if err := Findings(w, worst, o); err != nil || len(rest) == 0 {
		return err
	}
	s := &Sheet{Options: o}
	s.line("")
	s.line("%s", s.bold(fmt.Sprintf("and %d more (--all)", len(rest))))
	files := map[*source.File]bool{}
	for _, f := range list {
		if f.Place.Known() {
			files[f.Place.File] = true
		}
	}
	for _, g := range byRule(rest) {
		f := g[0]
		count := words.Plural(len(g), f.Severity.String())
		where := ""
		if f.Place.Known() {
			where = fmt.Sprintf(" at line %d", f.Place.File.Position(f.Place.Start, source.Characters).Line)
			if len(files) > 1 {
				where += " of " + words.Safe(inspection.Named(o.Folder, f.Place.File.Name()))
			}
			if len(g) > 1 {
				where = ", the first" + where
			}
		}
		line := fmt.Sprintf("%s [%s]%s: %s", count, f.Rule, where, words.Safe(f.Message))
		if o.Width == 0 {
			s.line("  %s", line)
			continue
		}
		s.hangs("  ", "    ", line)
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// parted gives the worst findings and the rest, each in the order of the list.
func parted(list []finding.Finding) (worst, rest []finding.Finding) {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	sorted.Stable(order, func(a, b int) int { return cmp.Compare(list[b].Severity, list[a].Severity) })
	whole := make([]bool, len(list))
	for n, i := range order {
		whole[i] = n < MostWhole || list[i].Severity == finding.Danger
	}
	for i, f := range list {
		if whole[i] {
			worst = append(worst, f)
		} else {
			rest = append(rest, f)
		}
	}
	return worst, rest
}

// byRule groups findings by severity and rule, the worst first.
func byRule(list []finding.Finding) (groups [][]finding.Finding) {
	for _, f := range list {
		i := slices.IndexFunc(groups, func(g []finding.Finding) bool { return g[0].Rule == f.Rule && g[0].Severity == f.Severity })
		if i < 0 {
			groups = append(groups, []finding.Finding{f})
			continue
		}
		groups[i] = append(groups[i], f)
	}
	sorted.Stable(groups, func(a, b []finding.Finding) int { return cmp.Compare(b[0].Severity, a[0].Severity) })
	return groups
}
