package outlook

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/sorted"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// The bounds of a course: how near to one another its points may lie, s, and how many it
// may have. Fifty thousand are a point a minute for five weeks.
const (
	LeastEvery  = answer.Seconds(60)
	MostPoints  = 50_000
	wholeMinute = 60.0
)

// Point is a batch at one time of its course. What has no meaning then, such as the air
// through a steep, is not known.
type Point struct {
	At    answer.Seconds `doc:"from the beginning of the first soak, in hours"`
	Time  time.Time      `json:",omitempty"`
	Stage string
	StepName
	Moisture      answer.Share     `json:"moisture_wb"`
	Weight        answer.Kilograms `doc:"of the whole batch, drained"`
	DryMatterLost answer.Share     `doc:"of the dry matter of the grain, so far"`
	Grain         answer.Celsius   `doc:"the grain or malt itself; of a bed its core, on the kiln its mean"`
	Water         answer.Celsius   `doc:"of a soak"`
	Room          answer.Celsius   `doc:"the air about the grain, before the kiln"`
	AirOn         answer.Celsius   `doc:"the air before the bed, of the kiln or one that a fan blows through"`
	AirOff        answer.Celsius   `doc:"the air behind it"`
	Bottom        answer.Celsius   `doc:"of a growing bed that a fan blows through, where the air comes on"`
	Top           answer.Celsius   `doc:"of the same, where the air goes off"`
	Humidity      answer.Share     `doc:"relative: of the room, of air-on while a fan blows through a growing bed, on the kiln of air-off"`
	Airflow       answer.Flow      `doc:"through the bed"`
	Acrospire     answer.Number    `json:"acrospire_mean" doc:"a part of the kernel, while it grows"`
	CO2           answer.Kilograms `doc:"given off so far, until the grain goes to the kiln"`
	Heat          answer.Joules    `json:"kiln_heat" doc:"given to the air of the kiln so far"`
	Balance       *Balance         `json:"kiln_balance,omitempty" doc:"where water and heat of the kiln have gone since the malt came onto it; only while it is there"`
}

// Balance is where the water and the heat of a kiln have gone since the malt came onto it. What
// of either is missing is the error of the sums.
type Balance struct {
	On           answer.Kilograms `json:"water_on" doc:"in the malt as it came onto the kiln"`
	DrawnIn      answer.Kilograms `json:"water_in" doc:"came in with the fresh air"`
	Poured       answer.Kilograms `json:"water_poured" doc:"poured on hot malt"`
	Gone         answer.Kilograms `json:"water_out" doc:"left with the exhaust"`
	Left         answer.Kilograms `json:"water_left" doc:"in the malt now"`
	WaterMissing answer.Kilograms `doc:"water_on, water_in and water_poured, less water_out and water_left"`
	Condensed    answer.Kilograms `doc:"of water_out, what a heat exchanger took from the exhaust and drained"`
	Heater       answer.Joules    `doc:"heat that the heater gave"`
	Recovered    answer.Joules    `doc:"heat that the exhaust gave to the fresh air in a heat exchanger"`
	Fan          answer.Joules    `doc:"heat that the fan gave to the air"`
	Intake       answer.Joules    `json:"from_below,omitempty" doc:"sensible heat, above that of outside air, that came in with the exhaust of the floor below; missing where none did"`
	Warmth       answer.Joules    `json:"poured" doc:"heat of the water that was poured on the malt, above water of 0 °C"`
	Warmed       answer.Joules    `json:"malt" doc:"sensible heat that the malt has gained, its dry matter and the water in it"`
	Evaporated   answer.Joules    `json:"evaporation" doc:"made vapour of the water, and loosened it from the malt"`
	Exhaust      answer.Joules    `doc:"sensible heat that left with the exhaust, above that of the fresh air"`
	Shed         answer.Joules    `doc:"led off into the room by the shell of a drum that cools, or by malt that cools in still air"`
	WallHeat     answer.Joules    `doc:"taken up by the walls of the kiln, and in them now"`
	WallLoss     answer.Joules    `doc:"lost to the room through the walls"`
	HeatMissing  answer.Joules    `doc:"heater, recovered, fan, from_below and poured, less malt, evaporation, exhaust, shed and what walls hold and lost"`
	Returned     answer.Joules    `doc:"heat above fresh air of the exhaust that was led back; it went round within the kiln"`
}

func balanceOf(s *forecast.Sight) *Balance {
	if !s.OnKiln {
		return nil
	}
	b := s.Balance
	return &Balance{
		On: answer.Kilograms(b.On), DrawnIn: answer.Kilograms(b.DrawnIn), Poured: answer.Kilograms(b.Poured), Gone: answer.Kilograms(b.Gone), Left: answer.Kilograms(b.Left), WaterMissing: answer.Kilograms(b.WaterMissing), Condensed: answer.Kilograms(b.Condensed),
		Heater: answer.Joules(b.Heater), Recovered: answer.Joules(b.Recovered), Fan: answer.Joules(b.Fan), Intake: answer.Joules(b.Intake), Warmth: answer.Joules(b.Warmth), Warmed: answer.Joules(b.Warmed), Evaporated: answer.Joules(b.Evaporated), Exhaust: answer.Joules(b.Exhaust),
		Shed: answer.Joules(b.Shed), WallHeat: answer.Joules(b.WallHeat), WallLoss: answer.Joules(b.WallLoss),
		HeatMissing: answer.Joules(b.HeatMissing), Returned: answer.Joules(b.Returned),
	}
}

// TooManyError says that a course would have more than MostPoints.
type TooManyError struct{ Every, Least answer.Seconds }

// Error says which interval would do.
func (e *TooManyError) Error() string {
	return fmt.Sprintf("a course has at most %d points; for this process take %.0f min or longer", MostPoints, float64(e.Least)/wholeMinute)
}

// ErrTooOften says that the model takes too many steps where it stops at every point.
var ErrTooOften = errors.New("the forecast takes too many steps of the model with points so near to one another; take a longer interval")

// courseOf forecasts the process again and looks at it every so many s until the malt is
// ready, and at the end of each step.
func courseOf(ctx context.Context, f *forecast.Forecast, every answer.Seconds, start time.Time) (*forecast.Forecast, []Point, error) {
	looks, err := looksOf(f, float64(every))
	if err != nil {
		return f, nil, err
	}
	seen, err := forecast.Run(f.Process, forecast.Options{Begun: f.Begun, Course: &forecast.Course{Looks: looks, AtEnds: true}, Meter: work.NewMeter(ctx, nil)})
	switch {
	case err != nil:
		return f, nil, err
	case seen.BrokenOff() && !f.BrokenOff():
		return f, nil, ErrTooOften
	}
	return seen, pointsOf(seen, start), nil
}

// looksOf lists the times to look at, s.
func looksOf(f *forecast.Forecast, every float64) ([]float64, error) {
	ends := 0
	for _, st := range f.Stages {
		ends += len(st.Steps)
	}
	if room := float64(MostPoints - ends - 1); f.Totals.Total/every > room {
		least := math.Ceil(f.Totals.Total/room/wholeMinute) * wholeMinute
		return nil, &TooManyError{answer.Seconds(every), answer.Seconds(least)}
	}
	var looks []float64
	for i := 0; float64(i)*every <= f.Totals.Total; i++ {
		looks = append(looks, float64(i)*every)
	}
	return looks, nil
}

// sameMoment is how near to one another two looks are one, s: an even time at which a
// step ends is seen as both.
const sameMoment = 0.5

// pointsOf makes points of what was seen until the malt is ready, in the order of time.
func pointsOf(f *forecast.Forecast, start time.Time) []Point {
	sorted.Stable(f.Seen, func(a, b forecast.Sight) int { return cmp.Compare(a.At, b.At) })
	points := make([]Point, 0, len(f.Seen))
	at := 0 // the step that is come to
	steps := stepsOf(f)
	for i := range f.Seen {
		s := &f.Seen[i]
		if s.At > f.Totals.Total+sameMoment {
			break
		}
		for at+1 < len(steps) && s.At > steps[at].end+sameMoment {
			at++
		}
		p := PointOf(s)
		if !start.IsZero() {
			p.Time = ClockAt(start, p.At)
		}
		if at < len(steps) {
			p.Stage, p.StepName = steps[at].stage, steps[at].StepName
		}
		if n := len(points); n > 0 && float64(p.At-points[n-1].At) < sameMoment {
			points = points[:n-1]
		}
		points = append(points, p)
	}
	return points
}

type stepEnd struct {
	stage string
	StepName
	end float64 // s from the first soak
}

func stepsOf(f *forecast.Forecast) []stepEnd {
	var list []stepEnd
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			list = append(list, stepEnd{string(st.Kind), StepName{s.Word(), s.Number}, s.End})
		}
	}
	return list
}

// PointOf is the point of what was seen, without the name of its step and the time of the clock.
func PointOf(s *forecast.Sight) Point {
	return Point{
		At: answer.Seconds(s.At), Moisture: answer.Share(s.Moisture), Weight: answer.Kilograms(s.Weight), DryMatterLost: answer.Share(s.Lost),
		Grain: answer.Celsius(s.Grain), Water: answer.Celsius(s.Water), Room: answer.Celsius(s.Air), AirOn: answer.Celsius(s.AirOn), AirOff: answer.Celsius(s.AirOff),
		Bottom: answer.Celsius(s.Bottom), Top: answer.Celsius(s.Top),
		Humidity: answer.Share(s.Humidity), Airflow: answer.Flow(s.Airflow), Acrospire: answer.Number(s.Acrospire), CO2: answer.Kilograms(s.CO2), Heat: answer.Joules(s.Heat),
		Balance: balanceOf(s),
	}
}
