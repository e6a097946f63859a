package text

import (
	"io"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/words"
)

// Ledger writes batches side by side, in the units of a house. Columns that do not fit the
// width stand in further tables below.
func Ledger(w io.Writer, r ledger.Result, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	if len(r.Batches) > 0 {
		s.line("%s", s.bold(words.LedgerTitle(r.Batches)))
		s.line("")
		s.lay(gridOf(h.LedgerTable(r.Batches)))
		for _, n := range h.LedgerNotes(r.Batches) {
			s.para(n.Label, "%s", n.Text)
		}
	}
	_, err := io.WriteString(w, s.String())
	return err
}
