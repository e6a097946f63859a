package serve

import (
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/journal"
	"maltwright/lang/read"
)

// step is one reading of a batch: its form as it is filled in, and the words that a maltster types for the same at a command line.
type step struct {
	at, typed string
	form      []string
	doubted   bool // it is asked about, and written all the same
	undone    bool // and taken back
}

// job is a batch from the beginning to the store.
var job = []step{
	{at: "2026-11-06 21:05", typed: "weighed 7.40 kg after soak 1", form: []string{"kind", "weighed", "value", "7.40", "unit", "kg", "after", "soak 1"}},
	{at: "2026-11-07 13:05", typed: "read water 13.4 °C", form: []string{"kind", "temperature", "place", "water", "value", "13,4", "unit", "°C"}},
	{at: "2026-11-07 13:10", typed: `weighed 10.53 kg in "blue tub" after soak 2`, form: []string{"kind", "weighed", "value", "10.53", "unit", "kg", "in", "blue tub", "after", "soak 2"}, doubted: true, undone: true},
	{at: "2026-11-07 13:10", typed: `weighed 9.53 kg in "blue tub" after soak 2`, form: []string{"kind", "weighed", "value", "9.53", "unit", "kg", "in", "blue tub", "after", "soak 2"}},
	{at: "2026-11-08 05:05", typed: "weighed 9.30 kg after soak 3", form: []string{"kind", "weighed", "value", "9.30", "unit", "kg", "after", "soak 3"}},
	{at: "2026-11-08 05:10", typed: "counted chit 88 of 100", form: []string{"kind", "chit", "value", "88", "of", "100"}},
	{at: "2026-11-08 21:50", typed: "read bed 16.2 °C", form: []string{"kind", "temperature", "place", "bed", "value", "16.2", "unit", "°C"}},
	{at: "2026-11-08 22:00", typed: "turned", form: []string{"kind", "turned"}},
	{at: "2026-11-09 08:00", typed: "remark smells of cucumber", form: []string{"kind", "remark", "text", "smells of\r\ncucumber"}},
	{at: "2026-11-10 08:00", typed: "counted acrospire 8 25 63 4 0 0", form: []string{"kind", "acrospire", "none", "8", "quarter", "25", "half", "63", "three", "4"}},
	{at: "2026-11-10 08:05", typed: "felt rub gummy", form: []string{"kind", "rub", "value", "gummy"}},
	{at: "2026-11-12 21:41", typed: "counted acrospire 4 0 6 32 49 9", form: []string{"kind", "acrospire", "none", "4", "quarter", "0", "half", "6", "three", "32", "whole", "49", "over", "9"}},
	{at: "2026-11-12 21:51", typed: "felt rub gritty", form: []string{"kind", "rub", "value", "gritty"}},
	{at: "2026-11-12 22:01", typed: "weighed 8.82 kg after germinate", form: []string{"kind", "weighed", "value", "8.82", "unit", "kg", "after", "germinate"}},
	{at: "2026-11-13 18:30", typed: "weighed 7.55 kg after wither", form: []string{"kind", "weighed", "value", "7.55", "unit", "kg", "after", "wither"}},
	{at: "2026-11-13 19:15", typed: "read air-off 30.9 °C", form: []string{"kind", "temperature", "place", "air-off", "value", "30.9", "unit", "°C"}},
	{at: "2026-11-14 00:30", typed: "weighed 5.57 kg after dry 1", form: []string{"kind", "weighed", "value", "5.57", "unit", "kg", "after", "dry 1"}},
	{at: "2026-11-14 04:09", typed: "weighed 5.42 kg after dry 2", form: []string{"kind", "weighed", "value", "5.42", "unit", "kg", "after", "dry 2"}},
	{at: "2026-11-14 09:09", typed: "weighed 5.13 kg after cure", form: []string{"kind", "weighed", "value", "5.13", "unit", "kg", "after", "cure"}},
	{at: "2026-11-14 11:41", typed: "weighed 4.93 kg clean malt", form: []string{"kind", "weighed", "value", "4.93", "unit", "kg", "clean", "yes"}},
	{at: "2026-11-14 11:50", typed: `changed soak 3 to 6 h because "it had its weight an hour early"`, form: []string{"kind", "changed", "step", "soak 3", "value", "6", "unit", "h", "why", "it had its weight an hour early"}},
	{at: "2026-11-14 12:00", typed: "sample 20.00 g dried to 17.57 g", form: []string{"kind", "sample", "value", "20.00", "dry", "17.57"}},
	{at: "2026-11-15 12:00", typed: "tested moisture 4.6 %", form: []string{"kind", "moisture", "value", "4.6"}},
}

// begun is the batch as it is begun.
const begun = "2026-11-06 14:00"

// Whoever uses only the page has the record that the command would have written, byte for byte.
func TestARecordMadeThroughThePageIsThatOfTheCommand(t *testing.T) {
	s := siteOf(t, "batches", begun)
	process := linked(t, s.page("/"), "Loft pale")
	a := s.post(process+"/begin", "name", "26-09", "at", "2026-11-06T14:00")
	require.Equal(t, http.StatusSeeOther, a.status, plain(a.body))
	batch := strings.Split(a.to, "?")[0]
	told := plain(s.page(a.to))
	assert.Contains(t, told, "begun: 26-09")
	assert.Contains(t, told, "have ready: 6 kg of")
	byCommand := typedAll(t, s.folder, s.read("26-09.malt"))
	for i, x := range job {
		s.at(x.at)
		a := s.wrote(batch, x.form...)
		require.Equal(t, byCommand[i], s.read("26-09.malt"), x.typed)
		if x.undone {
			page := s.page(a.to)
			line := regexp.MustCompile(`<button class="plain" name="line" value="([^"]*)">Take it back`).FindStringSubmatch(page)
			require.NotNil(t, line, page)
			require.Equal(t, http.StatusSeeOther, s.post(batch+"/undo", "line", unescaped(line[1])).status)
		}
	}
}

// typedAll gives a record after each line of the job, as the journal writes it.
func typedAll(t *testing.T, folder, record string) (list []string) {
	t.Helper()
	for _, x := range job {
		now, err := time.ParseInLocation(stamp, x.at, time.Local)
		require.NoError(t, err)
		with := typed(t, folder, record, x.typed, now)
		if list = append(list, with); !x.undone {
			record = with
		}
	}
	return list
}

// wrote sends a form, reads what it comes to, and writes it.
func (s *site) wrote(batch string, form ...string) reply {
	s.t.Helper()
	a := s.post(batch+"/reading", form...)
	require.Equal(s.t, http.StatusOK, a.status, "%v: %s", form, plain(a.body))
	v := fields(s.t, a.body, batch+"/reading")
	v.Set("write", "yes")
	if strings.Contains(a.body, `value="sure"`) {
		v.Set("write", "sure")
	}
	a = s.send(batch+"/reading", v)
	require.Equal(s.t, http.StatusSeeOther, a.status, "%v: %s", form, plain(a.body))
	return a
}

// typed gives a record with a line in it as the journal writes it.
func typed(t *testing.T, folder, record, words string, now time.Time) string {
	t.Helper()
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	e, err := journal.Record{Name: "26-09.malt", Text: []byte(record), Reader: root, Dir: "."}.With(journal.Reading{Words: strings.Fields(words)}, now)
	require.NoError(t, err, words)
	return string(e.Text)
}

func TestEveryKindOfReadingIsInTheJob(t *testing.T) {
	done := map[string]bool{}
	for _, x := range job {
		done[x.form[1]] = true
	}
	for _, k := range kinds {
		assert.True(t, done[k.kind], k.kind)
	}
	assert.Len(t, entries, len(kinds))
}

func TestWhatIsBegunIsAFileOfItsOwn(t *testing.T) {
	s := siteOf(t, "batches", "2026-11-06 14:00")
	process := linked(t, s.page("/"), "Loft pale")
	require.Equal(t, http.StatusSeeOther, s.post(process+"/begin").status)
	again := s.post(process + "/begin")
	assert.Equal(t, http.StatusUnprocessableEntity, again.status)
	assert.Contains(t, plain(again.body), `is still in "blue tub"`)
	assert.Contains(t, again.body, "Begin it all the same")
	require.Equal(t, http.StatusSeeOther, s.post(process+"/begin", "sure", "yes", "weight", "5,5 kg").status)
	list, err := filepath.Glob(filepath.Join(s.folder, "26-*.malt"))
	require.NoError(t, err)
	assert.Len(t, list, 5)
	text, err := os.ReadFile(filepath.Join(s.folder, "26-07.malt"))
	require.NoError(t, err)
	assert.Contains(t, string(text), "from   5.5 kg")
	wrong := s.post(process+"/begin", "sure", "yes", "name", "../out", "weight", "5.5 kg")
	assert.Equal(t, http.StatusUnprocessableEntity, wrong.status)
	assert.Contains(t, wrong.body, `value="../out"`, "what was typed is kept")
	assert.NoFileExists(t, filepath.Join(s.folder, "..", "out.malt"))
}
