package talk

import (
	"context"
	"io"
	"strings"
	"unicode"

	tea "charm.land/bubbletea/v2"

	"maltwright/cmd/founding"
)

// Keys asks on a terminal: choices with the arrow keys, everything else in a line that can be
// edited. Escape goes back, ? shows help, Ctrl-C stops. What was answered stays on the
// screen, a line each.
type Keys struct {
	Context context.Context
	In      io.Reader
	Out     io.Writer
	Width   func() int // of the terminal, in columns; a window may be pulled wider

	program *tea.Program
	replies chan reply
	ended   chan struct{}
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

// Ask puts one question until there is an answer.
func (k *Keys) Ask(p Prompt) (Reply, error) {
	k.start()
	for {
		k.program.Send(put{newOpen(p, k.Width)})
		select {
		case <-k.ended:
			return Reply{}, ErrStopped
		case r := <-k.replies:
			switch {
			case r.wish == wishStop:
				return Reply{}, ErrStopped
			case r.wish == wishBack && p.Back:
				return Reply{Back: true}, nil
			case r.wish == noWish:
				return Reply{Answer: r.answer}, nil
			}
		}
	}
}

// start gives the terminal to the library.
func (k *Keys) start() {
	if k.program != nil {
		return
	}
	k.replies, k.ended = make(chan reply, 1), make(chan struct{})
	k.program = tea.NewProgram(&stage{replies: k.replies, width: k.Width}, tea.WithContext(k.Context), tea.WithInput(k.In), tea.WithOutput(k.Out))
	go func() {
		defer close(k.ended)
		_, _ = k.program.Run() // however it ends, there are no more answers
	}()
}

// Print writes a text between two questions.
func (k *Keys) Print(text string) {
	k.Close()
	_, _ = io.WriteString(k.Out, text)
}

// Close gives the terminal back. The reader of keys is ended first, and waited for: a library
// that is only told to end leaves it behind, and it swallows a key of whatever reads next.
func (k *Keys) Close() {
	if k.program == nil {
		return
	}
	select {
	case <-k.ended:
	default:
		_ = k.program.ReleaseTerminal()
		k.program.Quit()
		<-k.ended
	}
	k.program = nil
}

// stage is the screen: a question, or nothing while the next one is thought of.
type stage struct {
	*open
	replies chan<- reply
	width   func() int
}

// put is the message that puts a question; replied the one that it is done with.
type (
	put     struct{ *open }
	replied reply
)

// Init does nothing before there is a question.
func (*stage) Init() tea.Cmd { return nil }

// View is what is on the screen.
func (s *stage) View() tea.View {
	if s.open == nil {
		return tea.NewView("")
	}
	return tea.NewView(s.form.View())
}

// Update hears of keys first, then the form does.
func (s *stage) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case put:
		s.open = msg.open
		return s, s.form.Init()
	case replied:
		s.replies <- reply(msg)
		return s, nil
	case tea.KeyPressMsg:
		if s.open == nil {
			return s, nil
		}
		switch wish := wished(msg.String(), s.p.Kind == founding.OneOf || s.text == ""); wish {
		case noWish:
		case wishHelp:
			s.help()
			return s, tea.RequestWindowSize
		default:
			return s, s.done(reply{wish: wish}, "")
		}
	}
	if s.open == nil {
		return s, nil
	}
	cmd := s.update(msg)
	if answer, answered := s.answered(); answered {
		if answer.wish != noWish {
			return s, s.done(answer, "")
		}
		line := Wrapped("", s.p.Ask+" "+s.p.shown(answer.answer), s.width())
		return s, s.done(answer, strings.TrimSuffix(line, "\n"))
	}
	return s, cmd
}

// done takes the question off the screen and leaves a line in its place.
func (s *stage) done(r reply, line string) tea.Cmd {
	s.open = nil
	tell := func() tea.Msg { return replied(r) }
	if line == "" {
		return tell
	}
	return tea.Sequence(tea.Println(line), tell)
}

// shown is an answer as it stays on the screen.
func (p Prompt) shown(answer string) string {
	switch {
	case answer != founding.DontKnow:
		return answer
	case p.Usual != "" && unicode.IsDigit([]rune(p.Usual)[0]):
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
