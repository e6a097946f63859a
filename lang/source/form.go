package source

import (
	"bytes"
	"regexp"
	"unicode/utf8"
)

// Form is what a file is that is no plain text in UTF-8: how it is called, and the part of it that
// shows it.
type Form struct {
	Is string // a Rich Text document (.rtf)
	Span
}

// formats are files of other programs, by what they begin with.
var formats = []struct{ begins, is string }{
	{`{\rtf`, "a Rich Text document (.rtf)"},
	{"%PDF-", "a PDF document"},
	{"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "a document of an office program (.doc, .xls)"},
	{"\x1f\x8b", "a compressed file (.gz)"},
	{"\x89PNG\r\n", "an image (.png)"},
	{"\xff\xd8\xff", "an image (.jpg)"},
	{"GIF8", "an image (.gif)"},
	{"II*\x00", "an image (.tif)"},
	{"MM\x00*", "an image (.tif)"},
	{"7z\xbc\xaf", "a compressed file (.7z)"},
	{"\xff\xfe\x00\x00", "UTF-32 text"},
	{"\x00\x00\xfe\xff", "UTF-32 text"},
	{"\xff\xfe", "UTF-16 text"},
	{"\xfe\xff", "UTF-16 text"},
}

// archives are documents that are a zip inside, by the name of a file in them.
var archives = []struct{ holds, is string }{
	{"word/", "a document of a word processor (.docx)"},
	{"xl/", "a table of an office program (.xlsx)"},
	{"ppt/", "slides of an office program (.pptx)"},
	{"content.xml", "a document of an office program (.odt)"},
	{"", "a compressed folder (.zip)"},
}

var (
	webPage  = regexp.MustCompile(`(?i)^\s*(<!doctype html|<html|<head|<body|<\?xml)`)
	mail     = regexp.MustCompile(`(?im)^(content-type|content-transfer-encoding|mime-version):`)
	mailHead = regexp.MustCompile(`^[A-Za-z-]+: `)
	entity   = regexp.MustCompile(`&(deg|quot|lt|gt|amp|nbsp|apos|frac12|frac34|frac14|plusmn|ndash|mdash|#\d{2,4}|#x[0-9a-fA-F]{2,4});`)
)

// Form tells what a file is by its first bytes, or by what is found all over it. It is nil for
// a plain text in UTF-8, and for one that nothing is known of.
func (f *File) Form() *Form {
	text := f.text
	for _, is := range formats {
		if bytes.HasPrefix(text, []byte(is.begins)) {
			return &Form{is.is, Span{0, len(is.begins)}}
		}
	}
	if bytes.HasPrefix(text, []byte("PK\x03\x04")) {
		for _, is := range archives {
			if bytes.Contains(text, []byte(is.holds)) {
				return &Form{is.is, Span{0, 4}}
			}
		}
	}
	if at := webPage.FindIndex(text); at != nil {
		return &Form{"a web page (.html)", Span{at[0], at[1]}}
	}
	if wide(text) {
		return &Form{"UTF-16 text", Span{0, 2}}
	}
	head, _, parted := bytes.Cut(text, []byte("\n\n"))
	if at := mailHead.FindIndex(text); at != nil && parted && mail.Match(head) {
		return &Form{"a mail (.eml)", Span{at[0], at[1]}}
	}
	return nil
}

// Inner tells whether the text is the inside of a web page, in which signs have names. A file that
// reads may have some in its comments; so it is asked of one that does not.
func (f *File) Inner() *Form {
	at := entity.FindIndex(f.text)
	if at == nil || len(entity.FindAll(f.text, 2)) < 2 {
		return nil
	}
	return &Form{"the inside of a web page, in which signs have names such as " + string(f.text[at[0]:at[1]]), Span{at[0], at[1]}}
}

// wide tells whether nearly every other byte is a NUL, as in UTF-16 without its mark.
func wide(text []byte) bool {
	if len(text) < 8 {
		return false
	}
	some := text[:min(len(text), 400)]
	odd, even := 0, 0
	for i, b := range some {
		switch {
		case b != 0:
		case i%2 == 1:
			odd++
		default:
			even++
		}
	}
	return max(odd, even)*10 > len(some)*4 && min(odd, even)*10 < len(some)
}

// windows are the characters that Windows-1252 has where Latin-1 has none to be seen.
var windows = [...]rune{'€', 0, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0, 'Ž', 0, 0, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0, 'ž', 'Ÿ'}

// Western gives the character that a byte stands for in Windows-1252, in which much is saved
// that is not UTF-8; 0 where it stands for none.
func Western(b byte) rune {
	switch {
	case b < utf8.RuneSelf:
		return rune(b)
	case b < 0xa0:
		return windows[b-0x80]
	}
	return rune(b)
}
