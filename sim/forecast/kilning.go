package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
)

// Kilned is how the malt fared on the kiln.
type Kilned struct {
	Place   source.Place // the head of the stage
	Of      *model.Kilning
	Began   float64   // s from the first soak
	Depth   float64   // m, of the bed as it was loaded
	Dried   float64   // m, of the bed at the end
	Airs    *Airs     // nil where the air is there whatever the bed, and of a stage without heat
	DryMass float64   // kg of dry matter, rootlets and all; none of it is lost on the kiln
	Wet     float64   // s in which the malt held more than WitheredMoisture
	Break   float64   // s from the first soak at which the drying front was through; NaN where that was not seen
	Stirred *Stirring // the first time; nil where it is not stirred
	Fed     *Fed      // the exhaust that it took; nil of fresh air
}

// Airs is the air that what drives it brought through the malt, m³/s at air-on.
type Airs struct {
	First, Last, Least float64 // half an hour after it was loaded, at the end of the last step with heat, and the least of those with heat
	By                 Driver
}

// FirstKiln is how the malt fared on the first kiln, nil where nothing came onto one.
func (f *Forecast) FirstKiln() *Kilned {
	if len(f.Kilns) == 0 {
		return nil
	}
	return &f.Kilns[0]
}

// Stirring is a stirring of the malt on the kiln.
type Stirring struct {
	At       float64 // s since it came onto the kiln
	Broken   bool    // the drying front was through
	Moisture float64 // wet basis, the mean of the bed
}

// WitheredMoisture is that below which malt no longer grows and sours but slowly,
// wet basis (common practice).
const WitheredMoisture = 0.20

// MoistureAt gives the moisture, wet basis, of malt of which the whole batch weighs
// so many kg while it is on the kiln; below its dry matter it is negative.
func (k *Kilned) MoistureAt(weight float64) float64 { return 1 - k.DryMass/weight }

// kilned writes down how the malt fared on the kiln that it came onto at began.
func (r *run) kilned(m *kilnModel, st *model.Kilning, began float64) {
	v := m.bed.View()
	k := Kilned{Place: st.Place(), Of: st, Began: began, Depth: m.depth, Dried: m.bed.Depth(), DryMass: v.Ledger.DryMass, Wet: m.wet, Break: math.NaN(), Stirred: m.stirred}
	if v.Broken {
		k.Break = began + 3600*v.BreakHours
	}
	k.Fed = r.fedBy(m, st, began)
	if m.loaded.by != "" && !math.IsInf(m.airs.Least, 1) {
		airs := m.airs
		airs.By = m.loaded.by
		k.Airs = &airs
	}
	r.f.Kilns = append(r.f.Kilns, k)
}

// airTrouble tells of a step that ended before its malt was as dry as asked, where
// the air that came in could not have carried the water away, however well it was
// used: all of it leaving saturated at the wet bulb of air-on.
func (r *run) airTrouble(m *kilnModel, s asked, before kiln.Ledger) {
	wanted, asked := Dryness(s.Until)
	v := m.bed.View()
	l := v.Ledger
	steps := r.f.Stages[len(r.f.Stages)-1].Steps
	last := steps[len(steps)-1]
	if !asked && m.loaded.by != "" && last.Kind == model.DryStep {
		wanted, asked = WitheredMoisture, true // so much at the least is asked of air that follows from the bed
	}
	if !asked || m.beyond || v.WetBasis <= wanted || m.target == kiln.Fresh || m.floor.fed {
		return
	}
	water := before.WaterInMalt - l.DryMass*wanted/(1-wanted)
	outside, err := air.FromRH(r.site.air, r.site.rh, v.On.P)
	if err != nil {
		return
	}
	full, err := air.FromRH(v.WetBulb, 1, v.On.P)
	if err != nil {
		return
	}
	passed, room := l.AirPassed-before.AirPassed, (1-m.back())*(full.W-outside.W)
	carries := passed * room
	if carries >= water {
		return
	}
	took := last.End - last.Start
	t := AirShort{Met: r.meets(s.place), Water: water, Carries: carries, Moisture: wanted, Took: took, Limit: limits(s), Charge: r.p.Charge.Quantity}
	if room > 0 {
		t.Driven = m.why(r.nameAbove(), took, passed, water/room)
	}
	r.trouble(t)
}

// back is the share of the exhaust that is led back in the step.
func (m *kilnModel) back() float64 {
	if m.share != nil {
		return *m.share
	}
	return m.returns
}

// Dryness is the moisture, wet basis, to which a condition asks to dry; it is false for
// one that does not.
func Dryness(c *model.Condition) (w float64, ok bool) {
	if c == nil {
		return 0, false
	}
	for _, t := range c.Tests {
		if t.Measure == vocabulary.MeasureMoisture && t.Bound != nil {
			return t.Bound.Range.High.SI, true
		}
	}
	return 0, false
}

// OffWet tells whether malt comes off the last kiln with more than WitheredMoisture: it sours and
// moulds within days, and is no malt.
func (f *Forecast) OffWet() bool {
	return len(f.Kilns) > 0 && !f.BrokenOff() && f.Totals.FinalMoisture > WitheredMoisture
}
