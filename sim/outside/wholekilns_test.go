package outside

import (
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// onKilns is an example as it goes over its kilns.
type onKilns struct {
	*forecast.Forecast
	seen []forecast.Sight // every five minutes, and at the end of each step
	p    float64          // kPa
	t, w float64          // °C and kg/kg of the air outside
}

const lookEach = 300.0 // s

// example forecasts a process of the examples.
func example(t testing.TB, folder, file string) onKilns {
	t.Helper()
	root, err := read.OpenRoot(filepath.Join("..", "..", "examples", folder))
	require.NoError(t, err)
	defer root.Close()
	text, err := root.Read(file)
	require.NoError(t, err)
	h, found := read.Load(file, text, ".", root)
	if worst, any := finding.Worst(found); any {
		require.Less(t, worst, finding.Fault, found)
	}
	require.Len(t, h.Processes, 1)
	p := h.Processes[0]
	plan, err := forecast.Run(p, forecast.Options{})
	require.NoError(t, err)
	require.False(t, plan.BrokenOff(), "%v", plan.Trouble)
	var looks []float64
	for at := plan.Kilns[0].Began + lookEach; at < plan.Totals.Total; at += lookEach {
		looks = append(looks, at)
	}
	f, err := forecast.Run(p, forecast.Options{Course: &forecast.Course{Looks: looks, AtEnds: true}})
	require.NoError(t, err)
	x := onKilns{Forecast: f, p: handPressure(p.Site.Altitude.SI), t: p.Site.Air.Mid() - 273.15}
	x.w = handRatio(p.Site.Humidity.Mid()*handSaturation(x.t), x.p)
	for _, s := range f.Seen {
		if s.OnKiln {
			x.seen = append(x.seen, s)
		}
	}
	require.NotEmpty(t, x.seen)
	return x
}

// stage gives the steps of one of the kilns, from 0, and what was seen there.
func (x onKilns) stage(n int) (steps []forecast.Step, seen []forecast.Sight) {
	of := x.Kilns[n].Of
	for _, st := range x.Stages {
		if st.Of == model.Stage(of) {
			steps = st.Steps
		}
	}
	for _, s := range x.seen {
		if s.Of == model.Stage(of) {
			seen = append(seen, s)
		}
	}
	return steps, seen
}

// until gives what was seen on the first kiln until its malt held no more than some moisture, or
// until its front was through (NaN).
func (x onKilns) until(moisture float64) []forecast.Sight {
	_, seen := x.stage(0)
	for i, s := range seen {
		if math.IsNaN(moisture) && s.At >= x.Kilns[0].Break || s.Moisture <= moisture {
			return seen[:i]
		}
	}
	return seen
}

// carried is the water that went off by then as a share of what the air that came in could take
// up at the most, all of it leaving full at the wet bulb of air-on: with the air that the kiln
// had and the heat that it gave it, by hand. Of air that is led back only the fresh share counts,
// and air-on is as moist as that makes it.
func (x onKilns) carried(moisture, returns float64) float64 {
	seen := x.until(moisture)
	room, before := 0.0, x.Kilns[0].Began
	for _, s := range seen {
		on := x.onMoist(s.AirOn, returns)
		fresh := (1 - returns) * s.Airflow * handDensity(s.AirOn, on, x.p)
		full := handRatio(handSaturation(handWetBulb(s.AirOn, on, x.p)), x.p)
		room += fresh * (full - x.w) * (s.At - before)
		before = s.At
	}
	return 100 * x.gone(seen) / room
}

// onMoist is the water of air-on where so much of the exhaust, full at its wet bulb, is led back.
func (x onKilns) onMoist(t, returns float64) float64 {
	w := x.w
	for range 200 {
		full := handRatio(handSaturation(handWetBulb(t, w, x.p)), x.p)
		w = (1-returns)*x.w + returns*full
	}
	return w
}

// gone is the water that the malt lost until the last of some looks, by its dry matter.
func (x onKilns) gone(seen []forecast.Sight) float64 {
	steps, _ := x.stage(0)
	dry, last := x.Kilns[0].DryMass, seen[len(seen)-1]
	return dry * (ratioOf(steps[0].MoistureStart) - ratioOf(last.Moisture))
}

func ratioOf(wet float64) float64 { return wet / (1 - wet) }

// plateau is by how much air-off is off the wet bulb of air-on at the most while the front is on its
// way, K: from an hour after it was loaded, when the bed is warm, until four fifths of the time.
func (x onKilns) plateau() float64 {
	seen, began := x.until(math.NaN()), x.Kilns[0].Began
	worst := 0.0
	for _, s := range seen {
		if in := s.At - began; in > 2*hour && in < 0.8*(x.Kilns[0].Break-began) {
			worst = math.Max(worst, math.Abs(s.AirOff-handWetBulb(s.AirOn, x.w, x.p)))
		}
	}
	return worst
}

// falls is by how much air-off falls at the most behind the break while air-on does not, K, as long as
// the airflow stays: less air is cooled more.
func (x onKilns) falls() float64 {
	_, seen := x.stage(0)
	worst := 0.0
	for i := 1; i < len(seen); i++ {
		a, b := seen[i-1], seen[i]
		if math.Abs(b.Airflow/a.Airflow-1) > 0.01 {
			break
		}
		if a.At > x.Kilns[0].Break && b.Step != string(model.CoolStep) && b.AirOn >= a.AirOn-0.05 {
			worst = math.Max(worst, a.AirOff-b.AirOff)
		}
	}
	return worst
}

// heatByHand is the heat that came into the air until the break, from heater, exchanger and fan less
// what the walls have of it, over what the air took to be warmed, by hand, %.
func (x onKilns) heatByHand(moisture float64) float64 {
	seen := x.until(moisture)
	hand, before := 0.0, x.Kilns[0].Began
	for _, s := range seen {
		hand += s.Airflow * handDensity(s.AirOn, x.w, x.p) * (handEnthalpy(s.AirOn, x.w) - handEnthalpy(x.t, x.w)) * 1000 * (s.At - before)
		before = s.At
	}
	b := seen[len(seen)-1].Balance
	return 100 * (b.Heater + b.Recovered + b.Fan - b.WallHeat - b.WallLoss) / hand
}

// balanced is the water that the kilns drove off less that by the moistures and the dry matter, as
// a part of it, %.
func (x onKilns) balanced() float64 {
	sum := 0.0
	for n := range x.Kilns {
		steps, _ := x.stage(n)
		sum += x.Kilns[n].DryMass * (ratioOf(steps[0].MoistureStart) - ratioOf(steps[len(steps)-1].MoistureEnd))
	}
	return 100 * (x.Totals.KilnWater/sum - 1)
}

// heatOfWater is the heat of all kilns for each kilogram of water that they drove off, MJ.
func (x onKilns) heatOfWater() float64 { return x.Totals.KilnEnergy / x.Totals.KilnWater / 1e6 }

// aboveRest is by how much the malt is moister at the end of its last heat than barley that lay in that
// air for good, points: none can be drier.
func (x onKilns) aboveRest() float64 {
	_, seen := x.stage(len(x.Kilns) - 1)
	var last forecast.Sight
	for _, s := range seen {
		if s.Step == string(model.CoolStep) {
			break
		}
		last = s
	}
	vapour := x.w / (0.622 + x.w) * x.p
	return 100 * (last.Moisture - handRest(last.AirOn, vapour/handSaturation(last.AirOn)))
}

// hours are those from loading to the end of the last kiln.
func (x onKilns) hours() float64 {
	steps, _ := x.stage(len(x.Kilns) - 1)
	return (steps[len(steps)-1].End - x.Kilns[0].Began) / hour
}

// eachTonne is energy, J, in kWh for each tonne of malt.
func (x onKilns) eachTonne(energy float64) float64 {
	return energy / 3.6e6 / (x.Totals.Malt / 1000)
}

// vented is the water that went off until some moisture as a share of what the air of a drum
// carries, all of it leaving full at the heat of the malt, %.
func (x onKilns) vented(moisture float64) float64 {
	seen := x.until(moisture)
	room, before := 0.0, x.Kilns[0].Began
	for _, s := range seen {
		full := handRatio(math.Min(handSaturation(s.Malt), 0.95*x.p), x.p)
		room += s.Airflow * handDensity(s.AirOn, x.w, x.p) * (full - x.w) * (s.At - before)
		before = s.At
	}
	return 100 * x.gone(seen) / room
}

// drumHeat is the heat that a drum was given over what its water, its malt and its air took, %: 2.45 MJ
// for each kilogram of water [fao-56], malt of 1.3 and water of 4.19 kJ/(kg·K) warmed to the hottest
// that the malt came to, its air as warm as the malt, and its shell, a cylinder as long as it is wide, as
// warm as its air-on, which loses 11 W/(m²·K).
func (x onKilns) drumHeat() float64 {
	steps, seen := x.stage(0)
	hottest, airs, left, before := 0.0, 0.0, 0.0, x.Kilns[0].Began
	wide := math.Cbrt(4 / math.Pi * model.First[*model.Kilning](x.Process).Kiln.Holds.SI)
	for _, s := range seen {
		if s.Step == string(model.CoolStep) { // what goes off then the malt's own heat evaporates
			break
		}
		hottest, left = math.Max(hottest, s.Malt), ratioOf(s.Moisture)
		airs += 0.011 * 1.5 * math.Pi * wide * wide * (s.AirOn - x.t) * (s.At - before)
		if s.Step != string(model.StewStep) { // it is shut
			airs += s.Airflow * handDensity(s.AirOn, x.w, x.p) * 1.006 * (s.Malt - x.t) * (s.At - before)
		}
		before = s.At
	}
	dry := x.Kilns[0].DryMass
	took := 2450*dry*(ratioOf(steps[0].MoistureStart)-left) + dry*(1.3+4.19*left)*(hottest-seen[0].Malt) + airs
	return 100 * x.Totals.KilnEnergy / 1000 / took
}
