package evidence

import (
	"slices"

	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// point is a trial at a point of its axes.
type point struct {
	forecast  *forecast.Forecast // as short as will do
	residuals []float64
}

// At gives the residuals at a point of the axes, from as short a forecast as will do.
func (t *Trial) At(z []float64) ([]float64, error) {
	p, err := t.point(z)
	return p.residuals, err
}

func (t *Trial) point(z []float64) (point, error) {
	f, err := t.Run(z, true)
	if err != nil {
		return point{}, err
	}
	return point{f, t.Residuals(f, z)}, nil
}

// moved gives the trial with one axis of z moved by a stride. Base is the trial at z: what
// the axis has no part in is taken from its forecast.
func (t *Trial) moved(base point, z []float64, axis int) (point, error) {
	to := slices.Clone(z)
	to[axis] += stride
	f, err := base.forecast, error(nil)
	switch a := t.Axes[axis]; {
	case a.Thermometer: // it moves no forecast
	case slices.Contains([]ensemble.Open{ensemble.KilnDrying, ensemble.LateDrying, ensemble.LateColour, ensemble.DryAirMoisture}, a.Open):
		f, err = f.Dried(t.Options(to), t.Meter())
	default:
		return t.point(to)
	}
	if err != nil {
		return point{}, err
	}
	return point{f, t.Residuals(f, to)}, nil
}
