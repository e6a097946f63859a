package evidence

import "maltwright/sim/forecast"

// point is a trial at a point of its axes.
type point struct {
	forecast  *forecast.Forecast
	residuals []float64
}

// pointAt gives the trial at a point, from as short a forecast as will do.
func (t *Trial) pointAt(z []float64) (point, error) {
	f, err := t.Run(z, true)
	if err != nil {
		return point{}, err
	}
	return point{f, t.Residuals(f, z)}, nil
}

// moved gives the residuals where one axis is another than at a point that is known.
// The offset of the thermometer takes no other forecast.
func (t *Trial) moved(from *forecast.Forecast, z []float64, axis int) ([]float64, error) {
	if t.Axes[axis].Thermometer {
		return t.Residuals(from, z), nil
	}
	return t.ResidualsAt(z)
}

// ResidualsAt gives them at a point of the axes, from as short a forecast as will do.
func (t *Trial) ResidualsAt(z []float64) ([]float64, error) {
	p, err := t.pointAt(z)
	return p.residuals, err
}
