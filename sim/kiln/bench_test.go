package kiln_test

import (
	"testing"

	drives "maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// A kilning of 30 h in pieces of 10 min, as the forecast takes it: 12 h at
// 50 °C, 6 h rising to 80 °C, 12 h at 82 °C.
func kilning(b *testing.B, charge kiln.Charge, kit kiln.Equipment) {
	b.ReportAllocs()
	steps := 0
	for range b.N {
		bed, err := kiln.New(charge, kit, kiln.Ambient{T: 15, RH: 0.6, Altitude: 140}, drying.Malt{})
		if err != nil {
			b.Fatal(err)
		}
		for i := range 180 {
			h := float64(i) / 6
			set := kiln.Hold(kiln.AirOn, 50)
			switch {
			case h >= 18:
				set = kiln.Hold(kiln.AirOn, 82)
			case h >= 12:
				set = kiln.Setting{From: 50 + (h-12)*5, To: 50 + (h-12+1.0/6)*5}
			}
			done, err := bed.Advance(600, set)
			if err != nil {
				b.Fatal(err)
			}
			steps = done.Steps
			_ = bed.View()
		}
	}
	b.ReportMetric(float64(steps), "steps")
}

func BenchmarkThinTrayThirtyHours(b *testing.B) {
	kilning(b, tray, kiln.Equipment{Area: 0.5, Airflow: 60.0 / 3600, Heater: new(1500.0)})
}

func BenchmarkDeepBedThirtyHours(b *testing.B) {
	kilning(b, tonne, kiln.Equipment{Area: 3, Airflow: 1.25})
}

func BenchmarkRecirculatingTrayThirtyHours(b *testing.B) {
	kilning(b, tray, kiln.Equipment{Area: 0.5, Airflow: 60.0 / 3600, Heater: new(400.0), Recirculation: 0.6})
}

// The same beds in the same layers, with air that they find by themselves: a search for it
// is all that is more.
func alike(charge kiln.Charge, kit kiln.Equipment, flow float64) kiln.Equipment {
	kit.Layers = kiln.LayersFor(charge, kiln.Ambient{T: 15, RH: 0.6, Altitude: 140}, drying.Malt{}, kiln.Draught{T: 60, Airflow: flow})
	return kit
}

func fanned(b *testing.B) kiln.Equipment {
	curve, err := drives.NewCurve(drives.Point{Flow: 0.3, Pressure: 800}, drives.Point{Flow: 1.2, Pressure: 500}, drives.Point{Flow: 2})
	if err != nil {
		b.Fatal(err)
	}
	return alike(tonne, kiln.Equipment{Area: 3, Way: &drives.Way{Fan: curve, Opening: 0.15}}, 1.25)
}

func BenchmarkFanAgainstItsBedThirtyHours(b *testing.B) { kilning(b, tonne, fanned(b)) }

func BenchmarkFanAndWeakHeaterThirtyHours(b *testing.B) {
	kit := fanned(b)
	kit.Heater = new(40e3)
	kilning(b, tonne, kit)
}

func BenchmarkFanReturnsWallsRecoveryThirtyHours(b *testing.B) {
	kit := fanned(b)
	kit.Heater, kit.Recirculation, kit.Recovers = new(60e3), 0.4, 0.55
	kit.Walls = &kiln.Walls{Of: kiln.Brick, Area: 26, Insulated: true}
	kilning(b, tonne, kit)
}

func BenchmarkFixedAirInTheLayersOfTheChimney(b *testing.B) {
	kilning(b, tray, alike(tray, kiln.Equipment{Area: 0.5, Airflow: 20.0 / 3600, Heater: new(3000.0)}, 20.0/3600))
}

func BenchmarkChimneyThirtyHours(b *testing.B) {
	kilning(b, tray, alike(tray, kiln.Equipment{Area: 0.5, Heater: new(3000.0), Way: &drives.Way{Above: 6, Below: 1, Opening: 0.025}}, 20.0/3600))
}

func BenchmarkStillOvenThirtyHours(b *testing.B) {
	kilning(b, tray, kiln.Equipment{Area: 0.5, Airflow: kiln.StillVent, Heater: new(1500.0), Still: true})
}
