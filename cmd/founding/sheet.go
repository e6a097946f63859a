package founding

import (
	"fmt"
	"strings"
)

// sheet is a text of the language that is being written, line by line. The layout puts it
// in order.
type sheet struct {
	strings.Builder
	questions map[string]Question
	seeks     bool // a plan is sought, and not only laid out
	asking
}

func (a asking) sheet() *sheet {
	s := &sheet{questions: map[string]Question{}, asking: a}
	for q := range a.all {
		s.questions[q.Key] = q
	}
	return s
}

func (s *sheet) line(format string, args ...any) { fmt.Fprintf(s, format+"\n", args...) }

// value is the answer, or what is usual, and what is to be said of that.
func (s *sheet) value(key string) (text, usual string) {
	if s.has(key) {
		return s.Answers[key], ""
	}
	q := s.questions[key]
	if q.Usual == None || s.Answers[key] == None {
		return None, ""
	}
	usual = "usual"
	if q.FindOut != "" {
		usual += "; find it out: " + q.FindOut
	}
	return q.Usual, usual
}

// fact writes a statement of an answer, if there is something to write.
func (s *sheet) fact(word, key string) {
	if text, usual := s.value(key); text != None && text != "" {
		s.noted(word+" "+text, usual)
	}
}

// columns is how wide a line may get.
const columns = 80

// noted writes a statement with a comment: behind it where that stays within the columns
// whatever stands beside it, else above it.
func (s *sheet) noted(statement, comment string) {
	const beside = 2 + len("germination ") + len("56 to 64 °F") + 2 + len("# ") // what a neighbour may push it to
	switch {
	case comment == "":
		s.line("%s", statement)
	case max(beside, len([]rune(statement))+6)+len([]rune(comment)) <= columns-2:
		s.line("%s  # %s", statement, comment)
	default:
		s.comment(comment)
		s.line("%s", statement)
	}
}

// comment writes a comment on lines of its own.
func (s *sheet) comment(text string) {
	line, words := "#", strings.Fields(text)
	for i := 0; i < len(words); i++ {
		word := words[i]
		if word[0] >= '0' && word[0] <= '9' && i+1 < len(words) { // a number stays with its unit
			i++
			word += " " + words[i]
		}
		if len([]rune(line+word)) > columns-6 && line != "#" {
			s.line("%s", line)
			line = "#"
		}
		line += " " + word
	}
	s.line("%s", line)
}

// open begins a block.
func (s *sheet) open(word, name string) { s.line("\n%s %s {", word, quoted(name)) }
func (s *sheet) shut()                  { s.line("}") }
