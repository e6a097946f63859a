package rules

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var storeOpen = Rule{
	Rule: finding.Rule{Name: "store-open", Severity: finding.Caution,
		Title:  "the malt is kept in something that is open to the air",
		Why:    "kilned malt is drier than any room: left open, it draws water within weeks, goes slack and gets weevils (common practice)",
		Do:     "keep it in something closed: a drum with a lid, jars, a lined sack that is tied",
		Bad:    "store in \"open bin\" for at least 3 weeks",
		Good:   "store in \"lidded drum\" for at least 3 weeks",
		Limits: "it goes by the words alone, and reports only a store that they call open"},
	Judge: func(r finding.Rule, c *Case) {
		st := model.First[*model.Storing](c.Process)
		if st == nil || !st.In.Place.Known() {
			return
		}
		switch open, sure := openTo(st.In.Text); {
		case open && sure:
			c.Note(r.At(st.In.Place, fmt.Sprintf("the malt is kept in %q, open to the air", st.In.Text)))
		case !sure:
			c.NotJudged(r, fmt.Sprintf("%q does not say whether it is lined or tied", st.In.Text))
		}
	},
}

var (
	shutWords   = []string{"lid", "lids", "lidded", "sealed", "closed", "shut", "lined", "liner", "liners", "tight", "airtight", "tied", "covered", "cover", "stoppered", "plastic"}
	openWords   = []string{"open", "uncovered", "lidless", "unlidded", "unsealed", "unlined", "loose", "heap", "pile", "jute", "hessian", "burlap", "linen", "cotton", "net", "mesh"}
	sackWords   = []string{"sack", "sacks", "bag", "bags"}
	vesselWords = []string{"drum", "drums", "bin", "bins", "barrel", "barrels", "box", "boxes", "chest", "tin", "tins", "silo", "jar", "jars", "keg", "kegs", "bucket", "buckets", "tub", "tubs"}
	negations   = []string{"no", "without", "not", "never"}
)

// openTo tells whether the words for what malt is kept in say that it is open to the
// air; sure is false for a plain sack, which may or may not be lined. A word that
// shuts it goes before one that opens it, unless it is denied: without a lid.
func openTo(text string) (open, sure bool) {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
	denied := false
	for i, w := range words {
		if !slices.Contains(shutWords, w) {
			continue
		}
		if !slices.ContainsFunc(words[max(0, i-2):i], func(w string) bool { return slices.Contains(negations, w) }) {
			return false, true
		}
		denied = true
	}
	says := func(list []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(list, w) })
	}
	if denied || says(openWords) && !says(negations) {
		return true, true
	}
	return false, !says(sackWords) || says(vesselWords)
}
