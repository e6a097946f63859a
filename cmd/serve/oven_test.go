package serve

import (
	"net/http"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The moisture is that of the weights: (22.31 - 21.35) / (22.31 - 2.31) = 0.96 / 20.00 = 4.8 %.
func TestTheMoistureOfASampleIsReckonedByItsWeights(t *testing.T) {
	s, batch := growing(t)
	a := s.post(batch+"/reading", "kind", "moisture", "dish", "2.31", "wet", "22.31", "dry", "21.35")
	assert.Contains(t, plain(a.body), "tested moisture 4.8")
	assert.Contains(t, plain(a.body), "0.96 g / 20.00 g")
	s.wrote(batch, "kind", "moisture", "dish", "2,31", "wet", "22,31", "dry", "21,35")
	assert.Contains(t, s.squeezed("26-05.malt"), "tested moisture 4.8")

	s.put("26-05.malt", regexp.MustCompile(`(?m)^  sample .*\n`).ReplaceAllString(s.read("26-05.malt"), ""))
	a = s.post(batch+"/reading", "kind", "sample", "dish", "2.31", "value", "22.31", "dry", "19.88")
	assert.Contains(t, plain(a.body), "sample 20.00 g dried to 17.57 g")

	for _, x := range []struct {
		form []string
		want string
	}{
		{[]string{"kind", "moisture"}, "type the weights of the sample, or the moisture that was found"},
		{[]string{"kind", "moisture", "wet", "22.31"}, "when it no longer got lighter"},
		{[]string{"kind", "moisture", "dry", "22.31"}, "before it was dried"},
		{[]string{"kind", "moisture", "value", "4.6", "wet", "22.31"}, "and not both"},
		{[]string{"kind", "moisture", "wet", "21.35", "dry", "22.31"}, "an oven only takes water away"},
		{[]string{"kind", "moisture", "wet", "22.31", "dry", "21.35", "dish", "30"}, "leaves no grain"},
		{[]string{"kind", "moisture", "wet", "1..2", "dry", "1"}, "1..2"},
		{[]string{"kind", "moisture", "wet", "22 h", "dry", "21"}, "22 h"},
		{[]string{"kind", "sample", "value", "-3", "dry", "1"}, "-3 g"},
	} {
		a := s.post(batch+"/reading", x.form...)
		assert.Equal(t, http.StatusUnprocessableEntity, a.status, "%v", x.form)
		assert.Contains(t, plain(a.body), x.want, "%v", x.form)
	}
}
