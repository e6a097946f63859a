package figures_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/words"
	"maltwright/sim/seasons"
)

func track(batch, process, file string, days float64) curve.Track {
	took := ledger.Figure[answer.Seconds]{Value: answer.Seconds(days * 86400), Standing: seasons.Measured}
	short := ledger.Figure[answer.Seconds]{Value: took.Value / 10, Standing: seasons.Measured}
	return curve.Track{Batch: batch, Process: process, File: file, Total: took, Kiln: short, Moments: []curve.Moment{{Part: 1}, {At: 3600, Part: 1.2}}}
}

func TestBatchesOfOneNameAreToldApart(t *testing.T) {
	s := curve.Season{Tracks: []curve.Track{track("26-04", "Loft pale", "a.malt", 8), track("26-04", "Porch pale", "b.malt", 7), track("26-05", "Loft pale", "c.malt", 9),
		track("26-06", "Loft pale", "d.malt", 9), track("26-06", "Loft pale", "e.malt", 9)}}
	var names []string
	for _, l := range figures.Season(s, words.House{}).Panels[0].Lines {
		names = append(names, l.Name)
	}
	assert.Equal(t, []string{"26-04, Loft pale", "26-04, Porch pale", "26-05", "26-06, d.malt", "26-06, e.malt"}, names)
	assert.Equal(t, "5 batches of 2 processes", figures.Season(s, words.House{}).Sub)
}

func TestADayIsAsLongInEachPanelOfLengths(t *testing.T) {
	b := figures.Lengths(curve.Season{Tracks: []curve.Track{track("26-04", "Loft pale", "a.malt", 8), track("26-05", "Loft pale", "c.malt", 9)}})
	assert.Len(t, b.Groups, 2)
	for _, g := range b.Groups {
		assert.Equal(t, 9.0, g.Most, g.Name)
	}
}
