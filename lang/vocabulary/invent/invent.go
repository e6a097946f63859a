// Package invent writes random process files from the vocabulary, for tests: any
// statement that a row allows, in any of its blocks, with values from the ordinary to
// the far end of what the language reads. Most of them read and can be forecast, since
// each definition and stage that one needs is there, and since the sizes of a house go
// with its charge; what nobody would ever do is what they are made of.
package invent

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"maltwright/lang/vocabulary"
)

// MostBytes is how long a file is at the most.
const MostBytes = 64 << 10

// File writes the file of a seed; the same seed always gives the same.
func File(seed uint64) string { return file(seed, rand.New(rand.NewPCG(seed, 0x68616e64))) }

// file writes it by a hand, which says how each thing is written; with none all is in its
// first spelling.
func file(seed uint64, hand *rand.Rand) string {
	w := &writer{Builder: &strings.Builder{}, Rand: rand.New(rand.NewPCG(seed, 0x6d616c74)), hand: hand}
	w.green, w.ends, w.twice, w.exhaust = seed%7 == 3, seed%11 == 5, seed%5 == 4, seed%6 == 5
	w.malted = seed%13 == 8 && !w.green && !w.ends
	w.kg = w.scale(0.05, 20_000)
	switch w.IntN(4) { // a single process, a single one of many steps, many processes
	case 0:
		w.most = 1
	case 1:
		w.most = w.IntN(120)
	case 2:
		w.most = 490
	case 3:
		w.most, w.processes = 1+w.IntN(4), w.IntN(200)
	}
	for _, kind := range definitions {
		w.kiln = kiln(w.IntN(4))
		w.statement(vocabulary.File, kind, 0)
	}
	if w.exhaust {
		w.name, w.kiln = other, tower
		w.statement(vocabulary.File, vocabulary.VerbKiln, 0)
	}
	for n := range 1 + w.processes {
		before := w.Len()
		w.name = fmt.Sprintf("p%d", n)
		w.statement(vocabulary.File, "process", 0)
		if w.Len() > MostBytes {
			return w.String()[:before]
		}
	}
	return w.String()
}

// definitions are what a process names, in the order in which they are written.
var definitions = []string{"grain", "site", "vessel", "floor", "kiln", "scale"}

type writer struct {
	*strings.Builder
	*rand.Rand
	hand      *rand.Rand // draws how a thing is written, and never what
	kg        float64    // of the charge
	most      int        // steps of a stage
	processes int        // beside the first
	name      string     // of the process
	green     bool       // the lot is green malt
	malted    bool       // the lot is malt, to be roasted
	ends      bool       // green malt is made
	twice     bool       // each stage on floor or kiln comes twice
	exhaust   bool       // the kiln is given the exhaust of another one
	kiln      kiln       // what the kiln is that is written
	point     int        // points of the curve of its fan that are written
	blows     float64    // m³/h, of its fan with nothing in the way
	block     vocabulary.Block
	word      string // of the statement
	returns   bool   // a share of the air is written
	led       bool   // a hold that goes from one temperature to another
}

// scale draws between two bounds, evenly in the logarithm.
func (w *writer) scale(low, high float64) float64 {
	return low * math.Pow(high/low, w.Float64())
}

func (w *writer) odds(of int) bool { return w.IntN(of) == 0 }

// statement writes one statement with its clauses and its block.
func (w *writer) statement(in vocabulary.Block, word string, depth int) {
	row, ok := vocabulary.Lookup(in, word)
	if !ok {
		panic("no statement is called " + word)
	}
	w.block, w.word = in, word
	w.led = word == vocabulary.VerbHold && w.odds(6)
	lead := ""
	rest := w.aside(func() {
		if w.ofItself(row) {
			return
		}
		w.slots(row.Slots, "")
		said := map[string]bool{}
		chosen := w.chosen(word)
		for _, c := range row.Clauses {
			if c.Required || w.written(word, c.Word, chosen) {
				said[c.Word] = true
				w.clause(&c)
			}
		}
		lead = w.ending(row, said)
	})
	w.WriteString(strings.Repeat(" ", depth) + word + lead + rest)
	if row.Opens != vocabulary.None {
		w.WriteString(" {\n")
		w.body(row.Opens, depth+1)
		w.WriteString(strings.Repeat(" ", depth) + "}")
	}
	w.WriteString("\n")
}

// aside gives what something writes, and keeps it out of the file.
func (w *writer) aside(write func()) string {
	file := w.Builder
	w.Builder = &strings.Builder{}
	write()
	text := w.String()
	w.Builder = file
	return text
}

// wants tells whether a clause that may be left out is written.
func (w *writer) wants(clause string) bool {
	switch clause {
	case "in", "on":
		return true
	case "from", "over":
		return w.led
	case "for", "until", "allow": // see ending
		return false
	case "at":
		if w.word == vocabulary.VerbHold {
			return !w.led
		}
		return w.block == vocabulary.Kiln || w.odds(2)
	}
	return w.odds(4)
}

func (w *writer) clause(c *vocabulary.Clause) {
	w.WriteString(" " + c.Word)
	if c.Joins {
		w.joined(c)
		return
	}
	w.slots(c.Slots, c.Word)
}

// ending writes how a step ends: by its time, or by a condition and a guard. A time may
// be one to stand right behind the word.
func (w *writer) ending(row *vocabulary.Row, said map[string]bool) (lead string) {
	until, conditional := row.Clause("until")
	allow, guarded := row.Clause("allow")
	long, timed := row.Clause("for")
	switch {
	case w.word == "soak" || w.word == "rest":
		if w.odds(4) {
			w.clause(until)
		}
	case conditional && timed && (w.block != vocabulary.Process) && w.odds(2):
		if row.Leads == long.Word && w.hand != nil && w.hand.IntN(2) == 0 {
			lead = w.aside(func() { w.slots(long.Slots, long.Word) })
			break
		}
		w.clause(long)
	case conditional && guarded && w.block != vocabulary.Process:
		w.clause(until)
		w.clause(allow)
	case conditional && !guarded && w.odds(2):
		w.clause(until)
	case guarded && !conditional && w.odds(2):
		w.clause(allow)
	}
	if w.block == vocabulary.Kiln && !said["at"] && timed {
		w.WriteString(" at air-on 50 °C")
	}
	return lead
}

// body writes a block: what it needs, and of the rest whatever comes.
func (w *writer) body(in vocabulary.Block, depth int) {
	for _, row := range vocabulary.Rows() {
		if !slices.Contains(row.In, in) || slices.Contains(left, row.Word) {
			continue
		}
		n := w.times(&row, in, depth)
		for range n {
			w.statement(in, row.Word, depth)
		}
	}
}

// leftOut tells of the stages that a process does without, which is a part of the whole.
func (w *writer) leftOut(word string) bool {
	rank := vocabulary.StageRank(word)
	return (w.green || w.malted) && (word == vocabulary.VerbSteep || word == vocabulary.VerbGerminate) || w.malted && word == vocabulary.VerbWither ||
		w.ends && !w.green && rank >= vocabulary.StageRank(vocabulary.VerbKiln)
}

// left are statements that silence rules or move them, or stand beside others.
var left = []string{"accept", "limits", "use"}

// always are the statements without which nothing can be forecast.
var always = map[vocabulary.Block][]string{
	vocabulary.Process:   {"make", "from", "at", "steep", "germinate", "kiln"},
	vocabulary.Site:      {"air", "water", "humidity", "awake"},
	vocabulary.Vessel:    {"area"}, // grain may grow in it
	vocabulary.Germinate: {"hold", "until", "allow"},
	vocabulary.Wither:    {"air", "until", "allow"},
	vocabulary.Kiln:      {"dry"},
	vocabulary.Steep:     {"soak"},
	vocabulary.Repeat:    {"soak"},
}

func (w *writer) times(row *vocabulary.Row, in vocabulary.Block, depth int) int {
	switch {
	case row.Word == vocabulary.VerbAir && in == vocabulary.Germinate:
		return w.IntN(3)
	case row.Word == vocabulary.VerbAir && in == vocabulary.Wither: // of the room there is one
		return 1
	case row.Word == "humidity" && in != vocabulary.Site:
		return w.IntN(2)
	case in == vocabulary.KilnFacts:
		if n, ok := w.kilnFacts(row.Word); ok {
			return n
		}
		return w.IntN(2)
	case row.Word == vocabulary.FactAlready:
		return map[bool]int{true: 1}[w.green || w.malted]
	case in == vocabulary.Process && w.leftOut(row.Word):
		return 0
	case in == vocabulary.Process && row.Opens != vocabulary.None && slices.Contains(always[in], row.Word):
		return map[bool]int{true: 2, false: 1}[w.twice]
	case row.Needed || slices.Contains(always[in], row.Word):
		if row.Once || row.Needed {
			return 1
		}
		if in == vocabulary.Site {
			return 1 + w.IntN(2)
		}
		return 1 + w.IntN(1+w.most)/3
	case in == vocabulary.Site:
		return w.IntN(2)
	case in == vocabulary.Germinate && row.Word == "for" || in == vocabulary.Wither && row.Word == "for":
		return 0
	case row.Once || in == vocabulary.Process:
		return w.IntN(2)
	case row.Word == "repeat":
		if depth > 3 || w.most > 100 {
			return 0
		}
		return w.IntN(2)
	}
	return w.IntN(1+w.most) / 3
}
