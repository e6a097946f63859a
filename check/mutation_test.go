package check

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// The least shares of the slips that must be caught by a fitting rule.
const (
	leastCaught        = 0.95
	leastCaughtRecords = 0.95
	leastPlaced        = 0.95 // of those that are caught, told where it is
	mostUnrelated      = 0.30 // findings a case
)

// No harmless change may raise an alarm.
const (
	mostAlarms        = 0
	mostAlarmsRecords = 0
)

// processKinds are all slips in a process or the house that it uses.
func processKinds() []kind {
	return slices.Concat(steepKinds, growthKinds, boxKinds, kilnKinds, heatKinds, claimKinds, houseKinds, limitKinds, wordKinds, unseenKinds)
}

// allRecordKinds are all slips in the record of a batch.
func allRecordKinds() []kind { return slices.Concat(recordKinds, unseenRecords) }

// example is a good file and what is found in it.
type example struct {
	name  string
	pair  pair
	found []finding.Finding
}

// good are the good files, read and looked at once.
var good = struct{ processes, records func() []example }{
	sync.OnceValue(func() []example { return goodFiles("../examples/*.malt", "process", "") }),
	sync.OnceValue(func() []example { return goodFiles(book+"26-*.malt", "batch", pale()) }),
}

// goodFiles reads the files that a pattern fits and that hold a word; of what cannot be
// read there is none.
func goodFiles(pattern, word, used string) (list []example) {
	loft := textOf("../examples/loft.malt")
	paths, _ := filepath.Glob(pattern)
	for _, path := range paths {
		if text := textOf(path); strings.Contains(text, "\n"+word+" ") {
			p := pair{text, loft}
			list = append(list, example{filepath.Base(path), p, look(p, used)})
		}
	}
	return list
}

func textOf(path string) string {
	text, _ := os.ReadFile(path)
	return string(text)
}

// pale is the process that the records go by.
var pale = sync.OnceValue(func() string { return textOf("../examples/batches/pale.malt") })

// mutants does each kind to each example.
func mutants(t *testing.T, kinds []kind, examples []example) []mutant {
	t.Helper()
	var list []mutant
	seen := map[string]bool{}
	for _, k := range kinds {
		require.False(t, seen[k.name], "%s stands there twice", k.name)
		seen[k.name] = true
		n := len(list)
		for _, e := range examples {
			bad := e.pair
			if !k.do(&bad) {
				continue
			}
			require.NotEqual(t, e.pair, bad, "%s changes %s", k.name, e.name)
			list = append(list, mutant{k, e.name, e.pair, bad})
		}
		assert.Greater(t, len(list), n, "%s breaks some example", k.name)
	}
	return list
}

// measured judges the mutants.
func measured(list []mutant, examples []example, used string) []result {
	before := map[string][]finding.Finding{}
	for _, e := range examples {
		before[e.name] = e.found
	}
	out := make([]result, len(list))
	onAllCores(len(list), func(i int) {
		m := list[i]
		out[i] = result{m, m.judged(before[m.example], look(m.bad, used))}
	})
	return out
}

func TestSlipsAreCaughtByAFittingRule(t *testing.T) {
	processes := good.processes()
	records := good.records()
	require.NotEmpty(t, processes)
	require.NotEmpty(t, records)
	slips, wrong := mutants(t, processKinds(), processes), mutants(t, allRecordKinds(), records)
	if !golden.Whole() {
		sampledAsIn(t, "processes", slips, measured(sample(slips), processes, ""))
		sampledAsIn(t, "records", wrong, measured(sample(wrong), records, pale()))
		return
	}
	caught, recorded := measured(slips, processes, ""), measured(wrong, records, pale())
	text, total := table("processes", caught)
	more, totalRecorded := table("records", recorded)
	t.Log("processes: ", total)
	t.Log("records: ", totalRecorded)
	t.Log("unseen, processes: ", talliedOf(unseenKinds, caught))
	t.Log("unseen, records: ", talliedOf(unseenRecords, recorded))
	golden.File(t, mutationTable, text+"\n"+more)
	assert.GreaterOrEqual(t, total.share(), leastCaught)
	assert.GreaterOrEqual(t, totalRecorded.share(), leastCaughtRecords)
	assert.GreaterOrEqual(t, float64(total.placed), leastPlaced*float64(total.caught))
	assert.GreaterOrEqual(t, float64(totalRecorded.placed), leastPlaced*float64(totalRecorded.caught))
	assert.LessOrEqual(t, float64(total.unrelated), mostUnrelated*float64(total.cases))
}

// A name that no rule has would fit nothing, and never be missed.
func TestWhatFitsASlipIsTheNameOfARule(t *testing.T) {
	rules := map[string]bool{}
	for _, r := range Rules() {
		rules[r.Name] = true
	}
	for _, k := range slices.Concat(processKinds(), allRecordKinds()) {
		for name := range strings.FieldsSeq(k.fits) {
			assert.True(t, rules[name], "%s: %s is no rule", k.name, name)
		}
	}
}

// Of harmless changes nothing is said. Those of which something is are kept by name.
func TestHarmlessChangesStayQuiet(t *testing.T) {
	processes := good.processes()
	records := good.records()
	text, alarms := alarmed(t, "processes", slices.Concat(harmlessKinds, harmlessBox, harmlessHeat), processes, "")
	more, recorded := alarmed(t, "records", harmlessRecords, records, pale())
	if golden.Whole() {
		golden.File(t, "testdata/harmless.txt", text+more)
	}
	assert.LessOrEqual(t, alarms, mostAlarms)
	assert.LessOrEqual(t, recorded, mostAlarmsRecords)
}

// alarmed lists and counts the cases of which too much is said.
func alarmed(t *testing.T, title string, list []harmless, examples []example, used string) (string, int) {
	t.Helper()
	most, kinds := map[string]finding.Severity{}, []kind(nil)
	for _, h := range list {
		most[h.name] = h.most
		kinds = append(kinds, kind{name: h.name, do: h.do})
	}
	alarms, lines := 0, &strings.Builder{}
	all := mutants(t, kinds, examples)
	if !golden.Whole() {
		all = sample(all)
	}
	results := measured(all, examples, used)
	for _, r := range results {
		loud := slices.DeleteFunc(slices.Clone(r.told), func(f finding.Finding) bool { return f.Severity <= most[r.kind.name] })
		if len(loud) > 0 {
			alarms++
			fmt.Fprintf(lines, "  %s: %s: %s\n", r.example, r.kind.name, rulesOf(loud))
		}
	}
	return fmt.Sprintf("%s: %d kinds, %d cases: %d raise an alarm\n%s", title, len(kinds), len(results), alarms, lines), alarms
}
