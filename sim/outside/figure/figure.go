// Package figure holds figures of steeping, of drying and of what heat does to malt that
// others measured or practise; those of drying have the function that asks a material for
// the same. The table of outside checks and the fits share them.
package figure

import (
	"math"

	"maltwright/sim/drying"
)

// Figure is one of them. Of those that ask no material Model is nil.
type Figure struct {
	What     string // with its conditions
	Unit     string
	Digits   int     // behind the point, as far as the figure means something
	Source   float64 // where it is one value
	Says     string  // the source's own figure where it is not
	Accepted Band    // of the model
	Key      string  // in docs/sources.bib; empty for arithmetic
	Standing string

	// Model gives the figure of a material. It returns the errors of the models.
	Model func(drying.Material) (float64, error)
}

// Band is a closed interval.
type Band struct{ Low, High float64 }

// AtMost is everything up to v.
func AtMost(v float64) Band { return Band{math.Inf(-1), v} }

// AtLeast is everything from v on.
func AtLeast(v float64) Band { return Band{v, math.Inf(1)} }

// Within is v, give or take by.
func Within(v, by float64) Band { return Band{v - by, v + by} }

const hour = 3600.0

// Wet turns a moisture on the dry basis, kg/kg, into one on the wet basis.
func Wet(x float64) float64 { return x / (1 + x) }

// Dry turns a moisture on the wet basis into one on the dry basis.
func Dry(w float64) float64 { return w / (1 - w) }
