// Package qr draws an address as a QR code on a terminal, for a phone to read.
//
// # How it works
//
// Two rows of squares make one line of text, by the blocks that fill the upper or the lower half of a place. Around
// it stands the margin of four light squares that readers look for (ISO/IEC 18004). With colours the code is black on white whatever
// the terminal's own are. Without them the light squares are drawn, which is right where the terminal is
// dark; the other way round not every reader takes it.
package qr

import (
	"errors"
	"net/url"
	"strings"

	"rsc.io/qr"
)

// margin is how many light squares stand around the code.
const margin = 4

// Code is an address as a QR code.
type Code struct{ code *qr.Code }

// Of makes the code of an address. Its scheme and its host are written in capitals, for which a code has a form that takes fewer squares
// where the path is in capitals too. Of the levels of safety against dirt it has the highest that takes no more room.
func Of(address string) (Code, error) {
	u, err := url.Parse(address)
	if err != nil || u.Host == "" {
		return Code{}, errors.New("no address")
	}
	text := strings.ToUpper(u.Scheme+"://"+u.Host) + strings.TrimPrefix(address, u.Scheme+"://"+u.Host)
	best, err := qr.Encode(text, qr.L)
	if err != nil {
		return Code{}, err
	}
	for _, level := range []qr.Level{qr.M, qr.Q, qr.H} {
		if safer, err := qr.Encode(text, level); err == nil && safer.Size == best.Size {
			best = safer
		}
	}
	return Code{best}, nil
}

// Columns is how wide the drawing is.
func (c Code) Columns() int { return c.code.Size + 2*margin }

// Rows is how many lines it has.
func (c Code) Rows() int { return (c.Columns() + 1) / 2 }

// Black tells whether the square in a column and a row is black, counted from the upper left of the code without its margin.
func (c Code) Black(column, row int) bool { return c.code.Black(column, row) }

// Lines draws the code.
func (c Code) Lines(colour bool) []string {
	var lines []string
	for row := -margin; row < c.code.Size+margin; row += 2 {
		var b strings.Builder
		for column := -margin; column < c.code.Size+margin; column++ {
			b.WriteString(block(!c.Black(column, row), !c.Black(column, row+1) && row+1 < c.code.Size+margin))
		}
		line := b.String()
		if colour {
			line = "\x1b[97;40m" + line + "\x1b[0m" // bright white blocks on black
		}
		lines = append(lines, line)
	}
	return lines
}

// block is the sign that is light above and below, or not.
func block(above, below bool) string {
	switch {
	case above && below:
		return "█"
	case above:
		return "▀"
	case below:
		return "▄"
	}
	return " "
}
