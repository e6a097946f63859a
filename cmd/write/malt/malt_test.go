package malt_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
	"maltwright/cmd/write/malt"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

func learnt() lessons.Result {
	lot := `the "far" field`
	uptake := lessons.Factor{Factor: "uptake", Of: &lot, Estimate: lessons.Estimate[answer.Number]{Value: 1.0523, Error: 0.0371, Known: true}}
	growth := lessons.Factor{Factor: "growth", Estimate: lessons.Estimate[answer.Number]{Value: 0.9, Error: 0.3}}
	thermometer := &lessons.Estimate[answer.Kelvin]{Value: -0.69, Error: 0.12, Known: true}
	return lessons.Result{Batches: []lessons.Batch{{Batch: "a", Process: "pale"}, {Batch: "b", Process: "pale"}}, Replaces: []string{"old"},
		Factors: []lessons.Factor{growth, uptake}, Thermometer: thermometer,
		House: &lessons.House{Name: "Loft", Factors: []lessons.Factor{uptake}, Thermometer: thermometer}, Seat: lessons.Seat{Uses: []string{"loft.malt"}}}
}

const house = `house "Loft" {
  uptake      1.052 error 0.037 of "the \"far\" field"
  thermometer -0.69 °C error 0.12 °C
}
`

func TestTheFileSaysWhatItIsFrom(t *testing.T) {
	text := malt.Lessons(learnt(), words.House{})
	assert.Equal(t, `# Learnt from a and b of pale.
# Left out, since the readings tell too little of it: growth.
# In place of house old, of which nothing was used.
use "loft.malt"

`+house, string(text))
	tree, found := syntax.Parse(source.New("learnt.malt", text))
	require.Empty(t, found)
	assert.Equal(t, string(text), string(layout.Write(tree)), "it is laid out")
	assert.Equal(t, house, string(malt.House(*learnt().House, words.House{})))
}

func TestABlockSaysHowBatchesDifferAndOnHowManyItRests(t *testing.T) {
	growth := lessons.Factor{Factor: "growth", Estimate: lessons.Estimate[answer.Number]{Value: 1.0712, Error: 0.0301, Scatter: new(answer.Number(0.0834)), Batches: 6, Before: 6, Known: true}}
	h := lessons.House{Name: "Loft", Factors: []lessons.Factor{growth}, Thermometer: &lessons.Estimate[answer.Kelvin]{Value: 0.5, Error: 0.1, Batches: 2, Known: true}}
	assert.Equal(t, "house \"Loft\" {\n  growth      1.071 error 0.030 scatter 0.083 batches 12\n  thermometer 0.50 °C error 0.10 °C batches 2\n}\n", string(malt.House(h, words.House{})))
	r := learnt()
	r.From = new("Loft")
	assert.Contains(t, string(malt.Lessons(r, words.House{})), "# It goes on from house Loft, of older batches.\n")
}

func TestWhatBelongsInsideAFileSaysSo(t *testing.T) {
	r, in := learnt(), ""
	r.Seat = lessons.Seat{Inside: &in}
	assert.Contains(t, string(malt.Lessons(r, words.House{})), "kilns: the file of the\n# process.\n")
}

func TestWithoutABlockNothingIsWritten(t *testing.T) {
	r := learnt()
	r.House = nil
	assert.Empty(t, malt.Lessons(r, words.House{}))
}
