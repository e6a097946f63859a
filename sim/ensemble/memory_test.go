package ensemble

import (
	"context"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/work"
)

// kept is how many bytes more are held when do is through, garbage put away.
func kept(do func()) int {
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	do()
	runtime.GC()
	runtime.ReadMemStats(&after)
	return int(after.HeapAlloc) - int(before.HeapAlloc)
}

// No member's whole forecast is kept: a whole one takes some 15 kB.
func TestAMemberKeepsAKilobyteOrTwo(t *testing.T) {
	const members = 200
	p := loft(t)
	var e *Ensemble
	n := kept(func() {
		var err error
		e, err = Run(context.Background(), p, Options{Members: members})
		require.NoError(t, err)
	})
	assert.Less(t, n/members, 2048, "bytes for each member")
	runtime.KeepAlive(e)
}

func TestAnEnsembleHasAtTheMostSoManyMembers(t *testing.T) {
	for _, n := range []int{LeastMembers - 1, MostMembers + 1, -1} {
		_, err := Run(context.Background(), loft(t), Options{Members: n})
		assert.ErrorContains(t, err, "it takes 10 to 10000", n)
	}
}

func everyHalfMinute(q *model.Quantity) *model.Quantity {
	often := *q
	often.SI = 30
	return &often
}

func TestAnEnsembleThatCostsTooMuchSaysSo(t *testing.T) {
	p := loft(t)
	for _, st := range p.Stages {
		if piece := model.PieceOf(st); piece != nil && piece.Turn != nil {
			piece.Turn = everyHalfMinute(piece.Turn)
		}
		if kiln, ok := st.(*model.Kilning); ok && kiln.Stir != nil {
			kiln.Stir = everyHalfMinute(kiln.Stir)
		}
	}
	_, err := Run(context.Background(), p, Options{Members: 20})
	assert.ErrorIs(t, err, work.ErrPool)
}
