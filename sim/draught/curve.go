// Package draught gives what drives air through a bed: a fan by its curve, and warm air in a
// chimney; and what lies in its way beside the bed.
package draught

import (
	"errors"
	"fmt"

	"gonum.org/v1/gonum/interp"

	"maltwright/sim/air"
)

// Point is one of the curve of a fan.
type Point struct {
	Flow     float64 // m³/s
	Pressure float64 // Pa, in air of [PlateDensity]
}

// PlateDensity is the density of the air for which the curves of fans are given, kg/m³
// (published, from memory: fans are rated in air of 20 °C at sea level) [iso-5801].
const PlateDensity = 1.2

// Curve is what a fan gives: the more air, the less pressure. Between its points it is the
// piecewise monotone cubic of Fritsch and Butland. Outside them nothing is taken for granted:
// a fan gives no more air than at its last point, nor more pressure than at its first.
type Curve struct {
	points []Point
	at     interp.FritschButland
}

// NewCurve gives the curve through two points or more, of rising flow and falling pressure. It
// returns an error for fewer, for others, and a *[air.RangeError] for a flow outside 0 to
// 10,000 m³/s or a pressure outside 0 to 100 kPa.
func NewCurve(points ...Point) (*Curve, error) {
	if len(points) < 2 {
		return nil, errors.New("one point makes no curve of a fan")
	}
	c := &Curve{points: points}
	var flows, pressures []float64
	for i, p := range points {
		if err := errors.Join(air.Within("airflow of the fan", p.Flow, "m³/s", 0, 1e4), air.Within("pressure of the fan", p.Pressure, "Pa", 0, 1e5)); err != nil {
			return nil, err
		}
		if i > 0 && !(p.Flow > points[i-1].Flow && p.Pressure < points[i-1].Pressure) {
			return nil, fmt.Errorf("a fan that gives %.3g m³/s at %.3g Pa gives less at more pressure, and not %.3g m³/s at %.3g Pa",
				points[i-1].Flow, points[i-1].Pressure, p.Flow, p.Pressure)
		}
		flows, pressures = append(flows, p.Flow), append(pressures, p.Pressure)
	}
	return c, c.at.Fit(flows, pressures)
}

// Most is the most air that it gives, m³/s.
func (c *Curve) Most() float64 { return c.points[len(c.points)-1].Flow }

// Pressure is what it gives at a flow, m³/s, Pa in air of [PlateDensity]: that of its first point
// at less flow than that has, and at more than [Curve.Most] the least.
func (c *Curve) Pressure(flow float64) float64 { return c.at.Predict(flow) }
