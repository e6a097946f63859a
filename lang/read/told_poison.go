package read

import (
	"regexp"
	"strings"

	"maltwright/lang/vocabulary"
)

// sentences part a text where another thing may be said of a lot: no mould, but some ergot.
var (
	sentences = regexp.MustCompile(`[;!\n]|\.(?:\s|$)|(?i:,\s|\bbut\b|\bthough\b)`)
	andSome   = regexp.MustCompile(`(?i)\band\s+(some|a|much|many|lots|few|little|treated|dressed|coated)\b`)
)

// poisons reads what a text tells of a lot that makes it unfit. The worst that is said of each
// counts; a sentence that says nothing for certain is listed as not used.
func (t *telling) poisons(text string) {
	t.poison = map[string]string{}
	for _, said := range sentences.Split(andSome.ReplaceAllString(text, ", $1"), -1) {
		if said = strings.Trim(said, " \t\r#>*•-"); said == "" {
			continue
		}
		for _, p := range vocabulary.Poisons {
			word, certain, tells := p.Told(said)
			switch {
			case !tells:
			case !certain:
				t.unused = append(t.unused, said)
				if t.poison[p.Word] != p.Is {
					t.poison[p.Word] = vocabulary.SaidUnknown
				}
			case word == p.Is || t.poison[p.Word] == "":
				t.poison[p.Word] = word
			}
		}
	}
}

// poisonFacts are the statements of the lot that tell of it.
func (t *telling) poisonFacts() string {
	text := vocabulary.FactTreated + " " + orElse(t.poison[vocabulary.FactTreated], vocabulary.SaidUnknown)
	for _, p := range vocabulary.Poisons[1:] {
		if said := t.poison[p.Word]; said != "" {
			text += "; " + p.Word + " " + said
		}
	}
	return text
}
