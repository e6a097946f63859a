package talk

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	tea "charm.land/bubbletea/v2"
	"charm.land/huh/v2"

	"maltwright/cmd/founding"
	"maltwright/cmd/words"
)

// Keys asks on a terminal: choices with the arrow keys, everything else in a line that can be
// edited. Escape goes back, ? shows help, Ctrl-C stops. What was answered stays on the
// screen, a line each.
type Keys struct {
	Context context.Context
	In      io.Reader
	Out     io.Writer
	Width   func() int // of the terminal, in columns; a window may be pulled wider
	Env     []string   // of the terminal: TERM, NO_COLOR and their like; nil is that of the process
}

// wish is what a key asks for that answers nothing.
type wish int

const (
	noWish wish = iota
	wishBack
	wishHelp
	wishStop
)

// Ask puts one question until there is an answer.
func (k *Keys) Ask(p Prompt) (Reply, error) {
	help := false
	for {
		text, wish, err := k.once(p, help)
		switch {
		case err != nil:
			return Reply{}, err
		case wish == wishStop:
			return Reply{}, ErrStopped
		case wish == wishBack && p.Back:
			return Reply{Back: true}, nil
		case wish == wishHelp:
			help = !help
			continue
		case wish == wishBack, text == wordBack && p.Kind != founding.OneOf && !p.Back:
			continue
		case strings.EqualFold(text, wordBack) && p.Kind != founding.OneOf:
			return Reply{Back: true}, nil
		}
		answer, err := p.taken(text)
		if err != nil { // the form has taken it before
			return Reply{}, err
		}
		fmt.Fprint(k.Out, Wrapped("", p.Ask+" "+p.shown(answer), k.Width()))
		return Reply{Answer: answer}, nil
	}
}

// shown is an answer as it stays on the screen.
func (p Prompt) shown(answer string) string {
	if answer == founding.DontKnow && p.Usual != "" {
		return "not known, usual " + p.Usual
	}
	return answer
}

// once shows a form of one field until it is answered or a key ends it.
func (k *Keys) once(p Prompt, help bool) (string, wish, error) {
	var text string
	var asked wish
	var field huh.Field
	if p.Kind == founding.OneOf {
		field = k.choosing(p, &text, help)
	} else {
		field = k.typing(p, &text, help)
	}
	filter := func(_ tea.Model, msg tea.Msg) tea.Msg {
		press, ok := msg.(tea.KeyPressMsg)
		if !ok {
			return msg
		}
		if asked = wished(press.String(), p.Kind == founding.OneOf || text == ""); asked != noWish {
			return tea.InterruptMsg{}
		}
		return msg
	}
	form := huh.NewForm(huh.NewGroup(field)).WithTheme(huh.ThemeFunc(theme)).WithKeyMap(bindings()).
		WithShowHelp(false).WithInput(k.In).WithOutput(k.Out).
		WithProgramOptions(tea.WithInput(k.In), tea.WithOutput(k.Out), tea.WithFilter(filter), tea.WithEnvironment(k.Env))
	err := form.RunWithContext(k.Context)
	switch {
	case asked != noWish:
		return "", asked, nil
	case errors.Is(err, huh.ErrUserAborted), k.Context.Err() != nil:
		return "", wishStop, nil
	}
	return strings.TrimSpace(text), noWish, err
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

// choosing is the field of a question with choices.
func (k *Keys) choosing(p Prompt, text *string, help bool) huh.Field {
	var options []huh.Option[string]
	for _, c := range p.Choices {
		options = append(options, huh.NewOption(described(c, p.Choices), c.Word))
	}
	if p.mayNotKnow() || !p.isChoice(p.Usual) {
		options = append(options, huh.NewOption(founding.DontKnow, founding.DontKnow))
	}
	*text = p.offered()
	if !p.isChoice(*text) {
		*text = founding.DontKnow
	}
	return huh.NewSelect[string]().Title(p.title()).Description(k.beneath(p, help)).Options(options...).Value(text)
}

// isChoice tells whether a word is one of the choices.
func (p Prompt) isChoice(word string) bool {
	for _, c := range p.Choices {
		if c.Word == word {
			return true
		}
	}
	return false
}

// typing is the field of a question that is answered in words or numbers.
func (k *Keys) typing(p Prompt, text *string, help bool) huh.Field {
	return huh.NewInput().Title(p.title()).Description(k.beneath(p, help)).Prompt("> ").Placeholder(p.offered()).Value(text).
		Validate(func(text string) error {
			text = strings.TrimSpace(text)
			if strings.EqualFold(text, wordBack) {
				return nil
			}
			_, err := p.taken(text)
			var r *founding.Refusal
			if errors.As(err, &r) {
				return errors.New(sentence(r.Message) + " " + sentence(r.Do))
			}
			return err
		})
}

func (p Prompt) title() string { return words.Safe(p.Ask) }

// beneath is the line below a question: what its keys do, or its help.
func (k *Keys) beneath(p Prompt, help bool) string {
	if help {
		return words.Safe(strings.Join(p.helps(), " "))
	}
	keys := []string{"Enter takes it", "? explains"}
	switch {
	case p.Kind == founding.OneOf:
		keys[0] = "up, down, Enter"
	case p.offered() == "":
		keys = keys[1:]
	}
	if p.Back {
		keys = append(keys, "Esc goes back")
	}
	return strings.Join(append(keys, "Ctrl-C stops"), "; ")
}
