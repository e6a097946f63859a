package serve

import (
	"cmp"
	"errors"
	"net/http"
	"net/url"
	"path"
	"strings"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
)

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

// typedWeight is a weight with its unit as it was typed, with a point where a keypad has a comma.
func typedWeight(text string) string {
	number, unit, _ := strings.Cut(strings.TrimSpace(text), " ")
	return strings.TrimSpace(typedNumber(number) + " " + unit)
}

// begin opens the record of a batch.
func (s *server) begin(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return errForm
	}
	form, now := r.PostForm, s.Clock()
	start := folder.Start{Name: strings.TrimSpace(form.Get("name")), Weight: typedWeight(form.Get("weight")), Sure: form.Get("sure") != ""}
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
