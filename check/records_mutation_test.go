package check

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source/golden"
)

// How it works: each line of an honest record is written wrong in each of the ways in
// which it can be, one at a time. A slip is caught where check says something of caution
// or worse at that line. What is not caught stands in testdata/record-mutation.txt by
// name: much of it is too small to be told from what lots, houses and scales do.

// leastMiswritten is the share of slips in a record that must be caught.
const leastMiswritten = 0.95

// miswritten is a way in which a line is written wrong; "" where it cannot be.
type miswritten struct {
	name string
	do   func(line string) string
}

var (
	aWeight  = regexp.MustCompile(`(weighed\s+)([\d.]+)( kg)`)
	aReading = regexp.MustCompile(`(read\s+\S+ )([\d.]+)( °C)`)
	aCount   = regexp.MustCompile(`counted acrospire (\d+) (\d+) (\d+) (\d+) (\d+) (\d+)`)
)

// numberOf changes the number of a line.
func numberOf(re *regexp.Regexp, change func(string) string) func(string) string {
	return func(line string) string {
		m := re.FindStringSubmatchIndex(line)
		if m == nil {
			return ""
		}
		meant := change(line[m[4]:m[5]])
		if meant == line[m[4]:m[5]] {
			return ""
		}
		return line[:m[4]] + meant + line[m[5]:]
	}
}

func times(by float64) func(string) string {
	return func(s string) string {
		v, _ := strconv.ParseFloat(s, 64)
		return fmt.Sprintf("%.2f", v*by)
	}
}

// swapped2 swaps the first two digits, over a point.
func swapped2(s string) string {
	b, first := []byte(s), -1
	for i, c := range b {
		if c == '.' {
			continue
		}
		if first >= 0 {
			b[first], b[i] = b[i], b[first]
			return string(b)
		}
		first = i
	}
	return s
}

var miswritings = []miswritten{
	{"a weight with two digits swapped", numberOf(aWeight, swapped2)},
	{"a weight ten times", numberOf(aWeight, times(10))},
	{"a weight a tenth", numberOf(aWeight, times(0.1))},
	{"a weight in pounds", numberOf(aWeight, times(1/0.45359237))},
	{"a weight in kg said in lb", func(l string) string {
		return map[bool]string{true: aWeight.ReplaceAllString(l, "$1$2 lb")}[aWeight.MatchString(l)]
	}},
	{"a weight a kilogram more", numberOf(aWeight, func(s string) string { v, _ := strconv.ParseFloat(s, 64); return fmt.Sprintf("%.2f", v+1) })},
	{"a weight a kilogram less", numberOf(aWeight, func(s string) string { v, _ := strconv.ParseFloat(s, 64); return fmt.Sprintf("%.2f", v-1) })},
	{"a temperature with two digits swapped", numberOf(aReading, swapped2)},
	{"a temperature in °F", numberOf(aReading, func(s string) string { v, _ := strconv.ParseFloat(s, 64); return fmt.Sprintf("%.1f", v*9/5+32) })},
	{"a temperature with the point misplaced", numberOf(aReading, times(10))},
	{"a temperature a tenth", numberOf(aReading, times(0.1))},
	{"a count turned round", func(l string) string {
		return map[bool]string{true: aCount.ReplaceAllString(l, "counted acrospire $6 $5 $4 $3 $2 $1")}[aCount.MatchString(l)]
	}},
	{"a rub of the other end", func(l string) string {
		out := strings.NewReplacer("gummy", "chalky", "chalky", "gummy").Replace(l)
		return map[bool]string{true: out}[out != l]
	}},
	{"a line twice", func(l string) string { return map[bool]string{true: l + "\n" + l}[strings.Contains(l, " at ")] }},
	{"the step before", func(l string) string {
		out := strings.NewReplacer("soak 2", "soak 1", "soak 3", "soak 2", "dry 2", "dry 1", "after germinate", "after soak 3", "after wither", "after germinate", "after dry 1", "after wither", "after cure", "after dry 2").Replace(l)
		return map[bool]string{true: out}[out != l]
	}},
	{"the step behind", func(l string) string {
		out := strings.NewReplacer("soak 1", "soak 2", "soak 2", "soak 3", "dry 1", "dry 2", "after germinate", "after wither", "after wither", "after dry 1", "after dry 2", "after cure").Replace(l)
		return map[bool]string{true: out}[out != l]
	}},
}

// mostOfAKind is how many lines of a kind are miswritten, besides weights: a floor has
// dozens of turns.
const mostOfAKind = 2

func kindOf(line string) string {
	words := append(strings.Fields(line), "", "")
	if words[0] == "turned" {
		return words[0]
	}
	return words[0] + words[1]
}

// miswritingShare is one of how many cases is run where the study is not to be whole: each
// costs a dozen forecasts, and the table of slips has one of every kind.
const miswritingShare = 10

// miscase is one line written wrong in one way, n lines below the first.
type miscase struct {
	n             int
	name, text    string // by name as it stands among the missed
	caught, twice bool
	unrelated     int
}

// miscases are all of a record, or a share of them.
func miscases(text string) (list []miscase, all bool) {
	lines, seen := strings.Split(text, "\n"), map[string]int{}
	for n, line := range lines {
		seen[kindOf(line)]++
		for _, m := range miswritings {
			bad := m.do(line)
			if bad == "" || n < 8 || seen[kindOf(line)] > mostOfAKind && !strings.Contains(line, "weighed") {
				continue
			}
			so := strings.Join(slices.Concat(lines[:n], []string{bad}, lines[n+1:]), "\n")
			list = append(list, miscase{n: n, name: strings.TrimSpace(line) + ": " + m.name + "\n", text: so, twice: strings.Contains(bad, "\n")})
		}
	}
	if golden.Whole() {
		return list, true
	}
	i := 0
	return slices.DeleteFunc(list, func(miscase) bool { i++; return i%miswritingShare != 0 }), false
}

// judge checks the record, and tells what is said at the line and elsewhere.
func (m *miscase) judge(file string, root read.Reader) {
	for _, f := range File(file, []byte(m.text), ".", root, Options{}).Findings {
		if f.Severity < finding.Caution || f.Place.File.Name() != file {
			continue
		}
		if at := lineOf(f.Place); at == m.n+1 || at == m.n+2 && m.twice {
			m.caught = true
		} else {
			m.unrelated++
		}
	}
}

func TestMiswrittenLinesAreCaught(t *testing.T) {
	if testing.Short() || golden.Raced {
		t.Skip("dozens of records, a dozen forecasts and more each; go test without -short and -race runs them")
	}
	const file = "26-04.malt"
	text, err := os.ReadFile(book + file)
	require.NoError(t, err)
	root, err := read.OpenRoot("../examples/batches")
	require.NoError(t, err)
	defer root.Close()
	list, all := miscases(string(text))
	onAllCores(len(list), func(i int) { list[i].judge(file, root) })
	known, err := os.ReadFile("testdata/record-mutation.txt")
	require.NoError(t, err)
	missed, unrelated := &strings.Builder{}, 0
	for _, m := range list {
		unrelated += m.unrelated
		if !m.caught {
			missed.WriteString(m.name)
			assert.True(t, all || strings.Contains(string(known), m.name), "%s is missed", m.name)
		}
	}
	n := strings.Count(missed.String(), "\n")
	share := 1 - float64(n)/float64(len(list))
	t.Logf("%d of %d slips are missed: %.1f %% are caught at their line; %.2f findings elsewhere for each", n, len(list), 100*share, float64(unrelated)/float64(len(list)))
	assert.Less(t, float64(unrelated), 0.1*float64(len(list)), "one finding a slip")
	if all {
		golden.File(t, "testdata/record-mutation.txt", missed.String())
		assert.GreaterOrEqual(t, share, leastMiswritten)
	}
}
