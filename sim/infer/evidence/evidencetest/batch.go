// Package evidencetest writes the record of a batch that never was: a forecast of a lot,
// a house and weather that are known, seen with the scatter that scales,
// thermometers and counting have. It is for tests, and for the records among the
// examples.
package evidencetest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// Truth is what the record does not say.
type Truth struct {
	Options forecast.Options
	Offset  float64 // K, by how much the thermometer shows more than it is
	Sample  float64 // moisture of the raw grain, wet basis, as its sample shows it; 0 for none
	Changes []model.Change
	Scatter float64 // of the readings, as a part of what the evidence takes; 0 is 1
	Logger  *Logger // in the bed; nil for none
	Home    bool    // read in °F and weighed in pounds, together with what it lies in where the house says what that weighs
}

// Batch is an invented batch: its record, and how it really went.
type Batch struct {
	Text     string // the batch block
	Lines    []Line // of the block, without began and sample
	Began    time.Time
	Forecast *forecast.Forecast // the truth
}

// Line is one reading and when it was made.
type Line struct {
	At    float64 // s from the first soak, at a full minute
	Text  string  // without its time
	First bool    // of its stage
}

// Errors of reading, as the evidence takes them.
const (
	dripping, dry, clean = 0.012, 0.008, 0.015
	bed, other           = 1.0, 2.0 // K
	grown                = 0.05     // of a mean length, kernels apart
)

const hour = 3600.0

// Of invents the batch of a process.
func Of(p *model.Process, name string, began time.Time, truth Truth, seed uint64) (*Batch, error) {
	o := truth.Options
	o.Course = &forecast.Course{Changes: truth.Changes}
	plan, err := forecast.Run(p, o)
	if err != nil {
		return nil, err
	}
	w := &writer{rand: rand.New(rand.NewPCG(seed, 1)), truth: truth, scatter: truth.Scatter, began: began}
	if w.scatter == 0 {
		w.scatter = 1
	}
	w.plan(plan)
	sorted.Stable(w.asked, func(a, b ask) int { return int(a.at - b.at) })
	for _, a := range w.asked {
		o.Course.Looks = append(o.Course.Looks, a.at)
	}
	seen, err := forecast.Run(p, o)
	if err != nil {
		return nil, err
	}
	b := &Batch{Began: began, Forecast: plan}
	var stage model.StageKind
	for i, a := range w.asked[:len(seen.Seen)] {
		s := &seen.Seen[i]
		line := Line{At: a.at, Text: a.tell(s)}
		if !strings.Contains(line.Text, " after ") { // what is weighed at its end belongs to the stage
			line.First = stage != "" && s.Stage != stage && s.Stage != model.DeculmStage
			stage = s.Stage
		}
		b.Lines = append(b.Lines, line)
	}
	b.Text = Record(name, p.Name, began, truth.Sample, b.Lines)
	return b, nil
}

// Record writes the batch block of some lines.
func Record(name, of string, began time.Time, sample float64, lines []Line) string {
	var b strings.Builder
	fmt.Fprintf(&b, "batch %q of %q {\n  began  %s\n", name, of, began.Format("2006-01-02 15:04"))
	if sample > 0 {
		fmt.Fprintf(&b, "  sample 20.00 g dried to %.2f g\n", 20*(1-sample))
	}
	b.WriteString("\n")
	last := began
	for _, l := range lines {
		at, form := began.Add(time.Duration(l.At)*time.Second), "15:04"
		if at.YearDay() != last.YearDay() {
			form = "2006-01-02 15:04"
		}
		last = at
		if l.First {
			b.WriteString("\n")
		}
		text, after, ok := strings.Cut(l.Text, " after ")
		if ok {
			after = " after " + after
		}
		fmt.Fprintf(&b, "  %s at %s%s\n", text, at.Format(form), after)
	}
	b.WriteString("}\n")
	return b.String()
}

// ask is a look at a time, and what is written of it.
type ask struct {
	at   float64
	tell func(*forecast.Sight) string
}

type writer struct {
	rand  *rand.Rand
	truth Truth
	asked []ask

	scatter float64
	began   time.Time
	kilns   int           // onto which the malt comes
	in      *model.Holder // what the grain lies in during the step that is planned
}

func (w *writer) add(at float64, tell func(*forecast.Sight) string) {
	w.asked = append(w.asked, ask{60 * math.Round(at/60), tell})
}

// plan says what is read when.
func (w *writer) plan(f *forecast.Forecast) {
	number := map[string]int{}
	w.kilns = len(f.Kilns)
	for _, st := range f.Stages {
		for i := range st.Steps {
			s := &st.Steps[i]
			kind := string(s.Kind)
			if kind == "" || kind == string(model.HoldStep) {
				kind = string(st.Kind)
			}
			number[kind]++
			w.step(kind, number[kind], s, st)
		}
	}
}

func (w *writer) step(kind string, n int, s *forecast.Step, st forecast.Stage) {
	w.in = model.HolderOf(st.Of)
	switch kind {
	case "soak":
		w.thermometer(s.Start+60, "water", 0.7)
		w.weigh(s.End, fmt.Sprintf(" after soak %d", n), dripping)
	case "germinate":
		w.floor(s)
		w.logged(s)
		w.weigh(s.End, " after germinate", dry)
	case "wither":
		w.thermometer((s.Start+s.End)/2, "room", other)
		w.weigh(s.End, " after wither", dry)
	case "dry":
		w.thermometer(s.Start+0.75*hour, "air-off", other)
		w.thermometer(s.Start+2.5*hour, "air-off", other)
		w.weigh(s.End, fmt.Sprintf(" after dry %d", n), dry)
	case "cure":
		w.cure(s, st)
	case "cool":
		if w.kilns > 1 { // it goes to the next kiln, or comes from one
			w.weigh(s.End, fmt.Sprintf(" after cool %d", n), dry)
		}
	case "deculm":
		w.in = nil
		w.weigh(s.End, " clean malt", clean)
	}
}

// cure is what is read of a cure. On trays in an oven the malt is weighed in the midst of it.
func (w *writer) cure(s *forecast.Step, st forecast.Stage) {
	if forecast.InStillOven(st.Of) {
		w.thermometer(s.Start+hour, "oven", other)
		w.weigh((s.Start+s.End)/2, "", dry)
	} else {
		w.thermometer(s.Start+hour, "air-on", other)
	}
	w.weigh(s.End, " after cure", dry)
}

// floor is what is read on the floor: turned three times a day, the thermometer
// before, and kernels looked at each morning from the third day on.
func (w *writer) floor(s *forecast.Step) {
	w.add(w.next(s.Start, 7), w.chit)
	clocks := []float64{6.5, 14.5, 22}
	if w.truth.Home {
		clocks[0] = 7
	}
	for _, clock := range clocks {
		for at := w.next(s.Start+4*hour, clock); at < s.End-hour; at += 24 * hour {
			w.thermometer(at-600, "bed", bed)
			w.add(at, func(*forecast.Sight) string { return "turned" })
		}
	}
	for at := w.next(s.Start+40*hour, 8); at < s.End-6*hour; at += 24 * hour {
		w.add(at, w.acrospires)
		w.add(at+300, w.rub)
	}
	w.add(s.End-1200, w.acrospires)
	w.add(s.End-600, w.rub)
}

// next is when the clock next shows an hour.
func (w *writer) next(from, clock float64) float64 {
	start := float64(w.began.Hour()) + float64(w.began.Minute())/60
	return from + hour*math.Mod(clock-math.Mod(start+from/hour, 24)+24, 24)
}

func (w *writer) about(v, sd float64) float64 { return v + w.scatter*sd*w.rand.NormFloat64() }

func (w *writer) weigh(at float64, after string, relative float64) {
	in := w.in
	w.add(at, func(s *forecast.Sight) string {
		kg := w.about(s.Weight, relative*s.Weight)
		if !w.truth.Home {
			return fmt.Sprintf("weighed %.2f kg%s", kg, after)
		}
		if gross, known := in.With(kg); known {
			return fmt.Sprintf("weighed %s in %q%s", pounds(gross), in.Name, after)
		}
		return "weighed " + pounds(kg) + after
	})
}

// pounds writes a weight in pounds and tenths of an ounce.
func pounds(kg float64) string {
	const ounce = 0.028349523125 // kg
	tenths := int(math.Round(10 * kg / ounce))
	return fmt.Sprintf("%d lb %d.%d oz", tenths/160, tenths%160/10, tenths%10)
}

func (w *writer) thermometer(at float64, place string, sd float64) {
	w.add(at, func(s *forecast.Sight) string {
		t := w.about(s.Temperature(place)+w.truth.Offset, sd)
		if w.truth.Home {
			return fmt.Sprintf("read %s %.0f °F", place, 32+1.8*t)
		}
		return fmt.Sprintf("read %s %.1f °C", place, t)
	})
}

func (w *writer) chit(s *forecast.Sight) string {
	share, n := min(max(w.about(s.Chit, 0.04), 0), 1), 0
	for range 100 {
		if w.rand.Float64() < share {
			n++
		}
	}
	return fmt.Sprintf("counted chit %d of 100", n)
}

func (w *writer) rub(s *forecast.Sight) string {
	return "felt rub " + grain.RubAt(w.about(s.Modification, 0.03)).String()
}

// acrospires draws a hundred kernels from the classes, all of them a little longer or
// shorter than they are, as one eye is stricter than another.
func (w *writer) acrospires(s *forecast.Sight) string {
	var counts [len(s.Classes)]int
	shift := w.about(0, grown) / 0.25 // classes
	for range 100 {
		at, k := w.rand.Float64(), 0
		for sum := s.Classes[0]; k < len(counts)-1 && at > sum; sum += s.Classes[k] {
			k++
		}
		if k > 0 && w.rand.Float64() < math.Abs(shift) {
			k = min(max(k+int(math.Copysign(1, shift)), 1), len(counts)-1)
		}
		counts[k]++
	}
	return "counted acrospire" + strings.TrimRight(strings.ReplaceAll(fmt.Sprint(counts), "[", " "), "]")
}
