package read

import (
	"regexp"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// toldItem is a word or a number of a phrase that somebody tells of a process.
type toldItem struct {
	said string // as it stands there
	word string // in small letters; "" for a number

	value  string // in the language, "" where its unit is none of those that a process is told in
	beyond string // of a range of which one end is written: the whole of it
	dim    quantity.Dimension
	warm   bool // a temperature of which the scale was not said
	daily  bool // how often a day: value is the time between
	part   bool // a share as a fraction: 3/4
	used   bool
	from   int // where it stands in the phrase
	to     int
}

const (
	toldNumber = `(?:\d+\s+\d/\d+|\d+/\d+|\d+(?:\.\d+)?)`
	toldUnit   = `(?:[°º]\s?[CF]\b|deg(?:rees?)?\.?\s*(?:[CF]\b|celsius|fahrenheit)|celsius\b|fahrenheit\b|[CF]\b|[°º]|deg(?:rees?)?\b|hours?\b|hrs?\b|h\b|minutes?\b|mins?\b|days?\b|d\b|weeks?\b|wks?\b|kgs?\b|kilos?\b|lbs?\b|pounds?\b|grams?\b|g\b|oz\b|ounces?\b|%|percent\b|per cent\b)`
)

var (
	decimalComma = regexp.MustCompile(`(\d),(\d{1,2})(\D|$)`)
	toldDaily    = regexp.MustCompile(`(?i)^(?:(once|twice|thrice)|(\d+)\s*(?:x|times))\s*(?:a|per|each|every|/)\s*day\b`)
	toldClock    = regexp.MustCompile(`(?i)^(?:\d{1,2}:\d{2}(?:\s*[ap]\.?m\b\.?)?|\d{1,2}\s*[ap]\.?m\b\.?)`)
	toldValue    = regexp.MustCompile(`(?i)^(` + toldNumber + `)(?:\s*(?:-|–|—|to|or)\s*(` + toldNumber + `))?[\s-]*(` + toldUnit + `)`)
	toldBetween  = regexp.MustCompile(`(?i)^between\s+(` + toldNumber + `)\s+and\s+(` + toldNumber + `)\s*(` + toldUnit + `)`)
	toldBare     = regexp.MustCompile(`^(\d+(?:[.,:/]\d+)*)(?:\s*(?:-|–|—|to)\s*(\d+(?:\.\d+)?))?`)
	toldWord     = regexp.MustCompile(`^\pL+(?:['’]\pL+)?`)
	toldSame     = regexp.MustCompile(`(?i)^\s*(?:-|–|—|to)\s*$`)
	toldWarmFor  = regexp.MustCompile(`(?i)(?:\bat|@)\s*(?:about\s+|around\s+|~\s*)?$`)
	toldWarmTill = regexp.MustCompile(`(?i)^\s*(?:$|[),.]|(?:for|over|until|till|and)\b)`)
	belowNought  = regexp.MustCompile(`(?:^|[\s(])[-−]$|±\s*$`)
	halves       = regexp.MustCompile(`(\d?)\s*([½¼¾])`)
	numberWords  = regexp.MustCompile(`(?i)\b(half an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)[\s-]+((?:more\s+)?(?:hours?|days?|weeks?|times|pounds?|kilos?|minutes?|degrees)\b)`)
	inNumbers    = map[string]string{"half a": "1/2", "half an": "1/2", "a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6",
		"seven": "7", "eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12"}
	shortened = regexp.MustCompile(`\b((?i:hrs?|mins?|wks?|lbs?|deg|approx|abt|ca))\.(\s*[a-z@,;])`)
	perDay    = regexp.MustCompile(`(?i)\b(per|each|every|times|once|twice|thrice|x)\s+a\s+day\b`)
	quarters  = regexp.MustCompile(`(?i)\bthree[\s-]quarters?\b`)
)

// inFigures writes the numbers of a text in figures, each in one piece: eight hours, 13,5 °C, 1½ h.
func inFigures(text string) string {
	text = decimalComma.ReplaceAllString(text, "$1.$2$3")
	text = halves.ReplaceAllStringFunc(text, func(s string) string {
		m := halves.FindStringSubmatch(s)
		return strings.TrimSpace(m[1] + " " + map[string]string{"½": "1/2", "¼": "1/4", "¾": "3/4"}[m[2]])
	})
	text = shortened.ReplaceAllString(text, "$1$2")
	text = quarters.ReplaceAllString(text, "3/4")
	text = perDay.ReplaceAllString(text, "$1 per day")
	return numberWords.ReplaceAllStringFunc(text, func(s string) string {
		m := numberWords.FindStringSubmatch(s)
		return inNumbers[strings.ToLower(m[1])] + " " + strings.TrimPrefix(m[2], "more ")
	})
}

// itemsOf are the words and the numbers of a phrase, in their order.
func itemsOf(phrase string) (list []*toldItem) {
	for at := 0; at < len(phrase); {
		rest := phrase[at:]
		var i *toldItem
		switch m := toldWord.FindString(rest); {
		case toldDaily.MatchString(rest):
			i = dailyItem(rest)
		case toldBetween.MatchString(rest):
			m := toldBetween.FindStringSubmatch(rest)
			i = valueItem(m[0], m[1], m[2], m[3])
		case m != "":
			i = &toldItem{said: m, word: strings.ToLower(m)}
		case rest[0] < '0' || rest[0] > '9':
			at++
			continue
		default:
			i = numberItem(phrase[:at], rest)
		}
		i.from, i.to = at, at+len(i.said)
		list = append(list, i)
		at = i.to
	}
	return joinedItems(phrase, list)
}

func dailyItem(rest string) *toldItem {
	m := toldDaily.FindStringSubmatch(rest)
	i := &toldItem{said: m[0], daily: true}
	times, kind := quantity.Parse(orElse(m[2], map[string]string{"once": "1", "twice": "2", "thrice": "3"}[strings.ToLower(m[1])]))
	if kind == nil && times.SI >= 1 && times.SI <= 24 {
		if plain, err := quantity.Make(quantity.Part{Number: strconv.FormatFloat(24/times.SI, 'g', 3, 64), Unit: "h"}); err == nil {
			i.value, i.dim = plain.String(), quantity.Time
		}
	}
	return i
}

func numberItem(before, rest string) *toldItem {
	if m := toldClock.FindString(rest); m != "" {
		return &toldItem{said: m}
	}
	if m := toldValue.FindStringSubmatch(rest); m != nil {
		i := valueItem(m[0], m[1], m[2], m[3])
		if i.dim == quantity.Temperature && belowNought.MatchString(before) {
			i.value = ""
		}
		return i
	}
	m := toldBare.FindStringSubmatch(rest)
	i := &toldItem{said: m[0]}
	switch q, err := quantity.Parse(m[1]); {
	case err != nil:
	case strings.Contains(m[1], "/"):
		i.value, i.part = m[1], q.SI > 0 && q.SI <= 1
	case toldWarmFor.MatchString(before) && toldWarmTill.MatchString(rest[len(m[0]):]):
		i.value, i.dim, i.warm = strings.TrimSuffix(m[1]+" to "+m[2], " to "), quantity.Temperature, true
	}
	return i
}

// valueItem is a number, or the two of a range, with its unit.
func valueItem(said, low, high, unit string) *toldItem {
	i := &toldItem{said: said}
	plain := strings.ToLower(strings.NewReplacer("º", "°", ".", "", " ", "").Replace(unit))
	switch last := plain[len(plain)-1]; {
	case plain == "°" || strings.HasPrefix(plain, "deg") && (plain == "deg" || plain == "degree" || plain == "degrees"):
		i.value, i.dim, i.warm = strings.TrimSuffix(low+" to "+high, " to "), quantity.Temperature, true
		return i
	case strings.HasSuffix(plain, "celsius"):
		unit = "°C"
	case strings.HasSuffix(plain, "fahrenheit"):
		unit = "°F"
	case (last == 'c' || last == 'f') && (len(plain) == 1 || strings.HasPrefix(plain, "deg") || strings.HasPrefix(plain, "°")):
		unit = "°" + strings.ToUpper(string(last))
	default:
		unit = strings.ToLower(unit)
	}
	q, err := quantity.Parse(low + " " + unit)
	if err != nil {
		return i
	}
	i.value, i.dim = low+" "+q.Unit(), q.Dimension
	if high == "" {
		return i
	}
	if end, err := quantity.Parse(high + " " + unit); err != nil || end.SI <= q.SI {
		i.value = "" // 5 to 3 h: what is meant is not known
	} else {
		i.value = low + " to " + high + " " + end.Unit()
	}
	return i
}

// joinedItems puts together what is one value: 60 °F to 65 °F, 1 h 30 min.
func joinedItems(phrase string, list []*toldItem) (joined []*toldItem) {
	for _, i := range list {
		if n := len(joined); n > 1 && joined[n-1].word == vocabulary.To && joined[n-2].word == "" && joined[n-2].value != "" && i.value != "" && joined[n-2].dim == i.dim {
			joined = joined[:n-1] // 60 °F to 65 °F
		}
		if len(joined) > 0 {
			if last := joined[len(joined)-1]; last.value != "" && i.value != "" && last.dim == i.dim && !last.daily && !i.daily && last.word == "" {
				between, one := phrase[last.to:i.from], strings.Cut
				number, unit, _ := one(last.value, " ")
				other, otherUnit, _ := one(i.value, " ")
				low, errLow := quantity.Parse(last.value)
				high, errHigh := quantity.Parse(i.value)
				both, errBoth := quantity.Parse(last.value + " " + i.value)
				switch {
				case toldSame.MatchString(between) && unit == otherUnit && errLow == nil && errHigh == nil && low.SI < high.SI:
					last.value = strings.TrimSpace(number + " to " + other + " " + unit)
				case strings.TrimSpace(between) == "" && i.dim == quantity.Time && errBoth == nil:
					last.value = both.String()
				default:
					joined = append(joined, i)
					continue
				}
				last.said, last.to = phrase[last.from:i.to], i.to
				continue
			}
		}
		joined = append(joined, i)
	}
	return joined
}

// one gives the value as one: of a range of which one is wanted the first, and what to say of it.
func (i *toldItem) one() string {
	if i == nil {
		return ""
	}
	i.used = true
	low, high, two := strings.Cut(i.value, " to ")
	if !two {
		return i.value
	}
	_, unit, _ := strings.Cut(high, " ")
	if strings.Contains(high, "/") && strings.Count(high, " ") > 1 {
		unit = high[strings.LastIndexByte(high, ' ')+1:]
	}
	i.beyond = i.value
	q, err := quantity.Parse(low + " " + unit)
	if err != nil {
		return low + " " + unit
	}
	return low + " " + q.Unit()
}

// all gives the value as it is, a range as one.
func (i *toldItem) all() string {
	if i == nil {
		return ""
	}
	i.used = true
	return i.value
}
