package serve

import (
	"context"
	"errors"
	"net/http"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
)

var (
	errReader  = errors.New("this link shows, and writes nothing")
	errNowhere = errors.New("there is no such page")
	errForm    = errors.New("the form cannot be read")
	errNoChart = errors.New("there is no such chart")
)

// statusOf is the status of an answer that failed, with its heading.
func statusOf(err error) (status int, head string) {
	var gone *folder.Gone
	var busy *folder.Busy
	var refused *folder.Refused
	var doubtful *folder.Doubtful
	var unsound *folder.Unsound
	var lack missing
	switch {
	case errors.Is(err, errReader):
		return http.StatusForbidden, "This link only shows"
	case errors.Is(err, errNowhere), errors.Is(err, errNoChart), errors.As(err, &gone):
		return http.StatusNotFound, "Not there"
	case errors.Is(err, errForm):
		return http.StatusBadRequest, "That cannot be read"
	case errors.Is(err, errMuch):
		return http.StatusServiceUnavailable, "Too much is asked at once"
	case errors.As(err, &busy):
		return http.StatusServiceUnavailable, "Another program is writing the file"
	case errors.As(err, &refused), errors.As(err, &doubtful), errors.As(err, &unsound), errors.As(err, &lack):
		return http.StatusUnprocessableEntity, "That cannot be done"
	}
	return http.StatusInternalServerError, "It could not be done"
}

// said is an error as a person reads it.
func said(err error) string { return words.Safe(err.Error()) }

type troubleView struct{ Head, Text, Back, BackTo string }

// trouble shows what went wrong, and where to go on.
func (s *server) trouble(w http.ResponseWriter, r *http.Request, err error) {
	if errors.Is(err, context.Canceled) && r.Context().Err() != nil {
		return // nobody is there to read it
	}
	status, head := statusOf(err)
	p := s.page(r, head+" – maltwright")
	p.Body = troubleView{head, said(err) + ".", "/", "To the list of batches"}
	s.write(w, troublePage, status, p)
}

func (s *server) nowhere(http.ResponseWriter, *http.Request) error { return errNowhere }
