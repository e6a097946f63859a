package journal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/journal"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
)

var start = time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local)

// drawn is a record as somebody may have written it: lines with a date and without, comments,
// empty lines, in either end of line, the closing brace on a line of its own or not.
func drawn(t *rapid.T) (text string, times []time.Time) {
	end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
	var b strings.Builder
	b.WriteString("use \"pale.malt\"" + end + end + "batch \"26-10\" of \"Loft pale\" {" + end + "  began 2026-03-06 07:00" + end)
	last := start
	for i := range rapid.IntRange(0, 8).Draw(t, "lines") {
		step := rapid.IntRange(1, 20*60).Draw(t, "minutes")
		next := last.Add(time.Duration(step) * time.Minute)
		stamp := next.Format("2006-01-02 15:04")
		if at, ok := value.Follow(last, next.Hour()*3600+next.Minute()*60); ok && at.Equal(next) && rapid.Bool().Draw(t, "alone") {
			stamp = next.Format("15:04")
		}
		if rapid.IntRange(0, 4).Draw(t, "gap") == 0 {
			b.WriteString(end)
		}
		word := rapid.SampledFrom([]string{"remark  \"no. %d\"", "remark \"no. %d\"", "    remark \"no. %d\""}).Draw(t, "word")
		b.WriteString("  " + fmt.Sprintf(word, i) + " at " + stamp)
		if rapid.IntRange(0, 4).Draw(t, "comment") == 0 {
			b.WriteString("  # so it was")
		}
		b.WriteString(end)
		if rapid.IntRange(0, 5).Draw(t, "change") == 0 {
			b.WriteString("  changed soak 1 to 6 h because \"no. " + fmt.Sprint(i) + "\"" + end)
		}
		last, times = next, append(times, next)
	}
	b.WriteString(rapid.SampledFrom([]string{"}" + end, "}", end + "}" + end, "  # the end" + end + "}" + end}).Draw(t, "close"))
	return b.String(), times
}

func record(t require.TestingT, text string) journal.Record {
	root, err := read.OpenRoot("../../examples/batches")
	require.NoError(t, err)
	return journal.Record{Name: "new.malt", Text: []byte(text), Reader: root, Dir: "."}
}

// timesOf are the times of the remarks of a record, by their words.
func timesOf(t require.TestingT, text []byte) map[string]time.Time {
	tree, found := syntax.Parse(source.New("new.malt", text))
	require.Empty(t, found)
	out := map[string]time.Time{}
	for s, at := range value.Times(tree.Top.Statements[1].Body.Statements) {
		out[s.Verb.Text+" "+wordOf(s)] = at
	}
	return out
}

func wordOf(s *syntax.Statement) string {
	if x, ok := s.Terms[0].(syntax.Text); ok {
		return x.Value
	}
	return ""
}

var words = [][]string{{"remark", "smells of straw"}, {"remark", "it floats"}, {"changed soak 2 to 6 h because \"slept long\""}, {"tare 1 kg"}}

func TestUndoGivesTheFileBackAsItWas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, times := drawn(t)
		now := start
		if len(times) > 0 {
			now = times[len(times)-1]
		}
		now = now.Add(time.Duration(rapid.IntRange(1, 40*60).Draw(t, "later")) * time.Minute)
		r := record(t, text)
		e, err := r.With(journal.Reading{Words: rapid.SampledFrom(words).Draw(t, "words")}, now)
		require.NoError(t, err)
		require.NotEqual(t, text, string(e.Text))
		r.Text = e.Text
		back, line, batch, err := r.WithoutLast()
		require.NoError(t, err)
		assert.Equal(t, text, string(back))
		assert.Equal(t, "26-10", batch)
		assert.Equal(t, strings.Join(strings.Fields(e.Words()), " "), line.Words)
	})
}

func TestALateLineMovesNoOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, times := drawn(t)
		if len(times) == 0 {
			return
		}
		last := times[len(times)-1]
		at := start.Add(time.Duration(rapid.IntRange(0, int(last.Sub(start).Minutes())+600).Draw(t, "at")) * time.Minute)
		before := timesOf(t, []byte(text))
		e, err := record(t, text).With(journal.Reading{Words: []string{"remark", "late"}, At: at.Format("2006-01-02 15:04")}, last.Add(time.Hour))
		require.NoError(t, err)
		after := timesOf(t, e.Text)
		assert.True(t, at.Equal(after["remark late"]), "%s", e.Text)
		delete(after, "remark late")
		assert.Equal(t, before, after, "%s", e.Text)
		assert.Equal(t, at.Before(last), e.Late)
		assert.Equal(t, strings.Count(text, "# so it was"), strings.Count(string(e.Text), "# so it was"))
	})
}

func TestALineThatIsPutRightMovesNoOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, times := drawn(t)
		if len(times) == 0 {
			return
		}
		r := record(t, text)
		_, lines, err := r.Lines()
		require.NoError(t, err)
		lines = slices.DeleteFunc(lines, func(x journal.Line) bool { return !strings.HasPrefix(x.Words, "remark") })
		line := rapid.SampledFrom(lines).Draw(t, "line")
		name := strings.Split(line.Words, "\"")[1]
		x := journal.Reading{Words: []string{"remark", "right"}}
		before := timesOf(t, []byte(text))
		want := before["remark "+name]
		if rapid.Bool().Draw(t, "moved") {
			want = start.Add(time.Duration(rapid.IntRange(0, int(times[len(times)-1].Sub(start).Minutes())+60).Draw(t, "at")) * time.Minute)
			x.At = want.Format("2006-01-02 15:04")
		}
		e, err := r.Fix(line.Number, x, times[len(times)-1].Add(time.Hour))
		require.NoError(t, err)
		after := timesOf(t, e.Text)
		assert.True(t, want.Equal(after["remark right"]), "%s\n%s", text, e.Text)
		assert.Equal(t, line.Words, e.Was)
		delete(before, "remark "+name)
		delete(after, "remark right")
		assert.Equal(t, before, after, "%s\n%s", text, e.Text)
		assert.Contains(t, e.Words(), "right")
	})
}

// What is read from a text line by line stands in the record as if each had been noted alone.
func TestManyAreAllOrNone(t *testing.T) {
	r := record(t, began)
	text := "remark \"a\" at 2026-03-06 08:00\n\n# no reading\nremark \"b\" at 2026-03-06 07:30\r\nweighed 7.4 kg at 14:00 after soak 1\n"
	e, err := r.WithAll(text, journal.Reading{}, noon)
	require.NoError(t, err)
	assert.Equal(t, []string{`remark "a" at 2026-03-06 08:00`, `remark "b" at 2026-03-06 07:30`}, e.All()[:2])
	assert.Contains(t, string(e.Text), "remark \"b\" at 2026-03-06 07:30\n  remark \"a\" at 2026-03-06 08:00\n")
	_, err = r.WithAll(text+"weighed 740 kg at 15:00\n", journal.Reading{}, noon)
	require.ErrorAs(t, err, new(journal.Refusal))
	assert.Contains(t, err.Error(), "line 6 of the readings: not noted")
	_, err = r.WithAll("# nothing\n\n", journal.Reading{}, noon)
	require.ErrorAs(t, err, new(journal.Misuse))
}

func TestWhatBeginsAReadingIsKnown(t *testing.T) {
	for word, want := range map[string]bool{"weighed": true, "bed": true, "chalky": true, "rub": true, "chit": true, "remark": true, "26-03": false, "12.2": false, "batch": false, "x": false} {
		assert.Equal(t, want, journal.Begins(word), word)
	}
}
