package seasons

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
	"maltwright/sim/reckon"
)

// second is how close two times count as equal, s, and share how close two ratios of
// what is written do: they are sums of a few doubles.
const (
	second = 1e-3
	share  = 1e-9
)

const folder = "../../examples/batches"

// batchOf reads a record beside the house of the examples, and forecasts its process.
func batchOf(t testing.TB, text string) (*model.Batch, *forecast.Forecast) {
	t.Helper()
	return batchIn(t, folder, text)
}

func batchIn(t testing.TB, folder, text string) (*model.Batch, *forecast.Forecast) {
	t.Helper()
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	h, found := read.Load("batch.malt", []byte(text), ".", root)
	if worst, any := finding.Worst(found); any {
		require.Less(t, worst, finding.Fault, found)
	}
	require.Len(t, h.Batches, 1)
	b := h.Batches[0]
	f, err := forecast.Run(b.Process, forecast.Options{})
	require.NoError(t, err)
	return b, f
}

func example(t testing.TB, name string) Season {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name) // it uses the process of the examples
	require.NoError(t, err)
	return Of(batchOf(t, string(text)))
}

// recorded is a batch of the example's process with these lines in it.
func recorded(t testing.TB, lines string) Season {
	t.Helper()
	return Of(batchOf(t, "use \"pale.malt\"\nbatch \"b\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n"+lines+"}\n"))
}

func is(t testing.TB, want float64, standing Standing, got Figure, within float64, what string) {
	t.Helper()
	assert.Equal(t, standing, got.Standing, what)
	assert.InDelta(t, want, got.Value, within, what)
}

const hour = 3600.0

// Reckoned by hand from the lines of the record.
func TestFiguresOfTheFirstExample(t *testing.T) {
	s := example(t, "26-03.malt")
	is(t, 1-17.54/20.00, Measured, s.RawMoisture, share, "raw grain")
	is(t, 39*hour, Measured, s.Cast, second, "cast: 6 March 07:00 to 7 March 22:00")
	is(t, 13.0, Measured, s.Water, share, "water, read once")
	is(t, 0.91, Measured, s.Chit, share, "chit, 91 of 100")
	is(t, 47*hour+50*60, Measured, s.ChitAt, second, "chit: to 8 March 06:50")
	is(t, 16.8, Measured, s.Bed, 1e-6, "bed: of 14.1 15.9 16.1 16.2 16.6 16.0 16.8")
	assert.Equal(t, "chalky", s.Rub)
	is(t, 8.63, Measured, s.Green, share, "green malt")
	is(t, 105*hour, Measured, s.Floor, second, "floor: 7 March 22:00 to 12 March 07:00, 4 d 9 h")
	// of 98 kernels that grow the 49th: 2 + 6 lie before the class to 3/4, and it is the
	// 41st of 43 there: 1/2 + 1/4 × 41/43
	is(t, 0.5+0.25*41/43, Measured, s.Acrospire, share, "acrospire")
	// 47 of these 98 are past 3/4 at the last count, 12 March 06:45: 5 d 23 h 45 min
	is(t, 143*hour+45*60, Over, s.ThreeQuarters, second, "not half of them past 3/4 yet")
	is(t, 14*hour+35*60, Measured, s.Kiln, second, "kiln: 18:55 after wither to 09:30 after cure")
	// air-on 50.1: air-off 27.4 at first, 47.6 at 02:55, 20.2 of the 22.7 K up to it
	is(t, 8*hour, Under, s.Break, second, "break: 18:55 to 02:55")
	is(t, 5.02, Measured, s.Malt, share, "malt")
	is(t, 5.02/6, Measured, s.Yield, share, "yield as it is")
	is(t, 5.02/(6*0.877), Measured, s.OnDryGrain, share, "malt as it is of dry grain")
	is(t, 171*hour+55*60, Measured, s.Total, second, "total: 6 March 07:00 to 13 March 10:55, 7 d 3 h 55 min")
	assert.Empty(t, s.Doubts)
}

// The same sums as [sim/reckon] does for reckon weight, with the loss of the forecast.
func TestMoisturesFollowFromWeightAndTheDryMatterLeft(t *testing.T) {
	s := example(t, "26-03.malt")
	f, err := forecast.Run(s.Batch.Process, forecast.Options{})
	require.NoError(t, err)
	// 6 kg × 0.877 = 5.262 kg of dry matter
	is(t, 1-5.262*f.Totals.YieldDry/5.02, Reckoned, s.EndMoisture, share, "end")
	is(t, f.Totals.YieldDry, Reckoned, s.DryYield, share, "dry yield: what the forecast leaves, as the moisture has it")
	steep := f.Stages[0].Steps
	out := steep[len(steep)-1]
	kept := out.WeightEnd * (1 - out.MoistureEnd) / (6 * (1 - 0.124)) // of the lot's 12.4 %
	is(t, 1-5.262*kept/9.19, Reckoned, s.CastMoisture, share, "cast")
	assert.Greater(t, kept, 0.97, "a steep takes a few per cent at the most")
	assert.Less(t, kept, 1.0)
}

// 26-05: 7 of 98 kernels past 3/4 on 15 April 07:30, which is 121 h, and 52 of 97 on 16
// April 03:05, 19 h 35 min later. A half is (0.5 − 7/98)/(52/97 − 7/98) = 0.92235 of the
// way: 18.0626 h, and so 139.0626 h from the beginning.
func TestThreeQuartersLieBetweenTwoCounts(t *testing.T) {
	s := example(t, "26-05.malt")
	is(t, 139.0626*hour, Measured, s.ThreeQuarters, 0.36, "to the last digit of the hand reckoning")
	require.Len(t, s.Batch.Changes, 1)
}

func TestThreeQuartersAtTheEdgesOfTheCounts(t *testing.T) {
	for _, c := range []struct {
		what, lines string
		standing    Standing
		hours       float64
	}{
		{"no count", "", Missing, 0},
		{"past it at the first count", "  counted acrospire 0 0 0 40 60 0 at 2026-03-11 07:00\n", Under, 120},
		{"not past it at the last", "  counted acrospire 0 0 30 40 30 0 at 2026-03-11 07:00\n", Over, 120},
		{"just half of them at a count", "  counted acrospire 0 0 60 40 0 0 at 2026-03-11 07:00\n  counted acrospire 0 0 10 40 50 0 at 2026-03-12 07:00\n", Measured, 144},
		{"a quarter, then three quarters of them: half way", "  counted acrospire 0 0 0 75 25 0 at 2026-03-11 07:00\n  counted acrospire 0 0 0 25 70 5 at 2026-03-12 07:00\n", Measured, 132},
		{"kernels that do not grow do not count", "  counted acrospire 50 0 0 25 25 0 at 2026-03-11 07:00\n", Under, 120},
		{"a count of which none grows", "  counted acrospire 100 0 0 0 0 0 at 2026-03-11 07:00\n", Missing, 0},
		{"fallen back, by the luck of the count", "  counted acrospire 0 0 0 60 40 0 at 2026-03-11 07:00\n  counted acrospire 0 0 0 40 60 0 at 2026-03-12 07:00\n  counted acrospire 0 0 0 55 45 0 at 2026-03-13 07:00\n", Measured, 132},
	} {
		is(t, c.hours*hour, c.standing, recorded(t, c.lines).ThreeQuarters, second, c.what)
	}
}

func TestMiddleKernelOfACount(t *testing.T) {
	for _, c := range []struct {
		kernels []float64
		want    float64
	}{
		{[]float64{0, 100, 0, 0, 0, 0}, 0.125},        // half way up its quarter
		{[]float64{0, 50, 50, 0, 0, 0}, 0.25},         // between the two
		{[]float64{0, 0, 0, 0, 100, 0}, 0.875},        //
		{[]float64{90, 0, 0, 10, 0, 0}, 0.625},        // of those that grow
		{[]float64{0, 0, 0, 0, 0, 4}, 1.125},          // beyond the kernel
		{[]float64{0, 0, 25, 0, 75, 0}, 0.75 + 1./12}, // the 50th, 25 of 75 into its class
	} {
		grown := 0.0
		for _, n := range c.kernels[1:] {
			grown += n
		}
		assert.InDelta(t, c.want, count{kernels: c.kernels, grown: grown}.middle(), share, c.kernels)
	}
}

func TestARecordThatHasOnlyBegun(t *testing.T) {
	s := recorded(t, "")
	is(t, 0.124, Measured, s.RawMoisture, share, "what the lot says")
	is(t, 39*hour, Reckoned, s.Cast, second, "three soaks of 7 h and two rests of 9 h")
	for what, f := range map[string]Figure{"cast moisture": s.CastMoisture, "water": s.Water, "chit": s.Chit, "chit at": s.ChitAt,
		"break": s.Break, "acrospire": s.Acrospire, "floor": s.Floor, "bed": s.Bed, "green": s.Green, "kiln": s.Kiln,
		"malt": s.Malt, "yield": s.Yield, "on dry grain": s.OnDryGrain, "dry": s.DryYield, "end": s.EndMoisture, "total": s.Total} {
		assert.Equal(t, Figure{}, f, what)
	}
	assert.Empty(t, s.Rub)
}

// Without a forecast nothing is reckoned, and what was measured stays.
func TestARecordWithoutAForecast(t *testing.T) {
	text, err := os.ReadFile("testdata/26-03.malt")
	require.NoError(t, err)
	b, _ := batchOf(t, string(text))
	s := Of(b, nil)
	assert.Equal(t, Figure{}, s.CastMoisture)
	assert.Equal(t, Figure{}, s.EndMoisture)
	is(t, 5.02/6, Measured, s.Yield, share, "yield")
	is(t, 171*hour+55*60, Measured, s.Total, second, "total")
}

// Whatever lines are missing, a figure is a number that can be, or missing.
func TestFiguresAreNumbersWhateverIsMissing(t *testing.T) {
	text, err := os.ReadFile("testdata/26-05.malt")
	require.NoError(t, err)
	lines := strings.SplitAfter(string(text), "\n")
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	_, f := batchOf(t, string(text))
	rapid.Check(t, func(t *rapid.T) {
		var kept strings.Builder
		gone := rapid.IntRange(0, 100).Draw(t, "gone of a hundred")
		for _, line := range lines {
			needed := strings.HasPrefix(line, "use") || strings.HasPrefix(line, "batch") || strings.HasPrefix(line, "}")
			if needed || rapid.IntRange(1, 100).Draw(t, "luck") > gone {
				kept.WriteString(line)
			}
		}
		h, _ := read.Load("batch.malt", []byte(kept.String()), ".", root)
		for _, b := range h.Batches {
			s := Of(b, rapid.SampledFrom([]*forecast.Forecast{nil, f}).Draw(t, "forecast"))
			for i, x := range s.figures() {
				if math.IsNaN(x.Value) || math.IsInf(x.Value, 0) || x.Value < 0 || x.Standing == Missing && x.Value != 0 {
					t.Fatalf("figure %d is %v of\n%s", i, x, kept.String())
				}
			}
		}
	})
}

func (s *Season) figures() []Figure {
	return []Figure{s.RawMoisture, s.Cast, s.CastMoisture, s.Water, s.Chit, s.ChitAt, s.ThreeQuarters, s.Acrospire, s.Floor,
		s.Bed, s.Green, s.Break, s.Kiln, s.Malt, s.Yield, s.OnDryGrain, s.DryYield, s.EndMoisture, s.Total}
}

// An odd process must not stop the rest: no charge, no process at all, no beginning.
func TestOddRecords(t *testing.T) {
	text, err := os.ReadFile("testdata/26-03.malt")
	require.NoError(t, err)
	b, f := batchOf(t, string(text))

	bare := *b.Process
	bare.Charge = nil
	b.Process = &bare
	s := Of(b, f)
	assert.Equal(t, Figure{}, s.Yield, "no charge")
	assert.Equal(t, Figure{}, s.OnDryGrain)
	assert.Equal(t, Figure{}, s.DryYield)
	assert.Equal(t, Figure{}, s.EndMoisture)
	assert.Equal(t, Figure{}, s.CastMoisture)
	is(t, 5.02, Measured, s.Malt, share, "malt")

	b.Process = nil
	s = Of(b, nil)
	is(t, 16.8, Measured, s.Bed, 1e-6, "bed")
	is(t, 8.63, Measured, s.Green, share, "weighed after germinate, whatever the process")

	b.Began = model.Instant{}
	s = Of(b, nil)
	assert.Equal(t, Figure{}, s.Total)
}

func TestOnlyTheLastWeighingOfTheSteepIsCast(t *testing.T) {
	s := recorded(t, "  weighed 7.38 kg at 14:00 after soak 1\n")
	is(t, 39*hour, Reckoned, s.Cast, second, "soak 1 of 3")
	assert.Equal(t, Missing, s.CastMoisture.Standing)

	s = recorded(t, "  weighed 9.30 kg at 2026-03-07 06:00 after soak 2\n")
	is(t, 23*hour, Measured, s.Cast, second, "soak 2, and as wet as it is to be")
	assert.Equal(t, Reckoned, s.CastMoisture.Standing)

	s = recorded(t, "  weighed 8.90 kg at 2026-03-07 22:00 after soak 3\n")
	is(t, 39*hour, Measured, s.Cast, second, "soak 3, too dry or not")
	assert.Less(t, s.CastMoisture.Value, 0.43)

	s = recorded(t, "  weighed 9.19 kg after soak 3\n")
	is(t, 39*hour, Reckoned, s.Cast, second, "soak 3, its hour not said")
	assert.Equal(t, Reckoned, s.CastMoisture.Standing)
}

func TestLessThanItsDryMatterIsDoubted(t *testing.T) {
	s := recorded(t, "  weighed 4.60 kg clean malt at 2026-03-13 10:00\n")
	assert.Equal(t, Missing, s.EndMoisture.Standing)
	require.Len(t, s.Doubts, 1)
	assert.True(t, s.Doubts[0].Clean)
	assert.InDelta(t, 4.60, s.Doubts[0].Weight, share)
	assert.Greater(t, s.Doubts[0].Dry, 4.60)
	is(t, 4.60/6, Measured, s.Yield, share, "what was weighed still is")
}

// 131 g of a bag that held 100 g, with 8 g of net: 123 g, and so 1.23 of 6 kg.
func TestTheBagStandsForTheBatch(t *testing.T) {
	s := recorded(t, "  bag 100 g at the start\n  tare 8 g\n  weighed bag 131 g at 2026-03-12 07:00 after germinate\n")
	is(t, 1.23*6, Reckoned, s.Green, share, "from the bag")
	s = recorded(t, "  bag 100 g at the start\n  weighed 8.5 kg at 2026-03-12 07:00 after germinate\n  weighed bag 131 g at 07:10 after germinate\n")
	is(t, 8.5, Measured, s.Green, share, "the batch itself comes first")
	s = recorded(t, "  tare 400 g\n  weighed 8.9 kg at 2026-03-12 07:00 after germinate\n")
	is(t, 8.5, Measured, s.Green, share, "without its tray")
}

// The tub of the loft weighs 990 g.
func TestFiguresAreThoseOfTheGrainAlone(t *testing.T) {
	want := recorded(t, "  weighed 9.29 kg at 2026-03-07 22:00 after soak 3\n  weighed 4.98 kg clean malt at 2026-03-13 18:09\n")
	got := recorded(t, "  weighed 10.28 kg in \"blue tub\" at 2026-03-07 22:00 after soak 3\n  weighed 5.97 kg clean malt in \"blue tub\" on \"kitchen\" at 2026-03-13 18:09\n")
	is(t, want.CastMoisture.Value, Reckoned, got.CastMoisture, share, "of the drained grain")
	is(t, 4.98, Measured, got.Malt, share, "without the tub")
	is(t, want.Yield.Value, Measured, got.Yield, share, "by it")
}

func TestTheBreakIsSeenInAirOff(t *testing.T) {
	const load = "  weighed 7.40 kg at 2026-03-12 19:00 after wither\n"
	on := load + "  read air-on 50 °C at 19:30\n  read air-off 26 °C at 21:00\n"
	is(t, 5*hour, Under, recorded(t, on+"  read air-off 38 °C at 2026-03-13 00:00\n").Break, second, "half of the way up")
	is(t, 5*hour, Over, recorded(t, on+"  read air-off 37.9 °C at 2026-03-13 00:00\n").Break, second, "not yet")
	is(t, 1.5*hour, Under, recorded(t, strings.ReplaceAll(on, load, "")+"  read air-off 40 °C at 21:00\n").Break, second, "from the first air-on")
	assert.NotEqual(t, Under, recorded(t, load+"  read air-on 50 °C at 19:30\n  read air-off 48 °C at 21:00\n").Break.Standing, "one reading has no plateau before it")
	assert.NotEqual(t, Under, recorded(t, load+"  read air-off 26 °C at 21:00\n  read air-off 48 °C at 22:00\n").Break.Standing, "air-on was not read")
	k := recorded(t, load)
	f, err := forecast.Run(k.Batch.Process, forecast.Options{})
	require.NoError(t, err)
	is(t, f.FirstKiln().Break-f.FirstKiln().Began, Reckoned, k.Break, share, "left to the forecast")
}

func TestAWeightThatCannotBeIsImpossible(t *testing.T) {
	b, f := batchOf(t, "use \"pale.malt\"\nbatch \"b\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 9.19 kg at 2026-03-07 22:00 after soak 3\n}\n")
	model.Weight(b.Readings[0]).SI = 91.9 // as the language would refuse it
	s := Of(b, f)
	assert.Equal(t, Impossible, s.CastMoisture.Standing)
	is(t, 39*hour, Measured, s.Cast, second, "it was cast all the same")
}

// 6 kg of the lot's 12.4 % are 5.256 kg of dry matter, of which a forecast leaves nine
// tenths: 4.6 kg hold less than that, and 6.1 kg are more than there was grain.
func TestMaltThatCannotBeIsImpossibleWithAllThatIsReckonedFromIt(t *testing.T) {
	for weight, standing := range map[string]Standing{"4.98": Measured, "4.6": Measured, "4.3": Impossible, "6.1": Impossible} {
		s := recorded(t, "  weighed "+weight+" kg clean malt at 2026-03-13 10:55\n")
		assert.Equal(t, standing, s.Malt.Standing, weight)
		assert.Equal(t, standing, s.Yield.Standing, weight)
		assert.Equal(t, standing, s.OnDryGrain.Standing, weight)
		assert.Equal(t, weight == "4.98", s.DryYield.Known(), weight)
		assert.Equal(t, standing == Measured && weight == "4.98", s.EndMoisture.Known(), weight)
	}
}

func TestASampleThatCannotBeIsReckonedByTheLot(t *testing.T) {
	s := recorded(t, "  sample 20.00 g dried to 11.54 g\n  weighed 4.98 kg clean malt at 2026-03-13 10:55\n")
	is(t, 1-11.54/20, Impossible, s.RawMoisture, share, "42 %")
	is(t, 4.98/(6*(1-0.124)), Measured, s.OnDryGrain, share, "by the lot's 12.4 %")
}

func TestAnAnalysisIsTheMoistureOfTheMalt(t *testing.T) {
	s := recorded(t, "  weighed 4.98 kg clean malt at 2026-03-13 10:55\n  tested moisture 4.7 % at 2026-04-01 10:00\n")
	is(t, 0.047, Measured, s.EndMoisture, share, "as tested")
}

// 6 kg of grain of 12.5 % hold 5.25 kg of dry matter, and 4.93 kg of malt of 4.3 % hold 4.71801 kg: 89.8669 %.
// reckon yield gives the same of the same four figures; the malt as it is would be 93.9 % of the dry grain.
func TestTheDryYieldIsOfDryMatterByDryMatter(t *testing.T) {
	const sample, malt, tested = "  sample 20.00 g dried to 17.50 g\n", "  weighed 4.93 kg clean malt at 2026-03-13 10:55\n", "  tested moisture 4.3 % at 2026-04-01 10:00\n"
	want, err := reckon.Yield(startOf(t, "6 kg", "12.5 %"), startOf(t, "4.93 kg", "4.3 %"))
	require.NoError(t, err)
	assert.InDelta(t, 0.898669, want.Dry, 1e-6, "by hand")

	s := recorded(t, sample+malt+tested)
	is(t, want.Dry, Measured, s.DryYield, share, "all four were measured")
	is(t, 4.93/5.25, Measured, s.OnDryGrain, share, "as it is")

	s = recorded(t, malt+tested)
	is(t, 4.93*0.957/(6*0.876), Reckoned, s.DryYield, share, "the moisture of the grain is what the lot says, 12.4 %")
	s = recorded(t, "  bag 100 g at the start\n"+sample+"  weighed bag 82 g clean malt at 2026-03-13 10:55\n"+tested)
	is(t, 0.82*0.957/0.875, Reckoned, s.DryYield, share, "from the bag")

	s = recorded(t, sample+malt)
	assert.Equal(t, Reckoned, s.DryYield.Standing, "the malt was not tested")
	is(t, s.Malt.Value*(1-s.EndMoisture.Value)/5.25, Reckoned, s.DryYield, share, "it fits the moisture that stands beside it")
	b, _ := batchOf(t, "use \"pale.malt\"\nbatch \"b\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n"+sample+malt+"}\n")
	assert.Equal(t, Figure{}, Of(b, nil).DryYield, "without a forecast nobody knows the moisture of the malt")
}

func startOf(t *testing.T, weight, moisture string) reckon.Start {
	t.Helper()
	w, err := quantity.Parse(weight)
	require.NoError(t, err)
	m, err := quantity.Parse(moisture)
	require.NoError(t, err)
	return reckon.Start{Weight: w, Moisture: m}
}

// 5.7 kg at 4 % hold 5.47 kg of dry matter, and the grain 5.256 kg.
func TestMaltOfMoreDryMatterThanTheGrainIsImpossible(t *testing.T) {
	s := recorded(t, "  weighed 5.7 kg clean malt at 2026-03-13 10:55\n  tested moisture 4 % at 2026-04-01 10:00\n")
	assert.Equal(t, []Standing{Impossible, Impossible, Impossible, Impossible}, []Standing{s.Malt.Standing, s.Yield.Standing, s.OnDryGrain.Standing, s.DryYield.Standing})
	s = recorded(t, "  weighed 5.7 kg clean malt at 2026-03-13 10:55\n  tested moisture 9 % at 2026-04-01 10:00\n")
	assert.Equal(t, Measured, s.Malt.Standing, "5.19 kg of dry matter")
}

func TestWhatCannotBeCountsInNoSum(t *testing.T) {
	all := []Figure{{0.83, Measured}, {1.02, Impossible}, {0.85, Reckoned}}
	assert.Equal(t, Figure{0.84, Reckoned}, Mean(all))
	assert.Equal(t, Figure{0.85, Reckoned}, Highest(all))
	assert.Equal(t, Figure{}, Mean(all[:2]), "one is left")
}
