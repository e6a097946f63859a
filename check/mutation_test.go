package check

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// How it works: every good example is broken in each of the known ways in which
// people break a process, one at a time, where it has what is broken. A break is
// caught where the checker then says something of caution or worse that it does not
// say of the whole example. What is not caught is listed in testdata/mutation.txt,
// so that a miss is known, and a new one is seen.

// leastCaught is the share of breaks that must be caught.
const leastCaught = 0.95

// pair is a process and the house that it uses.
type pair struct{ process, house string }

// breaking is a known way of breaking a process. It tells whether there was
// something to break.
type breaking struct {
	name string
	do   func(*pair) bool
}

var breakings = []breaking{
	{"the soak's °C taken for °F", inProcess(`(soak .* )°C`, "${1}°F")},
	{"the bed's °C taken for °F", inProcess(`(hold .* )°C`, "${1}°F")},
	{"the first drying step's °C taken for °F", inProcess(`(dry .*?\d )°C`, "${1}°F")},
	{"the cure's °C taken for °F", inProcess(`(cure .* )°C`, "${1}°F")},
	{"steep water 40 °C warmer", shifted(`soak .* at (\d+) °C`, 40)},
	{"the bed 40 °C warmer", shifted(`hold +bed at (\d+) to \d+ °C`, 40, `hold +bed at \d+ to (\d+) °C`)},
	{"the first drying step 40 °C hotter", shifted(`dry +at [a-z-]+ (\d+) °C`, 40)},
	{"the cure 40 °C hotter", shifted(`cure at [a-z-]+ (\d+) °C`, 40)},
	{"the gate before the cure left out", inProcess(`\n *gate moisture [^\n]*(\n *(?:dry from [^\n]*\n *)?cure)`, "$1")},
	{"the first soak doubled", scaled(`soak (\d+) h`, 2)},
	{"the first soak trebled", scaled(`soak (\d+) h`, 3)},
	{"every soak trebled", everyScaled(`soak (\d+) h`, 3)},
	{"the bed's range the wrong way round", inProcess(`(hold +bed at )(\d+) to (\d+)`, "$1$3 to $2")},
	{"the site's range the wrong way round", inHouse(`(air +)(\d+) to (\d+)`, "$1$3 to $2")},
	{"the soak without its unit", inProcess(`(soak \d+) h`, "$1")},
	{"the floor's area without its unit", inHouse(`(area +0\.3) m2`, "$1")},
	{"soak misspelt", inProcess(`soak`, "soke")},
	{"acrospire misspelt", inProcess(`acrospire`, "akrospire")},
	{"species misspelt in the house", inHouse(`species`, "speices")},
	{"germination without its guard", inProcess(`\n *allow \d[^\n]*`, "")},
	{"the first drying step without its guard", inProcess(`(dry .*?) allow .*`, "$1")},
	{"growth before the steep", swapped("steep", "germinate")},
	{"the kiln before the growth", swapped("germinate", "kiln")},
	{"raw grain of 72 %", inHouse(`(moisture +)1(\d)`, "${1}7$2")},
	{"the steep's target on the dry basis, said as wet", inProcess(`to moisture \d+ to \d+ %`, "to moisture 75 to 82 %")},
	{"a heater of a tenth", inKiln(`(heater +)([\d.]+)`)},
	{"a kiln with a tenth of its air", inKiln(`(airflow +)([\d.]+)`)},
	{"a growing floor of a tenth", tenthOfFloor},
	{"a vessel of a tenth", tenthOfVessel},
	{"ten times the grain", scaled(`from ([\d.]+) k?[gt]`, 10)},
	{"turned every 40 h", inProcess(`(turn +every )\d+ h`, "${1}40 h")},
	{"the cure before the drying", cureFirst},
	{"no rests", inProcess(`(?m)^ *rest .*\n`, "")},
	{"treated seed", inHouse(`treated +no`, "treated yes")},
	{"treatment not known", inHouse(`treated +no`, "treated unknown")},
	{"a promise tightened", inProcess(`expect final moisture .*`, "expect final moisture at most 1.5 %")},
	{"a lot that is not there", inProcess(`of "([^"]*) 2026"`, `of "$1 2025"`)},
	{"a lot of 70 % germination", inHouse(`germination 9\d %`, "germination 70 %")},
	{"a decimal comma", inHouse(`(moisture +1\d)\.`, "$1,")},
	{"a day or two of growth", inProcess(`(\n *allow )\d+ to \d+ days`, "${1}1 to 2 days")},
	{"two weeks of growth", inProcess(`(\n *allow )\d+ to \d+ days`, "${1}14 to 16 days")},
	{"the first drying step in a tenth of its time", tenthOfDrying},
	{"the cure 25 °C cooler", shifted(`cure at [a-z-]+ (\d+) °C`, -25)},
	{"the gates' moistures changed round", gatesTurned},
	{"the malt not cooled", inProcess(`\n *cool .*`, "")},
	{"the deculming left out", inProcess(`\n *deculm .*`, "")},
	{"a brace left out", inProcess(`\{\n( *hold)`, "\n$1")},
}

func inProcess(pattern, by string) func(*pair) bool {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool { return once(&p.process, re, by) }
}

func inHouse(pattern, by string) func(*pair) bool {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		before := p.house
		p.house = re.ReplaceAllString(p.house, by)
		return p.house != before
	}
}

// once replaces the first match, or every one of a pattern of whole lines.
func once(text *string, re *regexp.Regexp, by string) bool {
	if strings.HasPrefix(re.String(), "(?m)") {
		before := *text
		*text = re.ReplaceAllString(before, by)
		return *text != before
	}
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

func shifted(pattern string, by float64, more ...string) func(*pair) bool {
	return func(p *pair) bool {
		done := false
		for _, s := range append([]string{pattern}, more...) {
			done = changeNumber(&p.process, regexp.MustCompile(s), func(n float64) float64 { return n + by }) || done
		}
		return done
	}
}

func scaled(pattern string, by float64) func(*pair) bool {
	re := regexp.MustCompile(pattern)
	return func(p *pair) bool {
		return changeNumber(&p.process, re, func(n float64) float64 { return n * by })
	}
}

func everyScaled(pattern string, by float64) func(*pair) bool {
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

// block gives the text of a top-level block of the process, by its head.
func block(text, head string) string {
	return regexp.MustCompile(`(?ms)^  ` + head + `\b.*?^  \}\n`).FindString(text)
}

func swapped(one, other string) func(*pair) bool {
	return func(p *pair) bool {
		a, b := block(p.process, one), block(p.process, other)
		if a == "" || b == "" {
			return false
		}
		p.process = strings.NewReplacer(a, b, b, a).Replace(p.process)
		return true
	}
}

// used gives what a stage of the process is in or on.
func used(p *pair, stage string) string {
	m := regexp.MustCompile(stage + ` +(?:in|on) "([^"]*)"`).FindStringSubmatch(p.process)
	if m == nil {
		return ""
	}
	return m[1]
}

// inFact divides a number of a definition of the house by ten.
func inFact(p *pair, name, pattern string) bool {
	if name == "" {
		return false
	}
	re := regexp.MustCompile(`(?s)"` + regexp.QuoteMeta(name) + `"\s*\{[^}]*?` + pattern)
	at := re.FindStringSubmatchIndex(p.house)
	if at == nil {
		return false
	}
	n, err := strconv.ParseFloat(p.house[at[4]:at[5]], 64)
	if err != nil {
		return false
	}
	p.house = fmt.Sprintf("%s%g%s", p.house[:at[4]], n/10, p.house[at[5]:])
	return true
}

func inKiln(pattern string) func(*pair) bool {
	return func(p *pair) bool { return inFact(p, used(p, "kiln"), pattern) }
}

func tenthOfFloor(p *pair) bool  { return inFact(p, used(p, "germinate"), `(area +)([\d.]+)`) }
func tenthOfVessel(p *pair) bool { return inFact(p, used(p, "steep"), `(holds +)([\d.]+)`) }

// cureFirst puts the cure in front of the first drying step.
func cureFirst(p *pair) bool {
	cure := regexp.MustCompile(`(?m)^ *cure .*\n`).FindString(p.process)
	dry := regexp.MustCompile(`(?m)^ *dry .*\n`).FindString(p.process)
	if cure == "" || dry == "" {
		return false
	}
	p.process = strings.Replace(strings.Replace(p.process, cure, "", 1), dry, cure+dry, 1)
	return true
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

// tenthOfDrying gives the first drying step a tenth of its time.
func tenthOfDrying(p *pair) bool {
	return once(&p.process, regexp.MustCompile(`(dry .* allow )\d+ to \d+ h`), "${1}0.5 to 1 h")
}

// loud counts the findings of each rule, of caution and above; a worse severity
// counts apart.
func loud(p pair) map[string]int {
	r := File("broken.malt", []byte(p.process), ".", house{"loft.malt": p.house}, Options{})
	counts := map[string]int{}
	for _, f := range r.Findings {
		if f.Severity >= finding.Caution {
			counts[f.Severity.String()+" "+f.Rule]++
		}
	}
	return counts
}

func caught(before, after map[string]int) bool {
	for rule, n := range after {
		if n > before[rule] {
			return true
		}
	}
	return false
}

func TestBrokenProcessesAreCaught(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	files, err := filepath.Glob("../examples/*.malt")
	require.NoError(t, err)
	total, missed, unused := 0, &strings.Builder{}, map[string]bool{}
	for _, b := range breakings {
		unused[b.name] = true
	}
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		if !strings.Contains(string(text), "\nprocess ") {
			continue
		}
		good := pair{string(text), string(loft)}
		before := loud(good)
		for _, b := range breakings {
			bad := good
			if !b.do(&bad) {
				continue
			}
			require.NotEqual(t, good, bad, "%s changes %s", b.name, path)
			delete(unused, b.name)
			total++
			if !caught(before, loud(bad)) {
				fmt.Fprintf(missed, "%s: %s\n", filepath.Base(path), b.name)
			}
		}
	}
	assert.Empty(t, unused, "each way breaks some example")
	share := 1 - float64(strings.Count(missed.String(), "\n"))/float64(total)
	t.Logf("%d of %d breaks are missed: %.1f %% are caught", strings.Count(missed.String(), "\n"), total, 100*share)
	golden.File(t, "testdata/mutation.txt", missed.String())
	assert.GreaterOrEqual(t, share, leastCaught)
}
