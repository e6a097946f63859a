// Package sample holds charts for tests of what draws them. Their figures are made by formulas; no batch had them.
package sample

import (
	"math"
	"time"

	"maltwright/cmd/chart"
)

const (
	hour = 3600.0
	day  = 24 * hour
)

// Began is when the charts with a clock begin: 07:00 on a Thursday in Berlin.
func Began() time.Time {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		zone = time.FixedZone("CET", 3600)
	}
	return time.Date(2026, 3, 12, 7, 0, 0, 0, zone)
}

func stages() []chart.Span {
	return []chart.Span{
		{From: 0, To: 46 * hour, Name: "steep"},
		{From: 46 * hour, To: 6.2 * day, Name: "growth"},
		{From: 6.2 * day, To: 6.8 * day, Name: "withering"},
		{From: 6.8 * day, To: 7.6 * day, Name: "kiln"},
	}
}

// nights are from 22 to 6 o'clock.
func nights(n int) (list []chart.Span) {
	for i := range n {
		from := 15*hour + float64(i)*day
		list = append(list, chart.Span{From: from, To: from + 8*hour})
	}
	return list
}

// moisture is the course of a made-up batch, %.
func moisture(at float64) float64 {
	switch h := at / hour; {
	case h < 46:
		return 12.4 + 32.6*(1-math.Exp(-h/14))
	case h < 149:
		return 43.8 - 0.012*(h-46)
	case h < 163:
		return 42.6 - 1.2*(h-149)
	default:
		return 4 + 21.8*math.Exp(-(h-163)/6)
	}
}

// course samples a function n times between two times.
func course(from, to float64, n int, f func(float64) float64) (at, value []float64) {
	for i := range n {
		t := from + (to-from)*float64(i)/float64(n-1)
		at, value = append(at, t), append(value, f(t))
	}
	return at, value
}

// Forecast is moisture and temperature of a process, with what is likely and a gate.
func Forecast() chart.Chart {
	at, middle := course(0, 7.6*day, 366, moisture)
	var low, high []float64
	for i, m := range middle {
		wide := 0.4 + 1.6*at[i]/(7.6*day)
		low, high = append(low, math.Max(m-wide, 2.5)), append(high, m+wide)
	}
	grainAt, grain := course(0, 7.6*day, 300, func(t float64) float64 {
		switch h := t / hour; {
		case h < 46:
			return 14 + 1.5*math.Sin(h/6)
		case h < 149:
			return 16 + 2*math.Sin(h/12)
		default:
			return math.Min(20+(h-149)*1.9, 82)
		}
	})
	air := chart.Line{Name: "air on", Role: chart.Second, Step: true,
		At:    []float64{149 * hour, 155 * hour, 163 * hour, 172 * hour, 178 * hour, 7.6 * day},
		Value: []float64{30, 38, 50, 65, 82, 82}}
	return chart.Chart{
		Title: "Pale malt of spring barley", Sub: "forecast of 6 kg, begun Thu 12 Mar at 07:00",
		Start: Began(), From: 0, To: 7.6 * day, Nights: nights(8), Stages: stages(),
		Panels: []chart.Panel{
			{Name: "moisture", Unit: "%", Places: 1,
				Bands: []chart.Band{{Name: "80 of 100 batches, and the middle one", Role: chart.First, At: at, Low: low, Middle: middle, High: high}},
				Gates: []chart.Gate{{Value: 43.5, From: 20 * hour, To: 46 * hour, Name: "steeped out: 43.5 %"}, {Value: 4.5, From: 6.8 * day, To: 7.6 * day, Name: "dry: 4.5 %"}}},
			{Name: "temperature", Unit: "°C", Places: 1, Tall: 0.8,
				Lines: []chart.Line{{Name: "grain", Role: chart.First, At: grainAt, Value: grain}, air}},
		},
		Note: []string{"Shaded: from 22:00 to 06:00."},
	}
}

// UnderWay is a batch of which three days have been.
func UnderWay() chart.Chart {
	c := Forecast()
	now := 3*day + 7*hour
	c.Now, c.Title, c.Sub = &now, "Batch 26-03", "Pale malt of spring barley, as of Sun 15 Mar at 14:00"
	p := &c.Panels[0]
	for i, t := range []float64{0, 8, 16, 24, 33, 46, 60, 79} {
		q := chart.Point{At: t * hour, Value: moisture(t*hour) + 0.8*math.Sin(float64(7*i)), Error: 0.9, Name: "moisture"}
		if i == 4 {
			q.Value, q.Doubted = 30.5, true
		}
		p.Points = append(p.Points, q)
	}
	return c
}

// Season is batches over one another, each from its start.
func Season() chart.Chart {
	c := chart.Chart{Title: "Season 2026", Sub: "moisture of eight batches, each from its first soak", Since: "the first soak", From: 0, To: 8 * day}
	p := chart.Panel{Name: "moisture", Unit: "%", Places: 1}
	for i := range 8 {
		end := (7 + 0.12*float64(i)) * day
		at, value := course(0, end, 200, func(t float64) float64 { return moisture(t*7.6*day/end) + 0.5*float64(i%3) })
		p.Lines = append(p.Lines, chart.Line{Name: "26-0" + string(rune('1'+i)), Role: chart.Role(i), At: at, Value: value})
	}
	c.Panels = []chart.Panel{p}
	return c
}

// Bed is the bed of a kiln by depth and time, and its top, middle and bottom below it.
func Bed() chart.Chart {
	f := &chart.Field{Name: "moisture of the bed", Unit: "%", Places: 0}
	for d := range 21 {
		f.Depth = append(f.Depth, 2*float64(d))
	}
	for i := range 121 {
		f.At = append(f.At, float64(i)*hour/6)
	}
	wet := func(depth, at float64) float64 { return 4 + 40/(1+math.Exp((at/hour-3-depth/4)/1.1)) }
	for _, d := range f.Depth {
		row := make([]float64, len(f.At))
		for i, t := range f.At {
			row[i] = wet(d, t)
		}
		f.Value = append(f.Value, row)
	}
	layers := chart.Panel{Name: "moisture", Unit: "%", Places: 1, Tall: 0.8, Most: 50}
	for i, l := range []struct {
		name  string
		depth float64
	}{{"top", 40}, {"middle", 20}, {"bottom", 0}} {
		at, value := course(0, 20*hour, 121, func(t float64) float64 { return wet(l.depth, t) })
		layers.Lines = append(layers.Lines, chart.Line{Name: l.name, Role: chart.Role(i), At: at, Value: value})
	}
	return chart.Chart{Title: "The bed in the kiln", Start: Began().Add(163 * time.Hour), To: 20 * hour,
		Nights: []chart.Span{{From: 20*hour - 10*hour, To: 18 * hour}},
		Panels: []chart.Panel{{Name: "height over the floor", Unit: "cm", Places: 0, Field: f, Tall: 1.2}, layers}}
}

// Drivers is what a spread comes from.
func Drivers() chart.Bars {
	return chart.Bars{Title: "What drives the spread", Sub: "share of the variance, of 200 forecasts", Groups: []chart.BarGroup{
		{Name: "end of kilning", Unit: "%", Most: 100, Bars: []chart.Bar{
			{Name: "outside air", Value: 46, Error: 6}, {Name: "rate of water uptake of the grain", Value: 31, Error: 5}, {Name: "draught of the chimney", Value: 12, Error: 4}, {Name: "scale", Value: 1, Error: 2}}},
		{Name: "yield, change a standard deviation more", Unit: "kg", Places: 2, Bars: []chart.Bar{
			{Name: "raw moisture", Value: -0.06}, {Name: "respiration", Value: -0.03}, {Name: "charge", Value: 0.09}}}}}
}
