package talk

import (
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"
)

// screen paints a block of lines on a terminal, in place of the one before. In between the cursor
// stands, hidden, at the begin of the last line of the block.
type screen struct {
	out           io.Writer
	looks         *strings.Replacer // takes away what the terminal cannot show
	width, height int
	block         []string // what stands there
	begun         bool
}

const (
	eraseLine  = "\x1b[2K"
	eraseBelow = "\x1b[J"
	begin      = "\x1b[?25l\x1b[?2004h" // hides the cursor, and asks for signs around what is pasted
	end        = "\x1b[?2004l\x1b[?25h"
)

// size takes the size of the terminal; 0 of one that does not say.
func (s *screen) size(width, height int) {
	if width <= 0 || height <= 0 {
		width, height = 80, 24
	}
	s.width, s.height = width, height
}

// show paints a block. Of one that is too high the last lines are seen.
func (s *screen) show(block []string) {
	var b strings.Builder
	if !s.begun {
		s.begun = true
		b.WriteString(begin)
	}
	b.WriteString(s.top())
	seen := block[max(0, len(block)-s.height):]
	s.block = nil
	for i, line := range seen { // a line is erased before it is painted: behind a full one the cursor still stands on it
		if i < len(seen)-1 {
			b.WriteString(eraseLine)
		} else {
			b.WriteString(eraseBelow)
		}
		line = cut(s.looks.Replace(line), s.width)
		s.block = append(s.block, line)
		b.WriteString(line)
		if i < len(seen)-1 {
			b.WriteString("\r\n")
		}
	}
	b.WriteString("\r")
	s.write(b.String())
}

// leave takes the block away and writes lines that stay.
func (s *screen) leave(lines string) {
	if s.begun {
		s.write(s.top() + eraseBelow + strings.ReplaceAll(lines, "\n", "\r\n"))
		s.block = nil
	}
}

// close takes the block away and gives the cursor back.
func (s *screen) close() {
	if s.begun {
		s.leave("")
		s.write(end)
		s.begun = false
	}
}

// top goes to the first line of the block. A terminal that became narrower has broken its lines.
func (s *screen) top() string {
	up := 0
	for i := range len(s.block) - 1 {
		up += max(1, (columns(s.block[i])+s.width-1)/s.width)
	}
	if up = min(up, s.height-1); up > 0 {
		return fmt.Sprintf("\r\x1b[%dA", up)
	}
	return "\r"
}

func (s *screen) write(text string) { _, _ = io.WriteString(s.out, text) }

// cut is a line in so many columns. The looks in it stay whole.
func cut(line string, width int) string {
	var b strings.Builder
	for line != "" {
		if n := strings.IndexByte(line, 'm') + 1; line[0] == escape && n > 0 {
			b.WriteString(line[:n])
			line = line[n:]
			continue
		}
		var sign string
		var columns int
		sign, line, columns, _ = uniseg.FirstGraphemeClusterInString(line, -1)
		if width -= columns; width >= 0 {
			b.WriteString(sign)
		}
	}
	return b.String()
}

// columns is how wide a line with looks is.
func columns(line string) int { return uniseg.StringWidth(plain.Replace(line)) }
