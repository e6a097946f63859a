package command

import (
	"encoding/json"
	"math"
	"strings"

	"maltwright/lang/source"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/follow"
)

// The JSON of a batch that is followed, as docs/json.md describes it.

type jsonFollowed struct {
	Batch    string           `json:"batch"`
	Process  string           `json:"process"`
	Began    string           `json:"began"`
	At       string           `json:"at"`
	Stage    string           `json:"stage"`
	Step     string           `json:"step"`
	Over     bool             `json:"over"`
	Now      jsonStand        `json:"now"`
	Waits    []jsonWait       `json:"waits"`
	Due      []jsonVisit      `json:"due"`
	Late     []jsonLate       `json:"late"`
	Steps    []jsonStepSpread `json:"steps"`
	Outcome  jsonOutcome      `json:"outcome"`
	Readings []jsonReading    `json:"readings"`
	Factors  []jsonFactor     `json:"factors"`
	Sure     jsonSure         `json:"sure"`
}

type jsonStand struct {
	Moisture     *jsonPoints `json:"moisture_wb"`
	Weight       *jsonPoints `json:"weight_kg"`
	Lost         *jsonPoints `json:"dry_matter_lost"`
	Chit         *jsonPoints `json:"chit"`
	Acrospire    *jsonPoints `json:"acrospire"`
	Modification *jsonPoints `json:"modification"`
	Bed          *jsonPoints `json:"bed_c"`
	AirOff       *jsonPoints `json:"air_off_c"`
	Malt         *jsonPoints `json:"malt_c"`
}

type jsonWait struct {
	Stage string      `json:"stage"`
	Text  string      `json:"text"`
	Hold  bool        `json:"hold"`
	Open  bool        `json:"open"`
	Left  *jsonPoints `json:"left_h"`
	Never bool        `json:"never"`
}

type jsonLate struct {
	Kind  string  `json:"kind"`
	Stage string  `json:"stage"`
	Since string  `json:"since"`
	Hours float64 `json:"late_h"`
	Text  string  `json:"text"`
}

type jsonOutcome struct {
	Total    *jsonPoints `json:"total_h"`
	Moisture *jsonPoints `json:"final_moisture_wb"`
	Malt     *jsonPoints `json:"malt_kg"`
	Yield    *jsonPoints `json:"yield"`
}

type jsonReading struct {
	Line     int         `json:"line"`
	Text     string      `json:"text"`
	Observed float64     `json:"observed"`
	Error    float64     `json:"error"`
	Expected *jsonPoints `json:"expected"`
	Off      *float64    `json:"off"`
	Doubt    string      `json:"doubt,omitempty"`
	Words    string      `json:"words,omitempty"`
}

type jsonFactor struct {
	Name  string      `json:"name"`
	Value *jsonPoints `json:"value"`
}

type jsonSure struct {
	Members   int     `json:"members"`
	Effective float64 `json:"effective"`
	Redrawn   int     `json:"redrawn"`
}

// had gives the points of a figure, or nil where under half of the members have it.
func had(s ensemble.Spread, as func(float64) float64) *jsonPoints {
	if s.Share < 0.5 {
		return nil
	}
	out := points(s, as)
	return &out
}

func digits(n int) func(float64) float64 { return func(v float64) float64 { return rounded(v, n) } }

func writeFollowJSON(w *World, f followed) error {
	s := f.Stand
	out := jsonFollowed{Batch: f.Trial.Batch.Name, Process: f.Trial.Process.Name, Began: stamp(f.began), At: stamp(f.at),
		Stage: string(s.Sight.Stage), Step: s.Sight.Step, Over: f.Over(),
		Now: jsonStand{had(s.Moisture, percent), had(s.Weight, digits(3)), had(s.Lost, percent), had(s.Chit, percent),
			had(s.Acrospire, digits(3)), had(s.Modification, digits(3)), had(s.Bed, digits(1)), had(s.AirOff, digits(1)), had(s.Malt, digits(1))},
		Waits: []jsonWait{}, Due: []jsonVisit{}, Late: []jsonLate{}, Steps: []jsonStepSpread{}, Readings: []jsonReading{},
		Sure: jsonSure{f.Members, rounded(f.EffectiveSize, 1), f.Rounds}}
	out.Outcome = jsonOutcome{had(f.Ensemble.Total(totalsShown[1].of), hours), had(f.Ensemble.Total(totalsShown[2].of), percent),
		had(f.Ensemble.Total(totalsShown[3].of), digits(3)), had(f.Ensemble.Total(totalsShown[4].of), percent)}
	f.timesJSON(&out)
	f.readingsJSON(w, &out)
	for _, a := range f.factors() {
		out.Factors = append(out.Factors, jsonFactor{a.name, had(a.Spread, digits(3))})
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

// timesJSON fills in what is to come and what is late.
func (f followed) timesJSON(out *jsonFollowed) {
	for _, x := range f.Waits {
		j := jsonWait{Stage: string(x.Stage), Text: oneLine(x.Text), Hold: x.Hold, Open: x.Open, Never: x.Left.P50 > follow.Never}
		if x.Left.P90 <= follow.Never {
			left := points(x.Left, hours)
			j.Left = &left
		}
		out.Waits = append(out.Waits, j)
	}
	t := timetable{f: f.Centre, start: f.began}
	t.pounds, t.fh = shownIn(f.Trial.Process)
	for _, v := range f.Due {
		j := jsonVisit{Time: stamp(clockAt(f.began, v.At)), At: hours(v.At)}
		j.Moisture, j.Weight = figures(v)
		for _, k := range v.Tasks {
			j.Tasks = append(j.Tasks, jsonTask{string(k.Stage), string(k.Kind), t.say(k)})
		}
		out.Due = append(out.Due, j)
	}
	for _, l := range f.Late {
		out.Late = append(out.Late, jsonLate{string(l.Kind), string(l.Stage), stamp(clockAt(f.began, l.Since)), hours(f.Following.Now - l.Since), oneLine(l.Text)})
	}
	for _, s := range f.toCome() {
		out.Steps = append(out.Steps, jsonStepSpread{string(s.Stage), s.Label, points(s.End, hours), points(s.Moisture, percent), points(s.Weight, kilos)})
	}
}

// readingsJSON fills in every reading beside what was expected.
func (f followed) readingsJSON(w *World, out *jsonFollowed) {
	p := followSheet{sheet: sheet{World: w}, followed: f}
	p.pounds, p.fahrenheit = shownIn(f.Trial.Process)
	doubts := map[int]follow.Doubt{}
	for _, d := range f.Doubts {
		doubts[d.Observation] = d
	}
	for i, j := range f.Judged {
		place := j.Observation.Reading.Place()
		r := jsonReading{Line: place.File.Position(place.Start, source.Characters).Line, Text: oneLine(place.Text()), Observed: rounded(j.Observation.Value, 4), Error: rounded(j.Observation.Error, 4),
			Expected: had(j.Expected, digits(4))}
		if !math.IsNaN(j.Residual) {
			off := rounded(j.Residual, 2)
			r.Off = &off
		}
		if d, ok := doubts[i]; ok {
			r.Doubt, r.Words = string(d.Kind), strings.TrimPrefix(p.doubt(d), r.Text+": ")
		}
		out.Readings = append(out.Readings, r)
	}
}
