package talk

import (
	"context"
	"io"
	"os"
	"time"

	"maltwright/cmd/founding"
)

// Keys asks on a terminal: choices with the arrow keys, everything else in a line that can be
// edited. Escape goes back, ? shows help, Ctrl-C stops. What was answered stays on the
// screen, a line each.
type Keys struct {
	Context context.Context
	In      io.Reader
	Out     io.Writer
	Env     func(string) string // nil is that of the program

	terminal *terminal // nil while it is not ours
	screen   screen
	keyboard keyboard
	ahead    []key // keys that came before their question
}

// reply is how a question on the screen ended.
type reply struct {
	answer string
	wish   wish
}

// wish is what a key asks for that answers nothing.
type wish int

const (
	noWish wish = iota
	wishBack
	wishHelp
	wishStop
)

// How says what keys and words there are.
func (*Keys) How() string {
	return "Arrows and Enter answer, ? helps, Esc goes back. Ctrl-C stops and loses nothing."
}

// Works tells whether the terminal sends its keys one by one.
func (k *Keys) Works() bool {
	defer k.Close()
	return k.start() == nil
}

// Ask puts one question until there is an answer.
func (k *Keys) Ask(p Prompt) (Reply, error) {
	answered := false
	defer func() {
		if !answered { // also where something panics
			k.Close()
		}
	}()
	if err := k.start(); err != nil {
		return Reply{}, err
	}
	for {
		r, err := k.put(newOpen(p))
		switch {
		case err != nil:
			return Reply{}, err
		case r.wish == wishStop:
			return Reply{}, ErrStopped
		case r.wish == wishBack && p.Back:
			answered = true
			k.screen.leave("")
			return Reply{Back: true}, nil
		case r.wish == noWish:
			answered = true
			k.screen.leave(Wrapped("", p.Ask+" "+p.shown(r.answer), k.screen.width))
			return Reply{Answer: r.answer}, nil
		}
	}
}

// start takes the terminal.
func (k *Keys) start() (err error) {
	if k.terminal != nil {
		return nil
	}
	if k.terminal, err = openTerminal(k.Context, k.In, k.Out); err != nil {
		return err
	}
	if k.Env == nil {
		k.Env = os.Getenv
	}
	k.screen.out, k.screen.looks = k.Out, looksOf(k.Env)
	k.screen.size(k.terminal.size())
	return nil
}

// Print writes a text between two questions.
func (k *Keys) Print(text string) {
	k.Close()
	_, _ = io.WriteString(k.Out, text)
}

// Close gives the terminal back. Keys that were read already are kept for the next question.
func (k *Keys) Close() {
	if k.terminal == nil {
		return
	}
	k.screen.close()
	k.ahead = append(k.ahead, k.keyboard.take(k.terminal.close())...)
	k.terminal = nil
}

// put shows a question and gives it keys until it is done with.
func (k *Keys) put(o *open) (reply, error) {
	for k.show(o); ; {
		for len(k.ahead) > 0 {
			next := k.ahead[0]
			k.ahead = k.ahead[1:] // the next question takes the rest
			if r, done := o.press(next); done {
				return r, nil
			}
		}
		k.show(o)
		if err := k.wait(o); err != nil {
			return reply{}, err
		}
	}
}

func (k *Keys) show(o *open) { k.screen.show(o.view(k.screen.width, k.screen.height)) }

// wait waits for keys, and repaints where the window gets another size.
func (k *Keys) wait(o *open) error {
	for len(k.ahead) == 0 {
		var late <-chan time.Time
		if wait := k.keyboard.patience(); wait > 0 {
			late = time.After(wait)
		}
		select {
		case <-k.terminal.ctx.Done():
			return ErrStopped
		case typed, more := <-k.terminal.typed:
			if !more {
				return ErrStopped
			}
			k.ahead = k.keyboard.take(typed)
		case <-late:
			k.ahead = k.keyboard.late()
		case <-k.terminal.resized:
			k.resize(o)
		}
	}
	return nil
}

// resize repaints a question in a window of another size.
func (k *Keys) resize(o *open) {
	width, height := k.screen.width, k.screen.height
	if k.screen.size(k.terminal.size()); width != k.screen.width || height != k.screen.height {
		k.show(o)
	}
}

// shown is an answer as it stays on the screen.
func (p Prompt) shown(answer string) string {
	switch {
	case answer != founding.DontKnow:
		return answer
	case p.isFigure():
		return p.Usual + " (usual)"
	}
	return "not known"
}

// wished is what a key asks for. A ? in the middle of a line belongs to it.
func wished(key string, empty bool) wish {
	switch {
	case key == "ctrl+c", key == "ctrl+d" && empty:
		return wishStop
	case key == "esc", key == "shift+tab":
		return wishBack
	case key == "?" && empty:
		return wishHelp
	}
	return noWish
}
