package seasons

import "testing"

// What comes of malt that was roasted beyond the model is known by its record alone: its weight, its yield and a
// laboratory's moisture, but none that the forecast would have to tell.
func TestARoastIsSummedUpByItsRecord(t *testing.T) {
	const text = `site "Shed" { air 18 °C; water 12 °C; humidity 60 %; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 2 kW; reaches 60 to 230 °C; fired gas by indirect }
grain "Pale" { species barley; already kilned malt; moisture 5 % }
process "Black" {
  make black malt
  from 4 kg of "Pale"
  at "Shed"
  kiln in "roaster" { roast at malt 215 °C for 40 min; cool to malt 30 °C with water 0.1 l }
  store in "tin" for at least 2 weeks
}
batch "C1" of "Black" {
  began 2026-03-01 10:00
  weighed 3.4 kg at 11:30 after cool
`
	s := Of(batchOf(t, text+"}\n"))
	is(t, 5400, Measured, s.Kiln, second, "on the kiln")
	is(t, 3.4, Measured, s.Malt, 1e-9, "malt: it has no rootlets")
	is(t, 0.85, Measured, s.Yield, share, "yield")
	is(t, 0, Missing, s.EndMoisture, 0, "moisture")
	is(t, 0.021, Measured, Of(batchOf(t, text+"  tested moisture 2.1 % at 12:00\n}\n")).EndMoisture, share, "by a laboratory")
}
