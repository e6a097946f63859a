package syntax

import (
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/vocabulary"
)

// structure looks for blocks that have brackets, begin and end, or their indentation in the place of
// braces.
func (r *signReader) structure() {
	before := len(r.changes)
	r.brackets()
	r.beginEnd()
	if len(r.changes) == before {
		r.indented()
	}
}

// opensBlock tells whether a word opens a block, wherever it stands.
func opensBlock(word string) bool {
	for _, home := range vocabulary.Homes(word) {
		if vocabulary.Opens(home, word) != vocabulary.None {
			return true
		}
	}
	return false
}

// bracket is one that is open: a brace, one that stands for it, or one of a value.
type bracket struct {
	brace, block bool
	at           int
}

// brackets looks for brackets that stand for braces.
func (r *signReader) brackets() {
	var open []bracket
	first := -1
	for i, t := range r.toks {
		switch {
		case t.Type == kindEnd:
			if n := len(open); n > 0 && !open[n-1].brace && !open[n-1].block {
				open = open[:n-1] // a value ends with its line
			}
			first = -1
		case t.Type == kindOpen:
			open, first = append(open, bracket{true, true, t.Pos.Offset}), -1
		case r.is(i, "(") || r.is(i, "["):
			block := first >= 0 && opensBlock(r.toks[first].Value) && r.blockFollows(i)
			if block {
				first = -1
			}
			open = append(open, bracket{false, block, t.Pos.Offset})
		case t.Type == kindClose || r.is(i, ")") || r.is(i, "]"):
			if n := len(open); n > 0 {
				r.closed(open[n-1], t)
				open = open[:n-1]
			}
			first = -1
		case first < 0 && t.Type != kindComment:
			first = i
		}
	}
}

// blockFollows tells whether what is in a bracket begins like a block.
func (r *signReader) blockFollows(i int) bool {
	next := r.tok(i + 1)
	return next.Type == kindEnd || next.Type == kindComment || next.Type == kindWord && len(vocabulary.Homes(next.Value)) > 0
}

// closed writes braces for the two brackets of a block.
func (r *signReader) closed(open bracket, t lexer.Token) {
	at := t.Pos.Offset
	alone := r.lineStart(at) && open.brace
	sign := open.block && !open.brace
	if sign {
		r.opens[open.at] = true
		r.add(signBraces, open.at, open.at+1, "{")
	}
	if t.Type != kindClose && (sign || alone) {
		r.closes[at]++
		r.add(signBraces, at, at+1, "}")
	}
}

// beginEnd looks for the words begin and end.
func (r *signReader) beginEnd() {
	var opened []int
	open := 0 // braces that nothing closes
	for _, t := range r.toks {
		switch t.Type {
		case kindOpen:
			open++
		case kindClose:
			open--
		}
	}
	for i, t := range r.toks {
		word := strings.ToLower(t.Value)
		if t.Type != kindWord || word != "begin" && word != "end" && word != "do" {
			continue
		}
		next := r.tok(i + 1).Type
		switch {
		case word != "end" && i > 0 && r.toks[i-1].Type != kindEnd && next == kindEnd && opensBlock(r.firstOfLine(i).Value):
			opened = append(opened, i)
		case word == "end" && len(opened) == 0 && open > 0 && (i == 0 || r.toks[i-1].Type == kindEnd) && (next == kindEnd || next == lexer.EOF):
			open--
			r.closes[t.Pos.Offset] = 1
			r.add(signEndWord, t.Pos.Offset, endOf(t), "}")
		case word == "end" && len(opened) > 0 && (i == 0 || r.toks[i-1].Type == kindEnd) && (next == kindEnd || next == lexer.EOF):
			o := r.toks[opened[len(opened)-1]]
			opened = opened[:len(opened)-1]
			r.opens[o.Pos.Offset], r.closes[t.Pos.Offset] = true, 1
			r.add(signBegin, o.Pos.Offset, endOf(o), "{")
			r.add(signBegin, t.Pos.Offset, endOf(t), "}")
		}
	}
}

func (r *signReader) firstOfLine(i int) lexer.Token {
	for i > 0 && r.toks[i-1].Type != kindEnd && r.toks[i-1].Type != kindOpen {
		i--
	}
	return r.toks[i]
}

// outline is a block that is open while the lines are gone through that have no braces.
type outline struct {
	block   vocabulary.Block
	braces  bool
	further bool // its lines stand further in than its head
	indent  int
	at      int // behind its head
	last    int // behind its last line
}

// indented looks for blocks that have no braces.
func (r *signReader) indented() {
	stack := []outline{{block: vocabulary.File, braces: true, indent: -1}}
	pending := vocabulary.None
	for i := 0; i < len(r.toks)-1; i++ {
		t := r.toks[i]
		switch t.Type {
		case kindEnd:
		case kindComment:
			if !r.lineStart(t.Pos.Offset) {
				r.grow(stack, endOf(t))
			}
		case kindOpen:
			stack = append(stack, outline{block: pending, braces: true, indent: -1})
			pending = vocabulary.None
		case kindClose:
			if top := stack[len(stack)-1]; !top.braces && top.further && r.lineStart(t.Pos.Offset) && len(r.indent(t.Pos.Offset)) == top.indent {
				r.noOpening(top)
				stack = stack[:len(stack)-1]
				r.grow(stack, endOf(t))
				continue
			}
			stack = r.closeAbove(stack)
			if len(stack) > 1 {
				stack = stack[:len(stack)-1]
			}
			r.grow(stack, endOf(t))
		default:
			i, stack, pending = r.outlined(i, stack)
		}
	}
	r.closeAbove(stack)
}

// noOpening tells of a block that is closed by its brace that it is not opened by one.
func (r *signReader) noOpening(top outline) {
	for i, c := range r.changes {
		if c.sign == signIndent && c.End == top.at && c.text == " {" {
			r.changes[i].sign = signOpening
		}
	}
}

// grow makes the blocks without braces reach to an offset.
func (r *signReader) grow(stack []outline, end int) {
	for i := range stack {
		stack[i].last = max(stack[i].last, end)
	}
}

// closeAbove closes the blocks without braces that are open inside the last with them.
func (r *signReader) closeAbove(stack []outline) []outline {
	for len(stack) > 0 && !stack[len(stack)-1].braces {
		stack = r.closeTop(stack)
	}
	return stack
}

func (r *signReader) closeTop(stack []outline) []outline {
	top := stack[len(stack)-1]
	r.closes[r.toks[r.from(0, top.last)].Pos.Offset]++
	text := "\n" + strings.Repeat(" ", top.indent) + "}"
	if n := len(r.changes); n > 0 && r.changes[n-1].Start == top.last && r.changes[n-1].Empty() {
		r.changes[n-1].text += text
	} else {
		r.add(signIndent, top.last, top.last, text)
	}
	return stack[:len(stack)-1]
}

// outlined takes the statement that begins at a token, and gives the last token of its head.
func (r *signReader) outlined(i int, stack []outline) (int, []outline, vocabulary.Block) {
	t := r.toks[i]
	indent := len(r.indent(t.Pos.Offset))
	for top := stack[len(stack)-1]; !top.braces; top = stack[len(stack)-1] {
		_, known := vocabulary.Lookup(top.block, t.Value)
		if top.further && indent > top.indent || !top.further && known {
			break
		}
		stack = r.closeTop(stack)
	}
	top := stack[len(stack)-1]
	end := i
	for !terminal(r.toks[end].Type) {
		end++
	}
	opens := vocabulary.Opens(top.block, t.Value)
	r.grow(stack, endOf(r.toks[end-1]))
	if opens == vocabulary.None || !r.lineStart(t.Pos.Offset) || r.toks[end].Type == kindOpen {
		return end - 1, stack, opens
	}
	next := end
	for r.tok(next).Type == kindEnd || r.tok(next).Type == kindComment {
		next++
	}
	in := len(r.indent(r.tok(next).Pos.Offset))
	_, known := vocabulary.Lookup(opens, r.tok(next).Value)
	switch further := in > indent; {
	case r.tok(next).Type == kindOpen || r.tok(next).EOF() || r.tok(next).Type == kindClose || !further && !known:
	default:
		from, to := endOf(r.toks[end-1]), endOf(r.toks[end-1])
		if r.is(end-1, ":") && end-1 > i {
			from = endOf(r.toks[end-2])
		}
		r.opens[r.toks[end].Pos.Offset] = true
		r.add(signIndent, from, to, " {")
		return end - 1, append(stack, outline{block: opens, further: further, indent: indent, at: to, last: to}), vocabulary.None
	}
	return end - 1, stack, opens
}
