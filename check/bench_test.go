package check

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// BenchmarkCheckFile checks the pale example as the command does, with its
// forecast and the file it uses; only starting the program is left out.
func BenchmarkCheckFile(b *testing.B) {
	for b.Loop() {
		r := checkFile(b, "../examples/pale.malt")
		require.Len(b, r.House.Processes, 1)
	}
}

// BenchmarkForecast runs the forecast of the pale example alone.
func BenchmarkForecast(b *testing.B) {
	p := checkFile(b, "../examples/pale.malt").House.Processes[0]
	b.ResetTimer()
	for b.Loop() {
		f, err := forecast.Run(p, forecast.Options{})
		require.NoError(b, err)
		require.False(b, f.BrokenOff())
	}
}

// BenchmarkLoad reads the pale example and its house, without a forecast.
func BenchmarkLoad(b *testing.B) {
	text, err := os.ReadFile("../examples/pale.malt")
	require.NoError(b, err)
	root, err := read.OpenRoot("../examples")
	require.NoError(b, err)
	defer root.Close()
	for b.Loop() {
		File("pale.malt", text, ".", root, Options{NoForecast: true})
	}
}
