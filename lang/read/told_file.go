package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// usual is what is written of what was not told.
type usual struct {
	charge, kernels, bed, dry, cure, cool string
	house                                 []string // the blocks of the house, but for the grain
}

// usuals are so in °C and kg, and in °F and lb.
var usuals = [2]usual{
	{"5 kg", "44 g", "14 to 18 °C", "50 °C", "80 °C", "30 °C", []string{
		`site "my house" { air 12 to 18 °C; humidity 50 to 80 %; water 10 to 14 °C; altitude 100 m; awake 06:30 to 22:30 }`,
		`vessel "my bucket" { holds 30 l }`, `floor "my tray" { area 1 m2 }`,
		`kiln "my oven" { area 0.8 m2; airflow 100 m3/h; reaches 30 to 95 °C; heater 2 kW; fired electric }`}},
	{"10 lb", "1.55 oz", "58 to 64 °F", "120 °F", "180 °F", "86 °F", []string{
		`site "my house" { air 54 to 64 °F; humidity 50 to 80 %; water 50 to 57 °F; altitude 300 ft; awake 06:30 to 22:30 }`,
		`vessel "my bucket" { holds 8 gal-us }`, `floor "my tray" { area 10 ft2 }`,
		`kiln "my oven" { area 8 ft2; airflow 60 cfm; reaches 85 to 200 °F; heater 2000 W; fired electric }`}},
}

const notSaid = "  # not said: this is usual, write yours"

// toldLine is a line of the process with what is to be known of it.
type toldLine struct {
	t    *telling
	why  []string
	text string
}

// kept notes of a range of which one end is written that it was one.
func (l *toldLine) kept(i *toldItem) {
	if i != nil && i.beyond != "" {
		l.why = append(l.why, i.beyond+" was said")
		l.t.ranges = append(l.t.ranges, i.said)
		i.beyond = ""
	}
}

func (l *toldLine) usual(value, usual, what string) string {
	if value != "" {
		return value
	}
	l.why = append(l.why, what+" was not said: this is usual, write yours")
	return usual
}

func (l *toldLine) String() string {
	if len(l.why) == 0 {
		return l.text
	}
	return l.text + "  # " + strings.Join(l.why, "; ")
}

// warm gives a temperature as it is written, and notes that its scale was not said.
func (l *toldLine) warm(i *toldItem, one bool) string {
	if i == nil {
		return ""
	}
	i.used = true
	text := l.t.inDegrees(i, one)
	l.kept(i)
	if i.warm {
		l.why = append(l.why, "°C or °F was not said")
		l.t.guessed = append(l.t.guessed, text)
	}
	return text
}

func (l *toldLine) one(i *toldItem) string {
	text := i.one()
	l.kept(i)
	return text
}

// steepStep is a soak or a rest.
func (t *telling) steepStep(s *toldStep) string {
	l := &toldLine{t: t}
	in, usual := " in water", "8 h"
	if s.step == vocabulary.VerbRest {
		in = " in air"
	}
	l.text = s.step + " " + l.usual(l.one(s.time), usual, "how long") + in + behind(" at ", l.warm(s.warm, false))
	return l.String()
}

// kilnStep is a step in the kiln.
func (t *telling) kilnStep(s *toldStep, u usual) string {
	l := &toldLine{t: t}
	warm, long := u.cure, "4 h"
	if s.step == vocabulary.VerbDry {
		warm, long = u.dry, "24 h"
	}
	l.text = s.step + " at air-on " + l.usual(l.warm(s.warm, false), warm, "how warm")
	time := l.one(s.time)
	if time != "" || s.until == nil {
		l.text += " for " + l.usual(time, long, "how long")
	}
	if s.until != nil {
		l.text += " until moisture at most " + l.one(s.until)
		if time == "" {
			l.text += " allow 4 to 36 h"
			l.why = append(l.why, "4 to 36 h was not said: this is usual, write yours")
		}
	}
	return l.String()
}

func behind(word, value string) string {
	if value == "" {
		return ""
	}
	return word + value
}

// growing are the statements of the germination.
func (t *telling) growing(u usual) (list []string) {
	add := func(l *toldLine) { list = append(list, l.String()) }
	var total quantity.Quantity
	for _, s := range t.growth {
		l := &toldLine{t: t}
		l.text = "hold bed at " + l.usual(l.warm(s.warm, false), u.bed, "how warm")
		if len(t.growth) > 1 {
			time := l.usual(l.one(s.time), "1 day", "how long")
			l.text += " for " + time
			q, _ := quantity.Parse(time)
			total.SI += q.SI
		}
		add(l)
	}
	if len(t.growth) == 0 {
		list = append(list, "hold bed at "+u.bed+notSaid)
	}
	turn := &toldLine{t: t}
	turn.text = "turn every " + turn.usual(turn.one(t.turn), "8 h", "how often")
	if t.turn != nil && t.turn.daily {
		turn.why = append(turn.why, t.turn.said+" was said")
	}
	add(turn)
	acrospire := t.acrospire.all()
	long := &toldLine{t: t}
	switch {
	case len(t.growth) > 1:
		long.text = fmt.Sprintf("for %g h", total.SI/3600)
	case len(t.growth) == 1 && acrospire != "" && t.growth[0].time != nil && strings.Contains(t.growth[0].time.value, " to "):
		long.text = "allow " + t.growth[0].time.all()
	case len(t.growth) == 1 && acrospire != "" && t.growth[0].time == nil:
		long.text = "allow 3 to 8 days" + notSaid
	case len(t.growth) == 1:
		long.text = "for " + long.usual(long.one(t.growth[0].time), "5 days", "how long")
	default:
		long.text = "for 5 days" + notSaid
	}
	add(long)
	if acrospire != "" {
		list = append(list, "until acrospire at least "+acrospire)
	}
	return list
}

// file is what was told as a file: the lines as comments, and below them the process.
func (t *telling) file(f *source.File) string {
	u := usuals[0]
	if t.fahrenheit {
		u = usuals[1]
	}
	var b strings.Builder
	for n := 1; n <= f.Lines(); n++ {
		if line := strings.TrimSpace(f.Text(f.Line(n))); line != "" {
			fmt.Fprintf(&b, "# %s\n", strings.TrimLeft(line, "# "))
		}
	}
	put := func(in int, line string) { fmt.Fprintf(&b, "%s%s\n", strings.Repeat("  ", in), line) }
	put(0, "\n# The house: none of this was said. Write what is so with you.")
	lot := &toldLine{t: t}
	moisture := orElse(lot.one(t.grain), "12 %")
	lot.text = fmt.Sprintf("grain \"my barley\" { species barley; moisture %s; germination 95 %% of 200 kernels; kernel-weight %s; %s }", moisture, u.kernels, t.poisonFacts())
	put(0, lot.String())
	put(0, strings.Join(u.house, "\n"))
	put(0, "\nprocess \"My malt\" {\n  make pale malt"+notSaid)
	from := &toldLine{t: t}
	from.text = "from " + from.usual(from.one(t.charge), u.charge, "how much") + " of \"my barley\""
	put(1, from.String())
	put(1, "at \"my house\"\n")
	steep := &toldLine{t: t}
	steep.text = "steep in \"my bucket\" to moisture " + steep.usual(t.moisture.all(), "42 to 46 %", "the moisture") + " {"
	put(1, steep.String())
	for _, s := range t.steep {
		put(2, t.steepStep(s))
	}
	if len(t.steep) == 0 {
		for _, s := range []string{"soak 8 h in water", "rest 8 h in air", "soak 8 h in water"} {
			put(2, s+notSaid)
		}
	}
	put(1, "}\n\n  germinate on \"my tray\" {")
	for _, s := range t.growing(u) {
		put(2, s)
	}
	put(1, "}\n")
	for _, s := range t.wither {
		l := &toldLine{t: t}
		l.text = "wither on \"my tray\" { for " + l.usual(l.one(s.time), "12 h", "how long") + behind("; air at ", l.warm(s.warm, false)) + " }"
		put(1, l.String()+"\n")
	}
	put(1, "kiln in \"my oven\" {")
	if len(t.wither) == 0 && (len(t.kiln) == 0 || t.kiln[0].step == vocabulary.VerbCure) {
		put(2, "dry at air-on "+u.dry+" for 24 h"+notSaid) // wet malt is not put into the heat of a cure
	}
	for _, s := range t.kiln {
		put(2, t.kilnStep(s, u))
	}
	if len(t.kiln) == 0 {
		put(2, "cure at air-on "+u.cure+" for 4 h"+notSaid)
	}
	cool := &toldLine{t: t}
	cool.text = "cool to malt " + cool.usual(cool.warm(t.cool, true), u.cool, "how cool")
	put(2, cool.String())
	put(1, "}\n\n  deculm within 12 h"+notSaid)
	store := &toldLine{t: t}
	store.text = "store in \"my jar\" for at least " + store.usual(store.one(t.store), "3 weeks", "how long")
	put(1, store.String())
	put(0, "}")
	return b.String()
}

// notUsed lists what of the text stands in no line of the process, by its own words. It is
// known once the process is written.
func (t *telling) notUsed() []string {
	list := slices.Compact(t.unused)
	for _, c := range t.conditions {
		if !slices.ContainsFunc(c.items, func(i *toldItem) bool { return i.used }) {
			list = append(list, c.said)
			for _, i := range c.items {
				i.used = true // it is listed
			}
		}
	}
	for n, i := range t.items {
		if i.word != "" || i.used {
			continue
		}
		from, to := n, n
		for from > 0 && n-from < 2 && t.items[from-1].word != "" && t.items[from-1].from < t.items[from].from {
			from--
		}
		for to+1 < len(t.items) && to-n < 1 && t.items[to+1].word != "" && t.items[to+1].from > t.items[to].from {
			to++
		}
		var words []string
		for _, w := range t.items[from : to+1] {
			words = append(words, w.said)
		}
		list = append(list, strings.Join(words, " "))
	}
	return list
}
