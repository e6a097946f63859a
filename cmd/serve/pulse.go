package serve

import (
	"encoding/json"
	"errors"
	"net/http"
	"net/url"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
)

// beat is what the script of an open page asks for again and again: what is due, and whether the folder
// is another since.
type beat struct {
	Now     time.Time `json:"now"`
	Version string    `json:"version"`
	Due     []dueBeat `json:"due"`
}

type dueBeat struct {
	Batch folder.ID `json:"batch"`
	Name  string    `json:"name"`
	At    time.Time `json:"at"`
	When  string    `json:"when"`
	Says  string    `json:"says"`
	Late  bool      `json:"late"`
}

// mostBeats is how many visits are told at the most.
const mostBeats = 20

func (s *server) pulse(w http.ResponseWriter, r *http.Request) error {
	now := s.Clock()
	st, err := s.keep.Look(r.Context(), now)
	if err != nil {
		return err
	}
	out := beat{Now: now, Version: st.Version, Due: []dueBeat{}}
	for _, d := range st.Due[:min(mostBeats, len(st.Due))] {
		out.Due = append(out.Due, dueBeat{d.Batch, d.Name, d.At, words.Clock(d.At, now), d.Says, d.Late})
	}
	return asJSON(w, out)
}

func asJSON(w http.ResponseWriter, v any) error {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	return json.NewEncoder(w).Encode(v)
}

// sent is a reading that was kept on a phone: the form as it would have been sent.
type sent struct {
	Own   string    `json:"own"` // its one-time name
	Batch folder.ID `json:"batch"`
	Form  string    `json:"form"` // as a browser writes a form, its time in it
}

// What became of a reading that was kept.
const (
	keptWritten  = "written"
	keptThere    = "there"    // it was in the record already
	keptDoubtful = "doubtful" // it is written by who is sure of it
	keptRefused  = "refused"
	keptWaits    = "waits" // the file is busy: send it again
)

type outcome struct {
	Own   string `json:"own"`
	State string `json:"state"`
	Line  string `json:"line,omitempty"`
	Says  string `json:"says,omitempty"`
}

// mostKept is how many readings are taken at once.
const mostKept = 200

// kept takes readings that were kept while the machine was out of reach, each once.
func (s *server) kept(w http.ResponseWriter, r *http.Request) error {
	var list []sent
	if err := json.NewDecoder(r.Body).Decode(&list); err != nil || len(list) > mostKept {
		return errForm
	}
	out := []outcome{}
	for _, x := range list {
		out = append(out, s.keptOne(r, x))
		if r.Context().Err() != nil {
			return r.Context().Err()
		}
	}
	return asJSON(w, out)
}

func (s *server) keptOne(r *http.Request, x sent) outcome {
	refused := func(err error) outcome { return outcome{Own: x.Own, State: keptRefused, Says: plainer(said(err))} }
	form, err := url.ParseQuery(x.Form)
	if err != nil {
		return refused(errForm)
	}
	e, err := entryOf(form, s.Clock())
	if err != nil {
		return refused(err)
	}
	e.Ask = s.asks(x.Batch, form)
	a, err := s.keep.Note(r.Context(), x.Batch, e.reading(x.Own), false)
	var doubtful *folder.Doubtful
	var busy *folder.Busy
	switch {
	case errors.As(err, &doubtful):
		return outcome{Own: x.Own, State: keptDoubtful, Says: doubtful.Answer.Doubted()}
	case errors.As(err, &busy):
		return outcome{Own: x.Own, State: keptWaits, Says: said(err)}
	case err != nil:
		return refused(err)
	}
	out := outcome{Own: x.Own, State: keptWritten, Says: a.Says}
	if a.There {
		out.State = keptThere
	}
	if n := len(a.Lines); n > 0 {
		out.Line = words.OneLine(a.Lines[n-1])
	}
	return out
}
