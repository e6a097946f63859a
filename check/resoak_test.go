package check

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
)

// The repair of a missed target is a soak of another length, and with it the steep
// meets its target.
func TestTheRepairOfAMissedTargetMeetsIt(t *testing.T) {
	base, err := os.ReadFile("rules/testdata/base.malt")
	require.NoError(t, err)
	root, err := read.OpenRoot(".")
	require.NoError(t, err)
	defer root.Close()
	missed := func(text string) []finding.Finding {
		var list []finding.Finding
		for _, f := range File("base.malt", []byte(text), ".", root, Options{}).Findings {
			if strings.HasPrefix(f.Rule, "target-") {
				list = append(list, f)
			}
		}
		return list
	}
	for rule, c := range map[string]struct{ soak, target string }{
		"target-not-reached": {"soak 30 min in water at 13 °C", "43.5 to 46 %"},
		"target-overshot":    {"soak 10 h in water at 16 °C", "42 to 44 %"},
	} {
		text := strings.Replace(string(base), "soak 6 h in water at 13 °C", c.soak, 1)
		text = strings.Replace(text, "42 to 46 %", c.target, 1)
		found := missed(text)
		require.Len(t, found, 1, rule)
		require.Equal(t, rule, found[0].Rule)
		require.Len(t, found[0].Fixes, 1, found[0].Hint)
		e := found[0].Fixes[0]
		mended := text[:e.Place.Start] + e.New + text[e.Place.End:]
		assert.Empty(t, missed(mended), "%s: %s", found[0].Hint, e.New)
	}
}

// A soak that would reach the target, but leave the grain too long without oxygen, is
// no advice.
func TestTheRepairOfAMissedTargetBringsNoOtherTrouble(t *testing.T) {
	base, err := os.ReadFile("rules/testdata/base.malt")
	require.NoError(t, err)
	text := strings.NewReplacer("soak 6 h in water at 13 °C", "soak 2 h in water at 13 °C", "42 to 46 %", "44 to 46 %").Replace(string(base))
	found := File("base.malt", []byte(text), ".", nil, Options{}).Findings
	require.Equal(t, []string{"target-not-reached"}, names(found))
	for _, e := range found[0].Fixes {
		mended := text[:e.Place.Start] + e.New + text[e.Place.End:]
		assert.Empty(t, names(File("base.malt", []byte(mended), ".", nil, Options{}).Findings), "%s: %s", found[0].Hint, e.New)
	}
	assert.NotContains(t, found[0].Hint, "9 h in all", "it would leave the grain 7.4 h without oxygen")
}

// A rest too short for the grain to drink its film of water is named beside the target
// that is missed for it, and one of hours is not.
func TestAMissedTargetNamesTheRestsThatAreTooShort(t *testing.T) {
	root, err := read.OpenRoot("../examples")
	require.NoError(t, err)
	defer root.Close()
	text, err := os.ReadFile("../examples/oats.malt")
	require.NoError(t, err)
	for change, named := range map[[2]string]bool{{"rest 12 h", "rest 1 h"}: true, {"40 to 47 %", "46 to 47 %"}: false} {
		short := strings.ReplaceAll(string(text), change[0], change[1])
		require.NotEqual(t, string(text), short)
		var missed []finding.Finding
		for _, f := range File("oats.malt", []byte(short), ".", root, Options{}).Findings {
			if f.Rule == "target-not-reached" {
				missed = append(missed, f)
			}
		}
		require.Len(t, missed, 1, change[1])
		var also []string
		for _, r := range missed[0].Related {
			also = append(also, r.Message+": "+r.Place.Text())
		}
		assert.Equal(t, named, strings.Contains(strings.Join(also, "\n"), "a rest too short to help: 1 h"), also)
	}
}
