package check

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mutationTable = "testdata/mutation.txt"

// sampleShare is one of how many cases of a kind an ordinary run tries: of most kinds that
// is one. kindShare is one of how many kinds it tries: the gates try all of them.
const (
	sampleShare = 24
	kindShare   = 4
)

// sample takes some of the cases of every fourth kind, at least one: other examples for each
// kind, so that all of them stay in use.
func sample(list []mutant) []mutant {
	var out []mutant
	for n := 0; len(list) > 0; n++ {
		cases := ofOneKind(list)
		for i := n / kindShare % min(sampleShare, cases); i < cases && n%kindShare == 0; i += sampleShare {
			out = append(out, list[i])
		}
		list = list[cases:]
	}
	return out
}

// ofOneKind counts the mutants in front that are of the same kind.
func ofOneKind(list []mutant) int {
	n := 1
	for n < len(list) && list[n].kind.name == list[0].kind.name {
		n++
	}
	return n
}

// row is a line of the table of slips, with what stands below it.
type row struct {
	head       string
	shortfalls map[string]string // by example
}

// rowsOf reads a part of the table.
func rowsOf(t *testing.T, title string) map[string]row {
	t.Helper()
	text, err := os.ReadFile(mutationTable)
	require.NoError(t, err)
	_, part, found := strings.Cut("\n"+string(text), "\n"+title+": ")
	require.True(t, found, title)
	rows, name := map[string]row{}, ""
	for _, line := range strings.Split(part, "\n")[3:] {
		switch {
		case line == "":
			return rows
		case strings.HasPrefix(line, "      "):
			how, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
			examples, what, _ := strings.Cut(rest, ": ")
			for e := range strings.FieldsSeq(examples) {
				rows[name].shortfalls[e+".malt"] = how + ": " + what
			}
		default:
			var cases, caught, placed, silent, unrelated int
			_, err := fmt.Sscan(line, &cases, &caught, &placed, &silent, &unrelated)
			require.NoError(t, err, line)
			name = strings.TrimSpace(line[36:])
			rows[name] = row{strings.TrimSpace(line[:5]), map[string]string{}}
		}
	}
	return rows
}

// sampledAsIn holds what came of a sample to what the table says of those cases, and the
// kinds and their cases to those of the table.
func sampledAsIn(t *testing.T, title string, all []mutant, results []result) {
	t.Helper()
	rows := rowsOf(t, title)
	kinds := 0
	for ; len(all) > 0; kinds++ {
		n := ofOneKind(all)
		assert.Equal(t, fmt.Sprint(n), rows[all[0].kind.name].head, "cases of %s", all[0].kind.name)
		all = all[n:]
	}
	assert.Len(t, rows, kinds, "kinds are never dropped")
	for _, r := range results {
		assert.Equal(t, rows[r.kind.name].shortfalls[r.example], r.shortfall(), "%s, of %s", r.kind.name, r.example)
	}
	t.Logf("%s: %d kinds, %d of their cases", title, kinds, len(results))
}

func TestASampleHasSomeKindsAndEveryExample(t *testing.T) {
	var list []mutant
	for k := range 40 {
		for e := range 1 + k/kindShare%9 {
			list = append(list, mutant{kind: kind{name: fmt.Sprint(k)}, example: fmt.Sprint(e)})
		}
	}
	kinds, examples := map[string]bool{}, map[string]bool{}
	some := sample(list)
	for _, m := range some {
		kinds[m.kind.name], examples[m.example] = true, true
	}
	assert.Len(t, kinds, 40/kindShare)
	assert.Len(t, examples, 9)
	assert.Less(t, len(some), len(list)/2)
}
