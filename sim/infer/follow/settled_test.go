package follow

import (
	"bytes"
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
)

// keeps is a shelf in memory, which counts what is asked of it.
type keeps struct {
	data       map[string][]byte
	found, put int
}

func (k *keeps) Get(key string) []byte {
	if k.data[key] != nil {
		k.found++
	}
	return k.data[key]
}

func (k *keeps) Put(key string, data []byte) {
	if k.data == nil {
		k.data = map[string][]byte{}
	}
	k.data[key] = data
	k.put++
}

const settledMembers = 60

func by(t *testing.T, b *model.Batch, at time.Time, s Shelf) *Following {
	t.Helper()
	f, err := Of(context.Background(), b, at, Options{Members: settledMembers, Shelf: s})
	require.NoError(t, err)
	return f
}

func assertSame(t *testing.T, want, got *Following) {
	t.Helper()
	assert.Equal(t, want.Z, got.Z)
	assert.Equal(t, want.Mean, got.Mean)
	assert.Equal(t, want.EffectiveSize, got.EffectiveSize)
	assert.Equal(t, want.Members, got.Members)
	assert.Equal(t, want.Rounds, got.Rounds)
	assert.Equal(t, want.Stand.Moisture, got.Stand.Moisture)
	assert.Equal(t, want.Stand.Weight, got.Stand.Weight)
	assert.Equal(t, want.Ensemble.Steps(), got.Ensemble.Steps())
}

// What is kept changes no figure: not that of the first time, of the next, or of a reading
// that comes behind it.
func TestWhatIsKeptChangesNoFigure(t *testing.T) {
	b, at := record(t, "2026-03-07 23:30")
	k := &keeps{}
	plain := by(t, b, at, nil)
	require.Equal(t, 6, len(plain.Trial.Observations), "some are settled")
	require.NotNil(t, must(settle(context.Background(), plain.Trial, Options{Members: settledMembers})))
	assertSame(t, plain, by(t, b, at, k))
	require.Equal(t, 1, k.put)
	assertSame(t, plain, by(t, b, at, k))
	later := time.Date(2026, 3, 8, 6, 25, 0, 0, time.Local)
	behind := by(t, b, later, k)
	assert.Equal(t, 2, k.found, "a reading more, and the settled ones are found again")
	assert.Equal(t, 1, k.put)
	assert.Len(t, behind.Trial.Observations, 7)
	assertSame(t, by(t, b, later, nil), behind)
}

func must(s *settled, err error) *settled {
	if err != nil {
		return nil
	}
	return s
}

func TestWhatIsKeptWrongIsNotBelieved(t *testing.T) {
	b, at := record(t, "2026-03-07 23:30")
	plain, k := by(t, b, at, nil), &keeps{}
	by(t, b, at, k)
	require.Len(t, k.data, 1)
	for key, good := range k.data {
		flipped := bytes.Clone(good)
		flipped[len(flipped)/2] ^= 1
		for what, bad := range map[string][]byte{"cut": good[:len(good)-1], "a bit": flipped, "empty": {}, "of another": []byte("GIF89a"), "longer": append(bytes.Clone(good), 0)} {
			k.data[key] = bad
			k.put = 0
			assertSame(t, plain, by(t, b, at, k))
			assert.Equal(t, 1, k.put, what)
			assert.Equal(t, good, k.data[key], "%s: it is put right", what)
		}
	}
}

func TestPackedIsUnpacked(t *testing.T) {
	s := &settled{draws: [][]float64{{1, 2}, {3, -4}}, counts: []float64{2, 1}, logs: []float64{-5, -6}, members: 400, rounds: 2, size: 77}
	assert.Equal(t, s, unpack(s.pack(), 2, 3))
	assert.Nil(t, unpack(s.pack(), 3, 3), "of other axes")
	assert.Nil(t, unpack(s.pack(), 2, 4), "of other members")
	assert.Nil(t, unpack(nil, 2, 3))
}

// Whatever the settled draws follow from is in their key; what was written since is not.
func TestTheKeyHoldsWhatMatters(t *testing.T) {
	key := func(until string, replaced ...string) string {
		b, at := record(t, until, replaced...)
		trial, err := evidence.New(b, at)
		require.NoError(t, err)
		settledTo, ok := settledAt(trial)
		require.True(t, ok)
		before, err := evidence.New(b, b.Began.Add(time.Duration(settledTo)*time.Second))
		require.NoError(t, err)
		return shelfKey(before, Options{Members: 200})
	}
	const at = "2026-03-07 23:30"
	was := key(at)
	assert.Equal(t, was, key(at))
	assert.Equal(t, was, key("2026-03-08 06:25"), "a later time, and a reading more")
	assert.Equal(t, was, key(at, "read    bed 17.8 °C", "read    bed 14.8 °C"), "what is yet to come")
	assert.Equal(t, was, key(at, "  sample 20.00 g", "  # a remark\n  sample 20.00 g"), "a comment")
	for what, replaced := range map[string][]string{
		"a settled weight":      {"weighed 7.41 kg", "weighed 7.42 kg"},
		"its time":              {"weighed 7.41 kg at 14:00", "weighed 7.41 kg at 14:01"},
		"a settled temperature": {"read    water 13.6 °C at 07:01", "read    water 13.7 °C at 07:01"},
		"the sample":            {"dried to 17.54 g", "dried to 17.53 g"},
		"when it began":         {"began  2026-03-06 07:00", "began  2026-03-06 07:01"},
		"what was changed":      {"  sample 20.00 g", "  changed soak 3 to 6 h because \"so\"\n  sample 20.00 g"},
	} {
		assert.NotEqual(t, was, key(at, replaced...), what)
	}
	b, until := record(t, at)
	trial, err := evidence.New(b, until)
	require.NoError(t, err)
	print := trial.Print()
	for what, change := range map[string]func(p *model.Process, g *model.Grain){
		"the charge":        func(p *model.Process, _ *model.Grain) { q := *p.Charge; q.SI *= 1.01; p.Charge = &q },
		"the species":       func(_ *model.Process, g *model.Grain) { g.Species.Text = "wheat" },
		"the protein":       func(_ *model.Process, g *model.Grain) { g.Protein.SI += 1e-9 },
		"a stage":           func(p *model.Process, _ *model.Grain) { p.Stages = p.Stages[:len(p.Stages)-1] },
		"a temperature":     func(p *model.Process, _ *model.Grain) { p.Stages[1].(*model.Germination).Steps = nil },
		"the room":          func(p *model.Process, _ *model.Grain) { s := *p.Site; s.Air = nil; p.Site = &s },
		"what was learnt":   func(p *model.Process, _ *model.Grain) { h := *p.House; h.Learnt = &model.Learnt{}; p.House = &h },
		"the lot is others": func(p *model.Process, _ *model.Grain) { p.Grain = nil },
	} {
		own, p, g := *b, *b.Process, *b.Process.Grain
		if g.Protein != nil {
			q := *g.Protein
			g.Protein = &q
		}
		p.Grain = &g
		change(&p, &g)
		own.Process = &p
		own.Sample = nil
		other, err := evidence.New(&own, until)
		require.NoError(t, err)
		assert.NotEqual(t, print, other.Print(), what)
	}
}

// Weighing settled members tells the same as drawing from the whole record, but for the
// chance of so many draws: a tenth of what is open.
func TestSettledMembersTellTheSame(t *testing.T) {
	b, at := record(t, "2026-03-08 06:25")
	o := Options{Members: 200}
	trial, err := evidence.New(b, at)
	require.NoError(t, err)
	settled, err := Condition(context.Background(), trial, o)
	require.NoError(t, err)
	require.Greater(t, settled.Members, 400, "settled ones were weighed")
	c := conditioningOf(context.Background(), trial, o)
	s, err := c.drawn()
	require.NoError(t, err)
	whole, err := c.resample(s)
	require.NoError(t, err)
	for i := range whole.Mean {
		assert.InDelta(t, whole.Mean[i], settled.Mean[i], 0.3, "axis %d", i)
	}
	a, z := whole.spread(func(m *Member) float64 { return m.now.weight }), settled.spread(func(m *Member) float64 { return m.now.weight })
	assert.InDelta(t, a.P50, z.P50, 0.3*(a.P90-a.P10))
	assert.InEpsilon(t, a.P90-a.P10, z.P90-z.P10, 0.4)
}

// Where nothing is settled yet, what was drawn from the whole record is found again as long as
// no reading is added, whatever the time is.
func TestTheWholeRecordIsFoundAgain(t *testing.T) {
	b, at := record(t, "2026-03-06 15:30")
	k := &keeps{}
	plain := by(t, b, at, nil)
	require.Nil(t, must(settle(context.Background(), plain.Trial, Options{Members: settledMembers})), "too few readings")
	require.NotEmpty(t, plain.Trial.Observations)
	assertSame(t, plain, by(t, b, at, k))
	require.Equal(t, 1, k.put)
	later := at.Add(20 * time.Minute)
	behind := by(t, b, later, k)
	assert.Len(t, behind.Trial.Observations, len(plain.Trial.Observations))
	assert.Equal(t, 1, k.put)
	assert.Equal(t, 1, k.found)
	assertSame(t, by(t, b, later, nil), behind)
}

// That the settled members were sought in vain is kept too.
func TestWhatWasSoughtInVainIsNotSoughtAgain(t *testing.T) {
	b, at := record(t, "2026-03-07 23:30")
	trial := by(t, b, at, nil).Trial
	to, ok := settledAt(trial)
	require.True(t, ok)
	before, err := evidence.New(b, b.Began.Add(time.Duration(to*float64(time.Second))))
	require.NoError(t, err)
	before.Adopt(trial)
	o := Options{Members: settledMembers, Shelf: &keeps{}}
	key := shelfKey(before, o)
	o.Shelf.Put(key, vain(key))
	assert.Nil(t, must(settle(context.Background(), trial, o)))
	assert.NotNil(t, must(settle(context.Background(), trial, Options{Members: settledMembers})))
}
