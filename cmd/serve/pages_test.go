package serve

import (
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// growing is the folder of the loft on the fourth day of a batch, and the way to that.
func growing(t *testing.T) (s *site, batch string) {
	t.Helper()
	s = siteOf(t, "batches", "2026-04-14 12:00")
	s.without("26-05.malt", "  read    bed 18.4 °C at 14:20")
	return s, linked(t, s.page("/"), "26-05")
}

func TestTheListSaysWhatIsNext(t *testing.T) {
	s, _ := growing(t)
	page := s.page("/")
	text := plain(page)
	assert.Contains(t, text, "next: 14:30 today , 26-05: turn")
	assert.Contains(t, page, "<title>14:30 today, 26-05 – maltwright</title>")
	for _, want := range []string{"Loft pale", "germinate", "26-03", "26-04", "Over"} {
		assert.Contains(t, text, want)
	}
	s.at("2026-04-14 18:00")
	text = plain(s.page("/"))
	assert.Contains(t, text, "late 26-05: turn, due 14:30 today, 3 h 30 min ago", "it is told in words")
	assert.Contains(t, text, "next: 22:30 today")
}

func TestABatchSaysHowItStands(t *testing.T) {
	s, batch := growing(t)
	text := plain(s.page(batch))
	for _, want := range []string{"26-05", "pale malt from 6 kg of Far field 2026", "14:30 today : turn", "in 2 h 30 min", "Now: germinate", "moisture 43.", "today, Tuesday 14 April", "counted acrospire 8 25 63 4 0 0 at 08:00", "mean acrospire 0.29 (forecast"} {
		assert.Contains(t, text, want)
	}
	assert.Contains(t, s.page(batch), "<title>26-05: 14:30 today, turn – maltwright</title>")
}

func TestAProcessIsForecast(t *testing.T) {
	s, _ := growing(t)
	process := linked(t, s.page("/"), "Loft pale")
	text := plain(s.page(process))
	for _, want := range []string{"soak 1 7 h 7 h water 13 °C 28.7 % 7.34 kg", "total time 8 d 8 h", "Take care", "smoke alarm", "soak 1 to 6 h", "Start a batch", "Far field 2026"} {
		assert.Contains(t, text, want)
	}
	a := s.post(process+"/what-if", "lines", "soak 1 to 6 h\r\n\r\nsite air to 41 °F")
	require.Equal(t, http.StatusOK, a.status)
	text = plain(a.body)
	assert.Contains(t, text, "steep-out time 1 d 15 h 1 d 14 h -1 h")
	assert.Contains(t, text, "rest-too-cold-or-warm")
	a = s.post(process+"/what-if", "lines", "soke 1 to 6 h")
	assert.Equal(t, http.StatusUnprocessableEntity, a.status)
	assert.Contains(t, a.body, ">soke 1 to 6 h</textarea>", "what was typed is kept")
	assert.Equal(t, http.StatusUnprocessableEntity, s.post(process+"/what-if", "lines", " ").status)
}

func TestAReadingThatIsSentTwiceIsWrittenOnce(t *testing.T) {
	s, batch := growing(t)
	a := s.post(batch+"/reading", "kind", "temperature", "place", "bed", "value", "16.5", "unit", "°C")
	require.Equal(t, http.StatusOK, a.status)
	assert.Contains(t, plain(a.body), "within the setting: bed 14 to 17 °C; next: turn at 14:30")
	assert.NotContains(t, s.squeezed("26-05.malt"), "16.5 °C at 2026-04-14", "nothing is written before it is asked for")
	v := fields(t, a.body, batch+"/reading")
	v.Set("write", "yes")
	for range 2 {
		a = s.send(batch+"/reading", v)
		require.Equal(t, http.StatusSeeOther, a.status, plain(a.body))
	}
	assert.Equal(t, 1, strings.Count(s.squeezed("26-05.malt"), "read bed 16.5 °C at 2026-04-14 12:00"))
	text := plain(s.page(a.to))
	assert.Contains(t, text, "written: read bed 16.5 °C at 2026-04-14 12:00 within the setting: bed 14 to 17 °C")
	assert.NotContains(t, plain(s.page(strings.Replace(a.to, "seal=", "seal=0", 1))), "written:", "nobody else says what was written")
}

func TestADoubtfulReadingIsAskedAbout(t *testing.T) {
	s, batch := growing(t)
	form := []string{"kind", "weighed", "value", "10.10", "unit", "kg"}
	a := s.post(batch+"/reading", form...)
	require.Equal(t, http.StatusOK, a.status)
	text := plain(a.body)
	assert.Contains(t, text, "doubtful 10.10 kg would be")
	assert.Contains(t, text, `weighed 10.10 kg in "blue tub" at`)
	v := fields(t, a.body, batch+"/reading")
	plainly := url.Values{}
	for name := range v {
		plainly[name] = v[name]
	}
	plainly.Set("write", "yes")
	assert.Equal(t, http.StatusOK, s.send(batch+"/reading", plainly).status)
	assert.NotContains(t, s.read("26-05.malt"), "10.10", "it is not written by who is not sure")
	v.Set("write", "offer")
	require.Equal(t, http.StatusSeeOther, s.send(batch+"/reading", v).status)
	assert.Contains(t, s.squeezed("26-05.malt"), `weighed 10.10 kg in "blue tub" at 2026-04-14 12:00`)
}

func TestWhoIsSureWritesADoubtfulReadingAsItIs(t *testing.T) {
	s, batch := growing(t)
	a := s.post(batch+"/reading", "kind", "weighed", "value", "10.10", "unit", "kg")
	v := fields(t, a.body, batch+"/reading")
	v.Set("write", "sure")
	require.Equal(t, http.StatusSeeOther, s.send(batch+"/reading", v).status)
	assert.Contains(t, s.squeezed("26-05.malt"), "weighed 10.10 kg at 2026-04-14 12:00")
}

func TestWhatCannotBeIsRefusedAndStaysInTheForm(t *testing.T) {
	s, batch := growing(t)
	before := s.read("26-05.malt")
	for _, c := range []struct {
		form []string
		says string
	}{
		{[]string{"kind", "weighed", "value", "910", "unit", "kg"}, "910 kg"},
		{[]string{"kind", "weighed", "value", "nine", "unit", "kg"}, "nine"},
		{[]string{"kind", "temperature", "place", "bed", "value", "", "unit", "°C"}, "type the temperature"},
		{[]string{"kind", "chit", "value", "120", "of", "100"}, "120"},
		{[]string{"kind", "remark", "text", " "}, "type what was"},
		{[]string{"kind", "changed", "step", "soak 1", "value", "5"}, "type the reason"},
		{[]string{"kind", "weighed", "value", "9.1", "unit", "kg", "at", "2027-01-01T00:00"}, "ahead of this computer"},
		{[]string{"kind", "weighed", "value", "9.1 kg\nturned", "unit", "kg"}, ""},
		{[]string{"kind", "temperature", "place", "bed } batch \"x\" of \"Loft pale\" {", "value", "15", "unit", "°C"}, ""},
		{[]string{"kind", "gone"}, "choose what was read"},
	} {
		a := s.post(batch+"/reading", append(c.form, "write", "sure")...)
		assert.Equal(t, http.StatusUnprocessableEntity, a.status, "%v: %s", c.form, plain(a.body))
		assert.Contains(t, plain(a.body), c.says)
		assert.Contains(t, a.body, `role="alert"`)
	}
	assert.Equal(t, before, s.read("26-05.malt"))
	a := s.post(batch+"/reading", "kind", "weighed", "value", "910", "unit", "kg", "after", "germinate")
	assert.Contains(t, a.body, `value="910"`)
	assert.Contains(t, a.body, `<option value="germinate" selected>`)
}

func TestTheLastLineIsTakenBackIfItIsStillTheLast(t *testing.T) {
	s, batch := growing(t)
	before := s.read("26-05.malt")
	a := s.wrote(batch, "kind", "turned")
	page := s.page(a.to)
	assert.Contains(t, page, "Take it back")
	require.Equal(t, http.StatusUnprocessableEntity, s.post(batch+"/undo", "line", "turned at 11:00").status)
	a = s.post(batch+"/undo", "line", "turned at 2026-04-14 12:00")
	require.Equal(t, http.StatusSeeOther, a.status, plain(a.body))
	assert.Equal(t, before, s.read("26-05.malt"))
	assert.Contains(t, plain(s.page(a.to)), "taken back: turned at 2026-04-14 12:00")
}

func TestAReaderSeesNoFormAndWritesNothing(t *testing.T) {
	s, batch := growing(t)
	process := linked(t, s.page("/"), "Loft pale")
	before := s.read("26-05.malt")
	s.reader = true
	for _, path := range []string{"/", batch, process} {
		page := s.page(path)
		assert.NotContains(t, page, `/reading"`, path)
		assert.NotContains(t, page, `/undo"`, path)
		assert.NotContains(t, page, `/begin"`, path)
		assert.NotContains(t, page, `/what-if`, path)
		assert.Contains(t, page, "This link shows, and writes nothing")
	}
	for _, path := range []string{batch + "/reading", batch + "/undo", process + "/begin", "/kept"} {
		assert.Equal(t, http.StatusForbidden, s.post(path, "kind", "turned", "write", "yes").status, path)
	}
	assert.Equal(t, before, s.read("26-05.malt"))
}

func TestWhatIsGoneIsSaidToBe(t *testing.T) {
	s, batch := growing(t)
	for _, path := range []string{"/batch/0", "/process/0", "/batch/0/chart.svg?of=moisture", "/nowhere", batch + "/chart.svg?of=nothing", "/batch/..%2f..%2fetc%2fpasswd"} {
		a := s.get(path)
		assert.Equal(t, http.StatusNotFound, a.status, path)
		assert.Contains(t, a.body, "<h1>", path)
	}
	assert.Equal(t, http.StatusNotFound, s.post("/batch/0/reading", "kind", "turned").status)
	assert.Equal(t, http.StatusNotFound, s.get(batch+"/reading").status)
}

func TestTextOfAFileIsText(t *testing.T) {
	s, _ := growing(t)
	const bad = `<script>alert(1)</script>`
	s.put("pale.malt", strings.ReplaceAll(s.read("pale.malt"), "Loft pale", bad))
	s.put("26-05.malt", strings.ReplaceAll(s.read("26-05.malt"), "Loft pale", bad))
	s.put("broken.malt", "soke "+bad+"\n")
	page := s.page("/")
	batch := linked(t, page, "26-05")
	s.wrote(batch, "kind", "remark", "text", `"`+bad+`" & <i>`)
	a := s.post(batch+"/reading", "kind", "remark", "text", bad)
	process := linked(t, page, "alert")
	for _, p := range []string{page, s.page(batch), s.page(process), a.body, s.post(process+"/what-if", "lines", bad).body, s.get("/batch/" + url.PathEscape(bad)).body} {
		assert.NotContains(t, p, "<script>alert")
		assert.NotContains(t, p, "& <i>")
	}
	assert.Contains(t, page, "&lt;script&gt;")
}

func TestAPageHoldsNoStyleAndNoScriptOfItsOwn(t *testing.T) {
	s, batch := growing(t)
	process := linked(t, s.page("/"), "Loft pale")
	answer := s.post(batch+"/reading", "kind", "weighed", "value", "10.10", "unit", "kg").body
	for _, page := range []string{s.page("/"), s.page(batch), s.page(process), answer, s.get("/nowhere").body} {
		assert.NotRegexp(t, `(?i)<style|\sstyle=|\son[a-z]+=|<script>|javascript:|http://|https://|http-equiv`, page)
		assert.Contains(t, page, `<html lang="en">`)
		assert.Equal(t, 1, strings.Count(page, "<h1>"))
		wellFormed(t, page)
	}
}

// wellFormed reads the page as XML, names every control and asks that headings go down a step at a time and
// that no two things have one id.
func wellFormed(t *testing.T, page string) {
	t.Helper()
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		assert.False(t, ids[m[1]], "two have the id %s", m[1])
		ids[m[1]] = true
	}
	for _, m := range regexp.MustCompile(` (?:for|aria-labelledby|aria-describedby)="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		assert.True(t, ids[m[1]], "nothing has the id %s", m[1])
	}
	for _, m := range regexp.MustCompile(`<(?:input|select|textarea)[^>]*>`).FindAllString(page, -1) {
		if !strings.Contains(m, `type="hidden"`) {
			id := regexp.MustCompile(` id="([^"]*)"`).FindStringSubmatch(m)
			require.NotNil(t, id, m)
			assert.Contains(t, page, `<label`, m)
			assert.Regexp(t, `<label[^>]* for="`+regexp.QuoteMeta(id[1])+`"`, page)
		}
	}
	level := 0
	for _, m := range regexp.MustCompile(`<h([1-6])`).FindAllStringSubmatch(page, -1) {
		now := int(m[1][0] - '0')
		assert.LessOrEqual(t, now, level+1, "a heading is left out")
		level = now
	}
}

func TestStyleAndScriptAreSentOnce(t *testing.T) {
	s, _ := growing(t)
	for _, path := range []string{"/style.css", "/page.js", "/worker.js"} {
		a := s.get(path)
		require.Equal(t, http.StatusOK, a.status)
		r := httptest.NewRequest(http.MethodGet, path, nil)
		r.Header.Set("If-None-Match", a.head.Get("ETag"))
		assert.Equal(t, http.StatusNotModified, s.do(r).status)
		assert.NotContains(t, a.body, "://", "no asset from outside, in %s", path)
	}
	for _, path := range []string{"/style.css", "/page.js"} {
		assert.Contains(t, s.page("/"), path+"?v=")
	}
	assert.Less(t, len(script.text), 18000)
}

func TestChartsAreDrawn(t *testing.T) {
	s, batch := growing(t)
	process := linked(t, s.page("/"), "Loft pale")
	for _, path := range []string{batch, process} {
		page := s.page(path)
		found := regexp.MustCompile(`(?:src|srcset)="(/[^"]*chart.svg[^"]*)"`).FindAllStringSubmatch(page, -1)
		require.GreaterOrEqual(t, len(found), 8)
		for _, m := range found {
			a := s.get(unescaped(m[1]))
			require.Equal(t, http.StatusOK, a.status)
			assert.Equal(t, "image/svg+xml", a.head.Get("Content-Type"))
			d := xml.NewDecoder(strings.NewReader(a.body))
			for {
				if _, err := d.Token(); err == io.EOF {
					break
				} else if !assert.NoError(t, err) {
					break
				}
			}
		}
		assert.Contains(t, page, `alt="Moisture of`)
		assert.Contains(t, plain(page), "The figures of the first chart")
	}
}

func TestAnEmptyFolderSaysHowToBegin(t *testing.T) {
	s := siteOf(t, "", "2026-04-14 12:00")
	text := plain(s.page("/"))
	assert.Contains(t, text, "No batch is under way")
	assert.Contains(t, text, "maltwright new")
}

func TestAFileThatDoesNotReadIsTold(t *testing.T) {
	s, batch := growing(t)
	s.put("bad.malt", "process \"X\" {\n")
	s.put("26-05.malt", strings.Replace(s.read("26-05.malt"), "turned  at 06:30", "turnd at 06:30", 1))
	text := plain(s.page("/"))
	assert.Contains(t, text, "Files that do not read")
	assert.Contains(t, text, "bad.malt")
	assert.Contains(t, text, "turnd")
	a := s.get(batch)
	assert.Equal(t, http.StatusOK, a.status, plain(a.body))
	assert.Contains(t, plain(a.body), "turnd")
	s.put("26-05.malt", s.read("26-05.malt")+"}}")
	assert.Contains(t, plain(s.page(batch)), "26-05")
	assert.Equal(t, http.StatusUnprocessableEntity, s.post(batch+"/reading", "kind", "turned").status)
}

func TestFiftyBatchesAreListed(t *testing.T) {
	s, _ := growing(t)
	text := s.read("26-05.malt")
	for i := range 49 {
		s.put(fmt.Sprintf("27-%02d.malt", i), strings.Replace(text, `"26-05"`, fmt.Sprintf(`"27-%02d"`, i), 1))
	}
	page := s.page("/")
	assert.Equal(t, 50, strings.Count(page, `<th role="rowheader" scope="row">14:30 today`))
	assert.NotContains(t, regexp.MustCompile(`(?s)<nav.*?</nav>`).FindString(page), "27-01", "the head stays short")
}

func TestThePulseTellsOfEditsAndOfWhatIsDue(t *testing.T) {
	s, batch := growing(t)
	beats := func() (b beat) {
		a := s.get("/pulse")
		require.Equal(t, http.StatusOK, a.status)
		require.NoError(t, json.Unmarshal([]byte(a.body), &b))
		return b
	}
	first := beats()
	require.NotEmpty(t, first.Due)
	assert.Equal(t, "turn", first.Due[0].Says)
	assert.Contains(t, s.page(batch), `data-version="`+first.Version+`"`)
	assert.Equal(t, first.Version, beats().Version)
	s.put("26-05.malt", strings.Replace(s.read("26-05.malt"), "}", "  turned at 2026-04-14 11:55\n}", 1))
	assert.NotEqual(t, first.Version, beats().Version, "an edit by hand")
}

func TestReadingsThatWereKeptAreWrittenOnce(t *testing.T) {
	s, batch := growing(t)
	id := folderID(batch)
	form := func(kv ...string) string {
		v := url.Values{}
		for i := 0; i < len(kv); i += 2 {
			v.Set(kv[i], kv[i+1])
		}
		return v.Encode()
	}
	list := []sent{
		{"a", id, form("kind", "temperature", "place", "bed", "value", "16.5", "unit", "°C", "at", "2026-04-14T10:15")},
		{"b", id, form("kind", "turned", "at", "2026-04-14T10:20")},
		{"c", id, form("kind", "weighed", "value", "10.10", "unit", "kg", "at", "2026-04-14T10:30")},
		{"d", id, form("kind", "weighed", "value", "910", "unit", "kg", "at", "2026-04-14T10:30")},
		{"e", "0", form("kind", "turned")},
		{"f", id, "%"},
	}
	send := func() map[string]outcome { return s.sendKept(list...) }
	got := send()
	want := map[string]string{"a": keptWritten, "b": keptWritten, "c": keptDoubtful, "d": keptRefused, "e": keptRefused, "f": keptRefused}
	for own, state := range want {
		assert.Equal(t, state, got[own].State, "%s: %s", own, got[own].Says)
	}
	text := s.squeezed("26-05.malt")
	assert.Contains(t, text, "read bed 16.5 °C at 2026-04-14 10:15")
	assert.Contains(t, text, "turned at 2026-04-14 10:20")
	got = send()
	assert.Equal(t, keptThere, got["a"].State)
	assert.Equal(t, keptThere, got["b"].State)
	assert.Equal(t, text, s.squeezed("26-05.malt"))
	assert.Equal(t, http.StatusBadRequest, s.post("/kept", "x", "y").status)
}

func TestTheSheetAndTheCalendarAreServed(t *testing.T) {
	s, batch := growing(t)
	process := linked(t, s.page("/"), "Loft pale")
	assert.Contains(t, s.page(process), `<form method="get" action="`+process+`/sheet.pdf"`)
	clock := s.get(process + "/sheet.pdf?at=2026-05-01T07:00")
	assert.NotEqual(t, s.get(process+"/sheet.pdf?at=").body, clock.body, "with the start that was picked")
	assert.Equal(t, http.StatusUnprocessableEntity, s.get(process+"/sheet.pdf?at=soon").status)
	assert.Contains(t, plain(s.page(batch)), "the sheet has the same times")
	for _, path := range []string{linked(t, s.page(batch), "The sheet by the bucket"), process + "/sheet.pdf", process + "/sheet.pdf?at=2026-05-01T07:00"} {
		a := s.get(path)
		require.Equal(t, http.StatusOK, a.status, path)
		assert.Equal(t, "application/pdf", a.head.Get("Content-Type"))
		assert.True(t, strings.HasPrefix(a.body, "%PDF-"))
	}
	page := s.page(linked(t, s.page(batch), "The report of this batch"))
	assert.Contains(t, plain(page), "What was made of what")
	assert.Contains(t, plain(page), "counted acrospire 8 25 63 4 0 0")
	a := s.get("/due.ics")
	require.Equal(t, http.StatusOK, a.status)
	assert.Contains(t, a.head.Get("Content-Type"), "text/calendar")
	assert.Contains(t, a.body, "BEGIN:VEVENT")
	assert.Contains(t, a.body, "DTSTART:"+time.Date(2026, 4, 14, 14, 30, 0, 0, time.Local).UTC().Format("20060102T150405Z"))
}

func TestABatchThatIsOverIsShownWithWhatItsLinesComeTo(t *testing.T) {
	s, _ := growing(t)
	batch := linked(t, s.page("/"), "26-03")
	text := plain(s.page(batch))
	assert.Contains(t, text, "It is over")
	assert.Contains(t, text, "weighed 4.90 kg clean malt at 2026-03-15 00:17 moisture 3.3 %")
	assert.NotContains(t, text, "The next visits")
	s.wrote(batch, "kind", "moisture", "value", "4.4", "at", "2026-04-01 10:00")
	assert.Contains(t, s.squeezed("26-03.malt"), "tested moisture 4.4 % at 2026-04-01 10:00")
}
