package quantity

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Kind is what is wrong with a quantity.
type Kind int

// The kinds of error.
const (
	NoError         Kind = iota
	NotANumber           // the number cannot be read
	DecimalComma         // 12,4
	TooLong              // more digits than anything measured has
	TooLarge             // above 1e12, or a temperature below absolute zero
	UnknownUnit          // the unit is not of the language
	MissingUnit          // no number at all, or one of several parts has no unit
	MixedDimensions      // 5 lb 4 min
	WrongOrder           // 30 min 1 h, 1.5 h 30 min, 1 h 90 min
	WrongDimension       // a weight where a time is asked for
	UpsideDown           // 17 to 14 °C
)

// Error says what is wrong with a quantity, in words for the maltster.
type Error struct {
	Kind    Kind
	Part    int    // the part to blame, from 0; of a range the parts of the high end count on
	Message string // what is wrong
	Hint    string // what to do

	// Fix is the certain repair, or "". It stands in place of the unit for
	// UnknownUnit, of the whole range for UpsideDown, of the whole second end for
	// MissingUnit of a range, of the number alone for any other kind.
	Fix string

	Either []string // numbers of which one is meant, where that cannot be told

	Units []string // of an UnknownUnit: those that may be meant
}

// Error is the message and the hint in one line.
func (e *Error) Error() string {
	if e.Hint == "" {
		return e.Message
	}
	return e.Message + "; " + e.Hint
}

// asText writes a part as it came, for a message.
func (p Part) asText() string { return strings.TrimSpace(clip(p.Number) + " " + clip(p.Unit)) }

// clip shortens what is shown of a text, and escapes what should not be sent raw.
func clip(text string) string {
	if utf8.RuneCountInString(text) > longest {
		text = string([]rune(text)[:longest]) + "…"
	}
	quoted := fmt.Sprintf("%q", text)
	return quoted[1 : len(quoted)-1]
}

// numberError says what is wrong with the number of a part.
func numberError(kind Kind, i int, p Part) *Error {
	e := &Error{Kind: kind, Part: i}
	switch kind {
	case DecimalComma:
		e.Fix = commaError(e, p.Number)
	case TooLong:
		e.Message = fmt.Sprintf("a number of %d characters is longer than anything that is measured", utf8.RuneCountInString(p.Number))
		e.Hint = "write only the digits that matter"
	case TooLarge:
		e.Message = fmt.Sprintf("%s is larger than anything in a malthouse", p.asText())
		e.Hint = "check the number and its unit"
	default:
		e.Fix = noNumber(e, p.Number)
	}
	return e
}

// commaError tells a decimal comma from commas between thousands, and gives the
// repair where it is certain: 1,200 may be either.
func commaError(e *Error, number string) (repaired string) {
	point, bare := strings.Replace(number, ",", ".", 1), strings.ReplaceAll(number, ",", "")
	whole, behind, _ := strings.Cut(number, ",")
	switch {
	case !reads(bare):
		e.Message = fmt.Sprintf("%s is no number, and has a comma", clip(number))
		e.Hint = "write it as 12, 12.4, 3/4 or 8 1/3"
	case !reads(point):
		e.Message = fmt.Sprintf("%s has more than a decimal point can mean", clip(number))
		e.Hint = "write one decimal point, and no mark between thousands"
	case len(behind) == 3 && strings.Trim(whole, "0-\u2212") != "":
		e.Message = fmt.Sprintf("%s has a comma, which may be a decimal point or part thousands", number)
		e.Hint, e.Either = fmt.Sprintf("write %s or %s", point, bare), []string{point, bare}
	default:
		e.Message = fmt.Sprintf("%s has a decimal comma", number)
		e.Hint = fmt.Sprintf("write %s", point)
		return point
	}
	return ""
}

func noNumber(e *Error, number string) (repaired string) {
	e.Message = fmt.Sprintf("%s is no number", clip(number))
	e.Hint = "write it as 12, 12.4, 3/4 or 8 1/3"
	bottom := number[strings.IndexByte(number, '/')+1:]
	switch {
	case strings.TrimSpace(number) == "":
		e.Message = "a number is missing"
	case reads(strings.TrimPrefix(number, "+")):
		repaired = strings.TrimPrefix(number, "+")
	case reads(strings.TrimSuffix(number, ".")):
		repaired = strings.TrimSuffix(number, ".")
	case len(bottom) < len(number) && strings.Trim(bottom, "0") == "":
		e.Message = fmt.Sprintf("%s divides by nothing", clip(number))
	case strings.Contains(number, "/"):
		e.Hint = "write a fraction with whole numbers, such as 3/4 or 8 1/3"
	}
	if repaired != "" {
		e.Hint = "write " + repaired
	}
	return repaired
}

func reads(number string) bool {
	_, kind := parseNumber(number)
	return kind == NoError
}

// meaning is what a spelling that is no unit of the language may stand for.
type meaning struct {
	units []string // of which one is meant; none where the number would have to be another
	says  string   // what to know about it
}

// meanings are spellings that people use for a unit of the language, or for one of several. The
// quantity decides between them nowhere; the maltster must.
var meanings = map[string]meaning{
	"gal":     {[]string{"gal-us", "gal-imp"}, "gallons of the US are of 3.785 l, imperial ones of 4.546 l"},
	"qt":      {[]string{"qt-us", "qt-imp"}, "quarts of the US are of 946 ml, imperial ones of 1.137 l"},
	"pint":    {[]string{"pt-us", "pt-imp"}, "pints of the US are of 473 ml, imperial ones of 568 ml"},
	"usgal":   {[]string{"gal-us"}, ""},
	"ton":     {[]string{"t", "ton-us", "ton-imp"}, "t is 1000 kg; a short ton is 2000 lb, a long ton 2240 lb"},
	"gr":      {[]string{"g", "°C"}, ""},
	"grad":    {[]string{"°C"}, ""},
	"degree":  {[]string{"°C", "°F"}, ""},
	"w":       {[]string{"weeks", "W"}, ""},
	"masl":    {[]string{"m"}, ""},
	"qm":      {[]string{"m2"}, ""},
	"square":  {[]string{"m2", "ft2"}, ""},
	"pc":      {[]string{"%"}, ""},
	"btu":     {[]string{"Btu/h"}, ""},
	"seed":    {[]string{"kernels"}, ""},
	"g/":      {[]string{"g"}, ""},
	"pf":      {nil, "a Pfund is 500 g, a pound (lb) 453.6 g: weigh in g or lb"},
	"bushel":  {nil, "a bushel weighs what the grain weighs: weigh in kg or lb"},
	"cwt":     {nil, "a US hundredweight is 100 lb, an imperial one 112 lb: give it in lb"},
	":":       {nil, "a length of time has its units, as 1 h 30 min has"},
	"floz":    {nil, "a US fluid ounce is 29.6 ml, an imperial one 28.4 ml: give it in ml"},
	"cup":     {nil, "a cup is 237 ml in the US and 250 ml elsewhere: give it in ml"},
	"spoon":   {nil, "a tablespoon is some 15 ml, a teaspoon some 5 ml: give it in ml"},
	"quarter": {nil, "a quarter of what? give it in kg or lb; a fraction is 1/4"},
	"hp":      {nil, "a horsepower is 0.746 kW, a metric one 0.735 kW: give it in kW; what a motor draws is a tenth to a quarter more"},
	"bar":     {nil, "a bar is 100 kPa: give it in kPa; mbar is read as hPa"},
}

var meaningOf = map[string]string{"gallon": "gal", "ton": "ton", "tn": "ton", "bu": "bushel", "bsh": "bushel", "": "degree",
	"deg": "degree", "degree": "degree", "pt": "pint", "quart": "qt", "fl": "floz", "qtr": "quarter", "qr": "quarter", "horsepower": "hp", "ps": "hp", "bhp": "hp",
	"gradcelsiu": "grad", "gradc": "grad", "grade": "grad", "gram": "gr",
	"tbsp": "spoon", "tsp": "spoon", "tablespoon": "spoon", "teaspoon": "spoon", "pfund": "pf", "usgallon": "usgal", "m3h": "m3h", "m.a.s.l": "masl", "persons": "people"}

// OfMark is the unit that a mark behind a number stands for in hand-written lists, "" for what
// is no such mark.
func OfMark(mark string) string {
	length, _ := ofMark(mark)
	return length
}

// TimeOfMark is the unit that such a mark stands for behind a time.
func TimeOfMark(mark string) string {
	_, time := ofMark(mark)
	return time
}

func ofMark(mark string) (length, time string) {
	switch mark {
	case `"`, "″", "”", "“":
		return findUnit("inch").Name, "s"
	case "'", "′", "’":
		return "ft", "min"
	}
	return "", ""
}

// OfTime is the unit of time that a word of another language stands for; ok is false for any
// other word. Such a word is no unit of the language: it is put right, and the number stays.
func OfTime(word string) (unit string, ok bool) {
	if len(word) > longestUnit {
		return "", false
	}
	unit, ok = timeElsewhere[fold(tidy(word))]
	return unit, ok
}

// timeElsewhere are the words for units of time in German, French, Spanish, Polish and Czech, as
// fold leaves them.
var timeElsewhere = func() map[string]string {
	m := map[string]string{}
	for unit, words := range map[string]string{
		"min":   "minute minuten minut minuty minuta minutę minutos minutas",
		"h":     "std stunde stunden heure heures hora horas godz godzina godzinę godziny godzin hod hodina hodinu hodiny hodin",
		"days":  "tag tage tagen jour jours día días dia dias dzień dzien dni dnia den dny dnů",
		"weeks": "woche wochen semaine semaines semana semanas tydzień tydzien tygodnie tygodni tygodnia týden týdny týdnů tyden tydny",
	} {
		for _, word := range strings.Fields(words) {
			m[fold(word)] = unit
		}
	}
	return m
}()

func noUnit(part int, spelling string) *Error {
	if unit := OfMark(spelling); unit != "" {
		return &Error{Kind: UnknownUnit, Part: part, Message: fmt.Sprintf("the mark %s is no unit of the language, and a quote opens a name", spelling),
			Hint: fmt.Sprintf("write %s in its place, behind a blank", unit), Fix: unit}
	}
	e := &Error{Kind: UnknownUnit, Part: part, Message: fmt.Sprintf("\"%s\" is no unit of the language", clip(spelling)),
		Hint: "units are such as kg, h, °C, % or l"}
	folded := fold(tidy(spelling))
	if unit, ok := OfTime(spelling); ok && strings.ToLower(spelling) != "minuts" { // a slip of minutes
		e.Units, e.Hint = []string{unit}, "write "+unit
		return e
	}
	if meant, ok := meaningOf[folded]; ok {
		folded = meant
	}
	if m, ok := meanings[folded]; ok && len(spelling) <= longestUnit {
		if e.Units, e.Hint = m.units, m.says; len(m.units) > 0 {
			e.Hint = strings.TrimSuffix("write "+strings.Join(m.units, " or ")+"; "+m.says, "; ")
		}
		return e
	}
	if u, certain := nearest(spelling); u != nil {
		e.Hint, e.Units = fmt.Sprintf("did you mean %s?", u.Name), []string{u.Name}
		if certain {
			e.Fix = u.Name
		}
	}
	return e
}
