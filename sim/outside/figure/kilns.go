package figure

import (
	"fmt"
	"math"

	"maltwright/lang/quantity"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// Tonne is green malt that makes a tonne at 4 %; Loft is its kiln, 4500 m³/h, and Cold
// the air that it draws in.
var (
	Tonne = kiln.Charge{DryMass: 960, Moisture: 0.45 / 0.55, Temperature: 15, BulkDensity: 550}
	Loft  = kiln.Equipment{Area: 3, Airflow: 1.25, Layers: 40}
	Cold  = kiln.Ambient{T: 10, RH: 0.80}
)

// tray is 3 kg of barley as green malt on half a square metre, 150 m³/h: the kiln of
// the published schedules, in the middle of its site.
var (
	tray    = kiln.Charge{DryMass: 2.5, Moisture: 0.43 / 0.57, Temperature: 15, BulkDensity: 480}
	cabinet = kiln.Equipment{Area: 0.5, Airflow: 150 / hour}
	shed    = kiln.Ambient{T: 16, RH: 0.675}
)

// on is air-on of so many °C, for hours or until the malt holds no more than to, wet
// basis.
type on struct{ t, hours, to float64 }

// longest, h: a bed that never comes there is given up.
const longest = 2000.0

// kilned takes a bed through a schedule, looking every ten minutes.
func kilned(m drying.Material, charge kiln.Charge, kit kiln.Equipment, ambient kiln.Ambient, schedule ...on) (*kiln.Bed, error) {
	b, err := kiln.New(charge, kit, ambient, m)
	if err != nil {
		return nil, err
	}
	for _, s := range schedule {
		hours := s.hours
		if s.to > 0 {
			hours, err = until(b, 600, kiln.Hold(kiln.AirOn, s.t), func(v kiln.View) bool { return v.WetBasis <= s.to })
		} else {
			_, err = b.Advance(hours*hour, kiln.Hold(kiln.AirOn, s.t))
		}
		if err != nil || math.IsInf(hours, 1) {
			return b, err
		}
	}
	return b, nil
}

// until goes on in parts, s, until the bed has come there, and gives the hours since it
// was made; infinitely many where it never does.
func until(b *kiln.Bed, part float64, set kiln.Setting, there func(kiln.View) bool) (float64, error) {
	for {
		v := b.View()
		switch {
		case there(v):
			return v.Hours, nil
		case v.Hours > longest:
			return math.Inf(1), nil
		}
		if _, err := b.Advance(part, set); err != nil {
			return 0, err
		}
	}
}

// Kilns are beds of malt on a kiln.
func Kilns() []Figure {
	ends := func(what, says string, accepted Band, key, standing string, schedule ...on) Figure {
		return Figure{What: what, Unit: "%", Digits: 1, Says: says, Accepted: accepted, Key: key, Standing: standing,
			Model: func(m drying.Material) (float64, error) {
				b, err := kilned(m, tray, cabinet, shed, schedule...)
				if err != nil {
					return 0, err
				}
				return 100 * b.View().WetBasis, nil
			}}
	}
	return []Figure{
		ends("tray, 37 °C 14 h, 48 °C 9 h, 85 °C 4 h", "2.5–5", Band{2.5, 5}, "small-scale-2023", "seen", on{t: 37, hours: 14}, on{t: 48, hours: 9}, on{t: 85, hours: 4}),
		ends("tray, 55 °C 18 h, 80 °C 4 h", "3.0–4.8", Band{3, 4.8}, "brno-institute", "partly seen; the bound is MEBAK's", on{t: 55, hours: 18}, on{t: 80, hours: 4}),
		// No hours are given for the cure; four are taken.
		ends("tray, 65 °C to 25 %, 70 °C to 12 %, 95 °C 4 h (hours ours)", "about 2", Band{1.5, 3}, "britannica-beer", "seen", on{t: 65, to: 0.25}, on{t: 70, to: 0.12}, on{t: 95, hours: 4}),
		ends("the same, 105 °C 4 h (hours ours)", "about 2", Band{1.5, 3}, "britannica-beer", "seen", on{t: 65, to: 0.25}, on{t: 70, to: 0.12}, on{t: 105, hours: 4}),
	}
}

// DeepBeds are those whose time hangs on how the kernels dry.
func DeepBeds() []Figure {
	hours := func(what string, on, least float64) Figure {
		return Figure{What: what, Unit: "h", Digits: 1, Says: fmt.Sprintf("never under %.1f", least), Accepted: AtLeast(least), Standing: "first principles",
			Model: func(m drying.Material) (float64, error) {
				b, err := kiln.New(Tonne, Loft, Cold, m)
				if err != nil {
					return 0, err
				}
				return until(b, 60, kiln.Hold(kiln.AirOn, on), func(v kiln.View) bool { return v.WetBasis <= 0.12 })
			}}
	}
	return []Figure{
		hours("1 t of malt, 4500 m³/h of 60 °C, 45 → 12 %", 60, 9.6),
		hours("the same at 50 °C", 50, 11.9),
	}
}

// bushel is the US bushel, m³, and cfm a cubic foot a minute, m³/s; both by
// definition. testWeight is 48 lb of barley to the bushel, kg/m³.
const (
	bushel     = 0.03523907
	cfm        = quantity.Foot * quantity.Foot * quantity.Foot / 60
	testWeight = 48 * quantity.Pound / bushel
	binDepth   = 3.0 // m; the days hang on the air for a bushel, hardly on the depth
)

// Bin is barley of the moisture w, wet basis, in a bin on a square metre with so many
// cfm a bushel, in air of 20 °C and 65 %.
func Bin(m drying.Material, w, perBushel float64) (*kiln.Bed, error) {
	charge := kiln.Charge{DryMass: testWeight * binDepth * (1 - w), Moisture: Dry(w), Temperature: 20, Depth: new(binDepth)}
	kit := kiln.Equipment{Area: 1, Airflow: perBushel * cfm / bushel * binDepth, Layers: 40}
	return kiln.New(charge, kit, kiln.Ambient{T: 20, RH: 0.65}, m)
}

// Bins are bins of barley dried with natural air.
func Bins() []Figure {
	var list []Figure
	for _, c := range [][3]float64{{1.25, 18, 16}, {1.0, 17, 19}, {0.75, 16, 23}} {
		list = append(list, Figure{What: fmt.Sprintf("natural air of 20 °C, 65 %%, %g cfm a bushel: %g → 13 %%", c[0], c[1]), Unit: "days", Digits: 1,
			Source: c[2], Accepted: Within(c[2], 0.25*c[2]), Key: "ndsu-drying", Standing: "seen; ±25 %",
			Model: func(m drying.Material) (float64, error) {
				b, err := Bin(m, c[1]/100, c[0])
				if err != nil {
					return 0, err
				}
				hours, err := until(b, hour, kiln.Setting{Target: kiln.Fresh}, func(v kiln.View) bool { return v.WetBasis <= 0.13 })
				return hours / 24, err
			}})
	}
	return list
}

// Coolings are beds of 320 kg of dry matter a square metre that air of 15 °C cools
// from 47 °C and 14 % to 18 °C, at the airs of a bin and of a kiln. What the source
// gives is the mean of one store of barley that came in at 46 to 49 °C; its airflow and
// its moisture are not at hand. It says nothing of malt.
func Coolings() []Figure {
	var list []Figure
	for _, speed := range []float64{0.03, 0.42} {
		list = append(list, Figure{What: fmt.Sprintf("barley of 14 %% cooled from 47 to 18 °C by air of %g m/s: moisture that goes", speed), Unit: "points", Digits: 1,
			Source: 1.5, Accepted: Within(1.5, 0.5), Key: "woods-mccallum-2000", Standing: "mean of a store at 46–49 °C, abstract seen; moisture, airflow and bound ours",
			Model: func(m drying.Material) (float64, error) {
				const w = 0.14
				charge := kiln.Charge{DryMass: 320, Moisture: Dry(w), Temperature: 47, BulkDensity: 550}
				b, err := kiln.New(charge, kiln.Equipment{Area: 1, Airflow: speed}, kiln.Ambient{T: 15, RH: 0.6}, m)
				if err != nil {
					return 0, err
				}
				if _, err = until(b, 60, kiln.Setting{Target: kiln.Fresh}, func(v kiln.View) bool { return v.MaltT <= 18 }); err != nil {
					return 0, err
				}
				return 100 * (w - b.View().WetBasis), nil
			}})
	}
	return list
}
