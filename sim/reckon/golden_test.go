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

// ask puts a question and gives the working: its kind, the quantities, then one behind tare or lost.
func ask(t require.TestingT, question string) ([]reckon.Step, error) {
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
		return r.Working, err
	case "target":
		r, err := reckon.Target(reckon.Start{Weight: q[0], Moisture: q[1]}, q[2], maybe(t, lost))
		return r.Working, err
	case "weight":
		r, err := reckon.Weight(q[0], reckon.Start{Weight: q[1], Moisture: q[2]}, maybe(t, lost))
		return r.Working, err
	case "basis":
		r, err := reckon.Basis(q[0])
		return r.Working, err
	case "yield":
		r, err := reckon.Yield(reckon.Start{Weight: q[0], Moisture: q[1]}, reckon.Start{Weight: q[2], Moisture: q[3]})
		return r.Working, err
	}
	r, err := reckon.Germination(q[0], q[1])
	return r.Working, err
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
