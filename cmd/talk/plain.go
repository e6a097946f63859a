package talk

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"

	"maltwright/cmd/founding"
	"maltwright/cmd/words"
)

// Plain asks line by line: it writes a question, its choices with their numbers and what Enter
// takes, and reads a line. It needs nothing of a terminal, and works behind a pipe.
type Plain struct {
	Out   io.Writer
	Width int  // of a line; 0 is 80
	Echo  bool // what is read is written too, since nobody saw it being typed

	ctx   context.Context
	lines <-chan string
}

// NewPlain gives an asker that reads lines until the context ends.
func NewPlain(ctx context.Context, in io.Reader, out io.Writer) *Plain {
	lines := make(chan string)
	go func() { // a read cannot be called off: the conversation goes away from it instead
		defer close(lines)
		r := bufio.NewReader(in)
		for {
			line, err := r.ReadString('\n')
			if line != "" || err == nil {
				select {
				case lines <- strings.TrimSpace(line):
				case <-ctx.Done():
					return
				}
			}
			if err != nil {
				return
			}
		}
	}()
	return &Plain{Out: out, ctx: ctx, lines: lines}
}

// Words that are no answers.
const (
	wordBack = "back"
	wordHelp = "?"
)

// How says what keys and words there are.
func (*Plain) How() string {
	return "Enter takes what stands in [ ], ? helps, back goes back. Ctrl-C stops and loses nothing."
}

// Print writes a text between two questions.
func (p *Plain) Print(text string) { _, _ = io.WriteString(p.Out, text) }

// Close does nothing: a line is read when it is asked for.
func (*Plain) Close() {}

// Ask puts one question until there is an answer.
func (p *Plain) Ask(q Prompt) (Reply, error) {
	fmt.Fprintln(p.Out)
	p.write("", q.Ask)
	list := q.listed()
	for i, c := range list {
		p.choice(i+1, c, list)
	}
	for {
		text, err := p.read(q)
		switch {
		case err != nil:
			return Reply{}, err
		case strings.EqualFold(text, wordBack) && q.Back:
			return Reply{Back: true}, nil
		case strings.EqualFold(text, wordBack):
			p.write("  ", "This is the first question.")
			continue
		case text == wordHelp:
			p.help(q)
			continue
		}
		answer, err := q.taken(q.numbered(text))
		if err == nil {
			p.understood(q, text, answer)
			return Reply{Answer: answer}, nil
		}
		p.refused(err)
	}
}

// understood tells how a figure was read, where that is not what was typed.
func (p *Plain) understood(q Prompt, typed, answer string) {
	if typed == "" || typed == answer || answer == founding.DontKnow || answer == founding.None || q.Kind == founding.OneOf || q.Kind == founding.Text {
		return
	}
	p.write("  ", "Taken as "+answer+".")
}

// numbered is don't know where it was chosen by its number, else the text.
func (p Prompt) numbered(text string) string {
	if list := p.listed(); len(list) > len(p.Choices) && text == fmt.Sprint(len(list)) {
		return founding.DontKnow
	}
	return text
}

// taken is the answer that a text is.
func (p Prompt) taken(text string) (string, error) {
	if text == "" {
		return p.enter()
	}
	return p.Take(text)
}

// read writes what Enter takes and reads a line.
func (p *Plain) read(q Prompt) (string, error) {
	prompt := "> "
	if usual := q.offeredWord(); usual != "" {
		prompt = "[" + usual + "] > "
	}
	fmt.Fprint(p.Out, words.Safe(prompt))
	select {
	case <-p.ctx.Done():
		fmt.Fprintln(p.Out)
		return "", ErrStopped
	case line, ok := <-p.lines:
		switch {
		case !ok:
			fmt.Fprintln(p.Out)
			return "", ErrStopped
		case p.Echo:
			fmt.Fprintln(p.Out, words.Safe(line))
		}
		return line, nil
	}
}

// choice writes a choice behind its number.
func (p *Plain) choice(n int, c founding.Choice, all []founding.Choice) {
	for i, line := range choiceLines(c, all, p.columns()-choiceIndent) {
		head := strings.Repeat(" ", choiceIndent)
		if i == 0 {
			head = fmt.Sprintf("%*d  ", choiceIndent-2, n)
		}
		fmt.Fprintln(p.Out, head+words.Safe(line))
	}
}

const (
	choiceIndent = 5  // columns of the number in front of a choice
	narrow       = 24 // columns below which what a choice is stands under it, not beside it
)

// choiceLines are a choice and what it is: beside it in a column of its own, or below it.
func choiceLines(c founding.Choice, all []founding.Choice, width int) []string {
	if c.Says == "" {
		return []string{c.Word}
	}
	longest := 0
	for _, o := range all {
		longest = max(longest, uniseg.StringWidth(o.Word))
	}
	beside := words.Wrap(c.Says, max(width-longest-2, 1))
	if width-longest-2 < narrow && len(beside) > 1 {
		lines := []string{c.Word}
		for _, line := range words.Wrap(c.Says, width-2) {
			lines = append(lines, "  "+line)
		}
		return lines
	}
	for i, line := range beside {
		word := ""
		if i == 0 {
			word = c.Word
		}
		beside[i] = word + strings.Repeat(" ", longest-uniseg.StringWidth(word)+2) + line
	}
	return beside
}

// help writes what there is to say of a question.
func (p *Plain) help(q Prompt) {
	for _, text := range q.helps() {
		p.write("  ", text)
	}
}

// helps are the sentences about a question.
func (p Prompt) helps() []string {
	var list []string
	if p.About != "" {
		list = append(list, p.About)
	}
	if p.FindOut != "" {
		list = append(list, Sentence("to find it out: "+p.FindOut))
	}
	switch {
	case p.mayNotKnow() && p.isFigure():
		list = append(list, "Type "+founding.DontKnow+", and the usual "+p.Usual+" stands, with a comment that says so.")
	case p.mayNotKnow():
		list = append(list, "You may type "+founding.DontKnow+".")
	}
	return list
}

// isFigure tells whether the usual value is one, and not a word such as none.
func (p Prompt) isFigure() bool {
	return p.Usual != "" && unicode.IsDigit([]rune(p.Usual)[0])
}

// refused says why an answer is not taken and what to do.
func (p *Plain) refused(err error) {
	var r *founding.Refusal
	if !errors.As(err, &r) {
		p.write("  ", err.Error())
		return
	}
	p.write("  ", Sentence(r.Message))
	p.write("  ", Sentence(r.Do))
}

// Sentence gives a text a capital at its beginning and a stop at its end.
func Sentence(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	text = string(unicode.ToUpper(first)) + text[size:]
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// write wraps a text, with its first line behind an indent and the others below that.
func (p *Plain) write(indent, text string) {
	fmt.Fprint(p.Out, Wrapped(indent, text, p.Width))
}

func (p *Plain) columns() int {
	if p.Width == 0 {
		return 80
	}
	return p.Width
}

// Wrapped is a text in lines of a width, 0 being 80, its first behind an indent and the
// others below.
func Wrapped(indent, text string, width int) string {
	if width == 0 {
		width = 80
	}
	var b strings.Builder
	for _, line := range words.Wrap(words.Safe(text), max(width-len(indent), 16)) {
		fmt.Fprintf(&b, "%s%s\n", indent, line)
		indent = strings.Repeat(" ", len([]rune(indent)))
	}
	return b.String()
}
