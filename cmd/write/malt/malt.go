// Package malt writes answers in the language itself, laid out as tidy does.
package malt

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// House writes a house block, which says only what the readings tell, in the units of the
// house.
func House(h lessons.House, in words.House) []byte { return laid(block(h, in)) }

func block(h lessons.House, in words.House) string {
	var b strings.Builder
	fmt.Fprintf(&b, "house %s {\n", quoted(h.Name))
	for _, f := range h.Factors {
		value, off := words.Estimate(f.Value, f.Error)
		of := ""
		if f.Of != nil {
			of = " of " + quoted(*f.Of)
		}
		scatter := ""
		if f.Scatter != nil {
			_, by := words.Estimate(f.Value, *f.Scatter)
			scatter = " scatter " + by
		}
		fmt.Fprintf(&b, "%s %s error %s%s%s%s\n", f.Factor, value, off, scatter, rests(f.Rests()), of)
	}
	if t := h.Thermometer; t != nil {
		step := answer.Kelvin(in.Step())
		value, off := words.Estimate(step*t.Value, step*t.Error)
		fmt.Fprintf(&b, "thermometer %s %s error %s %s%s\n", value, in.Degree(), off, in.Degree(), rests(t.Rests()))
	}
	b.WriteString("}\n")
	return b.String()
}

// rests is the clause of how many batches a figure rests on.
func rests(batches int) string {
	if batches == 0 {
		return ""
	}
	return fmt.Sprintf(" batches %d", batches)
}

// noteWidth is how wide the notes at the head of a file are.
const noteWidth = 78

// Lessons writes what was learnt as a file of its own: notes, the files that it needs,
// and the block. Where there is no block it writes nothing.
func Lessons(r lessons.Result, in words.House) []byte {
	if r.House == nil {
		return nil
	}
	var b strings.Builder
	for _, line := range notes(r) {
		for _, part := range words.Wrap(words.Safe(line), noteWidth) {
			fmt.Fprintf(&b, "# %s\n", part)
		}
	}
	for _, path := range r.Seat.Uses {
		fmt.Fprintf(&b, "use %s\n", quoted(path))
	}
	return laid(b.String() + "\n" + block(*r.House, in))
}

// notes are what stands at the head of the file.
func notes(r lessons.Result) []string {
	list := []string{fmt.Sprintf("Learnt from %s of %s.", words.Batches(r.Batches), words.Processes(r.Batches))}
	if r.From != nil {
		list = append(list, fmt.Sprintf("It goes on from house %s, of older batches.", *r.From))
	}
	for _, f := range r.Factors {
		if !f.Known {
			list = append(list, untold(words.Factor(f)))
		}
	}
	if t := r.Thermometer; t != nil && !t.Known {
		list = append(list, untold("thermometer"))
	}
	if len(r.Replaces) > 0 {
		list = append(list, fmt.Sprintf("In place of house %s, of which nothing was used.", words.List(r.Replaces)))
	}
	if in := r.Seat.Inside; in != nil {
		list = append(list, "This belongs into the file that defines the lots and kilns: "+words.InsideOf(*in)+".")
	}
	return list
}

func untold(factor string) string {
	return fmt.Sprintf("Left out, since the readings tell too little of it: %s.", factor)
}

func quoted(text string) string { return layout.Term(syntax.Text{Value: text}) }

// laid lays a text out as tidy does.
func laid(text string) []byte {
	tree, _ := syntax.Parse(source.New("", []byte(text)))
	return layout.Write(tree)
}
