package rules_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
)

// partOfBase is the base with words replaced, and what lies from one line to another taken
// out.
func partOfBase(t *testing.T, pairs [][2]string, cuts ...[2]string) (said []string) {
	t.Helper()
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	text := string(base)
	for _, c := range cuts {
		from, to := strings.Index(text, c[0]), strings.Index(text, c[1])
		require.True(t, 0 <= from && from < to, c)
		text = text[:from] + text[to:]
	}
	for _, p := range pairs {
		require.Equal(t, 1, strings.Count(text, p[0]), p[0])
		text = strings.Replace(text, p[0], p[1], 1)
	}
	for _, f := range check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{}).Findings {
		said = append(said, f.Rule+" at "+f.Place.Text())
	}
	return said
}

var (
	makesGreen = [][2]string{{"make pale", "make green"}, {"final moisture 3 to 5 %", "final moisture 40 to 45 %"}}
	isGreen    = [][2]string{{"species barley\n  moisture 12 %", "species barley\n  already green malt\n  moisture 44 %"}}

	noTests  = [2]string{"  germination 98 %", "  protein"}
	grownOut = [2]string{"  wither on", "  expect"}
	noGrowth = [2]string{"  steep in", "  wither on"}
	noWither = [2]string{"  wither on", "  kiln in"}
	noSteep  = [2]string{"  steep in", "  germinate on"}
)

// A process that is a part of the whole is told nothing of what is no part of it.
func TestPartsOfTheWholeAreQuiet(t *testing.T) {
	quiet := func(said []string) (left []string) {
		for _, s := range said {
			if !strings.HasPrefix(s, "unused-definition ") && !strings.HasPrefix(s, "accept-unused ") {
				left = append(left, s)
			}
		}
		return left
	}
	assert.Empty(t, quiet(partOfBase(t, makesGreen, grownOut)), "green malt")
	assert.Empty(t, quiet(partOfBase(t, isGreen, noGrowth)), "bought, withered and dried")
	assert.Empty(t, quiet(partOfBase(t, isGreen, noGrowth, noWither, noTests)), "bought and dried, never tested")
}

func TestWhatAPartDoesWrongIsTold(t *testing.T) {
	assert.Contains(t, partOfBase(t, makesGreen, noWither), `green-malt-goes-on at kiln in "base kiln"`)
	assert.Contains(t, partOfBase(t, isGreen), `grown-already at steep in "base tub" to moisture 42 to 46 %`)
	assert.Contains(t, partOfBase(t, isGreen, noSteep), `grown-already at germinate on "base tray"`)
	assert.Contains(t, partOfBase(t, append(makesGreen, [2]string{"40 to 45 %", "30 to 35 %"}), grownOut), "expectation-broken at final moisture 30 to 35 %")
	assert.Contains(t, partOfBase(t, append(makesGreen, [2]string{"at least 3/4", "at least 1/8"}), grownOut), "acrospire-goal-odd at acrospire at least 1/8")
	assert.Contains(t, partOfBase(t, append(isGreen, [2]string{"air-on 82 °C for 5 h", "air-on 62 °C for 5 h"}), noGrowth), "cure-cool-or-short at air-on 62 °C")
	assert.Contains(t, partOfBase(t, append(isGreen, [2]string{"\n  moisture 44 %", ""}), noGrowth), "lot-moisture-unknown at \"base lot\"")
}

// The sample of a batch from green malt is of green malt.
func TestASampleOfGreenMaltIsWet(t *testing.T) {
	record := func(dry string) []string {
		batch := "batch \"1\" of \"base\" {\n  began 2026-03-06 07:00\n  sample 20.00 g dried to " + dry + "\n  read room 14 °C at 2026-03-06 08:00\n}\nprocess \"base\""
		return partOfBase(t, append(isGreen, [2]string{"process \"base\"", batch}), noGrowth)
	}
	assert.NotContains(t, strings.Join(record("11.20 g"), "\n"), "sample-doubtful", "44 %")
	assert.Contains(t, record("17.60 g"), "sample-doubtful at 17.60 g")
	assert.Contains(t, record("10.00 g"), "sample-doubtful at 10.00 g", "6 points from what the lot says")
}
