package main

import (
	"fmt"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/write/text"
)

// Card prints the whole language on one page.
type Card struct{}

// Help is the longer help of the command.
func (Card) Help() string {
	return `Prints every statement, clause and unit of the language with an example each, as wide
as the terminal. At 95 columns it fits one printed page, of A4 and of letter:

  maltwright card | lpr

What a word means in full: maltwright explain soak.`
}

// Run prints it.
func (Card) Run(w *World) error {
	o := w.options()
	if o.Width == 0 {
		o.Width = reference.CardColumns
	}
	if _, err := fmt.Fprint(w.Out, text.Card(reference.Card(), o)); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}
