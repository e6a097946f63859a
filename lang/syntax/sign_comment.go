package syntax

import (
	"regexp"
	"slices"
	"strings"

	"maltwright/lang/nearest"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// commentAt looks for a comment that begins with a sign of another language.
func (r *signReader) commentAt(i int) int {
	t := r.toks[i]
	at, rest := t.Pos.Offset, r.text[t.Pos.Offset:]
	start := r.lineStart(at)
	switch {
	case t.Type == kindComment:
		return r.numberSign(i)
	case strings.HasPrefix(rest, "/*"):
		return r.commentTo(i, "/*", "*/")
	case strings.HasPrefix(rest, "<!--"):
		return r.commentTo(i, "<!--", "-->")
	case strings.HasPrefix(rest, "//"):
		return r.comment(i, len(rest)-len(strings.TrimLeft(rest, "/")))
	case start && setsApart(rest):
		line := strings.TrimRight(r.text[at:r.lineEnd(at)], blanks)
		r.add(signFence, at, at+len(line), "# "+line)
		return r.from(i, r.lineEnd(at))
	case strings.HasPrefix(rest, "--") && !strings.HasPrefix(rest, "-->") && (start || r.text[at-1] == ' ' || r.text[at-1] == '\t'):
		return r.comment(i, len(rest)-len(strings.TrimLeft(rest, "-")))
	case t.Type == kindEnd && t.Value == ";":
		return r.semicolon(i)
	case t.Type == kindStray && (t.Value == "%" || t.Value == "'" && !r.name(i) || t.Value == "!") && r.words(i):
		return r.comment(i, 1)
	}
	return i
}

// comment makes a comment of the rest of the line.
func (r *signReader) comment(i, mark int) int {
	at := r.toks[i].Pos.Offset
	end := r.lineEnd(at)
	text := "#"
	if at+mark < end && !strings.ContainsAny(r.text[at+mark:at+mark+1], blanks) {
		text = "# "
	}
	r.add(signComment, at, at+mark, text)
	return r.from(i, end)
}

// words tells whether a sign begins a comment in words: nothing, or a blank, stands in front of it, no quote
// closes it and what follows is a word that is no statement.
func (r *signReader) words(i int) bool {
	t := r.toks[i]
	at := t.Pos.Offset
	rest := r.text[endOf(t):r.lineEnd(at)]
	next := r.tok(i + 1)
	front := at == 0 || strings.ContainsAny(r.text[at-1:at], blanks+"\n\r")
	return front && (next.Type == kindWord || next.Type == kindClause) && !strings.Contains(rest, t.Value)
}

// name tells whether a name is wanted behind the word in front of a token.
func (r *signReader) name(i int) bool {
	front, ok := r.before(i)
	return ok && (front.Type == kindWord || front.Type == kindClause)
}

// remark looks for a line that begins with note: or its like, and is a comment.
func (r *signReader) remark(i int) int {
	t := r.toks[i]
	if t.Type != kindWord || !r.is(i+1, ":") || !slices.Contains(remarks, strings.ToLower(t.Value)) || r.begins(t) {
		return i
	}
	at, end := t.Pos.Offset, endOf(r.tok(i+1))
	r.said(signComment, at, end, "# "+r.text[at:end], r.text[at:end]+" begins no comment; a comment begins with #", "")
	return r.from(i, r.lineEnd(at))
}

var remarks = strings.Fields("note notes nb remark remarks comment todo ps hint tip")

// setsApart tells whether a line is of signs alone, as one that sets others apart is, or
// opens or closes a part that is shown as it stands.
func setsApart(rest string) bool {
	line, _, _ := strings.Cut(rest, "\n")
	line = strings.TrimRight(line, blanks+"\r")
	return strings.HasPrefix(line, "```") || len(line) >= 3 && strings.Trim(line, "-=*_~+.") == ""
}

// semicolon looks for a comment behind a semicolon: words that begin no statement.
func (r *signReader) semicolon(i int) int {
	at, next := r.toks[i].Pos.Offset, r.tok(i+1)
	if next.Type != kindWord && next.Type != kindClause || len(vocabulary.Homes(next.Value)) > 0 || strings.Contains(r.text[at+1:r.lineEnd(at)], ";") {
		return i
	}
	if block := r.block(); block != vocabulary.None {
		if _, other := vocabulary.OtherWord(block, next.Value); other {
			return i
		}
		if _, near := nearest.Word(next.Value, vocabulary.Words(block)); near {
			return i
		}
	}
	return r.comment(i, len(r.text[at:])-len(strings.TrimLeft(r.text[at:], ";")))
}

// commentTo makes comments of the lines up to a closing mark.
func (r *signReader) commentTo(i int, opens, closes string) int {
	at := r.toks[i].Pos.Offset
	body := at + len(opens)
	n := strings.Index(r.text[body:], closes)
	if n < 0 {
		return r.comment(i, len(opens))
	}
	end := body + n
	behind := strings.TrimLeft(r.text[end+len(closes):r.lineEnd(end)], blanks)
	if behind != "" && behind[0] != '}' && behind[0] != '#' && !r.lineStart(at) {
		return i // what follows would be of the comment
	}
	text := "#"
	if body < end && !strings.ContainsAny(r.text[body:body+1], blanks+"*\r\n") {
		text = "# "
	}
	r.add(signComment, at, body, text)
	r.commentLines(body, end)
	r.commentEnd(end, end+len(closes), behind != "")
	return r.from(i, end+len(closes))
}

// commentLines begins each further line of a comment with its sign.
func (r *signReader) commentLines(body, end int) {
	for at := body; at < end; at++ {
		if r.text[at] != '\n' {
			continue
		}
		line := at + 1 + len(r.text[at+1:]) - len(strings.TrimLeft(r.text[at+1:], blanks))
		if line < end && !strings.ContainsAny(r.text[line:line+1], "\r\n#") {
			r.add(signComment, line, line, "# ")
		}
	}
}

// commentEnd takes the closing mark out; what stands behind it goes on in a line of its own.
func (r *signReader) commentEnd(start, end int, more bool) {
	text := ""
	if more {
		text = "\n" + r.indent(start)
		end += len(r.text[end:]) - len(strings.TrimLeft(r.text[end:], blanks))
	}
	front := strings.TrimRight(r.text[:start], blanks)
	if r.lineStart(start) && front != "" && !more {
		front = strings.TrimRight(front, "\r\n")
	}
	r.add(signComment, len(front), end, text)
}

// numberSign looks for a comment that was meant for a number: soak #1 7 h.
func (r *signReader) numberSign(i int) int {
	t := r.toks[i]
	front, ok := r.before(i)
	rest := strings.TrimLeft(t.Value, "#")
	if word, _, _ := strings.Cut(strings.TrimLeft(rest, blanks), " "); ok && r.block() == vocabulary.Batch && front.Type == kindQuantity && endOf(front) == t.Pos.Offset && vocabulary.IsClause(word) {
		r.said(signNumber, t.Pos.Offset, t.Pos.Offset+1, " lb", "\"#\" begins a comment, so that what stands behind it is not read", "pounds are written lb")
		return r.from(i, t.Pos.Offset+1)
	}
	if !ok || front.Type != kindWord || len(rest) == len(t.Value) || rest == "" || !isDigit(rest[0]) {
		return i
	}
	n := len(rest) - len(strings.TrimLeft(rest, "0123456789"))
	at := t.Pos.Offset
	behind := at + len(t.Value) - len(rest) + n
	switch {
	case vocabulary.IsStep(front.Value) && i-1 == r.first:
		gap := len(r.text[behind:]) - len(strings.TrimLeft(r.text[behind:], blanks+":.)"))
		r.said(signNumber, at, behind+gap, "", "\""+t.Value[:behind-at]+"\" begins a comment, so that what stands behind it is not read", "")
	case vocabulary.IsStep(front.Value):
		r.said(signNumber, at, behind-n, "", "\""+t.Value[:behind-at]+"\" begins a comment, so that the number is not read", "the number of a step is written without a sign")
	case i-1 == r.first && vocabulary.Opens(r.block(), front.Value) != vocabulary.None:
		r.said(signNumber, at, behind, "\""+t.Value[:behind-at]+"\"", "\""+t.Value[:behind-at]+"\" begins a comment, so that the name is not read", "a name stands in double quotes")
	default:
		return i
	}
	return i + 1
}

// numberedNames looks for names that begin with the sign of a number, which hides the rest of the line.
func (r *signReader) numberedNames() {
	for i := 1; i < len(r.toks); i++ {
		word, t := r.toks[i-1], r.toks[i]
		if t.Type != kindComment || word.Type != kindWord || vocabulary.Opens(vocabulary.File, word.Value) == vocabulary.None || !r.lineStart(word.Pos.Offset) {
			continue
		}
		name := numberedName.FindString(t.Value)
		if name == "" {
			continue
		}
		at := t.Pos.Offset
		r.said(signNumber, at, at+len(name), "\""+name[1:]+"\"", "\""+name+"\" begins a comment, so that the name is not read", "a name stands in double quotes")
	}
}

// numberedName is one of more than a number.
var numberedName = regexp.MustCompile(`^#\d+[-/.][\w-]+`)

var numberSigned = regexp.MustCompile(`[a-z][ \t]+#\d`)

// Numbered tells whether a number behind a word may have become a comment: after soak #1.
func Numbered(f *source.File) bool { return numberSigned.Match(f.Bytes()) }
