package ensemble

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

func loft(t testing.TB) *model.Process {
	t.Helper()
	return example(t, "pale")
}

// example is the process of one of the examples.
func example(t testing.TB, name string) *model.Process {
	t.Helper()
	folder := filepath.Join("..", "..", "examples")
	text, err := os.ReadFile(filepath.Join(folder, name+".malt"))
	require.NoError(t, err)
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	h, _ := read.Load(name+".malt", text, ".", root)
	return h.Processes[0]
}

func run(t testing.TB, o Options) *Ensemble {
	t.Helper()
	e, err := Run(context.Background(), loft(t), o)
	require.NoError(t, err)
	return e
}

func finalMoisture(t *forecast.Totals) float64    { return t.FinalMoisture }
func totalTime(t *forecast.Totals) float64        { return t.Total }
func steepOutMoisture(t *forecast.Totals) float64 { return t.SteepOutMoisture }

func TestTheSameEnsembleOnAnyNumberOfCores(t *testing.T) {
	one, many := run(t, Options{Members: 24, Workers: 1}), run(t, Options{Members: 24, Workers: 7})
	for i := range one.Members {
		assert.Equal(t, math.Float64bits(one.Members[i].Totals.FinalMoisture), math.Float64bits(many.Members[i].Totals.FinalMoisture), i)
		assert.Equal(t, math.Float64bits(one.Members[i].Totals.Total), math.Float64bits(many.Members[i].Totals.Total), i)
	}
	assert.Equal(t, one.Steps(), many.Steps())
}

func TestTheHypercubeCoversEachUnknownEvenly(t *testing.T) {
	const n = 50
	draws := hypercube(n, 7)
	for axis := range 7 {
		var seen [n]bool
		for _, d := range draws {
			seen[int(d[axis]*n)] = true
		}
		for i, ok := range seen {
			assert.True(t, ok, "stratum %d of axis %d is empty", i, axis)
		}
	}
}

// The middle of the spread must be the plain forecast, but for the bend of the
// model: within a third of the distance from the 10 to the 90 % point.
func TestTheMiddleOfTheSpreadIsThePlainForecast(t *testing.T) {
	e := run(t, Options{Members: 100})
	plain, err := forecast.Run(e.Process, forecast.Options{})
	require.NoError(t, err)
	for name, of := range map[string]func(*forecast.Totals) float64{"final moisture": finalMoisture, "total time": totalTime, "steep-out": steepOutMoisture} {
		s := e.Total(of)
		assert.LessOrEqual(t, s.P10, s.P50, name)
		assert.LessOrEqual(t, s.P50, s.P90, name)
		assert.Greater(t, s.P90, s.P10, name)
		assert.InDelta(t, of(&plain.Totals), s.P50, (s.P90-s.P10)/3+1e-3*s.P50, name)
		assert.Equal(t, 1.0, s.Share, name)
	}
}

func TestUptakeDrivesTheMoistureAtSteepOutAndGrowthTheTime(t *testing.T) {
	e := run(t, Options{Members: 200})
	assert.Equal(t, LotUptake, e.Drivers(steepOutMoisture)[0].Unknown.Open)
	assert.True(t, e.Drivers(steepOutMoisture)[0].Rises)
	growth := e.Drivers(totalTime)
	require.NotEmpty(t, growth)
	open := []Open{growth[0].Unknown.Open}
	for _, d := range growth[1:] {
		open = append(open, d.Unknown.Open)
	}
	assert.Contains(t, open[:min(3, len(open))], LotGrowth)
}

func TestAnEnsembleCanBeCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	_, err := Run(ctx, loft(t), Options{Members: 5000, Progress: func(done, _ int) {
		if done == 3 {
			cancel()
		}
	}})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestTooFewOrTooManyMembersAreRefused(t *testing.T) {
	for _, n := range []int{-1, 1, 9, 100_001} {
		_, err := Run(context.Background(), loft(t), Options{Members: n})
		assert.Error(t, err, n)
	}
}

func TestCornersOfTheSite(t *testing.T) {
	corners, err := Corners(context.Background(), loft(t), time.Time{})
	require.NoError(t, err)
	assert.Len(t, corners, 8)
	seen := map[string]bool{}
	for _, c := range corners {
		require.Len(t, c.Ends, 3)
		seen[fmt.Sprint(c.Ends[0].At, c.Ends[1].At, c.Ends[2].At)] = true
	}
	assert.Len(t, seen, 8)
	assert.Contains(t, seen, "8 °C 55 % 9 °C")
}

func TestRanksShareTheirMeanAmongEquals(t *testing.T) {
	values := []float64{3, 1, 3, 2}
	assert.Equal(t, []float64{2.5, 0, 2.5, 1}, ranks([]int{0, 1, 2, 3}, func(i int) float64 { return values[i] }))
}

// BenchmarkThousandFutures spreads a process over a thousand lots, houses and springs. On two
// quiet cores the loft's is to take at most 1.2 s and the deep bed's at most 5 s.
func BenchmarkThousandFutures(b *testing.B) {
	for _, name := range []string{"pale", "deep-bed", "box"} {
		b.Run(name, func(b *testing.B) {
			p := example(b, name)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Run(context.Background(), p, Options{Members: 1000}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
