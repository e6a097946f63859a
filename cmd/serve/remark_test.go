package serve

import (
	"net/http"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/tell"
)

// Each danger that can be chosen is written in words that the record is judged by, whatever stands beside it.
func TestEveryDangerToChooseIsKnownByItsWords(t *testing.T) {
	for _, d := range dangers {
		for _, more := range []string{"", "pleśń na ziarnie", "no, not in the corner"} {
			v := map[string][]string{nameDanger: {d.value}, nameText: {more}}
			said, err := remarkOf(v)
			require.NoError(t, err)
			found := tell.Alarms(strings.Join(said, " "))
			require.Len(t, found, 1, "%s with %q", d.value, more)
			assert.Equal(t, tell.AlarmKind(d.value), found[0].Kind)
		}
	}
}

// A danger that a remark tells of stands on the list and before what is next, and readings that agree do not outshout it.
func TestADangerGoesBeforeWhatIsNext(t *testing.T) {
	s, batch := growing(t)
	a := s.post(batch+"/reading", "kind", "remark", "danger", "mould", "text", "pleśń")
	require.Equal(t, http.StatusOK, a.status)
	text := plain(a.body)
	assert.Contains(t, text, "danger the remark says mould: mould leaves poisons")
	assert.Contains(t, plain(s.page(batch)), "known in English alone")
	s.wrote(batch, "kind", "remark", "danger", "mould", "text", "pleśń")
	assert.Contains(t, s.squeezed("26-05.malt"), `remark "mould seen; pleśń"`)
	list := s.page("/")
	text = plain(list)
	told := strings.Index(text, "danger 26-05 : the remark says mould")
	assert.NotEqual(t, -1, told, text)
	assert.Less(t, told, strings.Index(text, "next: "))
	assert.Contains(t, list, "<title>danger: 26-05 – maltwright</title>")
	text = plain(s.page(batch))
	assert.Less(t, strings.Index(text, "danger the remark says mould"), strings.Index(text, "Next danger first do what is said above"))
}

// Of a record that does not read it is not known what is due, and nobody is told that nothing is.
func TestWhatIsDueOfARecordThatDoesNotReadIsNotKnown(t *testing.T) {
	s, _ := growing(t)
	s.put("26-05.malt", strings.Replace(s.read("26-05.malt"), "after soak 1", "after soak one", 1))
	text := plain(s.page("/"))
	assert.Contains(t, text, "not known what is due of 26-05")
	assert.NotContains(t, text, "Nothing is due")
}

// Of two weights of one step and minute that contradict each other one is asked about.
func TestTwoWeightsOfOneMomentAreAskedAbout(t *testing.T) {
	s, batch := growing(t)
	line := regexp.MustCompile(`weighed .* after soak 1`).FindString(s.read("26-05.malt"))
	at := regexp.MustCompile(`at (\d\d:\d\d)`).FindStringSubmatch(line)
	require.Len(t, at, 2, line)
	a := s.post(batch+"/reading", "kind", "weighed", "value", "7.12", "unit", "kg", "after", "soak 1", "at", "2026-04-10T"+at[1])
	require.Equal(t, http.StatusOK, a.status, plain(a.body))
	assert.Contains(t, plain(a.body), "are of the same step and minute, and contradict each other")
	assert.Contains(t, a.body, `value="sure"`)
}

// Grain that came out of the steep too dry is told of where its reading is written and where the batch stands.
func TestASteepThatEndsTooDryIsToldOf(t *testing.T) {
	s, _ := growing(t)
	s.at("2026-04-11 22:00")
	s.without("26-05.malt", "  read    water 13.4")
	batch := linked(t, s.page("/"), "26-05")
	s.wrote(batch, "kind", "weighed", "value", "8.62", "unit", "kg", "after", "soak 3")
	text := plain(s.page(batch))
	assert.Contains(t, text, "At steep-out: ")
	assert.Equal(t, 2, strings.Count(text, "soak once more, or go on"), text)
}

// Times of a batch that was left alone for days are told with their day.
func TestWhatIsNextHasItsDayWhereItIsOfAnotherOne(t *testing.T) {
	s, _ := growing(t)
	s.without("26-05.malt", "  weighed 7.39")
	s.at("2026-04-16 12:00")
	batch := linked(t, s.page("/"), "26-05")
	a := s.post(batch+"/reading", "kind", "weighed", "value", "7.39", "unit", "kg", "after", "soak 1", "at", "2026-04-10T13:30")
	text := plain(a.body)
	assert.Regexp(t, `next: .* on Fri 10 Apr at 22:30`, text)
}
