package serve

import (
	"bytes"
	"net/http"
	"regexp"
	"strings"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/report/html"
	"maltwright/cmd/serve/guard"
	"maltwright/cmd/sheet"
	"maltwright/cmd/sheet/onpaper"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// batchSheet is the sheet by the bucket of a batch under way: the visits to come.
func (s *server) batchSheet(w http.ResponseWriter, r *http.Request) error {
	v, err := s.see(r.Context(), idOf(r))
	if err != nil {
		return err
	}
	if v.ahead.Forecast == nil {
		return missing("there is no forecast of this batch, and so no sheet: put its record right first")
	}
	at, as := progress.When(v.opened.Batch, v.now)
	x, err := sheet.OfBatch(v.opened.Batch, v.ahead.Forecast, v.ahead.Visits, at, sheet.Options{Note: "maltwright note " + words.TypedName(v.opened.File), Follow: v.opened.Follow, Past: as == progress.LastReading})
	if err != nil {
		return missing(err.Error())
	}
	return printed(w, x)
}

// processSheet is the sheet of a process that is not begun.
func (s *server) processSheet(w http.ResponseWriter, r *http.Request) error {
	o, err := s.keep.Process(r.Context(), idOf(r))
	if err != nil {
		return err
	}
	if o.Forecast == nil {
		return missing("there is no forecast of this process, and so no sheet: put it right first")
	}
	begin, f := "maltwright begin "+words.TypedName(o.File), o.Forecast
	at, err := startOf(r.URL.Query().Get(nameAt), s.Clock())
	if err != nil {
		return err
	}
	if !at.IsZero() {
		begin += " --at " + at.Format(picked)
		if f, err = forecast.Run(o.Process, forecast.Options{Begun: at, Meter: work.NewMeter(r.Context(), nil)}); err != nil {
			return missing(o.Words.Cause(err))
		}
	}
	x, err := sheet.Of(f, sheet.Options{Begin: begin, Start: at})
	if err != nil {
		return missing(err.Error())
	}
	return printed(w, x)
}

// startOf is when a batch is to begin, as a field of a browser has it; the zero time where it says nothing.
func startOf(typed string, now time.Time) (time.Time, error) {
	if strings.TrimSpace(typed) == "" {
		return time.Time{}, nil
	}
	at, err := time.ParseInLocation(stamp, stamped(typed, now), now.Location())
	if err != nil || at.Year() < 1900 || at.Year() > 2200 {
		return time.Time{}, missing("the start is no time: pick a day and an hour")
	}
	return at, nil
}

func printed(w http.ResponseWriter, x sheet.Sheet) error {
	var out bytes.Buffer
	if _, err := onpaper.Write(&out, x); err != nil { // letters that the fonts lack are told on the paper itself
		return err
	}
	w.Header().Set("Content-Type", "application/pdf")
	_, _ = w.Write(out.Bytes()) // whoever asked may be gone
	return nil
}

// calendar is that of all visits to come, which a phone asks for again and again.
func (s *server) calendar(w http.ResponseWriter, r *http.Request) error {
	var out bytes.Buffer
	if err := s.keep.Calendar(r.Context(), &out, s.Clock()); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/calendar; charset=utf-8")
	_, _ = w.Write(out.Bytes()) // whoever asked may be gone
	return nil
}

// report is the report of a batch: a document of its own, which may be saved and sent, with its style
// in itself.
func (s *server) report(w http.ResponseWriter, r *http.Request) error {
	back, err := s.turns.take(r.Context())
	if err != nil {
		return err
	}
	defer back()
	x, err := s.keep.Report(r.Context(), idOf(r), s.Clock())
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := html.Write(&out, x); err != nil {
		return err
	}
	if style := styles.FindSubmatch(out.Bytes()); style != nil {
		guard.AllowStyle(w.Header(), string(style[1]))
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(out.Bytes())
	return nil
}

// styles is the style of a document.
var styles = regexp.MustCompile(`(?s)<style>(.*?)</style>`)
