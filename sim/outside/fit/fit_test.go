package main

import (
	"bytes"
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
	"maltwright/sim/outside/figure"
)

// once makes the fits for all tests.
var once = sync.OnceValues(solved)

func TestTheDocumentHasTheFits(t *testing.T) {
	list, err := once()
	require.NoError(t, err)
	var text bytes.Buffer
	require.NoError(t, write(&text, list))
	golden.Between(t, "../../../docs/model.md",
		"<!-- fits: begin (made by go test ./sim/outside/fit with MALTWRIGHT_UPDATE=1) -->\n", "<!-- fits: end -->\n", text.String()+"\n")
}

func TestTheCodeHasTheConstantsThatWereFitted(t *testing.T) {
	list, err := once()
	require.NoError(t, err)
	for _, s := range list {
		p, r := s.problem, s.result
		for i, c := range p.parameters {
			if !p.constant(i) {
				continue
			}
			half := 0.5 * math.Pow(10, -float64(c.digits))
			if !p.kept {
				assert.InDelta(t, r.values[i], c.code, half*1.01, "%s: %s", p.name, c.name)
			}
			assert.Less(t, r.low[i], c.code, c.name)
			assert.Greater(t, r.high[i], c.code, c.name)
		}
	}
}

// straight is a problem whose answer is known: of y = a + b·x at x = 0, 1, 2, three
// values with the error 0.1, drawn to nothing that counts.
func straight(y ...float64) *problem {
	p := &problem{name: "a line", parameters: []parameter{
		{name: "a", by: 1e3, digits: 3}, {name: "b", by: 1e3, digits: 3},
	}}
	for i, v := range y {
		x := float64(i)
		p.fitted = append(p.fitted, observation{Figure: figure.Figure{Accepted: figure.Within(v, 1)}, by: 0.1,
			model: func(p []float64) (float64, error) { return p[0] + p[1]*x, nil }})
	}
	return p
}

// The line by hand: b = (y2 − y0)/2, a = mean − b, with the errors 0.1·√(5/6) and
// 0.1/√2; of a problem that is linear the profile has them.
func TestAFitOfALineIsTheOneByHand(t *testing.T) {
	r, err := straight(1.0, 2.2, 2.8).solve()
	require.NoError(t, err)
	assert.InDelta(t, 1.1, r.values[0], 1e-4)
	assert.InDelta(t, 0.9, r.values[1], 1e-4)
	assert.InDelta(t, 6, r.sum, 1e-3, "(0.1² + 0.2² + 0.1²)/0.1²")
	for i, by := range []float64{0.1 * math.Sqrt(5.0/6), 0.1 / math.Sqrt2} {
		assert.InDelta(t, r.values[i]-by, r.low[i], 0.02*by, "low end of %d", i)
		assert.InDelta(t, r.values[i]+by, r.high[i], 0.02*by, "high end of %d", i)
	}
}
