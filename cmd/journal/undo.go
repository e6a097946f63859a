package journal

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Line is a line of a record.
type Line struct {
	Number int // of the file, from 1
	Words  string
	Opens  bool // it is of what a record is opened with, and was not noted
}

// Lines lists the lines of the record.
func (r Record) Lines() (batch string, list []Line, err error) {
	var e Entry
	tree, home, err := r.open(&e)
	if err != nil {
		return "", nil, err
	}
	for _, s := range home.Body.Statements {
		list = append(list, Line{lineOf(tree, s), wordsOf(tree, s), !notes(s)})
	}
	return e.Batch, list, nil
}

func wordsOf(t *syntax.Tree, s *syntax.Statement) string {
	return strings.Join(strings.Fields(string(t.File.Bytes()[s.Start:s.End])), " ")
}

// opened are what a record is opened with.
var opened = []string{began, from, pinned}

const (
	began  = "began"
	from   = "from"
	pinned = "pinned"
)

// notes tells whether a line is one that was noted.
func notes(s *syntax.Statement) bool { return !slices.Contains(opened, s.Verb.Text) }

// WithoutLast gives the text of the file without the last line of the record, byte for byte as it
// was before that was noted, and the line.
func (r Record) WithoutLast() (text []byte, line Line, batch string, err error) {
	var e Entry
	tree, home, err := r.open(&e)
	if err != nil {
		return nil, line, "", err
	}
	list := home.Body.Statements
	if len(list) == 0 || !notes(list[len(list)-1]) {
		return nil, line, "", Refusal(fmt.Sprintf("nothing is taken back: nothing is noted yet in batch %q", e.Batch))
	}
	s := list[len(list)-1]
	line = Line{Number: lineOf(tree, s), Words: wordsOf(tree, s)}
	if text = r.asBefore(tree, home, s); text == nil {
		text, err = r.cut(tree, home, s)
	}
	return text, line, e.Batch, err
}

// asBefore gives the text to which appending the line gives this one, nil where there is none:
// the line was written by hand.
func (r Record) asBefore(tree *syntax.Tree, home, s *syntax.Statement) []byte {
	text := tree.File.Bytes()
	start := bytes.LastIndexAny(text[:s.Start], "\r\n") + 1
	if s.Trail != nil || strings.Trim(string(text[start:s.Start]), " \t") != "" {
		return nil
	}
	var tries [][]byte
	for range 2 { // an empty line may part it from the one above
		if start = beforeEnd(text, start); start < 0 {
			break
		}
		tries = append(tries, slices.Concat(text[:start], text[s.End:]))
		if closing := home.Body.End - 1; strings.TrimSpace(string(text[s.End:closing])) == "" {
			tries = append(tries, slices.Concat(text[:start], text[closing:]))
		}
	}
	for _, try := range tries {
		again := r
		again.Text = try
		other, its, err := again.open(&Entry{})
		if err != nil || len(its.Body.Statements) != len(home.Body.Statements)-1 {
			continue
		}
		if made, _ := layout.Append(other, its, s, vocabulary.Batch); bytes.Equal(made, text) {
			return try
		}
	}
	return nil
}

// beforeEnd is the offset of the end of the line that ends in front of an offset; -1 for none.
func beforeEnd(text []byte, at int) int {
	switch {
	case at >= 2 && text[at-2] == '\r' && text[at-1] == '\n':
		return at - 2
	case at >= 1 && (text[at-1] == '\n' || text[at-1] == '\r'):
		return at - 1
	}
	return -1
}

// cut gives the text without a line, its comment with it.
func (r Record) cut(tree *syntax.Tree, home, s *syntax.Statement) ([]byte, error) {
	text := tree.File.Bytes()
	start := bytes.LastIndexAny(text[:s.Start], "\r\n") + 1
	to := s.End
	if i := bytes.IndexAny(text[to:], "\r\n"); i >= 0 {
		to += i
	}
	own := source.Span{Start: start, End: to}
	shared := slices.ContainsFunc(home.Body.Statements, func(x *syntax.Statement) bool { return x != s && x.Start < own.End && x.End > own.Start })
	if end := beforeEnd(text, start); !shared && end >= 0 && home.Body.Start < start && to <= home.Body.End-1 {
		return slices.Concat(text[:end], text[to:]), nil
	}
	return nil, Refusal(fmt.Sprintf("line %d of %s holds more than that; lay the record out first: maltwright tidy %[2]s", lineOf(tree, s), r.Name))
}

// Gone lists the lines of the record that another text of its file has not.
func (r Record) Gone(other []byte) (lines []Line, batch string) {
	var e Entry
	tree, home, err := r.open(&e)
	if err != nil {
		return nil, ""
	}
	r.Text = other
	then, its, err := r.open(&Entry{})
	if err != nil {
		return nil, e.Batch
	}
	left := map[string]int{}
	for _, s := range its.Body.Statements {
		left[wordsOf(then, s)]++
	}
	for _, s := range home.Body.Statements {
		if words := wordsOf(tree, s); left[words] > 0 {
			left[words]--
		} else {
			lines = append(lines, Line{lineOf(tree, s), words, !notes(s)})
		}
	}
	return lines, e.Batch
}
