package founding

import (
	"bytes"
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
)

// drawn draws an answer to a question: what is usual, a choice, or a value within what makes sense.
func drawn(t *rapid.T, q Question) string {
	if q.Usual != "" && rapid.IntRange(0, 3).Draw(t, q.Key+" is known") == 0 {
		return DontKnow
	}
	switch q.Kind {
	case OneOf:
		return q.Choices[rapid.IntRange(0, len(q.Choices)-1).Draw(t, q.Key)].Word
	case Text:
		return strings.TrimSpace(rapid.StringMatching(`[A-Za-zäéØ][A-Za-z0-9 ,.'äéØ-]{0,38}`).Draw(t, q.Key))
	case Hours:
		return rapid.SampledFrom([]string{"06:00 to 22:00", "5 am to 9 pm", "22:00 to 06:00", "06:00 to 08:00 and 18:00 to 23:00", "12:00 to 16:30", "always"}).Draw(t, q.Key)
	case Count:
		return rapid.SampledFrom([]string{"96 of 100", "194/200", "40 of 50", "20 of 100", "500 of 500"}).Draw(t, q.Key)
	}
	usual, err := quantity.Parse(strings.Split(q.Usual, " to ")[0])
	times := rapid.SampledFrom([]float64{0.2, 0.5, 0.8, 1, 1.3, 2, 5}).Draw(t, q.Key)
	if q.check != nil && q.Kind == Span { // what a dryer reaches
		return rapid.SampledFrom([]string{"35 to 70 °C", "30 to 50 °C", "80 to 110 °C", "95 to 160 °F", "170 to 550 °F", "20 to 95 °C"}).Draw(t, q.Key+" spans")
	}
	one := func(times float64) string {
		if err != nil || q.Usual == None {
			return nice(times*map[quantity.Dimension]float64{quantity.Mass: 1, quantity.Power: 300, quantity.Length: 400}[q.of], q.Unit)
		}
		if usual.Dimension == quantity.Number || q.of == quantity.Temperature {
			return strings.TrimSpace(nice(quantityOf(q.Unit, 8+times*12), q.Unit))
		}
		return nice(usual.SI*times, q.Unit)
	}
	if q.Kind == Span {
		return one(times) + " to " + one(times*1.5)
	}
	return one(times)
}

// quantityOf is a number of a unit in SI.
func quantityOf(unit string, n float64) float64 {
	one, _ := quantity.Parse("1 " + unit)
	return one.SI * n
}

// answered draws answers to all questions. What is refused is asked again as not known.
func answered(t *rapid.T, there There) Answers {
	a := Answers{}
	for {
		q, more := Next(a, there)
		if !more {
			return a
		}
		taken, err := q.Take(drawn(t, q))
		if err != nil {
			require.IsType(t, &Refusal{}, err)
			if taken, err = q.Take(DontKnow); err != nil {
				taken = "50 g"
				if wet, err := quantity.Parse(a["sample wet"]); err == nil {
					taken = nice(wet.SI*0.88, "g")
				}
			}
		}
		a[q.Key] = taken
	}
}

// stands tells whether what was typed stands in the files: numbers with their units, and names.
func stands(t *rapid.T, a Answers, there There, files []File) {
	text := ""
	for _, f := range files {
		for _, line := range strings.Split(string(f.Text), "\n") {
			text += strings.Join(strings.Fields(strings.Trim(line, "# ")), " ") + " "
		}
	}
	for _, q := range Asked(a, there) {
		v := a[q.Key]
		if v == DontKnow || v == None || !slices.Contains([]Kind{Amount, Span, Text}, q.Kind) {
			continue
		}
		require.Contains(t, text, v, "%s: %s", q.Key, v)
	}
}

// first writes by the first plan: what a search makes of it is for the table, and for long
// studies.
func first(t *rapid.T, a Answers, there There) Result {
	r, err := write(context.Background(), a, there, golden.Long())
	require.NoError(t, err)
	return r
}

func TestWhateverIsAnsweredReadsAndIsTidy(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := answered(t, There{})
		r := first(t, a, There{})
		for _, f := range r.Files {
			tidyText(t, f)
		}
		stands(t, a, There{}, r.Files)
		for _, f := range r.Report.Findings {
			if f.Severity >= finding.Caution {
				require.NotEmpty(t, r.WhyNot)
			}
		}
	})
}

func TestWhateverIsAddedLeavesTheBytesThatStood(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		begun := first(t, answered(t, There{}), There{})
		there := Among(begun.Files, nil)
		for range map[bool]int{false: 1, true: 3}[golden.Long()] {
			a := answered(t, there)
			r := first(t, a, there)
			stands(t, a, there, r.Files)
			for _, f := range r.Files {
				tidyText(t, f)
				require.True(t, bytes.HasPrefix(f.Text, f.Was))
				require.Equal(t, there.text(f.Name), f.Was)
				there = Among(replaced(there.Files, f), nil)
			}
		}
	})
}

// replaced are files of which one is written.
func replaced(files []File, now File) (list []File) {
	for _, f := range files {
		if f.Name != now.Name {
			list = append(list, f)
		}
	}
	return append(list, File{Name: now.Name, Text: now.Text})
}
