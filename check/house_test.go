package check

import (
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// house is a handful of files in memory, by their names.
type house map[string]string

func (h house) Read(path string) ([]byte, error) {
	if text, ok := h[path]; ok {
		return []byte(text), nil
	}
	return nil, fs.ErrNotExist
}

// changed gives the whole process of testdata/house with pieces of it replaced,
// each of which stands in it once.
func changed(t testing.TB, oldNew ...string) string {
	t.Helper()
	text, err := os.ReadFile("testdata/house/pale.malt")
	require.NoError(t, err)
	out := string(text)
	for i := 0; i < len(oldNew); i += 2 {
		require.Equal(t, 1, strings.Count(out, oldNew[i]), "%q stands once in the process", oldNew[i])
		out = strings.Replace(out, oldNew[i], oldNew[i+1], 1)
	}
	return out
}

// checked checks a text that uses no other file.
func checked(text string) Report { return File("pale.malt", []byte(text), ".", house{}, Options{}) }

// names gives the rule of each finding, in their order.
func names(list []finding.Finding) []string {
	out := []string{}
	for _, f := range list {
		out = append(out, f.Rule)
	}
	return out
}

// beside gives the rules that the unchanged house does not raise.
func beside(t testing.TB, list []finding.Finding) []string {
	t.Helper()
	usual := names(checked(changed(t)).Findings)
	return slices.DeleteFunc(names(list), func(rule string) bool { return slices.Contains(usual, rule) })
}

const (
	threeSoaks = "    repeat at most 3 times until moisture at least 43 % {\n      soak 7 h in water at 13 °C\n      rest 9 h in air at 14 °C\n    }\n"
	longSoak   = "    soak 30 h in water at 19 °C\n"
)
