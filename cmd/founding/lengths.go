package founding

import (
	"regexp"
	"strings"

	"maltwright/lang/quantity"
)

// Forms of an area that is given by its sides, and by pieces of one size: 27 x 54 in,
// 2 ft by 3 ft, 2 trays of 18x24 in, 3 racks of 0.2 m2.
var (
	sides  = regexp.MustCompile(`(?i)^([\d½¼¾].*?)\s*(?:[x×*]|\bby\b)\s*([\d½¼¾].*)$`)
	pieces = regexp.MustCompile(`(?i)^(\d{1,3}|one|two|three|four|five|six|eight|ten)\s+(?:(?:x|×|times|of)\s+|(?:trays?|racks?|sheets?|shelves|shelf|towels?|pans?|screens?|baskets?|drawers?|levels?|layers?)\b\s*(?:of\b|at\b|à|x\b|×|,|:|each\b)?\s*)(.+)$`)
	inches = strings.NewReplacer(`″`, " in", `”`, " in", `"`, " in", `′`, " ft", `’`, " ft", `'`, " ft")
)

// countWords are the words among the counts of pieces.
var countWords = map[string]float64{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10}

// laidOut reads an area that is given by two lengths or as so many of one size, and gives it in
// a unit. It is false of a text that is neither.
func laidOut(text, unit string) (string, bool) {
	text = strings.Join(strings.Fields(inches.Replace(text)), " ")
	if parts := pieces.FindStringSubmatch(text); parts != nil && !twoLengths(text) {
		n, worded := countWords[strings.ToLower(parts[1])]
		if !worded {
			count, err := quantity.Parse(parts[1])
			if err != nil {
				return "", false
			}
			n = count.SI
		}
		one, ok := areaOf(strings.TrimSuffix(parts[2], " each"))
		return squared(n*one, unit), ok
	}
	m2, ok := areaOf(text)
	return squared(m2, unit), ok && sides.MatchString(text)
}

// twoLengths tells whether a text is no more than two lengths, such as 27 x 54 in.
func twoLengths(text string) bool {
	parts := sides.FindStringSubmatch(text)
	if parts == nil {
		return false
	}
	_, err := quantity.Parse(parts[1])
	_, more := areaOf(parts[2])
	return err == nil && !more
}

// areaOf reads an area, or two lengths of which the first may go without its unit, in m².
func areaOf(text string) (float64, bool) {
	if parts := sides.FindStringSubmatch(text); parts != nil {
		long, err := quantity.Parse(parts[2])
		if err != nil || long.Dimension != quantity.Length {
			return 0, false
		}
		wide, err := quantity.Parse(parts[1])
		if err == nil && wide.Dimension == quantity.Number {
			wide, err = quantity.Parse(parts[1] + " " + long.Unit())
		}
		return wide.SI * long.SI, err == nil && wide.Dimension == quantity.Length
	}
	made, err := quantity.Parse(text)
	return made.SI, err == nil && made.Dimension == quantity.Area
}

// squared writes an area of m² in a unit, to three figures.
func squared(m2 float64, unit string) string { return figures(m2, unit, 3) }

// ofUS are the measures of a house of lb without the name of their country.
var ofUS = regexp.MustCompile(`(?i)([\d½¼¾.]\s*)(?:us\s+|u\.s\.\s+)?(gal|gals|gallons?|qt|qts|quarts?|pt|pts|pints?)\.?$`)

// american puts the US measure in the place of a gallon, a quart or a pint.
func american(text string) string {
	parts := ofUS.FindStringSubmatch(text)
	if parts == nil {
		return text
	}
	unit := map[byte]string{'g': "gal-us", 'q': "qt-us", 'p': "pt-us"}[strings.ToLower(parts[2])[0]]
	return strings.TrimSpace(strings.TrimSuffix(text, parts[0])+parts[1]) + " " + unit
}
