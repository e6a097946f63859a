package main

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/source/spoil"
)

// Two seasons, both broken, are compared, forecast and timed, and now and then a record
// is set beside another; each is written in every format.
func TestNoCommandWritesAFigureThatIsNone(t *testing.T) {
	longSums(t)
	h := newHunt(t)
	loft, tried, forecast := h.example("loft.malt"), 0, 0
	for seed := range spoil.Seeds(6, 10_000) {
		h.from(seed, func() {
			h.put("loft.malt", loft)
			name := prey[h.r.IntN(len(prey))] + ".malt"
			if !h.put("old.malt", h.mostlyBroken(name)) || !h.put("new.malt", h.mostlyBroken(name)) {
				return
			}
			tried++
			if h.comparison(); h.forecast() {
				forecast++
			}
			if h.r.IntN(20) == 0 {
				h.seasons()
			}
		})
	}
	require.Greater(t, forecast, tried/5, "too few are forecast for this to ask anything")
	t.Logf("%d pairs tried, %d forecast", tried, forecast)
}

// comparison compares the two once, and writes that in every format.
func (h *hunt) comparison() {
	h.t.Helper()
	var errs strings.Builder
	x, err := Contrast{Old: "old.malt", New: "new.malt"}.compared(h.world(nil, &errs))
	if err != nil {
		h.said("contrast", errs.String()+err.Error())
		return
	}
	for format, write := range contrastWriters {
		h.written("contrast", format, func(w *World) error { return write(w, x) })
	}
}

// forecast forecasts the new one once, and writes that and its timetable in every format.
func (h *hunt) forecast() bool {
	h.t.Helper()
	var errs strings.Builder
	f, err := Forecast{File: "new.malt"}.made(h.world(nil, &errs), "forecast", time.Time{})
	if err != nil {
		h.said("forecast", errs.String()+err.Error())
		return false
	}
	start := time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	r, house := outlook.Of(f, start), words.Of(f.Process)
	for format, write := range outlookWriters {
		h.written("forecast", format, func(w *World) error { return write(w, r, house) })
	}
	t, err := timetable.Of(f, start, false)
	if err != nil {
		return !f.BrokenOff()
	}
	for format, write := range timetableWriters {
		h.written("visits", format, func(w *World) error { return write(w, t, house) })
	}
	return true
}

// written looks at what is written in a format.
func (h *hunt) written(command, format string, write func(*World) error) {
	h.t.Helper()
	var b strings.Builder
	if err := write(h.world(&b, &b)); err != nil {
		h.fail([]string{command, format}, "%v", err)
	}
	h.said(command, b.String())
	h.reads([]string{command, format}, b.String())
}
