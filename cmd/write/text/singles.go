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
		s.para("differ", "from batch to batch, as a standard deviation about the figure of the house: %s. A forecast leaves that much room, and the errors have it in them", words.Safe(strings.Join(list, ", ")))
	}
}

const (
	singleLabel = 14
	singleCell  = 13
	singleCells = 5 // of a line of 80 columns
	notTold     = "-"
)

// singles writes what each batch says by itself beside the house.
func (s *lessonSheet) singles() {
	if len(s.r.Singles) < 2 {
		return
	}
	s.line("")
	for columns := range slices.Chunk(s.singleColumns(), singleCells) {
		s.singleRow("by itself", columns, func(c singleColumn) string { return c.word })
		s.singleRow("  the house", columns, func(c singleColumn) string { return c.house })
		for i := range s.r.Singles {
			s.singleRow("  "+words.Safe(s.r.Singles[i].Batch), columns, func(c singleColumn) string { return c.batches[i] })
		}
		s.line("")
	}
	s.para("by itself", "what the readings of a batch say without the others, with the standard error; - where they tell too little. The house has what all have in common, the lot its uptake, husk-water and chit, the kiln its drying; "+
		"the weather, the raw moisture and where in its bands it was held are each batch's own. A batch may lie off the house by its own error, by weather that nobody read, and because batches differ: "+
		"a forecast of the next one goes by the house")
}

// singleColumn is one figure by the house and by each batch.
type singleColumn struct {
	word, house string
	batches     []string
}

func (s *lessonSheet) singleColumns() []singleColumn {
	var list []singleColumn
	for _, word := range s.singleWords() {
		c := singleColumn{word: word, house: s.ofHouse(word)}
		for _, x := range s.r.Singles {
			c.batches = append(c.batches, s.ofSingle(x, word))
		}
		list = append(list, c)
	}
	return list
}

const thermometerWord = "thermometer"

// singleWords are the figures that some batch tells of.
func (s *lessonSheet) singleWords() []string {
	var list []string
	add := func(word string) {
		if !slices.Contains(list, word) {
			list = append(list, word)
		}
	}
	for _, f := range s.r.Factors {
		add(f.Factor)
	}
	if s.r.Thermometer != nil {
		add(thermometerWord)
	}
	return slices.DeleteFunc(list, func(word string) bool {
		return !slices.ContainsFunc(s.r.Singles, func(x lessons.Single) bool { return s.ofSingle(x, word) != notTold })
	})
}

// ofHouse is a figure of the house; nothing where it has several, of several lots or kilns.
func (s *lessonSheet) ofHouse(word string) string {
	if t := s.r.Thermometer; t != nil && word == thermometerWord {
		return s.warmer(t.Value, t.Error)
	}
	out := ""
	for _, f := range s.r.Factors {
		if f.Factor == word && out != "" {
			return "several"
		}
		if f.Factor == word {
			out = plusMinus(f.Value, f.Error)
		}
	}
	return out
}

func (s *lessonSheet) ofSingle(x lessons.Single, word string) string {
	if t := x.Thermometer; t != nil && t.Told && word == thermometerWord {
		return s.warmer(t.Value, t.Error)
	}
	for _, f := range x.Factors {
		if f.Factor == word && f.Told {
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
