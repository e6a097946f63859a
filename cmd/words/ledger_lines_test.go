package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/ledger"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/seasons"
)

// By hand: 39 and 38 h are 38.5 h in the mean.
func TestSumsOfBatches(t *testing.T) {
	known := func(v float64) seasons.Figure { return seasons.Figure{Value: v, Standing: seasons.Measured} }
	reckoned := func(v float64) seasons.Figure { return seasons.Figure{Value: v, Standing: seasons.Reckoned} }
	none, over := seasons.Figure{}, seasons.Figure{Value: 1, Standing: seasons.Over}
	three, two := summaries[3], summaries[2]
	var metric, fahrenheit House
	fahrenheit.Fahrenheit = true
	kilograms := metric.Weights(6)
	for _, c := range []struct {
		what string
		sum  summary
		on   Scale
		all  []seasons.Figure
		want string
	}{
		{"mean", three[0], Times, []seasons.Figure{known(39 * 3600), known(38 * 3600), none}, "1 d 15 h"},
		{"lowest", three[1], Shares, []seasons.Figure{known(0.043), reckoned(0.047), known(0.05)}, "~4.3"},
		{"highest", three[2], kilograms, []seasons.Figure{known(4.97), known(5.02), known(5.04)}, "5.04"},
		{"of one", three[0], kilograms, []seasons.Figure{known(4.97), none, none}, ""},
		{"of none", three[1], kilograms, []seasons.Figure{none, none, none}, ""},
		{"with a bound", three[0], Times, []seasons.Figure{known(86400), known(86400), over}, ""},
		{"more", two[0], kilograms, []seasons.Figure{known(5), known(5.25)}, "+0.25"},
		{"less", two[0], metric.Warmth(), []seasons.Figure{known(13), known(12.6)}, "-0.4"},
		{"less by what is not shown", two[0], Times, []seasons.Figure{known(3600), known(3500)}, "-2 min"},
		{"a difference in °F has no offset", two[0], fahrenheit.Warmth(), []seasons.Figure{known(10), known(15)}, "+9.0"},
	} {
		assert.Equal(t, c.want, c.sum.cell(measure{scale: c.on}, c.all), c.what)
	}
}

// The moisture of bought green malt is not that of raw grain.
func TestTheMoistureOfTheLotStandsWhereItBelongs(t *testing.T) {
	shown := func(already string) (where []string) {
		b := ledger.Batch{Charge: 6, Written: &model.Process{Grain: &model.Grain{Already: model.Word{Text: already}}},
			Figures: ledger.Figures{RawMoisture: ledger.Figure[answer.Share]{Value: 0.44, Standing: seasons.Measured}}}
		for _, m := range linesOf(House{}, []ledger.Batch{b}) {
			if f := m.of(&b); f.Known() && f.Value == 0.44 {
				where = append(where, m.head())
			}
		}
		return where
	}
	assert.Equal(t, []string{"  raw grain, %"}, shown(""))
	assert.Equal(t, []string{"  moisture as bought, %"}, shown("green"))
}

func TestWeightsOfSmallAndLargeBatches(t *testing.T) {
	for _, c := range []struct {
		british   bool
		batch, kg float64
		want      string
	}{
		{false, 6, 5.02, "5.02 kg"}, {false, 6, 50.25, "50.2 kg"}, {false, 1000, 820.4, "820 kg"},
		{false, 0.9, 0.0836, "83.6 g"}, {false, 0.9, 0.836, "836 g"},
		{true, 6, 4.6, "10.1 lb"},
		{true, 0.3, 0.226796185, "8.00 oz"},
	} {
		scale := House{System: quantity.System{British: c.british}}.Weights(c.batch)
		assert.Equal(t, c.want, scale.Write(c.kg)+" "+scale.Unit)
	}
}
