package sarif

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/finding/samples"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
)

const schemaFile = "testdata/sarif/sarif-schema-2.1.0.json"

// oasis is the schema of the standard; testdata/sarif/README.md says where it is from.
func oasis(t testing.TB) *jsonschema.Schema {
	t.Helper()
	text, err := os.ReadFile(schemaFile)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	require.NoError(t, c.AddResource("sarif.json", doc))
	schema, err := c.Compile("sarif.json")
	require.NoError(t, err)
	return schema
}

var sampleTool = Tool{Version: "0.1", Rules: []finding.Rule{
	{Name: "a-rule", Title: "something is wrong", Severity: finding.Fault, Why: "it spoils the malt (common practice)", Do: "put it right",
		Bad: "soak 70 h\nrest 1 h", Good: "soak 7 h\nrest 9 h", Limits: "it cannot taste"},
	{Name: "vessel-too-small", Title: "too small", Severity: finding.Caution, Why: "it swells", Do: "take a larger one"},
}}

// fixed is a finding with a repair in two places, one behind characters that are
// two UTF-16 units long.
func fixed() finding.Finding {
	f := samples.About("name with space.malt", "soak 7 h # 👩‍🌾 ⟦🌾🌾⟧ {é}", finding.Finding{Severity: finding.Danger, Rule: "a-rule", Message: `"{" has no partner`, Hint: "did you mean 8?"})
	head := f.Place
	head.Start, head.End = 5, 6
	empty := head
	empty.Start = 6
	f.Fixes = []finding.Edit{{Place: head, New: "8"}, {Place: empty, New: " 1/2"}, {Place: f.Place, New: "x"}}
	return f
}

func sarifOf(t testing.TB, list []finding.Finding, notJudged ...finding.NotJudged) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Write(&b, list, notJudged, sampleTool, "/home/mara/house"))
	return b.Bytes()
}

func validate(t testing.TB, schema *jsonschema.Schema, text []byte) {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	require.NoError(t, schema.Validate(doc))
}

func TestSARIFIsWhatTheStandardAsksFor(t *testing.T) {
	schema := oasis(t)
	out := sarifOf(t, append(samples.All(), fixed()), finding.NotJudged{File: "loft.malt", Rule: "vessel-too-small", Reason: "the vessel's volume is not given"}, finding.NotJudged{File: "loft.malt", Rule: "forecast", Reason: "none was asked for"})
	validate(t, schema, out)
	validate(t, schema, sarifOf(t, nil))
	golden.File(t, "testdata/findings.sarif", string(out))
}

// The schema must be able to fail, or the test above says nothing.
func TestTheSchemaRefusesWhatIsNoSARIF(t *testing.T) {
	schema := oasis(t)
	for what, change := range map[string][2]string{
		"a level of ours":           {`"level": "note"`, `"level": "danger"`},
		"a column of nought":        {`"startColumn": 1,`, `"startColumn": 0,`},
		"another version":           {`"version": "2.1.0"`, `"version": "2.0.0"`},
		"a key that is not defined": {`"results"`, `"findings"`},
		"an address half escaped":   {`name%20with%20space.malt`, `name%zzwith%20space.malt`},
	} {
		text := strings.ReplaceAll(string(sarifOf(t, append(samples.All(), fixed()))), change[0], change[1])
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		require.NoError(t, err)
		assert.Error(t, schema.Validate(doc), what)
	}
}

func TestAnyFindingIsSARIF(t *testing.T) {
	schema := oasis(t)
	rapid.Check(t, func(r *rapid.T) {
		text := string(rapid.SliceOf(rapid.Byte()).Draw(r, "text")) + rapid.String().Draw(r, "more")
		start := rapid.IntRange(0, len(text)).Draw(r, "start")
		end := rapid.IntRange(start, len(text)).Draw(r, "end")
		place := source.Place{File: source.New(text, []byte(text)), Span: source.Span{Start: start, End: end}}
		f := finding.Finding{Place: place, Message: text, Why: text, Hint: text, Rule: text, Severity: finding.Severity(rapid.IntRange(0, 3).Draw(r, "severity"))}
		f.Related, f.Fixes = []finding.Related{{Place: place, Message: text}}, []finding.Edit{{Place: place, New: text}}
		validate(t, schema, sarifOf(t, []finding.Finding{f}, finding.NotJudged{File: text, Process: text, Rule: text, Reason: text}))
	})
}

// Columns count UTF-16 units: 👩‍🌾 is five of them and 🌾 two.
func TestColumnsOfSARIFAreUTF16(t *testing.T) {
	var log sarifLog
	require.NoError(t, json.Unmarshal(sarifOf(t, []finding.Finding{fixed()}), &log))
	r := log.Runs[0].Results[0]
	assert.Equal(t, sarifRegion{1, 18, 1, 22}, *r.Locations[0].Physical.Region)
	assert.Equal(t, "name%20with%20space.malt", r.Locations[0].Physical.Artifact.URI)
	assert.Equal(t, `"{{" has no partner. did you mean 8?`, r.Message.Text)
	assert.Equal(t, "error", r.Level)
	assert.Equal(t, "danger", r.Properties["severity"])
	require.Len(t, r.Fixes, 1)
	require.Len(t, r.Fixes[0].Changes, 1)
	assert.Len(t, r.Fixes[0].Changes[0].Replacements, 3)
	assert.Equal(t, sarifRegion{1, 7, 1, 7}, *r.Fixes[0].Changes[0].Replacements[1].Deleted, "an insertion")
}

func TestFilesOfSARIFAreNamedFromTheFolder(t *testing.T) {
	s := log{folder: "/home/mara/house"}
	for name, want := range map[string]sarifArtifact{
		"/home/mara/house/rooms/loft.malt": {"rooms/loft.malt", sarifRoot},
		"./loft.malt":                      {"loft.malt", sarifRoot},
		"a:b.malt":                         {"./a:b.malt", sarifRoot},
		"/home/mara/other/löft.malt":       {"file:///home/mara/other/l%C3%B6ft.malt", ""},
		"-":                                {"-", sarifRoot},
	} {
		assert.Equal(t, want, s.artifact(name))
	}
}
