package chart_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart"
)

// laid draws a chart, and asks what is asked of every drawing.
func laid(t *testing.T, c chart.Chart, width float64) *record {
	t.Helper()
	d := c.Lay(chart.Options{Width: width}, chart.Sans{})
	r := drawn(d)
	require.Empty(t, trouble(d, r))
	return r
}

func (r *record) saying() (list []string) {
	for _, w := range r.texts {
		list = append(list, w.text)
	}
	return list
}

// of are the lines of an ink and a width.
func (r *record) of(ink chart.Ink, width float64) (list [][]chart.XY) {
	for i, p := range r.pens {
		if p.Ink == ink && math.Abs(p.Width-width) < 1e-9 {
			list = append(list, r.lines[i])
		}
	}
	return list
}

func count[T comparable](list []T, one T) (n int) {
	for _, x := range list {
		if x == one {
			n++
		}
	}
	return n
}

// one is a chart of a panel, of a day.
func one(p chart.Panel) chart.Chart {
	return chart.Chart{Title: "chart", To: day, Panels: []chart.Panel{p}}
}

func rising(name string, role chart.Role) chart.Line {
	return chart.Line{Name: name, Role: role, At: []float64{0, day}, Value: []float64{0, 100}}
}

func TestAChartWithoutPointsSaysSo(t *testing.T) {
	assert.Contains(t, laid(t, one(chart.Panel{Name: "grain"}), 390).saying(), "no figures")
	assert.Contains(t, laid(t, one(chart.Panel{Name: "grain", Lines: []chart.Line{{Name: "a", At: []float64{0}, Value: []float64{math.NaN()}}}}), 900).saying(), "no figures")
	laid(t, chart.Chart{}, 390)
}

func TestOnePointIsADot(t *testing.T) {
	c := chart.Chart{Start: time.Unix(0, 0).UTC(), Panels: []chart.Panel{{Lines: []chart.Line{{At: []float64{hour}, Value: []float64{20}}}}}}
	assert.Equal(t, []chart.Shape{chart.Disc}, laid(t, c, 390).shapes)
}

func TestWhatIsNotKnownBreaksALine(t *testing.T) {
	l := chart.Line{At: []float64{0, hour, 2 * hour, 3 * hour, 4 * hour}, Value: []float64{1, 2, math.NaN(), 2, 1}}
	assert.Len(t, laid(t, one(chart.Panel{Lines: []chart.Line{l}}), 900).of(chart.First.Ink(), 2), 2)
}

func TestALineIsCutWhereTheAxisEnds(t *testing.T) {
	c := one(chart.Panel{Least: 0, Most: 100, Lines: []chart.Line{{At: []float64{-day, 2 * day}, Value: []float64{0, 90}}}})
	line := laid(t, c, 900).of(chart.First.Ink(), 2)
	require.Len(t, line, 1)
	ends := line[0]
	grid := laid(t, c, 900).of(chart.Frame, 1)
	foot, top := 0.0, math.Inf(1)
	for _, g := range grid {
		for _, p := range g {
			foot, top = math.Max(foot, p.Y-4), math.Min(top, p.Y)
		}
	}
	assert.InDelta(t, 0.30, (foot-ends[0].Y)/(foot-top), 0.01, "a third of the way, at 30")
	assert.InDelta(t, 0.60, (foot-ends[1].Y)/(foot-top), 0.01)
}

func TestAStepHoldsUntilTheNext(t *testing.T) {
	l := chart.Line{Step: true, At: []float64{0, 12 * hour, day}, Value: []float64{10, 50, 50}}
	line := laid(t, one(chart.Panel{Lines: []chart.Line{l}}), 900).of(chart.First.Ink(), 2)
	require.Len(t, line, 1)
	require.Len(t, line[0], 4)
	assert.Equal(t, line[0][0].Y, line[0][1].Y)
	assert.Equal(t, line[0][1].X, line[0][2].X)
	assert.Less(t, line[0][2].Y, line[0][1].Y)
}

func TestWhatIsForetoldIsThinnerAndTheAxisBelowWhatHasBeenIsHeavy(t *testing.T) {
	c := one(chart.Panel{Lines: []chart.Line{rising("", chart.First)}})
	now := 6 * hour
	c.Now = &now
	r := laid(t, c, 900)
	been, foretold, axis := r.of(chart.First.Ink(), 2), r.of(chart.First.Ink(), 1.2), r.of(chart.Today, 3)
	require.Len(t, been, 1)
	require.Len(t, foretold, 1)
	require.Len(t, axis, 1)
	assert.Equal(t, been[0][1], foretold[0][0])
	assert.InDelta(t, been[0][1].X, axis[0][1].X, 1e-9)
	assert.Subset(t, r.saying(), []string{"so far", "now, 6 h", "foretold"})
}

func TestADoubtedPointIsACrossInARingAndOthersAreHollow(t *testing.T) {
	r := laid(t, one(chart.Panel{Points: []chart.Point{{At: hour, Value: 1}, {At: 2 * hour, Value: 2, Error: 0.5}, {At: 3 * hour, Value: 2, Doubted: true}}}), 900)
	assert.Equal(t, 2, count(r.shapes, chart.Cross), "one in the key")
	assert.Equal(t, 2, count(r.shapes, chart.Ring))
	assert.Subset(t, r.saying(), []string{"measured", "in doubt"})
	assert.Len(t, r.of(chart.First.Ink(), 1.25), 3, "an error bar has two ends")
}

// A slip of the pen of ten times as much does not press the curve to the foot.
func TestAPointInDoubtThatLiesFarOffStandsAtTheEndOfTheAxisWithItsValue(t *testing.T) {
	p := chart.Panel{Name: "weight", Unit: "kg", Places: 1, Lines: []chart.Line{rising("", chart.First)}, Points: []chart.Point{{At: hour, Value: 1010, Doubted: true, Error: 3}, {At: 2 * hour, Value: 130, Doubted: true}}}
	said := laid(t, one(p), 900).saying()
	assert.Subset(t, said, []string{"1010.0 kg", "140"})
	assert.NotContains(t, said, "1000")
	alone := chart.Panel{Points: p.Points[1:]}
	assert.Contains(t, laid(t, one(alone), 900).saying(), "130", "where there is nothing else it is what the axis is of")
	p.Points[0].Doubted = false
	assert.Contains(t, laid(t, one(p), 900).saying(), "1000", "one that is not in doubt does")
}

func TestNightsLieUnderAllAndHaveNoName(t *testing.T) {
	c := one(chart.Panel{Lines: []chart.Line{rising("", chart.First)}})
	c.Nights = []chart.Span{{From: -hour, To: hour, Name: "night"}, {From: 15 * hour, To: 23 * hour}, {From: 2 * day, To: 3 * day}}
	r := laid(t, c, 390)
	assert.Equal(t, 2, count(r.boxes, chart.Fill{Ink: chart.Night}), "two lie on the axis")
	assert.NotContains(t, r.saying(), "night")
}

func TestAGateIsADashedLineWithItsWords(t *testing.T) {
	r := laid(t, one(chart.Panel{Lines: []chart.Line{rising("", chart.First)}, Gates: []chart.Gate{{Value: 43, From: 6 * hour, To: 12 * hour, Name: "moisture at least 43 %"}, {Value: 80, Name: "all along"}}}), 390)
	var dashed int
	for _, p := range r.pens {
		if p.Ink == chart.Level && p.Dash != nil {
			dashed++
		}
	}
	assert.Equal(t, 2, dashed)
	assert.Subset(t, r.saying(), []string{"moisture at least 43 %", "all along"})
}

func TestNamesOfStagesAreCutOrLeftOutAndTakeASecondRow(t *testing.T) {
	c := one(chart.Panel{Lines: []chart.Line{rising("", chart.First)}})
	c.Stages = []chart.Span{{To: 10 * hour, Name: "steep"}, {From: 10 * hour, To: 11 * hour, Name: "withering"}, {From: 11 * hour, To: 12 * hour, Name: "kilning with the fan"}, {From: 12 * hour, To: day, Name: "rest"}}
	r := laid(t, c, 390)
	assert.Subset(t, r.saying(), []string{"steep", "withering", "rest"})
	assert.NotContains(t, r.saying(), "kilning with the fan", "no room in either row")
	at := slices.IndexFunc(r.texts, func(w written) bool { return w.text == "withering" })
	above := slices.IndexFunc(r.texts, func(w written) bool { return w.text == "steep" })
	assert.Greater(t, r.texts[at].y0, r.texts[above].y1)
}

// On a desk names stand at the ends of lines, in their order; on a phone, and of lines that end early, in a key.
func TestNamesOfLinesStandWhereThereIsRoom(t *testing.T) {
	p := chart.Panel{Name: "moisture", Unit: "%", Lines: []chart.Line{rising("bottom", chart.Third), rising("top", chart.First), rising("middle", chart.Second)}}
	place := func(r *record, text string) written {
		at := slices.IndexFunc(r.texts, func(w written) bool { return w.text == text })
		require.GreaterOrEqual(t, at, 0, text)
		return r.texts[at]
	}
	desk := laid(t, one(p), 900)
	assert.Greater(t, place(desk, "top").y0, place(desk, "bottom").y1-1, "of one place they stand in the order in which they were given")
	assert.Greater(t, place(desk, "top").x0, 700.0)
	phone := laid(t, one(p), 390)
	assert.Less(t, place(phone, "top").y1, place(phone, "100").y1)
	p.Lines[0].At = []float64{0, hour}
	early := laid(t, one(p), 900)
	assert.Less(t, place(early, "top").x0, 400.0)
}

func TestOnANightWhenTheClockIsChangedTheHoursAreThoseOfTheClock(t *testing.T) {
	c := one(chart.Panel{Lines: []chart.Line{rising("", chart.First)}})
	c.Start, c.To = time.Date(2026, 3, 28, 21, 0, 0, 0, zone(t, "Europe/Berlin")), 12*hour
	r := laid(t, c, 900)
	assert.Contains(t, r.saying(), "01:00")
	assert.NotContains(t, r.saying(), "02:00")
	assert.Contains(t, r.saying(), "03:00")
	assert.Contains(t, r.saying(), "Sun 29 Mar")
}

func TestDaysThatAreNarrowAreWrittenShortOrNotAll(t *testing.T) {
	c := one(chart.Panel{Lines: []chart.Line{rising("", chart.First)}})
	c.Start, c.To = time.Date(2026, 3, 12, 7, 0, 0, 0, time.UTC), 12*day
	assert.Contains(t, laid(t, c, 900).saying(), "Fri 13")
	phone := laid(t, c, 390).saying()
	assert.Subset(t, phone, []string{"13", "14", "23", "March 2026"})
	c.To = 40 * day
	assert.Subset(t, laid(t, c, 900).saying(), []string{"13 Mar", "20 Mar", "27 Mar", "3 Apr"})
	c.To = 20 * 60
	assert.Subset(t, laid(t, c, 390).saying(), []string{"07:05", "07:10", "07:15", "Thu 12 Mar"})
}

func TestAPanelIsTallEnoughForTheNamesOfItsLines(t *testing.T) {
	var p chart.Panel
	for i := range 6 {
		p.Lines = append(p.Lines, rising("line "+string(rune('a'+i)), chart.Role(i)))
	}
	p.Tall = 0.3
	r := laid(t, one(p), 900)
	for i := range 6 {
		assert.Contains(t, r.saying(), "line "+string(rune('a'+i)))
	}
}
