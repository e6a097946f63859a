package evidence_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/evidence/evidencetest"
)

const kilned = "  weighed 5.15 kg at 2026-03-13 16:15 after cure\n  weighed 4.98 kg clean malt at 18:09\n"

// A laboratory's moisture is that of the malt as it left the kiln, however late it comes.
func TestATestedMoistureIsOfTheMalt(t *testing.T) {
	x := trial(t, written(t, kilned+"  tested moisture 4.1 % by \"EBC 4.2\" at 2026-04-01 10:00\n"), time.Time{})
	require.Len(t, x.Observations, 3)
	o := &x.Observations[2]
	assert.InDelta(t, 0.041, o.Value, 1e-12)
	assert.InDelta(t, 0.004, o.Error, 1e-12)
	f := middle(t, x)
	last := f.Stages[len(f.Stages)-1]
	if last.Kind == model.StoreStage {
		last = f.Stages[len(f.Stages)-2]
	}
	assert.InDelta(t, last.Steps[0].MoistureEnd, o.Expect(f, 0), 1e-12)
}

// Of a batch that is still on the kiln it is of that hour, and of a handful out of a bed.
func TestATestedMoistureOfAnUnfinishedBatchIsOfItsHour(t *testing.T) {
	b := written(t, "  weighed 8.96 kg at 2026-03-12 08:00 after germinate\n  weighed 7.60 kg at 2026-03-13 02:00 after wither\n  tested moisture 8.8 % at 10:00\n  read air-on 52 °C at 10:30\n")
	at := time.Date(2026, 3, 13, 11, 0, 0, 0, time.Local)
	x := trial(t, b, at)
	require.Len(t, x.Observations, 4)
	o := &x.Observations[2]
	require.True(t, model.Is[*model.Tested](o.Reading), "in the order of the clock")
	assert.InDelta(t, math.Hypot(0.004, 0.015), o.Error, 1e-12)
	f := middle(t, x)
	s := o.Sight(f)
	require.NotNil(t, s)
	assert.InDelta(t, 27*3600+6*86400, s.At, 1e-6)
	assert.Equal(t, model.KilnStage, s.Stage)
	assert.Equal(t, s.Moisture, o.Expect(f, 0))
	assert.Len(t, trial(t, b, at.Add(-2*time.Hour)).Observations, 2, "not before it was tested")
	whole := trial(t, b, time.Time{})
	assert.Equal(t, o.Error, whole.Observations[2].Error, "no line says that it is done")
}

func TestOtherAnalysesAreNoEvidence(t *testing.T) {
	x := trial(t, written(t, kilned+"  tested colour 5.1 EBC at 2026-04-01 10:00\n  tested diastatic 250 °WK at 10:00\n  tested friability 86 % at 10:00\n"), time.Time{})
	assert.Len(t, x.Observations, 2)
}

// withoutGates gives a process whose kiln waits for no moisture but ends its steps by the clock.
func withoutGates(p *model.Process) *model.Process {
	own := *p
	own.Stages = slices.Clone(p.Stages)
	for i, st := range own.Stages {
		if k, ok := st.(*model.Kilning); ok {
			kiln := *k
			kiln.Steps = slices.DeleteFunc(slices.Clone(k.Steps), func(s model.Step) bool { return s.Kind() == model.GateStep })
			own.Stages[i] = &kiln
		}
	}
	return &own
}

// The course that fits best goes towards the moisture that was tested, where no gate holds
// the malt until it has the one that is asked.
func TestATestedMoistureDrawsTheCourse(t *testing.T) {
	p := withoutGates(written(t, "").Process)
	b, err := evidencetest.Of(p, "x", began, evidencetest.Truth{}, 3)
	require.NoError(t, err)
	comes := func(tested string) float64 {
		batch := load(t, strings.TrimSuffix(b.Text, "}\n")+"  tested moisture "+tested+" at 2026-04-01 10:00\n}\n")
		batch.Process = p
		x := trial(t, batch, time.Time{})
		z, err := evidence.Mode(context.Background(), x)
		require.NoError(t, err)
		f, err := x.Run(z, false)
		require.NoError(t, err)
		return x.Observations[len(x.Observations)-1].Expect(f, 0)
	}
	wet, dry := comes("5.6 %"), comes("3.6 %")
	t.Logf("%.2f %% where 5.6 %% were tested, and %.2f %% where 3.6 %% were", 100*wet, 100*dry)
	assert.Greater(t, wet, dry+0.002)
}
