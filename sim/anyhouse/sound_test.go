package anyhouse

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source/spoil"
	"maltwright/lang/vocabulary/invent"
	"maltwright/sim/air"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
	"maltwright/sim/work"
)

// nowhere reads no files.
type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

// A house that a person could write reads without a fault, is forecast to an end, and the
// forecast is sound.
func TestTheForecastOfAnyHouseIsSound(t *testing.T) {
	houses := rapid.Custom(house)
	whole, broken := 0, map[string]int{}
	for seed := range spoil.Seeds(200, 20_000) {
		text := houses.Example(int(seed))
		h, found := read.Load("any.malt", []byte(text), ".", nowhere{})
		for _, f := range found {
			if f.Severity >= finding.Fault {
				t.Fatalf("seed %d does not read: %s, at %s\n%s", seed, f.Message, f.Place.Text(), text)
			}
		}
		f := forecastOf(t, h.Processes[0], seed, text)
		if f == nil {
			continue
		}
		if whole++; f.BrokenOff() {
			for _, x := range f.Trouble {
				if u, ok := x.(forecast.Unable); ok {
					broken[fmt.Sprintf("%s: %v", u.Stage, u.Cause)]++
				}
			}
		}
	}
	t.Logf("%d forecasts; broke off: %v", whole, broken)
}

// The same of what stands at the far ends of the language, where a forecast may well
// break off.
func TestTheForecastAtTheEndsOfTheLanguageIsSound(t *testing.T) {
	n := 0
	for seed := range spoil.Seeds(40, 4000) {
		text := invent.File(seed)
		h, _ := read.Load("any.malt", []byte(text), ".", nowhere{})
		if len(h.Processes) == 0 {
			continue
		}
		if forecastOf(t, h.Processes[0], seed, text) != nil {
			n++
		}
	}
	t.Logf("%d forecasts", n)
}

// forecastOf forecasts a process and asks all that must hold; it is nil where that costs
// too much or the process cannot begin.
func forecastOf(t *testing.T, p *model.Process, seed uint64, text string) *forecast.Forecast {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Fatalf("seed %d panics: %v\n%s", seed, r, text)
		}
	}()
	f, err := forecast.Run(p, forecast.Options{Meter: work.NewMeter(context.Background(), work.NewPool(2*work.Shared))})
	if err != nil {
		if !errors.Is(err, work.ErrPool) && !errors.Is(err, forecast.ErrNothing) && !errors.As(err, new(*air.RangeError)) {
			t.Errorf("seed %d cannot begin: %v\n%s", seed, err, text)
		}
		return nil
	}
	for _, what := range unsound(f) {
		t.Errorf("seed %d: %s\n%s", seed, what, text)
	}
	return f
}

// slack is what rounding may do to a balance, of the whole.
const slack = 1e-6

// unsound lists what must hold of a forecast and does not.
func unsound(f *forecast.Forecast) (list []string) {
	wrong := func(form string, values ...any) { list = append(list, fmt.Sprintf(form, values...)) }
	if f.Beyond == nil {
		numbers(reflect.ValueOf(told(f)), "totals", wrong)
	} else {
		beyond(f, wrong)
	}
	clock, dry := 0.0, f.DryMass
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			behind := f.Beyond != nil && s.End >= f.Beyond.At-1e-6 // or as it is over
			if !behind {
				numbers(reflect.ValueOf(s), string(st.Kind), wrong)
			}
			name := fmt.Sprintf("%s, %s", st.Kind, s.Label)
			if s.Start < clock-1e-6 || s.End < s.Start {
				wrong("%s: time goes from %g s to %g s, after %g s", name, s.Start, s.End, clock)
			}
			clock = s.End
			if took, most := s.End-s.Start, mostTime(st.Of, s); took > most+6+1e-9*most {
				wrong("%s: takes %g s, at most %g s were said", name, took, most)
			}
			if behind {
				continue
			}
			if !(s.MoistureEnd >= 0 && s.MoistureEnd < 1) {
				wrong("%s: ends with a moisture of %g", name, s.MoistureEnd)
			}
			now := s.WeightEnd * (1 - s.MoistureEnd)
			if now < 0 || now > dry*(1+slack) {
				wrong("%s: dry matter goes from %g kg to %g kg", name, dry, now)
			}
			dry = now
		}
	}
	for _, x := range forecast.Troubles[forecast.Unable](f) { // a model may refuse a value, but not reckon none
		if r := new(air.RangeError); errors.As(x.Cause, &r) && math.IsNaN(r.Value) {
			wrong("%s: %v", x.Stage, x.Cause)
		}
	}
	if f.BrokenOff() || f.Beyond != nil {
		return list
	}
	accounts(f, dry, wrong)
	t := &f.Totals
	for name, v := range map[string]float64{"malt": t.Malt, "rootlets": t.Rootlets, "carbon dioxide": t.CO2, "sprinkled": t.Sprinkled, "sprayed": t.Sprayed, "water drawn": t.SteepWater,
		"heat of the air": t.AirHeat, "cold of the air": t.AirCold, "heat of the bed": t.BedHeat, "cold of the bed": t.BedCold, "fan": t.FanEnergy} {
		if v < 0 {
			wrong("%s: %g", name, v)
		}
	}
	q := t.Quality
	for name, v := range map[string]float64{"diastatic": q.Diastatic, "alpha": q.Alpha, "precursor": q.Precursor} {
		if v < 0 || v > 1+slack {
			wrong("%s: %g is left", name, v)
		}
	}
	return list
}

// told are the totals without what no forecast has: what heat did to malt that was bought, and the
// colour of what was heated beyond what it was set on.
func told(f *forecast.Forecast) forecast.Totals {
	t := f.Totals
	if f.Process.Grain.Kilned() {
		t.Quality = quality.State{}
	}
	for _, st := range model.Every[*model.Kilning](f.Process) {
		if k := st.Kiln; k != nil && k.Reaches != nil && k.Reaches.Low.SI-zeroC > forecast.ColourEndsAt-kiln.Lead {
			t.Quality.Colour = 0
		}
		for _, s := range st.Steps {
			for _, at := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
				if at != nil && at.High.SI-zeroC > forecast.ColourEndsAt-kiln.Lead {
					t.Quality.Colour = 0
				}
			}
		}
	}
	return t
}

const zeroC = 273.15

// beyond holds what comes of malt that left the model: no number is told of it, and times are.
func beyond(f *forecast.Forecast, wrong func(string, ...any)) {
	t := f.Totals
	for name, v := range map[string]float64{"malt": t.Malt, "final moisture": t.FinalMoisture, "yield": t.Yield, "dry yield": t.YieldDry, "lost": t.DryMatterLost, "rootlets": t.Rootlets, "kiln water": t.KilnWater,
		"kiln heat": t.KilnEnergy, "colour": t.Quality.Colour, "diastatic": t.Quality.Diastatic, "alpha": t.Quality.Alpha, "precursor": t.Quality.Precursor} {
		if !math.IsNaN(v) && !f.BrokenOff() {
			wrong("%s is %g, beyond the model", name, v)
		}
	}
	if math.IsNaN(t.Total) {
		wrong("the total time is not known")
	}
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if s.End > f.Beyond.At+1e-6 && !math.IsNaN(s.MoistureEnd+s.WeightEnd) {
				wrong("%s, %s: ends at %g with %g kg, beyond the model", st.Kind, s.Label, s.MoistureEnd, s.WeightEnd)
			}
		}
	}
}

// accounts closes those of dry matter and of the water on the kiln.
func accounts(f *forecast.Forecast, dry float64, wrong func(string, ...any)) {
	t := &f.Totals
	lost := f.DryMass * t.DryMatterLost
	rootlets := t.Rootlets * (1 - t.FinalMoisture)
	if kept := t.Malt * (1 - t.FinalMoisture); math.Abs(f.DryMass-lost-kept) > slack*f.DryMass {
		wrong("of %g kg of dry matter %g kg are lost and %g kg kept", f.DryMass, lost, kept)
	}
	burnt := t.CO2 / grain.StarchCO2
	if leached := lost - rootlets - burnt; leached < -slack*f.DryMass || leached > (leachMost+slack)*f.DryMass {
		wrong("of %g kg of dry matter %g kg are lost: %g kg burnt, %g kg in rootlets, and so %g kg washed out", f.DryMass, lost, burnt, rootlets, leached)
	}
	water, kilns := 0.0, 0
	for _, st := range f.Stages {
		for i, s := range st.Steps {
			if st.Kind == model.KilnStage && i == 0 {
				kilns++
				w := f.Kilns[kilns-1].DryMass
				water += w * (s.MoistureStart/(1-s.MoistureStart) - last(st).MoistureEnd/(1-last(st).MoistureEnd))
			}
		}
	}
	for _, q := range forecast.Troubles[forecast.Quenched](f) {
		water += q.Quenched.Water - q.Steam
	}
	if kilns > 0 && math.Abs(water-t.KilnWater) > 1e-5*f.DryMass {
		wrong("the kiln drove off %g kg of water, the malt lost %g kg", t.KilnWater, water)
	}
}

func last(st forecast.Stage) forecast.Step { return st.Steps[len(st.Steps)-1] }

// leachMost is more than the water washes out of any grain, of its dry matter.
const leachMost = 0.03

// mostTime is the longest that a step may take by what is said of it, s. The last hold
// of a piece lasts to the end of its stage, whatever it says itself; that is what bounds
// every hold. A wait is of a gate, and goes on beyond its stage.
func mostTime(st model.Stage, s forecast.Step) float64 {
	const shift = 12 * 3600.0
	most := 90 * 86400.0
	bound := func(e model.Ending) {
		if e.For != nil {
			most = min(most, e.For.SI)
		}
		if e.Allow != nil && e.Allow.Latest != nil {
			most = min(most, e.Allow.Latest.SI)
		}
	}
	piece := model.PieceOf(st)
	if piece != nil && s.Label != forecast.Waiting {
		bound(piece.Ending)
		return most
	}
	for _, x := range every(model.StepsOf(st)) {
		if x.Place() != s.Place {
			continue
		}
		end := x.Ends()
		switch over := x.Warmth().Over; {
		case s.Label == forecast.Waiting && end.Allow == nil:
			most = shift
		case over != nil && end.For == nil && end.Allow == nil:
			end.For = over
		}
		bound(end)
	}
	return most
}

// every gives the steps with those of repeats.
func every(steps []model.Step) (list []model.Step) {
	for _, s := range steps {
		list = append(list, s)
		if r, ok := s.(*model.Repeat); ok {
			list = append(list, every(r.Steps)...)
		}
	}
	return list
}

// numbers asks that every number below a value is one.
func numbers(v reflect.Value, name string, wrong func(string, ...any)) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			wrong("%s is %g", name, x)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.Name != "SteepOut" && field.Name != "SteepOutMoisture" && field.Name != "Place" { // NaN where there is no steep
				numbers(v.Field(i), name+"."+field.Name, wrong)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			numbers(v.Index(i), fmt.Sprintf("%s[%d]", name, i), wrong)
		}
	}
}
