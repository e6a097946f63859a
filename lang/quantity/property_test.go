package quantity

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyNumber draws a number as it may be written.
func anyNumber() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.StringMatching(`[0-9]{1,7}`), rapid.StringMatching(`[0-9]{1,5}\.[0-9]{1,6}`),
		rapid.StringMatching(`[0-9]{1,3}/[1-9][0-9]?`), rapid.StringMatching(`[0-9]{1,3} [1-7]/[89]`),
		rapid.StringMatching(`\.[0-9]{1,6}`), rapid.StringMatching(`[0-9]{0,3} ?[½⅓⅔¼¾⅛⅜⅝⅞]`))
}

// anyParts draws the parts of a quantity of one part, or of several with whole
// numbers before the last.
func anyParts() *rapid.Generator[[]Part] {
	return rapid.Custom(func(t *rapid.T) []Part {
		u := rapid.SampledFrom(unitTable).Draw(t, "unit")
		sign := ""
		if u.Offset == 0 && u.Dimension != Temperature {
			sign = rapid.SampledFrom([]string{"", "-", "\u2212"}).Draw(t, "sign")
		}
		if rapid.Bool().Draw(t, "compound") {
			if pair := smallerThan(u); pair != nil {
				whole := rapid.StringMatching(`[0-9]{1,5}`).Draw(t, "whole")
				s := rapid.SampledFrom(pair).Draw(t, "smaller unit")
				most := int(u.Factor/s.Factor*0.999) * 10
				rest := float64(rapid.IntRange(0, min(most, 1e6)).Draw(t, "tenths")) / 10
				if rest*s.Factor < u.Factor*0.999 {
					return []Part{{sign + whole, u.Name}, {fmt.Sprintf("%.1f", rest), s.Name}}
				}
			}
		}
		return []Part{{sign + anyNumber().Draw(t, "number"), u.Name}}
	})
}

func smallerThan(u Unit) (list []Unit) {
	for _, s := range unitTable {
		if s.Dimension == u.Dimension && s.Factor < u.Factor && u.Dimension.row().compound >= 0 {
			list = append(list, s)
		}
	}
	return list
}

func TestWhatIsPrintedReadsBackAsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q, err := Make(anyParts().Draw(t, "parts")...)
		require.NoError(t, err)
		again, err := Parse(q.String())
		require.NoError(t, err, q.String())
		assert.Equal(t, q.SI, again.SI)
		assert.Equal(t, q.Dimension, again.Dimension)
		assert.Equal(t, q.String(), again.String())
	})
}

func TestWhatLikePrintsReadsBackWithinItsDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q, err := Make(anyParts().Draw(t, "parts")...)
		require.NoError(t, err)
		last := q.lastUnit()
		si := rapid.Float64Range(0, 1e5).Draw(t, "in the last unit") * last.Factor
		printed := q.Like(si)
		again, err := Parse(printed)
		if si < 1e-9 || q.Dimension == Temperature && err != nil {
			return // "-273 °C" for 0.3 K rounds past absolute zero
		}
		require.NoError(t, err, printed)
		assert.Equal(t, q.Dimension, again.Dimension)
		assert.InDelta(t, si, again.SI, q.printedStep(si)*0.5000001+1e-9*si, "%s like %g is %s", q, si, printed)
	})
}

// printedStep is the worth in SI of the last digit that Like looks at.
func (q *Quantity) printedStep(si float64) float64 {
	u := q.lastUnit()
	places := u.sensible(q.inUnit(si, u))
	number := q.first.number
	if n := len(q.more); n > 0 {
		places, number = q.Dimension.row().compound, q.more[n-1].number
	}
	return u.Factor / math.Pow10(max(places, decimalsOf(number)))
}

func TestAsGoesThereAndBack(t *testing.T) {
	pairs := map[Dimension]Dimension{Temperature: TemperatureDifference, Share: DryShare, DryShare: Share, Number: Count, Count: Number}
	rapid.Check(t, func(t *rapid.T) {
		q, err := Make(anyParts().Draw(t, "parts")...)
		require.NoError(t, err)
		to, ok := pairs[q.Dimension]
		if !ok || q.Dimension == Share && q.SI >= 0.999 || q.Dimension == DryShare && q.SI <= -0.999 {
			_, err := q.As(q.Dimension)
			require.NoError(t, err)
			return
		}
		there, err := q.As(to)
		require.NoError(t, err)
		require.Equal(t, to, there.Dimension)
		if there.Dimension == Share && there.SI > 0.999 {
			return // 1 − w has too few digits left to come back
		}
		back, err := there.As(q.Dimension)
		require.NoError(t, err)
		// Near the end of either scale 1 − w and 1 + X lose up to three digits.
		assert.InDelta(t, q.SI, back.SI, 1e-9*max(1, math.Abs(q.SI)))
		assert.Equal(t, q.String(), back.String())
	})
}

func TestARangeHoldsItsEndsAndWhatLiesBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyParts().Draw(t, "parts")[:1]
		other := []Part{{anyNumber().Draw(t, "other"), parts[0].Unit}}
		r, err := Between(parts, other)
		if err != nil {
			var e *Error
			require.ErrorAs(t, err, &e)
			require.Equal(t, UpsideDown, e.Kind)
			r = Range{r.High, r.Low}
		}
		between := rapid.Float64Range(0, 1).Draw(t, "share")
		si := r.Low.SI + between*(r.High.SI-r.Low.SI)
		assert.True(t, r.Contains(r.Low.SI))
		assert.True(t, r.Contains(r.High.SI))
		assert.True(t, r.Contains(si))
		low, _, _ := strings.Cut(r.String(), " to ")
		assert.True(t, strings.HasPrefix(r.Low.String(), low))
	})
}

func TestPlainDecimalsReadAsTheLanguageOfTheMachineReadsThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,9}(\.[0-9]{1,9})?`).Draw(t, "text")
		fast, ok := plainDecimal(text)
		slow, okSlow := parseDecimal(text)
		require.True(t, okSlow)
		if ok {
			assert.Equal(t, slow, fast, text)
		}
	})
}
