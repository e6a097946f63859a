package text

import (
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
)

// kilnAir says how much air comes through the malt on each kiln whose fan or draught is known.
func (s *Sheet) kilnAir(r outlook.Result) {
	for _, st := range r.Stages {
		a := st.Air
		if a == nil {
			continue
		}
		what := "kiln air"
		if st.Number > 0 {
			what = "air of " + st.Called()
		}
		first := "at first"
		if a.DrivenBy != string(forecast.ByFan) {
			first = "through cold malt, half an hour after it came on,"
		}
		s.para(what, "%s %s and %s at the end of its heat, by %s; the malt lies %s deep, and %s at the end",
			s.AboutAirflow(float64(a.First)), first, s.AboutAirflow(float64(a.Last)), words.DrivenBy(a.DrivenBy), s.Depth(float64(a.Depth)), s.Depth(float64(a.Dried)))
	}
}
