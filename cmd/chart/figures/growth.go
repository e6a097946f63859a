package figures

import (
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// Growth is how far the acrospire has come in the mean, and how many kernels have chitted and are past a quarter,
// half, three quarters and the whole of the kernel. It ends where the grain goes to the kiln.
func Growth(c *curve.Curve, h words.House) chart.Chart {
	until := beforeKiln(c)
	s := words.Kernels
	mean := chart.Panel{Name: "acrospire, mean", Unit: "of the kernel", Places: 2}
	mean.Lines = lines(line(c, mean.Name, chart.First, func(x *curve.Point) float64 { return s.Shown(float64(x.Acrospire)) }))
	if b := c.Bands; b != nil {
		mean.Bands = bands(band(b.At, b.Acrospire, s, until))
	}
	mean.Gates = gates(c, vocabulary.MeasureAcrospire, s)
	kernels := counts(c)
	for _, r := range c.Readings {
		if m := r.Acrospire; m != nil {
			mean.Points = append(mean.Points, point(r, m.Value, m.Error, s, "counted", chart.First))
		}
		if m := r.Chit; m != nil {
			kernels.Points = append(kernels.Points, point(r, m.Value, m.Error, words.Shares, "chit", chart.First))
		}
	}
	if len(mean.Lines) == 0 {
		return frame(c, h, "Growth")
	}
	return cut(with(c, frame(c, h, "Growth"), mean, kernels), stretch{to: until})
}

// counts is a panel of how many kernels are how far.
func counts(c *curve.Curve) chart.Panel {
	s := words.Shares
	past := func(name string, role chart.Role, of func(*outlook.Classes) answer.Share) chart.Line {
		return line(c, name, role, func(x *curve.Point) float64 {
			if x.Classes == nil {
				return nan
			}
			return s.Shown(float64(of(x.Classes)))
		})
	}
	p := chart.Panel{Name: "kernels", Unit: s.Unit, Least: 0, Most: 100, Places: 0}
	p.Lines = lines(
		line(c, "chitted", chart.First, func(x *curve.Point) float64 { return s.Shown(float64(x.Chit)) }),
		past("past 1/4", chart.Second, func(x *outlook.Classes) answer.Share { return x.ToHalf + x.ToThreeQuarters + x.ToWhole + x.Overgrown }),
		past("past 1/2", chart.Third, func(x *outlook.Classes) answer.Share { return x.ToThreeQuarters + x.ToWhole + x.Overgrown }),
		past("past 3/4", chart.Fourth, func(x *outlook.Classes) answer.Share { return x.ToWhole + x.Overgrown }),
		past("overgrown", chart.Fifth, func(x *outlook.Classes) answer.Share { return x.Overgrown }),
	)
	p.Gates = gates(c, vocabulary.MeasureChit, s)
	return p
}
