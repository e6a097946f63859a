package figures

import (
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/outlook"
)

// stretch is a part of a curve.
type stretch struct {
	from, to answer.Seconds
	of       func(*curve.Point) bool // which of its points belong to it; nil for all
}

func whole(c *curve.Curve) stretch { return stretch{to: c.To} }

// has tells whether a point lies in it. As one stage ends and the next begins there are two at one time.
func (x stretch) has(p *curve.Point) bool {
	return p.At >= x.from && p.At <= x.to && (x.of == nil || x.of(p))
}

// inStage tells points of a stage.
func inStage(s outlook.StageName) func(*curve.Point) bool {
	return func(p *curve.Point) bool { return p.StageName() == s }
}
