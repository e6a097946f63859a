package follow

import (
	"context"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
)

// No member's whole forecast is kept, whether it bears weight or not.
func TestAFollowedMemberKeepsAKilobyteOrTwo(t *testing.T) {
	p := house(t)
	b := invented(t, p, 3)
	batch := upTo(t, b, 0.9*reaches(b.Forecast, model.GerminateStage))
	trial, err := evidence.New(batch, began.Add(time.Duration(0.9*reaches(b.Forecast, model.GerminateStage))*time.Second))
	require.NoError(t, err)
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	s, err := Condition(context.Background(), trial, Options{Members: 60})
	require.NoError(t, err)
	runtime.GC()
	runtime.ReadMemStats(&after)
	assert.Less(t, (int(after.HeapAlloc)-int(before.HeapAlloc))/s.Members, 3000, "bytes for each of %d", s.Members)
	runtime.KeepAlive(s)
}

func TestABatchIsFollowedByAtTheMostSoMany(t *testing.T) {
	for _, n := range []int{LeastMembers - 1, MostMembers + 1} {
		_, err := Condition(context.Background(), nil, Options{Members: n})
		assert.ErrorContains(t, err, "it takes 20 to 10000", n)
	}
}
