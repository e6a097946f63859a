package folder

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"

	"maltwright/cmd/journal"
)

// keep keeps the text of a file as it was before it was noted in, under the text after it.
func (c Clerk) keep(r Record, before, after []byte) {
	if c.Cache != "" {
		c.shelf().Put(undoKey(r.File, after), before)
	}
}

// before is the text of a file before it was last noted in; nil where that is not known, or it
// was changed since.
func (c Clerk) before(r Record, now []byte) []byte {
	if c.Cache == "" {
		return nil
	}
	return c.shelf().Get(undoKey(r.File, now))
}

func undoKey(f File, text []byte) string { return fmt.Sprintf("%s\n%x", f.Path, sha256.Sum256(text)) }

// Undo takes back what was noted last: as it is kept, or else the last line of the record. Where a line is
// given, the last one must be it: another writer may have come between. Dry tells what would be taken back, and writes nothing. Errors: *Refused, *Busy, *Failed.
func (c Clerk) Undo(r Record, line string, dry bool) (Undone, error) {
	var u Undone
	back := func(text []byte) (out []byte, err error) {
		if err = r.stays.check(); err != nil {
			return nil, err
		}
		out, u, err = c.undone(r, line, text)
		return out, err
	}
	if dry {
		_, err := back(bytes.Clone(r.Text))
		return u, err
	}
	return u, Edit(c.Writing, r.Name, r.Path, back)
}

// undone is the text of a record without what was noted last.
func (c Clerk) undone(r Record, line string, text []byte) ([]byte, Undone, error) {
	j, release, err := r.journal(text)
	if err != nil {
		return nil, Undone{}, err
	}
	defer release()
	if err := isLast(j, line); err != nil {
		return nil, Undone{}, err
	}
	if was := c.before(r, text); was != nil {
		then := j
		then.Text = was
		again, _ := then.Gone(text)
		if gone, batch := j.Gone(was); len(gone) > 0 {
			return was, Undone{batch, gone, again}, nil
		}
	}
	out, gone, batch, err := j.WithoutLast()
	return out, Undone{Batch: batch, Gone: []journal.Line{gone}}, refused(err)
}

// isLast refuses a line to take back that is not the last one any more.
func isLast(j journal.Record, line string) error {
	if line == "" {
		return nil
	}
	_, lines, err := j.Lines()
	if err != nil {
		return refused(err)
	}
	if n := len(lines); n == 0 || lines[n-1].Words != line {
		return &Refused{errors.New("another line is the last one by now; nothing was taken back: look at the batch again")}
	}
	return nil
}

// Lines lists the lines of the record with their numbers. Errors: *Refused, *Failed.
func (c Clerk) Lines(r Record) (batch string, lines []journal.Line, err error) {
	j, release, err := r.journal(r.Text)
	if err != nil {
		return "", nil, err
	}
	defer release()
	batch, lines, err = j.Lines()
	return batch, lines, refused(err)
}
