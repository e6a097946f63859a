package text

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
)

// scatters writes by how much batches differ, where enough of them tell.
func (s *lessonSheet) scatters() {
	var list []string
	for _, f := range s.r.Factors {
		if f.Scatter != nil {
			_, by := words.Estimate(f.Value, *f.Scatter)
			list = append(list, words.Factor(f)+" by "+by)
		}
	}
	if list != nil {
		s.para("differ", "from batch to batch, as a standard deviation about the figure of the house: %s. A forecast allows for it, and the errors include it", words.Safe(strings.Join(list, ", ")))
	}
}

const (
	singleLabel = 14
	singleCell  = 13
	notTold     = "-"
)

// singles writes what each batch says by itself beside the house.
func (s *lessonSheet) singles() {
	if len(s.r.Singles) < 2 {
		return
	}
	s.line("")
	for columns := range slices.Chunk(s.singleColumns(), max(1, (s.columns()-singleLabel)/singleCell)) {
		s.singleRow("by itself", columns, func(c singleColumn) string { return c.word })
		if slices.ContainsFunc(columns, func(c singleColumn) bool { return c.of != "" }) {
			s.singleRow("", columns, func(c singleColumn) string { return fitted(words.Safe(c.of), singleCell-1) })
		}
		s.singleRow("  the house", columns, func(c singleColumn) string { return c.house })
		for i := range s.r.Singles {
			s.singleRow("  "+words.Safe(s.r.Singles[i].Batch), columns, func(c singleColumn) string { return c.batches[i] })
		}
		s.line("")
	}
	s.para("by itself", "the figures from the readings of one batch alone, with the standard error; - where they say too little. The house has what all have in common, the lot its uptake, husk-water and chit, the kiln its drying; "+
		"the weather, the raw moisture and the place in its bands are each batch's own. A batch may differ from the house by its own error, by weather that nobody read, and because batches differ: "+
		"the forecast of the next batch uses the house")
}

// singleColumn is one figure by the house and by each batch.
type singleColumn struct {
	singleKey
	house   string
	batches []string
}

// singleKey is what a column is of: of which kiln only where a batch has several, since a batch
// has one lot, and each its own.
type singleKey struct{ word, of string }

func (s *lessonSheet) singleColumns() []singleColumn {
	var list []singleColumn
	for _, key := range s.singleKeys() {
		c := singleColumn{singleKey: key, house: s.ofHouse(key)}
		for _, x := range s.r.Singles {
			c.batches = append(c.batches, s.ofSingle(x, key))
		}
		list = append(list, c)
	}
	return list
}

const thermometerWord = "thermometer"

// singleKeys are the figures that some batch tells of.
func (s *lessonSheet) singleKeys() []singleKey {
	var list []singleKey
	add := func(key singleKey) {
		if !slices.Contains(list, key) {
			list = append(list, key)
		}
	}
	for _, f := range s.r.Factors {
		key := singleKey{word: f.Factor}
		if f.Of != nil && slices.ContainsFunc(s.r.Singles, func(x lessons.Single) bool { return hasSeveral(x, f.Factor) }) {
			key.of = *f.Of
		}
		add(key)
	}
	if s.r.Thermometer != nil {
		add(singleKey{word: thermometerWord})
	}
	return slices.DeleteFunc(list, func(key singleKey) bool {
		return !slices.ContainsFunc(s.r.Singles, func(x lessons.Single) bool { return s.ofSingle(x, key) != notTold })
	})
}

// hasSeveral tells whether a batch has several figures of a word.
func hasSeveral(x lessons.Single, word string) bool {
	count := 0
	for _, f := range x.Factors {
		if f.Factor == word {
			count++
		}
	}
	return count > 1
}

// is tells whether a figure belongs to the column.
func (k singleKey) is(word string, of *string) bool {
	return k.word == word && (k.of == "" || of != nil && *of == k.of)
}

// ofHouse is a figure of the house; nothing where it has several, of several lots or kilns.
func (s *lessonSheet) ofHouse(key singleKey) string {
	if t := s.r.Thermometer; t != nil && key.word == thermometerWord {
		return s.warmer(t.Value, t.Error)
	}
	out := ""
	for _, f := range s.r.Factors {
		if !key.is(f.Factor, f.Of) {
			continue
		}
		if out != "" {
			return "several"
		}
		out = plusMinus(f.Value, f.Error)
	}
	return out
}

func (s *lessonSheet) ofSingle(x lessons.Single, key singleKey) string {
	if t := x.Thermometer; t != nil && t.Told && key.word == thermometerWord {
		return s.warmer(t.Value, t.Error)
	}
	for _, f := range x.Factors {
		if key.is(f.Factor, f.Of) && f.Told {
			return plusMinus(f.Value, f.Error)
		}
	}
	return notTold
}

func (s *lessonSheet) warmer(value, off answer.Kelvin) string {
	step := answer.Kelvin(s.Step())
	return plusMinus(step*value, step*off)
}

// plusMinus writes a value and its error in nine columns or ten.
func plusMinus[T ~float64](value, off T) string { return fmt.Sprintf("%.2f±%.2f", value, off) }

func (s *lessonSheet) singleRow(label string, columns []singleColumn, cell func(singleColumn) string) {
	var b strings.Builder
	fmt.Fprintf(&b, "%-*s", singleLabel, fitted(label, singleLabel-1))
	for _, c := range columns {
		fmt.Fprintf(&b, "%*s", singleCell, cell(c))
	}
	line := b.String()
	if label == "by itself" {
		line = s.bold(line)
	}
	s.line("%s", line)
}
