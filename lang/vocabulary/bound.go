package vocabulary

import (
	"slices"
	"strings"

	q "maltwright/lang/quantity"
)

// A bound stands in front of its value. Its words are those of its op; it may be
// written with a sign instead.
var bounds = []struct {
	op    q.Op
	signs []string
}{
	{q.AtLeast, []string{">=", "=>", "≥"}},
	{q.AtMost, []string{"<=", "=<", "≤"}},
	{q.Is, []string{"=", "=="}},
	{q.Above, []string{">"}},
	{q.Below, []string{"<"}},
}

var opByWord, restsByWord = func() (map[string]q.Op, map[string][]string) {
	ops, rests := map[string]q.Op{}, map[string][]string{}
	for _, b := range bounds {
		for _, written := range append([]string{b.op.String()}, b.signs...) {
			ops[written] = b.op
		}
		first, rest, _ := strings.Cut(b.op.String(), " ")
		rests[first] = append(rests[first], rest)
	}
	return ops, rests
}()

// BoundOp gives the bound of a word, of two words with a space between, or of a sign.
func BoundOp(written string) (op q.Op, ok bool) {
	op, ok = opByWord[written]
	return op, ok
}

// Signs lists the signs that may be written for a bound.
func Signs(op q.Op) []string {
	for _, b := range bounds {
		if b.op == op {
			return slices.Clone(b.signs)
		}
	}
	return nil
}

// BoundRests lists what follows the first word of a bound to make it one: least and
// most behind at, and "" where the word stands alone. It is nil for any other word.
// The list is not to be changed.
func BoundRests(first string) []string { return restsByWord[first] }

// SignLength gives the bytes of the longest sign of a bound at the start of a text, 0
// where none stands there.
func SignLength(text string) int {
	longest := 0
	for _, b := range bounds {
		for _, sign := range b.signs {
			if strings.HasPrefix(text, sign) {
				longest = max(longest, len(sign))
			}
		}
	}
	return longest
}

// To stands between the two ends of a range; it opens a clause too. And joins two
// tests of a condition.
const (
	To  = "to"
	And = "and"
)

var clauseSet = func() map[string]bool {
	set := map[string]bool{}
	for _, r := range allRows {
		for _, c := range r.Clauses {
			set[c.Word] = true
		}
	}
	return set
}()

// IsClause tells whether a word opens a clause. It does so wherever it stands, so that
// it can be no value.
func IsClause(word string) bool { return clauseSet[word] }

// ClauseWords lists the words that open a clause, by the alphabet.
func ClauseWords() []string {
	list := make([]string, 0, len(clauseSet))
	for word := range clauseSet {
		list = append(list, word)
	}
	slices.Sort(list)
	return list
}

// Follows tells whether a word can stand behind a number without being its unit.
func Follows(word string) bool {
	return clauseSet[word] || word == And || restsByWord[word] != nil
}
