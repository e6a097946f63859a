package command

import (
	"fmt"
	"io"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/infer/learn"
)

// writeLearnMalt writes a file with the house block.
func writeLearnMalt(w *World, l *lesson) error {
	if !l.told() {
		fmt.Fprintln(w.Err, "maltwright: no block to write: the readings tell no figure well enough; maltwright learn says of each why")
		return nil
	}
	if l.seat.inside != "" {
		fmt.Fprintf(w.Err, "maltwright: put this block into %s, which defines what it names\n", words.Safe(l.seat.inside))
	}
	text := string(l.file())
	if w.Terminal {
		text = safeLines(text)
	}
	if _, err := io.WriteString(w.Out, text); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

// file is the block as a file of its own, with the files that it needs.
func (l *lesson) file() []byte {
	var b strings.Builder
	for _, line := range l.saying() {
		for _, part := range words.Wrap(words.Safe(line), 78) {
			fmt.Fprintf(&b, "# %s\n", part)
		}
	}
	for _, path := range l.seat.uses {
		fmt.Fprintf(&b, "use %s\n", inQuotes(path))
	}
	return laid(b.String() + "\n" + l.block())
}

// saying is what stands at the head of the file.
func (l *lesson) saying() []string {
	list := []string{fmt.Sprintf("Learnt from %s of %s.", names(l.Batches), processesOf(l.Batches))}
	for _, f := range l.Factors {
		if !f.Known() {
			list = append(list, fmt.Sprintf("Left out, since the readings tell too little of it: %s.", factorName(f)))
		}
	}
	if len(l.Replaces) > 0 {
		list = append(list, fmt.Sprintf("In place of %s, of which nothing was used.", "house "+sentenceList(l.Replaces)))
	}
	if l.seat.inside != "" {
		list = append(list, "This belongs into the file that defines the lots and kilns: "+l.seat.inside+".")
	}
	return list
}

// block is the house block, which says only what the readings tell.
func (l *lesson) block() string {
	var b strings.Builder
	fmt.Fprintf(&b, "house %s {\n", inQuotes(l.name))
	for _, f := range l.Factors {
		if !f.Known() {
			continue
		}
		unit := ""
		if f.Which == learn.Thermometer {
			unit = " °C"
		}
		value, off := l.figures(f)
		fmt.Fprintf(&b, "%s %s%s error %s%s%s\n", f.Which, value, unit, off, unit, ofWhat(f, inQuotes))
	}
	b.WriteString("}\n")
	return b.String()
}

// figures are the value and the error of a factor, with as many digits as the error
// gives a meaning.
func (l *lesson) figures(f learn.Factor) (value, off string) {
	n := digitsOf(f.Error)
	return decimals(f.Value, n), decimals(f.Error, n)
}

// digitsOf is how many decimals show two digits of an error.
func digitsOf(off float64) int {
	if !(off > 0) || math.IsInf(off, 0) {
		return 2
	}
	n := 1 - int(math.Floor(math.Log10(off)))
	if n > 0 && rounded(off, n) >= math.Pow(10, float64(2-n)) { // 0.0996 is 0.10
		n--
	}
	return max(0, n)
}

// ofWhat says of which lot or kiln a factor is, as a clause.
func ofWhat(f learn.Factor, write func(string) string) string {
	switch {
	case f.Grain != nil:
		return " of " + write(f.Grain.Name)
	case f.Kiln != nil:
		return " of " + write(f.Kiln.Name)
	}
	return ""
}

// factorName is the factor as it is told.
func factorName(f learn.Factor) string {
	return string(f.Which) + ofWhat(f, func(name string) string { return fmt.Sprintf("%q", name) })
}

func inQuotes(text string) string { return layout.Term(syntax.Text{Value: text}) }

// laid lays a text out as tidy does.
func laid(text string) []byte {
	tree, _ := syntax.Parse(source.New("", []byte(text)))
	return layout.Write(tree)
}
