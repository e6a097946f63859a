package serve

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/journal"
	"maltwright/lang/read"
)

// job is a batch from the beginning to the store: each form as it is filled in, and the words that
// a maltster types for the same at a command line.
var job = []struct {
	at, typed string
	form      []string
}{
	{"2026-11-06 21:05", "weighed 7.40 kg after soak 1", []string{"kind", "weighed", "value", "7.40", "unit", "kg", "after", "soak 1"}},
	{"2026-11-07 13:05", "read water 13.4 °C", []string{"kind", "temperature", "place", "water", "value", "13,4", "unit", "°C"}},
	{"2026-11-07 13:10", `weighed 9.53 kg in "blue tub" after soak 2`, []string{"kind", "weighed", "value", "9.53", "unit", "kg", "in", "blue tub", "after", "soak 2"}},
	{"2026-11-08 05:05", "weighed 9.30 kg after soak 3", []string{"kind", "weighed", "value", "9.30", "unit", "kg", "after", "soak 3"}},
	{"2026-11-08 05:10", "counted chit 88 of 100", []string{"kind", "chit", "value", "88", "of", "100"}},
	{"2026-11-08 21:50", "read bed 16.2 °C", []string{"kind", "temperature", "place", "bed", "value", "16.2", "unit", "°C"}},
	{"2026-11-08 22:00", "turned", []string{"kind", "turned"}},
	{"2026-11-09 08:00", "remark smells of cucumber", []string{"kind", "remark", "text", "smells of\r\ncucumber"}},
	{"2026-11-10 08:00", "counted acrospire 8 25 63 4 0 0", []string{"kind", "acrospire", "none", "8", "quarter", "25", "half", "63", "three", "4"}},
	{"2026-11-10 08:05", "felt rub gummy", []string{"kind", "rub", "value", "gummy"}},
	{"2026-11-12 21:41", "counted acrospire 4 0 6 32 49 9", []string{"kind", "acrospire", "none", "4", "quarter", "0", "half", "6", "three", "32", "whole", "49", "over", "9"}},
	{"2026-11-12 21:51", "felt rub gritty", []string{"kind", "rub", "value", "gritty"}},
	{"2026-11-12 22:01", "weighed 8.82 kg after germinate", []string{"kind", "weighed", "value", "8.82", "unit", "kg", "after", "germinate"}},
	{"2026-11-13 18:30", "weighed 7.55 kg after wither", []string{"kind", "weighed", "value", "7.55", "unit", "kg", "after", "wither"}},
	{"2026-11-13 19:15", "read air-off 30.9 °C", []string{"kind", "temperature", "place", "air-off", "value", "30.9", "unit", "°C"}},
	{"2026-11-14 00:30", "weighed 5.57 kg after dry 1", []string{"kind", "weighed", "value", "5.57", "unit", "kg", "after", "dry 1"}},
	{"2026-11-14 04:09", "weighed 5.42 kg after dry 2", []string{"kind", "weighed", "value", "5.42", "unit", "kg", "after", "dry 2"}},
	{"2026-11-14 09:09", "weighed 5.13 kg after cure", []string{"kind", "weighed", "value", "5.13", "unit", "kg", "after", "cure"}},
	{"2026-11-14 11:41", "weighed 4.93 kg clean malt", []string{"kind", "weighed", "value", "4.93", "unit", "kg", "clean", "yes"}},
	{"2026-11-14 11:50", `changed soak 3 to 6 h because "it had its weight an hour early"`, []string{"kind", "changed", "step", "soak 3", "value", "6", "unit", "h", "why", "it had its weight an hour early"}},
	{"2026-11-14 12:00", "sample 20.00 g dried to 17.57 g", []string{"kind", "sample", "value", "20.00", "dry", "17.57"}},
	{"2026-11-15 12:00", "tested moisture 4.6 %", []string{"kind", "moisture", "value", "4.6"}},
}

// Whoever uses only the page has the record that the command would have written, byte for byte.
func TestARecordMadeThroughThePageIsThatOfTheCommand(t *testing.T) {
	s := siteOf(t, "batches", "2026-11-06 14:00")
	process := linked(t, s.page("/"), "Loft pale")
	a := s.post(process+"/begin", "name", "26-09", "at", "2026-11-06T14:00")
	require.Equal(t, http.StatusSeeOther, a.status, plain(a.body))
	batch := strings.Split(a.to, "?")[0]
	begun := plain(s.page(a.to))
	assert.Contains(t, begun, "begun: 26-09")
	assert.Contains(t, begun, "have ready: 6 kg of")
	record := s.read("26-09.malt")
	for _, x := range job {
		s.at(x.at)
		s.wrote(batch, x.form...)
		record = typed(t, s.folder, record, x.typed, s.now)
		require.Equal(t, record, s.read("26-09.malt"), x.typed)
	}
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
	require.Equal(t, http.StatusSeeOther, s.post(process+"/begin", "sure", "yes", "weight", "5.5 kg").status)
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
