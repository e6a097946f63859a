package reckon_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
	"maltwright/sim/reckon"
)

// questions are reckonings, as one would put them; the goldens hold the answers.
var questions = []string{
	"moisture 20.00 g, 17.54 g",
	"moisture 20.00 g, 17.54 g tare 5 g",
	"moisture 20.00 g, 17.54 g, 21.10 g, 18.47 g",
	"moisture 1 oz, 25 g",
	"target 100 g, 8 %, 42 %",
	"target 6 kg, 12.4 %, 44 % lost 1 %",
	"target 13 lb 4 oz, 12.4 %, 44 %",
	"target 8 1/3 lb, 12.4 %, 44 %",
	"target 5 lb 4 oz, 45 %, 4.5 % lost 8 %",
	"target 1000 kg, 33.3 % dry basis, 14 %",
	"target 6 kg, 12.4 %, 79 % dry basis",
	"weight 9.1 kg, 6 kg, 12.4 %",
	"weight 5.5 kg, 6 kg, 12.4 % lost 7 %",
	"weight 20 lb 2 oz, 6 kg, 12.4 %",
	"basis 12.4 %",
	"basis 14.2 % dry basis",
	"basis 120 % dry basis",
	"yield 42 g, 15 %, 32 g, 2 %",
	"yield 1 t, 12 %, 830 kg, 5 %",
	"yield 100 lb, 12 %, 37.5 kg, 4.2 % dry basis",
	"germination 95, 100",
	"germination 0, 50 corns",
	"germination 200, 200",
}

// impossible are those that must be refused.
var impossible = []string{
	"moisture ",
	"moisture 17.54 g, 20.00 g",
	"moisture 0 g, 0 g",
	"moisture 20 g, 0 g",
	"moisture -20 g, 17 g",
	"moisture 20 ml, 17 ml",
	"moisture 20 g, 88 %",
	"moisture 20, 17.54",
	"moisture 20 g, 17.54 g, 20 g, 21 g",
	"moisture 20 g, 17.54 g tare 17.54 g",
	"moisture 20 g, 17.54 g tare -5 g",
	"moisture 20 g, 17.54 g tare 5",
	"target 6 kg, 12.4, 44 %",
	"target 6 kg, 12.4 °C, 44 %",
	"target 6 kg, 104 %, 44 %",
	"target 6 kg, -2 %, 44 %",
	"target 6 kg, -2 % dry basis, 44 %",
	"target 6 kg, 12.4 %, 100 %",
	"target 6 l, 12.4 %, 44 %",
	"target 0 kg, 12.4 %, 44 %",
	"target 6 kg, 12.4 %, 44 % lost 100 %",
	"target 6 kg, 12.4 %, 44 % lost -1 %",
	"target 6 kg, 12.4 %, 44 % lost 1 kg",
	"weight 5 kg, 6 kg, 12.4 %",
	"weight 5 kg, 6 kg, 12.4 % lost 1 %",
	"weight 9.1 h, 6 kg, 12.4 %",
	"basis 100 %",
	"basis 12.4",
	"basis -1 %",
	"yield 42 g, 15 %, 42 g, 2 %",
	"yield 42 g, 15 %, 0 g, 2 %",
	"yield 42 g, 15 %, 32 g, 2 °C",
	"germination 101, 100",
	"germination 95.5, 100",
	"germination -1, 100",
	"germination 0, 0",
	"germination 95 %, 100",
	"germination 95 times, 100",
	"germination 95, 100000000000",
}

// ask puts a question: its kind, the quantities, then one behind tare or lost.
func ask(t require.TestingT, question string) (reckon.Answer, error) {
	kind, rest, _ := strings.Cut(question, " ")
	rest, tare, _ := strings.Cut(rest, " tare ")
	rest, lost, _ := strings.Cut(rest, " lost ")
	var q []quantity.Quantity
	for _, text := range strings.FieldsFunc(rest, func(r rune) bool { return r == ',' }) {
		q = append(q, parse(t, text))
	}
	switch kind {
	case "moisture":
		var samples []reckon.Sample
		for i := 0; i+1 < len(q); i += 2 {
			samples = append(samples, reckon.Sample{Wet: q[i], Dried: q[i+1]})
		}
		r, err := reckon.Moisture(samples, maybe(t, tare))
		return r.Answer, err
	case "target":
		r, err := reckon.Target(reckon.Start{Weight: q[0], Moisture: q[1]}, q[2], maybe(t, lost))
		return r.Answer, err
	case "weight":
		r, err := reckon.Weight(q[0], reckon.Start{Weight: q[1], Moisture: q[2]}, maybe(t, lost))
		return r.Answer, err
	case "basis":
		r, err := reckon.Basis(q[0])
		return r.Answer, err
	case "yield":
		r, err := reckon.Yield(reckon.Start{Weight: q[0], Moisture: q[1]}, reckon.Start{Weight: q[2], Moisture: q[3]})
		return r.Answer, err
	}
	r, err := reckon.Germination(q[0], q[1])
	return r.Answer, err
}

func TestWorkingsAreAsKept(t *testing.T) {
	var b strings.Builder
	for _, question := range questions {
		a, err := ask(t, question)
		require.NoError(t, err, question)
		fmt.Fprintf(&b, "%s\n", question)
		for _, f := range a.Figures {
			fmt.Fprintf(&b, "  = %s: %s (%s %v %s)\n", f.Label, f.Text, f.Key, f.Value, f.Unit)
		}
		for _, l := range a.Working {
			fmt.Fprintf(&b, "  %-14s %s\n", l.Label, l.Sum)
		}
		for _, n := range a.Notes {
			fmt.Fprintf(&b, "  note: %s\n", n)
		}
		b.WriteString("\n")
	}
	golden.File(t, "testdata/working.txt", b.String())
}

func TestImpossibleInputIsRefusedWithWhatToDo(t *testing.T) {
	var b strings.Builder
	for _, question := range impossible {
		a, err := ask(t, question)
		var refusal *reckon.Error
		if !assert.ErrorAs(t, err, &refusal, question) {
			continue
		}
		assert.NotEmpty(t, refusal.Hint, question)
		assert.Empty(t, a, "nothing is given beside a refusal: %s", question)
		assert.False(t, strings.Contains(refusal.Error(), "\n"), question)
		fmt.Fprintf(&b, "%s\n  %v\n", question, err)
	}
	golden.File(t, "testdata/refused.txt", b.String())
}
