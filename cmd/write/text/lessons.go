package text

import (
	"fmt"
	"io"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
	"maltwright/cmd/write/malt"
	"maltwright/lang/quantity"
)

// Lessons writes what was learnt, what could not be, how it does on batches that were
// held out, and the block.
func Lessons(w io.Writer, r lessons.Result, h words.House, o Options) error {
	s := &lessonSheet{Sheet{House: h, Options: o}, r}
	s.head()
	s.factors()
	s.untold()
	s.singles()
	s.heldOut()
	s.block()
	_, err := io.WriteString(w, s.String())
	return err
}

type lessonSheet struct {
	Sheet
	r lessons.Result
}

func (s *lessonSheet) head() {
	head := fmt.Sprintf("learnt from %s of %s", words.Many(len(s.r.Batches), "batch", "batches"), words.Safe(words.Processes(s.r.Batches)))
	for i, line := range words.Wrap(head+": "+words.Safe(words.Batches(s.r.Batches)), s.columns()) {
		if i == 0 {
			line = s.bold(line)
		}
		s.line("%s", line)
	}
	if s.r.From != nil {
		s.para("", "It goes on from the figures of house %s, learnt from older batches, with their errors.", words.Safe(*s.r.From))
	}
	if len(s.r.Replaces) > 0 {
		s.para("", "It did not use the figures of house %s: the new block replaces them.", words.Safe(words.List(s.r.Replaces)))
	}
	s.line("")
}

// labelWidth is how wide the name of a figure is.
const labelWidth = 33

// factors writes a line a factor.
func (s *lessonSheet) factors() {
	t := table{columns: []tableColumn{{head: "learnt", key: true, least: labelWidth}, {head: "value", right: true, key: true}, {head: "error", right: true, key: true}, {head: "usual", right: true, as: "usual %s"}, {head: "settled", right: true, as: "settled to %s"}, {head: "batches", right: true, as: "by %s of the batches"}},
		say: func(c []string) string {
			return fmt.Sprintf("%s: %s ± %s; usual %s, settled to %s, by %s of the batches", c[0], c[1], c[2], c[3], c[4], c[5])
		}}
	for _, f := range s.r.Factors {
		value, off := words.Estimate(f.Value, f.Error)
		t.add(words.Safe(words.Factor(f)), value, off, usual(f.Prior, f.PriorSD), words.Part(f.VarianceExplained), fmt.Sprint(f.Rests()))
	}
	if x := s.r.Thermometer; x != nil {
		degree := answer.Kelvin(s.Step())
		value, off := words.Estimate(degree*x.Value, degree*x.Error)
		t.add("thermometer, "+s.Degree(), words.Signed(value), off, usual(x.Prior, degree*x.PriorSD), words.Part(x.VarianceExplained), fmt.Sprint(x.Rests()))
	}
	t.lay(&s.Sheet)
	s.line("")
	s.para("value", "1 is the plain model, and more is faster; for husk-water, more water; for the thermometer, how much too warm it shows")
	s.para("settled", "the share of what was unknown that the readings settle, and from how many batches")
	s.scatters()
}

func usual[T ~float64](value, sd T) string {
	places := 2
	if sd >= 1 { // of a thermometer in °F
		places = 1
	}
	return quantity.Rounded(float64(value), places) + " ± " + quantity.Rounded(float64(sd), places)
}

// untold writes what the readings do not tell, and what tells it.
func (s *lessonSheet) untold() {
	for _, f := range s.r.Factors {
		cannotTell(s, words.Factor(f), f.Estimate)
	}
	if t := s.r.Thermometer; t != nil {
		cannotTell(s, "thermometer", *t)
	}
	for _, p := range s.r.Correlated {
		of := ""
		if p.Batch != nil {
			of = fmt.Sprintf(" (%s)", words.Safe(*p.Batch))
		}
		s.para("one or other", "%s, or %s%s: the readings hardly separate the two (errors correlated %.2f)", s.Say(p.A), s.Say(p.B), of, p.Correlation)
	}
}

func cannotTell[T answer.Figure](s *lessonSheet, label string, e lessons.Estimate[T]) {
	if !e.Known {
		s.para("cannot tell", "%s: the readings settle %s, less than half, so it is not in the block. To know it, %s.", words.Safe(label), words.Part(e.VarianceExplained), s.Say(e.Learn))
	}
}

// heldOut writes how well batches foretell each other.
func (s *lessonSheet) heldOut() {
	s.line("")
	if s.r.PredictionErrors == nil {
		s.para("held out", "only another batch can show whether the figures hold for it: that takes two batches")
		return
	}
	t := table{columns: []tableColumn{{head: "off, each batch by the others", key: true, least: labelWidth}, {head: "readings", right: true, as: "of %s readings"}, {head: "as learnt", right: true, key: true}, {head: "by model", right: true, key: true}},
		say: func(c []string) string {
			return fmt.Sprintf("%s: %s as learnt, %s by model, of %s readings", strings.TrimSpace(c[0]), c[2], c[3], c[1])
		}}
	var better, not []string
	for _, m := range s.misses(s.r.PredictionErrors) {
		n := words.Places(m.model)
		t.add(m.label, fmt.Sprint(m.count), quantity.Fixed(m.learnt, n), quantity.Fixed(m.model, n))
		switch {
		case m.name == "": // the same readings as the line above
		case m.learnt < m.model:
			better = append(better, m.name)
		default:
			not = append(not, m.name)
		}
	}
	t.lay(&s.Sheet)
	s.line("")
	s.para("", "%s", words.Verdict(better, not))
}

// miss is one line of how far off batches were, in the units that are shown.
type miss struct {
	name          string // in a sentence; "" where it is not told of there
	label         string
	count         int
	learnt, model float64
}

func (s *lessonSheet) misses(h *lessons.PredictionErrors) (list []miss) {
	mass, perKilogram := s.Mass()
	list = addMiss(list, h.Weight, "weight", "weight, "+mass, perKilogram)
	list = addMiss(list, h.Moisture, "", "  moisture by it, points", 100)
	list = addMiss(list, h.Acrospire, "acrospire", "acrospire, % of the kernel", 100)
	list = addMiss(list, h.Temperature, "temperature", "temperature, "+s.Degree(), s.Step())
	list = addMiss(list, h.Germination, "the hours of germination", "germination, h", perSecond)
	return addMiss(list, h.Drying, "the hours of drying", "drying, h", perSecond)
}

// perSecond is the hours in one of SI.
const perSecond = 1.0 / 3600

// addMiss adds a line, with so many of the unit that is shown in one of SI.
func addMiss[T answer.Single](list []miss, e *lessons.RMSE[T], name, label string, scale float64) []miss {
	if e == nil {
		return list
	}
	return append(list, miss{name, label, e.Count, scale * float64(e.Learnt), scale * float64(e.Model)})
}

// block closes with the block, and where it goes.
func (s *lessonSheet) block() {
	s.line("")
	if s.r.House == nil {
		s.para("no block", "the readings give no figure well enough")
		return
	}
	for _, line := range strings.Split(strings.TrimRight(string(malt.House(*s.r.House, s.House)), "\n"), "\n") {
		s.line("%s", words.SafeLines(line))
	}
	s.line("")
	if in := s.r.Seat.Inside; in != nil {
		s.para("to use it", "write the block into %s, which defines the names in it", words.Safe(words.InsideOf(*in)))
		return
	}
	beside := ""
	if s.r.Seat.Beside != "" {
		beside = " beside " + words.Safe(s.r.Seat.Beside)
	}
	s.para("to use it", `write it with --format malt into a file%s, such as learnt.malt, and use "learnt.malt" in %s`, beside, words.Safe(words.Processes(s.r.Batches)))
}
