package command

import (
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
)

// sheet is what those answers are written on that package text does not know yet.
type sheet struct {
	*World
	b strings.Builder

	pounds, fahrenheit bool // the units in which it is shown
}

const joulesPerKWh = 3.6e6

func (p *sheet) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

func (p *sheet) bold(text string) string {
	if p.colour() {
		return "\x1b[1m" + text + "\x1b[0m"
	}
	return text
}

func (p *sheet) para(label, format string, args ...any) {
	const indent = 14
	for i, line := range words.Wrap(fmt.Sprintf(format, args...), p.width()-indent) {
		if i > 0 {
			label = ""
		}
		p.line("%-*s%s", indent, label, line)
	}
}

// lasting writes a length of time for a sentence: 9.5 h, 6 d 4 h.
func lasting(s float64) string {
	if known(s) == nil {
		return noFigure
	}
	if h := s / 3600; h < 48 {
		return fmt.Sprintf("%.1f h", h)
	}
	h := int(math.Round(s / 3600))
	return fmt.Sprintf("%d d %d h", h/24, h%24)
}

// kilograms writes a weight to three figures, in grams below a kilogram.
func kilograms(m float64) string {
	switch {
	case m < 1:
		return fmt.Sprintf("%.0f g", 1000*m)
	case m < 10:
		return fmt.Sprintf("%.2f kg", m)
	case m < 100:
		return fmt.Sprintf("%.1f kg", m)
	}
	return fmt.Sprintf("%.0f kg", m)
}

func kilowattHours(j float64) string {
	switch k := j / joulesPerKWh; {
	case k < 0.1:
		return fmt.Sprintf("%.0f Wh", 1000*k)
	case k < 100:
		return fmt.Sprintf("%.1f kWh", k)
	default:
		return fmt.Sprintf("%.0f kWh", k)
	}
}

// sheetOptions are how answers are written for this terminal.
func (w World) sheetOptions() text.Options {
	return text.Options{Width: w.Width, Colour: w.colour(), Folder: w.Folder}
}
