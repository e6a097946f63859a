package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// A change is judged by the limits that the same value has in a process, and says what it does.
func TestAChangeIsJudgedAsTheProcessIs(t *testing.T) {
	for _, c := range []struct {
		to, says string
		severity finding.Severity
	}{
		{"hold to bed 78 °F", "the warmest", finding.Caution},
		{"hold to bed 90 °F", "the grain dies", finding.Fault},
		{"soak 2 to 72 h", "drowns", finding.Fault},
		{"soak 2 to water 55 °C", "kills", finding.Fault},
		{"cure to air-on 300 °F", "enzymes", finding.Caution},
		{"germinate to 1 days", "raw", finding.Caution},
		{"hold to bed 17 °C", "", finding.Note},
		{"soak 2 to 7 h", "", finding.Note},
		{"germinate to 4 days", "", finding.Note},
	} {
		var told []finding.Finding
		for _, f := range withSlip(t, bookSlip{file: "26-03", replaced: []string{"  sample 20.00 g", "  changed " + c.to + " because \"so\"\n  sample 20.00 g"}}) {
			if f.Rule == "change-doubtful" {
				told = append(told, f)
			}
		}
		if c.says == "" {
			assert.Empty(t, told, c.to)
			continue
		}
		require.Len(t, told, 1, c.to)
		assert.Contains(t, told[0].Message, c.says, c.to)
		assert.Equal(t, c.severity, told[0].Severity, c.to)
	}
}
