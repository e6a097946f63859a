package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTheGrainAndTheMaltOfATaleStandInTheFrame(t *testing.T) {
	const steps = " Soak 6 h, rest 10 h, soak 6 h. Germinate 4 days at 60 F. Cure at 175 F for 3 h."
	for said, wants := range map[string][]string{
		"5 lb of wheat.":               {`grain "my wheat" { species wheat;`, `from 5 lb of "my wheat"`, "make pale malt  # not said"},
		"Malt 5 lb rye:":               {"species rye;"},
		"Oat malt.":                    {"species oats;"},
		"Spelt for bread.":             {"species spelt;"},
		"Munich malt, 10 lb barley.":   {"make munich malt\n", "species barley;"},
		"Vienna malt from wheat.":      {"make vienna malt\n", "species wheat;"},
		"A pils of barley.":            {"make pilsner malt\n"},
		"Pale wheat malt.":             {"make pale malt\n", "species wheat;"},
		"Barley, with some rye in it.": {"species barley;", "Not used below: rye\n"},
	} {
		_, made := toldAs(t, said+steps)
		for _, want := range wants {
			assert.Contains(t, made, want, said)
		}
	}
}

func TestDryBetweenSoaksIsAnAirRest(t *testing.T) {
	const end = " Sprout 5 days at 60 F. Dry at 120 F for 24 h. Cure at 180 F for 4 h."
	for said, wants := range map[string][]string{
		"Soak 8 h, 16 h dry, soak 8 h.":                                {"soak 8 h", "rest 16 h in air", "soak 8 h"},
		"Soak 8 h wet, 16 h dry, 8 h wet of 10 lb barley.":             {"soak 8 h", "rest 16 h in air", "soak 8 h"},
		"Steep: 8 h wet at 55F, 16 h dry, 8 h wet, 12 h dry, 4 h wet.": {"soak 8 h in water at 55 °F", "rest 16 h", "soak 8 h", "rest 12 h", "soak 4 h"},
		"Soak 8 h, dry rest 16 h, soak 6 h.":                           {"soak 8 h", "rest 16 h", "soak 6 h"},
		"Soak 8 h, leave dry for 16 h, soak 6 h.":                      {"soak 8 h", "rest 16 h", "soak 6 h"},
		"Soak 8 h. Drain 16 h. Soak 6 h, then leave it dry 7 h.":       {"soak 8 h", "rest 16 h", "soak 6 h", "rest 7 h"},
	} {
		_, made := toldAs(t, said+end)
		standsInOrder(t, made, append(append([]string{"steep in"}, wants...), "}", "hold bed at 60 °F", "for 5 days", "kiln in", "{\n    dry at air-on 120 °F for 24 h", "cure at air-on 180 °F for 4 h\n    cool")...)
	}
}

func TestARampThatIsToldIsARise(t *testing.T) {
	for said, wants := range map[string][]string{
		"ramp from 120 F to 160 F over 6 h; hold 160 F 2 h; ramp to 170 F in 2 h": {
			"dry from air-on 120 to 160 °F over 6 h", "at air-on 160 °F for 2 h", "cure from air-on 160 to 170 °F over 2 h"},
		"Dry from 120 to 140 F over 6 hours. Cure at 180 F for 4 h": {"dry from air-on 120 to 140 °F over 6 h", "cure at air-on 180 °F for 4 h"},
	} {
		_, made := toldAs(t, "Soak 8 h, rest 8 h. Sprout 5 days at 60 F. "+said)
		standsInOrder(t, made, wants...)
	}
}
