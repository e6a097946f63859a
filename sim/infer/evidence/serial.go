package evidence

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
)

// # Readings that are near each other
//
// Two readings of one kind that are minutes apart have most of their error in common: the
// thermometer stands in the same spot, the same eye counts, the same water hangs on the
// kernels, and the forecast is off by the same. Their errors are taken to be correlated by
//
//	ρ(Δt) = √(s₁·s₂)·exp(−|Δt|/τ)
//
// with s the share of the variance that lasts, and τ how long. A reading then counts for
//
//	w = 1/Σ ρ, over all readings of its kind, itself with 1
//
// of an independent one. The Σ w of a long row is what the row tells of a constant by its
// correlation matrix R, 1ᵀR⁻¹1: both go to n·(1 − φ)/(1 + φ) for steps of φ = exp(−Δt/τ).
// Taking R itself would spread a slip of the pen over its neighbours; weighing leaves each
// residual to Student's distribution by itself.

// lasting is how long the error of a kind of reading lasts, τ in s (common practice). It is
// the time in which the spot in which a thermometer stands, or what clings to the grain,
// becomes another one; what lasts for days is for the axes.
var lasting = map[string]float64{
	vocabulary.PlaceWater: 3 * hour, vocabulary.PlaceAir: 3 * hour, vocabulary.PlaceRoom: 3 * hour, vocabulary.PlaceBed: 3 * hour,
	vocabulary.PlaceAirOn: hour, vocabulary.PlaceAirOff: hour, vocabulary.PlaceMalt: hour, vocabulary.PlaceOven: hour,
	model.Chit: 4 * hour, model.Acrospire: 4 * hour, kindRub: 4 * hour, kindWeight: hour, kindBag: hour,
}

const (
	hour = 3600.0

	lastingShare = 0.8 // of the variance of a thermometer, or of a finger; the rest is anew each time
)

// Kinds of readings that are no place of a thermometer and no count.
const kindRub, kindWeight, kindBag, kindTested = "rub", "weight", "bag", "tested"

// kindOf is the kind of a reading, within which errors last.
func kindOf(x model.Reading) string {
	switch x := x.(type) {
	case *model.Weighed:
		if x.OfBag {
			return kindBag
		}
		return kindWeight
	case *model.Counted:
		return x.What.Text
	case *model.Felt:
		return kindRub
	case *model.Read:
		return x.Temperature.Where
	}
	return kindTested
}

// weigh says of each observation how much of an independent one it counts for. What is
// struck has no part in it.
func (t *Trial) weigh() {
	rows := map[string][]*Observation{}
	for i := range t.Observations {
		o := &t.Observations[i]
		o.Worth = 1
		if kind := kindOf(o.Reading); lasting[kind] > 0 && !o.Reading.When().IsZero() && !o.Struck {
			rows[kind] = append(rows[kind], o)
		}
	}
	for kind, row := range rows {
		sorted.Stable(row, func(a, b *Observation) int { return a.Reading.When().Compare(b.Reading.When().Time) })
		before := inCommon(row, lasting[kind])
		slices.Reverse(row)
		behind := inCommon(row, lasting[kind])
		slices.Reverse(behind)
		slices.Reverse(row)
		for i, o := range row {
			o.Worth = 1 / (1 + math.Sqrt(o.lasts)*(before[i]+behind[i]))
		}
	}
}

// inCommon gives of each reading of a row Σ √s·exp(−|Δt|/τ) over those before it in the row.
func inCommon(row []*Observation, tau float64) []float64 {
	out := make([]float64, len(row))
	for i := 1; i < len(row); i++ {
		gap := math.Abs(row[i].Reading.When().Sub(row[i-1].Reading.When().Time).Seconds())
		out[i] = (out[i-1] + math.Sqrt(row[i-1].lasts)) * math.Exp(-gap/tau)
	}
	return out
}
