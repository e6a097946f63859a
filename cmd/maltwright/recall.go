package main

import (
	"fmt"
	"strings"

	"maltwright/cmd/recall"
	"maltwright/cmd/words"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
)

// past is the root of the input as it reads the past too.
func (in input) past(root read.Reader, known recall.Known) read.Reader {
	return in.as().Past(root, known)
}

// mostSince is how many changes of a process are told of a batch.
const mostSince = 3

// tellPin says of a batch whose process has changed since it was begun by which text it
// goes.
func (w World) tellPin(b *model.Batch) {
	switch p := b.Pinned; {
	case p == nil:
	case b.Today != nil:
		since := b.Since
		if n := len(since) - mostSince; n > 0 {
			since = append(since[:mostSince:mostSince], fmt.Sprintf("and %d more", n))
		}
		w.aside(fmt.Sprintf("batch %q goes by %q as it was in %s: since then %s", words.Safe(b.Name), words.Safe(b.Process.Name), words.Safe(p.Revision.Text), words.Safe(strings.Join(since, "; "))))
	case !fingerprint.Is(b.Process, p.Print.Text):
		why := "the record names no revision of git"
		if p.Revision.Text != "" {
			why = fmt.Sprintf("git has no such text in %s", words.Safe(p.Revision.Text))
		}
		w.aside(fmt.Sprintf("batch %q goes by %q as it stands, which has changed since it was begun: %s", words.Safe(b.Name), words.Safe(b.Process.Name), why))
	}
}
