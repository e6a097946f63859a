package vocabulary

import (
	"slices"
	"strings"
)

// How it works
//
// What people write in the place of a word of the language stands in one table, in the files
// meant_*.go: other words for statements, for choices, for places and for what is measured,
// and phrases such as "no more than" for clause words and bounds. A word is looked up as fold
// leaves it, so that capitals, hyphens and blanks make no difference, and a word of the
// language that is only inflected need not stand in it.

// Other is a word that people write where the language has another one.
type Other struct {
	In      []Block
	Written []string // folded
	Means   string   // the statement that it is, with the values that stand behind it; words may follow: counted chit
	Likely  bool     // something else may be meant as well, so that it is only asked
	Write   string   // how it is said where the values stand elsewhere: what to write
	Sample  string   // the value in Write that stands for one that was written
}

// OtherWords gives the statements of the block that somebody may mean who writes the word, or
// several with a blank between each; those that stand in the table first.
func OtherWords(in Block, written string) (list []Other) {
	folded := fold(written)
	if word, ok := Same(written, Words(in)); ok {
		list = append(list, Other{Means: word})
	}
	for _, o := range others {
		if slices.Contains(o.In, in) && slices.Contains(o.Written, folded) {
			list = append(list, o)
		}
	}
	if word, ok := inflected(written, Words(in)); ok && len(list) == 0 {
		list = append(list, Other{Means: word})
	}
	return list
}

// OtherWord gives the first of them.
func OtherWord(in Block, written string) (Other, bool) {
	list := OtherWords(in, written)
	if len(list) == 0 {
		return Other{}, false
	}
	return list[0], true
}

var joints = strings.NewReplacer("-", "", "_", "", " ", "", "'", "")

// fold takes away what people vary without meaning anything by it.
func fold(written string) string { return joints.Replace(strings.ToLower(written)) }

// Same gives the word of a list that is the one written but for capitals, hyphens and blanks.
func Same(written string, among []string) (string, bool) {
	folded := fold(written)
	i := slices.IndexFunc(among, func(word string) bool { return fold(word) == folded })
	if i < 0 || folded == "" {
		return "", false
	}
	return among[i], true
}

// Inflected gives the one word of a list of which the one written is another form.
func Inflected(written string, among []string) (string, bool) { return inflected(written, among) }

// Ordinal gives the number of a word such as first or 2nd.
func Ordinal(word string) (n int, ok bool) {
	n, ok = ordinals[strings.ToLower(word)]
	return n, ok
}

// inflected gives the one word of a list of which the one written is another form: soaking,
// soaked and SOAK of soak, dries of dry.
func inflected(written string, among []string) (word string, ok bool) {
	folded := stem(fold(written))
	if len(folded) < 3 {
		return Same(written, among)
	}
	for _, w := range among {
		switch {
		case stem(fold(w)) != folded:
		case ok:
			return Same(written, among)
		default:
			word, ok = w, true
		}
	}
	return word, ok
}

// stem takes the ending of a verb or a plural off.
func stem(word string) string {
	for _, ending := range []string{"ing", "ed", "es", "s"} {
		if rest, ok := strings.CutSuffix(word, ending); ok && len(rest) > 2 {
			word = rest
			break
		}
	}
	if n := len(word); n > 3 && word[n-1] == word[n-2] && word[n-1] != 's' && word[n-1] != 'l' {
		word = word[:n-1] // stirring
	}
	word = strings.TrimSuffix(word, "e")
	if rest, ok := strings.CutSuffix(word, "y"); ok {
		word = rest + "i"
	}
	return word
}

// Synonym gives the word of a list that somebody means who writes another one, and whether it
// is the same thing or only the nearest to it.
func Synonym(written string, among []string) (word string, sure, ok bool) {
	folded := fold(written)
	for _, s := range synonyms {
		if slices.Contains(s.written, folded) && slices.Contains(among, s.means) {
			return s.means, s.sure, true
		}
	}
	return "", false, false
}

// PhraseKind is what a phrase stands for.
type PhraseKind int

// The kinds of phrase.
const (
	BoundPhrase  PhraseKind = iota // at most, in front of a value or behind it
	ClausePhrase                   // a clause word
)

// Phrase is one word or several that people write for a bound or a clause word.
type Phrase struct {
	Written string
	Means   string
	Kind    PhraseKind
}

// LongestPhrase is the most words that one has.
const LongestPhrase = 3

// FindPhrase finds a phrase by its words, with a blank between each.
func FindPhrase(written string) (Phrase, bool) {
	lower := strings.ToLower(written)
	i := slices.IndexFunc(phrases, func(p Phrase) bool { return p.Written == lower })
	if i < 0 {
		return Phrase{}, false
	}
	return phrases[i], true
}

// SaysNothing tells whether a word adds nothing to what stands beside it: the, about, or the
// height of a chimney.
func SaysNothing(word string) bool { return slices.Contains(fillers, fold(word)) }

// Idle gives how many of some words say nothing in a statement of its word, as wet of what was
// weighed after a soak.
func Idle(of string, words []string) int {
	for _, said := range idle[of] {
		if n := len(strings.Fields(said)); n <= len(words) && strings.EqualFold(strings.Join(words[:n], " "), said) {
			return n
		}
	}
	return 0
}

// Turns tells whether a word may turn the meaning of what stands beside it round, or says how
// often or how much, so that it is never left out.
func Turns(word string) bool {
	if SaysNothing(word) {
		return false
	}
	lower := strings.ToLower(word)
	return slices.Contains(turning, lower) || slices.ContainsFunc(phrases, func(p Phrase) bool {
		return slices.Contains(strings.Fields(p.Written), lower)
	})
}

// Known tells whether a word is one of the language, in whatever place.
func Known(word string) bool { return knownWords[strings.ToLower(word)] }

var knownWords = func() map[string]bool {
	set := map[string]bool{}
	add := func(words ...string) {
		for _, w := range words {
			for _, part := range append(strings.Fields(w), w) {
				set[part] = true
			}
		}
	}
	slots := func(list []Slot) {
		for _, s := range list {
			if s.Kind != Literal {
				add(s.Words...)
			}
			add(s.Places...)
		}
	}
	for _, r := range allRows {
		add(r.Word)
		slots(r.Slots)
		for _, c := range r.Clauses {
			add(c.Word)
			slots(c.Slots)
		}
	}
	for _, m := range allMeasures {
		add(m.Word)
		add(m.Words...)
	}
	return set
}()

// DayParts gives how many of a day, or of an hour, a word like daily says there is one in.
func DayParts(word string) (length string, ok bool) {
	length, ok = spans[strings.ToLower(word)]
	return length, ok
}

// Times gives the number that a word says how often by: twice is 2.
func Times(word string) (n int, ok bool) {
	n, ok = counts[strings.ToLower(word)]
	return n, ok
}

// Cardinal tells whether a word is a plain number: three, but not twice or third.
func Cardinal(word string) bool {
	return slices.Contains([]string{"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}, word)
}

// SaysSame tells whether a word behind that of a statement says nothing more: cool down.
func SaysSame(in Block, word, behind string) bool {
	folded := fold(word + " " + behind)
	return slices.ContainsFunc(others, func(o Other) bool {
		return o.Means == word && slices.Contains(o.In, in) && slices.Contains(o.Written, folded)
	})
}

// OfTimes tells whether a word only stands behind such a number: the times of three times.
func OfTimes(word string) bool { return word == "times" || word == "time" }

// Apiece tells whether a word says that there is one in each of what follows: a day, per day.
func Apiece(word string) bool {
	return slices.Contains([]string{"a", "per", "each", "every", "the"}, word)
}

// EachOne tells whether a word says the same of the first of a phrase: every day.
func EachOne(word string) bool { return word == "every" || word == "each" }

// AlsoOften tells whether a word says by itself how often something is done: daily.
func AlsoOften(word string) bool {
	_, ok := spans[word]
	return ok && strings.HasSuffix(word, "ly")
}
