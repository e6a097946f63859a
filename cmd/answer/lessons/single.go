package lessons

import (
	"maltwright/cmd/answer"
	"maltwright/sim/infer/learn"
)

// Single is what one batch says by itself.
type Single struct {
	Batch       string
	Factors     []SingleFactor
	Thermometer *Alone[answer.Kelvin] `doc:"null where none was read"`
}

// SingleFactor is one factor by one batch.
type SingleFactor struct {
	Factor string
	Of     *string `doc:"the lot or the kiln; null where it is of the whole house"`
	Alone[answer.Number]
}

// Alone is a figure by the readings of one batch and what is usual.
type Alone[T answer.Figure] struct {
	Value T    `json:"estimate"`
	Error T    `json:"standard_error"`
	Told  bool `doc:"whether its readings settle at least half of what was open"`
}

func (r *Result) singles(l *learn.Result) {
	for _, x := range l.Singles {
		s := Single{Batch: x.Batch.Name}
		for _, f := range x.Figures {
			if f.Which == learn.Thermometer {
				s.Thermometer = &Alone[answer.Kelvin]{answer.Kelvin(f.Value), answer.Kelvin(f.Error), f.Told}
				continue
			}
			one := SingleFactor{Factor: string(f.Which), Alone: Alone[answer.Number]{answer.Number(f.Value), answer.Number(f.Error), f.Told}}
			if f.Of != "" {
				of := f.Of
				one.Of = &of
			}
			s.Factors = append(s.Factors, one)
		}
		r.Singles = append(r.Singles, s)
	}
}
