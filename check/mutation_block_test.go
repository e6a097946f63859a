package check

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// naming tells where a process names what it uses of the house.
var naming = map[string]string{
	"grain":        `from [^\n]* of "([^"]*)"`,
	"site":         `\n  at +"([^"]*)"`,
	"vessel":       `steep +in "([^"]*)"`,
	"floor":        `germinate +on "([^"]*)"`,
	"wither floor": `wither +on "([^"]*)"`, // the floor that it withers on
	"kiln":         `kiln +in "([^"]*)"`,
}

// anywhere replaces the first match anywhere in the house.
func anywhere(pattern, by string) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool { return once(&p.house, re, by) }
}

// definition gives where in the house the block stands that a process uses.
func definition(p *pair, what string) []int {
	m := regexp.MustCompile(naming[what]).FindStringSubmatch(p.process)
	if m == nil {
		return nil
	}
	word := strings.Replace(what, "wither floor", "floor", 1)
	return regexp.MustCompile(word + ` "` + regexp.QuoteMeta(m[1]) + `"\s*\{[^}]*\}`).FindStringIndex(p.house)
}

// in does something to the text of the block of the house that the process uses.
func in(p *pair, what string, do func(*string) bool) bool {
	at := definition(p, what)
	if at == nil {
		return false
	}
	block := p.house[at[0]:at[1]]
	if !do(&block) {
		return false
	}
	p.house = p.house[:at[0]] + block + p.house[at[1]:]
	return true
}

// ofHouse replaces the first match in a block of the house that the process uses.
func ofHouse(what, pattern, by string) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		return in(p, what, func(block *string) bool { return once(block, re, by) })
	}
}

// timesOfHouse multiplies a number of such a block.
func timesOfHouse(what, pattern string, by float64) change {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		return in(p, what, func(block *string) bool {
			return changeNumber(block, re, func(n float64) float64 { return n * by })
		})
	}
}

// says gives a block of the house a fact, in place of the one that it has of that word.
func says(what, fact string) change {
	word, _, _ := strings.Cut(fact, " ")
	had := regexp.MustCompile(`(?m)^ *` + word + ` .*\n`)
	return func(p *pair) bool {
		return in(p, what, func(block *string) bool {
			*block = had.ReplaceAllString(*block, "")
			if !strings.Contains(*block, "\n") {
				return once(block, regexp.MustCompile(` *\}$`), "; "+fact+" }")
			}
			return once(block, regexp.MustCompile(`\n\}$`), "\n  "+fact+"\n}")
		})
	}
}

// used replaces what a process names of the house by another of that kind.
func used(what, other string) change {
	re := regexp.MustCompile(naming[what])
	return func(p *pair) bool {
		at := re.FindStringSubmatchIndex(p.process)
		if at == nil || p.process[at[2]:at[3]] == other {
			return false
		}
		p.process = p.process[:at[2]] + other + p.process[at[3]:]
		return true
	}
}

// stage gives the text of a stage of the process, by its word.
func stage(text, word string) string {
	return regexp.MustCompile(`(?ms)^  ` + word + `\b.*?^  \}\n`).FindString(text)
}

func swapped(one, other string) change {
	return func(p *pair) bool {
		a, b := stage(p.process, one), stage(p.process, other)
		if a == "" || b == "" {
			return false
		}
		p.process = strings.NewReplacer(a, b, b, a).Replace(p.process)
		return true
	}
}

// inStage does a change within the text of a stage alone.
func inStage(word string, do change) change {
	return func(p *pair) bool {
		text := stage(p.process, word)
		inner := pair{process: text}
		if text == "" || !do(&inner) {
			return false
		}
		p.process = strings.Replace(p.process, text, inner.process, 1)
		return true
	}
}

// twice writes a stage down a second time.
func twice(word string) change {
	return func(p *pair) bool {
		text := stage(p.process, word)
		if text == "" {
			return false
		}
		p.process = strings.Replace(p.process, text, text+text, 1)
		return true
	}
}

// gatesTurned lets the first gate of the kiln ask for the moisture of the last, and
// the other way round.
func gatesTurned(p *pair) bool {
	gates := regexp.MustCompile(`gate moisture at most [\d.]+ %`).FindAllString(p.process, -1)
	if len(gates) < 2 || gates[0] == gates[len(gates)-1] {
		return false
	}
	p.process = strings.NewReplacer(gates[0], gates[len(gates)-1], gates[len(gates)-1], gates[0]).Replace(p.process)
	return true
}

// beyondReach asks for a temperature that lies past what the kiln reaches: by so many
// degrees above its hottest where they are positive, below its coolest where negative.
func beyondReach(step, place string, by float64) change {
	re := regexp.MustCompile(step + ` +at (?:air-on|oven|malt) (\d+) °C`)
	at := regexp.MustCompile(`(` + step + ` +at )(?:air-on|oven|malt)`)
	return func(p *pair) bool {
		block := definition(p, "kiln")
		if block == nil {
			return false
		}
		m := regexp.MustCompile(`reaches (\d+) to (\d+)`).FindStringSubmatch(p.house[block[0]:block[1]])
		low, _ := strconv.ParseFloat(m[1], 64)
		high, _ := strconv.ParseFloat(m[2], 64)
		if by < 0 {
			high = low
		}
		done := changeNumber(&p.process, re, func(float64) float64 { return high + by })
		if done && place != "" {
			once(&p.process, at, fmt.Sprintf("${1}%s", place))
		}
		return done
	}
}

// tenTimesTheAir lets the first drying step ask for ten times the kiln's own airflow.
func tenTimesTheAir(p *pair) bool {
	at := definition(p, "kiln")
	m := regexp.MustCompile(`airflow (\d+) m3/h`).FindStringSubmatch(p.house[at[0]:at[1]])
	return inProcess(`(dry +at [a-z-]+ \d+ °C)`, "$1 with airflow "+m[1]+"0 m3/h")(p)
}
