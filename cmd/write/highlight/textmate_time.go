package highlight

import (
	"time"

	"maltwright/lang/vocabulary"
)

// months are the first letters of the months, by which they are known.
func months() []string {
	list := make([]string, 12)
	for i := range list {
		list[i] = time.Month(i + 1).String()[:3]
	}
	return list
}

// date takes a date in figures, or with the name of its month, with a year that is written out.
func (w Words) date() rule {
	const nth = `(?:st|nd|rd|th|\.)?`
	month := `(?:` + among(months()) + `\p{L}*\.?)`
	return rule{
		Match: `(?i:(?<![\p{L}\d.,])(` +
			`\d{4}[-./]\d{1,2}[-./]\d{1,2}|\d{1,2}[-./]\d{1,2}[-./]\d{4}|` +
			`\d{1,2}` + nth + `[ -]*(?:of +)?` + month + `[ ,-]*\d{4}|` +
			month + ` *\d{1,2}` + nth + `,? *\d{4}` +
			`)(?!\d|(?!T\d)\p{L}))` + w.further(),
		Captures: scopes(scopeDate, scopeRange, scopeRange),
	}
}

// clock takes a time of day with its minutes, or with the half of the day it is of, which may stand behind
// the other end of a span: 7 to 10 pm.
func (w Words) clock() rule {
	half := blank + `*(?i:a\.?m\.?|p\.?m\.?|` + among(w.Times) + `)(?!\p{L})`
	const hour = `\d{1,2}(?:[.:]\d\d)?`
	return rule{
		Match:    `(?:(?<![\p{L}\d.,])|(?<=\dT)|(?<=\d)T)(\d{1,2}(?::\d+)+(?:` + half + `)?|` + hour + half + `|` + hour + `(?=(?:` + blank + `+` + vocabulary.To + blank + `+|` + blank + `*[-–—]` + blank + `*)` + hour + half + `))` + w.further(),
		Captures: scopes(scopeTime, scopeRange, scopeRange),
	}
}

// namedTime takes noon and midnight.
func (w Words) namedTime() rule {
	return rule{Match: notIn + `(` + among(w.Times) + `)` + notWord + w.further(), Captures: scopes(scopeTime, scopeRange, scopeRange)}
}
