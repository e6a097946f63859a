package reckon

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"maltwright/lang/quantity"
)

// GerminationResult is what a count of germinated kernels says of the lot, as shares
// of 0 to 1.
type GerminationResult struct {
	Share     float64 // of the kernels counted
	Low, High float64 // where the lot lies, 19 times in 20
	Working   []Step
	Notes     []Note
}

// confidence is the probability with which the interval holds the lot.
const confidence = 0.95

// mostKernels is more than anybody counts: a tonne has some 25 million.
const mostKernels = 1e8

// Germination gives the share of kernels that germinated, k of n, and the 95 %
// interval of Wilson 1927:
//
//	centre = (k + z²/2) / (n + z²)
//	half   = z·√(k·(n − k)/n + z²/4) / (n + z²)
//
// z is the 97.5 % point of the normal distribution, 1.96. Unlike the plain
// k/n ± 1.96·√(…) it stays within 0 to 100 % and holds for few kernels. It returns an
// *Error for counts that are not whole, for n below 1, and for k outside 0 to n.
func Germination(germinated, of quantity.Quantity) (GerminationResult, error) {
	k, err := count("germinated kernels", germinated)
	if err != nil {
		return GerminationResult{}, err
	}
	n, err := count("kernels", of)
	switch {
	case err != nil:
		return GerminationResult{}, err
	case n < 1:
		return GerminationResult{}, &Error{"of no kernels nothing can be said", "count at least 100 kernels"}
	case k > n:
		return GerminationResult{}, &Error{fmt.Sprintf("%.0f germinated of %.0f kernels is more than there were", k, n), "give the germinated kernels first: 95 of 100"}
	}
	r := GerminationResult{Share: k / n}
	z := distuv.UnitNormal.Quantile((1 + confidence) / 2)
	centre := (k + z*z/2) / (n + z*z)
	half := z * math.Sqrt(k*(n-k)/n+z*z/4) / (n + z*z)
	// At none and at all of the kernels one end is 0 or 1, but for rounding.
	r.Low, r.High = min(max(centre-half, 0), r.Share), max(min(centre+half, 1), r.Share)
	r.Working = []Step{
		Germinated{k, n, percents(r.Share)}, Centre{k, n, percents(centre)}, Half{k, n, half},
		Interval{percents(centre), half, percents(r.Low), percents(r.High)},
	}
	r.Notes = []Note{OneCount{}}
	return r, nil
}

// count takes a whole number of kernels.
func count(what string, q quantity.Quantity) (float64, error) {
	n := q.SI
	switch {
	case q.Dimension != quantity.Number && (q.Dimension != quantity.Count || q.Unit() == "times"):
		return 0, &Error{fmt.Sprintf("%s: %s is not a count", what, q), "write a number of kernels, such as 95"}
	case n < 0 || n > mostKernels || n != math.Trunc(n):
		return 0, &Error{fmt.Sprintf("%s: %s cannot be counted", what, q), "write a whole number, such as 95"}
	}
	return n, nil
}
