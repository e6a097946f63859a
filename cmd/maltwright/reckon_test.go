package main

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/source/golden"
)

// reckonings are command lines; a quantity in quotes is one word. The golden file
// holds what each writes.
var reckonings = []string{
	`moisture 20.00g 17.54g`,
	`moisture 20.00 g 17.54 g --tare 5 g`,
	`moisture 1 kg 880 g`,
	`moisture 20.00g 17.54g 21.10g 18.47g`,
	`target 6kg 12.4% 44%`,
	`target 6 kg at 12.4 % to 44 % --lost 1 %`,
	`target --lost=1% '5 lb 4 oz' 12.4% 44%`,
	`target 5 lb 4 oz 12.4 % 44 %`,
	`target 8 1/3 lb 12.4% 44%`,
	`weight 9.1kg --from 6kg 12.4%`,
	`weight --from 6 kg 12.4 % --lost 5 % 9.1 kg`,
	`weight 9.1kg --from '6 kg at 14.2 % dry basis'`,
	`basis 12.4%`,
	`basis 14.2 % dry basis`,
	`yield 42g 15% 32g 2%`,
	`yield 6 kg at 12.4 % 4.9 kg at 4.5 %`,
	`germination 95 of 100`,
	`germination 95/100`,
	`germination '95 of 100 kernels'`,
	`moisture 1 oz 25 g`,
	`moisture 25.00g 22.50g 21.10g 18.47g 20g 17.5g --tare 5g`,
	`target '13 lb 4 oz' 12.4% 44%`,
	`target '5 lb 4 oz' 45% 4.5% --lost 8%`,
	`target 1000kg '33.3 % dry basis' 14%`,
	`target 6kg 12.4% '79 % dry basis'`,
	`weight 5.5kg --from 6kg 12.4% --lost 7%`,
	`weight '20 lb 2 oz' --from 6kg 12.4%`,
	`basis '120 % dry basis'`,
	`yield 1t 12% 830kg 5%`,
	`yield 100lb 12% 37.5kg '4.2 % dry basis'`,
	`germination 0 of '50 kernels'`,
	`germination 200 of 200`,
}

// unusable are command lines that cannot be understood, or say what cannot be.
var unusable = []string{
	``,
	`weigh 6kg`,
	`moisture`,
	`moisture 20g`,
	`moisture 17.54g 20.00g`,
	`moisture 5 lb 4 oz 4 lb 10 oz`,
	`moisture 20g 17g --tare`,
	`moisture 20g 17g --tare -5g`,
	`target -6kg 12.4% 44%`,
	`target 6kg -12.4% 44%`,
	`target 6kg 12,4% 44%`,
	`target 6kg 12.4%`,
	`target 6kg 12.4% 44% 46%`,
	`target 6 12.4% 44%`,
	`target six kg 12.4% 44%`,
	`target 6stone 12.4% 44%`,
	`target kg 6 12.4% 44%`,
	`target to`,
	`target 6kg 12.4% 44% --lost 104%`,
	`target 6kg 12.4% 44% --format xml`,
	`weight 9.1kg`,
	`weight 9.1kg --from 6kg`,
	`weight 9.1kg --from 12.4% 6kg`,
	`weight 5kg --from 6kg 12.4%`,
	`basis 12.4% 13%`,
	`basis 62°F`,
	`yield 42g 15% 42g 2%`,
	`germination 95`,
	`germination 101 of 100`,
	`germination 95.5 of 100`,
	`germination ''`,
}

// split parts a line into words as a shell would, single quotes and all.
func split(line string) []string {
	args := []string{"reckon"}
	for i, piece := range strings.Split(line, "'") {
		if i%2 == 1 {
			args = append(args, piece)
			continue
		}
		args = append(args, strings.Fields(piece)...)
	}
	return args
}

func TestReckonAnswersInTheUnitsGiven(t *testing.T) {
	var b strings.Builder
	for _, line := range reckonings {
		out, errs, code := run(split(line)...)
		require.Zero(t, code, "%s: %s", line, errs)
		assert.Empty(t, errs, line)
		fmt.Fprintf(&b, "$ maltwright reckon %s\n%s\n", line, out)
	}
	golden.File(t, "testdata/reckon.golden", b.String())
}

func TestUnusableReckoningsGiveOneLineAndCodeTwo(t *testing.T) {
	var b strings.Builder
	for _, line := range unusable {
		out, errs, code := run(split(line)...)
		assert.Equal(t, ExitUsage, code, line)
		assert.Empty(t, out, line)
		assert.Equal(t, 1, strings.Count(errs, "\n"), "%s: %s", line, errs)
		fmt.Fprintf(&b, "$ maltwright reckon %s\n%s", line, errs)
	}
	golden.File(t, "testdata/reckon-unusable.golden", b.String())
}

func TestSpellingsOfOneReckoningAgree(t *testing.T) {
	want, _, _ := run(split(`target '6 kg' '12.4 %' '44 %' --lost '1 %'`)...)
	require.NotEmpty(t, want)
	for _, line := range []string{`target 6kg 12.4% 44% --lost=1%`, `target 6 kg 12.4 % 44 % --lost 1 %`, `target --lost 1 % 6 kg 12.4 % 44 %`,
		`target 6kg at 12.4% to 44% --lost 1%`, `target '6 kg at 12.4 %' '44 %' --lost 1%`} {
		out, errs, _ := run(split(line)...)
		assert.Equal(t, want, out, "%s: %s", line, errs)
	}
}

func TestReckonWritesItsKeysAsJSON(t *testing.T) {
	keys := map[string][]string{
		`moisture 20g 17.54g 21.1g 18.47g --format json`: {"moisture_wb_pct", "lowest_wb_pct", "highest_wb_pct", "deviation_pct", "samples_wb_pct"},
		`moisture 20g 17.54g --format json`:              {"moisture_wb_pct", "lowest_wb_pct", "highest_wb_pct", "deviation_pct", "samples_wb_pct"},
		`target 6kg 12.4% 44% --format json`:             {"weight_kg", "change_kg", "dry_matter_kg"},
		`weight 9.1kg --from 6kg 12.4% --format json`:    {"moisture_wb_pct", "water_kg", "dry_matter_kg"},
		`--format json basis 12.4%`:                      {"moisture_wb_pct", "moisture_db_pct"},
		`yield 42g 15% 32g 2% --format json`:             {"yield_as_is_pct", "yield_dry_malt_pct", "yield_dry_pct", "dry_matter_lost_pct"},
		`germination 95 of 100 --format json`:            {"germination_pct", "low_pct", "high_pct"},
	}
	for line, want := range keys {
		out, errs, code := run(split(line)...)
		require.Zero(t, code, "%s: %s", line, errs)
		var got map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &got), line)
		assert.Contains(t, line, got["reckoning"])
		assert.NotEmpty(t, got["working"])
		assert.NotNil(t, got["notes"], "an empty list rather than null")
		var found []string
		for key := range got {
			if !slices.Contains([]string{"format", "reckoning", "working", "notes"}, key) {
				found = append(found, key)
			}
		}
		assert.ElementsMatch(t, want, found, line)
		help, _, _ := run("reckon", got["reckoning"].(string), "--help")
		for _, key := range want {
			assert.Contains(t, help, key, "the help of %s tells its keys", got["reckoning"])
		}
	}
}

// Whatever is typed is answered, or refused with code 2; nothing panics.
func TestAnythingTypedIsAnsweredOrRefused(t *testing.T) {
	word := rapid.OneOf(
		rapid.SampledFrom([]string{"6", "kg", "6kg", "12.4%", "%", "8", "1/3", "lb", "4", "oz", "dry", "basis", "to", "at", "of", "-5", "-5kg", "95", "100",
			"--lost", "--tare", "--from", "--format", "json", "--lost=1%", "--", "-", "", " ", "'", "0kg", "100%", "95/100", "1e9", "6 kg at"}),
		rapid.String())
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]string{"moisture", "target", "weight", "basis", "yield", "germination"}).Draw(t, "kind")
		out, errs, code := run(append([]string{"reckon", kind}, rapid.SliceOfN(word, 0, 8).Draw(t, "words")...)...)
		switch code {
		case ExitClean:
			assert.NotEmpty(t, out)
		default:
			assert.Equal(t, ExitUsage, code)
			assert.Empty(t, out)
			assert.NotEmpty(t, errs)
		}
	})
}
