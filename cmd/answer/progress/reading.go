package progress

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/infer/follow"
)

// Reading is one beside what the forecasts expect of it, in the one of its fields that is
// not nil.
type Reading struct {
	Line         int                         `doc:"in its file, from 1"`
	At           time.Time                   `doc:"null where its step tells when it was"`
	Text         string                      `doc:"as written"`
	Weight       *Compared[answer.Kilograms] `json:",omitempty" doc:"of the grain alone, without what was weighed along"`
	Temperature  *Compared[answer.Celsius]   `json:",omitempty"`
	Moisture     *Compared[answer.Share]     `json:"tested_moisture,omitempty" doc:"of the whole weight"`
	Chit         *Compared[answer.Share]     `json:",omitempty" doc:"of the kernels"`
	Acrospire    *Compared[answer.Number]    `json:"acrospire_mean,omitempty" doc:"mean length as a part of the kernel"`
	Modification *Compared[answer.Number]    `json:",omitempty" doc:"at which kernels rub out so"`
	Residual     answer.Number               `json:"standardized_residual" doc:"distance from the middle of what is expected in standard deviations; null where no forecast has it"`
	Doubt        string                      `json:"doubt,omitempty" doc:"what is wrong with it, where it cannot be right"`
	Struck       bool                        `json:",omitempty" doc:"it cannot be, and does not count"`
	Unjudged     bool                        `json:"not_judged,omitempty" doc:"the model ends before it: what it should be is not forecast"`
	Words        answer.Told                 `json:"words,omitempty" doc:"the same in a sentence"`
	Hot          *outlook.HotBed             `json:"-"` // a bed that is too warm, of the last that was read of it
	Along        answer.Kilograms            `json:"-"` // what is weighed along with the grain
	OfBag        bool                        `json:"-"` // of the marked bag, not of the whole batch
}

// Compared is what was read beside what was expected.
type Compared[T answer.Figure] struct {
	Observed T
	Error    T                 `json:"error_sd" doc:"how exact such a reading is: standard deviation"`
	Expected *answer.Spread[T] `doc:"before the error of the reading; null where under half of the forecasts have it"`
}

// Unit is that of its figures.
func (Compared[T]) Unit() answer.Unit {
	var one T
	return one.Unit()
}

// Doubt is why a reading cannot be right. It is told as a sentence.
type Doubt struct {
	Kind    follow.DoubtKind
	Reading Reading
	Holds   answer.Share // moisture, of weights that would leave too much or too little
	Wanted  answer.Share // moisture that the step behind it waits for
	Unit    string       // in which it would fit, or the number that would
	When    time.Time    // at which it would fit
	Tare    string       // as written
	Holder  string       // the vessel, floor or kiln that is or is not in it, as named
	Empty   string       // what that weighs, as written
	Against string       // the words of the reading it goes against
}

// Told marks it as what is put into words.
func (Doubt) Told() {}

// ReadingsOf are those of what was followed, in the order in which it judges them.
func ReadingsOf(f *follow.Following) (list []Reading) {
	doubts := map[int]follow.Doubt{}
	for _, d := range f.Doubts {
		doubts[d.Observation] = d
	}
	for i, j := range f.Judged {
		r := ReadingOf(j)
		if x, ok := j.Observation.Reading.(*model.Weighed); ok {
			r.Along, r.OfBag = answer.Kilograms(f.Trial.Batch.Empty(x)), x.OfBag
		}
		if d, ok := doubts[i]; ok {
			r.Doubt, r.Words = string(d.Kind), doubtOf(f, d, r)
		}
		list = append(list, r)
	}
	for i := len(f.Judged) - 1; i >= 0; i-- { // only the last says how it is now
		if x, ok := f.Judged[i].Observation.Reading.(*model.Read); ok && x.Temperature.Where == vocabulary.PlaceBed {
			list[i].Hot = outlook.HotBedOf(f.Trial.Process, x)
			break
		}
	}
	return list
}

// ReadingOf is a reading by itself, without what is doubted of it.
func ReadingOf(j follow.Judged) Reading {
	x := j.Observation.Reading
	place := x.Place()
	r := Reading{Line: place.File.Position(place.Start, source.Characters).Line, At: x.When().Time, Text: words(x), Residual: answer.Number(j.Residual), Struck: j.Observation.Struck, Unjudged: j.Unjudged}
	switch x := x.(type) {
	case *model.Weighed:
		r.Weight = compared[answer.Kilograms](j)
	case *model.Read:
		r.Temperature = compared[answer.Celsius](j)
	case *model.Tested:
		r.Moisture = compared[answer.Share](j)
	case *model.Felt:
		r.Modification = compared[answer.Number](j)
	case *model.Counted:
		if x.What.Text == model.Chit {
			r.Chit = compared[answer.Share](j)
		} else {
			r.Acrospire = compared[answer.Number](j)
		}
	}
	return r
}

func compared[T answer.Single](j follow.Judged) *Compared[T] {
	return &Compared[T]{T(j.Observation.Value), T(j.Observation.Error), had[T](j.Expected)}
}

func doubtOf(f *follow.Following, d follow.Doubt, r Reading) Doubt {
	out := Doubt{Kind: d.Kind, Reading: r, Holds: answer.Share(d.Value), Wanted: answer.Share(d.Wanted), Unit: d.Detail}
	if t := f.Trial.Batch.Tare; t != nil {
		out.Tare = t.String()
	}
	if d.Kind == follow.OtherTime {
		out.When = f.Trial.Batch.Began.Add(time.Duration(d.Value * float64(time.Second)))
	}
	if d.Holder != nil {
		out.Holder, out.Empty = d.Holder.Name, d.Holder.Weighs.String()
	}
	if d.Other >= 0 {
		out.Against = words(f.Judged[d.Other].Observation.Reading)
	}
	return out
}

func words(x model.Reading) string { return oneLine(x.Place().Text()) }
