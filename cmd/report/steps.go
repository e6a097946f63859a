package report

import (
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
)

const notNoted = "not noted"

// stepTable is the steps of a forecast. Of a batch, those that end after now are foretold, and noted tells of which the
// record says when they ended; it is nil of a process.
func stepTable(h words.House, r outlook.Result, now time.Time, noted func(outlook.Step) bool) Table {
	until := "after"
	if !r.Start.IsZero() {
		until = "until"
	}
	t := Table{Columns: []Column{{"step", false}, {"lasts", true}, {until, true}, {"set to", false}, {"moisture", true}, {"weight", true}, {"gross", true}, {"ended by", false}},
		Notes: []string{"Moisture and weight are those at its end, of the drained grain; gross is with what it lies in, where that says what it weighs."}}
	open := false // it is not known when the step before ended
	for _, st := range r.Stages {
		t.Rows = append(t.Rows, []string{st.Called()})
		for _, x := range st.Steps {
			row := stepRow(h, x, !r.Start.IsZero())
			foreseen := !now.IsZero() && x.EndTime.After(now)
			if foreseen {
				row[7] = foretold
			}
			ends := true
			if noted != nil && !foreseen {
				// where the record has only the end of a later step, or of what comes before, nothing tells this one's
				ends = x.EndedBy != string(forecast.ByRecord) || noted(x)
			}
			if !ends || open && noted != nil && !foreseen {
				row[1] = notNoted
			}
			if !ends {
				row[2], row[4], row[5], row[6], row[7] = notNoted, "", "", "", ""
			}
			open = !ends
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

func stepRow(h words.House, x outlook.Step, clock bool) []string {
	ends := words.After(x.End)
	if clock {
		ends = x.EndTime.Format(shortTime)
	}
	lasts := words.Lasting(x.End - x.Start)
	if x.EndedBy == string(forecast.ByTime) {
		lasts = words.Span(x.End - x.Start)
	}
	gross := ""
	if x.Gross != nil {
		gross = words.Weighed(h, x.Gross.Weight)
	}
	return []string{x.Label, lasts, ends, h.Setting(x.Temperature), words.Percent(x.MoistureEnd), words.Weighed(h, x.WeightEnd), gross, words.EndedBy(x.EndedBy)}
}
