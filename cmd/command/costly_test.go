package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// costly is the loft's pale malt, turned every minute for long.
func costly(t *testing.T, files map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		files[name] = string(text)
	}
	files["costly.malt"] = strings.NewReplacer("turn  every 8 h", "turn every 1 min",
		"until acrospire at least 3/4 and rub is chalky", "for 20 days", "allow 4 to 7 days", "").Replace(files["pale.malt"])
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	return folder
}

// What one forecast can bear and hundreds cannot is said, and what costs so much.
func TestASpreadThatCostsTooMuchIsRefused(t *testing.T) {
	var out, errs strings.Builder
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: costly(t, map[string]string{}), Env: func(string) string { return "" }}
	assert.Equal(t, ExitFindings, Main(w, []string{"forecast", "--spread", "--members", "10", "costly.malt"}))
	assert.Contains(t, errs.String(), "costly.malt: no spread, for the forecasts would take over 300000 steps of the model each")
	assert.Empty(t, out.String())
}

func TestABatchThatCostsTooMuchIsNotFollowed(t *testing.T) {
	var out, errs strings.Builder
	batch := "use \"costly.malt\"\nbatch \"b\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 8.6 kg at 14:00 after soak 1\n}\n"
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: costly(t, map[string]string{"b.malt": batch}), Env: func(string) string { return "" }}
	assert.Equal(t, ExitFindings, Main(w, []string{"follow", "b.malt", "--members", "20", "--at", "2026-03-06T15:00"}))
	assert.Contains(t, errs.String(), "more steps of the model together than they may have")
}
