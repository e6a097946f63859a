package read

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// telling is what was read of a process that somebody tells of.
type telling struct {
	steep, kiln          []string // their steps, as statements
	charge, bed, turn    string
	growth, moisture     string
	fahrenheit           bool
	last                 string // the kind of step that was told last
	kilned, grown, cured bool
}

func (t *telling) steps() int {
	n := len(t.steep) + len(t.kiln)
	if t.grown {
		n++
	}
	return n
}

var (
	parting  = regexp.MustCompile(`[,;!?\n]|\.(?:\s|$)|(?i:\bthen\b|\bagain\b)`)
	measured = regexp.MustCompile(`(?i)(\d+(?:\.\d+|/\d+)?(?:\s*(?:-|–|to)\s*\d+(?:\.\d+)?)?)\s*(°\s?[CF]\b|deg(?:rees?)?\s*[CF]\b|[CF]\b|hours?\b|hrs?\b|h\b|minutes?\b|mins?\b|days?\b|d\b|weeks?\b|kg\b|lbs?\b|pounds?\b|g\b|oz\b|%)`)
	daily    = regexp.MustCompile(`(?i)\b(?:(once|twice|thrice)|(\d)\s*(?:x|times))\s*(?:a|per|each|every|/)\s*day\b`)
	aTime    = regexp.MustCompile(`(?i)\bfor\s+(?:a|an|one)\s+(day|week|hour)\b`)
)

// tellingOf reads what a file tells, phrase by phrase.
func tellingOf(f *source.File) *telling {
	t := &telling{}
	text := f.Text(source.Span{Start: f.Start(), End: f.Size()})
	t.fahrenheit = regexp.MustCompile(`\d\s*(?:°|deg\w*)?\s*F\b|\blbs?\b`).MatchString(text)
	text = aTime.ReplaceAllString(text, "for 1 $1")
	for _, phrase := range parting.Split(text, -1) {
		t.phrase(strings.TrimLeft(strings.TrimSpace(phrase), "#-*•0123456789.) "), phrase)
	}
	return t
}

// values are those of a phrase, by what they are of.
func valuesIn(phrase string) (times, warmths, weights, shares []string) {
	for _, m := range measured.FindAllStringSubmatch(phrase, -1) {
		number, unit := strings.NewReplacer("–", " to ", "-", " to ").Replace(m[1]), m[2]
		number = strings.Join(strings.Fields(number), " ")
		if last := unit[len(unit)-1]; strings.ContainsRune("CFcf", rune(last)) && (len(unit) == 1 || strings.Contains(strings.ToLower(unit), "deg") || strings.HasPrefix(unit, "°")) {
			unit = "°" + strings.ToUpper(string(last))
		}
		_, high, _ := strings.Cut(" to "+number, " to ")
		if _, end, both := strings.Cut(high, " to "); both {
			high = end
		}
		q, ok := dimensionOf(high + " " + unit)
		value := number + " " + q.Unit()
		switch {
		case !ok:
		case q.Dimension == quantity.Time:
			times = append(times, value)
		case q.Dimension == quantity.Temperature:
			warmths = append(warmths, value)
		case q.Dimension == quantity.Mass:
			weights = append(weights, value)
		case q.Dimension == quantity.Share:
			shares = append(shares, value)
		}
	}
	return times, warmths, weights, shares
}

func (t *telling) phrase(said, whole string) {
	times, warmths, weights, shares := valuesIn(whole)
	if len(weights) > 0 && t.charge == "" {
		t.charge = weights[0]
	}
	if len(shares) > 0 && t.moisture == "" && strings.Contains(strings.ToLower(said), "moist") {
		t.moisture = shares[0]
	}
	steps := t.stepsOf(said, times, warmths)
	for i, step := range steps {
		t.step(step, said, nth(times, i), nth(warmths, i))
	}
}

func nth(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return ""
}

// stepsOf are the steps that a phrase tells of.
func (t *telling) stepsOf(said string, times, warmths []string) (list []string) {
	lower := strings.ToLower(said)
	for _, word := range strings.FieldsFunc(lower, func(r rune) bool { return r == ' ' || r == '\t' || r == ':' }) {
		if step, ok := vocabulary.Told(word); ok && !slices.Contains(list, step) {
			list = append(list, step)
		}
	}
	if len(list) > 0 || len(times) == 0 {
		return list
	}
	switch {
	case strings.Contains(lower, vocabulary.PlaceWater):
		return []string{vocabulary.VerbSoak}
	case strings.Contains(lower, vocabulary.PlaceAir):
		return []string{vocabulary.VerbRest}
	case len(warmths) > 0:
		return []string{t.byWarmth(warmths[0])}
	}
	return nil
}

// leastCure and leastDry are above what malt is dried at and what grain grows at.
var (
	leastCure, _ = quantity.Parse("68 °C")
	leastDry, _  = quantity.Parse("32 °C")
)

// byWarmth is the step that a warmth alone tells of.
func (t *telling) byWarmth(warmth string) string {
	_, high, both := strings.Cut(warmth, " to ")
	if !both {
		high = warmth
	}
	switch q, ok := dimensionOf(high); {
	case ok && q.SI > leastCure.SI:
		return vocabulary.VerbCure
	case ok && q.SI > leastDry.SI:
		return vocabulary.VerbDry
	case t.grown || len(t.steep) == 0:
		return t.last
	}
	return vocabulary.VerbGerminate
}

func (t *telling) step(step, said, time, warmth string) {
	switch step {
	case vocabulary.VerbSoak, vocabulary.VerbRest:
		if time == "" {
			return
		}
		in := map[string]string{vocabulary.VerbSoak: "in water", vocabulary.VerbRest: "in air"}[step]
		t.steep = append(t.steep, strings.TrimSpace(fmt.Sprintf("%s %s %s%s", step, time, in, behind(" at ", warmth))))
	case vocabulary.VerbGerminate:
		t.grown, t.growth, t.bed = true, orElse(time, t.growth), orElse(warmth, t.bed)
	case vocabulary.VerbTurn:
		t.turn = orElse(turning(said, time), t.turn)
	case vocabulary.VerbDry, vocabulary.VerbCure:
		if t.kilned && !t.cured && len(t.kiln) > 0 && warmth != "" && t.byWarmth(warmth) == vocabulary.VerbCure {
			step = vocabulary.VerbCure
		}
		t.kilned, t.cured = true, t.cured || step == vocabulary.VerbCure
		t.kiln = append(t.kiln, fmt.Sprintf("%s at air-on %s for %s", step, warmth, time))
	}
	t.last = step
}

func behind(word, value string) string {
	if value == "" {
		return ""
	}
	return word + value
}

// turning is how often is turned, by what is said of it.
func turning(said, time string) string {
	m := daily.FindStringSubmatch(said)
	switch {
	case m == nil:
		return time
	case m[1] != "":
		return map[string]string{"once": "24 h", "twice": "12 h", "thrice": "8 h"}[strings.ToLower(m[1])]
	case m[2] >= "1":
		return fmt.Sprintf("%g h", 24/float64(m[2][0]-'0'))
	}
	return time
}

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
		`kiln "my oven" { area 8 ft2; airflow 60 cfm; reaches 85 to 200 °F; heater 2 kW; fired electric }`}},
}

const notSaid = "  # not said: this is usual, write yours"

// file is what was told as a file: the lines as comments, and below them the process.
func (t *telling) file(f *source.File) string {
	u := usuals[0]
	if t.fahrenheit {
		u = usuals[1]
	}
	said := func(value, usual string) (string, string) {
		if value != "" {
			return value, ""
		}
		return usual, notSaid
	}
	var b strings.Builder
	for n := 1; n <= f.Lines(); n++ {
		if line := strings.TrimSpace(f.Text(f.Line(n))); line != "" {
			fmt.Fprintf(&b, "# %s\n", strings.TrimLeft(line, "# "))
		}
	}
	fmt.Fprintf(&b, "\n# The house: none of this was said. Write what is so with you.\n")
	fmt.Fprintf(&b, "grain \"my barley\" { species barley; moisture 12 %%; germination 95 %% of 200 kernels; kernel-weight %s; treated no; ergot none; mould none }\n", u.kernels)
	fmt.Fprintf(&b, "%s\n", strings.Join(u.house, "\n"))
	charge, why := said(t.charge, u.charge)
	fmt.Fprintf(&b, "\nprocess \"My malt\" {\n  make pale malt%s\n  from %s of \"my barley\"%s\n  at \"my house\"\n\n", notSaid, charge, why)
	moisture, why := said(t.moisture, "42 to 46 %")
	fmt.Fprintf(&b, "  steep in \"my bucket\" to moisture %s {%s\n", moisture, why)
	steep, why := t.steep, ""
	if len(steep) == 0 {
		steep, why = []string{"soak 8 h in water", "rest 8 h in air", "soak 8 h in water"}, notSaid
	}
	for _, step := range steep {
		fmt.Fprintf(&b, "    %s%s\n", step, why)
	}
	bed, why := said(t.bed, u.bed)
	fmt.Fprintf(&b, "  }\n\n  germinate on \"my tray\" {\n    hold bed at %s%s\n", bed, why)
	turn, why := said(t.turn, "8 h")
	fmt.Fprintf(&b, "    turn every %s%s\n", turn, why)
	growth, why := said(t.growth, "5 days")
	fmt.Fprintf(&b, "    for %s%s\n  }\n\n  kiln in \"my oven\" {\n", growth, why)
	for _, step := range t.kilning(u) {
		fmt.Fprintf(&b, "    %s\n", step)
	}
	fmt.Fprintf(&b, "    cool to malt %s%s\n  }\n\n  deculm within 12 h%[2]s\n  store in \"my jar\" for at least 3 weeks%[2]s\n}\n", u.cool, notSaid)
	return b.String()
}

// kilning are the steps of the kiln, with what is usual where they do not say how warm or how long.
func (t *telling) kilning(u usual) (list []string) {
	steps := t.kiln
	if len(steps) == 0 {
		steps = []string{"dry at air-on  for ", "cure at air-on  for "}
	}
	for _, step := range steps {
		dry, why := strings.HasPrefix(step, vocabulary.VerbDry), ""
		warm, long := u.cure, "4 h"
		if dry {
			warm, long = u.dry, "24 h"
		}
		if strings.Contains(step, "air-on  for") {
			step, why = strings.Replace(step, "air-on  for", "air-on "+warm+" for", 1), notSaid
		}
		if strings.HasSuffix(step, " for ") {
			step, why = step+long, notSaid
		}
		list = append(list, step+why)
	}
	return list
}
