package text

import (
	"fmt"
	"io"
	"math"
	"strings"

	"maltwright/cmd/answer/trace"
	"maltwright/cmd/words"
	"maltwright/sim/seasons"
)

// Trace writes a lot from its delivery to malt, in the units of a house.
func Trace(w io.Writer, r trace.Result, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	head := words.Safe(r.Lot)
	if r.Species != "" {
		head += ", " + r.Species
	}
	s.line("%s", s.bold(head))
	if r.Store != "" {
		s.para("lies in", "%s", words.Safe(r.Store))
	}
	for _, d := range r.Deliveries {
		s.para("came in", "%s", s.delivery(d))
	}
	if len(r.Deliveries) == 0 {
		s.para("came in", "no delivery is written; write delivered 2.5 t on 2026-02-01 into the lot")
	}
	s.line("")
	s.traced(r)
	switch {
	case r.Overdrawn && r.Taken <= r.Delivered:
		s.para("left", "%s of %s, but more was taken before all had come in; look at the charges and the dates", words.Mass(h, r.Left), words.Mass(h, r.Delivered))
	case r.Overdrawn:
		s.para("left", "nothing: %s were taken, %s more than came in; look at the charges and the deliveries", words.Mass(h, r.Taken), words.Mass(h, r.Taken-r.Delivered))
	case !math.IsNaN(float64(r.Left)):
		s.para("left", "%s of %s", words.Mass(h, r.Left), words.Mass(h, r.Delivered))
	default:
		s.para("taken", "%s", words.Mass(h, r.Taken))
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// delivery says what came in, from whom, when and by which number.
func (s *Sheet) delivery(d trace.Delivery) string {
	text := words.Mass(s.House, d.Weight)
	for _, part := range []struct{ word, said string }{{"from", d.From}, {"on", d.On}, {"as", d.As}} {
		if part.said != "" {
			text += " " + part.word + " " + words.Safe(part.said)
		}
	}
	return text
}

// traced writes the batches, a line each, and below each what was found in its malt.
func (s *Sheet) traced(r trace.Result) {
	if len(r.Batches) == 0 {
		s.line("no batch of it among the records")
		s.line("")
		return
	}
	t := table{columns: []tableColumn{{head: "batch", key: true}, {head: "began", as: "began %s"}, {head: "charge", right: true, key: true}, {head: "malt", right: true, key: true}, {head: "left then", right: true, as: "left then: %s"}}}
	for i := range r.Batches {
		b := &r.Batches[i]
		began, left := words.None, ""
		if !b.Began.IsZero() {
			began = b.Began.Format("2006-01-02")
		}
		malt := words.None
		if b.Malt.Standing != seasons.Missing {
			malt = words.Mark(b.Malt.Standing) + words.Mass(s.House, b.Malt.Value)
		}
		switch rest := b.Rest(); {
		case rest < 0 && r.Overdrawn:
			left = words.Mass(s.House, -rest) + " short"
		case rest > 0:
			left = words.Mass(s.House, rest)
		case rest <= 0: // of a lot that never came in there is no saying
			left = "nothing"
		}
		t.add(clipped(words.Safe(b.Batch)), began, words.Mass(s.House, b.Charge), malt, left)
		if found := found(b); found != "" {
			t.below(found)
		}
	}
	t.lay(s)
	s.line("")
}

// found is what was found in the malt of a batch.
func found(b *trace.Batch) string {
	var list []string
	add := func(what string, f seasons.Figure, in words.Scale) {
		if f.Known() {
			list = append(list, fmt.Sprintf("%s %s%s %s", what, words.Mark(f.Standing), in.Write(f.Value), in.Unit))
		}
	}
	add("moisture", b.Moisture.Plain(), words.Shares)
	add("extract", b.Extract.Plain(), words.Shares)
	add("friability", b.Friability.Plain(), words.Shares)
	add("colour", b.Colour.Plain(), words.Colours)
	add("diastatic power", b.Diastatic.Plain(), words.Diastatics)
	add("beta-glucan", b.Glucan.Plain(), words.Dissolved)
	add("protein", b.Protein.Plain(), words.Shares)
	add("DON", b.DON.Plain(), words.Contents)
	add("NDMA", b.NDMA.Plain(), words.Traces)
	return strings.Join(list, ", ")
}
