package forecast

import "testing"

// What it costs to look at a batch all along, and at the layers of its bed with it.
func BenchmarkLooks(b *testing.B) {
	p := load(b, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+kilnText+"}\n")
	looks := []float64{}
	for i := range 343 {
		looks = append(looks, 1800*float64(i))
	}
	for name, c := range map[string]*Course{"none": nil, "looks": {Looks: looks}, "layers": {Looks: looks, AtStarts: true, AtEnds: true, Layers: true}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Run(p, Options{Course: c}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
