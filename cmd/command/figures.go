package command

import (
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/sim/ensemble"
	"maltwright/sim/visits"
)

type jsonVisit struct {
	Time     string     `json:"time"`
	At       float64    `json:"at_h"`
	Awake    *bool      `json:"awake"`
	Night    *bool      `json:"night"`
	Moisture *float64   `json:"moisture_wb"`
	Weight   *float64   `json:"weight_kg"`
	Tasks    []jsonTask `json:"tasks"`
}

type jsonTask struct {
	Stage string `json:"stage"`
	Kind  string `json:"kind"`
	Words string `json:"words"`
}

type jsonPoints struct {
	P10   *float64 `json:"p10"`
	P50   *float64 `json:"p50"`
	P90   *float64 `json:"p90"`
	Share float64  `json:"share"`
}

type jsonStepSpread struct {
	Stage    string     `json:"stage"`
	Label    string     `json:"label"`
	End      jsonPoints `json:"end_h"`
	Moisture jsonPoints `json:"moisture_end_wb"`
	Weight   jsonPoints `json:"weight_end_kg"`
}

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

func points(s ensemble.Spread, as func(float64) float64) jsonPoints {
	return jsonPoints{known(as(s.P10)), known(as(s.P50)), known(as(s.P90)), rounded(s.Share, 3)}
}

func kilos(x float64) float64 { return rounded(x, 3) }

func stamp(t time.Time) string { return t.Format(time.RFC3339) }

// figures gives moisture in per cent and weight in kg, or nil.
func figures(v visits.Visit) (moisture, weight *float64) {
	return known(percent(v.Moisture)), known(rounded(v.Weight, 3))
}

func clockAt(start time.Time, s float64) time.Time {
	return start.Add(time.Duration(math.Round(s)) * time.Second)
}

func percentText(x float64) string {
	if known(x) == nil {
		return noFigure
	}
	return decimals(100*x, 1) + " %"
}

// spreadOf gives back a spread of an answer as numbers.
func spreadOf[T interface {
	~float64
	answer.Figure
}](s answer.Spread[T]) ensemble.Spread {
	return ensemble.Spread{P10: float64(s.P10), P50: float64(s.P50), P90: float64(s.P90), Share: float64(s.Share)}
}
