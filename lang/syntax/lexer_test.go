package syntax

import (
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/vocabulary"
)

// tokens writes the tokens of a text as kind:value, one after another.
func tokens(t testing.TB, text string) string {
	names := map[lexer.TokenType]string{}
	for name, kind := range kindNames {
		names[kind] = name
	}
	lex, err := definition{kindNames}.Lex("x", strings.NewReader(text))
	require.NoError(t, err)
	var out []string
	for {
		tok, err := lex.Next()
		require.NoError(t, err)
		if tok.EOF() {
			return strings.Join(out, " | ")
		}
		assert.Equal(t, text[tok.Pos.Offset:tok.Pos.Offset+len(tok.Value)], tok.Value)
		out = append(out, names[tok.Type]+" "+tok.Value)
	}
}

func TestTokens(t *testing.T) {
	for text, want := range map[string]string{
		// "in" is inches where nothing follows that something could be in
		"soak 7 h in water":   "Word soak | Quantity 7 h | Clause in | Word water",
		"soak 7 in water":     "Word soak | Quantity 7 | Clause in | Word water",
		`kiln in "tray kiln"`: `Word kiln | Clause in | Text "tray kiln"`,
		"depth 9 in":          "Word depth | Quantity 9 in",
		"depth 9 in;":         "Word depth | Quantity 9 in | End ;",
		"depth 9 in # deep":   "Word depth | Quantity 9 in | Comment # deep",
		"depth 9 in to 12 in": "Word depth | Quantity 9 in | To to | Quantity 12 in",
		"depth 1 ft 9 in":     "Word depth | Quantity 1 ft 9 in",
		"at 9 in every 2 h":   "Clause at | Quantity 9 in | Clause every | Quantity 2 h",
		// ranges
		"14 to 17 °C":            "Quantity 14 | To to | Quantity 17 °C",
		"14-17 °C":               "Quantity 14 | To - | Quantity 17 °C",
		"14 - 17 °C":             "Quantity 14 | To - | Quantity 17 °C",
		"14–17 °C":               "Quantity 14 | To – | Quantity 17 °C",
		"14—17 °C":               "Quantity 14 | To — | Quantity 17 °C",
		"14 °C to 17 °C":         "Quantity 14 °C | To to | Quantity 17 °C",
		"-5 to -2 °C":            "Quantity -5 | To to | Quantity -2 °C",
		"at \u22125 °C":          "Clause at | Quantity \u22125 °C",
		"steep to moisture 43 %": "Word steep | Clause to | Word moisture | Quantity 43 %",
		"cool 2 h to malt 30 °C": "Word cool | Quantity 2 h | Clause to | Word malt | Quantity 30 °C",
		// dates and times
		"began 27.01.2026 07:15":                "Word began | Date 27.01.2026 | Clock 07:15",
		"began 27/01/2026, 6:45am":              "Word began | Date 27/01/2026, | Clock 6:45am",
		"began 2026/01/27 07.15":                "Word began | Date 2026/01/27 | Clock 07.15",
		"began Jan 27 2026 7h15":                "Word began | Date Jan 27 2026 | Clock 7h15",
		"began January 27th, 2026 at 7 am":      "Word began | Date January 27th, 2026 at | Clock 7 am",
		"began 20260127 0715":                   "Word began | Date 20260127 | Clock 0715",
		"began 20260127T0715":                   "Word began | Date 20260127 | Clock T0715",
		"began 2026-01-27T7.15":                 "Word began | Date 2026-01-27 | Clock T7.15",
		"began 27 Jan 2026 14 Uhr # x":          "Word began | Date 27 Jan 2026 | Clock 14 Uhr | Comment # x",
		"began 14:00 on 27 Jan 2026":            "Word began | Clock 14:00 on | Date 27 Jan 2026",
		"began noon on 27 Jan 2026":             "Word began | Clock noon on | Date 27 Jan 2026",
		"began 7 pm, Tue 27 Jan 2026":           "Word began | Clock 7 pm, | Date Tue 27 Jan 2026",
		"began 03/04/2026 07:00":                "Word began | Date 03/04/2026 | Clock 07:00",
		"turned at 27 Jan 7":                    "Word turned | Clause at | Date 27 Jan | Clock 7",
		"turned at 27.01. 07.15":                "Word turned | Clause at | Date 27.01. | Clock 07.15",
		"turned at 7h":                          "Word turned | Clause at | Clock 7h",
		"turned at 7 h":                         "Word turned | Clause at | Quantity 7 h",
		"turned at 0715 by \"AK\"":              `Word turned | Clause at | Clock 0715 | Clause by | Text "AK"`,
		"weighed 7.48 kg at 14.30 after soak 1": "Word weighed | Quantity 7.48 kg | Clause at | Clock 14.30 | Clause after | Word soak | Quantity 1",
		"weighed 7.48 kg on 27.01.2026":         "Word weighed | Quantity 7.48 kg | Clause on | Date 27.01.2026",
		"weighed at 14:00 7.3 kg":               "Word weighed | Clause at | Clock 14:00 | Quantity 7.3 kg",
		"weighed at 14:00 7,3 kg":               "Word weighed | Clause at | Clock 14:00 | Quantity 7,3 kg",
		"read bed at 17.2 °C at 14:00":          "Word read | Word bed | Clause at | Quantity 17.2 °C | Clause at | Clock 14:00",
		"turn 00at 0 2026-03-06":                "Word turn | Quantity 00 | Clause at | Clock 0 | Date 2026-03-06",
		"read bed at 17.30 °C":                  "Word read | Word bed | Clause at | Quantity 17.30 °C",
		"counted acrospire 1 2 at 7.30 of 100":  "Word counted | Word acrospire | Quantity 1 | Quantity 2 | Clause at | Clock 7.30 | Clause of | Quantity 100",
		"germination 97 % on 6 March 2026":      "Word germination | Quantity 97 % | Clause on | Date 6 March 2026",
		"away 24 Dec 2026 to 26 Dec 2026":       "Word away | Date 24 Dec 2026 | To to | Date 26 Dec 2026",
		"awake 6h30 to 22h":                     "Word awake | Clock 6h30 | To to | Clock 22h",
		"awake 6.30 - 22.30":                    "Word awake | Clock 6.30 | To - | Clock 22.30",
		"turn at 7.30 and 19.30":                "Word turn | Clause at | Clock 7.30 | Word and | Clock 19.30",
		"cure at 82.30 for 4 h":                 "Word cure | Clause at | Quantity 82.30 | Clause for | Quantity 4 h",
		"soak 7h15":                             "Word soak | Quantity 7h | Quantity 15",
		"dry 20260127":                          "Word dry | Quantity 20260127",
		"Jan 27 2026":                           "Word Jan | Quantity 27 | Quantity 2026",
		"may dry in may 5 h":                    "Word may | Word dry | Clause in | Word may | Quantity 5 h",
		"read bed 63 °F 9pm":                    "Word read | Word bed | Quantity 63 °F | Clock 9pm",
		"turned at 14:3O":                       "Word turned | Clause at | Stray 14:3O",
		"began 2026-03-06T07:00Z":               "Word began | Date 2026-03-06 | Clock T07:00Z",
		"began 2026-03-06 07:00+01:00":          "Word began | Date 2026-03-06 | Clock 07:00+01:00",
		"began at 2026-03-06 at 7:00":           "Word began | Date at 2026-03-06 at | Clock 7:00",
		"awake between 6:30 and 22:30":          "Word awake | Clock between 6:30 | To and | Clock 22:30",
		"awake 6:30 until 22:30":                "Word awake | Clock 6:30 | To until | Clock 22:30",
		"awake 6am-10pm":                        "Word awake | Clock 6am | To - | Clock 10pm",
		"away April 3 to April 6 2026":          "Word away | Date April 3 | To to | Date April 6 2026",
		"germinate until acrospire is 3/4":      "Word germinate | Clause until | Word acrospire | Bound is | Quantity 3/4",
		"turn at 7 am and 7 pm":                 "Word turn | Clause at | Clock 7 am | Word and | Clock 7 pm",
		// what people type
		"holds .5 l":               "Word holds | Quantity .5 l",
		"-.5 to .5 °C":             "Quantity -.5 | To to | Quantity .5 °C",
		"1 h .5 min":               "Quantity 1 h .5 min",
		"10½ lb":                   "Quantity 10½ lb",
		"10 ½lb to 11⅔ lb":         "Quantity 10 ½lb | To to | Quantity 11⅔ lb",
		"½–¾":                      "Quantity ½ | To – | Quantity ¾",
		"acrospire at least ¾ and": "Word acrospire | Bound at least | Quantity ¾ | Word and",
		"12.4.5 l":                 "Quantity 12.4 | Stray . | Quantity 5 l",
		"62 deg F until":           "Quantity 62 deg F | Clause until",
		"62 degrees for 2 h":       "Quantity 62 degrees | Clause for | Quantity 2 h",
		"62 to 64 ° F":             "Quantity 62 | To to | Quantity 64 ° F",
		"62 ° until":               "Quantity 62 ° | Clause until",
		"9 degrees C/h":            "Quantity 9 degrees C/h",
		"8 sq ft in \"x\"":         "Quantity 8 sq ft | Clause in | Text \"x\"",
		"144 sq in":                "Quantity 144 sq in",
		"8 square feet; x":         "Quantity 8 square feet | End ; | Word x",
		"2 cubic  feet at":         "Quantity 2 cubic  feet | Clause at",
		"144 in2":                  "Quantity 144 in2",
		"at 7 am":                  "Clause at | Clock 7 am",
		"at 2026-03-06 7:30pm":     "Clause at | Date 2026-03-06 | Clock 7:30pm",
		"at 7.30 P.M. after x":     "Clause at | Clock 7.30 P.M. | Clause after | Word x",
		"awake 7 am to 10 pm":      "Word awake | Clock 7 am | To to | Clock 10 pm",
		"awake 7 to 10 pm":         "Word awake | Clock 7 | To to | Clock 10 pm",
		"awake 7-10:30 pm":         "Word awake | Clock 7 | To - | Clock 10:30 pm",
		"awake 7 am to 10":         "Word awake | Clock 7 am | To to | Clock 10",
		"awake 7 am to 10 h":       "Word awake | Clock 7 am | To to | Quantity 10 h",
		"awake noon to midnight":   "Word awake | Clock noon | To to | Clock midnight",
		"noon 7 amber":             "Word noon | Quantity 7 amber",
		"8 to 10 h":                "Quantity 8 | To to | Quantity 10 h",
		// quantities of several parts and odd numbers
		"1h30min":               "Quantity 1h30min",
		"1 h 30 min":            "Quantity 1 h 30 min",
		"5 lb 4 oz":             "Quantity 5 lb 4 oz",
		"8 1/3 lb":              "Quantity 8 1/3 lb",
		"3/4":                   "Quantity 3/4",
		"12,4 %":                "Quantity 12,4 %",
		"8 9":                   "Quantity 8 | Quantity 9",
		"60 m3/h":               "Quantity 60 m3/h",
		"0.8 m²":                "Quantity 0.8 m²",
		"5 µm":                  "Quantity 5 µm",
		"20 % of 200 kernels":   "Quantity 20 % | Clause of | Quantity 200 kernels",
		"45 % dry basis":        "Quantity 45 % dry basis",
		"45 % dry  basis until": "Quantity 45 % dry  basis | Clause until",
		"45 % dry at malt":      "Quantity 45 % | Word dry | Clause at | Word malt",
		"45 % wet basis":        "Quantity 45 % wet basis",
		"62 °F":                 "Quantity 62 °F",
		"62 \xb0F":              "Quantity 62 \xb0F",
		"62 ºF":                 "Quantity 62 ºF",
		"7 h\u00a0in water":     "Quantity 7 h | Clause in | Word water",
		// dates and times of day
		"2026-03-06":       "Date 2026-03-06",
		"2026-03-06T07:00": "Date 2026-03-06 | Clock T07:00",
		"2026-03-06 07:00": "Date 2026-03-06 | Clock 07:00",
		"06:30 to 22:30":   "Clock 06:30 | To to | Clock 22:30",
		"06:30-22:30":      "Clock 06:30 | To - | Clock 22:30",
		"7:05:30":          "Clock 7:05:30",
		"2026 kg":          "Quantity 2026 kg",
		// bounds
		"at least 43 %": "Bound at least | Quantity 43 %",
		"at  most 43 %": "Bound at  most | Quantity 43 %",
		"at leastways":  "Clause at | Word leastways",
		">= 43 %":       "Bound >= | Quantity 43 %",
		"=> 43 %":       "Bound => | Quantity 43 %",
		"== 43 %":       "Bound == | Quantity 43 %",
		"<43 %":         "Bound < | Quantity 43 %",
		"≥ 43 %":        "Bound ≥ | Quantity 43 %",
		"rub is chalky": "Word rub | Bound is | Word chalky",
		"below 30 °C":   "Bound below | Quantity 30 °C",
		// names
		`"blue tub"`:    `Text "blue tub"`,
		"“blue tub”":    "Text “blue tub”",
		"„blue tub“":    "Text „blue tub“",
		`"a \"b\" c" x`: `Text "a \"b\" c" | Word x`,
		"\"open\nsoak":  "Text \"open | End \n | Word soak",
		`"open\`:        `Text "open\`,
		`"`:             `Text "`,
		// the rest
		"\ufeffsoak":         "Word soak",
		"a\r\nb\rc\nd":       "Word a | End \r\n | Word b | End \r | Word c | End \n | Word d",
		"{ } ; # x":          "Open { | Close } | End ; | Comment # x",
		"air-on and maître":  "Word air-on | Word and | Word maître",
		"12 °C, 13":          "Quantity 12 °C | Stray , | Quantity 13",
		"- x":                "Stray - | Word x",
		"°":                  "Stray °",
		"soak # long \t\r\n": "Word soak | Comment # long | End \r\n",
		"0to0":               "Quantity 0 | Word to0",
		"1m2to 8":            "Quantity 1m | Quantity 2 | To to | Quantity 8",
		"":                   "",
	} {
		assert.Equal(t, want, tokens(t, text), "%q", text)
	}
}

func TestClauseWordsAreKnownToTheLexer(t *testing.T) {
	require.NotEmpty(t, vocabulary.ClauseWords())
	for _, word := range vocabulary.ClauseWords() {
		assert.Equal(t, "Clause "+word, tokens(t, word), word)
		assert.Less(t, len(word), longestNotUnit-1, "takeLetters must see the end of it")
	}
}
