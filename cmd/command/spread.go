package command

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// sure is what --spread and --worst add to a forecast.
type sure struct {
	spread  *ensemble.Ensemble
	corners []ensemble.Corner
}

// ask makes the ensemble and the corners that were asked for. An interrupt ends it.
func (c Forecast) sure(w *World, p *model.Process) (sure, error) {
	var s sure
	ctx, stop := w.interruptible()
	defer stop()
	var err error
	if c.Spread {
		done := w.counter("forecast")
		s.spread, err = ensemble.Run(ctx, p, ensemble.Options{Members: c.Members, Progress: done.say})
		done.wipe()
	}
	if err == nil && c.Worst {
		s.corners, err = ensemble.Corners(ctx, p)
	}
	if ctx.Err() != nil {
		return s, errInterrupted
	}
	if errors.Is(err, work.ErrPool) {
		return s, failure{ExitFindings, fmt.Errorf(
			"%s: no spread, for the forecasts would take over %d steps of the model each; %s", c.File, work.Shared, work.Dearest)}
	}
	return s, err
}

// totalsShown are the totals whose spread is told, in this order.
var totalsShown = []struct {
	name   string
	of     func(*forecast.Totals) float64
	format func(float64) string
}{
	{"steep-out moisture", func(t *forecast.Totals) float64 { return t.SteepOutMoisture }, percentText},
	{"total time", func(t *forecast.Totals) float64 { return t.Total }, lasting},
	{"final moisture", func(t *forecast.Totals) float64 { return t.FinalMoisture }, percentText},
	{"malt", func(t *forecast.Totals) float64 { return t.Malt }, kilograms},
	{"yield as is", func(t *forecast.Totals) float64 { return t.Yield }, percentText},
	{"diastatic enzymes kept", func(t *forecast.Totals) float64 { return t.Quality.Diastatic }, percentText},
}

func percentText(x float64) string {
	if known(x) == nil {
		return noFigure
	}
	return decimals(100*x, 1) + " %"
}

// spreadOut writes how the forecast spreads.
func (p *sheet) spreadOut(e *ensemble.Ensemble) {
	if e == nil {
		return
	}
	p.line("")
	p.line("%s", p.bold(fmt.Sprintf("how sure: %d forecasts of likely lots, houses and weather", len(e.Members))))
	p.line("%-24s%10s%10s%10s   %s", "", "1 in 10", "middle", "9 in 10", "moisture %")
	for _, s := range e.Steps() {
		often := ""
		if s.End.Share < 0.995 {
			often = fmt.Sprintf("  in %.0f %%", 100*s.End.Share)
		}
		p.line("%-24s%10s%10s%10s   %s", "  "+s.Label+" ends", elapsed(s.End.P10), elapsed(s.End.P50), elapsed(s.End.P90),
			fmt.Sprintf("%.1f %.1f %.1f%s", 100*s.Moisture.P10, 100*s.Moisture.P50, 100*s.Moisture.P90, often))
	}
	for _, t := range totalsShown {
		if s := e.Total(t.of); s.Share > 0 {
			format := t.format
			if t.name == "malt" {
				format = p.mass
			}
			p.line("%-24s%10s%10s%10s", t.name, format(s.P10), format(s.P50), format(s.P90))
		}
	}
	for _, o := range append(e.Gates(), e.Expectations()...) {
		if o.Holds < 0.995 {
			p.para("at risk", "%s: holds in %.0f of 100", words.Safe(o.Text), 100*o.Holds)
		}
	}
	p.drivers("final moisture", e.Drivers(totalsShown[2].of))
	p.drivers("total time", e.Drivers(totalsShown[1].of))
}

// mostDrivers is how many drivers of a figure are told.
const mostDrivers = 3

func (p *sheet) drivers(figure string, list []ensemble.Driver) {
	if len(list) == 0 {
		return
	}
	var parts []string
	for _, d := range list[:min(mostDrivers, len(list))] {
		parts = append(parts, fmt.Sprintf("%s (%.0f %%)", d.Unknown.Name, 100*d.Share))
	}
	first := list[0]
	p.para("driven by", "%s: %s. To know it better, %s; that could narrow the spread by up to %.0f %%.",
		figure, strings.Join(parts, ", "), first.Unknown.Learn, 100*(1-math.Sqrt(1-first.Share)))
}

// corners writes where in the bands of the site the process breaks.
func (p *sheet) corners(list []ensemble.Corner) {
	if list == nil {
		return
	}
	p.line("")
	p.line("%s", p.bold("the corners of the site's bands"))
	broken := 0
	for _, c := range list {
		if len(c.Broken) > 0 {
			broken++
			p.para("breaks", "%s: %s", c.Name, words.Safe(strings.Join(c.Broken, "; ")))
		}
	}
	if broken == 0 {
		p.para("", "every gate is met and every promise kept in all %d of them", len(list))
	}
}

// jsonSpread is what --spread and --worst add to the JSON.
type jsonSpread struct {
	Members int                     `json:"members"`
	Steps   []jsonStepSpread        `json:"steps"`
	Totals  map[string]jsonPoints   `json:"totals"`
	Gates   []jsonOdds              `json:"gates"`
	Expects []jsonOdds              `json:"expects"`
	Drivers map[string][]jsonDriver `json:"drivers"`
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

type jsonOdds struct {
	Text  string  `json:"text"`
	Holds float64 `json:"holds"`
}

type jsonDriver struct {
	Unknown string  `json:"unknown"`
	Share   float64 `json:"share"`
	Learn   string  `json:"learn"`
}

type jsonCorner struct {
	Corner string   `json:"corner"`
	Broken []string `json:"broken"`
}

func points(s ensemble.Spread, as func(float64) float64) jsonPoints {
	return jsonPoints{known(as(s.P10)), known(as(s.P50)), known(as(s.P90)), rounded(s.Share, 3)}
}

func kilos(x float64) float64 { return rounded(x, 3) }

func spreadJSON(e *ensemble.Ensemble) *jsonSpread {
	if e == nil {
		return nil
	}
	out := &jsonSpread{Members: len(e.Members), Totals: map[string]jsonPoints{}, Drivers: map[string][]jsonDriver{}, Gates: []jsonOdds{}, Expects: []jsonOdds{}}
	for _, s := range e.Steps() {
		out.Steps = append(out.Steps, jsonStepSpread{string(s.Stage), s.Label, points(s.End, hours), points(s.Moisture, percent), points(s.Weight, kilos)})
	}
	for name, f := range map[string]struct {
		of func(*forecast.Totals) float64
		as func(float64) float64
	}{
		"steep_out_moisture_wb": {func(t *forecast.Totals) float64 { return t.SteepOutMoisture }, percent},
		"total_h":               {func(t *forecast.Totals) float64 { return t.Total }, hours},
		"final_moisture_wb":     {func(t *forecast.Totals) float64 { return t.FinalMoisture }, percent},
		"malt_kg":               {func(t *forecast.Totals) float64 { return t.Malt }, kilos},
		"yield_as_is_pct":       {func(t *forecast.Totals) float64 { return t.Yield }, percent},
	} {
		out.Totals[name] = points(e.Total(f.of), f.as)
		for _, d := range e.Drivers(f.of) {
			out.Drivers[name] = append(out.Drivers[name], jsonDriver{d.Unknown.Name, rounded(d.Share, 3), d.Unknown.Learn})
		}
	}
	for _, o := range e.Gates() {
		out.Gates = append(out.Gates, jsonOdds{o.Text, rounded(o.Holds, 3)})
	}
	for _, o := range e.Expectations() {
		out.Expects = append(out.Expects, jsonOdds{o.Text, rounded(o.Holds, 3)})
	}
	return out
}

func cornersJSON(list []ensemble.Corner) []jsonCorner {
	var out []jsonCorner
	for _, c := range list {
		out = append(out, jsonCorner{c.Name, append([]string{}, c.Broken...)})
	}
	return out
}
