package model

import "maltwright/lang/quantity"

// Is tells whether a step, a stage or a reading is of the type T.
func Is[T any](x any) bool {
	_, ok := x.(T)
	return ok
}

// Asked is what a gate waits for, nil for every other step.
func Asked(s Step) *Condition {
	if g, ok := s.(*Gate); ok {
		return g.Asks
	}
	return nil
}

// HeldOn tells whether a temperature that has changed over a time is held at its end, since the step waits for
// something under a guard that goes on for longer. Without one the step ends with the change.
func HeldOn(e Ending, w Warming) bool {
	return w.Over != nil && e.For == nil && e.Until != nil && e.Allow != nil && e.Allow.Latest != nil && e.Allow.Latest.SI > w.Over.SI
}

// Inner lists the steps of a repeat, nil for every other step.
func Inner(s Step) []Step {
	if r, ok := s.(*Repeat); ok {
		return r.Steps
	}
	return nil
}

// Airflow is the air that a step of the kiln asks for, nil where it asks for none.
func Airflow(s Step) *Quantity {
	if h := HeatedOf(s); h != nil {
		return h.Airflow
	}
	return nil
}

// HeatedOf is what a step of the kiln says that dries, stews, cures or roasts, nil for every
// other step.
func HeatedOf(s Step) *Heated {
	if h, ok := s.(interface{ heated() *Heated }); ok {
		return h.heated()
	}
	return nil
}

func (h *Heated) heated() *Heated { return h }

// Returns is the share of the exhaust that a step of the kiln asks to be led back, nil where
// it asks for none.
func Returns(s Step) *Quantity {
	if h := HeatedOf(s); h != nil {
		return h.Returns
	}
	return nil
}

// Smoked tells whether a step of the kiln is done in smoke.
func Smoked(s Step) bool {
	h := HeatedOf(s)
	return h != nil && h.Smoke
}

// Aerated tells whether a step is a soak in water that is kept stirred up with air.
func Aerated(s Step) bool {
	soak, ok := s.(*Soak)
	return ok && soak.Aerated
}

// WaterVolume is an amount of water in m³, be it a volume or a mass.
func WaterVolume(q quantity.Quantity) float64 {
	if q.Dimension == quantity.Mass {
		return q.SI / 1000 // a litre of water weighs a kilogram
	}
	return q.SI
}

// EveryStep lists the steps and those of their repeats, each once.
func EveryStep(steps []Step) (list []Step) {
	for _, s := range steps {
		list = append(append(list, s), EveryStep(Inner(s))...)
	}
	return list
}

// Only lists the steps of the type T among those given, not those of repeats.
func Only[T Step](steps []Step) (list []T) {
	for _, s := range steps {
		if one, ok := s.(T); ok {
			list = append(list, one)
		}
	}
	return list
}

// KilnOf is the number, from 1, of the stage on a kiln that a step is of: steps of a kind are
// counted through all kilns, as a record counts them, and one without a number, 0, is the
// first. It is 0 where no kiln has that step.
func (p *Process) KilnOf(kind string, number int) int {
	n := 0
	for i, st := range Every[*Kilning](p) {
		for _, s := range st.Steps {
			if string(s.Kind()) != kind {
				continue
			}
			if n++; n == max(1, number) {
				return i + 1
			}
		}
	}
	return 0
}
