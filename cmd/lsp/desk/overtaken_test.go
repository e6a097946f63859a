package desk

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

const book = `use "pale.malt"

batch "26-05" of "Loft pale" {
  began 2026-03-06 07:00
  weighed 8.5 kg at 14:05
}
`

// noted is the record with a line more in front of its brace.
func noted(text, line string) string {
	return strings.Replace(text, "\n}\n", "\n  "+line+"\n}\n", 1)
}

func TestABufferIsOvertaken(t *testing.T) {
	reading, other := "turned at 21:05", "counted chit 84 of 100 at 22:00"
	remark := strings.Replace(book, "batch", "# spring\nbatch", 1)
	for _, c := range []struct {
		what               string
		base, ours, theirs string
		want               *Overtaken
	}{
		{"nothing has changed on disk", book, remark, book, nil},
		{"the buffer was read anew", book, noted(book, reading), noted(book, reading), nil},
		{"line ends and a mark are no change", book, remark, "\ufeff" + strings.ReplaceAll(book, "\n", "\r\n") + "\r\n", nil},
		{"it is in the buffer already, among more", book, noted(remark, reading), noted(book, reading), nil},
		{"a reading came", book, remark, noted(book, reading), &Overtaken{Lines: []string{reading}, Merged: noted(remark, reading), Certain: true}},
		{"both wrote behind the same", book, noted(book, reading), noted(book, other), &Overtaken{Lines: []string{other}, Merged: noted(noted(book, reading), other), Certain: true}},
		{"the last line is being changed", book, strings.Replace(book, "8.5 kg", "8.6 kg", 1), noted(book, reading), &Overtaken{Lines: []string{reading}, Merged: noted(strings.Replace(book, "8.5 kg", "8.6 kg", 1), reading), Certain: true}},
		{"the buffer does not read", book, strings.Replace(book, "weighed 8.5 kg at", "weighed 8.5 {", 1), noted(book, reading), &Overtaken{Lines: []string{reading}, Merged: noted(strings.Replace(book, "weighed 8.5 kg at", "weighed 8.5 {", 1), reading)}},
		{"a reading was taken back", noted(book, reading), noted(remark, reading), book, &Overtaken{Gone: true, Merged: remark, Certain: true}},
		{"both changed the same", book, strings.Replace(book, "8.5 kg", "8.6 kg", 1), strings.Replace(book, "8.5 kg", "8.7 kg", 1), &Overtaken{Lines: []string{"weighed 8.7 kg at 14:05"}, Gone: true}},
		{"the file was emptied", book, remark, "", &Overtaken{Gone: true}},
	} {
		got := Overtaking([]byte(c.base), []byte(c.ours), []byte(c.theirs))
		if c.want == nil {
			assert.Nil(t, got, c.what)
			continue
		}
		if assert.NotNil(t, got, c.what) {
			if c.want.Merged == "" {
				assert.False(t, got.Certain, c.what)
				got.Merged = ""
			}
			assert.Equal(t, c.want, got, c.what)
		}
	}
}

func TestABufferThatIsNotLaidOutStaysAsItIs(t *testing.T) {
	loose := strings.ReplaceAll(book, "  ", "\t")
	ours := strings.Replace(loose, "\n}\n", "\n\tturned at 21:05\n}\n", 1)
	got := Overtaking([]byte(loose), []byte(ours), []byte(noted(loose, "counted chit 84 of 100 at 22:00")))
	require.NotNil(t, got)
	assert.True(t, got.Certain)
	assert.Contains(t, got.Merged, "\tweighed 8.5 kg", "only what is missing is put in")
	assert.Contains(t, got.Merged, "turned at 21:05\n  counted")
}

// made makes edits of a text.
func made(f *source.File, edits []Edit) string {
	text := string(f.Bytes())
	for _, e := range slices.Backward(edits) {
		text = text[:e.Start] + e.New + text[e.End:]
	}
	return text
}

func TestEditsMakeTheText(t *testing.T) {
	lines := []string{"a\n", "b\n", "\n", "c °🌾\n", "}\n"}
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string) string {
			return strings.Join(rapid.SliceOfN(rapid.SampledFrom(lines), 0, 12).Draw(t, label), "")
		}
		from, to := draw("from"), evened([]byte(draw("to")))
		if rapid.Bool().Draw(t, "without the last end") {
			from = strings.TrimSuffix(from, "\n")
		}
		if rapid.Bool().Draw(t, "CRLF") {
			from = strings.ReplaceAll(from, "\n", "\r\n")
		}
		f := source.New("x", []byte(from))
		assert.Equal(t, to, evened([]byte(made(f, Edits(f, to)))), "%q", from)
	})
}

// Whatever two people write into a record, what is put together has every line of both.
func TestNothingIsLostInWhatIsMerged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		write := func(text, label string) (string, []string) {
			var new []string
			for i := range rapid.IntRange(1, 4).Draw(t, label) {
				line := "turned at " + rapid.SampledFrom([]string{"15:1", "16:2", "17:3"}).Draw(t, "hour") + string(rune('0'+i))
				if label == "theirs" {
					line = "counted chit " + string(rune('1'+i)) + "0 of 100 at 18:0" + string(rune('0'+i))
				}
				new = append(new, line)
				text = noted(text, line)
			}
			return text, new
		}
		ours, own := write(book, "ours")
		theirs, came := write(book, "theirs")
		got := Overtaking([]byte(book), []byte(ours), []byte(theirs))
		require.NotNil(t, got)
		require.True(t, got.Certain)
		for _, line := range append(own, came...) {
			assert.Contains(t, got.Merged, "  "+line+"\n")
		}
		assert.Equal(t, came, got.Lines)
		assert.Nil(t, Overtaking([]byte(book), []byte(got.Merged), []byte(theirs)), "then nothing is missing")
	})
}

func TestWhoTypesWhileItIsSavedHasAnotherTextThanWasWritten(t *testing.T) {
	d, dir := table(t, "a.malt", book)
	path := dir + "/a.malt"
	d.Open(URI(path), 1, book)
	d.Change(URI(path), 2, []wire.TextDocumentContentChangeEvent{{Text: "# one\n" + book}})
	write(t, path, "# one\n"+book)
	d.Change(URI(path), 3, []wire.TextDocumentContentChangeEvent{{Text: "# one two\n" + book}})
	d.Saved(URI(path))
	doc, err := d.Now().Doc(path)
	require.NoError(t, err)
	assert.Equal(t, "# one\n"+book, string(doc.Begun.Text))
	d.Saved(URI(path)) // nothing is otherwise
	write(t, path, "# one two\n"+book)
	d.Saved(URI(path))
	doc, err = d.Now().Doc(path)
	require.NoError(t, err)
	assert.Equal(t, "# one two\n"+book, string(doc.Begun.Text))
}
