package text

import (
	"io"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/answer/sums"
	"maltwright/cmd/words"
)

// Sums writes the figures of a reckoning, the working below them, then the notes. It stands
// in the units of the input.
func Sums(w io.Writer, r sums.Result, o Options) error {
	s := &Sheet{Options: o}
	s.aligned("", words.Sums(r))
	s.line("")
	var working []words.Labelled
	for _, step := range r.Steps().Working {
		working = append(working, words.WorkingStep(step))
	}
	s.aligned("  ", working)
	for _, n := range r.Steps().Notes {
		s.line("")
		s.hanging("note", words.WorkingNote(n))
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// aligned writes rows of a label and a text, the texts below each other.
func (s *Sheet) aligned(indent string, rows []words.Labelled) {
	width := 0
	for _, r := range rows {
		width = max(width, uniseg.StringWidth(r.Label))
	}
	for _, r := range rows {
		front := indent + r.Label + strings.Repeat(" ", width-uniseg.StringWidth(r.Label)) + "  "
		if uniseg.StringWidth(front+r.Text) > s.columns() {
			s.hangs(indent, indent+"  ", r.Label+": "+r.Text)
			continue
		}
		s.line("%s%s", front, r.Text)
	}
}
