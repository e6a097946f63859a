package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/draught"
)

// Energy is what a stage, or all of them, took and gave, J unless said. Fuel and power are apart:
// they are paid apart, and a joule of one is not worth one of the other.
type Energy struct {
	Heat      float64 // that heaters gave to air and beds
	Fuel      float64 // burnt for it, or taken for it by heaters that do not say how they are fired
	Unsaid    float64 // the part of Fuel that such took
	Power     float64 // electricity, for heaters that are electric and for fans
	Fans      float64 // the part of Power that fans drew
	Cold      float64 // heat that coolers took out; what they draw for it is not known
	Recovered float64 // heat that exhaust gave to fresh air in a heat exchanger
	PassedOn  float64 // heat above outside air, that of vapour left out, of the exhaust of one floor that the next one took
	Water     float64 // evaporated from grain and malt, kg
}

// add puts another account to this one.
func (e *Energy) add(o Energy) {
	e.Heat += o.Heat
	e.Fuel += o.Fuel
	e.Unsaid += o.Unsaid
	e.Power += o.Power
	e.Fans += o.Fans
	e.Cold += o.Cold
	e.Recovered += o.Recovered
	e.PassedOn += o.PassedOn
	e.Water += o.Water
}

// heated books heat, J, that a heater gave, of which so much of what it takes reaches the air.
// The sun is free.
func (e *Energy) heated(heat float64, efficiency *model.Quantity, fired string) {
	took := heat
	if efficiency != nil {
		took /= efficiency.SI
	}
	e.Heat += heat
	switch fired {
	case vocabulary.FiredElectric:
		e.Power += took
	case vocabulary.FiredSolar:
	case "":
		e.Fuel += took
		e.Unsaid += took
	default:
		e.Fuel += took
	}
}

// fan books what fans drew, J.
func (e *Energy) fan(drew float64) {
	e.Power += drew
	e.Fans += drew
}

// Spent is the account of one stage. Stages that take nothing have none.
type Spent struct {
	Stage model.StageKind
	Of    model.Stage
	Energy
}

// spent closes the account of the stage that is run.
func (r *run) spent(st model.Stage, e Energy) {
	r.f.Spent = append(r.f.Spent, Spent{st.Kind(), st, e})
	r.f.Totals.Energy.add(e)
}

// took is the account of a kiln, as far as it is forecast. A fan draws what it is said to while it
// blows, or what bed and ducts take.
func (m *kilnModel) took(k *model.Kiln) Energy {
	v := m.bed.View()
	l := &v.Ledger
	if k == nil {
		k = new(model.Kiln)
	}
	e := Energy{Water: m.forecast(l.DrivenOff())}
	if k.Recovers != nil {
		e.Recovered = m.forecast(l.Recovered)
	}
	if m.floor.fed {
		e.PassedOn = m.forecast(m.bed.Balance().Intake)
	}
	e.heated(m.forecast(l.Heater), k.Efficiency, k.Fired.Text)
	switch {
	case k.FanPower != nil:
		e.fan(k.FanPower.SI * m.blew(k))
	case m.fan:
		e.fan(m.drew)
	case moved(k):
		e.fan(l.FanEnergy)
	}
	return e
}

// blew is how long the fan of a kiln has blown, s: while the malt lies there, and where all its air is
// that of the floor below, no longer than that has any.
func (m *kilnModel) blew(k *model.Kiln) float64 {
	on := 3600 * m.bed.View().Hours
	if m.floor.until == 0 || k.BlowsBy().Known() {
		return on
	}
	return min(on, m.floor.until)
}

// drawn is what a fan draws, W, of which nothing is said: what bed and ducts take, as of a box.
func (m *kilnModel) drawn() float64 {
	if !m.fan {
		return 0
	}
	air := m.bed.Moved()
	return draught.Power(air.Flow, air.Bed+ductPressure)
}

// recovers is the temperature ratio of the heat exchanger of a kiln, 0 where it has none. One whose
// exhaust goes to a floor above gives it what it has: that is left out, and told.
func (r *run) recovers(st *model.Kilning, k *model.Kiln) float64 {
	switch {
	case k.Recovers == nil || Still(k):
		return 0
	case r.isGiver(st):
		r.assume(NothingRecovered{r.called()})
		return 0
	}
	return k.Recovers.SI
}

// moved tells whether a fan moves the air of a kiln.
func moved(k *model.Kiln) bool {
	if k.Fed() && !k.BlowsBy().Known() && k.FanPower == nil { // the fan of the floor below moves it
		return false
	}
	switch k.Draught.Text {
	case vocabulary.DraughtFan:
		return true
	case "":
		return k.Chimney == nil && !k.Tumbles && k.AirFrom == nil || len(k.Fan) > 0
	}
	return false
}
