package command

import (
	"math"
	"time"
)

func hours(s float64) float64 { return rounded(s/3600, 3) }

func percent(w float64) float64 { return rounded(100*w, 2) }

func rounded(x float64, digits int) float64 {
	scale := math.Pow(10, float64(digits))
	return math.Round(x*scale)/scale + 0 // without a minus before nothing
}

// known gives a figure, or null where there is none.
func known(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

func stamp(t time.Time) string { return t.Format(time.RFC3339) }

func percentText(x float64) string {
	if known(x) == nil {
		return noFigure
	}
	return decimals(100*x, 1) + " %"
}
