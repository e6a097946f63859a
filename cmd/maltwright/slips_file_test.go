package main

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"fmt"
	"html"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// judgeFile judges a whole file that was saved or written otherwise.
func judgeFile(t *testing.T, bases map[string]base, s slip) verdict {
	if s.typed == "english" {
		return judgeEnglish(strings.ReplaceAll(s.base, "⏎", "\n") + "\n")
	}
	b, ok := bases[s.base]
	require.True(t, ok, s.base)
	do, ok := savings[s.typed]
	require.True(t, ok, s.typed)
	typed := do(b)
	if s.meant[0] == "read" {
		return judgeText(t, s, readingOf(b.text), typed, []string{b.text})
	}
	first := readingOf(typed)
	if first.reads() && same(first, readingOf(b.text)) {
		return verdict{right: true}
	}
	told := slices.DeleteFunc(slices.Clone(first.found), func(f finding.Finding) bool { return f.Severity < finding.Fault })
	v := verdict{because: said(told)}
	if first.reads() {
		v.harm = "it reads in silence as something else"
	}
	if len(told) == 1 {
		text := told[0].Message + " " + told[0].Hint
		v.right = strings.Contains(text, "plain text") || strings.Contains(text, "UTF-8")
	}
	return v
}

// listNumber is that of a line of the list, which says nothing of malting.
var listNumber = regexp.MustCompile(`(?m)^ *\d+[.)] `)

// judgeEnglish judges a file that is no process yet: one finding shows the frame to put
// around what was written.
func judgeEnglish(text string) verdict {
	first := readingOf(text)
	told := slices.DeleteFunc(slices.Clone(first.found), func(f finding.Finding) bool { return f.Severity < finding.Caution })
	v := verdict{because: fmt.Sprintf("%d findings: %s", len(told), said(told))}
	for _, f := range told {
		for _, r := range remedies(f) {
			after := applied(text, r.edits)
			for _, n := range numbers.FindAllString(listNumber.ReplaceAllString(text, ""), -1) {
				if (readingOf(after).reads() || !r.words) && !strings.Contains(after, n) {
					v.harm = n + " is lost with: " + r.says
				}
			}
		}
	}
	v.right = len(told) == 1 && strings.Contains(told[0].Hint+fmt.Sprint(told[0].Offers), `process "`)
	return v
}

// savings are what editors, mail and other programs make of a file.
var savings = map[string]func(b base) string{
	"utf16le with mark": func(b base) string { return wide(binary.LittleEndian, "\ufeff"+b.text) },
	"utf16be with mark": func(b base) string { return wide(binary.BigEndian, "\ufeff"+b.text) },
	"utf16le":           func(b base) string { return wide(binary.LittleEndian, b.text) },
	"utf16be":           func(b base) string { return wide(binary.BigEndian, b.text) },
	"utf8 with mark":    func(b base) string { return "\ufeff" + b.text },
	"crlf":              replaced("\n", "\r\n"),
	"cr":                replaced("\n", "\r"),
	"latin1":            replaced("°", "\xb0"),
	"windows quotes":    func(b base) string { return requoted(b.text, "\x93", "\x94") },
	"rtf":               func(b base) string { return richText(b.text) },
	"docx":              func(b base) string { return zipped("word/document.xml", "<w:t>"+html.EscapeString(b.text)+"</w:t>") },
	"odt":               func(b base) string { return zipped("content.xml", "<text:p>"+html.EscapeString(b.text)+"</text:p>") },
	"pdf": func(b base) string {
		return "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n1 0 obj\n<< /Type /Catalog >>\nendobj\n" + b.text + "%%EOF\n"
	},
	"doc":  func(b base) string { return "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + strings.Repeat("\x00", 504) + b.text },
	"png":  func(b base) string { return "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x02\x00" },
	"gzip": func(b base) string { return gzipped(b.text) },
	"html": func(b base) string {
		return "<!DOCTYPE html>\n<html><body>\n<pre>\n" + html.EscapeString(b.text) + "</pre>\n</body></html>\n"
	},
	"html entities": func(b base) string { return strings.ReplaceAll(html.EscapeString(b.text), "°", "&deg;") },
	"eml": func(b base) string {
		return "From: anna@example.org\nSubject: pale malt\nContent-Type: text/plain; charset=utf-8\nContent-Transfer-Encoding: quoted-printable\n\n" + strings.ReplaceAll(b.text, "°", "=C2=B0")
	},
	"csv":  func(b base) string { return "step;hours;temperature\nsoak;7;13\nrest;9;14\nsoak;7;13\n" },
	"nbsp": replaced(" ", "\u00a0"),
	"narrow nbsp": func(b base) string {
		return strings.NewReplacer(" °", "\u202f°", " %", "\u202f%", " h ", "\u202fh ").Replace(b.text)
	},
	"tabs":               replaced("  ", "\t"),
	"mojibake degree":    replaced("°", "Â°"),
	"mojibake quotes":    func(b base) string { return requoted(b.text, "â€œ", "â€\u009d") },
	"zero width space":   replaced(" °", "\u200b °"),
	"soft hyphen":        replaced("air-on", "air\u00adon"),
	"typographic quotes": func(b base) string { return requoted(b.text, "“", "”") },
	"low quotes":         func(b base) string { return requoted(b.text, "„", "“") },
	"guillemets":         func(b base) string { return requoted(b.text, "«", "»") },
	"single quotes":      func(b base) string { return requoted(b.text, "'", "'") },
	"fullwidth":          func(b base) string { return strings.NewReplacer("{", "｛", "}", "｝", "%", "％").Replace(b.text) },
	"markdown fence":     func(b base) string { return "```\n" + b.text + "```\n" },
	"markdown list":      func(b base) string { return steps(b.text, "- ") },
	"quoted mail": func(b base) string {
		return regexp.MustCompile(`(?m)^`).ReplaceAllString(strings.TrimSuffix(b.text, "\n"), "> ") + "\n"
	},
	"line numbers":      numbered,
	"ctrl-z":            func(b base) string { return b.text + "\x1a" },
	"trailing nul":      func(b base) string { return b.text + "\x00\x00" },
	"form feed":         func(b base) string { return strings.Replace(b.text, "\n}\n", "\n}\n\f", 1) },
	"ring above":        replaced("°", "˚"),
	"masculine ordinal": replaced("°", "º"),
	"ring operator":     replaced("°", "∘"),
	"capitals": func(b base) string {
		return regexp.MustCompile(`(?m)^ *[a-z]`).ReplaceAllStringFunc(b.text, strings.ToUpper)
	},
	"no final newline": func(b base) string { return strings.TrimSuffix(b.text, "\n") },
	"blank lines":      replaced("\n", "\n\n"),
	"one line":         func(b base) string { return oneLine(b.text) },
	"brackets":         func(b base) string { return strings.NewReplacer("{", "[", "}", "]").Replace(b.text) },
	"parentheses":      func(b base) string { return strings.NewReplacer("{", "(", "}", ")").Replace(b.text) },
	"colons":           func(b base) string { return regexp.MustCompile(`(?m)^( +[a-z-]+) `).ReplaceAllString(b.text, "$1: ") },
	"equals":           func(b base) string { return facts(b, " = ") },
	"slashes comments": func(b base) string { return strings.ReplaceAll("// my malt\n"+b.text, " {\n", " { // begins\n") },
	"trailing commas":  func(b base) string { return regexp.MustCompile(`(?m)([^{}\s])$`).ReplaceAllString(b.text, "$1,") },
	"indented without braces": func(b base) string {
		return regexp.MustCompile(`(?m)^ *\}\n`).ReplaceAllString(strings.ReplaceAll(b.text, " {\n", "\n"), "")
	},
	"fraction slash": replaced("3/4", "3⁄4"),
}

func replaced(old, now string) func(base) string {
	return func(b base) string { return strings.ReplaceAll(b.text, old, now) }
}

func wide(order binary.AppendByteOrder, text string) string {
	var out []byte
	for _, u := range utf16.Encode([]rune(text)) {
		out = order.AppendUint16(out, u)
	}
	return string(out)
}

// requoted writes other quotes around names.
func requoted(text, open, shut string) string {
	return quotation.ReplaceAllStringFunc(text, func(q string) string { return open + q[1:len(q)-1] + shut })
}

func richText(text string) string {
	text = strings.NewReplacer("\\", `\\`, "{", `\{`, "}", `\}`, "°", `\'b0`, "\n", "\\par\n").Replace(text)
	return `{\rtf1\ansi\ansicpg1252{\fonttbl\f0\fswiss Helvetica;}` + "\n\\f0\\fs24 " + text + "}"
}

func zipped(name, text string) string {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	f, err := w.Create(name)
	if err == nil {
		_, err = f.Write([]byte(text))
	}
	if err != nil || w.Close() != nil {
		panic("a buffer takes what is written")
	}
	return b.String()
}

func gzipped(text string) string {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	if _, err := w.Write([]byte(text)); err != nil || w.Close() != nil {
		panic("a buffer takes what is written")
	}
	return b.String()
}

// steps puts a sign in front of each statement that opens no block.
func steps(text, sign string) string {
	return regexp.MustCompile(`(?m)^( *)([a-z].*[^{\n])$`).ReplaceAllString(text, "${1}"+sign+"$2")
}

func numbered(b base) string {
	var out strings.Builder
	for i, line := range b.lines {
		fmt.Fprintf(&out, "%3d  %s\n", i+1, line)
	}
	return out.String()
}

func oneLine(text string) string {
	text = regexp.MustCompile(`([^{}])\n`).ReplaceAllString(text, "$1; ")
	return strings.Join(strings.Fields(text), " ") + "\n"
}

// facts puts a sign between the word and the value of each fact of the house.
func facts(b base, sign string) string {
	head, facts, _ := strings.Cut(b.text, "\n}\n")
	return head + "\n}\n" + regexp.MustCompile(`(?m)^(  [a-z-]+) +`).ReplaceAllString(facts, "$1"+sign)
}
