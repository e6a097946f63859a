package json_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/inspection"
	"maltwright/cmd/write/json"
	"maltwright/lang/finding"
	"maltwright/lang/finding/samples"
	"maltwright/lang/source/golden"
)

func TestFindings(t *testing.T) {
	var b bytes.Buffer
	unjudged := []finding.NotJudged{{File: "loft.malt", Rule: "vessel-too-small", Reason: "the vessel's volume is not given"}}
	require.NoError(t, json.Write(&b, inspection.Of(samples.All(), unjudged, ""), nil))
	golden.File(t, "testdata/findings.json", b.String())

	b.Reset()
	require.NoError(t, json.Write(&b, inspection.Of(nil, nil, ""), nil))
	assert.JSONEq(t, `{"format":2,"findings":[],"not_judged":[]}`, b.String())
}
