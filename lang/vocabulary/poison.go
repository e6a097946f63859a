package vocabulary

import (
	"regexp"
	"slices"
	"strings"
)

// Poison is a fact of a lot that makes it unfit, with the words by which people tell of it.
type Poison struct {
	Word    string // the statement
	Is, Not string // what it takes where the lot is unfit, and where it is not
	Tells   *regexp.Regexp
}

// Poisons are the facts of a lot that make it unfit.
var Poisons = []Poison{
	{"treated", SaidYes, SaidNo, regexp.MustCompile(`(?i)\b(?:(?:un)?(?:treated|dressed|coated|dyed)|(?:fungicid|insecticid|pesticid)\w*|dyes?|seed[\s-](?:dressing|treatment|coating)s?|pink\s+(?:seeds?|grains?|barley|wheat|coat\w*))\b`)},
	{"ergot", SaidFound, SaidNone, regexp.MustCompile(`(?i)\b(?:ergot\w*|black\s+horns?)\b`)},
	{"mould", SaidFound, SaidNone, regexp.MustCompile(`(?i)\b(?:mou?ld(?:s|y|ed|ier)?|fusarium|mycotoxins?)\b`)},
}

// PoisonOf gives the poison of which a statement tells.
func PoisonOf(word string) (p Poison, ok bool) {
	i := slices.IndexFunc(Poisons, func(p Poison) bool { return p.Word == word })
	if i < 0 {
		return p, false
	}
	return Poisons[i], true
}

// Words that doubt, that turn round, and that say what is to be done and not what is so.
var (
	doubting = regexp.MustCompile(`(?i)\?|\b(?:un)?(?:known?|knows|knew|sure|certain|clear|tested|checked|aware)\b|\b(?:idea|ideas|dunno|maybe|perhaps|possibly|probably|might|could|clue|think|guess|suppose\w*|hope|yet|doubt\w*)\b`)
	denying  = regexp.MustCompile(`(?i)\b(?:no|not|nor|none|never|nothing|nobody|without|free|clean|nil|absent|zero|negative|false|nope|cannot|untreated|undressed|uncoated|undyed|\w+n['’]?t)\b`)
	advising = regexp.MustCompile(`(?i)\b(?:if|when|whenever|unless|until|before|check|look|watch|avoid|prevent\w*|against|risk|beware|otherwise|lest|so that|throw|discard|do not|don['’]?t)\b`)
	ofWater  = regexp.MustCompile(`(?i)\b(?:water|heat|steam|tank|wood)\b`)
	// plainDenial is all that a sentence may hold that says for certain of a lot that it is not so.
	plainDenial = regexp.MustCompile(`(?i)^(?:\s|[,.:;()-]|\b(?:no|not|none|never|nothing|without|free|clean|nil|absent|zero|negative|false|nope|n|untreated|undressed|uncoated|treated|dressed|coated|is|was|were|it|the|a|an|my|i|has|have|been|at|all|any|and|or|of|with|in|on|from|seed|grain|barley|wheat|rye|oats?|spelt|kernels?|fungicides?|dyes?|ergots?|mou?lds?|mou?ldy|found|saw|seen|there)\b)*$`)
)

// Said gives what a text tells of the poison: that it is there, that it is not, or unknown where it
// doubts, or denies otherwise than in plain words. It is "" where the text says nothing of it.
func (p Poison) Said(text string) string {
	denials := len(denying.FindAllString(text, -1))
	switch {
	case doubting.MatchString(text):
		return SaidUnknown
	case denials == 1 && plainDenial.MatchString(text) && !strings.EqualFold(strings.TrimSpace(text), "not") && (p.Not == SaidNone || !strings.Contains(strings.ToLower(text), "seen")):
		return p.Not
	case denials > 0 || strings.EqualFold(strings.TrimSpace(text), "none known"):
		return SaidUnknown
	case p.Tells.MatchString(text):
		return p.Is
	}
	return ""
}

// Told gives what a sentence about a process tells of the poison; certain is false where it
// advises, doubts, or may be of something else.
func (p Poison) Told(sentence string) (said string, certain, tells bool) {
	if !p.Tells.MatchString(sentence) {
		return "", false, false
	}
	if advising.MatchString(sentence) || p.Is == SaidYes && ofWater.MatchString(sentence) && !strings.Contains(strings.ToLower(sentence), "icid") && !strings.Contains(strings.ToLower(sentence), "seed") {
		return SaidUnknown, false, true
	}
	said = p.Said(sentence)
	return said, said != SaidUnknown, true
}
