package read

import (
	"regexp"
	"strings"

	"maltwright/lang/vocabulary"
)

var (
	grainSaid = regexp.MustCompile(`(?i)\b(barley|wheat|rye|oats?|sorghum|millet|maize|corn|buckwheat|spelt|triticale)\b`)
	maltSaid  = regexp.MustCompile(`(?i)\b(?:(pilsner|pils|pilsener|vienna|munich)\b|(pale|amber|brown|caramel|crystal|chit|distilling|smoked|acid|chocolate|black|roasted)\s+(?:(?:barley|wheat|rye|oat|spelt)\s+)?malt\b)`)
)

// grainAndMalt reads of which grain a text tells and which malt it wants. The first of each counts;
// another one is listed as not used.
func (t *telling) grainAndMalt(text string) {
	for _, m := range grainSaid.FindAllString(text, -1) {
		word := strings.ToLower(m)
		word = orElse(map[string]string{"oat": "oats", "corn": "maize"}[word], word)
		if !vocabulary.IsGrain(word) {
			continue
		}
		if t.species = orElse(t.species, word); t.species != word {
			t.unused = append(t.unused, m)
		}
	}
	for _, m := range maltSaid.FindAllStringSubmatch(text, -1) {
		word := strings.ToLower(m[1] + m[2])
		if strings.HasPrefix(word, "pils") {
			word = "pilsner"
		}
		if t.malt = orElse(t.malt, word); t.malt != word {
			t.unused = append(t.unused, m[0])
		}
	}
}

// lotName is the name of the lot, in quotes.
func (t *telling) lotName() string { return `"my ` + orElse(t.species, vocabulary.GrainBarley) + `"` }

// kernelsOf gives the usual weight of kernels, which is that of barley; of another grain it is left out.
func (t *telling) kernelsOf(u usual) string {
	if t.species != "" && t.species != vocabulary.GrainBarley {
		return ""
	}
	return "; kernel-weight " + u.kernels
}

// make names the malt, which is pale where it was not said.
func (t *telling) make() string {
	if t.malt == "" {
		return "pale malt" + notSaid
	}
	return t.malt + " malt"
}
