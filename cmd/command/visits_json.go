package command

import (
	"encoding/json"
	"time"

	"maltwright/sim/visits"
)

// The JSON of a timetable, as docs/json.md describes it.

type jsonTimetable struct {
	Process string      `json:"process"`
	Start   string      `json:"start"`
	Ready   string      `json:"ready"`
	Rested  *string     `json:"rested"`
	Visits  []jsonVisit `json:"visits"`
	Night   *jsonNights `json:"night"`
}

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

// jsonNights is how many visits fall in the night, by the start.
type jsonNights struct {
	Given jsonStart `json:"given"`
	Best  jsonStart `json:"best"`
	Worst jsonStart `json:"worst"`
}

type jsonStart struct {
	Start  string `json:"start"`
	Visits int    `json:"visits"`
}

func stamp(t time.Time) string { return t.Format(time.RFC3339) }

func writeVisitsJSON(w *World, t timetable) error {
	out := jsonTimetable{Process: t.f.Process.Name, Start: stamp(t.start), Ready: stamp(t.ready), Visits: []jsonVisit{}}
	if !t.rested.IsZero() {
		s := stamp(t.rested)
		out.Rested = &s
	}
	for i, v := range t.visits {
		j := jsonVisit{Time: stamp(clockAt(t.start, v.At)), At: hours(v.At)}
		j.Moisture, j.Weight = figures(v)
		if n := t.night; n != nil {
			night, awake := n.marked[i], !n.marked[i] && !n.unhurried[i]
			j.Night, j.Awake = &night, &awake
		}
		for _, k := range v.Tasks {
			j.Tasks = append(j.Tasks, jsonTask{string(k.Stage), string(k.Kind), t.say(k)})
		}
		out.Visits = append(out.Visits, j)
	}
	if n := t.night; n != nil {
		out.Night = &jsonNights{jsonStart{stamp(t.start), n.given}, jsonStart{stamp(n.bestAt), n.best}, jsonStart{stamp(n.worstAt), n.worst}}
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

// figures gives moisture in per cent and weight in kg, or nil.
func figures(v visits.Visit) (moisture, weight *float64) {
	return known(percent(v.Moisture)), known(rounded(v.Weight, 3))
}
