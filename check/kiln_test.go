package check

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reasons gives why a rule was not judged.
func reasons(r Report, rule string) []string {
	var list []string
	for _, u := range r.NotJudged {
		if u.Rule == rule {
			list = append(list, u.Reason)
		}
	}
	return list
}

func TestAWeightBeforeTheCureIsNotJudgedWithoutAForecast(t *testing.T) {
	text := changed(t,
		"    dry  from air-on 55 to 65 °C over 4 h until moisture at most 10 %\n    gate moisture at most 10 %\n", "",
		"until moisture at most 12 % allow 6 to 20 h", "until weight at most 5.4 kg allow 6 to 20 h")
	r := File("pale.malt", []byte(text), ".", house{}, Options{NoForecast: true})
	assert.NotContains(t, names(r.Findings), "cure-without-gate")
	require.Len(t, reasons(r, "cure-without-gate"), 1)
	assert.Contains(t, reasons(r, "cure-without-gate")[0], "only the forecast shows")
	assert.NotContains(t, strings.Join(names(checked(text).Findings), " "), "cure-without-gate", "by the forecast it is low enough")
}
