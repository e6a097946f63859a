package noted

import (
	"context"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

// Opening is what comes first in a batch whose record was just opened.
type Opening struct {
	Began time.Time
	Have  Have
	Next  *Visit // what is due first behind the beginning; nil where nothing is
	First *First // what is weighed first; nil where nothing is
}

// Have is what to have ready for the beginning.
type Have struct {
	Charge *model.Quantity
	Lots   []string        // as named
	Bag    *model.Quantity // the raw grain in the marked bag; nil where there is none
	In     string          // the vessel, floor or kiln that it goes into, "" where it has no name
	Water  *answer.Temperature
	Drawn  answer.Litres // for all soaks; 0 where there are none
	Scale  string        // of the house that takes the first weight, "" where none is told
}

// First is the first weight, by the forecast.
type First struct {
	Step   string // as a record names it
	At     time.Time
	Weight answer.Kilograms
	outlook.OnScale[answer.Kilograms]
}

// Open says what comes first in a batch. It is false where the batch cannot be forecast.
func Open(ctx context.Context, b *model.Batch, pool *work.Pool) (o Opening, ok bool) {
	t, err := evidence.New(b, b.Began.Time)
	if err != nil {
		return o, false
	}
	t.Bound(ctx, pool)
	f, err := t.Run(make([]float64, len(t.Axes)), false)
	if err != nil || len(f.Stages) == 0 {
		return o, false
	}
	o.Began = b.Began.Time
	h := &holding{trial: t, best: f, plan: f, seat: -1}
	var later []visits.Task
	for _, k := range visits.List(f) {
		if k.At > justNow {
			later = append(later, k)
		}
	}
	o.Next, o.First = h.first(later), firstWeight(b, f)
	o.Have = haveReady(b.RawBag(), f, o.First)
	return o, true
}

// firstWeight is that at the end of the first step that a record can name: of a soak, or of what a
// batch begins with that is not steeped.
func firstWeight(b *model.Batch, f *forecast.Forecast) *First {
	return firstOf(f, b.Began.Time, outlook.BagOfBatch(b))
}

func firstOf(f *forecast.Forecast, began time.Time, bag outlook.Bag) *First {
	st := f.Stages[0]
	for _, s := range st.Steps {
		if s.Kind == model.GateStep || s.Kind == model.RestStep || s.Label == forecast.Waiting {
			continue
		}
		at := outlook.ClockAt(began, answer.Seconds(s.End))
		return &First{s.Label, at, answer.Kilograms(s.WeightEnd), bag.On(model.HolderOf(st.Of), s.WeightEnd)}
	}
	return nil
}

// HaveFor is what to have ready for a batch of a forecast that is not begun.
func HaveFor(f *forecast.Forecast) Have {
	if len(f.Stages) == 0 {
		return Have{}
	}
	return haveReady(f.Process.Bag, f, firstOf(f, time.Time{}, outlook.BagOf(f.Process)))
}

func haveReady(bag *model.Quantity, f *forecast.Forecast, first *First) Have {
	p := f.Process
	h := Have{Charge: p.Charge, Bag: bag}
	for _, lot := range p.Taken() {
		if lot.Grain != nil {
			h.Lots = append(h.Lots, lot.Grain.Name)
		}
	}
	if len(h.Lots) == 0 && p.Grain != nil {
		h.Lots = []string{p.Grain.Name}
	}
	if holder := model.HolderOf(f.Stages[0].Of); holder != nil {
		h.In = holder.Name
	}
	if s := f.Stages[0].Steps; len(s) > 0 && s[0].Kind == model.SoakStep {
		h.Water, h.Drawn = outlook.TemperatureOf(s[0].Temperature), answer.Litres(f.Totals.SteepWater)
	}
	if first != nil && p.House != nil {
		kg := float64(first.Weight)
		switch {
		case first.Bag != nil:
			kg = float64(*first.Bag)
		case first.Gross != nil:
			kg = float64(first.Gross.Weight)
		}
		if s := p.House.Scale(kg); s != nil {
			h.Scale = s.Name
		}
	}
	return h
}
