package figures_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source/spoil"
	"maltwright/lang/vocabulary/invent"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// nowhere reads no files.
type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

// unsound names what no chart may hold, "" for nothing: figures that cannot be drawn, ends that are not in
// order, texts that are not safe.
func unsound(c chart.Chart) string {
	switch {
	case !(c.To > c.From) || !finite(c.From, c.To):
		return fmt.Sprintf("from %v to %v", c.From, c.To)
	case c.Title == "" || len(c.Panels) == 0:
		return "it shows nothing"
	case !safe(append([]string{c.Title, c.Sub, c.Since}, c.Note...)...):
		return "a text that is not safe"
	case c.Now != nil && !(*c.Now >= c.From && *c.Now <= c.To):
		return "now lies outside"
	}
	for _, s := range append(append([]chart.Span(nil), c.Nights...), c.Stages...) {
		if !finite(s.From, s.To) || s.To < s.From || !safe(s.Name) {
			return fmt.Sprintf("span %v", s)
		}
	}
	for _, p := range c.Panels {
		if why := unsoundPanel(p); why != "" {
			return p.Name + ": " + why
		}
	}
	return ""
}

func unsoundPanel(p chart.Panel) string {
	if !safe(p.Name, p.Unit) || !finite(p.Least, p.Most, p.Tall) {
		return "its head"
	}
	seen := p.Field != nil || len(p.Points) > 0
	for _, l := range p.Lines {
		if len(l.At) != len(l.Value) || !rises(l.At) || infinite(l.Value) || !safe(l.Name) {
			return "line " + l.Name
		}
		seen = seen || len(l.At) > 0
	}
	for _, b := range p.Bands {
		if len(b.At) != len(b.Low) || len(b.At) != len(b.High) || !rises(b.At) || infinite(b.Low) || infinite(b.High) {
			return "band " + b.Name
		}
		for i := range b.Low {
			if b.Low[i] > b.High[i] {
				return fmt.Sprintf("band %s runs from %v to %v", b.Name, b.Low[i], b.High[i])
			}
		}
	}
	for _, x := range p.Points {
		if !finite(x.At, x.Value) || x.Error < 0 || math.IsInf(x.Error, 0) {
			return fmt.Sprintf("point %v", x)
		}
	}
	for _, g := range p.Gates {
		if !finite(g.Value, g.From, g.To) || g.To <= g.From || !safe(g.Name) {
			return fmt.Sprintf("gate %v", g)
		}
	}
	if f := p.Field; f != nil {
		if len(f.Value) != len(f.Depth) || !rises(f.At) || !rises(f.Depth) {
			return "field"
		}
		for _, row := range f.Value {
			if len(row) != len(f.At) || infinite(row) {
				return "field"
			}
		}
	}
	if !seen {
		return "it shows nothing"
	}
	return ""
}

func finite(list ...float64) bool {
	for _, x := range list {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// infinite tells whether any is; NaN is a gap.
func infinite(list []float64) bool {
	for _, x := range list {
		if math.IsInf(x, 0) {
			return true
		}
	}
	return false
}

func rises(list []float64) bool {
	for i, x := range list {
		if !finite(x) || i > 0 && x < list[i-1] {
			return false
		}
	}
	return true
}

func safe(texts ...string) bool {
	for _, t := range texts {
		for _, r := range t {
			if unicode.IsControl(r) || r == unicode.ReplacementChar {
				return false
			}
		}
	}
	return true
}

// No file that reads, however odd, makes a chart that cannot be drawn.
func TestChartsOfAnyHouseAreSound(t *testing.T) {
	made := map[string]int{}
	for seed := range spoil.Seeds(20, 150) {
		text := invent.File(seed)
		h, found := read.Load("any.malt", []byte(text), ".", nowhere{})
		if worst, any := finding.Worst(found); any && worst >= finding.Fault || len(h.Processes) == 0 {
			continue
		}
		chartsOf(t, h.Processes[0], seed, made)
	}
	t.Logf("%v", made)
	for _, name := range figures.Names() {
		assert.Positive(t, made[name], name)
	}
}

func chartsOf(t *testing.T, p *model.Process, seed uint64, made map[string]int) {
	t.Helper()
	f, err := forecast.Run(p, forecast.Options{Meter: work.NewMeter(t.Context(), work.NewPool(work.Shared))})
	if err != nil {
		return
	}
	start := time.Time{}
	if seed%2 == 0 {
		start = time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	}
	c, err := curve.Forecast(t.Context(), f, curve.Options{Start: start})
	require.NoError(t, err)
	for _, name := range figures.Names() {
		list, ok := figures.Named(name, &c, words.Of(p))
		require.True(t, ok)
		for _, x := range list {
			if made[name]++; unsound(x) != "" {
				t.Errorf("seed %d, %s: %s", seed, name, unsound(x))
			}
		}
	}
}

// All examples, the broken ones too, and so are the bands of some.
func TestChartsOfTheExamplesAreSound(t *testing.T) {
	for _, pattern := range []string{"*.malt", "home/*.malt", "hall/*.malt", "mill/*.malt", "broken/*.malt"} {
		files, err := filepath.Glob("../../../examples/" + pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files, pattern)
		for i, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			root, err := read.OpenRoot(filepath.Dir(file))
			require.NoError(t, err)
			h, found := read.Load(filepath.Base(file), text, ".", root)
			root.Close()
			if worst, any := finding.Worst(found); any && worst >= finding.Fault || len(h.Processes) == 0 {
				continue
			}
			chartsOf(t, h.Processes[0], uint64(i), map[string]int{})
		}
	}
}

// Every record of the examples, as it stood at each of its days and when it was over.
func TestChartsOfTheRecordsAreSoundAtAnyTime(t *testing.T) {
	charts := 0
	for _, pattern := range []string{"batches/26-*.malt", "home/26-*.malt"} {
		files, err := filepath.Glob("../../../examples/" + pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files, pattern)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			root, err := read.OpenRoot(filepath.Dir(file))
			require.NoError(t, err)
			h, _ := read.Load(filepath.Base(file), text, ".", root)
			root.Close()
			for _, b := range h.Batches {
				times := []time.Time{{}, b.Began.Time}
				for i, x := range b.Readings {
					if at := x.When().Time; i%20 == 0 && !at.IsZero() {
						times = append(times, at, at.Add(5*time.Hour))
					}
				}
				for _, at := range times {
					charts += batchCharts(t, b, at)
				}
			}
		}
	}
	assert.Greater(t, charts, 60)
}

func batchCharts(t *testing.T, b *model.Batch, at time.Time) int {
	t.Helper()
	c, err := curve.Likely(t.Context(), b, at, curve.Options{})
	require.NoError(t, err, "%s at %v", b.Name, at)
	list := figures.All(&c, words.OfBatch(b.Process, b))
	for _, x := range list {
		if why := unsound(x); why != "" {
			t.Errorf("%s at %v, %s: %s", b.Name, at, x.Title, why)
		}
		if x.Now == nil {
			continue
		}
		for _, p := range x.Panels {
			for _, r := range p.Points {
				assert.LessOrEqual(t, r.At, *x.Now+1, "%s: read before it was", b.Name)
			}
		}
	}
	return len(list)
}
