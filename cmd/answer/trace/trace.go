// Package trace answers where a lot of grain came from and what became of it: its
// deliveries, the batches that were made of it by their records, and what is left.
package trace

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/ledger"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
)

// Result is a lot from its delivery to malt.
type Result struct {
	Lot        string
	Species    string
	Store      string           `doc:"where it lies; empty where it is not said"`
	Deliveries []Delivery       `doc:"in the order of their dates"`
	Delivered  answer.Kilograms `doc:"all of them; null where none is written"`
	Batches    []Batch          `doc:"made of it, in the order in which they began"`
	Taken      answer.Kilograms `doc:"by them together"`
	Left       answer.Kilograms `doc:"delivered less taken; below nothing where more was taken than came in, null where no delivery is written"`
	Overdrawn  bool             `doc:"more was taken than came in, by all of them or by one before the rest came"`

	Written *model.Process `json:"-"` // of the first batch: the house is spoken to in its units
}

// Delivery is grain of the lot that came in.
type Delivery struct {
	Weight answer.Kilograms
	From   string `doc:"who grew or sold it; empty where it is not said"`
	On     string `doc:"the date, as 2026-02-01; empty where it is not said"`
	As     string `doc:"its number; empty where it is not said"`
}

// Batch is one that was made of the lot.
type Batch struct {
	File     string
	Batch    string
	Process  string
	Began    time.Time                       `doc:"null where the record does not say"`
	Charge   answer.Kilograms                `doc:"raw grain that it took"`
	Malt     ledger.Figure[answer.Kilograms] `doc:"without rootlets"`
	Moisture ledger.Figure[answer.Share]     `json:"final_moisture_wb"`
	ledger.Analyses
	Stock answer.Kilograms `doc:"of the lot, when the batch was begun: what had come in by that day, less what was taken; null where no delivery is written"`
}

// Rest is what was left of the lot when the batch had taken its charge; below nothing where
// it took more than there was.
func (b *Batch) Rest() answer.Kilograms { return b.Stock - b.Charge }

// Of makes the answer for a lot, by its name or by the number of one of its deliveries, out
// of all houses that were read and their batches. It is false where no house has it.
func Of(lot string, houses []*model.House, of ledger.Result) (r Result, ok bool) {
	in := cameIn{}
	for _, h := range houses {
		for _, g := range h.Grains {
			if Named(g, lot) {
				ok, r.Lot, r.Species = true, g.Name, g.Species.Text
				r.Store = cmp.Or(g.Store.Text, r.Store)
				in.add(g)
			}
		}
	}
	r.Deliveries = in.deliveries()
	r.Delivered = answer.Kilograms(math.NaN())
	if len(r.Deliveries) > 0 {
		r.Delivered = 0
	}
	for _, d := range r.Deliveries {
		r.Delivered += d.Weight
	}
	r.take(of)
	return r, ok
}

// Named tells whether a lot is the one that is asked for.
func Named(g *model.Grain, lot string) bool {
	return g.Name == lot || slices.ContainsFunc(g.Delivered, func(d model.Delivery) bool { return d.As.Text == lot })
}

// Takes tells whether a batch of a house is of the lot that is asked for. The lot of a batch
// that goes by a process of the past is found by its name.
func Takes(b *model.Batch, h *model.House, lot string) bool {
	return slices.ContainsFunc(b.Process.Taken(), func(t model.Taken) bool {
		g := t.Grain
		return g.Name == lot || slices.ContainsFunc(h.Grains, func(x *model.Grain) bool { return x.Name == g.Name && Named(x, lot) })
	})
}

// cameIn counts deliveries that are alike, in each file. A lot is often written in several
// files that are copies of each other, so that of a delivery the most in one file count.
type cameIn map[Delivery]map[string]int

// add counts those of a lot. A file that was read before, for another record, is not
// counted again.
func (c cameIn) add(g *model.Grain) {
	own := map[Delivery]int{}
	for _, d := range g.Delivered {
		own[Delivery{answer.Kilograms(d.Weight.SI), d.From.Text, d.On.Text, d.As.Text}]++
	}
	for d, n := range own {
		if c[d] == nil {
			c[d] = map[string]int{}
		}
		c[d][g.Place.File.Name()] = n
	}
}

func (c cameIn) deliveries() (list []Delivery) {
	for d, files := range c {
		for range slices.Max(slices.Collect(maps.Values(files))) {
			list = append(list, d)
		}
	}
	sorted.Stable(list, func(a, b Delivery) int {
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.As, b.As), cmp.Compare(a.From, b.From), cmp.Compare(a.Weight, b.Weight))
	})
	return list
}

// take lists the batches of the lot, and what is left of it.
func (r *Result) take(of ledger.Result) {
	for i := range of.Batches {
		b := &of.Batches[i]
		charge, of := takenOf(b, r.Lot)
		if !of {
			continue
		}
		if r.Written == nil {
			r.Written = b.Written
		}
		r.Batches = append(r.Batches, Batch{File: string(b.File), Batch: b.Batch, Process: b.Process, Began: b.Began,
			Charge: charge, Malt: b.Malt, Moisture: b.EndMoisture, Analyses: b.Analyses, Stock: r.cameBy(b.Began) - r.Taken})
		if !math.IsNaN(float64(charge)) {
			r.Taken += charge
		}
		r.Overdrawn = r.Overdrawn || over(r.Taken, r.cameBy(b.Began))
	}
	r.Left = r.Delivered - r.Taken
	r.Overdrawn = r.Overdrawn || over(r.Taken, r.Delivered)
}

// cameBy is what had come in by the day of a time, all of it where the time is not known.
func (r *Result) cameBy(at time.Time) answer.Kilograms {
	if len(r.Deliveries) == 0 {
		return r.Delivered
	}
	sum := answer.Kilograms(0)
	for _, d := range r.Deliveries {
		if model.CameBy(d.On, at) {
			sum += d.Weight
		}
	}
	return sum
}

// over leaves what rounding leaves over out of account; of a lot that never came in there is
// no saying.
func over(taken, in answer.Kilograms) bool { return float64(taken) > float64(in)*(1+rounding) }

// takenOf is what a batch took of a lot, by itself or in a mixture.
func takenOf(b *ledger.Batch, lot string) (charge answer.Kilograms, of bool) {
	for _, t := range b.Lots {
		if t.Lot == lot {
			return t.Charge, true
		}
	}
	return b.Charge, b.Lot == lot
}

// rounding is what sums of weights leave over.
const rounding = 1e-9
