package figure

import (
	"math"

	"maltwright/sim/drying"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
)

// Way is what malt goes through on a kiln, layer by layer.
type Way [][]heat

// heat is a step of a layer, in which its temperature, °C, and its moisture, wet basis, go
// in straight lines.
type heat struct {
	dt, t0, t1, w0, w1 float64 // s, °C, wet basis
	stewed             bool
}

// Colour is that of chalky malt at the end of the way, EBC, by some constants.
func (w Way) Colour(c quality.Colouring) float64 {
	sum := 0.0
	for _, layer := range w {
		s := quality.Green(chalky)
		for _, h := range layer {
			c.Step(&s, h.dt, h.t0, h.t1, h.w0, h.w1, h.stewed)
		}
		sum += s.Colour
	}
	return sum / float64(len(w))
}

const chalky = 0.85 // modification

// Coloured is the colour of a malt in trade, and a way of kilning it.
type Coloured struct {
	Figure // whose Model is nil
	Way    func() (Way, error)
}

// stage is air-on of the tray for a while; in a stew ledBack of the exhaust comes in again.
type stage struct {
	on
	from   float64 // °C, from which it rises; 0 where it does not
	stewed bool
}

const ledBack = 0.98

// Colours are malts in trade, dried on the tray of the published schedules: first those to
// which the colour is fitted, then those that are held out. The schedules of hot Munichs,
// Vienna and of the pale ale malt dried to 8 % are from memory.
func Colours() (fitted, out []Coloured) {
	malt := func(what, says string, accepted Band, key, standing string, stages ...stage) Coloured {
		return Coloured{Figure{What: what, Unit: "EBC", Digits: 1, Says: says, Accepted: accepted, Key: key, Standing: standing},
			func() (Way, error) { return heated(stages) }}
	}
	const specified, recalled = "malt-specifications", "from memory"
	at := func(t, hours float64) stage { return stage{on: on{t: t, hours: hours}} }
	to := func(t, w float64) stage { return stage{on: on{t: t, to: w}} }
	rise := func(from, t, hours float64) stage { return stage{on: on{t: t, hours: hours}, from: from} }
	stew := func(t, hours float64) stage { return stage{on: on{t: t, hours: hours}, stewed: true} }
	fitted = []Coloured{
		malt("pilsner, 50 °C 16 h, 60 and 70 °C 1 h, 80 °C 5 h", "2.5–3", Band{2.5, 3}, specified, "seen", at(50, 16), at(60, 1), at(70, 1), at(80, 5)),
		malt("pale ale, 65 °C to 25 %, 70 °C to 12 %, 95 °C 4 h", "5–7", Band{5, 7}, specified, "seen; hours from memory", to(65, 0.25), to(70, 0.12), at(95, 4)),
		malt("pale ale, 65 °C to 8 %, in 2 h to 95 °C, 4 h there", "5–7", Band{5, 7}, "", recalled, to(65, 0.08), rise(65, 95, 2), at(95, 4)),
		malt("Munich, stew 6 h at 40 °C, 50 °C to 12 %, in 3 h to 65 °C, 83 °C 5 h", "14–18", Band{14, 18}, specified, "seen; hours ours", stew(40, 6), to(50, 0.12), rise(55, 65, 3), at(83, 5)),
		malt("dark Munich, the same to 12 %, in 2 h to 100 °C, 4 h there", "20–25", Band{20, 25}, "", recalled, stew(40, 6), to(50, 0.12), rise(65, 100, 2), at(100, 4)),
		malt("dark Munich, stew 8 h at 45 °C, 50 °C to 12 %, in 2 h to 103 °C, 4 h there", "20–25", Band{20, 25}, "", recalled, stew(45, 8), to(50, 0.12), rise(65, 103, 2), at(103, 4)),
	}
	out = []Coloured{
		malt("pilsner, 55 °C 18 h, 80 °C 4 h", "2.5–3", Band{2.5, 3}, specified, "seen", at(55, 18), at(80, 4)),
		malt("Vienna, 50 °C to 25 %, 65 °C to 10 %, in 2 h to 90 °C, 3 h there", "5.5–8", Band{5.5, 8}, "", recalled, to(50, 0.25), to(65, 0.10), rise(65, 90, 2), at(90, 3)),
	}
	return fitted, out
}

// recorder writes down what each layer of a bed goes through.
type recorder struct {
	bed    *kiln.Bed
	before []kiln.Layer
	way    Way
	stewed bool
}

// Stepped is asked by the bed.
func (r *recorder) Stepped(dt float64) error {
	now := r.bed.Layers(nil)
	for i, a := range now {
		b := r.before[i]
		r.way[i] = append(r.way[i], heat{dt, b.T, a.T, Wet(b.X), Wet(a.X), r.stewed})
	}
	r.before = now
	return nil
}

// heated takes the tray through stages, ten minutes after ten minutes.
func heated(stages []stage) (Way, error) {
	b, err := kiln.New(tray, cabinet, shed, drying.Malt{})
	if err != nil {
		return nil, err
	}
	r := &recorder{bed: b, before: b.Layers(nil)}
	r.way = make(Way, len(r.before))
	for _, s := range stages {
		r.stewed = s.stewed
		const part = 600.0
		for t := 0.0; s.hours > 0 && t < s.hours*hour || s.hours == 0 && b.View().WetBasis > s.to; t += part {
			if b.View().Hours > longest {
				return nil, kiln.ErrStalled
			}
			if _, err := b.AdvanceBy(part, s.setting(t, part), r); err != nil {
				return nil, err
			}
		}
	}
	return r.way, nil
}

// setting is that of a part of the stage, s.
func (s stage) setting(t, part float64) kiln.Setting {
	set := kiln.Hold(kiln.AirOn, s.t)
	if s.from > 0 {
		along := func(t float64) float64 { return s.from + (s.t-s.from)*math.Min(1, t/(s.hours*hour)) }
		set.From, set.To = along(t), along(t+part)
	}
	if s.stewed {
		set.Recirculation = new(ledBack)
	}
	return set
}
