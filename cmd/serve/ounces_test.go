package serve

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// porch serves a house of pounds and ounces with a batch in its first soak.
func porch(t *testing.T) (s *site, batch string) {
	t.Helper()
	s = siteOf(t, "home", "2026-10-24 14:31")
	s.without("26-03.malt", "  weighed 14 lb 8.7 oz")
	return s, linked(t, s.page("/"), "26-03")
}

// Pounds and ounces have a field each; a charge of whole pounds changes nothing in that.
func TestPoundsAndOuncesHaveFieldsOfTheirOwn(t *testing.T) {
	s, batch := porch(t)
	for _, grain := range []string{"", "10 lb of"} {
		if grain != "" {
			s.put("26-03.malt", replaced(t, s.read("26-03.malt"), "  began ", "  from 10 lb of \"Creek side 2026\"\n  began "))
		}
		page := s.page(batch)
		assert.Contains(t, page, `<label for="weighed-value">pounds</label>`, grain)
		assert.Contains(t, page, `<label for="weighed-ounces">ounces</label>`, grain)
	}
	for _, x := range []struct{ lb, oz, want string }{
		{"14", "9.5", "weighed 14 lb 9.5 oz in"}, {"14", "", "weighed 14 lb in"}, {"14 lb 9.5 oz", "", "weighed 14 lb 9.5 oz in"}, {"", "240", "weighed 240 oz in"},
		{"14.9", "3", "type whole pounds beside ounces"}, {"14", "16", "16 oz are 1 lb"}, {"14", "18", "16 oz are 1 lb"},
	} {
		a := s.post(batch+"/reading", "kind", "weighed", "value", x.lb, "ounces", x.oz, "unit", "lb", "in", "feed bucket", "after", "soak 1")
		assert.Contains(t, plain(a.body), x.want)
	}
}

// 14.9 may be meant for 14 lb 9 oz, and is not written before that is asked.
func TestAPartOfAPoundIsAskedAbout(t *testing.T) {
	s, batch := porch(t)
	form := url.Values{"kind": {"weighed"}, "value": {"14.9"}, "ounces": {""}, "unit": {"lb"}, "in": {"feed bucket"}, "after": {"soak 1"}}
	before := s.read("26-03.malt")
	for _, write := range []string{"", "yes"} {
		form.Set("write", write)
		a := s.send(batch+"/reading", form)
		require.Equal(t, http.StatusOK, a.status)
		assert.Contains(t, plain(a.body), "doubtful 14.9 lb is 14 lb 14.4 oz: if the scale shows pounds and ounces, put the ounces into their own field")
		assert.NotContains(t, a.body, `name="write" value="yes"`)
		assert.Equal(t, before, s.read("26-03.malt"))
	}
	x := sent{Own: "a", Batch: folderID(batch), Form: form.Encode()}
	assert.Equal(t, keptDoubtful, s.sendKept(x)["a"].State)
	assert.Equal(t, before, s.read("26-03.malt"))
	form.Set("once", "a")
	form.Set("write", "sure")
	require.Equal(t, http.StatusSeeOther, s.send(batch+"/reading", form).status)
	assert.Contains(t, s.squeezed("26-03.malt"), `weighed 14.9 lb in "feed bucket"`)
	assert.Equal(t, keptThere, s.sendKept(x)["a"].State, "it was seen again and written")
}
