package read

import (
	"regexp"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// stillToGrow finds what comes before a kiln: a soak, or the growth.
var stillToGrow = regexp.MustCompile(`(?i)\b(?:soak|steep|immers|wet\b|(?:under|in)\s+water|germinat|sprout|grow|chit)`)

// dryRest tells whether a phrase that says dry tells of an air rest: of grain that still has to be
// soaked or to grow, and of no warmth that grain dries at.
func (t *telling) dryRest(items []*toldItem, rest string) bool {
	if len(t.growth)+len(t.kiln)+len(t.wither) > 0 || len(t.steep) == 0 && !t.wet(items) || !stillToGrow.MatchString(rest) {
		return false
	}
	for _, i := range items {
		if i.dim != quantity.Temperature || i.value == "" {
			continue
		}
		if by := t.byWarmth(i); by == vocabulary.VerbDry || by == vocabulary.VerbCure {
			return false
		}
	}
	return true
}

func (t *telling) wet(items []*toldItem) bool {
	for _, i := range items {
		if step, _ := vocabulary.Told(i.word); step == vocabulary.VerbSoak || i.word == "wet" {
			return true
		}
	}
	return false
}

// rising are words of a temperature that goes from one to another.
var rising = regexp.MustCompile(`(?i)^(?:ramp\w*|rais\w*|ris(?:e|es|ing)|increas\w*|climb\w*)$`)

// rise gives the ends of a rise, the first of them that of the step before where only one was
// said; ok is false where the step is none.
func (s *toldStep) rise(warm, before string) (ends string, ok bool) {
	if !s.rises || warm == "" {
		return "", false
	}
	if strings.Contains(warm, " to ") {
		return warm, true
	}
	if _, high, both := strings.Cut(before, " to "); both {
		before = high
	}
	low, errLow := quantity.Parse(before)
	high, errHigh := quantity.Parse(warm)
	if errLow != nil || errHigh != nil || low.SI >= high.SI || low.Unit() != high.Unit() {
		return "", false
	}
	return strings.TrimSuffix(before, " "+low.Unit()) + " to " + warm, true
}
