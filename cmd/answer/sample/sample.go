// Package sample is for tests only: the example processes, and forecasts of them.
package sample

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// Folder is that of the examples.
func Folder(t testing.TB) string {
	t.Helper()
	at, err := os.Getwd()
	require.NoError(t, err)
	for {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return filepath.Join(at, "examples")
		}
		require.NotEqual(t, at, filepath.Dir(at), "no module around the test")
		at = filepath.Dir(at)
	}
}

// Process is that of an example file.
func Process(t testing.TB, name string) *model.Process {
	t.Helper()
	file := filepath.Join(Folder(t), name)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	root, err := read.OpenRoot(filepath.Dir(file))
	require.NoError(t, err)
	defer root.Close()
	return only(t, name, string(text), root)
}

// Batch is that of a text which stands in a folder of the examples, such as batches.
func Batch(t testing.TB, folder, text string) *model.Batch {
	t.Helper()
	root, err := read.OpenRoot(filepath.Join(Folder(t), folder))
	require.NoError(t, err)
	defer root.Close()
	house, found := read.Load("batch.malt", []byte(text), ".", root)
	if worst, any := finding.Worst(found); any {
		require.Less(t, worst, finding.Fault, "%v", found)
	}
	require.Len(t, house.Batches, 1)
	return house.Batches[0]
}

// Forecast is that of an example file.
func Forecast(t testing.TB, name string) *forecast.Forecast {
	t.Helper()
	f, err := forecast.Run(Process(t, name), forecast.Options{})
	require.NoError(t, err)
	return f
}

func only(t testing.TB, name, text string, root read.Reader) *model.Process {
	t.Helper()
	house, found := read.Load(name, []byte(text), ".", root)
	if worst, any := finding.Worst(found); any {
		require.Less(t, worst, finding.Fault, "%v", found)
	}
	require.Len(t, house.Processes, 1)
	return house.Processes[0]
}
