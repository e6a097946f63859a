package grain

import "math"

// Classes of acrospire length, as a maltster counts them on a hundred kernels.
const (
	NoGrowth        = iota // no chit
	ToQuarter              // chitted, up to a quarter of the kernel
	ToHalf                 // over a quarter, up to a half
	ToThreeQuarters        // over a half, up to three quarters
	ToFull                 // over three quarters, up to the whole kernel
	Overgrown              // longer than the kernel
	classCount
)

// AcrospireClasses holds the share of all kernels in each class, indexed by
// [NoGrowth] to [Overgrown]; the shares add up to one.
type AcrospireClasses [classCount]float64

// Acrospire gives the mean acrospire length as a share of the kernel, which is
// that of the middle kernel: straight lines through the profile's marks over the
// clock (°C·h) since half the kernels chitted, nil before, and past a full
// acrospire the last line goes on.
func (p *Profile) Acrospire(clock float64) float64 {
	grown := clock - p.Chit
	if !(grown > 0) {
		return 0
	}
	k, before := 0, 0.0
	for k < len(p.Marks)-1 && grown > p.Marks[k] {
		before = p.Marks[k]
		k++
	}
	return (float64(k) + (grown-before)/(p.Marks[k]-before)) / float64(len(p.Marks))
}

// Classes gives the share of all kernels in each acrospire class, when chitted of
// them have chitted and the clock stands at clock, °C·h.
func (p *Profile) Classes(clock, chitted float64) AcrospireClasses {
	var c AcrospireClasses
	c[NoGrowth] = 1 - chitted
	past, due := chitted, p.Due(clock)
	for k, mark := range p.Marks {
		next := 0.0
		if due > 0 {
			next = chitted * math.Min(1, normal(p.slowest(clock, mark))/due)
		}
		c[ToQuarter+k] = past - next
		past = next
	}
	c[Overgrown] = past
	return c
}

// slowest solves C·e^(σc·z) + mark·e^(σa·z) = clock for z, how slow the slowest
// kernel past the mark is, in standard deviations. The left side is convex and
// rises with z, so Newton's steps from above never overshoot; the start is
// above because each term alone stays under the clock at the root.
func (p *Profile) slowest(clock, mark float64) float64 {
	if !(clock > 0) {
		return math.Inf(-1)
	}
	z := math.Min(math.Log(clock/p.Chit)/p.ChitSpread, math.Log(clock/mark)/p.MarkSpread)
	for range 60 {
		a, b := p.Chit*math.Exp(p.ChitSpread*z), mark*math.Exp(p.MarkSpread*z)
		step := (a + b - clock) / (a*p.ChitSpread + b*p.MarkSpread)
		z -= step
		if math.Abs(step) < 1e-12*(1+math.Abs(z)) {
			break
		}
	}
	return z
}

// Rootlets gives the rootlets as a share of the first dry matter: the profile's
// share at full growth in proportion to the mean acrospire, and no more once
// that is full.
func (p *Profile) Rootlets(clock float64) float64 {
	return p.RootletShare * math.Min(1, p.Acrospire(clock))
}
