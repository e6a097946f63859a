package check

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// How it works: each statement of the vocabulary is written, as its example has it,
// into every block that takes it and behind every line of that block, and each of its
// clauses is left out or put in. Forecast, findings or visits must then be other than
// without it: what is written and does nothing is lost on the maltster in silence.

// forPeople are the statements and clauses that only a person reads, with the reason.
var forPeople = map[string]string{
	"protein":        "no model asks for it yet; it is kept with the lot",
	"store in":       "what the malt is kept in: only a sack is judged, by store-open",
	"soak in":        "the word water only makes the line read well",
	"rest in":        "the word air only makes the line read well",
	"because":        "a reason is for those who read it",
	"awake with":     "how many are there is told at each visit, by visits and follow",
	"grain: store":   "where the lot lies: seasons --trace tells it",
	"delivered from": "the same", "delivered on": "the same", "delivered as": "the same",
	"thermometer":       "by what the readings of a record are put right, in follow",
	"growth error":      "how far a batch may be off: it moves the spread, not the middle",
	"respiration error": "the same", "withering error": "the same", "uptake error": "the same", "husk-water error": "the same", "chit error": "the same", "drying error": "the same",
	"growth scatter": "the same", "growth batches": "what learn --from goes on from",
	"respiration scatter": "the same", "respiration batches": "what learn --from goes on from",
	"withering scatter": "the same", "withering batches": "what learn --from goes on from",
	"uptake scatter": "the same", "uptake batches": "what learn --from goes on from",
	"husk-water scatter": "the same", "husk-water batches": "what learn --from goes on from",
	"chit scatter": "the same", "chit batches": "what learn --from goes on from",
	"drying scatter": "the same", "drying batches": "what learn --from goes on from",
}

// elsewhere are blocks whose statements show in other commands.
var elsewhere = map[vocabulary.Block]string{
	vocabulary.Batch:  "the record of a batch: follow tells what it comes to",
	vocabulary.Limits: "its words are the limits",
}

// samples are what a clause is tried with: one of them must show.
var samples = map[string][]string{
	"to":      {`to moisture 43 to 45 %`},
	"in":      {`in "blue tub"`, `in "glass"`},
	"with":    {"with lime", "with air", "with airflow 60 m3/h", "with water 0.3 l", "with insulation"},
	"for":     {"for 5 h", "for 4 days", "for 40 min", "for at least 5 days"},
	"until":   {"until moisture at least 43 %", "until moisture at most 15 % allow 1 to 30 h", "until acrospire at least 1/2 allow 1 to 7 days"},
	"allow":   {"allow 2 to 3 h", "allow 1 to 2 days", "allow 3 to 4 days"},
	"at":      {"at 15 °C", "at air-on 60 °C", "at 8 ml"},
	"from":    {"from air-on 40 to 60 °C"},
	"over":    {"over 9 h"},
	"of":      {"of 20 kernels"},
	"on":      {"on 2025-01-02"},
	"by":      {"by direct", "by machine"},
	"when":    {"when moisture above 41 %"},
	"error":   {"error 0.1"},
	"scatter": {"scatter 0.1"},
	"batches": {"batches 6"},
	"within":  {"within 40 h"},
	"because": {`because "so it is"`},
}

func shownBase(t *testing.T) page {
	text, err := os.ReadFile("testdata/shown/base.malt")
	require.NoError(t, err)
	return page{strings.Split(string(text), "\n")}
}

// ofFans are the statements of a bed that a fan blows air through; the floor of the base
// then has a fan.
var ofFans = []string{vocabulary.VerbAir, vocabulary.FactFan, "heater", "cooler", "returns", "tumbles"}

// fanned is the base for a row in a block, with a fan where it is of one, and without where it
// is of a still oven.
func (p page) fanned(word string, in vocabulary.Block) page {
	if word == vocabulary.FactDoor { // of an oven of which no airflow is said
		still := p.without(p.head(in), vocabulary.WithAirflow)
		return still.inserted(still.head(in), "  draught still")
	}
	if !slices.Contains(ofFans, word) || in == vocabulary.KilnFacts || in == vocabulary.Site {
		return p
	}
	return p.inserted(p.head(vocabulary.Floor), "  airflow 5 m3/h")
}

// saying is what the program says of a text, without the places: what is found, and,
// where it is asked for, what is forecast.
type saying struct {
	found    string
	foretold func() string
}

func said(text string) saying {
	var b strings.Builder
	r := File("shown.malt", []byte(text), ".", house{}, Options{On: "2026-03-06"})
	for _, f := range r.Findings {
		fmt.Fprintln(&b, f.Severity, f.Rule, f.Message)
	}
	return saying{b.String(), sync.OnceValue(func() string { return forecasts(r) })}
}

// other tells whether something else is said. The forecast is only made where what is
// found is the same.
func (s saying) other(than saying) bool {
	return s.found != than.found || s.foretold() != than.foretold()
}

func forecasts(r Report) string {
	var b strings.Builder
	if worst, any := finding.Worst(r.Findings); any && worst == finding.Fault && len(r.NotJudged) > 0 && r.NotJudged[0].Rule == "forecast" {
		return ""
	}
	for _, p := range r.House.Processes {
		if f, err := forecast.Run(p, forecast.Options{}); err == nil {
			foretold(&b, f)
		}
	}
	return b.String()
}

func foretold(b *strings.Builder, f *forecast.Forecast) {
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			fmt.Fprintln(b, st.Kind, s.Label, s.Start, s.End, s.MoistureEnd, s.WeightEnd, s.Temperature, s.EndedBy)
		}
	}
	for _, g := range f.Gates {
		fmt.Fprintln(b, g.Stage, g.Text, g.Met, g.Waited)
	}
	for _, e := range f.Expects {
		fmt.Fprintln(b, e.Condition.Place.Text(), e.Holds, e.Value)
	}
	for _, t := range f.Trouble {
		fmt.Fprintln(b, tell.Trouble(t, f.Process.Units()))
	}
	for _, p := range f.Pieces {
		fmt.Fprintln(b, p.Chitted, p.Deepest, p.Slowed)
	}
	fmt.Fprintln(b, f.Totals)
	for _, a := range f.Assumed {
		fmt.Fprintln(b, tell.Assumption(a, f.Process.Units()))
	}
	for _, v := range visits.List(f) {
		fmt.Fprintln(b, v.At, v.Waits, v.Kind, v.Name, v.Ends, v.Lasts, v.Until)
		if gross, known := v.In.With(v.Weight); known {
			fmt.Fprintln(b, v.In.Name, gross)
		}
	}
	fmt.Fprintln(b, f.Process.BagShare(), f.Process.Units().WeightBy(f.Totals.Malt, divisionOf(f)))
}

// divisionOf is how finely the malt is shown, kg; 0 where no scale says.
func divisionOf(f *forecast.Forecast) float64 {
	if s := f.Process.House.Scale(f.Totals.Malt); s != nil {
		return s.Division.SI
	}
	return 0
}

func TestEveryStatementShowsWhereverItMayStand(t *testing.T) {
	base := shownBase(t)
	for _, row := range vocabulary.Rows() {
		for _, in := range row.In {
			if _, ok := elsewhere[in]; ok || in == vocabulary.File || forPeople[row.Word] != "" || forPeople[string(in)+": "+row.Word] != "" {
				continue
			}
			from := base.fanned(row.Word, in)
			head := from.head(in)
			if row.Once {
				from = from.without(head, row.Word)
			}
			before := said(from.text())
			for _, at := range some(from.places(head), row.Word) {
				if !shows(before, from, at, tried(row)) {
					t.Errorf("%q does nothing in %s behind %q", row.Word, in, strings.TrimSpace(from.lines[at]))
				}
			}
		}
	}
}

// shows tells whether one of the lines, behind line at, changes what is said.
func shows(before saying, p page, at int, lines []string) bool {
	return slices.ContainsFunc(lines, func(l string) bool { return said(p.inserted(at, l).text()).other(before) })
}

// tried are the example of a statement, and others where the example is what the base
// would do anyway.
func tried(row vocabulary.Row) []string { return append(instead[row.Word], row.Example) }

var instead = map[string][]string{
	"germination": {"germination 99 % of 200 kernels at 4 ml on 2026-02-02"},
	"division":    {"division 0.5 kg"},
	"ergot":       {"ergot found"}, "mould": {"mould found"},
	"reaches": {"reaches 30 to 70 °C"}, "fired": {"fired wood by direct"},
	"gate": {"gate moisture at most 1 %"}, "delivered": {"delivered 10 g"},
	"away": {"away 2026-03-07 to 2026-03-09"}, "awake": {"awake 02:00 to 03:00"},
	"air":      {"air at air-on 13 °C with airflow 4 m3/h when bed above 14 °C for 20 min every 1 h", "air at air-on 18 °C with airflow 4 m3/h when moisture above 36 % for 20 min every 1 h"},
	"sprinkle": {"sprinkle 0.1 l every 24 h when moisture below 42 %", "sprinkle to moisture 44 % every 20 h"},
	"turn":     {"turn every 1 h"}, "for": {"for 2 days", "for 2 h"},
}

func TestEveryClauseShows(t *testing.T) {
	base := shownBase(t)
	for _, row := range vocabulary.Rows() {
		for _, in := range row.In {
			if _, ok := elsewhere[in]; ok || in == vocabulary.File || forPeople[row.Word] != "" || forPeople[string(in)+": "+row.Word] != "" {
				continue
			}
			for _, c := range row.Clauses {
				if forPeople[row.Word+" "+c.Word] == "" && forPeople[c.Word] == "" && !clauseShows(base.fanned(row.Word, in), row, in, c.Word) {
					t.Errorf("%s of %s does nothing in %s", c.Word, row.Word, in)
				}
			}
		}
	}
}

// clauseShows tells whether a statement says something else with the clause than
// without, for one of the samples, wherever it may stand.
func clauseShows(base page, row vocabulary.Row, in vocabulary.Block, clause string) bool {
	if row.Opens != vocabulary.None {
		i := base.head(row.Opens)
		rest := page{slices.Delete(slices.Clone(base.lines), i, i+1)}
		head := strings.TrimSuffix(base.lines[i], " {")
		return clauseShowsAt(rest, i-1, row, head, clause, " {")
	}
	from := base
	if row.Once || row.Word == "germination" {
		from = base.without(base.head(in), row.Word)
	}
	for _, at := range some(from.places(from.head(in)), row.Word+clause) {
		if !slices.ContainsFunc(tried(row), func(line string) bool { return clauseShowsAt(from, at, row, line, clause, "") }) {
			return false
		}
	}
	return true
}

// some is the first or the last of places, as it falls out for the word that is tried in
// them, and all of them in the long run.
func some(places []int, word string) []int {
	if golden.Long() || len(places) < 2 {
		return places
	}
	if len(word)%2 == 0 {
		return places[:1]
	}
	return places[len(places)-1:]
}

func clauseShowsAt(p page, at int, row vocabulary.Row, line, clause, end string) bool {
	without := cut(row, line, clause)
	with := []string{line + end}
	for _, s := range samples[clause] {
		with = append(with, without+" "+s+end)
	}
	return shows(said(p.inserted(at, without+end).text()), p, at, with)
}

// cut gives the line without a clause.
func cut(row vocabulary.Row, line, clause string) string {
	var kept []string
	words, out := strings.Fields(line), false
	for i, w := range words {
		next := ""
		if i+1 < len(words) {
			next = words[i+1]
		}
		bound := w == "at" && (next == "most" || next == "least") || w == "to" && next != "" && next[0] >= '0' && next[0] <= '9'
		if _, begins := row.Clause(w); begins && i > 0 && !bound {
			out = w == clause
		}
		if !out {
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, " ")
}
