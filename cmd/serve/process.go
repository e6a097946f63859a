package serve

import (
	"context"
	"net/http"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

type processView struct {
	ID                     folder.ID
	Name, What, File       string
	Findings               []findingView
	Steps, Totals, Figures table
	NotMet                 []mark
	NoForecast             string
	Charts                 []chartView
	Cautions               []string
	WhatIf                 whatIfView
	Begin                  *beginView
	Sheet                  string
}

type whatIfView struct {
	Wrong    []string
	Lines    string
	Examples []string
	Rows     table
	Found    []findingView
	Says     []string
}

type beginView struct {
	Wrong, Once string
	Busy        bool // another batch is in the vessel
	Fields      []field
	Before      []string
}

func (s *server) process(w http.ResponseWriter, r *http.Request) error {
	return s.processWith(w, r, http.StatusOK, func(*processView) {})
}

// processWith shows a process, with what else is to be shown on its page.
func (s *server) processWith(w http.ResponseWriter, r *http.Request, status int, with func(*processView)) error {
	id, now := idOf(r), s.Clock()
	st, err := s.keep.Look(r.Context(), now)
	if err != nil {
		return err
	}
	o, err := s.keep.Process(r.Context(), id)
	if err != nil {
		return err
	}
	p := s.page(r, o.Name+" – maltwright")
	p.under(st.Underway, "")
	v := s.processOf(r.Context(), id, o)
	charts := s.charts(r.Context(), st.Version, id, o, now)
	v.Charts, v.Figures = chartsOf("/process/"+string(id), charts), figuresOf(charts)
	if p.Write && v.Begin != nil {
		v.Begin.Fields = beginFields(o, nextName(st, o, now), nil)
	}
	with(&v)
	p.Body = v
	s.write(w, processPage, status, p)
	return nil
}

func (s *server) processOf(ctx context.Context, id folder.ID, o folder.Opened) processView {
	v := processView{ID: id, Name: o.Name, File: o.File, Findings: findingsOf(o.Findings), What: "a process"}
	p := o.Process
	if p == nil {
		v.NoForecast = "There is no forecast before this is put right."
		return v
	}
	v.What = whatOf(outlook.HeadOf(p))
	for _, c := range outlook.CautionsOf(p) {
		v.Cautions = append(v.Cautions, o.Words.Say(c))
	}
	if worst, any := finding.Worst(o.Findings); any && worst >= finding.Fault {
		v.NoForecast = "There is no forecast before the faults are put right."
		return v
	}
	f := o.Forecast
	if f == nil {
		v.NoForecast = noForecast(ctx, o)
		return v
	}
	v.forecast(outlook.Of(f, time.Time{}), o.Words)
	v.WhatIf.Examples = examplesOf(f, o.Words)
	v.Begin, v.Sheet = &beginView{Once: once()}, "/process/"+string(id)+"/sheet.pdf"
	return v
}

// noForecast says why a process has none.
func noForecast(ctx context.Context, o folder.Opened) string {
	_, err := forecast.Run(o.Process, forecast.Options{Meter: work.NewMeter(ctx, nil)})
	if err == nil {
		return "There is no forecast."
	}
	return words.Safe("There is no forecast: " + o.Words.Cause(err))
}

// forecast shows the steps and what comes of them.
func (v *processView) forecast(r outlook.Result, h words.House) {
	v.Steps = table{Class: "steps", Head: []string{"Step", "Lasts", "After", "At", "Moisture", "Scale"}}
	r.Rows(func(x outlook.Row) {
		lasts := words.Lasting(x.End - x.Start)
		if x.EndedBy == string(forecast.ByTime) {
			lasts = words.Span(x.End - x.Start)
		}
		at := ""
		if x.Temperature != nil {
			at = h.Band(x.Temperature) + " " + h.Degree()
		}
		scale := cell{Text: words.Weighed(h, x.WeightEnd), Number: true}
		if x.Gross != nil {
			scale.Below = words.Weighed(h, x.Gross.Weight) + " " + words.Holding(x.Gross.In)
		}
		v.Steps.add(cellOf(x.Label), figure(lasts), figure(words.After(x.End)), cellOf(at), figure(words.Percent(x.MoistureEnd)), scale)
	})
	if b := r.BrokenOff; b != nil {
		v.NotMet = append(v.NotMet, mark{"broken off", h.Say(b.Why)})
		return
	}
	t := r.Totals
	v.Totals = table{Class: "spread", Head: []string{"What comes of it", "by the forecast"}}
	rest := ""
	if r.Rest != "" {
		rest = "then rest " + r.Rest
	}
	v.Totals.add(cellOf("total time"), cell{Text: words.Lasting(t.Total), Number: true, Below: rest})
	switch {
	case r.NotForecast != nil:
	case r.NoMalt != nil:
		v.NotMet = append(v.NotMet, mark{"no malt", words.NoMalt(*r.NoMalt, r.Green)})
	default:
		v.Totals.add(cellOf("malt"), figure(words.Weighed(h, t.Malt)))
		v.Totals.add(cellOf("final moisture"), figure(words.Percent(t.FinalMoisture)))
		v.Totals.add(cellOf("yield as is"), figure(words.Percent(t.Yield)))
	}
	v.asked(r.Asked, h)
}

// asked says which of what the process asks for does not come about.
func (v *processView) asked(a outlook.Asked, h words.House) {
	for _, t := range a.NotGiven {
		v.NotMet = append(v.NotMet, mark{"not given", h.Say(t)})
	}
	for _, g := range a.Gates {
		if !g.Unjudged && !g.Met {
			v.NotMet = append(v.NotMet, mark{"not met", g.Awaits() + ": " + words.Safe(g.Text)})
		}
	}
	for _, e := range a.Expects {
		if !e.Unjudged && !e.Holds && e.Forecast != nil {
			v.NotMet = append(v.NotMet, mark{"broken", "expect " + words.Safe(e.Text) + ": the forecast gives " + h.Say(*e.Forecast)})
		}
	}
}
