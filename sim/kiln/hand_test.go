package kiln_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/kiln"
)

// Set by air-off, the kiln comes to what is asked within half a kelvin and stays there, from a tray
// in much air to a deep bed in little, whatever is asked. Until it stays a tray is off by up to two
// kelvin, and a deep bed in little air, whose last malt still dries, by up to eight.
func TestAirOffIsHeldWithinHalfAKelvin(t *testing.T) {
	round, oven := cabinet, kiln.Equipment{Area: 0.5, Airflow: 12.0 / 3600, Still: true}
	round.Recirculation = 0.6
	walled := floored
	walled.Walls, walled.Heater = within(kiln.Brick, false), nil
	for name, c := range map[string]struct {
		charge kiln.Charge
		kit    kiln.Equipment
	}{
		"tray": {tray, cabinet}, "tray in much air": {tray, kiln.Equipment{Area: 0.5, Airflow: 400.0 / 3600}},
		"return air": {tray, round}, "oven": {tray, oven}, "brick": {greens, walled},
		"deep": {tonne, house}, "deep in little air": {tonne, kiln.Equipment{Area: 3, Airflow: 0.5}},
	} {
		for _, asked := range []float64{40, 50, 75} {
			b := bed(t, c.charge, c.kit, spring)
			set := kiln.Hold(kiln.AirOff, asked)
			arrived := until(t, b, set, 600, func(v kiln.View) bool { return v.Off.T >= asked-0.5 })
			worst, late := 0.0, 0.0
			for at := 0; at < 16*60; at += 10 {
				_, err := b.Advance(600, set)
				require.NoError(t, err)
				off := math.Abs(b.View().Off.T - asked)
				if worst = max(worst, off); at >= 10*60 {
					late = max(late, off)
				}
			}
			t.Logf("%s at %g °C: there after %.1f h, then off by %.1f K, and %.2f after 10 h", name, asked, arrived, worst, late)
			assert.Less(t, late, 0.5, fmt.Sprint(name, asked))
			assert.Less(t, b.View().Off.T, asked+0.5)
			assert.Less(t, worst, 8.0, fmt.Sprint(name, asked))
		}
	}
}

// An air-off that is asked to rise is followed to within what rises while the warmth passes
// the bed, and held at the end.
func TestAirOffFollowsARise(t *testing.T) {
	for name, c := range map[string]struct {
		charge kiln.Charge
		kit    kiln.Equipment
	}{"tray": {tray, cabinet}, "deep": {tonne, house}} {
		b := bed(t, c.charge, c.kit, spring)
		until(t, b, kiln.Hold(kiln.AirOff, 50), 600, func(v kiln.View) bool { return v.Off.T >= 49.5 })
		run(t, b, 5, kiln.Hold(kiln.AirOff, 50))
		worst := 0.0
		for i := range 36 {
			from := 50 + 5*float64(i)/6
			_, err := b.Advance(600, kiln.Setting{Target: kiln.AirOff, From: from, To: from + 5.0/6})
			require.NoError(t, err)
			worst = max(worst, math.Abs(b.View().Off.T-from-5.0/6))
		}
		v := run(t, b, 5, kiln.Hold(kiln.AirOff, 80))
		t.Logf("%s: off by %.1f K in a rise of 5 K an hour, %.2f at last", name, worst, v.Off.T-80)
		assert.Less(t, worst, 4.0, name)
		assert.InDelta(t, 80, v.Off.T, 0.5, name)
	}
}

// A hand does the same in steps that are halved again and again.
func TestAirOffDoesNotDependOnTheStep(t *testing.T) {
	for name, c := range map[string]struct {
		charge kiln.Charge
		kit    kiln.Equipment
	}{"tray": {tray, cabinet}, "deep": {tonne, house}} {
		coarse, fine := bed(t, c.charge, c.kit, spring), bed(t, c.charge, c.kit, spring)
		set := kiln.Hold(kiln.AirOff, 50)
		for range 24 {
			_, err := coarse.Advance(1200, set)
			require.NoError(t, err)
			for range 40 {
				_, err := fine.Advance(30, set)
				require.NoError(t, err)
			}
			assert.InDelta(t, fine.View().WetBasis, coarse.View().WetBasis, 1e-3, name)
			assert.InDelta(t, fine.View().Off.T, coarse.View().Off.T, 0.5, name)
		}
	}
}

// A hand that has long added all that it may takes it back: no bound holds it there.
func TestAHandLetsGoOfItsBound(t *testing.T) {
	charge := tray
	charge.Moisture = dry(0.08)
	kit := cabinet
	kit.ReachHigh = new(52.0)
	b := bed(t, charge, kit, winter)
	run(t, b, 20, kiln.Hold(kiln.AirOff, 60)) // it reaches 52 °C, and 60 is not to be had
	v := run(t, b, 6, kiln.Hold(kiln.AirOff, 45))
	assert.InDelta(t, 45, v.Off.T, 0.5)
	run(t, b, 12, kiln.Hold(kiln.AirOff, 51.9))
	v = run(t, b, 6, kiln.Setting{Target: kiln.AirOff, From: 40, To: 40})
	assert.InDelta(t, 40, v.Off.T, 0.5)
}
