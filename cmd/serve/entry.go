package serve

import (
	"math"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"maltwright/cmd/words"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// The kinds of reading that have a form, each named as the form says it.
const (
	kindWeighed   = "weighed"
	kindHeat      = "temperature"
	kindTurned    = "turned"
	kindChit      = "chit"
	kindAcrospire = "acrospire"
	kindRub       = "rub"
	kindRemark    = "remark"
	kindSample    = "sample"
	kindMoisture  = "moisture"
	kindChanged   = "changed"
)

// Names of what a form sends.
const (
	nameKind   = "kind"
	nameOnce   = "once"
	nameOwn    = "own" // what a reading that was kept on a phone is called
	nameAt     = "at"
	nameValue  = "value"
	nameOunces = "ounces"
	nameUnit   = "unit"
	nameIn     = "in"
	nameAfter  = "after"
	namePlace  = "place"
	nameOf     = "of"
	nameText   = "text"
	nameDanger = "danger"
	nameDry    = "dry"
	nameDish   = "dish"
	nameWet    = "wet"
	nameClean  = "clean"
	nameStep   = "step"
	nameWhy    = "why"
	nameWrite  = "write"
	nameOffer  = "offer"
	nameLine   = "line"
)

// untimed are the kinds whose line has no time.
var untimed = map[string]bool{kindSample: true, kindChanged: true}

// missing is what a form lacks, in a sentence.
type missing string

func (m missing) Error() string { return string(m) }

// entry is a reading as a form sends it, in the words of a record.
type entry struct {
	Words []string
	At    string   // "" for a line without a time
	Sum   []string // how it was reckoned of what was typed
	Ask   string   // what the page asks before it is written, "" for nothing
}

// entryOf gives the words of a reading that a form sent. Now is the time of one that says none.
func entryOf(v url.Values, now time.Time) (entry, error) {
	kind := v.Get(nameKind)
	write := entries[kind]
	if write == nil {
		return entry{}, missing("choose what was read")
	}
	if err := misread(v); err != nil {
		return entry{}, err
	}
	words, err := write(v)
	if err != nil {
		return entry{}, err
	}
	e := entry{Words: words, Sum: sumOf(v)}
	if !untimed[kind] {
		e.At = stamped(v.Get(nameAt), now)
	}
	return e, nil
}

const (
	stamp  = "2006-01-02 15:04" // as a record has it
	picked = "2006-01-02T15:04" // as a field of a browser has it
)

// stamped is a time as it was picked or said; of now where nothing was. A phone says by its own clock, which may go by another zone, when
// a reading was taken that it kept: with the zone.
func stamped(at string, now time.Time) string {
	at = strings.TrimSpace(at)
	if at == "" {
		return now.Format(stamp)
	}
	if t, err := time.Parse(time.RFC3339, at); err == nil {
		return t.In(now.Location()).Format(stamp)
	}
	for _, layout := range []string{picked, picked + ":05"} {
		if t, err := time.ParseInLocation(layout, at, now.Location()); err == nil {
			return t.Format(stamp)
		}
	}
	return at
}

// entries writes each kind.
var entries = map[string]func(url.Values) ([]string, error){
	kindWeighed:   weighedOf,
	kindHeat:      heatOf,
	kindTurned:    func(url.Values) ([]string, error) { return []string{kindTurned}, nil },
	kindChit:      chitOf,
	kindAcrospire: acrospireOf,
	kindRub:       rubOf,
	kindRemark:    remarkOf,
	kindSample:    sampleOf,
	kindMoisture:  moistureOf,
	kindChanged:   changedOf,
}

func weighedOf(v url.Values) ([]string, error) {
	words := []string{kindWeighed}
	holder := v.Get(nameIn)
	if holder == inBag {
		words, holder = append(words, inBag), ""
	}
	weight, err := weightOf(v, nameValue, nameOunces)
	if err != nil {
		return nil, err
	}
	words = append(words, weight...)
	if v.Get(nameClean) != "" {
		words = append(words, "clean", "malt")
	}
	if holder != "" {
		words = append(words, "in", quoted(holder))
	}
	if after := v.Get(nameAfter); after != "" {
		words = append(append(words, "after"), strings.Fields(after)...)
	}
	return words, nil
}

// inBag stands in the place of a vessel where it is the marked bag that was weighed.
const inBag = "bag"

// weightOf is a weight in the unit of the form, or in that which was typed with it.
func weightOf(v url.Values, name, ounces string) ([]string, error) {
	number, oz := typedNumber(v.Get(name)), typedNumber(v.Get(ounces))
	switch {
	case number == "" && oz == "":
		return nil, missing("type the weight that the scale shows")
	case strings.ContainsAny(number, letters):
		return strings.Fields(number), nil
	case number == "":
		return []string{oz, "oz"}, nil
	}
	words := []string{number, unitOf(v)}
	switch {
	case oz == "":
	case strings.Contains(number, "."):
		return nil, missing("type whole pounds beside ounces: " + number + " lb holds a part of a pound already")
	case atLeast(oz, 16):
		return nil, missing("type less than 16 oz beside the pounds: 16 oz are 1 lb")
	default:
		words = append(words, oz, "oz")
	}
	return words, nil
}

// partOfPound asks about pounds with a part where ounces have a field of their own: 14.9 may be meant for 14 lb 9 oz. It is "" where nothing is to be asked.
func partOfPound(v url.Values, h words.House) string {
	number := typedNumber(v.Get(nameValue))
	if v.Get(nameKind) != kindWeighed || !v.Has(nameOunces) || typedNumber(v.Get(nameOunces)) != "" || !strings.Contains(number, ".") {
		return ""
	}
	lb, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsInf(lb, 0) || math.IsNaN(lb) {
		return "" // it is no weight, and refused as that
	}
	return number + " lb is " + h.WeightBy(lb*quantity.Pound, quantity.Pound/160) + ": if the scale shows pounds and ounces, put the ounces into their own field"
}

func atLeast(number string, least float64) bool {
	n, err := strconv.ParseFloat(number, 64)
	return err == nil && n >= least
}

const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ°"

// unitOf is the unit that the form showed.
func unitOf(v url.Values) string {
	unit := v.Get(nameUnit)
	if !slices.Contains([]string{"g", "lb", "oz", "°C", "°F"}, unit) {
		return "kg"
	}
	return unit
}

// comma is a number whose comma can only be the point.
var comma = regexp.MustCompile(`^([-−]?\d+),(\d{1,2}|\d{4,})$`)

// typedNumber is a number as it was typed, with a point where a keypad has a comma.
func typedNumber(text string) string {
	return comma.ReplaceAllString(strings.TrimSpace(text), "$1.$2")
}

// quoted is a text as a record has it, which has no quotes and no line ends in it.
func quoted(text string) string {
	return `"` + strings.ReplaceAll(strings.Join(strings.Fields(text), " "), `"`, "'") + `"`
}

func heatOf(v url.Values) ([]string, error) {
	number, unit := typedNumber(v.Get(nameValue)), unitOf(v)
	if number == "" {
		return nil, missing("type the temperature that the thermometer shows")
	}
	if strings.ContainsAny(number, letters) {
		return append([]string{vocabulary.RecordRead, v.Get(namePlace)}, strings.Fields(number)...), nil
	}
	return []string{vocabulary.RecordRead, v.Get(namePlace), number, unit}, nil
}

func chitOf(v url.Values) ([]string, error) {
	n, of := typedNumber(v.Get(nameValue)), typedNumber(v.Get(nameOf))
	if n == "" {
		return nil, missing("type how many kernels show a root")
	}
	if of == "" {
		return nil, missing("type how many kernels were looked at")
	}
	return []string{vocabulary.RecordCounted, vocabulary.MeasureChit, n, vocabulary.ClauseOf, of}, nil
}

// classes are the fields of a count of the acrospire, in the order of the record.
var classes = []struct{ name, label string }{{"none", "no shoot"}, {"quarter", "to 1/4"}, {"half", "to 1/2"}, {"three", "to 3/4"}, {"whole", "to the whole"}, {"over", "overgrown"}}

func acrospireOf(v url.Values) ([]string, error) {
	words, any := []string{vocabulary.RecordCounted, vocabulary.MeasureAcrospire}, false
	for _, c := range classes {
		n := typedNumber(v.Get(c.name))
		if any = any || n != ""; n == "" {
			n = "0"
		}
		words = append(words, n)
	}
	if !any {
		return nil, missing("type how many kernels are in each class")
	}
	return words, nil
}

func rubOf(v url.Values) ([]string, error) {
	if v.Get(nameValue) == "" {
		return nil, missing("choose how the kernel rubbed out")
	}
	return []string{"felt", vocabulary.MeasureRub, v.Get(nameValue)}, nil
}

func changedOf(v url.Values) ([]string, error) {
	step, to, why := v.Get(nameStep), typedNumber(v.Get(nameValue)), v.Get(nameWhy)
	switch {
	case step == "":
		return nil, missing("choose the step that was done otherwise")
	case to == "":
		return nil, missing("type how long or how warm it was instead")
	case strings.TrimSpace(why) == "":
		return nil, missing("a change says why it was made: type the reason")
	}
	words := append([]string{vocabulary.RecordChanged}, strings.Fields(step)...)
	words = append(append(words, "to"), strings.Fields(to)...)
	if !strings.ContainsAny(to, letters+"%") {
		words = append(words, changeUnit(v.Get(nameUnit)))
	}
	return append(words, vocabulary.ClauseBecause, quoted(why)), nil
}

// changeUnit is the unit that was chosen for a change.
func changeUnit(unit string) string {
	if slices.Contains([]string{"min", "d", "°C", "°F"}, unit) {
		return unit
	}
	return "h"
}
