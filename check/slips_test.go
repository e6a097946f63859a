package check

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// How it works: as in mutation_test.go, with the slips that are made in times, gates
// and targets. A slip is at its place where a new finding stands in a line that it
// changed, or names the stage of it.

// leastAtPlace is the share of those caught that must be told of at their place.
const leastAtPlace = 0.9

var slips = []breaking{
	{"a soak of min for h", inProcess(`(soak \d+) h`, "$1 min")},
	{"a soak of days for h", inProcess(`(soak \d+) h`, "$1 days")},
	{"a soak of 60 h", inProcess(`soak \d+ h`, "soak 60 h")},
	{"a rest of min for h", inProcess(`(rest \d+) h`, "$1 min")},
	{"a rest of days for h", inProcess(`(rest \d+) h`, "$1 days")},
	{"a rest of 99 h", inProcess(`rest \d+ h`, "rest 99 h")},
	{"a turn of min for h", inProcess(`(turn +every \d+) h`, "$1 min")},
	{"a turn of days for h", inProcess(`(turn +every \d+) h`, "$1 days")},
	{"growth of h for days", inProcess(`(allow \d+ to \d+) days`, "$1 h")},
	{"growth of weeks for days", inProcess(`(allow \d+ to \d+) days`, "$1 weeks")},
	{"a cure of min for h", inProcess(`(cure .* for \d+) h`, "$1 min")},
	{"a cure of days for h", inProcess(`(cure .* for \d+) h`, "$1 days")},
	{"a cure of 60 h", inProcess(`(cure .* for) \d+ h`, "$1 60 h")},
	{"a cure of 10 min", inProcess(`(cure .* for) \d+ h`, "$1 10 min")},
	{"a rise of min for h", inProcess(`(over \d+) h`, "$1 min")},
	{"a rise of days for h", inProcess(`(over \d+) h`, "$1 days")},
	{"a rise that falls", inProcess(`(dry +from air-on )(\d+) to (\d+)`, "$1$3 to $2")},
	{"a stew of min for h", inProcess(`(stew .* for \d+) h`, "$1 min")},
	{"a stew at 95 °C", inProcess(`(stew at \S+) \d+ °C`, "$1 95 °C")},
	{"a stew behind the drying", inProcess(`( *stew .*\n)( *dry .*\n)`, "$2$1")},
	{"stirred every 3 days", inProcess(`stir every \d+ \S+`, "stir every 3 days")},
	{"withering of min for h", inProcess(`(until moisture at most \d+ %\n *allow \d+ to \d+) h`, "$1 min")},
	{"withering of days for h", inProcess(`(until moisture at most \d+ %\n *allow \d+ to \d+) h`, "$1 days")},
	{"withered at 45 °C", inProcess(`(air +at) \d+ to \d+ °C`, "$1 44 to 46 °C")},
	{"withered to 46 %", inProcess(`(\n *)until moisture at most \d+ %\n`, "${1}until moisture at most 46 %\n")},
	{"drying that may not end for 30 h", inProcess(`(dry .* allow) [\d.]+ to \d+ h`, "$1 30 to 40 h")},
	{"deculmed within days for h", inProcess(`(deculm within \d+) h`, "$1 days")},
	{"deculmed within min for h", inProcess(`(deculm within \d+) h`, "$1 min")},
	{"stored for hours", inProcess(`for at least \d+ weeks`, "for 2 h")},
	{"stored for days instead of weeks", inProcess(`(for at least) \d weeks`, "$1 3 min")},
	{"dried until at least", inProcess(`(dry .* until moisture) at most`, "$1 at least")},
	{"steeped until at most", inProcess(`(repeat .* until moisture) at least`, "$1 at most")},
	{"grown until at most", inProcess(`(until acrospire) at least`, "$1 at most")},
	{"withered until at least", inProcess(`(\n *until moisture) at most`, "$1 at least")},
	{"a gate of 72 %", inProcess(`gate moisture at most \d+ %`, "gate moisture at most 72 %")},
	{"a gate on the dry basis", inProcess(`(gate moisture at most \d+ %)`, "$1 dry basis")},
	{"an until on the dry basis", inProcess(`(dry .* until moisture at most \d+ %)`, "$1 dry basis")},
	{"the steep's target below raw grain", inProcess(`to moisture \d+ to \d+ %`, "to moisture 4.3 to 4.5 %")},
	{"a weight gate above the charge", inProcess(`gate moisture at most [\d.]+ %`, "gate weight at most 2 t")},
	{"the gate of the cure behind it", inProcess(`( *gate moisture at most 10 %.*\n)( *cure .*\n)`, "$2$1")},
	{"grown to gummy", inProcess(`until acrospire .*`, "until rub is gummy")},
	{"grown to gritty", inProcess(`until acrospire .*`, "until rub is gritty")},
	{"a gate of the corn that is not met", inProcess(`until acrospire at least \S+.*\n( *allow) .*`, "until acrospire at least 1/3\n$1 1 to 7 days\n    gate acrospire at least 9/10")},
	{"a hold too long for the next", inProcess(`(hold +bed at \d+ to \d+ °C)`, "$1 for 20 days\n    hold bed at 12 to 15 °C")},
	{"a hold with an end that is not kept", inProcess(`(hold +bed at \d+ to \d+ °C)`, "$1 for 3 days")},
	{"a hold of min", inProcess(`(hold +bed at \d+ to \d+ °C)`, "$1 for 3 min\n    hold bed at 14 to 16 °C")},
	{"a guard beside a time", inProcess(`(cure .*)`, "$1 allow 3 to 6 h")},
	{"over for for", inProcess(`(cure .*) for `, "$1 over ")},
	{"a gate with no end to its wait", inProcess(`(gate moisture at most [\d.]+ %).*`, "$1 allow 0 to 30 days")},
	{"acrospire at least 3/40", inProcess(`acrospire at least \S+`, "acrospire at least 3/40")},
	{"cast in front of the last soaks", inProcess(`(?m)^ *(soak|rest) .*\n`, "")},
}

// linesChanged are the lines of the broken text that the good one has not.
func linesChanged(good, bad string) map[int]bool {
	had := map[string]int{}
	for _, l := range strings.Split(good, "\n") {
		had[l]++
	}
	changed := map[int]bool{}
	for i, l := range strings.Split(bad, "\n") {
		if had[l]--; had[l] < 0 {
			changed[i+1] = true
		}
	}
	return changed
}

// caughtAt tells whether something of caution or worse is said anew of the broken
// process, whether of a line that was changed, and how much of other lines.
func caughtAt(good, bad pair, before map[string]int) (caught, placed bool, beside int) {
	changed := linesChanged(good.process, bad.process)
	r := File("broken.malt", []byte(bad.process), ".", house{"loft.malt": bad.house}, Options{})
	for _, f := range r.Findings {
		key := f.Severity.String() + " " + f.Rule
		if f.Severity < finding.Caution {
			continue
		}
		if before[key]--; before[key] < 0 {
			caught = true
			line := strings.Count(string(f.Place.File.Bytes()[:f.Place.Start]), "\n") + 1
			if placed = placed || changed[line]; !changed[line] {
				beside++
			}
		}
	}
	return caught, placed, beside
}

func TestSlipsInTimesAndGatesAreCaught(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	files, err := filepath.Glob("../examples/*.malt")
	require.NoError(t, err)
	total, caught, placed, beside, missed := 0, 0, 0, 0, &strings.Builder{}
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		if !strings.Contains(string(text), "\nprocess ") {
			continue
		}
		good := pair{string(text), string(loft)}
		before := loud(good)
		for _, s := range slips {
			bad := good
			if !s.do(&bad) {
				continue
			}
			total++
			found, at, more := caughtAt(good, bad, maps.Clone(before))
			beside += more
			switch {
			case !found:
				fmt.Fprintf(missed, "%s: %s\n", filepath.Base(path), s.name)
				continue
			case !at:
				fmt.Fprintf(missed, "%s: elsewhere: %s\n", filepath.Base(path), s.name)
			default:
				placed++
			}
			caught++
		}
	}
	t.Logf("%d kinds, %d slips: %.1f %% caught, %.1f %% of them at their place, %.2f findings elsewhere a slip", len(slips), total,
		100*float64(caught)/float64(total), 100*float64(placed)/float64(caught), float64(beside)/float64(total))
	golden.File(t, "testdata/slips.txt", missed.String())
	assert.GreaterOrEqual(t, float64(caught)/float64(total), leastCaught)
	assert.GreaterOrEqual(t, float64(placed)/float64(caught), leastAtPlace)
}
