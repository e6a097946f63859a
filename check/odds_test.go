package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

const narrow = "  expect steep-out moisture 43 to 44 %\n"

// unjudged gives the reasons why a rule was not judged.
func unjudged(list []finding.NotJudged, rule string) []string {
	var reasons []string
	for _, n := range list {
		if n.Rule == rule {
			reasons = append(reasons, n.Reason)
		}
	}
	return reasons
}

func TestOddsAreToldWhereTheyAreAskedFor(t *testing.T) {
	text := changed(t, "make pale malt\n", "make pale malt\n"+narrow)
	asked := File("pale.malt", []byte(text), ".", house{}, Options{Odds: true, Members: 40})
	assert.Contains(t, names(asked.Findings), "expectation-at-risk")
	assert.Empty(t, unjudged(asked.NotJudged, "expectation-at-risk"))
	again := File("pale.malt", []byte(text), ".", house{}, Options{Odds: true, Members: 40})
	assert.Equal(t, messages(asked), messages(again), "the same batches are drawn each time")
}

func messages(r Report) (list []string) {
	for _, f := range r.Findings {
		list = append(list, f.Message)
	}
	return list
}

func TestOddsThatAreNotAskedForAreNotJudged(t *testing.T) {
	with := checked(changed(t, "make pale malt\n", "make pale malt\n"+narrow))
	assert.NotContains(t, names(with.Findings), "expectation-at-risk")
	require.Len(t, unjudged(with.NotJudged, "expectation-at-risk"), 1)
	assert.Contains(t, unjudged(with.NotJudged, "expectation-at-risk")[0], "--odds")
	assert.Empty(t, unjudged(checked(changed(t)).NotJudged, "expectation-at-risk"), "no promise, no odds")
}

func TestTurnsAreJudgedAsFarAsTheyCanBeWithoutAForecast(t *testing.T) {
	look := func(every string) Report {
		return File("pale.malt", []byte(changed(t, "turn  every 8 h", "turn  every "+every)), ".", house{}, Options{NoForecast: true})
	}
	assert.NotContains(t, names(look("12 h").Findings), "turn-gap-long")
	assert.Empty(t, unjudged(look("12 h").NotJudged, "turn-gap-long"))
	assert.NotContains(t, names(look("18 h").Findings), "turn-gap-long")
	assert.Len(t, unjudged(look("18 h").NotJudged, "turn-gap-long"), 1, "a thin piece may lie so long")
	assert.Contains(t, names(look("30 h").Findings), "turn-gap-long")
}

func TestThingsThatWordsDoNotSayAreNotJudged(t *testing.T) {
	for rule, change := range map[string][2]string{
		"bed-too-cold":       {"hold  bed at 14 to 17 °C", "hold room at 5 to 8 °C"},
		"store-open":         {`"lidded drum"`, `"paper sacks"`},
		"rest-short":         {" for at least 3 weeks", ""},
		"acrospire-goal-odd": {"species     barley", "species     sorghum"},
	} {
		r := checked(changed(t, change[0], change[1]))
		assert.NotContains(t, names(r.Findings), rule)
		assert.Len(t, unjudged(r.NotJudged, rule), 1, rule)
	}
}
