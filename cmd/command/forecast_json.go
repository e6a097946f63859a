package command

import (
	"encoding/json"
	"math"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// The JSON of a forecast, as docs/json.md describes it. Hours and per cent are
// rounded to what the model can mean: 0.001 h, 0.01 points, 1 g.

type jsonForecast struct {
	Process string           `json:"process"`
	Start   string           `json:"start,omitempty"`
	Stages  []jsonStage      `json:"stages"`
	Gates   []jsonGate       `json:"gates"`
	Expects []jsonExpect     `json:"expects"`
	Totals  jsonTotals       `json:"totals"`
	Growth  *jsonGrowth      `json:"growth"`
	Signs   *jsonIndications `json:"indications"`
	Assumed []jsonAssumption `json:"assumed"`
	Spread  *jsonSpread      `json:"spread,omitempty"`
	Corners []jsonCorner     `json:"corners,omitempty"`
}

type jsonStage struct {
	Stage string     `json:"stage"`
	Steps []jsonStep `json:"steps"`
}

type jsonStep struct {
	Label         string           `json:"label"`
	Start         float64          `json:"start_h"`
	End           float64          `json:"end_h"`
	MoistureStart float64          `json:"moisture_start_wb"`
	MoistureEnd   float64          `json:"moisture_end_wb"`
	Weight        float64          `json:"weight_end_kg"`
	Temperature   *jsonTemperature `json:"temperature_c"`
	EndedBy       string           `json:"ended_by"`
}

type jsonTemperature struct {
	Place string  `json:"place"`
	From  float64 `json:"from"`
	To    float64 `json:"to"`
}

type jsonGate struct {
	Stage   string   `json:"stage"`
	Text    string   `json:"text"`
	Met     bool     `json:"met"`
	Reached *float64 `json:"reached_h"`
}

type jsonExpect struct {
	Text  string `json:"text"`
	Holds bool   `json:"holds"`
}

type jsonTotals struct {
	SteepOut         *float64 `json:"steep_out_h"`
	SteepOutMoisture *float64 `json:"steep_out_moisture_wb"`
	Total            float64  `json:"total_h"`
	FinalMoisture    float64  `json:"final_moisture_wb"`
	Malt             float64  `json:"malt_kg"`
	Yield            float64  `json:"yield_as_is_pct"`
	DryMatterLoss    float64  `json:"dry_matter_loss_pct"`
	KilnEnergy       float64  `json:"kiln_heat_kwh"`
	SteepWater       float64  `json:"steep_water_l"`
	CO2              float64  `json:"co2_kg"`
}

// jsonGrowth is what a count of a hundred corns should show at the end of growth.
type jsonGrowth struct {
	Chitted float64            `json:"chitted_pct"`
	Mean    float64            `json:"acrospire_mean"`
	Classes map[string]float64 `json:"acrospire_classes_pct"`
	Rub     string             `json:"rub"`
}

// jsonIndications are what heat does to the malt.
type jsonIndications struct {
	Standing  string  `json:"standing"`
	Diastatic float64 `json:"diastatic_kept_pct"`
	Alpha     float64 `json:"alpha_amylase_kept_pct"`
	Precursor float64 `json:"dms_precursor_left_pct"`
	Colour    float64 `json:"colour_ebc"`
}

var classNames = [...]string{
	grain.NoGrowth: "none", grain.ToQuarter: "to_quarter", grain.ToHalf: "to_half",
	grain.ToThreeQuarters: "to_three_quarters", grain.ToFull: "to_whole", grain.Overgrown: "overgrown",
}

func growthJSON(f *forecast.Forecast) *jsonGrowth {
	for i := len(f.Pieces) - 1; i >= 0; i-- {
		if p := f.Pieces[i]; p.Stage == model.GerminateStage {
			g := &jsonGrowth{percent(p.Chitted), rounded(p.Acrospire, 3), map[string]float64{}, p.Rub.String()}
			for c, name := range classNames {
				g.Classes[name] = percent(p.Classes[c])
			}
			return g
		}
	}
	return nil
}

func indicationsJSON(t *forecast.Totals) *jsonIndications {
	q := t.Quality
	if q.Colour == 0 {
		return nil
	}
	return &jsonIndications{"calibrated to practice, no laboratory values", percent(q.Diastatic), percent(q.Alpha), percent(q.Precursor), rounded(q.Colour, 1)}
}

type jsonAssumption struct {
	What  string `json:"what"`
	Value string `json:"value"`
	Why   string `json:"why"`
}

func hours(s float64) float64   { return rounded(s/3600, 3) }
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

func writeForecastJSON(w *World, f *forecast.Forecast, more sure, start *time.Time) error {
	out := jsonForecast{Process: f.Process.Name, Stages: []jsonStage{}, Gates: []jsonGate{}, Expects: []jsonExpect{}, Assumed: []jsonAssumption{}}
	if start != nil {
		out.Start = start.Format(time.RFC3339)
	}
	for _, st := range f.Stages {
		js := jsonStage{Stage: string(st.Kind), Steps: []jsonStep{}}
		for _, s := range st.Steps {
			js.Steps = append(js.Steps, stepJSON(s))
		}
		out.Stages = append(out.Stages, js)
	}
	for _, g := range f.Gates {
		out.Gates = append(out.Gates, jsonGate{string(g.Stage), g.Text, g.Met, known(hours(g.Reached))})
	}
	for _, e := range f.Expects {
		out.Expects = append(out.Expects, jsonExpect{e.Test.Place.Text(), e.Holds})
	}
	for _, a := range f.Assumed {
		out.Assumed = append(out.Assumed, jsonAssumption(a))
	}
	t := f.Totals
	out.Totals = jsonTotals{known(hours(t.SteepOut)), known(percent(t.SteepOutMoisture)), hours(t.Total), percent(t.FinalMoisture),
		rounded(t.Malt, 3), percent(t.Yield), percent(t.DryMatterLost), rounded(t.KilnEnergy/joulesPerKWh, 2),
		rounded(t.SteepWater, 1), rounded(t.CO2, 3)}
	out.Growth, out.Signs = growthJSON(f), indicationsJSON(&t)
	out.Spread, out.Corners = spreadJSON(more.spread), cornersJSON(more.corners)
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func stepJSON(s forecast.Step) jsonStep {
	j := jsonStep{s.Label, hours(s.Start), hours(s.End), percent(s.MoistureStart), percent(s.MoistureEnd), rounded(s.WeightEnd, 3), nil, string(s.EndedBy)}
	if s.Temperature.Known {
		j.Temperature = &jsonTemperature{s.Temperature.Place, rounded(s.Temperature.From, 1), rounded(s.Temperature.To, 1)}
	}
	return j
}

// writeForecastCSV writes a line a step, with the units in the heads.
func writeForecastCSV(w *World, f *forecast.Forecast, _ sure, start *time.Time) error {
	head := []string{"stage", "step", "start_h", "end_h", "temperature_place", "temperature_from_c", "temperature_to_c",
		"moisture_start_wb_pct", "moisture_end_wb_pct", "weight_end_kg", "ended_by"}
	if start != nil {
		head = append(head, "start_time", "end_time")
	}
	rows := [][]string{head}
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			row := []string{string(st.Kind), s.Label, figureCell(hours(s.Start), 3), figureCell(hours(s.End), 3), "", "", "",
				figureCell(percent(s.MoistureStart), 2), figureCell(percent(s.MoistureEnd), 2), figureCell(s.WeightEnd, 3), string(s.EndedBy)}
			if t := s.Temperature; t.Known {
				row[4], row[5], row[6] = t.Place, figureCell(t.From, 1), figureCell(t.To, 1)
			}
			if start != nil {
				row = append(row, clockAt(*start, s.Start).Format(time.RFC3339), clockAt(*start, s.End).Format(time.RFC3339))
			}
			rows = append(rows, row)
		}
	}
	return writeCSV(w.Out, rows)
}

func clockAt(start time.Time, s float64) time.Time {
	return start.Add(time.Duration(math.Round(s)) * time.Second)
}
