package check

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// pair is a process, or a record, and the house that it uses.
type pair struct{ process, house string }

// change breaks a pair. It tells whether there was something to break.
type change func(*pair) bool

// inProcess replaces the first match of a pattern.
func inProcess(pattern, by string) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool { return once(&p.process, re, by) }
}

// everywhere replaces every match of a pattern.
func everywhere(pattern, by string) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		before := p.process
		p.process = re.ReplaceAllString(before, by)
		return p.process != before
	}
}

// without drops every whole line that a pattern fits.
func without(pattern string) change { return everywhere(`(?m)^ *`+pattern+`.*\n`, "") }

// lastOf replaces the last match of a pattern; there must be another before it.
func lastOf(pattern, by string) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		all := re.FindAllStringSubmatchIndex(p.process, -1)
		if len(all) < 2 {
			return false
		}
		at := all[len(all)-1]
		p.process = p.process[:at[0]] + string(re.ExpandString(nil, by, p.process, at)) + p.process[at[1]:]
		return true
	}
}

// ahead puts a line before the first line that begins so, and behind one after it.
// Each # in it stands for the charge, in kilograms, times the factor.
func ahead(start, line string, factor ...float64) change  { return lineAt(start, line, true, factor) }
func behind(start, line string, factor ...float64) change { return lineAt(start, line, false, factor) }

func lineAt(start, line string, before bool, factor []float64) change {
	re := regexp.MustCompile(`(?m)^( *)` + start + `.*\n`)
	return func(p *pair) bool {
		at := re.FindStringSubmatchIndex(p.process)
		if at == nil {
			return false
		}
		text, put := line, at[1]
		if len(factor) > 0 {
			text = strings.ReplaceAll(line, "#", fmt.Sprintf("%.6g", charge(p)*factor[0]))
		}
		if before {
			put = at[0]
		}
		p.process = p.process[:put] + p.process[at[2]:at[3]] + text + "\n" + p.process[put:]
		return true
	}
}

// moved takes the first line that begins so away and puts it before, or behind, another.
func moved(start string, before bool, other string) change {
	re := regexp.MustCompile(`(?m)^ *` + start + `.*\n`)
	return func(p *pair) bool {
		line := re.FindString(p.process)
		if line == "" || !regexp.MustCompile(`(?m)^ *`+other).MatchString(p.process) {
			return false
		}
		was := p.process
		p.process = strings.Replace(p.process, line, "", 1)
		return lineAt(other, strings.TrimSpace(line), before, nil)(p) && p.process != was
	}
}

// where does a change only to a process that a pattern fits, and unless to others.
func where(pattern string, do change) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool { return re.MatchString(p.process) && do(p) }
}

func unless(pattern string, do change) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool { return !re.MatchString(p.process) && do(p) }
}

// each does several changes, all that there is something to break for.
func each(list ...change) change {
	return func(p *pair) bool {
		done := false
		for _, do := range list {
			done = do(p) || done
		}
		return done
	}
}

// charge gives the raw grain of a process, kg.
func charge(p *pair) float64 {
	m := regexp.MustCompile(`from ([\d.]+) (kg|t) `).FindStringSubmatch(p.process)
	if m == nil {
		return 0
	}
	n, _ := strconv.ParseFloat(m[1], 64)
	if m[2] == "t" {
		n *= 1000
	}
	return n
}

func once(text *string, re *regexp.Regexp, by string) bool {
	at := re.FindStringSubmatchIndex(*text)
	if at == nil {
		return false
	}
	*text = (*text)[:at[0]] + string(re.ExpandString(nil, by, *text, at)) + (*text)[at[1]:]
	return true
}

// changeNumber changes the number in the first group of the first match.
func changeNumber(text *string, re *regexp.Regexp, change func(float64) float64) bool {
	at := re.FindStringSubmatchIndex(*text)
	if at == nil {
		return false
	}
	n, err := strconv.ParseFloat((*text)[at[2]:at[3]], 64)
	if err != nil {
		return false
	}
	*text = fmt.Sprintf("%s%.6g%s", (*text)[:at[2]], change(n), (*text)[at[3]:])
	return true
}

// shifted adds to a number of the process, scaled multiplies it, everyScaled all of them.
func shifted(pattern string, by float64, more ...string) change {
	return func(p *pair) bool {
		done := false
		for _, s := range append([]string{pattern}, more...) {
			done = changeNumber(&p.process, regexp.MustCompile(s), func(n float64) float64 { return n + by }) || done
		}
		return done
	}
}

func scaled(pattern string, by float64) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		return changeNumber(&p.process, re, func(n float64) float64 { return n * by })
	}
}

func everyScaled(pattern string, by float64) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		before := p.process
		p.process = re.ReplaceAllStringFunc(before, func(s string) string {
			changeNumber(&s, re, func(n float64) float64 { return n * by })
			return s
		})
		return p.process != before
	}
}
