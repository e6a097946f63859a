// Package lessons says what finished batches teach about their house: its factors, how
// well batches that were held out are foretold by them, and the house block that says so.
package lessons

import (
	"cmp"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/infer/learn"
)

// Result is what was learnt.
type Result struct {
	Batches          []Batch   `doc:"those from which it was learnt, in the order in which they began"`
	LeftOut          []LeftOut `doc:"those that could not be used"`
	Struck           []Struck  `doc:"readings that were not used, since they cannot be"`
	From             *string   `doc:"the house block with which it began, of older batches; null where it began with what is usual"`
	Replaces         []string  `doc:"house blocks by which the processes go already; nothing was used of them"`
	Factors          []Factor
	Thermometer      *Estimate[answer.Kelvin] `doc:"how much more the thermometer shows than it is; null where none was read"`
	Singles          []Single                 `doc:"what each batch says by itself, as if there were no other and nothing had been learnt"`
	Correlated       []Pair                   `doc:"pairs of figures that the readings hardly tell apart"`
	PredictionErrors *PredictionErrors        `doc:"root mean square errors of batches held out, each foretold by the others; null for a single batch"`
	Durations        []Duration               `doc:"of the batches held out: how long something lasted, and how long it was foretold to last"`
	House            *House                   `json:"-"` // nil where the readings tell nothing well enough
	Block            *string                  `json:"house" doc:"the house block, as the language has it; null where the readings tell nothing well enough"`
	Seat             Seat                     `json:"-"`
}

// Batch is one that was asked about.
type Batch struct {
	File    string
	Batch   string
	Process string
}

// LeftOut is a batch that was not used.
type LeftOut struct {
	File    string
	Batch   string
	Process string
	Reason  Reason
}

// Struck is a reading that was not used.
type Struck struct {
	File  string
	Batch string
	Line  int    `doc:"in its file, from 1"`
	Text  string `doc:"as written"`
}

// Factor is one of the house, beside the model's 1.
type Factor struct {
	Factor string  `doc:"growth, chit, respiration, withering, uptake, husk-water or drying"`
	Of     *string `doc:"the lot or the kiln; null where it is of the whole house"`
	Estimate[answer.Number]
}

// Estimate is a figure that was learnt, with what was known of it before.
type Estimate[T answer.Figure] struct {
	Value             T             `json:"estimate"`
	Error             T             `json:"standard_error"`
	Prior             T             `doc:"median of the prior: what it is taken to be before anything is read"`
	PriorSD           T             `doc:"standard deviation of the prior"`
	VarianceExplained answer.Share  `doc:"share of the variance of the prior that the readings explain"`
	Known             bool          `doc:"whether that is enough for the house block"`
	Scatter           *T            `doc:"standard deviation of batches about it; null where they are too few to tell, and then they have it in common"`
	Batches           int           `doc:"how many have a reading that it moves"`
	Before            int           `json:"batches_before" doc:"how many older ones it rests on besides, by the block with which it began"`
	Learn             outlook.Learn `doc:"what to weigh, count or read to know it better"`
}

// Pair is two figures whose errors go together.
type Pair struct {
	A           Side
	B           Side
	Batch       *string       `doc:"the batch whose own b is; null where it is of the house"`
	Correlation answer.Number `doc:"of the errors, -1 to 1"`
}

// House is the house block: what the readings tell well enough. Package malt writes it.
type House struct {
	Name        string
	Factors     []Factor
	Thermometer *Estimate[answer.Kelvin]
}

// Of is the answer of what was learnt. The block is called by the name, or else by the
// site of the first batch.
func Of(r *learn.Result, name string, files Files) Result {
	out := Result{Replaces: r.Replaces, Seat: files.seat(r)}
	for _, b := range r.Batches {
		out.Batches = append(out.Batches, batchOf(b))
	}
	for _, x := range r.Left {
		out.LeftOut = append(out.LeftOut, leftOut(x))
	}
	for _, x := range r.Struck {
		place := x.Reading.Place()
		out.Struck = append(out.Struck, Struck{x.Batch.Place.File.Name(), x.Batch.Name, place.File.Position(place.Start, source.Characters).Line, strings.Join(strings.Fields(place.Text()), " ")})
	}
	for _, f := range r.Factors {
		if f.Which == learn.Thermometer {
			e := estimateOf[answer.Kelvin](f)
			out.Thermometer = &e
			continue
		}
		out.Factors = append(out.Factors, Factor{string(f.Which), holder(f), estimateOf[answer.Number](f)})
	}
	for _, a := range r.Correlated {
		p := Pair{A: Side(a.A), B: Side(a.B), Correlation: answer.Number(a.Correlation)}
		if a.Of != nil {
			p.Batch = &a.Of.Name
		}
		out.Correlated = append(out.Correlated, p)
	}
	out.singles(r)
	out.foretold(r)
	out.House = out.house(cmp.Or(name, siteOf(r), "house"))
	return out
}

func batchOf(b *model.Batch) Batch {
	out := Batch{File: b.Place.File.Name(), Batch: b.Name}
	if b.Process != nil {
		out.Process = b.Process.Name
	}
	return out
}

func leftOut(x learn.Left) LeftOut {
	b := batchOf(x.Batch)
	return LeftOut{b.File, b.Batch, b.Process, Reason{x.Reason}}
}

func estimateOf[T answer.Single](f learn.Factor) Estimate[T] {
	return Estimate[T]{Value: T(f.Value), Error: T(f.Error), Prior: T(f.Usual), PriorSD: T(f.Spread),
		VarianceExplained: answer.Share(f.VarianceExplained), Known: f.Known(), Batches: f.Batches, Before: f.Before, Scatter: scatterOf[T](f), Learn: outlook.Learn(f.Open)}
}

func scatterOf[T answer.Single](f learn.Factor) *T {
	if f.Scatter == 0 {
		return nil
	}
	t := T(f.Scatter)
	return &t
}

// Rests is how many batches it rests on in all.
func (e Estimate[T]) Rests() int { return e.Batches + e.Before }

// holder is the lot or the kiln that a factor is of.
func holder(f learn.Factor) *string {
	switch {
	case f.Grain != nil:
		return &f.Grain.Name
	case f.Kiln != nil:
		return &f.Kiln.Name
	}
	return nil
}

// house is the block of what is known, nil where nothing is.
func (r *Result) house(name string) *House {
	h := House{Name: name}
	for _, f := range r.Factors {
		if f.Known {
			h.Factors = append(h.Factors, f)
		}
	}
	if t := r.Thermometer; t != nil && t.Known {
		h.Thermometer = t
	}
	if h.Factors == nil && h.Thermometer == nil {
		return nil
	}
	return &h
}

// siteOf is the name of the first batch's site up to a comma, "" where it has none.
func siteOf(r *learn.Result) string {
	if len(r.Batches) == 0 || r.Batches[0].Process.Site == nil {
		return ""
	}
	site, _, _ := strings.Cut(r.Batches[0].Process.Site.Name, ",")
	return strings.TrimSpace(site)
}
