package work

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAMeterEndsWhereItIsUsedUpAndStaysSo(t *testing.T) {
	m := NewMeter(t.Context(), nil)
	require.NoError(t, m.Spend(Most))
	assert.ErrorIs(t, m.Spend(1), ErrTooMuch)
	assert.ErrorIs(t, m.Err(), ErrTooMuch)
	assert.Equal(t, Most+1, m.Spent())
}

func TestWithoutAMeterNothingIsBounded(t *testing.T) {
	var m *Meter
	m.Settle()
	assert.NoError(t, m.Spend(10*Most))
	assert.NoError(t, m.Err())
	assert.Zero(t, m.Spent())
	var p *Pool
	assert.NoError(t, p.Err())
}

func TestACancelledContextIsSeenWithinAFewSteps(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	m := NewMeter(ctx, nil)
	require.NoError(t, m.Spend(often))
	cancel()
	assert.ErrorIs(t, m.Spend(often), context.Canceled)
}

// A part that is overdrawn costs what it had, however many spent from it at once.
func TestAPartOfAPoolCostsNoMoreThanItHad(t *testing.T) {
	p := NewPool(250)
	for _, c := range []struct{ spent, left int }{{60, 190}, {100, 90}, {170, -1}, {10, -1}} {
		part := p.Part(100)
		part.take(c.spent)
		p.Settled(part, 100)
		assert.Equal(t, c.left, p.Left(), "after %d", c.spent)
	}
	assert.ErrorIs(t, p.Err(), ErrPool)
	p = NewPool(250)
	part := p.Part(100)
	part.take(140)
	p.Settled(part, 100)
	assert.Equal(t, 150, p.Left())
	assert.NoError(t, p.Err())
}

// Whether several fit into a pool does not depend on which of them was first.
func TestAPoolIsUsedUpByAllTogether(t *testing.T) {
	for _, order := range [][]int{{100_000, 20_000, 30_000}, {30_000, 20_000, 100_000}} {
		fits, short := NewPool(150_000), NewPool(149_999)
		for _, n := range order {
			for _, p := range []*Pool{fits, short} {
				m := NewMeter(t.Context(), p)
				_ = m.Spend(n)
				m.Settle()
			}
		}
		assert.NoError(t, fits.Err())
		assert.Zero(t, fits.Left())
		assert.ErrorIs(t, short.Err(), ErrPool)
	}
}
