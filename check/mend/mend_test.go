package mend_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/check"
	"maltwright/check/mend"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

// checked checks a text without a forecast, which brings no fixes of its own.
func checked(r read.Reader) mend.Checker {
	return func(text []byte) (*source.File, []finding.Finding) {
		out := check.File("case.malt", text, ".", r, check.Options{NoForecast: true})
		return out.House.Files[0], out.Findings
	}
}

func TestAFixIsAppliedAndNothingElseTouched(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"a misspelt word", "site \"Loft\" {\n\twatter 9 to 12 °C   # from the well\n}\n", "site \"Loft\" {\n\twater 9 to 12 °C   # from the well\n}\n"},
		{"a range the wrong way round", "site \"Loft\" { water 12 to 9 °C } # cold", "site \"Loft\" { water 9 to 12 °C } # cold"},
		{"two in a file, one hidden by the other", "# 🌾\r\nsitte \"Loft\" {\r\n  watter 12 to 9 °C\r\n}\r\n", "# 🌾\r\nsite \"Loft\" {\r\n  water 9 to 12 °C\r\n}\r\n"},
		{"a byte-order mark", "\ufeffsite \"Loft\" { watter 9 °C }", "\ufeffsite \"Loft\" { water 9 °C }"},
		{"nothing to mend", "site \"Loft\" { water 9 °C }", "site \"Loft\" { water 9 °C }"},
		{"no certain repair", "site \"Loft\" { xyzzy 9 °C }", "site \"Loft\" { xyzzy 9 °C }"},
	} {
		t.Run(c.what, func(t *testing.T) {
			got := mend.Text([]byte(c.text), checked(nowhere{}))
			assert.Equal(t, c.want, string(got.Text))
			assert.Equal(t, c.text != c.want, got.Changed)
			assert.Equal(t, got.Changed, len(got.Mended) > 0)
			assert.False(t, got.Unread)
		})
	}
}

func TestATextThatDoesNotReadIsLeftAlone(t *testing.T) {
	text := "site \"Loft\" {\n  watter 9 °C\n"
	got := mend.Text([]byte(text), checked(nowhere{}))
	assert.True(t, got.Unread)
	assert.Equal(t, text, string(got.Text))
	assert.Empty(t, got.Mended)
}

// fixes is a checker that always finds the same edits, given as start, end and text.
type edit struct {
	start, end int
	text       string
}

func once(edits ...[]edit) mend.Checker {
	first := true
	return func(text []byte) (*source.File, []finding.Finding) {
		file := source.New("x", text)
		if !first {
			return file, nil
		}
		first = false
		var list []finding.Finding
		for _, group := range edits {
			f := finding.Finding{Rule: "r", Place: source.Place{File: file, Span: source.Span{End: len(text)}}}
			for _, e := range group {
				f.Fixes = append(f.Fixes, finding.Edit{Place: source.Place{File: file, Span: source.Span{Start: e.start, End: e.end}}, New: e.text})
			}
			list = append(list, f)
		}
		return file, list
	}
}

func TestEditsThatTouchAreNotBothApplied(t *testing.T) {
	for _, c := range []struct {
		what  string
		edits [][]edit
		want  string
	}{
		{"apart", [][]edit{{{0, 1, "A"}}, {{4, 5, "E"}}}, "AbcdEf"},
		{"out of order", [][]edit{{{4, 5, "E"}}, {{0, 1, "A"}}}, "AbcdEf"},
		{"side by side", [][]edit{{{0, 2, "AB"}}, {{2, 4, "CD"}}}, "ABCDef"},
		{"over each other", [][]edit{{{0, 3, "ABC"}}, {{2, 4, "xx"}}}, "ABCdef"},
		{"two insertions at one place", [][]edit{{{2, 2, "+"}}, {{2, 2, "-"}}}, "ab+cdef"},
		{"an insertion at the edge of a change", [][]edit{{{2, 4, "CD"}}, {{4, 4, "-"}}}, "abCDef"},
		{"all or nothing", [][]edit{{{2, 3, "C"}}, {{0, 1, "x"}, {2, 3, "y"}}}, "abCdef"},
		{"over itself", [][]edit{{{0, 3, "x"}, {1, 2, "y"}}}, "abcdef"},
		{"outside of the text", [][]edit{{{4, 9, "x"}}, {{-1, 1, "y"}}, {{3, 2, "z"}}}, "abcdef"},
		{"everything", [][]edit{{{0, 6, ""}}}, ""},
	} {
		assert.Equal(t, c.want, string(mend.Text([]byte("abcdef"), once(c.edits...)).Text), c.what)
	}
}

func TestAnEditOfAnotherFileIsNotApplied(t *testing.T) {
	other := source.New("loft.malt", []byte("abcdef"))
	got := mend.Text([]byte("abcdef"), func(text []byte) (*source.File, []finding.Finding) {
		return source.New("x", text), []finding.Finding{{Fixes: []finding.Edit{{Place: source.Place{File: other, Span: source.Span{Start: 0, End: 1}}, New: "x"}}}}
	})
	assert.False(t, got.Changed)
}

func TestARoundThatBreaksTheTextIsUndone(t *testing.T) {
	got := mend.Text([]byte("abcdef"), func(text []byte) (*source.File, []finding.Finding) {
		file := source.New("x", text)
		f := finding.Finding{Rule: "r", Place: source.Place{File: file, Span: source.Span{End: 1}}, Fixes: []finding.Edit{{Place: source.Place{File: file, Span: source.Span{Start: 0, End: 1}}, New: "{"}}}
		if strings.HasPrefix(string(text), "{") {
			f.Rule = syntax.Rules()[0].Name
		}
		return file, []finding.Finding{f}
	})
	assert.Equal(t, "abcdef", string(got.Text))
	assert.False(t, got.Changed)
}

// at is a place in a text, from a byte to another.
func at(file *source.File, start, end int) source.Place {
	return source.Place{File: file, Span: source.Span{Start: start, End: end}}
}

func TestRepairsThatUndoEachOtherLeaveTheTextAsItWas(t *testing.T) {
	next := map[string]string{"a": "b", "b": "c", "c": "a"}
	for _, text := range []string{"a", "b", "c"} {
		got := mend.Text([]byte(text), func(text []byte) (*source.File, []finding.Finding) {
			file := source.New("x", text)
			return file, []finding.Finding{{Rule: string(text), Place: at(file, 0, 1), Fixes: []finding.Edit{{Place: at(file, 0, 1), New: next[string(text)]}}}}
		})
		assert.Equal(t, text, string(got.Text))
		assert.False(t, got.Changed)
		assert.Empty(t, got.Mended)
	}
}

// Every broken example that has a repair is better for it, and mending it a second
// time changes nothing.
func TestBrokenExamplesAreMended(t *testing.T) {
	folder := "../../examples/broken"
	files, err := filepath.Glob(filepath.Join(folder, "*.malt"))
	require.NoError(t, err)
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	mended := 0
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		got := mend.Text(text, checked(root))
		if !got.Changed {
			continue
		}
		mended++
		for _, f := range got.Mended {
			_, left := checked(root)(got.Text)
			assert.False(t, slices.ContainsFunc(left, func(l finding.Finding) bool { return l.Rule == f.Rule && l.Message == f.Message }), "%s: %s is put right", path, f.Rule)
		}
		assert.False(t, mend.Text(got.Text, checked(root)).Changed, path)
		assert.Subset(t, comments(got.Text), comments(text), "%s: comments stay", path)
	}
	assert.GreaterOrEqual(t, mended, 5)
}

// A text that does not read is mended where each fault that keeps it from that has a repair, and
// it reads with those.
func TestATextThatReadsOnceMendedIsMended(t *testing.T) {
	text := "// the loft\nsite \"Loft\" {\n  air 8 to 15 °C // in spring\n}\n"
	got := mend.Text([]byte(text), checked(nowhere{}))
	assert.Equal(t, "# the loft\nsite \"Loft\" {\n  air 8 to 15 °C # in spring\n}\n", string(got.Text))
	assert.False(t, got.Unread)
	text = "// the loft\nsite \"Loft\" {\n  air 8 to 15 °C ¤\n}\n"
	got = mend.Text([]byte(text), checked(nowhere{}))
	assert.Equal(t, text, string(got.Text), "the other fault has no repair")
	assert.True(t, got.Unread)
}

func comments(text []byte) (list []string) {
	for _, line := range strings.Split(string(text), "\n") {
		if i := strings.Index(line, "#"); i >= 0 {
			list = append(list, line[i:])
		}
	}
	return list
}

func TestNoTextIsHurt(t *testing.T) {
	pieces := []string{"site \"L\" {", "}", "watter", "water", " 12 to 9 °C", " 9", "\n", ";", "# c", "soke 7 h", "moisture 72 %", "\"", "process", "🌾", "accept x because \"y\""}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 30).Draw(t, "text"), " ")
		got := mend.Text([]byte(text), checked(nowhere{}))
		if got.Unread {
			assert.Equal(t, text, string(got.Text))
		}
		assert.False(t, mend.Text(got.Text, checked(nowhere{})).Changed, "mended once is mended")
	})
}

func TestAMergeLeftUnsettledIsLeftAlone(t *testing.T) {
	text := "site \"Loft\" {\n  watter 9 to 12 °C\n<<<<<<< ours\n  humidty 55 to 80 %\n=======\n  humidty 55 to 90 %\n>>>>>>> theirs\n}\n"
	got := mend.Text([]byte(text), checked(nowhere{}))
	assert.Equal(t, text, string(got.Text))
	assert.True(t, got.Unread, "it does not read as one text")
}

func TestWhatForbidsMendingIsNamed(t *testing.T) {
	stray := syntax.Rules()[0]
	got := mend.Text([]byte("one }"), func(text []byte) (*source.File, []finding.Finding) {
		file := source.New("x", text)
		return file, []finding.Finding{{Rule: "r", Place: at(file, 0, 3)}, {Rule: stray.Name, Place: at(file, 4, 5)}}
	})
	assert.True(t, got.Unread)
	require.NotNil(t, got.Forbids)
	assert.Equal(t, stray.Name, got.Forbids.Rule)
	assert.Nil(t, mend.Text([]byte("one"), func(text []byte) (*source.File, []finding.Finding) { return source.New("x", text), nil }).Forbids)
}
