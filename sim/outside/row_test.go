package outside

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source/golden"
)

// row is one figure of a source and the model's answer to it.
type row struct {
	what     string // with its conditions
	unit     string // of all the figures
	digits   int    // behind the point, as far as the figure means something
	source   float64
	accepted band   // of the model
	says     string // the source's own figure where it is not a single value
	key      string // in docs/sources.bib; empty for arithmetic
	standing string // seen, from memory, first principles ...
	missed   string // why the model lies outside what is accepted; empty where it does not
	measured band   // where it lies instead
	model    func(t testing.TB) float64

	stage string   // what of the process it is of, where its section does not say it
	lot   string   // which lot, where its source has several: figures of one share what is unknown of it
	idle  bool     // it does not try the spread of lots and houses, see untried
	basis basis    // what it can prove, where its standing does not say it
	by    []string // the constants that were set by it; of one that is held, why it is
}

// band is a closed interval.
type band struct{ low, high float64 }

func (b band) holds(v float64) bool { return v >= b.low && v <= b.high }

// about is the band of all that rounds to v: half a unit of its last figure, or as
// much as the comment beside the row says.
func about(v, by float64) band { return band{v - by, v + by} }

func atLeast(v float64) band { return band{v, math.Inf(1)} }
func atMost(v float64) band  { return band{math.Inf(-1), v} }

// butMissed says where the model lies instead, and why.
func (r row) butMissed(measured band, why string) row {
	r.measured, r.missed = measured, why
	return r
}

// section is one topic of the table.
type section struct {
	title string
	rows  []row
}

// table is every row, in the order of the document.
func table() []section {
	return []section{
		{"Weights, moistures, counts", each(weights(), row.sum)},
		{"Steeping", steeping()},
		{"Moist air", each(moistAir(), row.sum)}, // published equations: nothing is ours
		{"Sorption and thin layers", thinLayers()},
		{"Deep beds", deepBeds()},
		{"Growth", growth()},
		{"Germinating with air blown through", blown()},
		{"Air that is driven, and the room of malt", drivenAir()},
		{"Kilning", kilning()},
		{"Roasting", roasting()},
		{"Energy", energy()},
		{"Whole kilns: the examples", wholeKilns()},
	}
}

const (
	document = "../../docs/model.md"
	begin    = "<!-- outside: begin (made by go test ./sim/outside with MALTWRIGHT_UPDATE=1) -->\n"
	end      = "<!-- outside: end -->\n"

	missedBegin = "<!-- missed: begin (made by go test ./sim/outside with MALTWRIGHT_UPDATE=1) -->\n"
	missedEnd   = "<!-- missed: end -->\n"
)

func TestModelsAgreeWithWhatOthersFoundAndTheDocumentSaysSo(t *testing.T) {
	var text, missed strings.Builder
	missed.WriteString("\n| figure | source | model | why |\n|---|---|---|---|\n")
	var sections []counted
	for _, s := range table() {
		fmt.Fprintf(&text, "\n### %s\n\n| what | source value | model value | difference | counts as | source |\n|---|---|---|---|---|---|\n", s.title)
		c := counted{s.title, map[basis]int{}, map[basis]int{}}
		for _, r := range s.rows {
			v := r.model(t)
			r.judge(t, v)
			text.WriteString(r.line(v))
			if r.missed != "" {
				missed.WriteString(r.miss(v))
			}
			c.of[r.proves()]++
			if r.accepted.holds(v) {
				c.met[r.proves()]++
			}
		}
		sections = append(sections, c)
	}
	golden.Between(t, document, begin, end, countsTable(sections)+text.String()+"\n")
	golden.Between(t, limits, missedBegin, missedEnd, missed.String()+"\n")
}

// judge holds the model to what is accepted, or to where it was found instead.
func (r row) judge(t *testing.T, v float64) {
	t.Helper()
	if r.missed == "" {
		assert.True(t, r.accepted.holds(v), "%s: %.6g %s, accepted is %v", r.what, v, r.unit, r.accepted)
		return
	}
	assert.False(t, r.accepted.holds(v), "%s: %.6g %s is no longer missed", r.what, v, r.unit)
	assert.True(t, r.measured.holds(v), "%s: %.6g %s, it was in %v", r.what, v, r.unit, r.measured)
}

// line writes the row for the document.
func (r row) line(v float64) string {
	from := r.standing
	if r.key != "" {
		from = "[" + r.key + "], " + r.standing
	}
	return fmt.Sprintf("| %s | %s | %s | %s | %s | %s |\n", r.what, r.told(), r.figure(v), r.difference(v), r.proves(), from)
}

// miss writes a row that the model misses for the page of its limits.
func (r row) miss(v float64) string {
	from := r.standing
	if r.key != "" {
		from = "[" + r.key + "]"
	}
	return fmt.Sprintf("| %s | %s (%s) | %s | %s |\n", r.what, r.told(), from, r.figure(v), r.missed)
}

// told is what the source says, with its unit.
func (r row) told() string {
	says := r.says
	if says == "" {
		says = r.figure(r.source)
	}
	return strings.TrimSpace(says + " " + r.unit)
}

func (r row) figure(v float64) string { return strings.TrimPrefix(r.signed(v), "+") }

// difference is from the source's value, or from the nearer end of its band.
func (r row) difference(v float64) string {
	var text string
	switch {
	case r.says == "":
		text = r.changed(v - r.source)
	case r.accepted.holds(v):
		text = "inside"
	case v < r.accepted.low:
		text = r.changed(v - r.accepted.low)
	default:
		text = r.changed(v - r.accepted.high)
	}
	if r.missed != "" {
		text += "; missed: " + r.missed
	}
	return text
}

// changed is a difference; one too small to show is 0.
func (r row) changed(d float64) string {
	text := r.signed(d)
	if strings.Trim(text, "0.") == "" {
		return "0"
	}
	return text
}

// signed writes a value with its sign; one that rounds to nothing has none.
func (r row) signed(v float64) string {
	text := fmt.Sprintf("%+.*f", r.digits, v)
	if strings.Trim(text, "+-0.") == "" {
		return text[1:]
	}
	return strings.Replace(text, "-", "−", 1)
}
