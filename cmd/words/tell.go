package words

import (
	"maltwright/check/tell"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/answer/outlook"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/learn"
)

func (h House) trouble(t outlook.Trouble) string { return tell.Trouble(t.Of, h.System) }

func (House) caution(c outlook.Caution) string { return tell.Caution(forecast.Caution(c)) }

func (House) open(o outlook.Open) string { return tell.Open(ensemble.Open(o)) }

// Unknown names what is not known of a figure, with its kiln where there are several.
func Unknown(d outlook.Driver) string {
	if d.Of == nil {
		return tell.Open(ensemble.Open(d.Unknown))
	}
	return tell.OpenOf(ensemble.Open(d.Unknown), Safe(*d.Of))
}

// DrivenBy names what drives the air of a kiln: its fan.
func DrivenBy(by string) string { return tell.Driver(forecast.Driver(by)) }

func (h House) learn(l outlook.Learn) string { return tell.Learn(ensemble.Open(l), h.System) }

func (House) side(s lessons.Side) string { return tell.Side(learn.Side(s)) }

// Dearest says what to look for where forecasts cost too much together.
const Dearest = tell.Dearest

// DearestOf says what of a forecast costs so much.
func DearestOf(f *forecast.Forecast) string { return tell.DearestOf(f) }

func (h House) reason(r lessons.Reason) string { return h.Cause(r.Of) }

// Cause says in one line why a forecast could not be made, or nothing be learnt.
func (h House) Cause(err error) string { return tell.Cause(err, h.System) }

func (House) corner(e outlook.Ends) string { return tell.Corner(ensemble.Corner{Ends: e}) }

func (House) unkept(u outlook.Unkept) string {
	if u.Stage == "" {
		return "expect " + u.Text
	}
	return u.Stage + ": " + u.Text
}

func (h House) taken(t outlook.Taken) string {
	a := tell.Assumption(t.Of, h.System)
	switch t.Part {
	case outlook.What:
		return a.What
	case outlook.Value:
		return a.Value
	}
	return a.Why
}
