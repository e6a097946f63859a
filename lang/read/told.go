package read

import (
	"fmt"
	"regexp"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// How it works
//
// The text is parted into phrases, and each phrase into words and numbers (told_values.go). A word
// of a step begins a step; the numbers beside it are its time and its temperature. What stands
// without a step fills the step before it that lacks it. Every number goes into the process or is
// listed as not used, by its own words; so does every condition.

// toldStep is one step as it was told.
type toldStep struct {
	step       string
	said       string // the phrase
	time, warm *toldItem
	until      *toldItem // a moisture
	any        bool      // its word is that of any step in a kiln
	bare       bool      // its word stood alone, as the head of a stage does
}

// telling is what was read of a process that somebody tells of.
type telling struct {
	steep, kiln, growth, wither []*toldStep

	charge, moisture, grain, acrospire, turn, cool, store *toldItem

	fahrenheit bool
	scaled     bool // the text says in which degrees
	last       *toldStep
	items      []*toldItem
	conditions []toldCondition
	unused     []string
	ranges     []string // of which the lower end is written
	guessed    []string // temperatures of which the degrees were not said

	poison map[string]string // what is said of each poison of the lot
}

func (t *telling) steps() int {
	return len(t.steep) + len(t.kiln) + len(t.growth) + len(t.wither)
}

var (
	parting   = regexp.MustCompile(`[;!?]|,(?:\D|$)|\.(?:\s|$)|(?i:\bthen\b)`)
	listed    = regexp.MustCompile(`^[\s#>*•-]*\(?(\d+)\s*(?:[.):]\s|-\s+\pL)`)
	dayOf     = regexp.MustCompile(`(?i)^[\s#>*•-]*((?:days?|weeks?|nights?|morning|evening)\s+\d+(?:\s*(?:-|–|to|and)\s*\d+)?)\b`)
	stepOf    = regexp.MustCompile(`(?i)^[\s#>*•-]*((?:step|stage|phase|part|no\.?)\s+\d+)\b`)
	ofDegrees = regexp.MustCompile(`\d\s*(?:°|º|(?i:deg)\w*)?\s*([CF])\b|(?i:\b(celsius|fahrenheit)\b)`)
	inPounds  = regexp.MustCompile(`(?i)\d\s*(?:lbs?|pounds?|oz|gallons?)\b|\blbs?\b`)
)

// tellingOf reads what a file tells, phrase by phrase.
func tellingOf(f *source.File) *telling {
	t := &telling{}
	text := f.Text(source.Span{Start: f.Start(), End: f.Size()})
	m := ofDegrees.FindStringSubmatch(text)
	t.scaled = m != nil
	t.fahrenheit = m != nil && (m[1] == "F" || strings.EqualFold(m[2], "fahrenheit")) || m == nil && inPounds.MatchString(text)
	t.poisons(text)
	last := "0"
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\r\n")
		if m := listed.FindStringSubmatchIndex(line); m != nil && line[m[2]:m[3]] == nextNumber(last) {
			last = line[m[2]:m[3]]
			line = line[m[3]+1:]
		}
		if m := stepOf.FindStringSubmatchIndex(line); m != nil {
			line = line[m[3]:]
		} else if m := dayOf.FindStringSubmatchIndex(line); m != nil {
			t.unused = append(t.unused, line[m[2]:m[3]])
			line = line[m[3]:]
		}
		t.line(inFigures(line))
	}
	t.settle()
	return t
}

func nextNumber(last string) string {
	var n int
	_, _ = fmt.Sscan(last, &n)
	return fmt.Sprint(n + 1)
}

func (t *telling) line(line string) {
	at := 0
	for at <= len(line) {
		end, next := len(line), len(line)+1
		if m := parting.FindStringIndex(line[at:]); m != nil {
			end, next = at+m[0], at+m[1]
			if line[end] == ',' {
				next = end + 1
			}
		}
		if phrase := strings.TrimSpace(line[at:end]); phrase != "" {
			t.phrase(phrase)
		}
		at = next
	}
}

// toldGroup is a step with the numbers that stand beside it, while they are read.
type toldGroup struct {
	toldStep
	weak string // of water or of air
}

func (t *telling) phrase(said string) {
	items := itemsOf(said)
	group := &toldGroup{}
	begin := func() {
		t.closed(group, said)
		group = &toldGroup{}
	}
	condition, conditioned := 0, false
	known := len(t.items)
	t.items = append(t.items, items...)
	before := ""
	for n, i := range items {
		switch {
		case vocabulary.ToldEnd(i.word) || i.word == "once" && n > 0:
			condition, conditioned = i.from, true
		case i.word != "":
			step, ok := vocabulary.Told(i.word)
			noun := vocabulary.ToldNoun(before)
			switch {
			case conditioned || ok && noun && step != vocabulary.VerbTurn:
			case i.word == vocabulary.VerbCool || i.word == "cooling" || i.word == vocabulary.VerbStore || i.word == "age":
				begin()
				group.step = map[bool]string{true: vocabulary.VerbStore, false: vocabulary.VerbCool}[i.word == vocabulary.VerbStore || i.word == "age"]
			case ok && group.step != "" && group.time == nil && group.warm == nil && (group.step == step || inKiln(group.step) && inKiln(step)):
				group.step, group.any = step, group.any && anyKilning(i.word)
			case ok:
				if group.step != "" || group.time != nil && group.warm != nil && len(items) > n+1 && step == vocabulary.VerbTurn {
					begin()
				}
				group.step, group.any, group.bare = step, anyKilning(i.word), len(items) == 1
				if strings.HasPrefix(i.word, vocabulary.VerbWither) {
					group.step = vocabulary.VerbWither
				}
			case i.word == vocabulary.PlaceWater || i.word == vocabulary.PlaceAir:
				group.weak = orElse(group.weak, i.word)
			}
			before = i.word
			continue
		case i.value == "":
		case i.part && (strings.Contains(strings.ToLower(said), "acro") || strings.Contains(strings.ToLower(said), "length")) && t.acrospire == nil:
			t.acrospire = i
		case i.part || i.dim == quantity.Number && !i.warm:
		case i.dim == quantity.Mass && t.charge == nil && !conditioned && !inKiln(lastStep(t)):
			t.charge = i
		case i.dim == quantity.Share:
			t.share(i, said, group)
		case i.dim == quantity.Time && (i.daily || vocabulary.EachOne(before)):
			if t.turn == nil && (group.step == vocabulary.VerbTurn || group.step == "" && t.last != nil && t.last.step == vocabulary.VerbTurn) {
				t.turn = i
			}
		case i.dim == quantity.Time && !conditioned || i.dim == quantity.Time && group.time == nil:
			if group.time != nil {
				begin()
			}
			group.time = i
		case i.dim == quantity.Temperature && !conditioned:
			if group.warm != nil {
				begin()
			}
			group.warm = i
		}
		before = ""
	}
	t.closed(group, said)
	t.conditionOf(said, condition, conditioned, known)
}

// toldCondition is what ends a step, as it was told, with its numbers.
type toldCondition struct {
	said  string
	items []*toldItem
}

// conditionOf keeps a condition, so that it is listed where no number of it is used.
func (t *telling) conditionOf(said string, from int, is bool, known int) {
	if !is {
		return
	}
	c := toldCondition{said: said[from:]}
	for _, i := range t.items[known:] {
		if i.word == "" && i.from > from {
			c.items = append(c.items, i)
		}
	}
	t.conditions = append(t.conditions, c)
}

func inKiln(step string) bool { return step == vocabulary.VerbDry || step == vocabulary.VerbCure }

// anyKilning tells of a word whether it says nothing of how warm.
func anyKilning(word string) bool {
	return strings.HasPrefix(word, vocabulary.VerbKiln) || strings.HasPrefix(word, "bake") || strings.HasPrefix(word, "dehydr")
}

func lastStep(t *telling) string {
	if t.last == nil {
		return ""
	}
	return t.last.step
}

// share reads a moisture: of the lot, of the steep, or of a step in the kiln.
func (t *telling) share(i *toldItem, said string, group *toldGroup) {
	q, err := quantity.Parse(i.value[strings.LastIndex(i.value, " to ")+1+3*min(1, strings.Count(i.value, " to ")):])
	switch {
	case err != nil:
	case inKiln(group.step) && group.until == nil && q.SI < 0.5:
		group.until = i
	case t.moisture == nil && len(t.growth)+len(t.kiln) == 0 && q.SI > 0.3 && q.SI < 0.55:
		t.moisture = i
	case t.grain == nil && t.steps() == 0 && group.step == "" && q.SI > 0.06 && q.SI < 0.2 && strings.Contains(strings.ToLower(said), "moist"):
		t.grain = i
	}
}

// closed takes a group into the process.
func (t *telling) closed(g *toldGroup, said string) {
	s := &g.toldStep
	s.said = said
	last := lastStep(t)
	if s.step == "" && g.weak != "" && s.time != nil && len(t.kiln) == 0 {
		s.step = map[string]string{vocabulary.PlaceWater: vocabulary.VerbSoak, vocabulary.PlaceAir: vocabulary.VerbRest}[g.weak]
	}
	if s.step == "" {
		if s.time == nil && s.warm == nil || t.filled(s) {
			return
		}
		if s.warm == nil || s.time == nil {
			return // not used
		}
		s.any = true
		if s.step = t.byWarmth(s.warm); s.step == "" {
			return
		}
	}
	if last == s.step && t.last.time == nil && t.last.warm == nil && t.last.until == nil && t.filled(s) {
		return // "Steep: soak 8 h"
	}
	if inKiln(s.step) && inKiln(last) && t.last.bare && t.last.any && len(t.kiln) > 0 && t.last.time == nil && t.last.warm == nil {
		t.kiln = t.kiln[:len(t.kiln)-1] // the head of the stage
	}
	switch s.step {
	case vocabulary.VerbSoak, vocabulary.VerbRest:
		switch {
		case len(t.kiln) > 0 && s.step == vocabulary.VerbRest && t.store == nil && s.time != nil:
			t.store = s.time
		case len(t.growth)+len(t.kiln)+len(t.wither) == 0:
			t.steep = append(t.steep, s)
		default:
			t.unused = append(t.unused, said)
			return
		}
	case vocabulary.VerbGerminate:
		if len(t.kiln) > 0 || len(t.wither) > 0 {
			return
		}
		t.growth = append(t.growth, s)
	case vocabulary.VerbTurn:
		if s.time != nil && t.turn == nil {
			t.turn = s.time
		}
	case vocabulary.VerbCool:
		if s.warm != nil && t.cool == nil && len(t.kiln) > 0 {
			t.cool = s.warm
		}
	case vocabulary.VerbStore:
		if s.time != nil && t.store == nil && len(t.kiln) > 0 {
			t.store = s.time
		}
	case vocabulary.VerbWither:
		if len(t.kiln) > 0 {
			t.unused = append(t.unused, said)
			return
		}
		t.wither = append(t.wither, s)
	default:
		t.kiln = append(t.kiln, s)
	}
	t.last = s
}

// filled puts what stands without a step of its own into the step before it, which lacks it.
func (t *telling) filled(s *toldStep) bool {
	l := t.last
	if l == nil || s.time != nil && l.time != nil || s.warm != nil && l.warm != nil {
		return false
	}
	steeping := l.step == vocabulary.VerbSoak || l.step == vocabulary.VerbRest
	if steeping && l.time != nil || l.step == vocabulary.VerbTurn {
		return false // water at 13 °C may be of all soaks
	}
	if s.step == "" && s.warm != nil && s.time != nil && !inKiln(l.step) && t.byWarmth(s.warm) != l.step && !steeping {
		return false
	}
	if s.time != nil {
		l.time = s.time
	}
	if s.warm != nil {
		l.warm = s.warm
	}
	if l.until == nil {
		l.until = s.until
	}
	if s.step != "" {
		l.bare = false
	}
	return true
}

// leastCure and leastDry are above what malt is dried at and what grain grows at.
var (
	leastCure, _ = quantity.Parse("68 °C")
	leastDry, _  = quantity.Parse("32 °C")
)

// byWarmth is the step that a warmth alone tells of, behind the steps so far.
func (t *telling) byWarmth(warmth *toldItem) string {
	value := t.inDegrees(warmth, false)
	if _, high, both := strings.Cut(value, " to "); both {
		value = high
	}
	switch q, err := quantity.Parse(value); {
	case err == nil && q.SI > leastCure.SI:
		return vocabulary.VerbCure
	case err == nil && q.SI > leastDry.SI:
		return vocabulary.VerbDry
	case len(t.kiln) > 0:
		return vocabulary.VerbDry
	case len(t.growth) > 0 || len(t.steep) > 0:
		return vocabulary.VerbGerminate
	}
	return ""
}

// inDegrees gives a temperature in its degrees: those of the text where it says of none.
func (t *telling) inDegrees(i *toldItem, one bool) string {
	if i == nil {
		return ""
	}
	was := *i
	if was.warm {
		was.value += map[bool]string{true: " °F", false: " °C"}[t.fahrenheit]
	}
	if !one {
		return was.value
	}
	low := was.one()
	i.beyond = was.beyond
	return low
}

// warmest above which a temperature is in °F: of water and growing grain, and of a kiln, °C.
const (
	warmestGrowing = 35
	warmestKiln    = 115
)

// settle finds the degrees of temperatures that were told without, and what each step in the kiln is.
func (t *telling) settle() {
	for _, list := range [][]*toldStep{t.steep, t.growth, t.kiln} {
		for _, s := range list {
			if s.warm == nil || !s.warm.warm || t.scaled {
				continue
			}
			low, _, _ := strings.Cut(s.warm.value, " ")
			q, err := quantity.Parse(low)
			if limit := map[bool]float64{true: warmestKiln, false: warmestGrowing}[inKiln(s.step)]; err == nil && q.SI > limit {
				t.fahrenheit = true
			}
		}
	}
	for n, s := range t.kiln {
		if s.warm == nil {
			continue
		}
		by := t.byWarmth(s.warm)
		if s.any || n > 0 && by == vocabulary.VerbCure && s.step == vocabulary.VerbDry {
			s.step = by
		}
	}
	if len(t.steep) > 1 && t.steep[0].bare && t.steep[0].time == nil && t.steep[0].warm == nil {
		t.steep = t.steep[1:] // the head of the stage
	}
	if len(t.steep) == 1 && t.steep[0].bare && t.steep[0].time == nil {
		t.steep = nil
	}
}
