package report

import (
	"fmt"
	"math"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
)

// Process is what the page of a process is made of.
type Process struct {
	House    words.House
	Process  *model.Process
	Forecast outlook.Result
	Found    []finding.Finding
	Charts   []Drawing
}

const foretold = "forecast"

// Page is the page of the process.
func (x Process) Page() Page {
	r := x.Forecast
	p := Page{Title: "Process " + words.Safe(x.Process.Name), Sub: words.Safe(r.Make) + " malt"}
	f := Facts{Head: "What is made of what"}
	f.tell("malt", words.Safe(r.Make), "")
	f.tell("charge", words.Safe(r.Written), "as written")
	grainFacts(&f, x.Process)
	f.tell("text of the process", "its fingerprint is "+fingerprint.Of(x.Process), "")
	gearFacts(&f, x.Process)
	if !r.Start.IsZero() {
		f.tell("begins", r.Start.Format(dayAndTime), "as asked")
	}
	p.add(f)
	t := stepTable(x.House, r, time.Time{}, nil)
	t.Head = "Steps as they are forecast"
	p.add(t)
	p.add(x.totals())
	p.add(x.asked())
	for _, c := range x.Charts {
		p.add(Figure{c})
	}
	found := Found{Head: "Findings", None: "The check of the process finds nothing."}
	for _, f := range x.Found {
		found.List = append(found.List, findingOf(f))
	}
	p.add(found)
	if lines := acceptedBy(x.Process); len(lines) > 0 {
		p.add(Text{Head: "Findings that the house lets pass", Lines: lines, List: true})
	}
	p.assumed(x.House, r.Assumed)
	p.cautions(x.House, r.Cautions)
	return p
}

// totals are what comes of it.
func (x Process) totals() Facts {
	r, h := x.Forecast, x.House
	t, f := r.Totals, Facts{Head: "What comes of it"}
	tell := func(name string, known float64, value string) {
		if !math.IsNaN(known) {
			f.tell(name, value, foretold)
		}
	}
	if r.BrokenOff != nil {
		f.tell("broken off", h.Say(r.BrokenOff.Why), foretold)
	}
	if r.NoMalt != nil {
		f.tell("no malt", words.NoMalt(*r.NoMalt, r.Green), foretold)
	}
	tell("steep-out", float64(t.SteepOut), fmt.Sprintf("after %s at %s moisture", words.Lasting(t.SteepOut), words.Percent(t.SteepOutMoisture)))
	tell("total time", float64(t.Total), words.Lasting(t.Total))
	if r.NotForecast == nil && r.NoMalt == nil {
		tell("malt", float64(t.Malt), words.Weighed(h, t.Malt))
		tell("moisture of the malt", float64(t.FinalMoisture), words.Percent(t.FinalMoisture))
		tell("yield as is", float64(t.Yield), words.Percent(t.Yield))
		tell("yield of dry matter", float64(t.YieldDry), words.Percent(t.YieldDry))
		if t.Rootlets > 0 {
			tell("rootlets", float64(t.Rootlets), words.Weighed(h, t.Rootlets))
		}
	}
	if q := r.Indications; q != nil && r.NotForecast == nil {
		tell("diastatic enzymes kept", float64(q.Diastatic), words.Part(q.Diastatic)+", calibrated to practice")
		tell("colour", float64(q.Colour), "about "+words.Colours.Write(float64(q.Colour))+" EBC, calibrated to practice")
	}
	if r.Rest != "" {
		f.tell("then rests", words.Safe(r.Rest), "as written")
	}
	return f
}

// asked is what the process asks for, and whether the forecast gives it.
func (x Process) asked() Table {
	t := Table{Head: "Gates and promises", Columns: []Column{{"where", false}, {"condition", false}, {"by the forecast", false}}}
	for _, g := range x.Forecast.Gates {
		t.Rows = append(t.Rows, []string{g.Awaits(), oneLine(g.Text), x.gate(g)})
	}
	for _, e := range x.Forecast.Expects {
		said := "kept"
		switch {
		case e.Unjudged:
			said = "not forecast"
		case !e.Holds && e.Forecast != nil:
			said = "not kept: " + x.House.Say(*e.Forecast)
		case !e.Holds:
			said = "not kept"
		}
		t.Rows = append(t.Rows, []string{"promise", oneLine(e.Text), said})
	}
	for _, n := range x.Forecast.NotGiven {
		t.Notes = append(t.Notes, sentence("not given: "+x.House.Say(n)))
	}
	return t
}

func (x Process) gate(g outlook.Gate) string {
	switch {
	case g.Unjudged:
		return "not forecast, and counts as met"
	case g.Met:
		return "met after " + words.After(g.Reached)
	case g.Measured != nil:
		return fmt.Sprintf("not met: %s %s after %s", g.Measure, x.House.Say(*g.Measured), words.Lasting(g.Waited))
	}
	return "not met after " + words.Lasting(g.Waited)
}
