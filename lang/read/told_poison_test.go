package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/vocabulary"
)

func TestWhatIsToldOfAPoisonStandsInTheFrame(t *testing.T) {
	const steps = " Soak 8 h, rest 8 h, soak 8 h. Sprout 5 days at 60 F. Cure at 180 F for 4 h."
	for said, want := range map[string]string{
		"The seed is dressed with pink fungicide.":             "treated yes }",
		"The seed was treated with a fungicide, wash it well.": "treated yes }",
		"Buy treated wheat seed, rinse off the dye.":           "treated yes }",
		"It is coated seed.":                                   "treated yes }",
		"Not treated, but the rest was dyed pink.":             "treated yes }",
		"The barley is untreated.":                             "treated no }",
		"Barley, not treated.":                                 "treated no }",
		"I don't know if the seed was treated.":                "treated unknown }",
		"Not sure whether it was dressed.":                     "treated unknown }",
		"Use treated water.":                                   "treated unknown }",
		"Barley with some mould and a bit of ergot.":           "ergot found; mould found }",
		"Barley, no mould and some ergot.":                     "ergot found; mould none }",
		"A few moldy kernels.":                                 "mould found }",
		"There was no ergot.":                                  "treated unknown; ergot none }",
		"Nobody has looked for ergot, and mould is not known.": "ergot unknown; mould unknown }",
		"Black horns in it.":                                   "ergot found }",
		"If mould shows on it, throw it out.":                  "mould unknown }",
		"Turn it well so it does not get mouldy.":              "mould unknown }",
		"The bag says that it is treated seed.":                "treated yes }",
	} {
		_, made := toldAs(t, said+steps)
		assert.Contains(t, made, want, said)
	}
}

func TestASentenceOnAPoisonThatIsNotUsedIsListed(t *testing.T) {
	for said, want := range map[string]string{
		"I don't know if the seed was treated.": "I don't know if the seed was treated",
		"If mould shows up throw it out.":       "If mould shows up throw it out",
		"Use treated water.":                    "Use treated water",
	} {
		hint, _ := toldAs(t, said+" Soak 8 h, rest 8 h.")
		assert.Contains(t, hint, `"`+want+`"`)
	}
}

func TestNoDoubtOrDenialIsReadAsALotWithoutPoison(t *testing.T) {
	for _, p := range vocabulary.Poisons {
		for _, said := range []string{"?", "no?", "not", "not known", "not yet known", "not sure", "don't know", "dont know", "do not know", "no idea", "dunno", "unsure", "maybe",
			"nobody knows", "cannot tell", "can't say", "never looked", "not tested", "not checked", "not clear", "no clue", "unknown yet", "not free of it", "not without", "not untreated", "none known",
			"no as far as I know", "probably not", "I think not", "I hope not", "not that I know", "could be", "might be"} {
			text := "grain \"lot\" {\n  species barley\n  " + p.Word + " " + said + "\n}\n"
			_, found := Load("x.malt", []byte(text), ".", nil)
			require.NotEmpty(t, found, text)
			for _, f := range found {
				assert.NotRegexp(t, `^(?:write|did you mean) (?:\w+ )?`+p.Not+`\b`, f.Hint, text)
				for _, o := range f.Offers {
					for _, e := range o.Edits {
						assert.NotRegexp(t, `\b`+p.Not+`\b[^#]*$`, e.New, text)
					}
				}
				for _, e := range f.Fixes {
					assert.NotRegexp(t, `^(?:\w+ )?`+p.Not+`\b`, e.New, text)
				}
			}
		}
	}
}
