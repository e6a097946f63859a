package reckon_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/sim/reckon"
)

func parse(t require.TestingT, text string) quantity.Quantity {
	q, err := quantity.Parse(text)
	require.NoError(t, err, text)
	return q
}

func start(t require.TestingT, weight, moisture string) reckon.Start {
	return reckon.Start{Weight: parse(t, weight), Moisture: parse(t, moisture)}
}

// maybe reads a quantity that may be left out.
func maybe(t require.TestingT, text string) *quantity.Quantity {
	if text == "" {
		return nil
	}
	q := parse(t, text)
	return &q
}

// Each figure is met to half of the last digit its source prints.

// Published home-malting worked example (Sui Generis Brewing, 2023), recomputed; seen.
func TestWorkedExampleOfHomeMalting(t *testing.T) {
	batch := start(t, "100 g", "8 %")
	to, err := reckon.Target(batch, parse(t, "42 %"), nil)
	require.NoError(t, err)
	assert.InDelta(t, 92.0, 1000*to.DryMatter, 0.05)
	assert.InDelta(t, 158.62, 1000*to.Weight, 0.005)
	now, err := reckon.Weight(parse(t, "120 g"), batch, nil)
	require.NoError(t, err)
	assert.InDelta(t, 23.33, 100*now.Moisture, 0.005)
}

// IRRI Rice Knowledge Bank, moisture calculations; seen.
func TestTonneDriedFrom25To14PerCent(t *testing.T) {
	to, err := reckon.Target(start(t, "1000 kg", "25 %"), parse(t, "14 %"), nil)
	require.NoError(t, err)
	assert.InDelta(t, 872.09, to.Weight, 0.005)
}

// Pioneer Agronomy, moisture shrink; seen: the factor to 15.5 % is 1.18343 % of the
// weight for each point taken out, and 25.5 → 15.5 % shrinks by 11.834 %.
func TestShrinkTo15AndAHalfPerCent(t *testing.T) {
	for _, row := range []struct {
		from       string
		shrink, by float64
	}{{"16.5 %", 1.18343, 0.000005}, {"25.5 %", 11.834, 0.0005}} {
		batch := start(t, "1000 kg", row.from)
		to, err := reckon.Target(batch, parse(t, "15.5 %"), nil)
		require.NoError(t, err)
		assert.InDelta(t, -row.shrink, 100*to.Change/batch.Weight.SI, row.by, row.from)
	}
}

// Encyclopædia Britannica 14th ed., "Malt"; seen: a thousand kernels of 42 g at 15 %
// give malt of 32 g at 2 %. The loss of dry matter that follows from the figures of
// the book is 12.16 %; the book prints 12.5.
func TestThousandKernelsBeforeAndAfter(t *testing.T) {
	y, err := reckon.Yield(start(t, "42 g", "15 %"), start(t, "32 g", "2 %"))
	require.NoError(t, err)
	assert.InDelta(t, 76.19, 100*y.AsIs, 0.005)
	assert.InDelta(t, 74.67, 100*y.DryMalt, 0.005)
	assert.InDelta(t, 12.16, 100*y.Lost, 0.005)
}

// Maltsters' Association of Great Britain, "Malt facts"; seen.
func TestTonneOfBarleyGives830KilogramsOfMalt(t *testing.T) {
	y, err := reckon.Yield(start(t, "1 t", "12 %"), start(t, "830 kg", "5 %"))
	require.NoError(t, err)
	assert.InDelta(t, 10.4, 100*y.Lost, 0.05)
}

// Formula of Wilson 1927.
func TestGerminationCountsHaveWilsonIntervals(t *testing.T) {
	for _, row := range []struct {
		k, n      string
		low, high float64
	}{{"95", "100", 88.8, 97.8}, {"19", "20", 76.4, 99.1}} {
		g, err := reckon.Germination(parse(t, row.k), parse(t, row.n))
		require.NoError(t, err)
		assert.InDelta(t, row.low, 100*g.Low, 0.05, row)
		assert.InDelta(t, row.high, 100*g.High, 0.05, row)
	}
}

// At the weight of the raw grain malt holds the moisture of the grain only if
// nothing was lost: definition, for grain of 12 %.
func TestMaltAtTheWeightOfTheGrainIsWetter(t *testing.T) {
	for lost, moisture := range map[string]float64{"0 %": 12, "5 %": 16.4, "8 %": 19.0} {
		now, err := reckon.Weight(parse(t, "6 kg"), start(t, "6 kg", "12 %"), maybe(t, lost))
		require.NoError(t, err)
		assert.InDelta(t, moisture, 100*now.Moisture, 0.05, lost)
	}
}

// Malt that truly holds 12 % after 8 % was lost reads 4.3 % when the loss is left
// out: definition, for any weight and first moisture.
func TestLeavingOutTheLossReadsMaltTooDry(t *testing.T) {
	batch := start(t, "6 kg", "12 %")
	to, err := reckon.Target(batch, parse(t, "12 %"), maybe(t, "8 %"))
	require.NoError(t, err)
	weight, err := quantity.In(to.Weight, "kg")
	require.NoError(t, err)
	now, err := reckon.Weight(weight, batch, nil)
	require.NoError(t, err)
	assert.InDelta(t, 4.3, 100*now.Moisture, 0.05)
	require.Len(t, now.Notes, 1, "the loss that was left out is spoken of")
}

func TestSamplesAreAveragedAndTheirSpreadGiven(t *testing.T) {
	var samples []reckon.Sample
	for _, dried := range []string{"8.8 g", "8.7 g", "8.6 g"} {
		samples = append(samples, reckon.Sample{Wet: parse(t, "10 g"), Dried: parse(t, dried)})
	}
	m, err := reckon.Moisture(samples, nil)
	require.NoError(t, err)
	assert.InDelta(t, 0.13, m.Mean, 1e-12, "of 12, 13 and 14 %")
	assert.InDelta(t, 0.01, m.Deviation, 1e-12, "one point: the squares 1, 0, 1 over n − 1 = 2")
}

func TestTheDishCountsForNothing(t *testing.T) {
	bare, err := reckon.Moisture([]reckon.Sample{{parse(t, "20.00 g"), parse(t, "17.54 g")}}, nil)
	require.NoError(t, err)
	dish, err := reckon.Moisture([]reckon.Sample{{parse(t, "25.00 g"), parse(t, "22.54 g")}}, maybe(t, "5 g"))
	require.NoError(t, err)
	assert.InDelta(t, bare.Mean, dish.Mean, 1e-12)
}

func TestAnswersStandInTheUnitOfTheInput(t *testing.T) {
	for weight, want := range map[string]string{"6 kg": "9.386 kg", "6000 g": "9386 g", "13 lb 4 oz": "20 lb 11.6 oz", "0.006 t": "0.009 t"} {
		to, err := reckon.Target(start(t, weight, "12.4 %"), parse(t, "44 %"), nil)
		require.NoError(t, err)
		for _, step := range to.Working {
			if at, ok := step.(reckon.WeightAt); ok {
				assert.Equal(t, want, at.Weight.Like.Like(at.Weight.SI))
				assert.Equal(t, to.Weight, at.Weight.SI)
			}
		}
	}
}

func TestWeightOfItsOwnDryMatterHoldsNoWater(t *testing.T) {
	now, err := reckon.Weight(parse(t, "5.4 kg"), start(t, "6 kg", "10 %"), nil)
	require.NoError(t, err)
	assert.InDelta(t, 0, now.Moisture, 1e-12)
}

func ExampleTarget() {
	weight, _ := quantity.Parse("6 kg")
	moist, _ := quantity.Parse("12.4 %")
	wanted, _ := quantity.Parse("44 %")
	to, err := reckon.Target(reckon.Start{Weight: weight, Moisture: moist}, wanted, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f kg, %.3f kg of it dry\n", to.Weight, to.DryMatter)
	// Output: 9.386 kg, 5.256 kg of it dry
}
