package finding

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
)

func TestWhatAHintSaysIsWhatItsEditsWrite(t *testing.T) {
	place := source.Place{File: source.New("a.malt", []byte("turn 6 h")), Span: source.Span{End: 8}}
	edit := []Edit{{Place: place, New: "turn every 6 h"}}
	for _, c := range []struct {
		what string
		do   func(f *Finding)
		want Finding
	}{
		{"certain", func(f *Finding) { f.Repair(place, "turn every 6 h") }, Finding{Hint: "write turn every 6 h", Fixes: edit}},
		{"likely", func(f *Finding) { f.Write(place, "turn every 6 h") }, Finding{Hint: "write turn every 6 h", Offers: []Offer{{"turn every 6 h", edit}}}},
		{"two readings", func(f *Finding) { f.Ask(place, "a", "b") }, Finding{Hint: "did you mean a, or b?",
			Offers: []Offer{{"a", []Edit{{Place: place, New: "a"}}}, {"b", []Edit{{Place: place, New: "b"}}}}}},
		{"the only one near", func(f *Finding) { f.AskOnly(place, "turn every 6 h", true) }, Finding{Hint: "did you mean turn every 6 h?", Fixes: edit}},
		{"one of several near", func(f *Finding) { f.AskOnly(place, "turn every 6 h", false) }, Finding{Hint: "did you mean turn every 6 h?", Offers: []Offer{{"turn every 6 h", edit}}}},
	} {
		var f Finding
		c.do(&f)
		assert.Equal(t, c.want, f, c.what)
	}
}
