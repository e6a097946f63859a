package figures

import (
	"slices"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// Drivers is what drives the spread of each total: how much of it goes with each thing that is not known. It has no
// group where nothing does, or no spread was asked for.
func Drivers(d outlook.Drivers, h words.House) chart.Bars {
	b := chart.Bars{Title: "What the spread comes from"}
	for _, g := range []struct {
		name string
		list []outlook.Driver
	}{
		{"moisture at steep-out", d.SteepOutMoisture}, {"total time", d.Total}, {"final moisture", d.FinalMoisture},
		{"malt", d.Malt}, {"yield", d.Yield}, {"enzymes kept", d.Diastatic},
	} {
		group := chart.BarGroup{Name: g.name, Unit: words.Shares.Unit, Most: 100}
		for _, x := range g.list {
			group.Bars = append(group.Bars, chart.Bar{Name: words.Unknown(x), Value: words.Shares.Shown(float64(x.Share)), Text: words.Part(x.Share)})
		}
		switch n := len(b.Groups); {
		case len(group.Bars) == 0:
		case n > 0 && slices.Equal(b.Groups[n-1].Bars, group.Bars): // as malt and yield of one charge
			b.Groups[n-1].Name += " and " + g.name
		default:
			b.Groups = append(b.Groups, group)
		}
	}
	if len(b.Groups) > 0 {
		b.Note = []string{"A bar is the part of a spread that goes with one thing that is not known; what is missing of the whole is several of them together, or chance."}
	}
	return b
}
