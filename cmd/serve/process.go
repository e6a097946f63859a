package serve

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"path"
	"strings"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
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
	Wrong, Lines string
	Examples     []string
	Rows         table
	Found        []findingView
	Says         []string
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

// shorter is a time an hour shorter or, where it is less than two, half of it.
func shorter(s float64) float64 {
	const hour = 3600
	if s < 2*hour {
		return s / 2
	}
	return s - hour
}

// examplesOf are lines to suppose, made of this process: its first soak shorter, and colder air.
func examplesOf(f *forecast.Forecast, h words.House) (list []string) {
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if s.EndedBy == forecast.ByTime && s.Kind == model.SoakStep && len(list) == 0 {
				list = append(list, fmt.Sprintf("%s to %s", s.Label, words.Span(shorter(s.End-s.Start))))
			}
		}
	}
	if p := f.Process; p.Site != nil && p.Site.Air != nil {
		list = append(list, fmt.Sprintf("site air to %s", p.Site.Air.Low.Like(p.Site.Air.Low.SI-2)))
	}
	return list
}

// whatIf forecasts a process as it is supposed to be, beside what is written.
func (s *server) whatIf(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return errForm
	}
	typed := r.PostForm.Get("lines")
	var lines []string
	for line := range strings.Lines(typed) {
		if line = words.OneLine(line); line != "" {
			lines = append(lines, line)
		}
	}
	err := error(missing("type what would be otherwise, such as the lines below"))
	var said folder.Supposed
	if len(lines) > 0 {
		said, err = s.keep.WhatIf(r.Context(), idOf(r), time.Time{}, lines)
	}
	var unsound *folder.Unsound
	var lack missing
	if err != nil && !isRefused(err) && !errors.As(err, &unsound) && !errors.As(err, &lack) {
		return err
	}
	status := http.StatusOK
	if err != nil {
		status, _ = statusOf(err)
	}
	return s.processWith(w, r, status, func(v *processView) {
		v.WhatIf.Lines = typed
		if err != nil {
			v.WhatIf.Wrong = words.Safe(err.Error())
			if unsound != nil {
				v.WhatIf.Found = findingsOf(unsound.Findings)
			}
			return
		}
		for _, x := range said.Not {
			v.WhatIf.Says = append(v.WhatIf.Says, words.Safe(x))
		}
		for _, x := range said.Found {
			v.WhatIf.Found = append(v.WhatIf.Found, findingView{Severity: x.Kind, Message: words.Joined(": ", x.Severity, x.Text)})
		}
		v.WhatIf.Rows = table{Caption: "Supposed: " + strings.Join(lines, "; "), Head: []string{"figure", "as written", "as supposed", "that is"}}
		for _, x := range said.Rows {
			v.WhatIf.Rows.add(cellOf(x.What), figure(x.Old), figure(x.New), figure(x.More))
		}
		if len(said.Rows)+len(said.Not) == 0 {
			v.WhatIf.Says = append(v.WhatIf.Says, "No figure that is told comes out otherwise.")
		}
	})
}

// nextName is the name of the next batch beside a process, by its year.
func nextName(st folder.State, o folder.Opened, now time.Time) string {
	var names []string
	beside := func(file, name string) {
		if path.Dir(file) == path.Dir(o.File) {
			names = append(names, strings.TrimSuffix(path.Base(file), folder.Extension), name)
		}
	}
	for _, b := range st.Underway {
		beside(b.File, b.Name)
	}
	for _, b := range st.Over {
		beside(b.File, b.Name)
	}
	for _, p := range st.Processes {
		beside(p.File, "")
	}
	for _, u := range st.Unread {
		beside(u.File, "")
	}
	return journal.Next(names, now.Year())
}

// beginFields are the fields of a batch that is to be begun; what was typed is kept.
func beginFields(o folder.Opened, next string, typed url.Values) []field {
	p := o.Process
	name := field{ID: "begin-name", Name: "name", Label: "Name of the batch", Type: "text", Value: cmp.Or(typed.Get("name"), next), Help: "The number of the batch in its year, or any name."}
	at := field{ID: "begin-at", Name: nameAt, Label: "When the grain goes in", Type: "datetime-local", Value: atField(typed.Get(nameAt)), Help: "Leave it empty for now."}
	list := []field{name, at}
	if p != nil && p.Charge != nil && len(p.Lots) == 0 {
		weight := field{ID: "begin-weight", Name: "weight", Label: "How much grain goes in", Type: "text", Value: typed.Get("weight"), Help: "Leave it empty for " + p.Charge.String() + ", as the process says; else with its unit."}
		if p.Grain != nil {
			weight.Label = "How much of “" + words.Safe(p.Grain.Name) + "” goes in"
		}
		list = append(list, weight)
	}
	return list
}

// begin opens the record of a batch.
func (s *server) begin(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return errForm
	}
	form, now := r.PostForm, s.Clock()
	start := folder.Start{Name: strings.TrimSpace(form.Get("name")), Weight: strings.TrimSpace(form.Get("weight")), Sure: form.Get("sure") != ""}
	if form.Get(nameAt) != "" {
		start.At = stamped(form.Get(nameAt), now)
	}
	begun, err := s.keep.Begin(r.Context(), idOf(r), start)
	if err == nil {
		q := url.Values{}
		q.Set("begun", begun.Batch)
		q.Set("seal", s.seal.of(begun.Batch))
		http.Redirect(w, r, "/batch/"+string(begun.ID)+"?"+q.Encode()+"#said", http.StatusSeeOther)
		return nil
	}
	var held *folder.Held
	if !isRefused(err) && !isUnsound(err) && !errors.As(err, &held) {
		return err
	}
	return s.processWith(w, r, http.StatusUnprocessableEntity, func(v *processView) {
		if v.Begin == nil {
			return
		}
		v.Begin.Wrong, v.Begin.Busy = strings.TrimPrefix(words.Safe(err.Error()), "not begun: "), held != nil
		o, failed := s.keep.Process(r.Context(), idOf(r))
		if failed == nil {
			v.Begin.Fields = beginFields(o, "", form)
		}
	})
}
