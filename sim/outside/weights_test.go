package outside

import (
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/sim/reckon"
)

// weights are sums that anybody can redo: each is met to half of the last digit
// that its source prints.
func weights() []row {
	const homeMalting = "seen, recomputed"
	list := []row{
		{what: "dry matter of 100 g at 8 %", unit: "g", digits: 1, source: 92.0, accepted: about(92.0, 0.05),
			key: "sui-generis-2023", standing: homeMalting, model: targetOf("100 g", "8 %", "42 %", dryGrams)},
		{what: "its weight at 42 %", unit: "g", digits: 2, source: 158.62, accepted: about(158.62, 0.005),
			key: "sui-generis-2023", standing: homeMalting, model: targetOf("100 g", "8 %", "42 %", grams)},
		{what: "moisture when it weighs 120 g", unit: "%", digits: 2, source: 23.33, accepted: about(23.33, 0.005),
			key: "sui-generis-2023", standing: homeMalting, model: moistureAt("120 g", "100 g", "8 %", "")},
		{what: "1000 kg at 25 % dried to 14 %", unit: "kg", digits: 2, source: 872.09, accepted: about(872.09, 0.005),
			key: "irri-moisture", standing: "seen", model: targetOf("1000 kg", "25 %", "14 %", kilograms)},
		{what: "weight lost for a point, to 15.5 %", unit: "%", digits: 5, source: 1.18343, accepted: about(1.18343, 0.000005),
			key: "pioneer-shrink", standing: "seen", model: targetOf("1000 kg", "16.5 %", "15.5 %", shrink)},
		{what: "weight lost from 25.5 to 15.5 %", unit: "%", digits: 3, source: 11.834, accepted: about(11.834, 0.0005),
			key: "pioneer-shrink", standing: "seen", model: targetOf("1000 kg", "25.5 %", "15.5 %", shrink)},
		{what: "1,000 kernels, 42 g at 15 % → 32 g at 2 %: yield", unit: "%", digits: 2, source: 76.19, accepted: about(76.19, 0.005),
			key: "britannica-malt", standing: "seen", model: yieldOf("42 g", "15 %", "32 g", "2 %", func(y reckon.YieldResult) float64 { return y.AsIs })},
		{what: "the same, dry malt of barley as it is", unit: "%", digits: 2, source: 74.67, accepted: about(74.67, 0.005),
			key: "britannica-malt", standing: "seen", model: yieldOf("42 g", "15 %", "32 g", "2 %", func(y reckon.YieldResult) float64 { return y.DryMalt })},
		{what: "the same, dry matter lost (the book prints 12.5)", unit: "%", digits: 2, source: 12.16, accepted: about(12.16, 0.005),
			key: "britannica-malt", standing: "seen, recomputed from its weights", model: yieldOf("42 g", "15 %", "32 g", "2 %", func(y reckon.YieldResult) float64 { return y.Lost })},
		{what: "1 t of barley at 12 % → 830 kg of malt at 5 %: dry matter lost", unit: "%", digits: 1, source: 10.4, accepted: about(10.4, 0.05),
			key: "magb-malt-facts", standing: "seen", model: yieldOf("1 t", "12 %", "830 kg", "5 %", func(y reckon.YieldResult) float64 { return y.Lost })},
	}
	return append(append(list, forgotten()...), counts()...)
}

// forgotten is what a weight tells when dry matter has been lost.
func forgotten() []row {
	return []row{
		{what: "malt at the weight of its grain (12 %), 5 % of dry matter lost", unit: "%", digits: 1, source: 16.4, accepted: about(16.4, 0.05),
			standing: "arithmetic", model: moistureAt("6 kg", "6 kg", "12 %", "5 %")},
		{what: "the same, 8 % lost", unit: "%", digits: 1, source: 19.0, accepted: about(19.0, 0.05),
			standing: "arithmetic", model: moistureAt("6 kg", "6 kg", "12 %", "8 %")},
		{what: "malt of truly 12 %, 8 % lost and not reckoned, reads", unit: "%", digits: 1, source: 4.3, accepted: about(4.3, 0.05),
			standing: "arithmetic", model: lossForgotten},
	}
}

// counts are a difference of temperatures and what a count of kernels is worth.
func counts() []row {
	return []row{
		{what: "a rise of 20 °F", unit: "K", digits: 2, source: 11.11, accepted: about(11.11, 0.005),
			key: "nist-sp811", standing: "definition", model: riseOf("20 °F")},
		{what: "95 of 100 kernels, 95 % interval, low end", unit: "%", digits: 1, source: 88.8, accepted: about(88.8, 0.05),
			key: "wilson-1927", standing: "formula", model: germinated("95", "100", lowEnd)},
		{what: "the same, high end", unit: "%", digits: 1, source: 97.8, accepted: about(97.8, 0.05),
			key: "wilson-1927", standing: "formula", model: germinated("95", "100", highEnd)},
		{what: "19 of 20 kernels, low end", unit: "%", digits: 1, source: 76.4, accepted: about(76.4, 0.05),
			key: "wilson-1927", standing: "formula", model: germinated("19", "20", lowEnd)},
		{what: "the same, high end", unit: "%", digits: 1, source: 99.1, accepted: about(99.1, 0.05),
			key: "wilson-1927", standing: "formula", model: germinated("19", "20", highEnd)},
	}
}

func parse(t testing.TB, text string) quantity.Quantity {
	t.Helper()
	q, err := quantity.Parse(text)
	require.NoError(t, err, text)
	return q
}

func start(t testing.TB, weight, moisture string) reckon.Start {
	return reckon.Start{Weight: parse(t, weight), Moisture: parse(t, moisture)}
}

func dryGrams(to reckon.TargetResult) float64  { return 1000 * to.DryMatter }
func grams(to reckon.TargetResult) float64     { return 1000 * to.Weight }
func kilograms(to reckon.TargetResult) float64 { return to.Weight }

// shrink is the weight lost of a tonne, per cent.
func shrink(to reckon.TargetResult) float64 { return -100 * to.Change / 1000 }

func targetOf(weight, moisture, wanted string, figure func(reckon.TargetResult) float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		to, err := reckon.Target(start(t, weight, moisture), parse(t, wanted), nil)
		require.NoError(t, err)
		return figure(to)
	}
}

func moistureAt(now, weight, moisture, gone string) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		var lost *quantity.Quantity
		if gone != "" {
			q := parse(t, gone)
			lost = &q
		}
		w, err := reckon.Weight(parse(t, now), start(t, weight, moisture), lost)
		require.NoError(t, err)
		return 100 * w.Moisture
	}
}

// lossForgotten weighs malt for 12 % with its loss, and reads the weight without.
func lossForgotten(t testing.TB) float64 {
	batch, lost := start(t, "6 kg", "12 %"), parse(t, "8 %")
	to, err := reckon.Target(batch, parse(t, "12 %"), &lost)
	require.NoError(t, err)
	weight, err := quantity.In(to.Weight, "kg")
	require.NoError(t, err)
	w, err := reckon.Weight(weight, batch, nil)
	require.NoError(t, err)
	return 100 * w.Moisture
}

func yieldOf(barley, at, malt, with string, share func(reckon.YieldResult) float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		y, err := reckon.Yield(start(t, barley, at), start(t, malt, with))
		require.NoError(t, err)
		return 100 * share(y)
	}
}

func riseOf(text string) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		q, err := parse(t, text).As(quantity.TemperatureDifference)
		require.NoError(t, err)
		return q.SI
	}
}

func lowEnd(g reckon.GerminationResult) float64  { return 100 * g.Low }
func highEnd(g reckon.GerminationResult) float64 { return 100 * g.High }

func germinated(k, n string, end func(reckon.GerminationResult) float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		g, err := reckon.Germination(parse(t, k), parse(t, n))
		require.NoError(t, err)
		return end(g)
	}
}
