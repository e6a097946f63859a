package evidencetest

import (
	"fmt"
	"math"

	"maltwright/sim/forecast"
)

// Logger is a thermometer in the bed that writes by itself. Its errors last: a share of
// their variance falls off by exp(−Δt/Lasts), and the rest is anew each time.
type Logger struct {
	Every float64 // s, a full minute or more
	Lasts float64 // s
	Share float64 // of the variance that lasts, 0 to 1
}

// logged is what the logger writes through a step on the floor. Its errors are those of the
// bed, as the evidence takes them.
func (w *writer) logged(s *forecast.Step) {
	l := w.truth.Logger
	if l == nil {
		return
	}
	kept, stays := w.rand.NormFloat64(), math.Exp(-l.Every/l.Lasts)
	for at := s.Start + l.Every; at < s.End-hour; at += l.Every {
		kept = stays*kept + math.Sqrt(1-stays*stays)*w.rand.NormFloat64()
		off := w.scatter * bed * (math.Sqrt(l.Share)*kept + math.Sqrt(1-l.Share)*w.rand.NormFloat64())
		w.add(at, func(s *forecast.Sight) string {
			return fmt.Sprintf("read bed %.1f °C", s.Bed+w.truth.Offset+off)
		})
	}
}
