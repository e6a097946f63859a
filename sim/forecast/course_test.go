package forecast

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

const hour = 3600.0

// repeated steeps until it is enough: the grain of the test has it after two soaks.
const repeated = `steep in "tub" { repeat at most 4 times until moisture at least 38 % { soak 8 h in water at 14 °C; rest 8 h in air at 14 °C } }
`

// kept forecasts with a course.
func kept(t *testing.T, body string, c Course) *Forecast {
	t.Helper()
	p := load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+body+"}\n")
	f, err := Run(p, Options{Course: &c})
	require.NoError(t, err)
	return f
}

// grown is the gate that ends the growing.
func grown(f *Forecast) Gate {
	for _, g := range f.Gates {
		if g.Stage == model.GerminateStage {
			return g
		}
	}
	return Gate{}
}

func steps(f *Forecast) (out []Step) {
	for _, st := range f.Stages {
		out = append(out, st.Steps...)
	}
	return out
}

func TestAnEmptyCourseChangesNothing(t *testing.T) {
	plain, kept := run1(t, steepText+growText+kilnText), kept(t, steepText+growText+kilnText, Course{})
	assert.Equal(t, len(steps(plain)), len(steps(kept)))
	for i, s := range steps(plain) {
		assert.Equal(t, s.End, steps(kept)[i].End, s.Label)
		assert.Equal(t, s.WeightEnd, steps(kept)[i].WeightEnd, s.Label)
	}
}

func TestStepsEndWhenTheRecordSaysSo(t *testing.T) {
	f := kept(t, steepText+growText+kilnText, Course{Ends: []Ended{
		{"soak", 1, 6.5 * hour, true, false}, {"soak", 2, 24 * hour, true, false}, {"germinate", 0, 160 * hour, true, false}, {"dry", 1, 170 * hour, true, false},
	}})
	got := steps(f)
	assert.Equal(t, 6.5*hour, got[0].End)
	assert.Equal(t, 15.5*hour, got[1].End, "a rest of which nothing is written lasts as long as it says")
	assert.Equal(t, 24*hour, got[2].End)
	for _, s := range got {
		switch s.Label {
		case "germinate":
			assert.InDelta(t, 160*hour, s.End, 1)
			assert.Equal(t, ByRecord, s.EndedBy)
		case "cure":
			assert.Equal(t, 5*hour, s.End-s.Start)
		}
	}
}

// A hold that ended is not the end of the growing.
func TestAHoldEndsAndTheGrowingGoesOn(t *testing.T) {
	two := `germinate on "tray" { hold bed at 16 to 18 °C for 2 days; hold bed at 14 to 16 °C; turn every 8 h; until acrospire at least 3/4; allow 3 to 8 days; humidity 98 % }` + "\n"
	plain := run1(t, steepText+two+kilnText)
	f := kept(t, steepText+two+kilnText, Course{Ends: []Ended{{"hold", 1, plain.Totals.SteepOut + 40*hour, true, false}}})
	require.Len(t, f.Stages[1].Steps, 2)
	assert.InDelta(t, 40*hour, f.Stages[1].Steps[0].End-f.Stages[1].Steps[0].Start, 1)
	assert.Greater(t, f.Stages[1].Steps[1].End-f.Stages[1].Steps[1].Start, 24*hour)
	assert.Equal(t, ByGate, f.Stages[1].Steps[1].EndedBy)
}

// A record of a third soak shows that there was one, whatever the model holds of the
// second; and a piece on the floor shows that there was no fourth.
func TestARecordDecidesHowOftenIsSoaked(t *testing.T) {
	count := func(f *Forecast) (n int) {
		for _, s := range steps(f) {
			if s.Kind == model.SoakStep {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 2, count(kept(t, repeated+growText+kilnText, Course{})))
	assert.Equal(t, 3, count(kept(t, repeated+growText+kilnText, Course{Ends: []Ended{{"soak", 3, 40 * hour, true, false}}})))
	f := kept(t, repeated+growText+kilnText, Course{Ends: []Ended{{Kind: "soak", Number: 1, At: 8 * hour, Exact: true}, {Kind: "steep", At: 8 * hour}}})
	assert.Equal(t, 1, count(f))
	assert.Equal(t, 8*hour, f.Totals.SteepOut)
}

// A condition of which no end is written is waited for until now, and the forecast
// says when it came about; but never before the earliest time of the step itself.
func TestWhatIsOpenLastsUntilNow(t *testing.T) {
	plain := run1(t, steepText+growText+kilnText)
	end := grown(plain).Reached
	f := kept(t, steepText+growText+kilnText, Course{Open: end + 20*hour})
	g := grown(f)
	assert.InDelta(t, end+20*hour, g.Reached, 60)
	assert.InDelta(t, end, g.Ready, 700, "to a look of the driver")
	early := kept(t, steepText+growText+kilnText, Course{Open: end - 20*hour})
	assert.InDelta(t, end, grown(early).Reached, 60)
	assert.True(t, math.IsNaN(grown(early).Ready))
	guarded := `germinate on "tray" { hold bed at 14 to 16 °C; turn every 8 h; until acrospire at least 1/4; allow 5 to 8 days; humidity 98 % }` + "\n"
	f = kept(t, steepText+guarded+kilnText, Course{Open: 200 * hour})
	g = grown(f)
	assert.InDelta(t, f.Totals.SteepOut+5*24*hour, g.Ready, 700)
}

func TestStepsAreDoneAsChanged(t *testing.T) {
	long, err := quantity.Make(quantity.Part{Number: "5", Unit: "h"})
	require.NoError(t, err)
	warm, err := quantity.Make(quantity.Part{Number: "90", Unit: "°C"})
	require.NoError(t, err)
	change := func(kind string, n int, q quantity.Quantity, where string) model.Change {
		return model.Change{Step: model.StepName{Kind: model.Word{Text: kind}, Number: n},
			To: model.Temperature{Range: model.Range{Range: quantity.Range{Low: q, High: q}}, Where: where}}
	}
	cool, err := quantity.Make(quantity.Part{Number: "12", Unit: "°C"})
	require.NoError(t, err)
	cold := kept(t, steepText+growText+kilnText, Course{Changes: []model.Change{change("germinate", 0, cool, "bed")}})
	assert.Greater(t, grown(cold).Waited, grown(run1(t, steepText+growText+kilnText)).Waited+12*hour, "colder, it grows longer")
	f := kept(t, steepText+growText+kilnText, Course{Changes: []model.Change{change("soak", 2, long, ""), change("cure", 0, warm, "air-on")}})
	for _, s := range steps(f) {
		switch s.Label {
		case "soak 1":
			assert.Equal(t, 7*hour, s.End-s.Start)
		case "soak 2":
			assert.Equal(t, 5*hour, s.End-s.Start)
		case "cure":
			assert.Equal(t, 5*hour, s.End-s.Start)
			assert.Equal(t, 90.0, s.Temperature.To)
		}
	}
}

// In a deep bed that was not turned for a day the middle is warmer than in one that was
// just turned; and what was turned once more than the process asks is turned next after
// its whole interval.
func TestTurnsAreThoseOfTheRecord(t *testing.T) {
	deep := strings.Replace(house, "area 0.4 m2", "area 0.04 m2", 1)
	body := `germinate on "tray" { hold room at 12 °C; turn every 24 h; until acrospire at least 3/4; allow 3 to 8 days; humidity 98 % }` + "\n"
	p := load(t, deep+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+body+kilnText+"}\n")
	bed := func(at float64, turns ...float64) float64 {
		f, err := Run(p, Options{Course: &Course{Looks: []float64{at * hour}, Turns: turns}})
		require.NoError(t, err)
		return f.Seen[0].Bed
	}
	began := 38.0 // h, at steep-out: the process turns at 62, 86 h ...
	unturned, turned := bed(began+23.9), bed(began+23.9, (began+23.8)*hour)
	assert.Greater(t, unturned, turned+0.3)
	assert.Greater(t, bed(began+24.5, (began+12)*hour), bed(began+24.5)+0.2, "the turn of the 24th hour waits until the 36th")
}

func TestLooksShowTheStateAtTheirTimes(t *testing.T) {
	plain := run1(t, steepText+growText+kilnText)
	all := steps(plain)
	c := Course{}
	for _, s := range all {
		c.Looks = append(c.Looks, s.End)
	}
	f := kept(t, steepText+growText+kilnText, c)
	require.Len(t, f.Seen, len(all))
	for i, s := range all {
		assert.InDelta(t, s.WeightEnd, f.Seen[i].Weight, 2e-3*s.WeightEnd, s.Label)
		assert.InDelta(t, f.Seen[i].Weight*(1-f.Seen[i].Moisture), f.Seen[i].Dry, 1e-9, s.Label)
		assert.GreaterOrEqual(t, f.Seen[i].Lost, 0.0)
	}
	assert.Equal(t, model.DeculmStage, f.Seen[len(all)-1].Stage)
	c.Looks, c.Brief = c.Looks[:3], true
	brief := kept(t, steepText+growText+kilnText, c)
	require.Len(t, brief.Seen, 3)
	for i, s := range brief.Seen {
		assert.Equal(t, f.Seen[i].Weight, s.Weight)
	}
	assert.Len(t, brief.Stages, 1, "a brief forecast ends behind its last look")
	assert.False(t, brief.BrokenOff())
}
