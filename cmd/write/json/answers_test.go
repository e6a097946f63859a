package json_test

import (
	"bytes"
	stdjson "encoding/json"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/inspection"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/sums"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/answer/trace"
	"maltwright/cmd/words"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/malt"
	"maltwright/lang/finding/samples"
	"maltwright/lang/model"
	"maltwright/lang/source/golden"
	"maltwright/sim/infer/follow"
	"maltwright/sim/infer/learn"
)

// answers are the questions, each with the command that asks it, the form of its answer,
// and answers that were given. Their schemas lie in docs/schema.
var answers = []struct {
	name, command string
	form          any
	given         func(testing.TB) []any
}{
	{"inspection", "check", inspection.Result{}, inspections},
	{"outlook", "forecast", outlook.Result{}, outlooks},
	{"timetable", "visits", timetable.Result{}, timetables},
	{"progress", "follow", progress.Result{}, progresses},
	{"lessons", "learn", lessons.Result{}, learnt},
	{"ledger", "seasons", ledger.Result{}, ledgers},
	{"trace", "seasons --trace", trace.Result{}, traces},
	{"effect", "contrast", effect.Result{}, effects},
	{"sums_moisture", "reckon moisture", sums.Moisture{}, moistures},
	{"sums_target", "reckon target", sums.Target{}, targets},
	{"sums_weight", "reckon weight", sums.Weighing{}, weighings},
	{"sums_basis", "reckon basis", sums.Basis{}, bases},
	{"sums_yield", "reckon yield", sums.Yield{}, yields},
	{"sums_germination", "reckon germination", sums.Germination{}, germinations},
}

func inspections(testing.TB) []any {
	return []any{inspection.Of(samples.All(), nil, ""), inspection.Of(nil, nil, "")}
}

var morning = time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)

func outlooks(t testing.TB) (list []any) {
	pale := sample.Forecast(t, "pale.malt")
	r, err := outlook.Ask(t.Context(), pale, outlook.Options{Start: morning, Members: 10, Worst: true, Every: 6 * 3600})
	require.NoError(t, err)
	list = append(list, r, outlook.Of(pale, time.Time{}))
	for _, name := range []string{"crystal.malt", "oven.malt", "deep-bed.malt", "box.malt"} {
		list = append(list, outlook.Of(sample.Forecast(t, name), morning))
	}
	broken := sample.Forecast(t, "broken/forecast-unable.malt")
	require.True(t, broken.BrokenOff())
	return append(list, outlook.Of(broken, morning))
}

func timetables(t testing.TB) (list []any) {
	for _, name := range []string{"pale.malt", "floor-kiln.malt", "oats.malt"} {
		r, err := timetable.Of(sample.Forecast(t, name), morning, name == "oats.malt")
		require.NoError(t, err)
		list = append(list, r)
	}
	return list
}

// record are the first lines of a batch of the loft.
const record = `use "pale.malt"
batch "x" of "Loft pale" {
  began   2026-03-06 07:00
  weighed 7.41 kg at 14:00 after soak 1
  weighed 8.66 kg at 2026-03-07 06:00 after soak 2
  counted chit 86 of 100 at 2026-03-08 07:00
  felt    rub gummy at 2026-03-10 08:05
}
`

func progresses(t testing.TB) (list []any) {
	for hours, text := range map[int]string{0: record, 8: record, 100: strings.Replace(record, "8.66 kg", "8.66 lb", 1), 240: record} {
		b := sample.Batch(t, "batches", text)
		at := b.Began.Add(time.Duration(hours) * time.Hour)
		f, err := follow.Of(t.Context(), b, at, follow.Options{Members: 20})
		require.NoError(t, err)
		list = append(list, progress.Of(f, at, progress.Asked))
	}
	return list
}

func learnt(t testing.TB) (list []any) {
	used := []*model.Batch{sample.Batch(t, "batches", record), sample.Batch(t, "batches", strings.Replace(record, "7.41", "7.38", 1))}
	bare := sample.Batch(t, "batches", "use \"pale.malt\"\nbatch \"y\" of \"Loft pale\" { began 2026-03-06 07:00 }\n")
	for n := range used {
		l, err := learn.Of(t.Context(), append(used[:n+1:n+1], bare), learn.Options{})
		require.NoError(t, err)
		r := lessons.Of(l, "", lessons.Files{})
		block := string(malt.House(*r.House, words.House{}))
		r.Block = &block
		list = append(list, r)
		r.Block, r.Thermometer = nil, nil
		list = append(list, r)
	}
	return list
}

func TestSchemasAreThoseOfTheAnswers(t *testing.T) {
	for _, a := range answers {
		golden.File(t, "../../../docs/schema/"+a.name+".json", string(json.Schema("what maltwright "+a.command+" --format json writes", a.form, true)))
	}
}

func TestWhatIsAnsweredKeepsToItsSchema(t *testing.T) {
	for _, a := range answers {
		strict := compiled(t, a.form)
		for i, r := range a.given(t) {
			var b bytes.Buffer
			require.NoError(t, json.Write(&b, r, words.House{}.Say))
			assert.NoError(t, judged(t, strict, b.Bytes()), "%s %d", a.name, i)
		}
	}
}

// The examples of docs/json.md name their question behind the word json.
func TestExamplesOfTheDocsKeepToTheirSchema(t *testing.T) {
	page, err := os.ReadFile("../../../docs/json.md")
	require.NoError(t, err)
	examples := map[string][][]byte{}
	for _, m := range regexp.MustCompile("(?s)```json (\\w+)\n(.*?)```").FindAllSubmatch(page, -1) {
		examples[string(m[1])] = append(examples[string(m[1])], m[2])
	}
	for _, a := range answers {
		strict := compiled(t, a.form)
		require.NotEmpty(t, examples[a.name], "docs/json.md has no example of %s", a.name)
		for _, text := range examples[a.name] {
			assert.NoError(t, judged(t, strict, text), a.name)
		}
	}
}

// The page tells of every key of every answer, and shows none that no answer has.
func TestThePageTellsOfTheKeysOfTheAnswers(t *testing.T) {
	page, err := os.ReadFile("../../../docs/json.md")
	require.NoError(t, err)
	told := map[string]bool{}
	for _, code := range regexp.MustCompile("(?s)```.*?```|`[^`\n]+`").FindAllString(string(page), -1) {
		for _, word := range regexp.MustCompile(`[a-z][a-z0-9_]*`).FindAllString(code, -1) {
			told[word] = true
		}
	}
	keys := map[string]bool{}
	for _, a := range answers {
		var schema map[string]any
		require.NoError(t, stdjson.Unmarshal(json.Schema(a.name, a.form, false), &schema))
		keysOf(schema, func(key string) {
			keys[key] = true
			assert.True(t, told[key], "docs/json.md does not tell of %s of %s", key, a.name)
		})
	}
	for _, m := range regexp.MustCompile(`"(\w+)": `).FindAllStringSubmatch(string(page), -1) {
		assert.True(t, keys[m[1]], "docs/json.md shows %s, which no answer has", m[1])
	}
}

// keysOf calls for each key of a schema.
func keysOf(schema map[string]any, each func(string)) {
	for _, below := range []string{"items", "additionalProperties"} {
		if one, ok := schema[below].(map[string]any); ok {
			keysOf(one, each)
		}
	}
	properties, _ := schema["properties"].(map[string]any)
	for key, one := range properties {
		each(key)
		keysOf(one.(map[string]any), each)
	}
}

// A key says its unit, so that none is taken for another: a share of 1 is never written.
func TestKeysOfFiguresEndInTheirUnits(t *testing.T) {
	bare := map[string]bool{"acrospire_mean": true, "acrospire_middle": true, "modification": true, "posterior": true, "effective_sample_size": true, "standardized_residual": true,
		"estimate": true, "standard_error": true, "prior": true, "prior_sd": true, "correlation": true, "scatter": true, "pareto_tail": true}
	for _, a := range answers {
		var schema map[string]any
		require.NoError(t, stdjson.Unmarshal(json.Schema(a.name, a.form, false), &schema))
		numbersOf(schema, "", bare, func(key string) {
			assert.True(t, bare[key] || regexp.MustCompile(`_(h|pct|c|k|kg|l|m|kwh|w|m3_h|ebc|wk|mg_l|mg_kg|ug_kg)$`).MatchString(key), "%s of %s", key, a.name)
		})
	}
}

// numbersOf calls for each key under which a number stands, or an object of numbers.
func numbersOf(schema map[string]any, key string, bare map[string]bool, each func(string)) {
	if types, ok := schema["type"].([]any); ok && types[0] == "number" {
		each(key)
	}
	if items, ok := schema["items"].(map[string]any); ok {
		numbersOf(items, key, bare, each)
	}
	properties, _ := schema["properties"].(map[string]any)
	for name, one := range properties {
		below := one.(map[string]any)
		if (len(unitOf(key)) > 0 || bare[key] || name == "value") && len(unitOf(name)) == 0 { // the object has said it
			name = key
		}
		numbersOf(below, name, bare, each)
	}
}

func unitOf(key string) string {
	return regexp.MustCompile(`_(h|pct|c|k|kg|l|m|kwh|w|m3_h|ebc|wk|mg_l|mg_kg|ug_kg)$`).FindString(key)
}

func compiled(t testing.TB, form any) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(json.Schema("a test", form, false)))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("answer.json", doc))
	schema, err := c.Compile("answer.json")
	require.NoError(t, err)
	return schema
}

func judged(t testing.TB, schema *jsonschema.Schema, text []byte) error {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err, "%s", text)
	return schema.Validate(v)
}

func TestFigureThatIsNotKnownIsNull(t *testing.T) {
	var b bytes.Buffer
	broken := outlook.Of(sample.Forecast(t, "broken/forecast-unable.malt"), time.Time{})
	require.True(t, math.IsNaN(float64(broken.Totals.Malt)))
	require.NoError(t, json.Write(&b, broken, words.House{}.Say))
	assert.Contains(t, b.String(), `"malt_kg": null`)
	assert.Contains(t, b.String(), `"complete": false`)
}
