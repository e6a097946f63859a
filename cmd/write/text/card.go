package text

import (
	"strings"
	"unicode"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/words"
)

// Card writes the card as wide as the terminal: what is said of a line stands behind it as
// its comment where there is room, and below it where there is none.
func Card(parts []reference.CardPart, o Options) string {
	s := &Sheet{Options: o}
	for _, p := range parts {
		s.line("%s", s.bold(strings.ToUpper(p.Title)))
		for _, l := range p.Lines {
			s.cardLine(l)
		}
	}
	return s.String()
}

const (
	cardGap  = 2  // blanks between a line and its comment
	cardLess = 24 // columns that a comment behind its line has at least
	cardMore = 4  // by how much a line that goes on stands further in
)

func (s *Sheet) cardLine(l reference.CardLine) {
	if l.Code == "" {
		for _, line := range words.Wrap(l.Note, s.columns()) {
			s.line("%s", line)
		}
		return
	}
	code := brokenCode(l.Code, s.columns())
	last := code[len(code)-1]
	for _, line := range code[:len(code)-1] {
		s.line("%s", line)
	}
	used := len([]rune(last)) + cardGap
	room := s.columns() - used - len("# ")
	switch {
	case l.Note == "":
		s.line("%s", last)
		return
	case room >= min(cardLess, len([]rune(l.Note))):
		notes := words.Wrap(l.Note, room)
		if len(notes) <= 3 {
			s.line("%s", last+strings.Repeat(" ", cardGap)+"# "+notes[0])
			for _, note := range notes[1:] {
				s.line("%s", strings.Repeat(" ", used)+"# "+note)
			}
			return
		}
	}
	s.line("%s", last)
	in := strings.Repeat(" ", indentOf(last)+cardMore)
	for _, note := range words.Wrap(l.Note, s.columns()-len(in)-len("# ")) {
		s.line("%s", in+"# "+note)
	}
}

func indentOf(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

// brokenCode breaks a line of the language that is wider than the sheet: behind a ; or a brace
// where one stands late enough, else between words.
func brokenCode(code string, width int) (lines []string) {
	further := strings.Repeat(" ", indentOf(code)+cardMore)
	for {
		runes := []rune(code)
		at := 0
		if len(runes) > width {
			at = lastBreak(runes[:width+1], indentOf(code))
		}
		if at == 0 {
			return append(lines, code)
		}
		lines = append(lines, strings.TrimRight(string(runes[:at]), " "))
		code = further + strings.TrimLeft(string(runes[at:]), " ")
	}
}

// lastBreak is where to break, 0 where that is nowhere: not between a number and its unit, nor
// in front of a brace that closes.
func lastBreak(runes []rune, in int) int {
	word := 0
	for i := len(runes) - 1; i > in; i-- {
		if runes[i] != ' ' || unicode.IsDigit(runes[i-1]) || i+1 < len(runes) && runes[i+1] == '}' {
			continue
		}
		if word == 0 {
			word = i
		}
		if (runes[i-1] == ';' || runes[i-1] == '{') && i > len(runes)/2 {
			return i
		}
	}
	return word
}
