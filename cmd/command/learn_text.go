package command

import (
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/quantity"
	"maltwright/sim/infer/learn"
)

// writeLearnText writes what was learnt, what could not be, how it does on batches that
// were held out, and the block.
func writeLearnText(w *World, l *lesson) error {
	p := sheet{World: w}
	p.pounds, p.fahrenheit = shownIn(l.Batches[0].Process)
	p.lessonHead(l)
	p.learntFactors(l)
	p.untold(l)
	p.heldOut(l)
	p.lessonBlock(l)
	if _, err := fmt.Fprint(w.Out, p.b.String()); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

func (p *sheet) lessonHead(l *lesson) {
	head := fmt.Sprintf("learnt from %s of %s", howMany(len(l.Batches), "batch", "batches"), words.Safe(processesOf(l.Batches)))
	for i, line := range words.Wrap(head+": "+words.Safe(names(l.Batches)), p.width()) {
		if i == 0 {
			line = p.bold(line)
		}
		p.line("%s", line)
	}
	if len(l.Replaces) > 0 {
		p.para("", "Of what house %s says already nothing was used: the new block is to replace it.", words.Safe(sentenceList(l.Replaces)))
	}
	p.line("")
}

const lessonRow = "%-34s%9s%9s%12s%8s%8s"

// learntFactors writes a line a factor. The error and the usual spread of one have the unit
// of its value.
func (p *sheet) learntFactors(l *lesson) {
	p.line("%s", p.bold(fmt.Sprintf(lessonRow, "", "value", "error", "usual", "told", "batches")))
	for _, f := range l.Factors {
		f = p.inUnits(f)
		value, off := l.figures(f)
		label := factorName(f)
		if f.Which == learn.Thermometer {
			label = "thermometer, " + p.differenceUnit()
			value = signedFigure(value)
		}
		label = words.Safe(label)
		if len([]rune(label)) > 33 {
			p.line("%s", label)
			label = ""
		}
		p.line(lessonRow, label, value, off, quantity.Rounded(f.Usual, 2)+" ± "+quantity.Rounded(f.Spread, 2), fmt.Sprintf("%.0f %%", 100*f.VarianceExplained), fmt.Sprint(f.Batches))
	}
	p.line("")
	p.para("value", "1 is the model as it stands, and more is faster; of the thermometer, how much more it shows than it is")
	p.para("told", "how much of what was open before the readings settle, and from how many batches")
}

// inUnits gives a factor in the units of the process.
func (p *sheet) inUnits(f learn.Factor) learn.Factor {
	if f.Which == learn.Thermometer && p.fahrenheit {
		f.Value, f.Error, f.Spread = fahrenheitStep*f.Value, fahrenheitStep*f.Error, fahrenheitStep*f.Spread
	}
	return f
}

const fahrenheitStep = 1.8 // °F in a kelvin

func (p *sheet) differenceUnit() string {
	if p.fahrenheit {
		return "°F"
	}
	return "°C"
}

func signedFigure(value string) string {
	if strings.HasPrefix(value, "-") || strings.Trim(value, "0.") == "" {
		return value
	}
	return "+" + value
}

// untold writes what the readings do not tell, and what tells it.
func (p *sheet) untold(l *lesson) {
	for _, f := range l.Factors {
		if !f.Known() {
			p.para("cannot tell", "%s: %.0f %% told is less than half, so it is not in the block. To know it, %s.", words.Safe(factorName(f)), 100*f.VarianceExplained, f.Learn)
		}
	}
	for _, a := range l.Correlated {
		of := ""
		if a.Of != nil {
			of = fmt.Sprintf(" (%s)", words.Safe(a.Of.Name))
		}
		p.para("one or other", "%s, or %s%s: the readings hardly tell them apart (errors correlated %.2f)", words.Safe(a.A), words.Safe(a.B), of, a.Correlation)
	}
}

const missRow = "%-34s%9s%12s%12s"

// heldOut writes how well batches foretell each other.
func (p *sheet) heldOut(l *lesson) {
	p.line("")
	if len(l.Batches) < 2 {
		p.para("held out", "whether what was learnt holds for another batch, only another batch can say: it takes two")
		return
	}
	p.line("%s", p.bold(fmt.Sprintf(missRow, "off, each batch by the others", "readings", "as learnt", "by model")))
	better, not := []string{}, []string{}
	for _, m := range p.misses(l) {
		n := digitsOf(m.model)
		p.line(missRow, m.label, fmt.Sprint(m.n), decimals(m.learnt, n), decimals(m.model, n))
		switch {
		case m.again:
		case m.learnt < m.model:
			better = append(better, m.name)
		default:
			not = append(not, m.name)
		}
	}
	p.line("")
	p.para("", "%s", verdict(better, not))
}

// verdict says in words whether what was learnt is better.
func verdict(better, not []string) string {
	switch {
	case len(better)+len(not) == 0:
		return "Nothing in the records lets a batch be foretold by the others."
	case len(not) == 0:
		return "What the others taught came nearer than the model as it stands in all of these."
	case len(better) == 0:
		return "What the others taught came no nearer than the model as it stands in any of these. Take the block with care: more batches may tell, or what differs is not of the house."
	}
	return fmt.Sprintf("What the others taught came nearer than the model as it stands in %s, but not in %s.", sentenceList(better), sentenceList(not))
}

// miss is one line of how far forecasts were off, as a root mean square.
type miss struct {
	name, label   string
	n             int
	learnt, model float64
	again         bool // the same readings as another line
}

func (p *sheet) misses(l *lesson) []miss {
	kilo, unit, degree := 1.0, "kg", 1.0
	if p.pounds {
		kilo, unit = 1/kilogramsPerPound, "lb"
	}
	if p.fahrenheit {
		degree = fahrenheitStep
	}
	shown := map[learn.Kind]struct {
		name, unit string
		scale      float64
	}{
		learn.Weights: {"weight", unit, kilo}, learn.Moistures: {"  moisture by it", "points", 100},
		learn.Acrospires: {"acrospire", "% of the corn", 100}, learn.Temperatures: {"temperature", p.differenceUnit(), degree},
	}
	var list []miss
	for _, m := range l.PredictionErrors {
		s := shown[m.Kind]
		list = append(list, miss{s.name, s.name + ", " + s.unit, m.Readings, s.scale * m.Learnt, s.scale * m.Model, m.Kind == learn.Moistures})
	}
	for _, what := range []learn.Span{learn.Germination, learn.ToDry} {
		if m := lasted(l.Durations, what); m.n > 0 {
			list = append(list, m)
		}
	}
	return list
}

// lasted sums up how far the plans of a span were off, in hours.
func lasted(all []learn.Duration, what learn.Span) miss {
	m := miss{name: "the hours of " + string(what), label: string(what) + ", h"}
	for _, x := range all {
		if x.What == what {
			m.n++
			m.learnt += math.Pow(hours(x.Learnt-x.Recorded), 2)
			m.model += math.Pow(hours(x.Model-x.Recorded), 2)
		}
	}
	m.learnt, m.model = math.Sqrt(m.learnt/float64(m.n)), math.Sqrt(m.model/float64(m.n))
	return m
}

// lessonBlock closes with the block, and where it goes.
func (p *sheet) lessonBlock(l *lesson) {
	p.line("")
	if !l.told() {
		p.para("no block", "the readings tell no figure well enough")
		return
	}
	for _, line := range strings.Split(strings.TrimRight(string(laid(l.block())), "\n"), "\n") {
		p.line("%s", safeLines(line))
	}
	p.line("")
	if l.seat.inside != "" {
		p.para("to use it", "write the block into %s, which defines what it names", words.Safe(l.seat.inside))
		return
	}
	beside := ""
	if l.seat.beside != "" {
		beside = " beside " + words.Safe(l.seat.beside)
	}
	p.para("to use it", `write it with --format malt into a file%s, such as learnt.malt, and use "learnt.malt" in %s`, beside, words.Safe(processesOf(l.Batches)))
}
