// Package sums answers what the hand calculations of package reckon come to: figures in
// SI, and the working that leads to them.
package sums

import (
	"slices"

	"maltwright/cmd/answer"
	"maltwright/lang/quantity"
	"maltwright/sim/reckon"
)

// Weight is a mass, kg, known to the milligram: samples weigh grams.
type Weight float64

// Unit is that of kg.
func (Weight) Unit() answer.Unit { return answer.Unit{Key: "kg", Doc: "kg", SI: 1, Digits: 6} }

// Result is one of the reckonings below.
type Result interface{ Steps() Work }

// Work is how a result was come by, and what was taken for granted.
type Work struct {
	Working []Step
	Notes   []Note
}

// Steps is the working itself.
func (w Work) Steps() Work { return w }

// Step is a step of the working.
type Step struct{ reckon.Step }

// Note is what was taken for granted.
type Note struct{ reckon.Note }

// Told says that it is put into words.
func (Step) Told() {}

// Told says that it is put into words.
func (Note) Told() {}

func worked(steps []reckon.Step, notes []reckon.Note) Work {
	var w Work
	for _, s := range steps {
		w.Working = append(w.Working, Step{s})
	}
	for _, n := range notes {
		w.Notes = append(w.Notes, Note{n})
	}
	return w
}

// Moisture is that of samples from the oven.
type Moisture struct {
	Reckoning string
	Moisture  answer.Share   `json:"moisture_wb" doc:"the mean"`
	Lowest    answer.Share   `json:"lowest_wb"`
	Highest   answer.Share   `json:"highest_wb"`
	Deviation answer.Share   `doc:"standard deviation; 0 of one sample"`
	Samples   []answer.Share `json:"samples_wb"`
	Work
}

// OfSamples gives the moisture of samples. The errors are those of package reckon.
func OfSamples(samples []reckon.Sample, tare *quantity.Quantity) (Moisture, error) {
	r, err := reckon.Moisture(samples, tare)
	if err != nil {
		return Moisture{}, err
	}
	out := Moisture{Reckoning: "moisture", Moisture: answer.Share(r.Mean), Deviation: answer.Share(r.Deviation), Work: worked(r.Working, nil)}
	for _, w := range r.Each {
		out.Samples = append(out.Samples, answer.Share(w))
	}
	out.Lowest, out.Highest = slices.Min(out.Samples), slices.Max(out.Samples)
	return out, nil
}

// Target is the weight at which a batch holds a moisture.
type Target struct {
	Reckoning string
	Weight    Weight
	Change    Weight `doc:"below 0 where weight is lost"`
	DryMatter Weight
	Work

	Batch  quantity.Quantity `json:"-"` // in whose unit the weights are shown
	Wanted quantity.Quantity `json:"-"`
}

// ToMoisture gives the weight to wait for.
func ToMoisture(from reckon.Start, wanted quantity.Quantity, lost *quantity.Quantity) (Target, error) {
	r, err := reckon.Target(from, wanted, lost)
	if err != nil {
		return Target{}, err
	}
	return Target{Reckoning: "target", Weight: Weight(r.Weight), Change: Weight(r.Change), DryMatter: Weight(r.DryMatter),
		Work: worked(r.Working, nil), Batch: from.Weight, Wanted: wanted}, nil
}

// Weighing is the moisture that a weight tells.
type Weighing struct {
	Reckoning string
	Moisture  answer.Share `json:"moisture_wb"`
	Water     Weight
	DryMatter Weight
	Work

	Now quantity.Quantity `json:"-"` // in whose unit the weights are shown
}

// OfWeight gives the moisture of a batch by its weight.
func OfWeight(now quantity.Quantity, from reckon.Start, lost *quantity.Quantity) (Weighing, error) {
	r, err := reckon.Weight(now, from, lost)
	if err != nil {
		return Weighing{}, err
	}
	return Weighing{Reckoning: "weight", Moisture: answer.Share(r.Moisture), Water: Weight(r.Water), DryMatter: Weight(r.DryMatter),
		Work: worked(r.Working, r.Notes), Now: now}, nil
}

// Basis is a moisture on both bases.
type Basis struct {
	Reckoning string
	Wet       answer.Share `json:"moisture_wb" doc:"of the whole"`
	Dry       answer.Share `json:"moisture_db" doc:"of the dry matter"`
	Work

	WetShown, DryShown reckon.Value `json:"-"`
}

// Bases gives a moisture on the other basis.
func Bases(q quantity.Quantity) (Basis, error) {
	r, err := reckon.Basis(q)
	if err != nil {
		return Basis{}, err
	}
	return Basis{Reckoning: "basis", Wet: answer.Share(r.Wet.SI), Dry: answer.Share(r.Dry.SI), Work: worked(r.Working, nil),
		WetShown: r.Wet, DryShown: r.Dry}, nil
}

// Yield is what became of the barley.
type Yield struct {
	Reckoning     string
	AsIs          answer.Share `json:"yield_as_is" doc:"malt as it is, of barley as it is"`
	DryMalt       answer.Share `json:"yield_dry_malt" doc:"dry malt, of barley as it is"`
	Dry           answer.Share `json:"yield_dry" doc:"dry malt, of dry barley"`
	DryMatterLost answer.Share
	Work
}

// OfMalt compares malt with its barley.
func OfMalt(barley, malt reckon.Start) (Yield, error) {
	r, err := reckon.Yield(barley, malt)
	if err != nil {
		return Yield{}, err
	}
	return Yield{Reckoning: "yield", AsIs: answer.Share(r.AsIs), DryMalt: answer.Share(r.DryMalt), Dry: answer.Share(r.Dry),
		DryMatterLost: answer.Share(r.Lost), Work: worked(r.Working, nil)}, nil
}

// Germination is what a count of kernels says of the lot.
type Germination struct {
	Reckoning   string
	Germination answer.Share `doc:"of the kernels counted"`
	Low, High   answer.Share // where the lot lies, 19 times in 20
	Work
}

// OfCount gives the germination of a lot.
func OfCount(germinated, of quantity.Quantity) (Germination, error) {
	r, err := reckon.Germination(germinated, of)
	if err != nil {
		return Germination{}, err
	}
	return Germination{Reckoning: "germination", Germination: answer.Share(r.Share), Low: answer.Share(r.Low), High: answer.Share(r.High),
		Work: worked(r.Working, r.Notes)}, nil
}
