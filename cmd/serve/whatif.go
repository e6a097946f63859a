package serve

import (
	"errors"
	"fmt"
	"net/http"
	"strings"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

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
		back, much := s.turns.take(r.Context())
		if much != nil {
			return much
		}
		defer back()
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
			v.WhatIf.Wrong = []string{words.Safe(plainer(err.Error()))}
			if unsound != nil {
				v.WhatIf.Wrong = notSupposed(unsound.Findings, lines)
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
			v.WhatIf.Says = append(v.WhatIf.Says, "Nothing shown changes.")
		}
	})
}
