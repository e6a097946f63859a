package pneumatic_test

import (
	"testing"

	"maltwright/sim/pneumatic"
)

// BenchmarkFiveDays grows a tonne in a box of twenty layers for five days, in chunks
// of ten minutes, with a turn every twelve hours.
func BenchmarkFiveDays(b *testing.B) {
	led := blown(500, 13, 0.98)
	led.Follow, led.Return = &pneumatic.Follow{T: 16, Least: 8, Most: 18}, 0.7
	for name, s := range map[string]pneumatic.Supply{"asked": blown(500, 13, 0.98), "led": led, "standing": {Room: hall()}} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				bed := tonne(b)
				keep(b, &bed, 5*day, 12*hour, s)
			}
		})
	}
}
