package check

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
	"maltwright/sim/work"
)

// slipped is a file with so many batches of the loft's pale malt, in each of which the
// weight of the second soak has its digits swapped.
func slipped(n int) string {
	var b strings.Builder
	fmt.Fprintln(&b, `use "pale.malt"`)
	for i := range n {
		fmt.Fprintf(&b, "batch \"n%d\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 7.41 kg at 14:00 after soak 1\n  weighed 6.86 kg at 2026-03-07 06:00 after soak 2\n  weighed 9.29 kg at 22:00 after soak 3\n  weighed 4.98 kg clean malt at 2026-03-18 18:00\n}\n", i+1)
	}
	return b.String()
}

func checkedWith(t *testing.T, n int, o Options) Report {
	t.Helper()
	root, err := read.OpenRoot("../examples")
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	return File("b.malt", []byte(slipped(n)), ".", root, o)
}

func doubtsOf(r Report) (at []string) {
	for _, f := range r.Findings {
		if f.Rule == "reading-doubtful" {
			for _, b := range r.House.Batches {
				if b.Scope.Start <= f.Place.Start && f.Place.Start < b.Scope.End {
					at = append(at, b.Name)
				}
			}
		}
	}
	return at
}

func reasonOf(r Report, rule string) string {
	for _, u := range r.NotJudged {
		if u.Rule == rule {
			return u.Reason
		}
	}
	return ""
}

// The allowance is one for all records of a file, and what comes first has it.
func TestRecordsThatNoForecastIsLeftForAreNotJudged(t *testing.T) {
	whole := work.NewPool(work.Records)
	r := checkedWith(t, 4, Options{Records: whole})
	assert.Equal(t, []string{"n1", "n2", "n3", "n4"}, doubtsOf(r))
	assert.Empty(t, reasonOf(r, "record"))
	used := work.Records - whole.Left()
	r = checkedWith(t, 4, Options{Records: work.NewPool(used * 5 / 8)})
	assert.Equal(t, []string{"n1", "n2"}, doubtsOf(r))
	assert.Equal(t, `the forecasts of the batches before "n3" took all the steps of the model that the records of one file may have; of that one and those behind it, 2 of 4, only the words are looked at`, reasonOf(r, "record"))
	assert.Empty(t, reasonOf(r, "forecast"), "the processes have an allowance of their own")
	r = checkedWith(t, 1, Options{Records: work.NewPool(used / 8)})
	assert.Empty(t, doubtsOf(r))
	assert.Contains(t, reasonOf(r, "record"), "the forecasts of its batch take more steps of the model than")
}

// Ordinary records come nowhere near it.
func TestTheRecordOfABatchTakesAHundredthOfTheAllowance(t *testing.T) {
	text, err := os.ReadFile("../examples/batches/26-03.malt")
	require.NoError(t, err)
	root, err := read.OpenRoot("../examples")
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	pool := work.NewPool(work.Records)
	r := File("batches/26-03.malt", text, "batches", root, Options{Records: pool})
	require.Len(t, r.House.Batches, 1)
	assert.Less(t, work.Records-pool.Left(), work.Records/100)
	assert.Greater(t, work.Records-pool.Left(), work.Records/1000)
}
