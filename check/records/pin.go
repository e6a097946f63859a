package records

import (
	"fmt"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
)

// mostSince is how many changes of a process are told.
const mostSince = 3

// pinned finds a process that was changed since the batch was begun. Where its text of
// then is known the batch goes by that, and it is a note.
func (r *record) pinned() {
	b := r.batch
	switch {
	case b.Pinned == nil:
	case b.Today != nil:
		since := b.Since
		if n := len(since) - mostSince; n > 0 {
			since = append(since[:mostSince:mostSince], fmt.Sprintf("and %d more", n))
		}
		f := processChanged.At(b.Pinned.Place, fmt.Sprintf("%q has changed since the batch began; the record goes by the text in %s; since then %s", b.Process.Name, b.Pinned.Revision.Text, strings.Join(since, "; ")))
		f.Severity = finding.Note
		f.Hint = "nothing need be done"
		r.note(f)
	case !fingerprint.Is(b.Process, b.Pinned.Print.Text):
		f := processChanged.At(b.Pinned.Place, fmt.Sprintf("%q has changed since the batch began, and the record is judged by its present text", b.Process.Name))
		if rev := b.Pinned.Revision.Text; rev != "" {
			f.Hint = fmt.Sprintf("git has no such text in %s here: check that the clone is complete and the file is in its place", rev)
		}
		r.note(f)
	}
}
