package talk

import (
	"errors"
	"strings"

	tea "charm.land/bubbletea/v2"
	"charm.land/huh/v2"

	"maltwright/cmd/founding"
	"maltwright/cmd/words"
)

// open is a question on the screen: a form of one field.
type open struct {
	p        Prompt
	width    func() int
	form     *huh.Form
	field    huh.Field
	describe func(string)
	text     string // what is chosen or typed so far
	helps    bool   // help is shown
}

func newOpen(p Prompt, width func() int) *open {
	o := &open{p: p, width: width}
	if p.Kind == founding.OneOf {
		o.choosing()
	} else {
		o.typing()
	}
	o.form = huh.NewForm(huh.NewGroup(o.field)).WithTheme(huh.ThemeFunc(theme)).WithKeyMap(bindings()).WithShowHelp(false)
	return o
}

// update tells the form what happened.
func (o *open) update(msg tea.Msg) tea.Cmd {
	form, cmd := o.form.Update(msg)
	if f, ok := form.(*huh.Form); ok {
		o.form = f
	}
	return cmd
}

// answered gives the reply, once there is one.
func (o *open) answered() (reply, bool) {
	if o.form.State != huh.StateCompleted {
		return reply{}, false
	}
	text := strings.TrimSpace(o.text)
	if o.p.Kind != founding.OneOf && strings.EqualFold(text, wordBack) {
		return reply{wish: wishBack}, true
	}
	answer, err := o.p.taken(text)
	if err != nil { // the form has looked at it before
		return reply{wish: wishBack}, true
	}
	return reply{answer: answer}, true
}

// help shows the help of the question, or takes it off again. The form then wants to hear how large
// the window is, as if that had just come up, to make room for it.
func (o *open) help() {
	o.helps = !o.helps
	o.describe(o.beneath())
	o.field.WithHeight(0)
}

// choosing is the field of a question with choices.
func (o *open) choosing() {
	var options []huh.Option[string]
	for _, c := range o.p.Choices {
		lines := choiceLines(c, o.p.Choices, o.width()-len(marker))
		options = append(options, huh.NewOption(words.SafeLines(strings.Join(lines, "\n")), c.Word))
	}
	if o.p.mayNotKnow() || o.p.Usual != "" && !o.p.isChoice(o.p.Usual) {
		options = append(options, huh.NewOption(founding.DontKnow, founding.DontKnow))
	}
	o.text = o.p.offeredWord()
	field := huh.NewSelect[string]().Title(words.Safe(o.p.Ask)).Description(o.beneath()).Options(options...).Value(&o.text)
	o.field, o.describe = field, func(text string) { field.Description(text) }
}

// typing is the field of a question that is answered in words or numbers.
func (o *open) typing() {
	field := huh.NewInput().Title(words.Safe(o.p.Ask)).Description(o.beneath()).Prompt("> ").Placeholder(words.Safe(o.p.offered())).Value(&o.text).Validate(o.valid)
	o.field, o.describe = field, func(text string) { field.Description(text) }
}

// valid refuses a text that is no answer.
func (o *open) valid(text string) error {
	text = strings.TrimSpace(text)
	if strings.EqualFold(text, wordBack) {
		return nil
	}
	_, err := o.p.taken(text)
	var r *founding.Refusal
	if errors.As(err, &r) {
		return errors.New(words.Safe(Sentence(r.Message) + " " + Sentence(r.Do)))
	}
	return err
}

// beneath is the line below a question: what its keys do, or its help.
func (o *open) beneath() string {
	if o.helps {
		return words.Safe(strings.Join(o.p.helps(), " "))
	}
	keys := []string{"Enter takes it", "? help"}
	switch {
	case o.p.Kind == founding.OneOf:
		keys[0] = "arrows and Enter"
	case o.p.offered() == "":
		keys = keys[1:]
	}
	if o.p.Back {
		keys = append(keys, "Esc back")
	}
	return strings.Join(keys, "; ")
}
