package outlook

import (
	"context"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Spread is how a forecast spreads over likely lots, houses and weather.
type Spread struct {
	Members int
	Steps   []StepSpread
	Totals  TotalsSpread
	Gates   []Odds
	Expects []Odds
	Drivers Drivers
}

// StepSpread is how the end of a step spreads.
type StepSpread struct {
	Stage string
	Label string `json:"-"`
	StepName
	End         answer.Spread[answer.Seconds]
	MoistureEnd answer.Spread[answer.Share] `json:"moisture_end_wb"`
	WeightEnd   answer.Spread[answer.Kilograms]
	OnScale[answer.Spread[answer.Kilograms]]
}

// Odds is how often a condition held.
type Odds struct {
	Text  string
	Holds answer.Share `doc:"of the forecasts"`
}

// Drivers are what each total depends on, the most first.
type Drivers struct {
	SteepOutMoisture []Driver `json:"steep_out_moisture_wb"`
	Total            []Driver
	FinalMoisture    []Driver `json:"final_moisture_wb"`
	Malt             []Driver
	Yield            []Driver `json:"yield_as_is"`
	Diastatic        []Driver `json:"diastatic_kept"`
}

// Driver is something that is not known, and how much of a spread goes with it.
type Driver struct {
	Unknown Open
	Of      *string `doc:"the kiln, where the process has several; else null"`
	Share   answer.Share
	Learn   Learn `doc:"what to do to know it better"`
}

// Points is a spread in the unit of a figure.
func Points[T answer.Single](s ensemble.Spread) answer.Spread[T] {
	return answer.Spread[T]{P10: T(s.P10), P50: T(s.P50), P90: T(s.P90), Share: answer.Share(s.Share)}
}

// SpreadOf is the spread of an ensemble of a process.
func SpreadOf(e *ensemble.Ensemble, p *model.Process) *Spread {
	out := &Spread{Members: len(e.Members), Steps: []StepSpread{}, Totals: TotalsOver(e), Gates: oddsOf(e.Gates()), Expects: oddsOf(e.Expectations())}
	for _, s := range e.Steps() {
		out.Steps = append(out.Steps, StepSpreadOf(s, p, BagOf(p)))
	}
	out.Drivers = DriversBy(e.Drivers)
	return out
}

// DriversBy are those of each total, by what ranks them.
func DriversBy(ranks func(func(*forecast.Totals) float64) []ensemble.Driver) Drivers {
	d := func(of func(*forecast.Totals) float64) []Driver { return driversOf(ranks(of)) }
	return Drivers{d(ofSteepOutMoisture), d(ofTotal), d(ofFinalMoisture), d(ofMalt), d(ofYield), d(ofDiastatic)}
}

// StepSpreadOf is the spread of one step of a process.
func StepSpreadOf(s ensemble.StepSpread, p *model.Process, bag Bag) StepSpread {
	return StepSpread{string(s.Stage), s.Label, StepName{s.Word(), s.Number}, Points[answer.Seconds](s.End), Points[answer.Share](s.Moisture), Points[answer.Kilograms](s.Weight),
		bag.OnSpread(model.HolderOf(s.Of(p)), s.Weight)}
}

func oddsOf(list []ensemble.Odds) []Odds {
	out := []Odds{}
	for _, o := range list {
		out = append(out, Odds{o.Text, answer.Share(o.Holds)})
	}
	return out
}

// driversOf gives drivers with their shares of the spread. Those are estimated one by one, and
// where they come to more than all of it each is given its part.
func driversOf(list []ensemble.Driver) []Driver {
	out, all := []Driver{}, 0.0
	for _, d := range list {
		all += d.Share
	}
	for _, d := range list {
		out = append(out, Driver{Open(d.Unknown.Open), KilnOf(d.Unknown), answer.Share(d.Share / max(all, 1)), Learn(d.Unknown.Open)})
	}
	return out
}

// KilnOf names the kiln that something open is of, where the process has several; else nil.
func KilnOf(u ensemble.Unknown) *string {
	if of := u.Of(); of != "" {
		return &of
	}
	return nil
}

// Corner is one corner of the bands of a site, and what breaks there.
type Corner struct {
	Corner   Ends
	Complete bool     `doc:"whether its forecast came to the end of the process"`
	Broken   []Unkept `doc:"gates and promises"`
}

func cornersOf(ctx context.Context, f *forecast.Forecast) ([]Corner, error) {
	p := f.Process
	list, err := ensemble.Corners(ctx, p, f.Begun)
	var out []Corner
	for _, c := range list {
		broken := []Unkept{}
		for _, g := range c.Gates {
			broken = append(broken, Unkept{NameOf(p, g.Of).Called(), g.Text})
		}
		for _, e := range c.Expects {
			broken = append(broken, Unkept{"", e.Test.Place.Text()})
		}
		out = append(out, Corner{Ends(c.Ends), !c.Forecast.BrokenOff(), broken})
	}
	return out, err
}
