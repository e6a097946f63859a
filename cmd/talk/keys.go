package talk

import (
	"context"
	"io"
	"strings"

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
		k.program.Send(put{newOpen(p)})
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
	k.program = tea.NewProgram(&stage{replies: k.replies}, tea.WithContext(k.Context), tea.WithInput(k.In), tea.WithOutput(k.Out))
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
	open    *open
	replies chan<- reply
	size    tea.WindowSizeMsg
	ahead   []tea.KeyPressMsg // keys that came before their question
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
	return tea.NewView(s.open.view(s.size.Width, s.size.Height))
}

// Update hears of keys and of the window.
func (s *stage) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		s.size = msg
		return s, nil
	case put:
		s.open = msg.open
		return s, s.pressAhead()
	case replied:
		s.replies <- reply(msg)
		return s, nil
	case tea.KeyPressMsg:
		s.ahead = append(s.ahead, msg)
		return s, s.pressAhead()
	case tea.PasteMsg:
		if s.open != nil && s.open.choices == nil {
			s.open.typed.insert(msg.Content)
		}
	}
	return s, nil
}

// pressAhead gives the keys that came to the question that is open.
func (s *stage) pressAhead() tea.Cmd {
	for s.open != nil && len(s.ahead) > 0 {
		key := s.ahead[0]
		s.ahead = s.ahead[1:]
		if r, answered := s.open.press(key); answered {
			return s.done(r) // the next question takes the rest
		}
	}
	return nil
}

// done takes the question off the screen, and leaves a line with its answer.
func (s *stage) done(r reply) tea.Cmd {
	p := s.open.p
	s.open = nil
	tell := func() tea.Msg { return replied(r) }
	if r.wish != noWish {
		return tell
	}
	line := Wrapped("", p.Ask+" "+p.shown(r.answer), s.size.Width)
	return tea.Sequence(tea.Println(strings.TrimSuffix(line, "\n")), tell)
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
