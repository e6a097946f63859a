package outlook

import (
	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Passed is a steep whose grain is as moist as it is to become while a soak of it is still to come.
type Passed struct {
	Moisture answer.Share `json:"moisture_wb" doc:"of the grain now"`
	From     answer.Share `doc:"of the moisture that the steep aims at"`
	To       answer.Share
	Aim      string       `json:"-"` // as it is written
	Soaks    []string     `doc:"that are still to come, as a record names them"`
	Comes    answer.Share `json:"comes_wb" doc:"the moisture that comes of them"`
}

const (
	justBegun = 600.0 // s, within which a soak that begins may still be left out
	tooMoist  = 0.005 // of moisture above the target, from which on a soak is one too many
)

// PassedOf tells of a steep that needs no further soak: so many seconds after the first one, of grain
// that is so moist then. It is nil where the soaks that are left do not bring it above its target.
func PassedOf(f *forecast.Forecast, now, moisture float64) *Passed {
	for _, st := range f.Stages {
		steep, ok := st.Of.(*model.Steep)
		if !ok || steep.Target == nil || len(st.Steps) == 0 || now < st.Steps[0].Start || now > st.Steps[len(st.Steps)-1].End {
			continue
		}
		p := &Passed{Moisture: answer.Share(moisture), From: answer.Share(steep.Target.Low.SI), To: answer.Share(steep.Target.High.SI), Aim: steep.Target.Range.String(), Comes: answer.Share(st.Steps[len(st.Steps)-1].MoistureEnd)}
		for _, s := range st.Steps {
			if s.Kind == model.SoakStep && s.Start >= now-justBegun {
				p.Soaks = append(p.Soaks, s.Label)
				if s.Start <= now { // the water that hangs on it is of the soak
					p.Moisture = min(p.Moisture, answer.Share(s.MoistureStart))
				}
			}
		}
		if len(p.Soaks) > 0 && p.Moisture >= p.From && p.Comes > p.To+tooMoist {
			return p
		}
	}
	return nil
}
