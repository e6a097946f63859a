// Package serve is the page: what a folder holds, for a person with wet hands and a phone, or
// at a desk.
//
// # How it works
//
// Each page is made on the machine and works without a script: a form is sent, judged, shown with
// what it comes to, and sent once more to be written; nothing is kept here between the two. What is
// written goes through cmd/folder, as what a command writes does. The script adds what a page cannot do by
// itself: it counts the time down, sounds when a visit falls due, judges while a figure is typed, and
// keeps readings on the phone while the machine is out of reach.
//
// Nothing here decides who may ask: cmd/serve/guard stands around it.
package serve

import (
	"context"
	"io"
	"net/http"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/report"
	"maltwright/cmd/serve/guard"
	"maltwright/cmd/words"
)

// Options are how the page is served.
type Options struct {
	Clock    func() time.Time           // nil: that of this computer
	MayWrite func(context.Context) bool // whether who asks may write; nil: as the guard has it
	Calendar string                     // the address of the calendar, with its own token; "" shows none
}

// keeper is what the page asks of a folder.
type keeper interface {
	ID() folder.ID
	Look(ctx context.Context, now time.Time) (folder.State, error)
	Stands(ctx context.Context, id folder.ID, now time.Time) (folder.Batch, error)
	Came(ctx context.Context, id folder.ID) ([]words.LedgerRow, error)
	Batch(id folder.ID, now time.Time) (folder.Opened, error)
	Process(ctx context.Context, id folder.ID) (folder.Opened, error)
	Ahead(ctx context.Context, id folder.ID, now time.Time) (folder.Ahead, error)
	Judge(ctx context.Context, id folder.ID, x folder.Reading) (folder.Answer, error)
	Note(ctx context.Context, id folder.ID, x folder.Reading, sure bool) (folder.Answer, error)
	Undo(ctx context.Context, id folder.ID, line string) (folder.Undone, error)
	Lines(id folder.ID) ([]journal.Line, error)
	Begin(ctx context.Context, process folder.ID, s folder.Start) (folder.Begun, error)
	Report(ctx context.Context, id folder.ID, now time.Time) (report.Report, error)
	Calendar(ctx context.Context, w io.Writer, now time.Time) error
	WhatIf(ctx context.Context, process folder.ID, begun time.Time, lines []string) (folder.Supposed, error)
}

type server struct {
	Options
	keep  keeper
	seal  seal
	drawn drawn
	turns turns
}

// New serves a folder. It has no guard around it.
func New(f *folder.Folder, o Options) http.Handler { return handler(f, o) }

func handler(k keeper, o Options) http.Handler {
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.MayWrite == nil {
		o.MayWrite = guard.MayWrite
	}
	s := &server{Options: o, keep: k, seal: newSeal(), turns: newTurns()}
	mux := http.NewServeMux()
	mux.Handle("GET /style.css", style)
	mux.Handle("GET /page.js", script)
	mux.Handle("GET /worker.js", worker)
	for route, serve := range map[string]func(*server, http.ResponseWriter, *http.Request) error{
		"GET /{$}":                    (*server).list,
		"GET /batch/{id}":             (*server).batch,
		"POST /batch/{id}/reading":    (*server).reading,
		"POST /batch/{id}/undo":       (*server).undo,
		"GET /process/{id}":           (*server).process,
		"POST /process/{id}/begin":    (*server).begin,
		"POST /process/{id}/what-if":  (*server).whatIf,
		"GET /process/{id}/what-if":   (*server).process,
		"GET /pulse":                  (*server).pulse,
		"POST /kept":                  (*server).kept,
		"GET /batch/{id}/chart.svg":   (*server).batchChart,
		"GET /process/{id}/chart.svg": (*server).processChart,
		"GET /batch/{id}/sheet.pdf":   (*server).batchSheet,
		"GET /process/{id}/sheet.pdf": (*server).processSheet,
		"GET /batch/{id}/report":      (*server).report,
		"GET /due.ics":                (*server).calendar,
		"GET /":                       (*server).nowhere,
	} {
		mux.Handle(route, s.answering(serve))
	}
	return mux
}

// most is how much the body of a request may hold, in bytes: a form is some hundred, a day of readings some thousand.
const most = 256 << 10

// answering puts what goes wrong into a page.
func (s *server) answering(serve func(*server, http.ResponseWriter, *http.Request) error) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Set("X-Content-Type-Options", "nosniff")
		r.Body = http.MaxBytesReader(w, r.Body, most)
		if r.Method == http.MethodPost && !s.MayWrite(r.Context()) {
			s.trouble(w, r, errReader)
			return
		}
		if err := serve(s, w, r); err != nil {
			s.trouble(w, r, err)
		}
	})
}

func idOf(r *http.Request) folder.ID { return folder.ID(r.PathValue("id")) }
