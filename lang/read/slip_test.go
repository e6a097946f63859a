package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// A hint that guesses a slip of unit or point offers to write it, and never does so unasked.
func TestGuessedSlipsAreOffered(t *testing.T) {
	for text, want := range map[string][]string{
		"grain \"A\" {\n  species barley\n  moisture 1.24 %\n}": {"12.4 %"},
		"site \"S\" {\n  air 62 to 68 °C\n}":                    {"62 to 68 °F"},
		"kiln \"K\" {\n  reaches 40 °C\n}":                      nil,
	} {
		_, found := Load("x.malt", []byte(text), ".", nil)
		var offers []finding.Offer
		hint := ""
		for _, f := range found {
			if len(f.Offers) > 0 {
				offers, hint = f.Offers, f.Hint
				assert.Empty(t, f.Fixes, text)
			}
		}
		require.Len(t, offers, len(want), text)
		for i, o := range offers {
			assert.Equal(t, want[i], o.Says)
			assert.Contains(t, hint, o.Says)
			e := o.Edits[0]
			mended := text[:e.Place.Start] + e.New + text[e.Place.End:]
			_, after := Load("x.malt", []byte(mended), ".", nil)
			for _, f := range after {
				assert.NotEqual(t, "out-of-range", f.Rule, mended)
			}
		}
	}
}

func TestSlipIsOfferedOnlyWhereTheValueStandsAlone(t *testing.T) {
	at := func(text string) source.Place {
		return source.Place{File: source.New("x", []byte(text)), Span: source.Span{Start: 0, End: len(text)}}
	}
	written, ok := between("62", "62", "°C")
	require.True(t, ok)
	for text, start := range map[string]int{"62 °C": 0, "bed 62 °C": 4, "at most 62 °C": 8} {
		offers := slipOffers(at(text), written, "62 °F")
		require.Len(t, offers, 1, text)
		assert.Equal(t, start, offers[0].Edits[0].Place.Start, text)
	}
	for _, text := range []string{"50 to 62 °C", "50-62 °C", "162 °C", "62°C", ""} {
		assert.Empty(t, slipOffers(at(text), written, "62 °F"), text)
	}
	assert.Empty(t, slipOffers(source.Place{}, written, "62 °F"))
}
