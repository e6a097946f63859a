package usual_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/profile"
	"maltwright/check/usual"
	"maltwright/lang/model"
	"maltwright/lang/offer"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	v "maltwright/lang/vocabulary"
)

func of(grain, malt string) profile.Profile {
	return profile.Of(&model.Process{Make: model.Word{Text: malt}, Grain: &model.Grain{Species: model.Word{Text: grain}}})
}

func TestWhatIsUsualIsThatOfGrainAndMalt(t *testing.T) {
	fahrenheit := quantity.System{Fahrenheit: true, British: true}
	for _, c := range []struct {
		grain, malt string
		system      quantity.System
		asked       offer.Asked
		want, why   string
	}{
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Steep, Verb: "soak", Clause: "at", Place: "water"}, "12 to 15 °C", "12 to 15 °C is usual for the steep water of barley; above 16 °C it is warm for the grain"},
		{"barley", "pale", fahrenheit, offer.Asked{In: v.Repeat, Verb: "soak", Clause: "at"}, "54 to 59 °F", "54 to 59 °F is usual for the steep water of barley; above 60.8 °F it is warm for the grain"},
		{"sorghum", "pale", quantity.System{}, offer.Asked{In: v.Steep, Verb: "soak", Clause: "at"}, "25 to 30 °C", "25 to 30 °C is usual for the steep water of sorghum; above 30 °C it is warm for the grain"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Process, Verb: "steep", Clause: "to"}, "42 to 46 %", "42 to 46 % is usual for the moisture at steep-out of pale malt of barley"},
		{"wheat", "pale", quantity.System{}, offer.Asked{In: v.Process, Verb: "steep", Clause: "to"}, "41 to 45 %", "41 to 45 % is usual for the moisture at steep-out of pale malt of wheat"},
		{"barley", "munich", quantity.System{}, offer.Asked{In: v.Kiln, Verb: "cure", Clause: "at", Place: "air-on"}, "80 to 105 °C", "80 to 105 °C is usual for the cure of munich malt of barley"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Kiln, Verb: "cure", Clause: "for"}, "2 to 8 h", "2 to 8 h is usual for the cure of pale malt of barley"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Germinate, Verb: "allow"}, "4 to 7 days", "4 to 7 days is usual for the growing of pale malt of barley"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Wither, Verb: "turn", Clause: "every"}, "3 to 12 h", "3 to 12 h is usual for the time from turn to turn of barley"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Steep, Verb: "aerate", Clause: "for"}, "1 to 60 min", "1 to 60 min is usual for the air of each time of barley"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Process, Verb: "store", Clause: "for"}, "14 to 365 days", ""},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Germinate, Verb: "until", Measure: "acrospire"}, "0.5 to 1", ""},
		{"oats", "pale", quantity.System{}, offer.Asked{In: v.Process, Verb: "expect", Measure: "final moisture"}, "1.5 to 6 %", ""},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Germinate, Verb: "hold", Clause: "at", Place: "bed"}, "12 to 18 °C", "12 to 18 °C is usual for the growing bed of barley; above 20 °C growth goes wrong"},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.KilnFacts, Verb: "heater"}, "", ""},
		{"barley", "pale", quantity.System{}, offer.Asked{In: v.Kiln, Verb: "cure", Clause: "with", Beside: "airflow"}, "", ""},
	} {
		got := usual.Of(of(c.grain, c.malt), c.system)(c.asked)
		if c.want == "" {
			assert.Empty(t, got, "%v", c.asked)
			continue
		}
		if assert.Len(t, got, 1, "%v", c.asked) {
			assert.Equal(t, c.want, got[0].Range.String(), "%v", c.asked)
			if c.why != "" {
				assert.Equal(t, c.why, got[0].Why)
			}
		}
	}
}

// Steep water that schedules are published with is what is called usual, to within a degree.
func TestSteepWaterOfPublishedSchedulesIsUsual(t *testing.T) {
	files, err := filepath.Glob("../testdata/schedules/*.malt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	asked := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		house, _ := read.Load(filepath.Base(file), text, ".", nothing{})
		for _, p := range house.Processes {
			band := profile.Of(p).Water
			assert.Less(t, band.High, profile.Of(p).WarmWater+1e-9, file)
			for _, st := range model.Every[*model.Steep](p) {
				for _, s := range model.EveryStep(st.Steps) {
					if at := s.Warmth().At; at != nil && s.Kind() == model.SoakStep {
						asked++
						c := at.Mid() - quantity.ZeroCelsius
						assert.True(t, band.Low-1 <= c && c <= band.High+1, "%s: %.1f °C", file, c)
					}
				}
			}
		}
	}
	assert.Greater(t, asked, 25)
}

type nothing struct{}

func (nothing) Read(string) ([]byte, error) { return nil, os.ErrNotExist }
