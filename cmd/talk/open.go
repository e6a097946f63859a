package talk

import (
	"errors"
	"strings"

	"maltwright/cmd/founding"
	"maltwright/cmd/words"
)

// open is a question on the screen: choices, or a line that is typed.
type open struct {
	p       Prompt
	choices []founding.Choice
	at      int    // the choice that Enter takes
	typed   line   // what is typed
	helps   bool   // help is shown
	wrong   string // why what was typed is no answer
}

func newOpen(p Prompt) *open {
	o := &open{p: p}
	if p.Kind != founding.OneOf {
		return o
	}
	o.choices = p.listed()
	for i, c := range o.choices {
		if c.Word == p.offeredWord() {
			o.at = i
		}
	}
	return o
}

// empty tells that nothing is typed.
func (o *open) empty() bool { return o.choices != nil || len(o.typed.text) == 0 }

// press hears of a key. The reply is given once there is one.
func (o *open) press(pressed key) (r reply, answered bool) {
	key := pressed.name
	switch wish := wished(key, o.empty()); {
	case wish == wishHelp:
		o.helps = !o.helps
	case wish != noWish:
		return reply{wish: wish}, true
	case key == "enter", key == "ctrl+j": // the latter was typed before the terminal was ours
		return o.enter()
	case o.choices != nil:
		o.move(key)
	default:
		o.wrong = ""
		o.typed.press(key, pressed.text)
	}
	return r, false
}

// move goes to another choice: to the next one, or to that of a number.
func (o *open) move(key string) {
	n := len(o.choices)
	switch key {
	case "up", "ctrl+p":
		o.at = (o.at + n - 1) % n
	case "down", "ctrl+n", "tab":
		o.at = (o.at + 1) % n
	case "home":
		o.at = 0
	case "end":
		o.at = n - 1
	default:
		if len(key) == 1 && key[0] >= '1' && int(key[0]-'1') < n {
			o.at = int(key[0] - '1')
		}
	}
}

// enter takes what is chosen or typed, if that is an answer.
func (o *open) enter() (reply, bool) {
	text := strings.TrimSpace(o.typed.String())
	if o.choices != nil {
		text = o.choices[o.at].Word
	} else if strings.EqualFold(text, wordBack) {
		return reply{wish: wishBack}, true
	}
	answer, err := o.p.taken(text)
	if err == nil {
		return reply{answer: answer}, true
	}
	o.wrong = err.Error()
	if r := (*founding.Refusal)(nil); errors.As(err, &r) {
		o.wrong = Sentence(r.Message) + " " + Sentence(r.Do)
	}
	return reply{}, false
}

// view is the question in lines of a width, and in so many of them at the most.
func (o *open) view(width, height int) []string {
	width = max(width, len(marker)+1)
	lines := wrapped(o.p.Ask, width, bold)
	lines = append(lines, wrapped(o.beneath(), width, faint)...)
	below := wrapped(o.wrong, width, red)
	if o.choices == nil {
		return append(append(lines, o.typed.view(o.p.offered(), width)), below...)
	}
	body, first, last := o.list(width)
	room := max(height-len(lines)-len(below), last-first, 1)
	from := min(max(0, last-room), first)
	body = body[from:min(len(body), from+room)]
	return append(append(lines, body...), below...)
}

// list is the choices, and from where to where the one stands that Enter takes.
func (o *open) list(width int) (lines []string, first, last int) {
	for i, c := range o.choices {
		at := i == o.at
		if at {
			first = len(lines)
		}
		for n, line := range choiceLines(c, o.choices, width-len(marker)) {
			line = words.Safe(line)
			switch {
			case at && n == 0:
				line = marker + bold(line)
			case at:
				line = strings.Repeat(" ", len(marker)) + bold(line)
			default:
				line = strings.Repeat(" ", len(marker)) + line
			}
			lines = append(lines, line)
		}
		if at {
			last = len(lines)
		}
	}
	return lines, first, last
}

// beneath is the line below a question: what its keys do, or its help.
func (o *open) beneath() string {
	if o.helps {
		return strings.Join(o.p.helps(), " ")
	}
	keys := []string{"Enter takes it", "? help"}
	switch {
	case o.choices != nil:
		keys[0] = "arrows and Enter"
	case o.p.offered() == "":
		keys = keys[1:]
	}
	if o.p.Back {
		keys = append(keys, "Esc back")
	}
	return strings.Join(keys, "; ")
}
