package follow

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

// record is a record of the loft up to a time, with words of it
// replaced by others.
func record(t *testing.T, until string, replaced ...string) (*model.Batch, time.Time) {
	t.Helper()
	text, err := os.ReadFile("testdata/first.malt")
	require.NoError(t, err)
	for i := 0; i < len(replaced); i += 2 {
		require.True(t, strings.Contains(string(text), replaced[i]), replaced[i])
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", until, time.Local)
	require.NoError(t, err)
	return load(t, strings.NewReplacer(replaced...).Replace(string(text))), at
}

func followRecord(t *testing.T, until string, replaced ...string) *Following {
	t.Helper()
	b, at := record(t, until, replaced...)
	f, err := Of(context.Background(), b, at, Options{Members: few})
	require.NoError(t, err)
	return f
}

// doubts are the kinds of doubt by the words of the reading.
func doubts(f *Following) map[string]DoubtKind {
	out := map[string]DoubtKind{}
	for _, d := range f.Doubts {
		out[f.Judged[d.Observation].Observation.Reading.Place().Text()] = d.Kind
	}
	return out
}

func TestAnHonestRecordIsNotDoubted(t *testing.T) {
	f := followRecord(t, "2026-03-13 18:30")
	assert.Empty(t, doubts(f))
	assert.Len(t, f.Judged, 36)
	assert.True(t, f.Over())
	assert.Empty(t, f.Late)
	assert.Empty(t, f.Ignored)
}

// wrongReadings are readings that cannot be right: what is said of them, their words, and
// what makes them of the record.
var wrongReadings = map[string]struct {
	kind     DoubtKind
	words    string
	replaced []string
}{
	"less than its dry matter":     {BelowDry, "weighed 4.44 kg at 11:14 after dry 2", []string{"5.44 kg at 11:14", "4.44 kg at 11:14"}},
	"in pounds":                    {Unit, "weighed 11.99 kg at 11:14 after dry 2", []string{"5.44 kg at 11:14", "11.99 kg at 11:14"}},
	"in degrees Fahrenheit":        {Unit, "read    air-off 89.1 °C at 02:44", []string{"air-off 31.7 °C at 02:44", "air-off 89.1 °C at 02:44"}},
	"heavier than before":          {GainedWater, "weighed 5.98 kg at 11:14 after dry 2", []string{"5.44 kg at 11:14", "5.98 kg at 11:14"}},
	"count that goes back":         {GoesBack, "counted acrospire 40 42 16 2 0 0 at 08:00", []string{"acrospire 4 5 27 59 5 0 at 08:00", "acrospire 40 42 16 2 0 0 at 08:00"}},
	"out of place":                 {OutOfPlace, "read    air-off 31.7 °C at 07:00", []string{"  counted acrospire 4 5 27", "  read    air-off 31.7 °C at 07:00\n  counted acrospire 4 5 27"}},
	"two digits swapped":           {Swapped, "weighed 6.86 kg at 2026-03-07 06:00 after soak 2", []string{"weighed 8.66 kg", "weighed 6.86 kg"}},
	"a point elsewhere":            {Nought, "read    bed 1.83 °C at 21:50", []string{"read    bed 18.3 °C at 21:50", "read    bed 1.83 °C at 21:50"}},
	"of the other half of the day": {OtherTime, "read    air-off 31.7 °C at 14:44", []string{"  read    room 20.9 °C at 19:14\n", "  read    air-off 31.7 °C at 14:44\n  read    room 20.9 °C at 19:14\n", "  read    air-off 31.7 °C at 02:44\n", ""}},
	"of nothing known":             {Disagrees, "weighed 9.05 kg at 14:00 after soak 1", []string{"7.41 kg at 14:00", "9.05 kg at 14:00"}},
}

// wrongTogether are the same as an ordinary run tries them, several in one record where they
// lie days apart. The long run tries each alone.
var wrongTogether = [][]string{
	{"less than its dry matter", "in degrees Fahrenheit", "count that goes back", "two digits swapped"},
	{"in pounds", "out of place", "of the other half of the day"},
	{"heavier than before", "a point elsewhere", "of nothing known"},
}

func TestReadingsThatCannotBeRightAreDoubted(t *testing.T) {
	sets, tried := wrongTogether, map[string]bool{}
	if golden.Long() {
		sets = nil
		for name := range wrongReadings {
			sets = append(sets, []string{name})
		}
	}
	for _, names := range sets {
		t.Run(strings.Join(names, ", "), func(t *testing.T) {
			want, replaced := map[string]DoubtKind{}, []string(nil)
			for _, name := range names {
				c := wrongReadings[name]
				want[c.words], tried[name] = c.kind, true
				replaced = append(replaced, c.replaced...)
			}
			assert.Equal(t, want, doubts(followRecord(t, "2026-03-13 12:00", replaced...)))
		})
	}
	assert.Len(t, tried, len(wrongReadings))
}

// The tare is in every weight of the record but one.
func TestAForgottenTareIsFound(t *testing.T) {
	f := followRecord(t, "2026-03-13 12:00", "  sample 20.00 g", "  tare 0.9 kg\n  sample 20.00 g", "7.41 kg", "8.31 kg", "8.66 kg", "9.56 kg",
		"9.29 kg", "10.19 kg", "8.92 kg", "9.82 kg", "7.56 kg", "8.46 kg", "5.44 kg", "6.34 kg")
	assert.Equal(t, map[string]DoubtKind{"weighed 5.68 kg at 07:14 after dry 1": NoTare}, doubts(f))
}

// The tub weighs 990 g: in a weight that does not say so, and in none that does.
func TestATubThatIsOrIsNotInAWeightIsFound(t *testing.T) {
	f := followRecord(t, "2026-03-13 12:00", "weighed 7.41 kg at", "weighed 8.40 kg at")
	assert.Equal(t, map[string]DoubtKind{"weighed 8.40 kg at 14:00 after soak 1": WithHolder}, doubts(f))
	assert.Equal(t, "blue tub", f.Doubts[0].Holder.Name)
	f = followRecord(t, "2026-03-13 12:00", "weighed 7.41 kg at", `weighed 7.41 kg in "blue tub" at`)
	assert.Equal(t, map[string]DoubtKind{`weighed 7.41 kg in "blue tub" at 14:00 after soak 1`: NoTare}, doubts(f))
	assert.Equal(t, "blue tub", f.Doubts[0].Holder.Name)
	assert.Empty(t, doubts(followRecord(t, "2026-03-13 12:00", "weighed 7.41 kg at", `weighed 8.40 kg in "blue tub" on "kitchen" at`)))
}

// 6 kg of grain with 12.3 % of moisture hold 5.26 kg of dry matter. Dried to 5.85 kg that
// would be 10.0 %, if respiration and leaching had taken nothing of it.
func TestTheDryMatterOfTheChargeIsFoundOut(t *testing.T) {
	f := followRecord(t, "2026-03-13 09:30", "weighed 5.68 kg at 07:14 after dry 1\n  read    air-off 57.3 °C at 08:44\n  weighed 5.44 kg at 11:14 after dry 2",
		"weighed 5.85 kg at 06:14 after dry 2", "read    air-off 57.3 °C at 08:44\n", "")
	require.Len(t, f.Doubts, 1)
	d := f.Doubts[0]
	assert.Equal(t, ChargesDry, d.Kind)
	assert.InDelta(t, 0.161, d.Value, 0.01, "with 6.8 % of the dry matter gone")
}

// The kiln of the loft is held at 50, 55 to 65 and 82 °C.
func TestAirOfNoStepIsTold(t *testing.T) {
	f := followRecord(t, "2026-03-13 09:00", "  read    air-off 57.3 °C at 08:44\n", "  read    air-on 98.0 °C at 08:44\n")
	assert.Equal(t, map[string]DoubtKind{"read    air-on 98.0 °C at 08:44": NoStep}, doubts(f))
	assert.Empty(t, doubts(followRecord(t, "2026-03-13 09:00", "  read    air-off 57.3 °C at 08:44\n", "  read    air-on 57.0 °C at 08:44\n")))
}

func TestWhatIsLateIsTold(t *testing.T) {
	kinds := func(f *Following) (out []LateKind) {
		for _, l := range f.Late {
			out = append(out, l.Kind)
		}
		return out
	}
	assert.Empty(t, followRecord(t, "2026-03-10 12:00").Late)
	cut := "  read    bed 17.8 °C at 14:20\n  turned  at 14:30\n  read    bed 17.9 °C at 21:50"
	untold := followRecord(t, "2026-03-11 20:00", cut, "  read    bed 17.9 °C at 21:50")
	assert.Equal(t, []LateKind{LateTurn}, kinds(untold))
	b, _ := record(t, "2026-03-12 12:50")
	b.Readings = b.Readings[:len(b.Readings)-10]
	for len(b.Readings) > 0 && model.Weight(b.Readings[len(b.Readings)-1]) != nil {
		b.Readings = b.Readings[:len(b.Readings)-1]
	}
	f, err := Of(context.Background(), b, time.Date(2026, 3, 15, 12, 0, 0, 0, time.Local), Options{Members: few})
	require.NoError(t, err)
	assert.Equal(t, model.GerminateStage, f.Stand.Sight.Stage, "nothing says that it is off the floor")
	assert.Equal(t, []LateKind{LateStep, LateGuard, LateTurn}, kinds(f))
	require.NotEmpty(t, f.Waits)
	assert.True(t, f.Waits[0].Open)
	assert.Less(t, f.Waits[0].Left.P50, -20*3600.0)
}

func TestABatchAtItsBeginningHasNothingButThePlan(t *testing.T) {
	b := load(t, "use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" { began 2026-03-06 07:00 }\n")
	f, err := Of(context.Background(), b, began, Options{Members: few})
	require.NoError(t, err)
	assert.Empty(t, f.Judged)
	assert.Zero(t, f.Rounds)
	assert.InDelta(t, few, f.EffectiveSize, 1e-6)
	assert.Equal(t, model.SteepStage, f.Stand.Sight.Stage)
	assert.InDelta(t, 0.124, f.Stand.Moisture.P50, 0.01)
	_, err = Of(context.Background(), b, began.Add(-time.Hour), Options{})
	assert.ErrorContains(t, err, "before the batch began")
	_, err = Of(context.Background(), b, began.AddDate(0, 0, 40), Options{})
	assert.Equal(t, Forgotten{40 * day, longestSilence}, err)
}

// What is weighed now must show in what the batch weighs now: in the steep, and in the long
// run on the kiln, where it takes more members, for of fewer a handful bears all the weight.
func TestTheMoistureFollowsTheScale(t *testing.T) {
	type look struct {
		until, weighed, light, heavy string
		members                      int
		moister                      float64 // at the least
	}
	looks := []look{{"2026-03-07 22:05", "9.29 kg at 22:00", "9.22 kg at 22:00", "9.36 kg at 22:00", 120, 0.0015}}
	if golden.Long() {
		looks = append(looks, look{"2026-03-13 11:20", "5.44 kg at 11:14", "5.36 kg at 11:14", "5.52 kg at 11:14", 250, 0.002})
	}
	for _, x := range looks {
		of := func(weight string) *Following {
			b, at := record(t, x.until, x.weighed, weight)
			f, err := Of(context.Background(), b, at, Options{Members: x.members})
			require.NoError(t, err)
			t.Logf("%s: %.3f kg (%.3f to %.3f), %.2f %% (%.2f to %.2f), worth %.0f of equal weight", weight, f.Stand.Weight.P50, f.Stand.Weight.P10, f.Stand.Weight.P90,
				100*f.Stand.Moisture.P50, 100*f.Stand.Moisture.P10, 100*f.Stand.Moisture.P90, f.EffectiveSize)
			return f
		}
		light, heavy := of(x.light), of(x.heavy)
		assert.Greater(t, heavy.Stand.Weight.P50, light.Stand.Weight.P50+0.03)
		assert.Greater(t, heavy.Stand.Moisture.P50, light.Stand.Moisture.P50+x.moister)
		assert.Less(t, light.Stand.Weight.P90-light.Stand.Weight.P10, 0.2)
	}
}
