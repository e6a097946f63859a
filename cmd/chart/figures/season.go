package figures

import (
	"fmt"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// told is how many batches have a line of their own; older ones are grey.
const told = 6

const day = 86400.0

// Season is batches over each other, from the first soak of each: what was weighed, as a part of the raw grain,
// the moisture by that, and how warm the bed was. The last six have a colour each. It has no panel where nothing
// was read.
func Season(s curve.Season, h words.House) chart.Chart {
	c := chart.Chart{Title: "Batches of the season, one over the other", Sub: seasonSub(s), Since: words.Beginning(false)}
	weight := chart.Panel{Name: "weight", Unit: "% of the raw grain", Places: 0}
	moisture := chart.Panel{Name: "moisture", Unit: words.Shares.Unit, Places: 1}
	bed := chart.Panel{Name: "bed", Unit: h.Warmth().Unit, Places: 1}
	names := called(s)
	for i, t := range s.Tracks {
		role, name := track(names, i)
		read(&weight, t, name, role, words.Shares, func(m curve.Moment) float64 { return float64(m.Part) })
		read(&moisture, t, name, role, words.Shares, func(m curve.Moment) float64 { return float64(m.Moisture) })
		read(&bed, t, name, role, h.Warmth(), func(m curve.Moment) float64 { return float64(m.Bed) })
		c.To = max(c.To, float64(t.Moments[len(t.Moments)-1].At))
	}
	c.Note = append(c.Note, "Lines join what was read. A moisture is that of a weight, by the dry matter that the forecast of the batch has left.")
	if n := len(s.Tracks) - told; n > 0 {
		c.Note = append(c.Note, fmt.Sprintf("Grey is what is older: %s.", words.List(names[:n])))
	}
	return with(nil, c, weight, moisture, bed)
}

// track is the role of the i-th of the batches, and its name, which only the last have beside their lines.
func track(names []string, i int) (chart.Role, string) {
	n := len(names)
	if i < n-told {
		return chart.Quiet, ""
	}
	return chart.Role(i - max(0, n-told)), names[i]
}

// seasonSub says how many batches there are, and of which process or how many.
func seasonSub(s curve.Season) string {
	said, processes := words.Many(len(s.Tracks), "batch", "batches"), map[string]bool{}
	for _, t := range s.Tracks {
		processes[t.Process] = true
	}
	switch n := len(processes); n {
	case 0:
		return said
	case 1:
		return said + " of " + words.Safe(s.Tracks[0].Process)
	default:
		return fmt.Sprintf("%s of %d processes", said, n)
	}
}

// called names the batches, each so that no other is called the same: by its name alone, or by its process or
// its file with it.
func called(s curve.Season) []string {
	names := make([]string, len(s.Tracks))
	for _, more := range []func(curve.Track) string{
		func(curve.Track) string { return "" }, func(t curve.Track) string { return t.Process }, func(t curve.Track) string { return t.File },
	} {
		count := map[string]int{}
		for _, n := range names {
			count[n]++
		}
		for i, t := range s.Tracks {
			if count[names[i]] > 1 || names[i] == "" {
				names[i] = words.Joined(", ", words.Safe(t.Batch), words.Safe(more(t)))
			}
		}
	}
	return names
}

// read puts what was read of a batch into a panel: a line that joins it.
func read(p *chart.Panel, t curve.Track, name string, role chart.Role, s words.Scale, of func(curve.Moment) float64) {
	l := chart.Line{Name: name, Role: role}
	for _, m := range t.Moments {
		if v := s.Shown(of(m)); known(v) {
			l.At, l.Value = append(l.At, float64(m.At)), append(l.Value, v)
			p.Points = append(p.Points, chart.Point{At: float64(m.At), Value: v, Name: name, Role: role})
		}
	}
	if len(l.At) > 0 {
		p.Lines = append(p.Lines, l)
	}
}

// Lengths is how long the stages of batches took.
func Lengths(s curve.Season) chart.Bars {
	b, names, most := chart.Bars{Title: "How long the batches took", Sub: seasonSub(s)}, called(s), 0.0
	for _, g := range []struct {
		name string
		of   func(*curve.Track) ledger.Figure[answer.Seconds]
	}{
		{"steep", func(t *curve.Track) ledger.Figure[answer.Seconds] { return t.Steep }},
		{"growth", func(t *curve.Track) ledger.Figure[answer.Seconds] { return t.Floor }},
		{"kiln", func(t *curve.Track) ledger.Figure[answer.Seconds] { return t.Kiln }},
		{"all of it", func(t *curve.Track) ledger.Figure[answer.Seconds] { return t.Total }},
	} {
		group := chart.BarGroup{Name: g.name, Unit: "d", Places: 1}
		for i := range s.Tracks {
			if f := g.of(&s.Tracks[i]); f.Plain().Known() {
				group.Bars = append(group.Bars, chart.Bar{Name: names[i], Value: float64(f.Value) / day, Text: words.Lasting(f.Value)})
				most = max(most, float64(f.Value)/day)
			}
		}
		if len(group.Bars) > 0 {
			b.Groups = append(b.Groups, group)
		}
	}
	for i := range b.Groups { // one scale, so that a day is as long in each
		b.Groups[i].Most = most
	}
	return b
}
