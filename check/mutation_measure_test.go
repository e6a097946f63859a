package check

import (
	"runtime"
	"strings"
	"sync"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// How it is measured: every kind is done to every good example that has what it
// breaks, one at a time. What the checker then says that it does not say of the whole
// example is new. A case is caught where a fitting rule says something new, at least
// as severe as the slip is; it is told at the right place where such a finding begins
// on a line that was changed, beside one that was dropped, or on one of the few lines
// where a maltster would look for it. New findings of caution or worse by other rules
// are unrelated.

// mutant is one case: a kind done to an example.
type mutant struct {
	kind    kind
	example string // the name of its file
	good    pair
	bad     pair
}

// verdict is what came of a mutant.
type verdict struct {
	caught, placed bool
	unrelated      int
	told           []finding.Finding // what is new of it: all that is fitting, and the rest of caution and worse
}

// silent tells that nothing new was said.
func (v verdict) silent() bool { return len(v.told) == 0 }

// look checks a pair; used is the process that a record goes by.
func look(p pair, used string) []finding.Finding {
	return File("broken.malt", []byte(p.process), ".", house{"loft.malt": p.house, "pale.malt": used}, Options{}).Findings
}

// fresh gives the findings of the broken file that the whole one does not raise: those
// of one rule and severity beyond as many as there were, the changed words first.
func fresh(before, after []finding.Finding) []finding.Finding {
	type key struct {
		finding.Severity
		rule, words string
	}
	same := func(f finding.Finding) key { return key{f.Severity, f.Rule, f.Place.Text()} }
	alike := func(f finding.Finding) key { return key{f.Severity, f.Rule, ""} }
	for _, of := range []func(finding.Finding) key{same, alike} {
		had, left := map[key]int{}, []finding.Finding{}
		for _, f := range before {
			had[of(f)]++
		}
		rest := before[:0:0]
		for _, f := range after {
			if had[of(f)]--; had[of(f)] < 0 {
				left = append(left, f)
			}
		}
		for _, f := range before { // what the first round has not matched
			if had[of(f)]--; had[of(f)] >= 0 {
				rest = append(rest, f)
			}
		}
		before, after = rest, left
	}
	return after
}

// judged tells what came of a mutant.
func (m mutant) judged(before, after []finding.Finding) verdict {
	v, lines := verdict{}, m.changedLines()
	for _, f := range fresh(before, after) {
		fits := m.kind.fitting(f)
		switch {
		case fits && f.Severity >= m.kind.least:
			v.caught = true
			v.placed = v.placed || lines.right(f.Place) || m.kind.lookedFor(f.Place)
		case f.Severity < caution && !fits:
			continue
		case !fits:
			v.unrelated++
		}
		v.told = append(v.told, f)
	}
	return v
}

// lookedFor tells whether a finding begins on a line where a maltster would look.
func (k kind) lookedFor(p source.Place) bool {
	if !p.Known() {
		return false
	}
	text := strings.Split(string(p.File.Bytes()), "\n")
	first, _, _ := strings.Cut(strings.TrimSpace(text[lineOf(p)-1]), " ")
	return hasWord(k.at, first)
}

// lineOf gives the line of a file on which a place begins.
func lineOf(p source.Place) int { return p.File.Position(p.Start, source.Characters).Line }

// lineSet holds the lines of each file, by its name, that a mutant changed.
type lineSet map[string]map[int]bool

func (s lineSet) right(p source.Place) bool { return p.Known() && s[p.File.Name()][lineOf(p)] }

func (m mutant) changedLines() lineSet {
	return lineSet{
		"broken.malt": differing(m.good.process, m.bad.process),
		"loft.malt":   differing(m.good.house, m.bad.house),
	}
}

// differing gives the lines of a text, from 1, that are not in the one before it, and
// those on both sides of what was dropped: as many lines as can be are taken as common.
func differing(before, after string) map[int]bool {
	if before == after {
		return nil
	}
	a, b := strings.Split(before, "\n"), strings.Split(after, "\n")
	common := inCommon(a, b)
	out := map[int]bool{}
	for i, j := 0, 0; i < len(a) || j < len(b); {
		if i < len(a) && j < len(b) && a[i] == b[j] {
			i, j = i+1, j+1
			continue
		}
		from := j
		for (i < len(a) || j < len(b)) && !(i < len(a) && j < len(b) && a[i] == b[j]) {
			if j < len(b) && (i == len(a) || common[i][j+1] >= common[i+1][j]) {
				j++
				out[j] = true
			} else {
				i++
			}
		}
		if from == j { // lines were dropped, and none put in their place
			out[j], out[j+1] = true, true
		}
	}
	return out
}

// inCommon counts the lines that a[i:] and b[j:] have in common, in their order.
func inCommon(a, b []string) [][]int {
	common := make([][]int, len(a)+1)
	for i := range common {
		common[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			common[i][j] = max(common[i+1][j], common[i][j+1])
			if a[i] == b[j] {
				common[i][j] = common[i+1][j+1] + 1
			}
		}
	}
	return common
}

// onAllCores does something for each number below n, on every core.
func onAllCores(n int, do func(int)) {
	next := make(chan int)
	var all sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	all.Wait()
}
