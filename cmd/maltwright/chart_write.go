package main

import (
	"io"
	"runtime"
	"strings"

	"maltwright/cmd/chart"
	charthtml "maltwright/cmd/chart/html"
	chartpaper "maltwright/cmd/chart/onpaper"
	"maltwright/cmd/chart/svg"
	"maltwright/cmd/chart/term"
)

// chartWriters write charts, by format.
var chartWriters = map[string]func(*World, drawing) error{
	"term": func(w *World, d drawing) error { return w.chartsInLetters(d.charts) },
	"svg": func(w *World, d drawing) error {
		return svg.Write(w.Out, d.charts[0], svg.Options{})
	},
	"html": func(w *World, d drawing) error {
		return charthtml.Write(w.Out, d.called(), d.charts...)
	},
	"pdf": func(w *World, d drawing) error {
		return w.onPaper(chartpaper.Write(w.Out, d.charts, chartpaper.Options{}))
	},
}

// called is the title of a page: that of its one chart, or of all.
func (d drawing) called() string {
	if len(d.charts) == 1 {
		return titleOf(d.charts[0])
	}
	return d.title
}

// titleOf is what a chart is called.
func titleOf(x charthtml.Laid) string {
	switch x := x.(type) {
	case chart.Chart:
		return x.Title
	case chart.Bars:
		return x.Title
	}
	return ""
}

// chartsInLetters writes charts one below another.
func (w *World) chartsInLetters(list []charthtml.Laid) error {
	o := term.Options{Width: w.Width, Colour: w.colour(), Plain: !w.patterns()}
	for i, x := range list {
		if i > 0 {
			if _, err := io.WriteString(w.Out, "\n"); err != nil {
				return err
			}
		}
		var err error
		switch x := x.(type) {
		case chart.Chart:
			err = term.Write(w.Out, x, o)
		case chart.Bars:
			err = term.WriteBars(w.Out, x, o)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// patterns tells whether Out shows patterns of dots: its locale is of UTF-8, and it is not the console of Linux,
// whose letters have none.
func (w World) patterns() bool {
	if w.Env("TERM") == "linux" {
		return false
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if locale := strings.ToLower(w.Env(name)); locale != "" {
			return strings.Contains(locale, "utf-8") || strings.Contains(locale, "utf8")
		}
	}
	return runtime.GOOS == "windows"
}
