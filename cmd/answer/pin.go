package answer

import (
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
)

// Pin is by which text of its process a batch was begun, and by which it goes.
type Pin struct {
	Fingerprint string     `doc:"of that text, as the record has it"`
	Revision    string     `doc:"of git that holds it; empty where the record names none"`
	Process     PinnedText `doc:"unchanged: the process is the same still; as-begun: it has changed since, and the batch goes by its text of then; as-it-stands: it has changed, the text of then cannot be had, and the batch goes by that of now"`
	Since       []string   `doc:"what is otherwise since, as sentences; empty where the text of then is not at hand"`
}

// PinnedText is which text of a process a batch goes by.
type PinnedText string

// The texts.
const (
	Unchanged  PinnedText = "unchanged"
	AsBegun    PinnedText = "as-begun"
	AsItStands PinnedText = "as-it-stands"
)

// PinOf is the pin of a batch, nil where it has none.
func PinOf(b *model.Batch) *Pin {
	if b.Pinned == nil {
		return nil
	}
	p := Pin{Fingerprint: b.Pinned.Print.Text, Revision: b.Pinned.Revision.Text, Process: Unchanged, Since: b.Since}
	switch {
	case b.Today != nil:
		p.Process = AsBegun
	case !fingerprint.Is(b.Process, p.Fingerprint):
		p.Process = AsItStands
	}
	return &p
}
