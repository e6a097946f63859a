package read

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

var toldInEnglish = map[string][]string{
	"soak 8 h, rest 8 h, soak 6 h, rest 8 h\ngerminate 5 days at 60 °F, turn twice a day\ndry at 110 °F for 24 h, then 180 °F for 4 h": {
		"soak 8 h in water", "rest 8 h in air", "soak 6 h in water", "hold bed at 60 °F", "turn every 12 h", "for 5 days", "dry at air-on 110 °F for 24 h", "cure at air-on 180 °F for 4 h"},
	"Soak 8 hours, drain 8 hours, soak 8 hours.\nSprout for 5 days at 60F, turning every 8 hours.\nDry at 120F for a day, kiln at 180F for 4 hours.": {
		"soak 8 h in water", "rest 8 h in air", "hold bed at 60 °F", "turn every 8 h", "dry at air-on 120 °F for 1 day", "cure at air-on 180 °F for 4 h"},
	"Pale malt\n5 kg barley\n7 h water 13 °C\n9 h air\n7 h water\n5 days 15 °C\n24 h 50 °C\n4 h 82 °C": {
		"from 5 kg of", "soak 7 h in water at 13 °C", "rest 9 h in air", "hold bed at 15 °C", "for 5 days", "dry at air-on 50 °C for 24 h", "cure at air-on 82 °C for 4 h"},
	"My first malt: I take 10 lb of barley, soak it for 8 hours, let it drain for 8 hours and soak it again until it is at 44 % moisture.": {
		"from 10 lb of", "soak 8 h in water", "rest 8 h in air", "to moisture 44 %"},
	"1. Soak 7 hours at 13 °C\n2. Rest 9 hours\n3. Germinate 5 days\n4. Dry":                   {"soak 7 h in water at 13 °C", "rest 9 h in air", "for 5 days", "dry at air-on 50 °C for 24 h"},
	"# Pale malt\n\n## Steep\n- soak 7 h at 13 °C\n- rest 9 h\n\n## Kiln\n- dry 24 h at 50 °C": {"soak 7 h in water at 13 °C", "rest 9 h in air", "dry at air-on 50 °C for 24 h"},
}

func TestWhatIsToldInEnglishIsPutInAFrameThatReads(t *testing.T) {
	numbers := regexp.MustCompile(`\d+`)
	for text, wants := range toldInEnglish {
		_, found := Load("x.malt", []byte(text+"\n"), ".", nil)
		require.Len(t, found, 1, text)
		assert.Equal(t, noFrame.Name, found[0].Rule, text)
		assert.Contains(t, found[0].Hint, `process "My malt" {`, text)
		require.Len(t, found[0].Offers, 1, text)
		made := found[0].Offers[0].Edits[0].New
		for _, want := range wants {
			assert.Contains(t, made, want, text)
			assert.Contains(t, found[0].Hint, want, text)
		}
		for _, n := range numbers.FindAllString(text, -1) {
			assert.Contains(t, made, n, text)
		}
		for line := range strings.Lines(text) {
			assert.Contains(t, made, strings.TrimLeft(strings.TrimSpace(line), "# "), "every line stays, as a comment")
		}
		house, found := Load("x.malt", []byte(made), ".", nil)
		for _, f := range found {
			assert.Less(t, f.Severity, finding.Fault, "%s: %s\n%s", f.Rule, f.Message, made)
		}
		require.Len(t, house.Processes, 1)
		assert.False(t, house.Processes[0].Broken)
	}
}

func TestStatementsOfOneBlockAreFramedAsTheyAre(t *testing.T) {
	for text, head := range map[string]string{
		"soak 7 h in water at 13 °C\nrest 9 h in air at 14 °C # cold\n":                   "process \"My malt\" {\n  steep in \"my bucket\" {\n",
		"make pale malt\nfrom 6 kg of \"barley\"\nsteep { soak 7 h in water at 13 °C }\n": "process \"My malt\" {\n",
		"weighed 7.3 kg after soak 1\nweighed 8 kg after soak 2\n":                        "batch \"1\" of \"My malt\" {\n",
		"dry at air-on 50 °C for 24 h\ncure at air-on 82 °C for 4 h\n":                    "process \"My malt\" {\n  kiln in \"my oven\" {\n",
		"hold bed at 14 to 17 °C\nturn every 8 h\n":                                       "process \"My malt\" {\n  germinate on \"my tray\" {\n",
		"holds 25 l\nweighs 1.2 kg\n":                                                     "vessel \"my bucket\" {\n",
		"species barley\nmoisture 12 %\n":                                                 "grain \"my barley\" {\n",
	} {
		_, found := Load("x.malt", []byte(text), ".", nil)
		require.Len(t, found, 1, text)
		require.Equal(t, noFrame.Name, found[0].Rule, text)
		made := found[0].Offers[0].Edits[0].New
		assert.True(t, strings.HasPrefix(made, head), "%s", made)
		for line := range strings.Lines(text) {
			assert.Contains(t, made, strings.TrimSpace(line))
		}
		_, again := Load("x.malt", []byte(made), ".", nil)
		for _, f := range again {
			assert.NotEqual(t, noFrame.Name, f.Rule)
			assert.NotEqual(t, wordOutOfPlace.Name, f.Rule, made)
		}
	}
}

func TestWhatIsNoTaleIsNotFramed(t *testing.T) {
	for _, text := range []string{
		"vessel \"tub\" { holds 25 l }\nsoak 7 h\n", "process \"x\" soak 7 h\n", "x y\n", "# soak 8 h\n", "", "process 'x' {\n soak 7 h\n}\n",
		"batch \"26-03\" of \"x\" {\n weighed 7 kg\n", "grain Far field 2026 {\n soak 7 h\n}\n",
	} {
		_, found := Load("x.malt", []byte(text), ".", nil)
		for _, f := range found {
			assert.NotEqual(t, noFrame.Name, f.Rule, "%q", text)
		}
	}
}

func TestATableIsToldAsOne(t *testing.T) {
	for text, sep := range map[string]string{"step;hours;temperature\nsoak;7;13\nrest;9;14\n": "semicolons", "step\thours\nsoak\t7\n": "tabs", "step,hours\nsoak,7\nrest,9\n": "commas", "| step | hours |\n|---|---|\n| soak | 7 |\n": "bars"} {
		_, found := Load("x.malt", []byte(text), ".", nil)
		require.Len(t, found, 1, text)
		assert.Contains(t, found[0].Message, "with "+sep+" between its columns")
		assert.Contains(t, found[0].Message, "plain text")
		assert.Empty(t, found[0].Offers)
	}
}
