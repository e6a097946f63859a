package forecast

import (
	"fmt"

	"maltwright/lang/quantity"
)

// What is assumed is told in the units that the process is written in.

// surface writes the area of a floor.
func (r *run) surface(m2 float64) string {
	if r.p.British() {
		return r.p.Surface(m2)
	}
	return quantity.Surface(m2)
}

// airflow writes how much air moves.
func (r *run) airflow(si float64) string {
	if r.p.British() {
		return r.p.Airflow(si)
	}
	return quantity.Airflow(si)
}

// eachKilogram writes what there is of something for each kg, or of its British unit for
// each lb.
func (r *run) eachKilogram(si float64, metric, british string) string {
	if r.p.British() {
		return quantity.About(si*quantity.Pound, british) + " for each lb"
	}
	return quantity.About(si, metric) + " for each kg"
}

const (
	foot2 = quantity.Foot * quantity.Foot
)

// floorLoad writes how much lies on a floor.
func (r *run) floorLoad(each float64) string {
	if r.p.British() {
		return quantity.About(each*foot2, "lb") + " of green malt a square foot"
	}
	return fmt.Sprintf("%.0f kg of green malt a square metre", each)
}

// lasting writes how long a step takes, in the unit in which it says so.
func lasting(s asked, seconds float64) string {
	switch {
	case s.For != nil:
		return s.For.Lasting(seconds)
	case s.Over != nil:
		return s.Over.Lasting(seconds)
	case s.Allow != nil && s.Allow.Latest != nil:
		return s.Allow.Latest.Lasting(seconds)
	}
	return quantity.Lasting(seconds)
}
