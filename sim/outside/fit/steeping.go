package main

import (
	"fmt"
	"math"
	"slices"

	"maltwright/sim/grain"
	"maltwright/sim/outside/figure"
	"maltwright/sim/steep"
)

// The order of the parameters of steeping; behind them two for each lot that was weighed.
const (
	resistance = iota // pelegK1, h
	core              // barleyCoreWater, kg/kg
	loose             // barleyHuskWater and barleyFilmWater together, kg/kg
	fill              // fillTime, s
	ofLots
)

const hour = 3600.0

// steepInCode are the four as the code has them. Two of them no package exports; they are
// read off the model: after a time t the core has drunk c/(1 + c/most), c = t/k1, and
// the film holds 1 − exp(−t/τ) of its most.
func steepInCode() []float64 {
	const t = 60.0
	barley, err := grain.Of("barley")
	if err != nil {
		return nil
	}
	l := grain.LotOf(barley, 1, 0.12/0.88)
	s, err := steep.New(l)
	if err != nil || s.Soak(t, steep.Water{T: 15}) != nil {
		return nil
	}
	dry := s.DryMatter()
	drunk := s.CoreX()*dry - l.Moisture0 - grain.StarchWater*s.Batch().Respired
	return []float64{t / hour / (drunk / (1 - drunk/barley.CoreWater)), barley.CoreWater, barley.HuskWater + barley.FilmWater,
		-t / math.Log(1-s.FilmX()*dry/barley.FilmWater)}
}

// batch is barley that stands in water of t °C, and is looked at after some hours.
type batch struct {
	dry, moisture float64 // kg; wet basis
	t             float64
	hours         []float64
	code          []float64 // of the parameters
	last          []float64 // parameters of which looks are known
	looks         []steep.State
}

// look gives it at one of its hours, with some parameters, and with the uptake and the
// loose water of the lot. What husk and film hold is filled by the end of any soak but
// the shortest; there it is in proportion to what they come to.
func (b *batch) look(p []float64, uptake, held float64, i int) (*steep.State, error) {
	if key := append(slices.Clone(p), uptake, held); !slices.Equal(key, b.last) {
		if err := b.soak(p, uptake, held); err != nil {
			return nil, err
		}
		b.last = key
	}
	return &b.looks[i], nil
}

func (b *batch) soak(p []float64, uptake, held float64) error {
	barley, err := grain.Of("barley")
	if err != nil {
		return err
	}
	l := grain.LotOf(barley, b.dry, b.moisture/(1-b.moisture))
	l.UptakeFactor = uptake * b.code[resistance] / p[resistance]
	l.Profile.CoreWater = p[core]
	first := b.hours[0] * hour
	l.HoldLoose(held / b.code[loose] * filled(first, p[fill]) / filled(first, b.code[fill]))
	s, err := steep.New(l)
	if err != nil {
		return err
	}
	b.looks, b.last = b.looks[:0], nil
	before := 0.0
	for _, h := range b.hours {
		if err := s.Soak((h-before)*hour, steep.Water{T: b.t}); err != nil {
			return err
		}
		b.looks, before = append(b.looks, s), h
	}
	return nil
}

// filled is the share of what husk and film come to that they hold after s seconds.
func filled(s, fillTime float64) float64 { return -math.Expm1(-s / fillTime) }

// How far the figures are off.
const (
	tableError   = 0.6   // points: the steps of the table are so uneven
	minutesError = 0.3   // points
	drainedError = 0.012 // of a drained weight
)

// steeping is the fit of how barley drinks.
func steeping() *problem {
	const ours, lots = "no figure is published", "seven lots [molina-cano-1995]"
	code := steepInCode()
	p := &problem{
		name: "How barley drinks",
		says: "Peleg's k1 at 15 °C, the most that the core drinks (1/k2), what husk and film hold together and how fast they fill, fitted together to the steeping table of [kunze] (0.6 points, its own unevenness), " +
			"the moisture after five minutes [heriot-watt-icbd] (0.3 points; from 14 %, which it does not say) and the weights of two lots [molina-cano-1995] (1.2 % each, as drained weights are taken to be), each lot with an uptake and a husk of its own. " +
			"Of the time of filling one row tells, and no more than that it is short. The code keeps what it had: each value lies in its interval, and the constants of rests and of the growth in the steep were set beside them.",
		kept: true,
		parameters: []parameter{
			{name: "pelegK1", unit: "h", digits: 1, code: code[resistance], drawnTo: 43, by: math.Log(2), log: true, source: ours},
			{name: "barleyCoreWater", unit: "kg/kg", digits: 3, code: code[core], drawnTo: 0.8, by: math.Log(1.5), log: true, source: ours},
			{name: "barleyHuskWater + barleyFilmWater", unit: "kg/kg", digits: 3, code: code[loose], drawnTo: 0.134, by: 0.03, source: lots},
			{name: "fillTime", unit: "s", digits: 0, code: code[fill], drawnTo: 60, by: math.Log(2), log: true, source: ours},
		},
	}
	for i := range p.parameters {
		p.parameters[i].before = code[i]
	}
	p.fitted = slices.Concat(table(code), fiveMinutes(code))
	for i, series := range figure.MolinaCano() {
		p.parameters = append(p.parameters,
			parameter{name: "uptake of lot " + series.Lot, unit: "of barley's", digits: 2, before: 1, drawnTo: 1, by: 0.35, log: true, source: "the spread of lots"},
			parameter{name: "husk and film of lot " + series.Lot, unit: "kg/kg", digits: 3, before: code[loose], drawnTo: 0.134, by: 0.03, source: lots})
		p.own += 2
		p.fitted = append(p.fitted, weights(code, series, ofLots+2*i)...)
	}
	return p
}

// table is the continuous steeping of [kunze].
func table(code []float64) []observation {
	var list []observation
	batches := map[float64]*batch{}
	for _, s := range figure.Kunze() {
		b := batches[s.T]
		if b == nil {
			b = &batch{dry: 880, moisture: 0.12, t: s.T, code: code}
			batches[s.T] = b
		}
		i := len(b.hours)
		b.hours = append(b.hours, s.Hours)
		f := figure.Figure{What: fmt.Sprintf("continuous steep, %g h at %g °C", s.Hours, s.T), Unit: "%", Digits: 1, Source: s.Moisture,
			Accepted: figure.Within(s.Moisture, 2), Key: "kunze", Standing: "from memory"}
		list = append(list, observation{Figure: f, by: tableError, model: func(p []float64) (float64, error) { return moisture(b.look(p, 1, p[loose], i)) }})
	}
	return list
}

func moisture(s *steep.State, err error) (float64, error) {
	if err != nil {
		return 0, err
	}
	return 100 * s.Moisture(), nil
}

func fiveMinutes(code []float64) []observation {
	b := &batch{dry: 880, moisture: 0.14, t: 18, hours: []float64{1.0 / 12}, code: code}
	f := figure.Figure{What: "5 min at 18 °C, from 14 %", Unit: "%", Digits: 1, Source: 23.2,
		Accepted: figure.Within(23.2, 0.3), Key: "heriot-watt-icbd", Standing: "seen; first moisture not given"}
	return []observation{{Figure: f, by: minutesError, model: func(p []float64) (float64, error) { return moisture(b.look(p, 1, p[loose], 0)) }}}
}

// weights are those of a lot, whose own two parameters stand at own.
func weights(code []float64, series figure.Series, own int) []observation {
	var list []observation
	b := &batch{dry: 0.044, moisture: 0.12, t: 15, hours: figure.WeighedAt(), code: code}
	for i, grams := range series.Grams {
		f := figure.Figure{What: fmt.Sprintf("lot %s after %g h, of 50 g", series.Lot, b.hours[i]), Unit: "g", Digits: 1, Source: grams,
			Accepted: figure.Within(grams, 2*drainedError*grams), Key: "molina-cano-1995", Standing: "seen"}
		list = append(list, observation{Figure: f, by: drainedError * grams, model: func(p []float64) (float64, error) {
			s, err := b.look(p, p[own], p[own+1], i)
			if err != nil {
				return 0, err
			}
			return 1000 * s.DrainedMass(), nil
		}})
	}
	return list
}
