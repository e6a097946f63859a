package pdf

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
)

// box stands for a letter that the fonts lack.
const box = "□"

// legible is a text as it is written; what the fonts lack is kept for Missing.
func (p *Paper) legible(text string) string {
	shown, lost := covered(text)
	for _, l := range lost {
		p.lacking[p.file.PageNo()] = true
		if !p.lacks[l] {
			p.lacks[l] = true
			p.missing = append(p.missing, l)
		}
	}
	return shown
}

// shown is the same of a text that is only measured.
func (p *Paper) shown(text string) string {
	shown, _ := covered(text)
	return shown
}

// covered is a text in letters of the fonts, and those that they lack. What is one
// letter to the reader is replaced whole, however many characters it is made of.
func covered(text string) (shown string, lost []string) {
	text = words.Safe(text)
	if strings.IndexFunc(text, outside) < 0 {
		return text, nil
	}
	var b strings.Builder
	g := uniseg.NewGraphemes(text)
	for g.Next() {
		letter := g.Str()
		if whole, ok := composed[letter]; ok {
			letter = whole
		}
		letter = strings.Map(alike, letter)
		if strings.IndexFunc(letter, outside) >= 0 {
			lost = append(lost, g.Str())
			letter = box
		}
		b.WriteString(letter)
	}
	return b.String(), lost
}

func outside(r rune) bool { return !unicode.Is(letters, r) }

// alike gives for blanks and hyphens of other widths the plain one.
func alike(r rune) rune {
	switch {
	case r >= 0x2000 && r <= 0x200A, r == 0x202F, r == 0x205F, r == 0x3000:
		return ' '
	case r == 0x2010, r == 0x2011:
		return '-'
	}
	return r
}

// Missing are the letters that were to be written and that the fonts lack, in the order in
// which they came. On the paper each is a box.
func (p *Paper) Missing() []string { return p.missing }

// Lacking tells whether such a box stands on a page; the first is 1.
func (p *Paper) Lacking(page int) bool { return p.lacking[page] }

// mostNamed is how many letters a note names.
const mostNamed = 8

// Note says on the paper what its boxes stand for, by numbers, since the letters cannot be
// shown; "" where nothing is missing.
func (p *Paper) Note() string {
	if len(p.missing) == 0 {
		return ""
	}
	return fmt.Sprintf("%s stands for a letter that this paper's fonts lack: %s", box, named(p.missing, numbers))
}

// Lost says the same on a screen, which shows the letters too.
func (p *Paper) Lost() string {
	if len(p.missing) == 0 {
		return ""
	}
	return fmt.Sprintf("the fonts of the paper lack %s; a box stands in the place of each", named(p.missing, func(l string) string {
		return fmt.Sprintf("%s (%s)", words.Safe(l), numbers(l))
	}))
}

func named(list []string, name func(string) string) string {
	var out []string
	for _, l := range list[:min(len(list), mostNamed)] {
		out = append(out, name(l))
	}
	if more := len(list) - len(out); more > 0 {
		out = append(out, fmt.Sprintf("and %d more", more))
	}
	return strings.Join(out, ", ")
}

// mostNumbers is how many characters of one letter are told by number.
const mostNumbers = 4

// numbers are those of the characters of a letter: U+9EA6.
func numbers(letter string) string {
	var out []string
	for _, r := range letter {
		if len(out) == mostNumbers {
			return strings.Join(out, " ") + " …"
		}
		out = append(out, fmt.Sprintf("%U", r))
	}
	return strings.Join(out, " ")
}
