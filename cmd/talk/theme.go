package talk

import (
	"charm.land/bubbles/v2/key"
	"charm.land/huh/v2"
	"charm.land/lipgloss/v2"
)

// marker stands in front of the choice that Enter takes.
const marker = "* "

// theme is how a question looks: in the terminal's own colours, bold and faint and reversed, so
// that it can be read on a dark ground and on a light one, and without colours too.
func theme(bool) *huh.Styles {
	plain := lipgloss.NewStyle()
	bold, faint := plain.Bold(true), plain.Faint(true)
	var s huh.Styles
	s.Form.Base, s.Group.Base, s.Group.Title, s.Group.Description = plain, plain, bold, faint
	f := huh.FieldStyles{
		Base: plain, Title: bold, Description: faint,
		ErrorIndicator: plain, ErrorMessage: plain.Foreground(lipgloss.Red),
		SelectSelector: plain.SetString(marker), Option: plain, NextIndicator: plain, PrevIndicator: plain,
		SelectedOption: plain.Reverse(true), UnselectedOption: plain,
		TextInput: huh.TextInputStyles{Cursor: plain, CursorText: plain, Placeholder: faint, Prompt: plain, Text: plain},
	}
	s.Focused, s.Blurred = f, f
	return &s
}

// bindings are the keys of a form. Filtering is left out: its sign is an answer in many a
// name, and no list is long.
func bindings() *huh.KeyMap {
	k := huh.NewDefaultKeyMap()
	k.Select.Filter = key.NewBinding(key.WithDisabled())
	k.Quit = key.NewBinding(key.WithKeys("ctrl+c"))
	return k
}
