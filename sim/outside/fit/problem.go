package main

import (
	"math"

	"maltwright/sim/outside/figure"
)

// problem is a set of constants that are fitted together.
type problem struct {
	name       string // of the fit, for the headings
	says       string // what is fitted to what, for the document
	parameters []parameter
	fitted     []observation
	held       []held

	kept bool // the code keeps other values inside the intervals; says tells why
	own  int  // how many of the parameters, the last ones, are no constants but proper to a row
}

// constant tells whether a parameter is one of the code.
func (p *problem) constant(i int) bool { return i < len(p.parameters)-p.own }

// parameter is a constant of the code that is fitted.
type parameter struct {
	name    string // in the code
	unit    string
	digits  int     // behind the point
	before  float64 // what stood there before this fit was made; not a number where nothing did
	code    float64 // what stands there now
	drawnTo float64 // what is published of it
	by      float64 // its standard deviation; of the logarithm where log is set
	log     bool
	source  string // of what it is drawn to
}

// at gives the value that lies z standard deviations from what is published.
func (p parameter) at(z float64) float64 {
	if p.log {
		return p.drawnTo * math.Exp(z*p.by)
	}
	return p.drawnTo + z*p.by
}

// observation is a figure of a source to which constants are fitted.
type observation struct {
	figure.Figure
	by    float64                            // standard deviation of the figure
	log   bool                               // by is that of its logarithm
	model func(p []float64) (float64, error) // given the parameters
}

// miss is how many standard deviations a value is from what the source says: from the
// middle of a band that is closed, and from the end of one that is open.
func (o observation) miss(v float64) float64 {
	switch low, high := o.Accepted.Low, o.Accepted.High; {
	case o.log: // of a closed band
		return math.Log(v/math.Sqrt(low*high)) / o.by
	case math.IsInf(low, -1):
		return max(0, v-high) / o.by
	case math.IsInf(high, 1):
		return max(0, low-v) / o.by
	default:
		return (v - (low+high)/2) / o.by
	}
}

// held is a figure that the fit does not see.
type held struct {
	figure.Figure
	model func(p []float64) (float64, error)
}
