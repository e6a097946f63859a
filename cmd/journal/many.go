package journal

import (
	"fmt"
	"strings"
	"time"

	"maltwright/lang/source"
)

// WithAll gives the record with all lines of a text in it, each a reading; empty lines and comments
// are passed over. Like says how they are read: its time is that of every line which says none. It is
// all or nothing: the error says at which line it failed.
func (r Record) WithAll(text string, like Reading, now time.Time) (all Entry, err error) {
	like.Many = true
	var lines []source.Span
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(strings.TrimPrefix(line, "\ufeff"))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		like.Words = []string{line}
		e, parted, err := r.with(like, now)
		if err != nil {
			return all, atInput(i+1, err)
		}
		grown := len(e.Text) - len(r.Text)
		for k := range lines {
			if lines[k].Start >= parted {
				lines[k].Start, lines[k].End = lines[k].Start+grown, lines[k].End+grown
			}
		}
		lines = append(lines, e.Line)
		all, r.Text = e, e.Text
	}
	if len(lines) == 0 {
		return all, misuse("there is no reading: write one behind the file, or give lines of readings on standard input")
	}
	all.Lines = lines
	return all, nil
}

// atInput says at which line of the input it failed, and that nothing was written.
func atInput(line int, err error) error {
	text := fmt.Sprintf("line %d of the readings: %s; none of them is written", line, err)
	if _, isMisuse := err.(Misuse); isMisuse {
		return Misuse(text)
	}
	return Refusal(text)
}
