package journal

import (
	"regexp"
	"strconv"
	"strings"
	"time"

	"maltwright/lang/calendar"
	"maltwright/lang/vocabulary"
)

// typed reads the words as a statement. What people write otherwise than a record has it is put right
// where only one thing can be meant, as the time in "bed 17 °C at fri 18:00", and else told in full.
func (r Reading) typed(now time.Time) (typed, error) {
	r.Words = warned(r.Words)
	if err := r.odd(); err != nil {
		return typed{}, err
	}
	text := r.joined()
	x, err := typedAs(text)
	if err == nil {
		if _, ok := stampOf(x.Statement); ok {
			return x, nil
		}
	}
	dated, found, wrong := r.withDate(text, now)
	switch {
	case wrong != nil:
		return x, wrong
	case found:
		return typedAs(dated)
	}
	return x, err
}

// mostTimeWords is the most words that a time in a reading has: the day before yesterday at 7 am.
const mostTimeWords = 7

// withDate writes a time that is said within a reading, such as at fri 18:00, as a record has it. It is
// false where there is none, or the record reads it as it stands.
func (r Reading) withDate(text string, now time.Time) (dated string, found bool, err error) {
	words := strings.Fields(text)
	quoted := false
	for i, word := range words {
		if word == vocabulary.ClauseAt && !quoted {
			if n := timeWords(words[i+1:]); n > 0 {
				said := strings.Join(words[i+1:i+1+n], " ")
				if s, err := statement(turned + " " + vocabulary.ClauseAt + " " + said); err == nil {
					if _, ok := stampOf(s); ok {
						return text, false, nil
					}
				}
				when, err := r.said(vocabulary.ClauseAt, said, now)
				return strings.Join(append(append(append([]string(nil), words[:i+1]...), when), words[i+1+n:]...), " "), true, err
			}
		}
		quoted = quoted != (strings.Count(word, `"`)%2 == 1)
	}
	return text, false, nil
}

// timeWords is how many of the words are a time, as people say it; 0 for none.
func timeWords(words []string) (n int) {
	for k := 1; k <= min(len(words), mostTimeWords); k++ {
		if calendar.Looks(strings.Join(words[:k], " ")) {
			n = k
		}
	}
	return n
}

// odd tells of words that read as something else than was meant, or as nothing, with the line to type.
func (r Reading) odd() error {
	words := strings.Fields(strings.Join(r.Words, " "))
	if len(words) == 0 {
		return nil
	}
	if i := pointed(words); i >= 0 {
		was := words[i]
		words[i] = strings.Replace(was, ",", ".", 1)
		if said := spelt(words); said[0] != readAt { // of a temperature the place is found by itself
			words = said
		}
		return misuse("%q has a decimal comma, and a record has a point; write %s", was, strings.Join(words, " "))
	}
	if words[0] == vocabulary.RecordChanged {
		if line := withReason(words); line != "" {
			return misuse("a change says why it was made; write %s", line)
		}
	}
	if text, is := r.remark(words); is {
		return misuse("%q is not a word of a batch; of what is seen, smelt or tasted write %s %s", words[0], vocabulary.VerbRemark, text)
	}
	return nil
}

// withComma is a number with a decimal comma. Three figures behind it may be thousands.
var withComma = regexp.MustCompile(`^[-−]?\d+,(\d{1,2}|\d{4,})(\D.*)?$`)

// pointed is where a number with a decimal comma stands in the words of a reading, -1 for nowhere. What
// is free text or a name may hold any.
func pointed(words []string) int {
	if words[0] == vocabulary.VerbRemark || words[0] == vocabulary.RecordChanged {
		return -1
	}
	for i, word := range words {
		switch {
		case strings.ContainsAny(word, "\"“") || word == vocabulary.ClauseBecause:
			return -1
		case withComma.MatchString(word):
			return i
		}
	}
	return -1
}

// withReason writes a change that says no reason with the place for one behind it; "" where it says one.
func withReason(words []string) (line string) {
	for _, word := range words {
		if word == vocabulary.ClauseBecause || strings.ContainsAny(word, "\"“") {
			return ""
		}
	}
	if len(words) < 3 {
		return ""
	}
	return strings.Join(words, " ") + ` because "..."`
}

// remarkWords is from how many words on a reading that begins with no word of a batch is a sentence.
const remarkWords = 3

// remark tells whether the words are a sentence, and gives it as the text of a remark.
func (r Reading) remark(words []string) (text string, is bool) {
	first := strings.ToLower(words[0])
	switch {
	case len(words) < remarkWords || len(spelt(words)) > len(words) || first[0] >= '0' && first[0] <= '9':
		return "", false
	case known(first):
		return "", false
	}
	for _, word := range words {
		if strings.ContainsAny(word, "0123456789\"{}") {
			return "", false // a slip in a figure is told as that
		}
	}
	return strconv.Quote(strings.Join(words, " ")), true
}

// known tells whether a word is one of a batch, or is understood as one.
func known(word string) bool {
	if _, ok := vocabulary.Lookup(vocabulary.Batch, word); ok {
		return true
	}
	if other, ok := vocabulary.OtherWord(vocabulary.Batch, word); ok && other.Means != "" {
		return true
	}
	_, ok := vocabulary.Meant(vocabulary.Batch, word)
	return ok
}
