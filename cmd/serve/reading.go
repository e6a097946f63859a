package serve

import (
	"cmp"
	"context"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
)

// readingView is the answer to a reading, before it is written.
type readingView struct {
	ID            folder.ID
	Name          string
	Form          form
	Line, Says    string
	Dangers       []string // that it tells of; they go before all else
	Doubts, Minds []string
	Wrong         string   // why it cannot be written
	Sum           []string // how it was reckoned
	Offer         string
	There         bool
	At, Once      string
	Kept          []field // what was typed, to be sent once more
}

// How a reading is to be written.
const (
	writeIt    = "yes"
	writeSure  = "sure"  // though it is doubtful
	writeOffer = "offer" // as it was offered
)

// reading judges a reading and shows what it comes to or, where it was shown, writes it.
func (s *server) reading(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return errForm
	}
	form := r.PostForm
	if at := form.Get(nameAt); at != "" {
		form.Set(nameAt, stamped(at, s.Clock()))
	}
	e, err := entryOf(form, s.Clock())
	if err != nil {
		return s.answer(w, r, entry{}, folder.Answer{}, err)
	}
	id, ctx := idOf(r), r.Context()
	e.Ask = s.asks(id, form)
	if form.Get(nameWrite) == "" {
		a, err := s.keep.Judge(ctx, id, e.reading(form.Get(nameOnce)))
		return s.answer(w, r, e, a, err)
	}
	a, err := s.note(ctx, id, e, form)
	if err != nil {
		return s.answer(w, r, e, a, err)
	}
	q := url.Values{}
	if n := len(a.Lines); n > 0 {
		q.Set("written", words.OneLine(a.Lines[n-1]))
		q.Set("seal", s.seal.of(q.Get("written")))
	}
	http.Redirect(w, r, "/batch/"+string(id)+"?"+q.Encode()+"#said", http.StatusSeeOther)
	return nil
}

// asks is what the page itself asks of a reading before it is written, "" for nothing.
func (s *server) asks(id folder.ID, form url.Values) string {
	o, err := s.keep.Batch(id, s.Clock())
	if err != nil {
		return "" // the reading is not taken either, and says why
	}
	return partOfPound(form, o.Words)
}

func (e entry) reading(own string) folder.Reading {
	return folder.Reading{Words: e.Words, At: e.At, Own: own, Asked: e.Ask}
}

// note writes a reading as it was asked for.
func (s *server) note(ctx context.Context, id folder.ID, e entry, form url.Values) (folder.Answer, error) {
	x := e.reading(form.Get(nameOnce))
	if offer := strings.TrimSpace(form.Get(nameOffer)); form.Get(nameWrite) == writeOffer && offer != "" {
		x.Words, x.At, x.Asked = []string{offer}, "", ""
	}
	return s.keep.Note(ctx, id, x, form.Get(nameWrite) == writeSure)
}

// answer shows what a reading comes to, or why it cannot be written, above its form with what was typed.
func (s *server) answer(w http.ResponseWriter, r *http.Request, e entry, a folder.Answer, err error) error {
	if err != nil && !isAnswer(err) {
		return err
	}
	v, seeing := s.see(r.Context(), idOf(r))
	if seeing != nil {
		return seeing
	}
	p := s.batchPage(r, v)
	view := readingView{ID: v.brief.ID, Name: v.brief.Name, Once: cmp.Or(r.PostForm.Get(nameOwn), once()), At: e.At, Kept: keptOf(r.PostForm)}
	if v.opened.Batch != nil {
		o := offersOf(v)
		o.Once = once()
		view.Form = formOf(o, r.PostForm.Get(nameKind), r.PostForm)
	}
	var doubtful *folder.Doubtful
	if errors.As(err, &doubtful) {
		a, err = doubtful.Answer, nil
	}
	status := http.StatusOK
	if err != nil {
		view.Wrong = plainer(said(err))
		status, _ = statusOf(err)
	}
	view.tell(a)
	view.Sum = e.Sum
	p.Title = v.brief.Name + ": " + view.Form.Name + " – maltwright"
	p.Version = "" // the page holds what was typed
	p.Body = view
	s.write(w, readingPage, status, p)
	return nil
}

// tell puts the answer into the view.
func (v *readingView) tell(a folder.Answer) {
	v.Says, v.Offer, v.There = a.Says, a.Offer, a.There
	if n := len(a.Lines); n > 0 {
		v.Line = words.OneLine(a.Lines[n-1])
	}
	for _, d := range a.Doubts {
		if d.Danger && d.Severity >= finding.Danger {
			v.Dangers = append(v.Dangers, d.Says())
		} else if d.Asks {
			v.Doubts = append(v.Doubts, d.Says())
		} else {
			v.Minds = append(v.Minds, d.Says())
		}
	}
}

// keptOf is what was typed, as fields that are not seen. The time stands apart: it is that of the answer.
func keptOf(form url.Values) (list []field) {
	var names []string
	for name := range form {
		if !slices.Contains([]string{nameOnce, nameOwn, nameAt, nameWrite, nameOffer}, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		list = append(list, field{Name: name, Value: form.Get(name)})
	}
	return list
}

// isAnswer tells whether an error is the answer to a reading, and not that something failed.
func isAnswer(err error) bool {
	var doubtful *folder.Doubtful
	var busy *folder.Busy
	var failed *folder.Failed // a full disk: what was typed stays in the form
	var lack missing
	return isRefused(err) || isUnsound(err) || errors.As(err, &doubtful) || errors.As(err, &lack) || errors.As(err, &busy) || errors.As(err, &failed)
}

func isRefused(err error) bool {
	var refused *folder.Refused
	return errors.As(err, &refused)
}

func isUnsound(err error) bool {
	var unsound *folder.Unsound
	return errors.As(err, &unsound)
}

// undo takes the last line back, if it is still the one that was shown.
func (s *server) undo(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return errForm
	}
	id, line := idOf(r), r.PostForm.Get(nameLine)
	if line == "" {
		return missing("look at the batch, and say which line to take back")
	}
	gone, err := s.keep.Undo(r.Context(), id, line)
	if err != nil {
		return err
	}
	q := url.Values{}
	if n := len(gone.Gone); n > 0 {
		q.Set("taken", gone.Gone[n-1].Words)
		q.Set("seal", s.seal.of(q.Get("taken")))
	}
	http.Redirect(w, r, "/batch/"+string(id)+"?"+q.Encode()+"#said", http.StatusSeeOther)
	return nil
}
