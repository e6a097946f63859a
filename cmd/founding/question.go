package founding

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Kind is what an answer looks like.
type Kind int

// The kinds of answers.
const (
	OneOf  Kind = iota // one of the choices
	Amount             // a number with its unit
	Span               // two numbers with their unit, from the lower to the higher: 48 to 62 °F
	Text               // a name
	Hours              // a span of the day: 06:30 to 22:30
	Count              // how many of how many: 96 of 100
)

// Choice is one of the answers to a question.
type Choice struct {
	Word string // the answer
	Says string // what it is, in a few words; may be ""
}

// Question is one question.
type Question struct {
	Key     string // its name in Answers and in a file of answers
	Ask     string // one short sentence
	About   string // a line or two of help, shown on demand
	Kind    Kind
	Choices []Choice // of OneOf
	Unit    string   // of a number that is typed without one; "" for none
	Usual   string   // what stands where somebody does not know, with its unit; "" where nothing does
	FindOut string   // how to find it out; may be ""

	sense *vocabulary.Sense // what makes sense; nil where anything may
	of    quantity.Dimension
	also  map[string]string // other words for the choices
	check func(text string) error
	free  bool // it may be left out: "none" is an answer
}

// None is the answer of something that is not there.
const None = "none"

// unsure are the ways to say that one does not know.
var unsure = []string{DontKnow, "dont know", "don’t know", "do not know", "?", "dk", "unknown", "not sure", "no idea", "i don't know", "i dont know", "idk"}

// Refusal says why an answer is not taken and what to do.
type Refusal struct{ Message, Do string }

func (r *Refusal) Error() string { return r.Message + "; " + r.Do }

func refuse(do, message string, args ...any) error {
	return &Refusal{fmt.Sprintf(message, args...), do}
}

// Take reads an answer and gives it as it stands in Answers. What cannot be an answer is
// a *Refusal.
func (q Question) Take(text string) (string, error) {
	text = strings.Join(strings.Fields(text), " ")
	low := strings.ToLower(text)
	switch {
	case slices.Contains(unsure, low) && !q.chosen(low):
		if q.Usual == "" {
			return "", refuse("type "+q.form(), "this question has no usual answer")
		}
		return DontKnow, nil
	case text == "":
		return "", refuse("type "+q.form()+", or "+DontKnow, "there is no answer")
	case q.free && slices.Contains([]string{"none", "no", "nothing", "0"}, low):
		return None, nil
	}
	taken, err := takers[q.Kind](q, text)
	if err == nil && q.check != nil {
		err = q.check(taken)
	}
	return taken, err
}

// chosen tells whether a word is one of the choices themselves.
func (q Question) chosen(word string) bool {
	return slices.ContainsFunc(q.Choices, func(c Choice) bool { return strings.EqualFold(c.Word, word) })
}

var takers = [...]func(Question, string) (string, error){
	OneOf: Question.oneOf, Amount: Question.amount, Span: Question.span, Text: Question.text, Hours: Question.hours, Count: Question.count,
}

// form tells what an answer looks like.
func (q Question) form() string {
	switch q.Kind {
	case OneOf:
		return "one of " + strings.Join(q.words(), ", ")
	case Amount:
		return "a number with its unit, as " + q.example()
	case Span:
		return "two numbers with their unit, as " + q.example()
	case Hours:
		return "two times of day, as 06:30 to 22:30"
	case Count:
		return "how many of how many, as 96 of 100"
	}
	return "a name"
}

func (q Question) example() string {
	if q.Usual != "" && strings.ContainsAny(q.Usual[:1], "0123456789") { // and not a word such as none
		return q.Usual
	}
	return "10 " + q.Unit
}

func (q Question) words() []string {
	words := make([]string, len(q.Choices))
	for i, c := range q.Choices {
		words[i] = c.Word
	}
	return words
}

// oneOf takes a choice by its word, by its number, by another word for it or by how it begins.
func (q Question) oneOf(text string) (string, error) {
	words := q.words()
	low := strings.ToLower(text)
	if word, ok := q.also[low]; ok && slices.Contains(words, word) {
		return word, nil
	}
	var begin []string
	for i, word := range words {
		if strings.EqualFold(word, text) || low == fmt.Sprint(i+1) {
			return word, nil
		}
		if strings.HasPrefix(strings.ToLower(word), low) {
			begin = append(begin, word)
		}
	}
	if len(begin) == 1 {
		return begin[0], nil
	}
	if word, ok := nearest.Word(low, words); ok {
		return "", refuse("did you mean "+word+"?", "%q is none of %s", text, strings.Join(words, ", "))
	}
	return "", refuse("type one of them, or its number", "%q is none of %s", text, strings.Join(words, ", "))
}

// text takes a name.
func (q Question) text(text string) (string, error) {
	if strings.ContainsAny(text, "\"\\{}#\x00") || strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r == '\ufffd' }) {
		return "", refuse("type it with letters, digits and blanks", "a name holds no quotes, braces, # or \\")
	}
	if n := len([]rune(text)); n > 40 {
		return "", refuse("make it shorter", "the name has %d signs, and 40 are the most", n)
	}
	return text, nil
}
