package lsp

import "testing"

// huntIn are the files that a hunt types into: for one seed in eight those of the examples, and else short ones with
// one of each kind of statement, since what a keystroke costs goes with the size of a file.
func huntIn(t testing.TB, seed uint64) map[string]string {
	if seed%8 == 3 {
		return map[string]string{"pale.malt": example(t, "pale.malt"), "loft.malt": example(t, "loft.malt"), "box.malt": example(t, "box.malt"), "26-03.malt": example(t, "batches/26-03.malt")}
	}
	return map[string]string{"pale.malt": shortPale, "loft.malt": shortLoft, "b.malt": shortRecord, "own.malt": shortLoft + shortPale[len("use \"loft.malt\"\n"):]}
}

const shortLoft = `grain "field" {
  species  barley
  moisture 12.4 %
  treated  no
}
site "loft" {
  air   8 to 15 °C
  water 9 to 12 °C
  awake 06:30 to 22:30
}
vessel "tub"  { holds 25 l; weighs 990 g }
floor "tray"  { area 0.3 m2; heater 30 W } # 🌾
kiln "kiln"   { area 0.5 m2; airflow 60 m3/h; heater 1500 W }
`

const shortPale = `use "loft.malt"
process "pale" {
  make pale malt
  from 6 kg of "field"
  at "loft"
  steep in "tub" to moisture 43 to 45 % {
    repeat 2 times {
      soak 7 h in water at 13 °C # cold 🌾
      rest 9 h in air at 14 °C
    }
  }
  germinate on "tray" { hold bed at 14 to 17 °C; turn every 8 h; for 5 days }
  kiln in "kiln" {
    dry at air-on 50 °C until moisture at most 10 % allow 6 to 14 h
    cool to malt 30 °C
  }
  deculm within 12 h
}
`

const shortRecord = `use "pale.malt"
batch "26" of "pale" {
  began 2026-03-06 07:00
  read water 13.6 °C at 07:01
  weighed 7.41 kg at 14:00 after soak 1
}
`
