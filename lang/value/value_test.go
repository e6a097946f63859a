package value

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// terms reads the terms of a text.
func terms(t *testing.T, text string) []syntax.Term {
	t.Helper()
	tree, found := syntax.Parse(source.New("x", []byte("verb "+text)))
	require.Empty(t, found, text)
	require.Len(t, tree.Top.Statements, 1)
	return tree.Top.Statements[0].Terms
}

func amount(t *testing.T, text string) syntax.Amount {
	t.Helper()
	a, ok := terms(t, text)[0].(syntax.Amount)
	require.True(t, ok, text)
	return a
}

func TestARangeIsOfOneOfTheDimensionsThatAreWanted(t *testing.T) {
	share := []quantity.Dimension{quantity.Share, quantity.DryShare}
	for _, c := range []struct {
		text   string
		wanted []quantity.Dimension
		want   string // the range, or the kind of error and the end that is to blame
	}{
		{"43 to 45 %", share, "43 to 45 %"},
		{"45 %", share, "45 %"},
		{"45 to 43 %", share, "45 to 43 %"},
		{"5 lb 4 oz to 6 lb", []quantity.Dimension{quantity.Mass}, "5 lb 4 oz to 6 lb"},
		{"5 to 6 lb 4 oz", []quantity.Dimension{quantity.Mass}, "1: 5"},
		{"3", []quantity.Dimension{quantity.Time, quantity.Count}, "3"},
		{"4 % to 5 h", share, "1: 5 h"},
		{"4 % to 5 h", []quantity.Dimension{quantity.Share, quantity.Time}, "2: 5 h"},
		{"4 zork", share, "0: 4 zork"},
		{"4 to 5 zork", share, "0: 4 to 5 zork"},
		{"7 h", share, "1: 7 h"},
	} {
		r, err := Range(amount(t, c.text), c.wanted)
		got := r.String()
		if bad := (*Error)(nil); errors.As(err, &bad) {
			end := "verb " + c.text
			got = fmt.Sprintf("%d: %s", bad.Kind, end[bad.End.Start:bad.End.End])
			assert.NotEmpty(t, bad.Error(), c.text)
		}
		assert.Equal(t, c.want, got, c.text)
	}
}

func TestADifferenceOfTemperaturesIsReadWhereOneIsWanted(t *testing.T) {
	q := amount(t, "1.44 °F").Low
	apart, err := Quantity(q, []quantity.Dimension{quantity.TemperatureDifference})
	require.NoError(t, err)
	assert.InDelta(t, 0.8, apart.SI, 1e-12, "K")
	warm, err := Quantity(q, nil)
	require.NoError(t, err)
	assert.InDelta(t, (1.44-32)/1.8+273.15, warm.SI, 1e-9, "K")
}

func TestAFigureHasItsPlaceAndItsBound(t *testing.T) {
	places := []string{vocabulary.PlaceAirOn, vocabulary.PlaceMalt}
	for text, want := range map[string]string{
		"air-on 50 to 60 °C x": `air-on - "50 to 60 °C" 1`,
		"50 °C":                ` - "50 °C" 0`,
		"at  most 3":           ` at most "3" 0`,
		"≥ 3":                  ` at least "3" 0`,
		"malt below 30 °C":     `malt below "30 °C" 0`,
		"is chalky":            ` is "chalky" 0`,
		"oven 50 °C":           ` - "oven" 1`, // no place of this slot
	} {
		f, rest, ok := FigureOf(terms(t, text), places)
		require.True(t, ok, text)
		op := "-"
		if o := f.OpOf(); o != nil {
			op = o.String()
		}
		line, s := "verb "+text, f.Value.Range()
		assert.Equal(t, want, fmt.Sprintf("%s %s %q %d", f.Where, op, line[s.Start:s.End], len(rest)), text)
		assert.Equal(t, len("verb "), f.Span.Start, text)
		assert.Equal(t, s.End, f.Span.End, text)
	}
	for _, text := range []string{"", "air-on"} {
		_, rest, ok := FigureOf(terms(t, text), places)
		assert.False(t, ok, text)
		assert.Empty(t, rest, text)
	}
}

func TestAConditionIsPartedIntoItsTests(t *testing.T) {
	assert.Len(t, Joined(terms(t, "acrospire at least 3/4 and rub is chalky")), 2)
	parts := Joined(terms(t, "break and"))
	require.Len(t, parts, 2)
	assert.Empty(t, parts[1], "a test is missing")
}

func TestTwoWordsAreOneMeasureWhereTheyNameOne(t *testing.T) {
	for text, want := range map[string]string{
		"final moisture at most 5 %": "final moisture true 1",
		"moisture at most 5 %":       "moisture true 1",
		"rub chalky":                 "rub true 1",
		"finl moisture below 5 %":    "finl moisture false 1",
		"colour above 5":             "colour false 1",
		"break":                      "break true 0",
	} {
		m, ok := MeasuredBy(terms(t, text))
		require.True(t, ok, text)
		assert.Equal(t, want, fmt.Sprint(m.Name, " ", m.Measure != nil, " ", len(m.Rest)), text)
	}
	for _, text := range []string{"", "5 %"} {
		_, ok := MeasuredBy(terms(t, text))
		assert.False(t, ok, text)
	}
}

func TestTimesAreThoseThatAClockAndACalendarShow(t *testing.T) {
	word := func(text string) syntax.Word { return syntax.Word{Text: text} }
	for text, want := range map[string]int{"7:30": 7*3600 + 1800, "07:30": 7*3600 + 1800, "07:30:15": 7*3600 + 1815, "0:00": 0, "24:00": -1, "7:60": -1, "25:00": -1,
		"7 am": 7 * 3600, "7am": 7 * 3600, "7:30 PM": 19*3600 + 1800, "7.30 p.m.": 19*3600 + 1800, "12 am": 0, "12:15 am": 900, "12 pm": 12 * 3600,
		"7:30:15 pm": 19*3600 + 1815, "noon": 12 * 3600, "12 noon": 12 * 3600, "midnight": 0, "12 midnight": 0,
		"13 pm": -1, "0 am": -1, "7:60 pm": -1, "7:5 pm": -1, "7 noon": -1, "12:30 midnight": -1, "7": -1} {
		got, ok := Second(word(text))
		if !ok {
			got = -1
		}
		assert.Equal(t, want, got, text)
	}
	span, bad := SpanOfDay(terms(t, "06:30 to 24:00")[0].(syntax.Moment))
	assert.Nil(t, bad)
	assert.Equal(t, [2]int{6*3600 + 1800, 24 * 3600}, span)
	_, bad = SpanOfDay(terms(t, "06:30 to 25:00")[0].(syntax.Moment))
	require.NotNil(t, bad)
	assert.Equal(t, "25:00", bad.Clock.Text)
	_, ok := Date(word("2026-02-29"))
	assert.False(t, ok)
	for text, want := range map[string]string{"7:30": "07:30", "17:30": "17:30", "7 pm": "19:00", "7:30 am": "07:30", "12 am": "00:00", "13 pm": "13 pm", "7:77 pm": "7:77 pm"} {
		assert.Equal(t, want, ClockText(syntax.Stamp{Clock: word(text)}, false))
	}
	assert.Equal(t, "24:00", ClockText(syntax.Stamp{Clock: word("midnight")}, true), "the end of a span")
	dated := syntax.Stamp{Date: word("2026-03-06"), Clock: word("midnight")}
	assert.Equal(t, "midnight", ClockText(dated, false), "which of the two of a date stays open")
	assert.True(t, Between(dated))
	span, bad = SpanOfDay(terms(t, "6 am to midnight")[0].(syntax.Moment))
	assert.Nil(t, bad)
	assert.Equal(t, [2]int{6 * 3600, 24 * 3600}, span)
}
