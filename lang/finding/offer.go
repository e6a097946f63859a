package finding

import (
	"strings"

	"maltwright/lang/source"
)

// Offer is what may have been meant, where only the writer knows. It is never written
// unasked. Put in, it reads, keeps every number and every name that was written, and means
// what it says.
type Offer struct {
	Says  string // what then stands there
	Edits []Edit // made together
}

// Repair says what to write at a place, and carries it as the one certain repair.
func (f *Finding) Repair(place source.Place, text string) {
	f.Hint, f.Fixes, f.Offers = "write "+Readings(text), []Edit{{Place: place, New: text}}, nil
}

// Write says what may have been meant by the words at a place, and offers to write it.
func (f *Finding) Write(place source.Place, texts ...string) {
	f.Hint, f.Fixes, f.Offers = "write "+Readings(texts...), nil, offers(place, texts)
}

// Ask asks whether one of some texts was meant by the words at a place, and offers them.
func (f *Finding) Ask(place source.Place, texts ...string) {
	f.Hint, f.Fixes, f.Offers = "did you mean "+Readings(texts...)+"?", nil, offers(place, texts)
}

// AskOnly asks the same of one text, and carries it as a repair where nothing else is near.
func (f *Finding) AskOnly(place source.Place, text string, certain bool) {
	f.Ask(place, text)
	if certain {
		f.Fixes, f.Offers = f.Offers[0].Edits, nil
	}
}

// Readings lists texts of which one is meant, as a hint shows them.
func Readings(texts ...string) string { return strings.Join(texts, ", or ") }

func offers(place source.Place, texts []string) []Offer {
	list := make([]Offer, len(texts))
	for i, text := range texts {
		list[i] = Offer{Says: text, Edits: []Edit{{Place: place, New: text}}}
	}
	return list
}
