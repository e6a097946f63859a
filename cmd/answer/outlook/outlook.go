package outlook

import (
	"context"
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// Options are what is asked for beside the forecast. The zero value asks for nothing.
type Options struct {
	Start    time.Time             // of the first soak; zero where times of the clock are not asked for
	Members  int                   // of the spread; 0 for none
	Worst    bool                  // every corner of the site's bands
	Every    answer.Seconds        // between two points of the course; 0 for none
	Progress func(done, total int) // of the spread; may be nil
}

// Ask makes the outlook of a forecast. It returns the error of a context that is
// cancelled, work.ErrPool where the forecasts of the spread cost too much, and a
// *TooManyError or ErrTooOften where the course would have too many points.
func Ask(ctx context.Context, f *forecast.Forecast, o Options) (Result, error) {
	var course []Point
	if o.Every > 0 {
		var err error
		if f, course, err = courseOf(ctx, f, o.Every, o.Start); err != nil {
			return Result{}, err
		}
	}
	r := Of(f, o.Start)
	r.Course = course
	if o.Members > 0 {
		e, err := ensemble.Run(ctx, f.Process, ensemble.Options{Begun: f.Begun, Members: o.Members, Progress: o.Progress})
		if err != nil {
			return r, err
		}
		r.Spread = SpreadOf(e, f.Process)
	}
	if o.Worst {
		corners, err := cornersOf(ctx, f)
		if err != nil {
			return r, err
		}
		r.Corners = corners
	}
	return r, ctx.Err()
}

// Of is the outlook of a forecast alone.
func Of(f *forecast.Forecast, start time.Time) Result {
	r := Result{Head: HeadOf(f.Process), Start: start, Complete: !f.BrokenOff(), BrokenOff: BreakOf(f), NotForecast: ModelEndOf(f), Asked: AskedOf(f),
		Totals: totalsOf(f), Growth: growthOf(f), Indications: indicationsOf(f), Enzymes: EnzymesOf(f, f.Totals.Quality.Diastatic), Assumed: []Assumption{}, Cautions: CautionsOf(f.Process)}
	bag := BagOf(f.Process)
	for _, st := range f.Stages {
		one := Stage{StageName: NameOf(f.Process, st.Of), Steps: []Step{}, Air: airOf(f, st.Of)}
		for _, s := range st.Steps {
			one.Steps = append(one.Steps, stepOf(s, start, bag.On(model.HolderOf(st.Of), s.WeightEnd)))
		}
		r.Stages = append(r.Stages, one)
	}
	r.account(f)
	for _, a := range f.Assumed {
		r.Assumed = append(r.Assumed, AssumptionOf(a))
	}
	if st := model.First[*model.Storing](f.Process); st != nil && st.Rest != nil {
		r.Rest = st.Rest.String()
		if st.Rest.Op == quantity.Is { // for 3 days, and not for is 3 days
			r.Rest = st.Rest.Range.String()
		}
	}
	r.noMalt(f)
	return r
}

// HeadOf names a process.
func HeadOf(p *model.Process) Head {
	h := Head{Process: p.Name, Make: p.Make.Text, Charge: unknown[answer.Kilograms]()}
	if p.Charge != nil {
		h.Charge, h.Written = answer.Kilograms(p.Charge.SI), p.Charge.String()
	}
	if p.Grain != nil {
		h.Grain, h.Green = p.Grain.Name, !p.Grain.Raw()
	}
	return h
}

// BreakOf is where and why a forecast broke off, nil where it did not.
func BreakOf(f *forecast.Forecast) *Break {
	list := forecast.Troubles[forecast.Unable](f)
	if len(list) == 0 {
		return nil
	}
	t := list[0]
	b := &Break{Stage: string(t.Stage), At: answer.Seconds(t.At), Why: Trouble{t}}
	if t.Place.Known() {
		b.File, b.Line = source.Text(t.Place.File.Name()), t.Place.File.Position(t.Place.Start, source.Characters).Line
	}
	return b
}

// ModelEndOf is where the malt of a forecast came to where the model ends, nil where it did not.
func ModelEndOf(f *forecast.Forecast) *ModelEnd {
	t := f.Beyond
	if t == nil {
		return nil
	}
	e := &ModelEnd{StageName: NameOf(f.Process, t.Of), At: answer.Seconds(t.At), Why: Trouble{*t}}
	e.File, e.Line = source.Text(t.Place.File.Name()), t.Place.File.Position(t.Place.Start, source.Characters).Line
	return e
}

func stepOf(s forecast.Step, start time.Time, on OnScale[answer.Kilograms]) Step {
	out := Step{Label: s.Label, StepName: StepName{s.Word(), s.Number}, Start: answer.Seconds(s.Start), End: answer.Seconds(s.End), Temperature: TemperatureOf(s.Temperature),
		MoistureStart: answer.Share(s.MoistureStart), MoistureEnd: answer.Share(s.MoistureEnd), WeightEnd: answer.Kilograms(s.WeightEnd), OnScale: on, EndedBy: string(s.EndedBy)}
	if s.Given != nil {
		out.Given = new(answer.Celsius(*s.Given))
	}
	if !start.IsZero() {
		out.StartTime, out.EndTime = ClockAt(start, out.Start), ClockAt(start, out.End)
	}
	return out
}

// TemperatureOf is the temperature of a step, or nil where it has none.
func TemperatureOf(t forecast.Temperature) *answer.Temperature {
	if !t.Known {
		return nil
	}
	return &answer.Temperature{Place: t.Place, From: answer.Celsius(t.From), To: answer.Celsius(t.To)}
}

// ClockAt is the time so long after the first soak, rounded to the minute: no forecast means seconds, and a time
// that is rounded here is the same wherever it is shown, with a clock that has no seconds.
func ClockAt(start time.Time, after answer.Seconds) time.Time {
	return start.Add(Minutes(after))
}

// Minutes is a length rounded to the minute.
func Minutes(s answer.Seconds) time.Duration {
	return time.Duration(math.Round(float64(s)/60)) * time.Minute
}

// growthOf is what stands at the end of the last floor, when the kiln takes the grain: it
// grows on while it withers.
func growthOf(f *forecast.Forecast) *Growth {
	if len(f.Pieces) == 0 {
		return nil
	}
	p := f.Pieces[len(f.Pieces)-1]
	of := func(c int) answer.Share { return answer.Share(p.Classes[c]) }
	return &Growth{answer.Share(p.Chitted), answer.Number(p.Acrospire), Classes{of(grain.NoGrowth), of(grain.ToQuarter), of(grain.ToHalf),
		of(grain.ToThreeQuarters), of(grain.ToFull), of(grain.Overgrown)}, p.Rub.String()}
}

// calibrated is the standing of what the heat is said to do.
const calibrated = "calibrated"

func indicationsOf(f *forecast.Forecast) *Indications {
	q := f.Totals.Quality
	if q.Colour == 0 {
		return nil
	}
	return &Indications{calibrated, answer.Share(q.Diastatic), answer.Share(q.Alpha), answer.Share(q.Precursor), answer.Colour(q.Colour)}
}
