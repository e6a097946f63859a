package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
)

// Each stage by hand: what a step is given for is sure, what waits for something
// takes from its earliest time, or none, to its latest.
func TestStatedTimesAreTheSumOfTheSteps(t *testing.T) {
	for body, want := range map[string][2]float64{ // h
		`steep in "tub" { soak 7 h in water at 13 °C; rest 9 h in air at 14 °C }`:                                                               {16, 16},
		`steep in "tub" { repeat 3 times { soak 7 h in water at 13 °C; rest 9 h in air at 14 °C } }`:                                            {48, 48},
		`steep in "tub" { repeat at most 3 times until moisture at least 43 % { soak 7 h in water at 13 °C; rest 9 h in air at 14 °C } }`:       {7, 48},
		`steep in "tub" { soak in water at 13 °C until moisture at least 43 % allow 2 to 20 h }`:                                                {2, 20},
		`germinate on "tray" { hold bed at 15 °C; turn every 8 h; for 5 days }`:                                                                 {120, 120},
		`germinate on "tray" { hold bed at 15 °C; turn every 8 h; until acrospire at least 3/4; allow 4 to 7 days }`:                            {96, 168},
		`germinate on "tray" { hold bed at 12 °C for 2 days; hold bed at 15 °C; until acrospire at least 3/4; allow at most 7 days }`:           {0, 168},
		`wither on "tray" { air at 18 °C; until moisture at most 36 %; allow 4 to 30 h }`:                                                       {4, 30},
		`kiln in "kiln" { dry from air-on 50 to 60 °C over 4 h; gate moisture at most 10 % allow 0 to 6 h; cool to malt 30 °C allow 0 to 2 h }`: {4, 12},
		`kiln in "kiln" { dry at air-on 50 °C for 4 h; gate moisture at most 10 % }`:                                                            {4, math.Inf(1)},
		`deculm within 12 h`:                   {0, 24},
		`store in "drum" for at least 3 weeks`: {0, 0},
	} {
		h, _ := read.Load("t.malt", []byte(statedHouse+body+"\n}\n"), ".", nil)
		require.Len(t, h.Processes, 1)
		require.Len(t, h.Processes[0].Stages, 1, body)
		c := Case{Process: h.Processes[0]}
		least, most := c.stated()
		assert.InDelta(t, want[0], least/hour, 1e-9, "at least: %s", body)
		if math.IsInf(want[1], 1) {
			assert.True(t, math.IsInf(most, 1), "at most: %s", body)
			continue
		}
		assert.InDelta(t, want[1], most/hour, 1e-9, "at most: %s", body)
	}
}

const statedHouse = `grain "lot" { species barley; moisture 12 % }
vessel "tub" { holds 40 l }
floor "tray" { area 0.4 m2 }
kiln "kiln" { area 0.5 m2 }
process "p" {
make pale malt
from 5 kg of "lot"
`

func TestWordsForWhatMaltIsKeptIn(t *testing.T) {
	for text, want := range map[string][2]bool{ // open, sure
		"lidded drum":               {false, true},
		"open bin":                  {true, true},
		"open bin with its lid on":  {false, true},
		"bucket without lid":        {true, true},
		"bin, no lid":               {true, true},
		"drum, lid not on":          {false, true},
		"sack":                      {false, false},
		"paper bags":                {false, false},
		"sacks in a dry bin":        {false, true},
		"lined sacks":               {false, true},
		"unlined sacks":             {true, true},
		"hessian sacks, not sealed": {true, true},
		"never left open":           {false, true},
		"":                          {false, true},
		"ÖPEN Tönne":                {false, true},
	} {
		open, sure := openTo(text)
		assert.Equal(t, want, [2]bool{open, sure}, text)
	}
}
