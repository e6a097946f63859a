package command

import (
	"encoding/json"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/infer/learn"
)

// The JSON of what was learnt, as docs/json.md describes it.
type jsonLesson struct {
	Batches  []jsonTaught  `json:"batches"`
	LeftOut  []jsonTaught  `json:"left_out"`
	Replaces []string      `json:"replaces"`
	Factors  []jsonLearnt  `json:"factors"`
	Alike    []jsonAlike   `json:"alike"`
	Misses   []jsonMiss    `json:"misses"`
	Lengths  []jsonLasting `json:"lengths"`
	House    *string       `json:"house"`
}

type jsonTaught struct {
	File    string `json:"file"`
	Batch   string `json:"batch"`
	Process string `json:"process"`
	Reason  string `json:"reason,omitempty"`
}

type jsonLearnt struct {
	Factor  string  `json:"factor"`
	Of      *string `json:"of"`
	Value   float64 `json:"value"`
	Error   float64 `json:"error"`
	Usual   float64 `json:"usual"`
	UsualSD float64 `json:"usual_sd"`
	Told    float64 `json:"told"`
	Known   bool    `json:"known"`
	Batches int     `json:"batches"`
	Learn   string  `json:"learn"`
}

type jsonAlike struct {
	A           string  `json:"a"`
	B           string  `json:"b"`
	Batch       *string `json:"batch"`
	Correlation float64 `json:"correlation"`
}

type jsonMiss struct {
	Reading  string  `json:"reading"`
	Unit     string  `json:"unit"`
	Readings int     `json:"readings"`
	Learnt   float64 `json:"learnt"`
	Model    float64 `json:"model"`
}

type jsonLasting struct {
	Batch    string  `json:"batch"`
	What     string  `json:"what"`
	Recorded float64 `json:"recorded_h"`
	Learnt   float64 `json:"learnt_h"`
	Model    float64 `json:"model_h"`
}

// missUnits are the units of root mean squares, which are those of the result but for
// moisture in points.
var missUnits = map[learn.Kind]struct {
	unit  string
	scale float64
}{
	learn.Weights: {"kg", 1}, learn.Moistures: {"points", 100}, learn.Acrospires: {"of the corn", 1}, learn.Temperatures: {"K", 1},
}

func writeLearnJSON(w *World, l *lesson) error {
	out := jsonLesson{Batches: []jsonTaught{}, LeftOut: []jsonTaught{}, Replaces: append([]string{}, l.Replaces...),
		Factors: []jsonLearnt{}, Alike: []jsonAlike{}, Misses: []jsonMiss{}, Lengths: []jsonLasting{}}
	for _, b := range l.Batches {
		out.Batches = append(out.Batches, taughtJSON(b, ""))
	}
	for _, x := range l.Left {
		out.LeftOut = append(out.LeftOut, taughtJSON(x.Batch, x.Reason))
	}
	for _, f := range l.Factors {
		out.Factors = append(out.Factors, factorJSON(f))
	}
	for _, a := range l.Correlated {
		j := jsonAlike{A: words.Safe(a.A), B: words.Safe(a.B), Correlation: rounded(a.Correlation, 3)}
		if a.Of != nil {
			j.Batch = safely(a.Of.Name)
		}
		out.Alike = append(out.Alike, j)
	}
	for _, m := range l.PredictionErrors {
		u := missUnits[m.Kind]
		out.Misses = append(out.Misses, jsonMiss{string(m.Kind), u.unit, m.Readings, rounded(u.scale*m.Learnt, 4), rounded(u.scale*m.Model, 4)})
	}
	for _, x := range l.Durations {
		out.Lengths = append(out.Lengths, jsonLasting{words.Safe(x.Batch.Name), string(x.What), hours(x.Recorded), hours(x.Learnt), hours(x.Model)})
	}
	if l.told() {
		text := safeLines(string(laid(l.block())))
		out.House = &text
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(out); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

func taughtJSON(b *model.Batch, reason string) jsonTaught {
	j := jsonTaught{File: words.Safe(b.Place.File.Name()), Batch: words.Safe(b.Name), Reason: words.Safe(reason)}
	if b.Process != nil {
		j.Process = words.Safe(b.Process.Name)
	}
	return j
}

func factorJSON(f learn.Factor) jsonLearnt {
	j := jsonLearnt{Factor: string(f.Which), Value: rounded(f.Value, 4), Error: rounded(f.Error, 4), Usual: rounded(f.Usual, 4), UsualSD: rounded(f.Spread, 4),
		Told: rounded(f.VarianceExplained, 3), Known: f.Known(), Batches: f.Batches, Learn: f.Learn}
	switch {
	case f.Grain != nil:
		j.Of = safely(f.Grain.Name)
	case f.Kiln != nil:
		j.Of = safely(f.Kiln.Name)
	}
	return j
}

func safely(text string) *string {
	s := words.Safe(text)
	return &s
}
