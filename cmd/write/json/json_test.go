package json_test

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/write/json"
)

type task string

func (task) Told() {}

type step struct {
	Label       string
	MoistureEnd answer.Share `json:"moisture_end_wb"`
	Temperature *answer.Temperature
	End         *answer.Spread[answer.Seconds]
}

type result struct {
	Process string
	Start   time.Time `json:",omitempty"`
	Malt    answer.Kilograms
	Steps   []step
	Classes map[string]answer.Share
	Do      answer.Told
	Then    *task
	None    []string
}

func written(t *testing.T, r any) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, json.Write(&b, r, func(v answer.Told) string { return "say " + string(v.(task)) }))
	return b.String()
}

var loft = result{Process: "Löft <1>", Malt: 5.00361, Classes: map[string]answer.Share{"b": 0.5, "a": answer.Share(math.NaN())}, Do: task("drain"),
	Steps: []step{{Label: "soak 1", MoistureEnd: 0.28714, Temperature: &answer.Temperature{Place: "water", From: 13, To: 13.04},
		End: &answer.Spread[answer.Seconds]{P10: 3600, P50: 7200, P90: 9000, Share: 1}}, {Label: "rest 1"}}}

func TestKeysCarryTheirUnits(t *testing.T) {
	assert.Equal(t, `{"format":2,"process":"Löft <1>","malt_kg":5.004,"steps":[`+
		`{"label":"soak 1","moisture_end_wb_pct":28.71,"temperature_c":{"place":"water","from":13,"to":13},"end_h":{"p10":1,"p50":2,"p90":2.5,"share_pct":100}},`+
		`{"label":"rest 1","moisture_end_wb_pct":0,"temperature_c":null,"end_h":null}],`+
		`"classes_pct":{"a":null,"b":50},"do":"say drain","then":null,"none":[]}`, compact(written(t, loft)))
	assert.Equal(t, written(t, loft), written(t, &loft))
	weigh := task("weigh")
	loft := loft
	loft.Then = &weigh
	assert.Contains(t, written(t, loft), `"then": "say weigh"`)
	at := loft
	at.Start = time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	assert.Contains(t, written(t, at), `"start": "2026-03-06T07:00:00Z"`)
}

// compact takes out the layout; no text of the sample has blanks behind a colon.
func compact(text string) string {
	var lines []string
	for _, l := range strings.Split(text, "\n") {
		lines = append(lines, strings.TrimSpace(l))
	}
	return strings.ReplaceAll(strings.Join(lines, ""), `": `, `":`)
}

func TestTheShareOfASpreadHasOneKeyWhateverSpreads(t *testing.T) {
	text := written(t, struct {
		Moisture answer.Spread[answer.Share] `json:"moisture_wb"`
		Malt     answer.Spread[answer.Kilograms]
	}{answer.Spread[answer.Share]{P10: 0.1, P50: 0.2, P90: 0.3, Share: 0.9}, answer.Spread[answer.Kilograms]{P10: 1, P50: 2, P90: 3, Share: 1}})
	assert.Equal(t, `{"format":2,"moisture_wb_pct":{"p10":10,"p50":20,"p90":30,"share_pct":90},"malt_kg":{"p10":1,"p50":2,"p90":3,"share_pct":100}}`, compact(text))
}

func TestSchemaTellsWhatIsWritten(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(json.Schema("a test", result{}, false)))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("answer.json", doc))
	schema, err := c.Compile("answer.json")
	require.NoError(t, err)
	judge := func(text string) error {
		v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		require.NoError(t, err)
		return schema.Validate(v)
	}
	good := written(t, loft)
	require.NoError(t, judge(good))
	for _, c := range []struct{ from, to string }{
		{`"malt_kg": 5.004`, `"malt_kg": "5"`}, {`"malt_kg"`, `"malt"`}, {`"format": 2`, `"format": 1`}, {`"from": 13`, `"from": [13]`}, {`"none": []`, `"none": null`},
	} {
		require.Contains(t, good, c.from)
		assert.Error(t, judge(strings.Replace(good, c.from, c.to, 1)), c.to)
	}
}
