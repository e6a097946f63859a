package serve

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strconv"
	"sync"
	"time"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/chart/svg"
	"maltwright/cmd/folder"
	"maltwright/cmd/serve/guard"
	"maltwright/cmd/words"
	"maltwright/lang/quantity"
)

// chartView is a chart as a picture, for a desk and for a phone, with what it shows in words.
type chartView struct {
	Name, Says   string
	Wide, Narrow picture
}

// picture is where one is, and how large. The page keeps its place free, so that what is below does not move under a
// reader's eyes, or out of the window that has the focus, when it comes.
type picture struct {
	At         string
	Wide, High int // px
}

// The widths of charts, px.
const (
	deskWide  = 720
	phoneWide = 358
)

// drawn are the charts of a batch or a process, made once for each state of the folder.
type drawn struct {
	mu      sync.Mutex
	version string
	list    map[folder.ID]*making
}

type making struct {
	turn chan struct{} // of who makes them
	done bool
	made []named
}

// named is a chart by the name that an address has for it.
type named struct {
	of    string
	nth   int
	chart chart.Chart
	high  [2]int // px, for a desk and for a phone
}

func namedOf(of string, nth int, c chart.Chart) named {
	n := named{of: of, nth: nth, chart: c}
	for i, wide := range []float64{deskWide, phoneWide} {
		n.high[i] = int(math.Round(c.Lay(chart.Options{Width: wide}, chart.Sans{}).Height))
	}
	return n
}

// take gives the charts, or makes them: never twice at a time, and not kept where it was ended. Who waits for them gets none once the context
// ends.
func (d *drawn) take(ctx context.Context, version string, id folder.ID, draw func() []named) []named {
	d.mu.Lock()
	if d.version != version || d.list == nil {
		d.version, d.list = version, map[folder.ID]*making{}
	}
	one := d.list[id]
	if one == nil {
		one = &making{turn: make(chan struct{}, 1)}
		d.list[id] = one
	}
	d.mu.Unlock()
	select {
	case one.turn <- struct{}{}:
		defer func() { <-one.turn }()
	case <-ctx.Done():
		return nil
	}
	if !one.done {
		one.made = draw()
		one.done = ctx.Err() == nil
	}
	return one.made
}

// charts are all that make sense for a batch or a process.
func (s *server) charts(ctx context.Context, version string, id folder.ID, o folder.Opened, now time.Time) []named {
	return s.drawn.take(ctx, version, id, func() []named {
		c, ok := curveOf(ctx, o, now)
		if !ok {
			return nil
		}
		var list []named
		for _, name := range figures.Names() {
			of, _ := figures.Named(name, &c, o.Words)
			for i, one := range of {
				list = append(list, namedOf(name, i, one))
			}
		}
		return list
	})
}

// curveOf is a batch over time, by all of its readings where it is followed; or a process.
func curveOf(ctx context.Context, o folder.Opened, now time.Time) (c curve.Curve, ok bool) {
	var err error
	switch {
	case o.Follow != nil:
		c, err = curve.Batch(ctx, o.Follow, curve.Options{})
	case o.Batch != nil && o.Process != nil && !o.Batch.Broken:
		c, err = curve.Likely(ctx, o.Batch, now, curve.Options{})
	case o.Batch == nil && o.Forecast != nil:
		c, err = curve.Forecast(ctx, o.Forecast, curve.Options{})
	default:
		return c, false
	}
	return c, err == nil
}

// chartsOf shows charts on a page.
func chartsOf(at string, list []named) (out []chartView) {
	for _, x := range list {
		to := fmt.Sprintf("%s/chart.svg?of=%s&n=%d", at, x.of, x.nth)
		out = append(out, chartView{x.chart.Title, x.chart.Say(),
			picture{to, deskWide, x.high[0]}, picture{to + "&wide=" + strconv.Itoa(phoneWide), phoneWide, x.high[1]}})
	}
	return out
}

// rows are how many times a table of a chart has at the most.
const rows = 14

// figuresOf is a chart as a table: its lines at even times.
func figuresOf(list []named) (t table) {
	if len(list) == 0 || len(list[0].chart.Panels) == 0 {
		return t
	}
	c, p := list[0].chart, list[0].chart.Panels[0]
	t = table{Caption: c.Title, Class: "steps", Head: []string{"When"}}
	for _, l := range p.Lines {
		name := words.Joined(", ", p.Name, l.Name)
		if l.Name == "" || l.Name == p.Name {
			name = p.Name
		}
		t.Head = append(t.Head, name)
	}
	clock := c.Clock()
	for i := range rows {
		at := c.From + (c.To-c.From)*float64(i)/(rows-1)
		cells := []cell{cellOf(clock.Say(at))}
		for _, l := range p.Lines {
			cells = append(cells, figure(valueAt(l, at, p)))
		}
		t.add(cells...)
	}
	return t
}

// valueAt is what a line shows at a time, "" where it shows nothing.
func valueAt(l chart.Line, at float64, p chart.Panel) string {
	i, _ := slices.BinarySearch(l.At, at)
	if i == len(l.At) && i > 0 && l.At[i-1] >= at-60 {
		i--
	}
	if i >= len(l.At) || math.IsNaN(l.Value[i]) || i == 0 && l.At[0] > at+60 {
		return ""
	}
	return quantity.Fixed(l.Value[i], p.Places) + " " + p.Unit
}

func (s *server) batchChart(w http.ResponseWriter, r *http.Request) error {
	now := s.Clock()
	st, err := s.keep.Look(r.Context(), now)
	if err != nil {
		return err
	}
	o, err := s.keep.Batch(idOf(r), now)
	if err != nil {
		return err
	}
	return s.draw(w, r, s.charts(r.Context(), st.Version, idOf(r), o, now))
}

func (s *server) processChart(w http.ResponseWriter, r *http.Request) error {
	st, err := s.keep.Look(r.Context(), s.Clock())
	if err != nil {
		return err
	}
	o, err := s.keep.Process(r.Context(), idOf(r))
	if err != nil {
		return err
	}
	return s.draw(w, r, s.charts(r.Context(), st.Version, idOf(r), o, s.Clock()))
}

// draw writes the chart that an address names.
func (s *server) draw(w http.ResponseWriter, r *http.Request, list []named) error {
	q := r.URL.Query()
	nth, _ := strconv.Atoi(q.Get("n"))
	i := slices.IndexFunc(list, func(x named) bool { return x.of == q.Get("of") && x.nth == nth })
	if i < 0 {
		return errNoChart
	}
	o := svg.Options{Options: chart.Options{Width: deskWide}}
	if q.Get("wide") == strconv.Itoa(phoneWide) {
		o.Width = phoneWide
	}
	var out bytes.Buffer
	if err := svg.Write(&out, list[i].chart, o); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	guard.AllowStyle(w.Header(), svg.Style())
	_, _ = w.Write(out.Bytes())
	return nil
}
