package mend_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/check/mend"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// wherever finds a word wherever it stands and would write another for it, in the
// places that the finding and its edit are said to be at.
func wherever(word, other string, said func(f *source.File, start, end int) (of, edit source.Place)) mend.Checker {
	return func(text []byte) (*source.File, []finding.Finding) {
		file := source.New("x", text)
		var list []finding.Finding
		for at := 0; ; {
			i := strings.Index(string(text[at:]), word)
			if i < 0 {
				return file, list
			}
			of, edit := said(file, at+i, at+i+len(word))
			list = append(list, finding.Finding{Rule: "r", Place: of, Fixes: []finding.Edit{{Place: edit, New: other}}})
			at += i + len(word)
		}
	}
}

func TestAnEditIsMadeOnlyAtTheWordsOfItsFinding(t *testing.T) {
	for _, c := range []struct {
		what       string
		said       func(f *source.File, start, end int) (of, edit source.Place)
		text, want string
	}{
		{"of its words", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a, b), at(f, a, b) }, "one two", "one 2"},
		{"within them", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a-1, b), at(f, a, b) }, "one two", "one 2"},
		{"at an unknown place", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a, b), source.Place{} }, "one two", "one two"},
		{"at a place that was lost", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a, b), at(f, 0, 0) }, "one two", "one two"},
		{"both lost", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, 0, 0), at(f, 0, 0) }, "one two", "one two"},
		{"of a finding of no place", func(f *source.File, a, b int) (source.Place, source.Place) { return source.Place{}, at(f, a, b) }, "one two", "one two"},
		{"elsewhere", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a, b), at(f, 0, 1) }, "one two", "one two"},
		{"half outside", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a, b), at(f, a-1, b) }, "one two", "one two"},
		{"in front of a byte-order mark", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, 0, b), at(f, 0, 0) }, "\ufefftwo", "\ufefftwo"},
		{"inside a character", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, 0, b), at(f, 1, b) }, "étwo", "étwo"},
		{"inside a line end", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, 0, b), at(f, 1, b) }, "\r\ntwo", "\r\ntwo"},
	} {
		got := mend.Text([]byte(c.text), wherever("two", "2", c.said))
		assert.Equal(t, c.want, string(got.Text), c.what)
		assert.Equal(t, c.want != c.text, got.Changed, c.what)
	}
}

// A unit that is missing is put in right behind the number: an empty span at a place
// that is known.
func TestSomethingMayBePutInBesideTheWordsOfItsFinding(t *testing.T) {
	for _, edge := range []int{4, 5} {
		got := mend.Text([]byte("for 8"), func(text []byte) (*source.File, []finding.Finding) {
			file := source.New("x", text)
			if len(text) > len("for 8") {
				return file, nil
			}
			return file, []finding.Finding{{Rule: "r", Place: at(file, 4, 5), Fixes: []finding.Edit{{Place: at(file, edge, edge), New: "+"}}}}
		})
		assert.Equal(t, "for 8"[:edge]+"+"+"for 8"[edge:], string(got.Text))
	}
}

func TestARoundAfterWhichTheFindingStandsIsUndone(t *testing.T) {
	// The word moves, and stands again behind what was written in front of it.
	got := mend.Text([]byte("a two"), wherever("two", "a two", func(f *source.File, a, b int) (source.Place, source.Place) { return at(f, a, b), at(f, a, b) }))
	assert.Equal(t, "a two", string(got.Text))
	assert.False(t, got.Changed)
}

// words finds each of the words of a table where it stands, with its repair, if it
// has one.
type words map[string]struct {
	rule     string
	severity finding.Severity
	repair   string
}

func (w words) check(text []byte) (*source.File, []finding.Finding) {
	file := source.New("x", text)
	var list []finding.Finding
	start := 0
	for _, word := range strings.SplitAfter(string(text), " ") {
		here := at(file, start, start+len(strings.TrimSpace(word)))
		start += len(word)
		if def, ok := w[strings.TrimSpace(word)]; ok {
			f := finding.Finding{Rule: def.rule, Severity: def.severity, Place: here}
			if def.repair != "" {
				f.Fixes = []finding.Edit{{Place: here, New: def.repair}}
			}
			list = append(list, f)
		}
	}
	return file, list
}

func TestARoundIsJudgedByWhatItBrings(t *testing.T) {
	lang := read.Rules()[0].Name
	for _, c := range []struct {
		what, text, want string
		words            words
	}{
		{"a fault of the language where it was written", "x y", "x y", words{"y": {"r", finding.Fault, "z"}, "z": {lang, finding.Fault, ""}}},
		{"the others are mended all the same", "x y", "w y", words{"x": {"r", finding.Fault, "w"}, "y": {"r", finding.Fault, "z"}, "z": {lang, finding.Fault, ""}}},
		{"it has a repair too", "x y", "x done", words{"y": {"r", finding.Fault, "z"}, "z": {lang, finding.Fault, "done"}}},
		{"it has one that is none", "x y", "x y", words{"y": {"r", finding.Fault, "z"}, "z": {lang, finding.Fault, "zz"}, "zz": {lang, finding.Fault, ""}}},
		{"a fault of another kind that was hidden", "y", "z", words{"y": {"r", finding.Fault, "z"}, "z": {"soak-too-long", finding.Fault, ""}}},
		{"a fault of a range that was turned", "y", "y", words{"y": {"range-upside-down", finding.Fault, "z"}, "z": {"bed-too-warm", finding.Fault, ""}}},
		{"a danger that was hidden", "y", "z", words{"y": {"r", finding.Fault, "z"}, "z": {"treated-seed", finding.Danger, ""}}},
		{"a caution for a caution", "y", "y", words{"y": {"r", finding.Caution, "z"}, "z": {"other", finding.Caution, ""}}},
		{"a note for a caution", "y", "z", words{"y": {"r", finding.Caution, "z"}, "z": {"other", finding.Note, ""}}},
		{"a text that does not read", "x y", "w y", words{"x": {"r", finding.Fault, "w"}, "y": {"r", finding.Fault, "z"}, "z": {syntax.Rules()[0].Name, finding.Fault, ""}}},
	} {
		got := mend.Text([]byte(c.text), c.words.check)
		assert.Equal(t, c.want, string(got.Text), c.what)
		assert.Equal(t, c.want, string(mend.Text(got.Text, c.words.check).Text), "%s: a second time", c.what)
	}
}
