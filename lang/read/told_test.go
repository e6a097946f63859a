package read

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
)

// toldAs loads a text that tells of a process, and gives the hint and the file that is offered, which must read.
func toldAs(t require.TestingT, text string) (hint, made string) {
	_, found := Load("x.malt", []byte(text), ".", nil)
	require.Len(t, found, 1, text)
	require.Equal(t, noFrame.Name, found[0].Rule, text)
	require.Len(t, found[0].Offers, 1, text)
	made = found[0].Offers[0].Edits[0].New
	_, again := Load("x.malt", []byte(made), ".", nil)
	for _, f := range again {
		require.Less(t, f.Severity, finding.Fault, "%s: %s\n%s", f.Rule, f.Message, made)
	}
	shown, _, _ := strings.Cut(strings.TrimPrefix(found[0].Hint, "put this in the place of the text: "), "; or let maltwright")
	_, again = Load("x.malt", []byte(shown), ".", nil)
	for _, f := range again {
		require.Less(t, f.Severity, finding.Fault, "%s: %s\n%s", f.Rule, f.Message, shown)
	}
	return found[0].Hint, made
}

// standsInOrder asserts that a text holds the parts in this order.
func standsInOrder(t require.TestingT, text string, parts ...string) {
	rest := text
	for _, p := range parts {
		_, after, ok := strings.Cut(rest, p)
		require.True(t, ok, "%q should stand, in its order, in\n%s", p, text)
		rest = after
	}
}

func TestNoStepOfWhatIsToldIsLost(t *testing.T) {
	for text, wants := range map[string][]string{
		"1. Steep barley for 8 hours\n2. Drain, air rest 8h\n3. Steep 8 hours again\n4. Air rest 8h\n5. Germinate 4-5 days at 60F\n6. Kiln 24h at 120, then 3 hours at 180\n": {
			"soak 8 h in water\n", "rest 8 h in air\n", "soak 8 h in water\n", "rest 8 h in air\n", "}", "hold bed at 60 °F\n", "for 4 days  # 4 to 5 days was said",
			"dry at air-on 120 °F for 24 h", "cure at air-on 180 °F for 3 h", "cool"},
		"Day 1: soak 8 hours, rest 9 hours.\nDay 2 - soak again 7 hrs, air rest 5 hrs, soak 6 hrs.\n": {
			"soak 8 h in", "rest 9 h in", "soak 7 h in", "rest 5 h in", "soak 6 h in", "}"},
		"Soak 8 h. Germinate until the acrospire is 3/4 of the kernel, about 5 days.": {"for 5 days", "until acrospire at least 3/4"},
		"Soak 8 h. Germinate 4 to 6 days until the acrospires show 3/4":               {"allow 4 to 6 days", "until acrospire at least 3/4"},
		"Soak 8 h, drain for two hours, then soak for another 6-hour stretch.":        {"soak 8 h", "rest 2 h", "soak 6 h"},
		"8 h soak, 9 h rest, 7 h soak at 12 to 14 °C and 6 h rest":                    {"soak 8 h in water\n", "rest 9 h", "soak 7 h in water at 12 to 14 °C", "rest 6 h"},
		"Soak 8 h. Sprout 2 days at 15 °C then 3 days at 18 °C":                       {"hold bed at 15 °C for 2 days", "hold bed at 18 °C for 3 days", "for 120 h"},
		"Soak 8 h. Dry at 40-50 °C until 10 % moisture, 60 °C for 3 h, 1 h 30 min at 80 °C": {
			"dry at air-on 40 to 50 °C until moisture at most 10 %", "dry at air-on 60 °C for 3 h", "cure at air-on 80 °C for 1 h 30 min"},
		"Soak 8 h. Kiln at 170 F for 3-5 hrs":         {"dry at air-on 120 °F for 24 h  # not said", "cure at air-on 170 °F for 3 h  # 3 to 5 h was said"},
		"Soak 7,5 h at 13,5 °C. Wither 12 h at 20 °C": {"soak 7.5 h in water at 13.5 °C", "for 12 h; air at 20 °C"},
		"Steep:\n  8 h at 13 °C\nKiln:\n  24 h at 50": {"soak 8 h in water at 13 °C", "dry at air-on 50 °C for 24 h"},
	} {
		_, made := toldAs(t, text)
		_, process, _ := strings.Cut(made, "\nprocess ")
		standsInOrder(t, process, wants...)
	}
}

func TestWhatOfATaleIsNotUsedIsNamed(t *testing.T) {
	for text, wants := range map[string][]string{
		"Day 1: soak 8 h. Day 2: rest 8 h":                                                  {`"Day 1"`},
		"Soak 8 h in 20 l of water, bed 10 cm deep":                                         {`8 h", `, `20 l`, `bed 10 cm`},
		"Soak 8 h. Drain at 7:00 am":                                                        {`at 7:00 am`},
		"Soak 8 h. Germinate until rootlets are 1.5 times the length":                       {"until rootlets are 1.5 times the length"},
		"Soak 8 h. Dry 4 h at 50 °C until crunchy":                                          {"until crunchy"},
		"Soak 8 h, sprinkle with 1,200 g":                                                   {"1,200"},
		"Soak 8 h. Kiln 24 h at 120":                                                        {"a guess: 120 °F"},
		"Soak 8 h. Kiln 4 h at 180 F, don't exceed 200 F":                                   {"don't exceed 200 F"},
		"Soak 8 h. Kiln 4 to 5 hours at 180 F":                                              {"the lower is written: 4 to 5 hours"},
		"Soak 8 h. Germinate 5 days. Soak 3 h once more. Use 12 kernels of it for the test": {"Soak 3 h once more", "12"},
	} {
		hint, _ := toldAs(t, text)
		for _, want := range wants[min(len(wants)-1, strings.Count(wants[0], `8 h", `)):] {
			assert.Contains(t, hint, want, text)
		}
	}
}

// drawnStep is a step in words, with its numbers as they must stand in the process.
func drawnStep(t *rapid.T, n *int, forms []string, low, high int, unit string) (said, value string) {
	number := rapid.IntRange(low, high).Draw(t, "number")
	*n++
	units := map[string][]string{
		"h": {" h", "h", " hours", " hrs", "-hour", " hr.", " Hours"}, "days": {" days", " d", "-day"}, "°C": {" °C", "°C", "C", " C", " deg C", " degrees C"}}[unit]
	value = fmt.Sprintf("%d %s", number, unit)
	if number == 1 && unit == "days" {
		value = "1 day"
	}
	return fmt.Sprintf(rapid.SampledFrom(forms).Draw(t, "form"), fmt.Sprint(number)+rapid.SampledFrom(units).Draw(t, "unit")), value
}

func TestEachNumberOfADrawnScheduleStandsInItsOrder(t *testing.T) {
	soaks := []string{"soak %s", "Soak for %s", "steep it for %s", "soak again %s", "Steep %s again", "%s soak", "soak for another %s", "%s in water", "put it under water, soaking %s"}
	rests := []string{"rest %s", "air rest %s", "Drain, air rest %s", "let it drain for %s", "%s rest", "drain and rest %s", "%s in air"}
	odd := []string{"in a pot of 17 inch", "stir with 19 spoons", "look at 6:45", "at day 23 or so", "check after 2.5 nights", "until 37 kernels of it chit", "keep 11 dB"}
	rapid.Check(t, func(t *rapid.T) {
		var said, wants, named []string
		n := 0
		add := func(text string) { said = append(said, text) }
		if rapid.Bool().Draw(t, "charge") {
			add("Take 7.3 kg of barley")
			wants = append(wants, "from 7.3 kg")
		}
		wants = append(wants, "steep in")
		for k := rapid.IntRange(1, 3).Draw(t, "soaks"); k > 0; k-- {
			text, value := drawnStep(t, &n, soaks, 2, 20, "h")
			add(text)
			wants = append(wants, "soak "+value)
			text, value = drawnStep(t, &n, rests, 2, 20, "h")
			add(text)
			wants = append(wants, "rest "+value)
			if rapid.IntRange(0, 2).Draw(t, "odd") == 0 {
				o := rapid.SampledFrom(odd).Draw(t, "what")
				add(o)
				named = append(named, o)
			}
		}
		text, days := drawnStep(t, &n, []string{"germinate %s", "sprout for %s", "let it grow %s"}, 3, 8, "days")
		at, bed := drawnStep(t, &n, []string{" at %s", ", at %s"}, 11, 19, "°C")
		add(text + at)
		wants = append(wants, "germinate on", "hold bed at "+bed, "for "+days)
		for k := rapid.IntRange(0, 2).Draw(t, "dries"); k > 0; k-- {
			text, long := drawnStep(t, &n, []string{"dry %s", "Kiln for %s", "dehydrate %s"}, 2, 30, "h")
			at, warm := drawnStep(t, &n, []string{" at %s", " @ %s"}, 34, 66, "°C")
			add(text + at)
			wants = append(wants, "dry at air-on "+warm+" for "+long)
		}
		text, long := drawnStep(t, &n, []string{"cure %s", "Kiln for %s", "%s"}, 2, 6, "h")
		at, warm := drawnStep(t, &n, []string{" at %s", " at about %s"}, 70, 90, "°C")
		add(text + at)
		wants = append(wants, "cure at air-on "+warm+" for "+long)

		var b strings.Builder
		for i, s := range said {
			if i > 0 {
				b.WriteString(rapid.SampledFrom([]string{", ", ".\n", "; ", "\n", ", then ", "\n- "}).Draw(t, "between"))
			}
			b.WriteString(s)
		}
		hint, made := toldAs(t, b.String())
		_, process, _ := strings.Cut(made, "\nprocess ")
		standsInOrder(t, process, wants...)
		for _, o := range named {
			for _, w := range strings.Fields(o) {
				if strings.ContainsAny(w, "0123456789") {
					require.Contains(t, hint, w, b.String())
				}
			}
		}
		require.Equal(t, strings.Count(strings.Join(wants, "\n"), "soak "), strings.Count(process, "  soak "), b.String()+process)
		require.Equal(t, strings.Count(strings.Join(wants, "\n"), "rest "), strings.Count(process, "  rest "), b.String()+process)
	})
}
