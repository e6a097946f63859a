package trace_test

import (
	"io/fs"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/trace"
	"maltwright/lang/model"
	"maltwright/lang/read"
)

type files map[string]string

func (f files) Read(path string) ([]byte, error) {
	text, ok := f[path]
	if !ok {
		return nil, fs.ErrNotExist
	}
	return []byte(text), nil
}

// houses reads each text as a file of a folder.
func houses(t *testing.T, in files) (list []*model.House) {
	t.Helper()
	for name, text := range in {
		h, _ := read.Load(name, []byte(text), ".", in)
		list = append(list, h)
	}
	return list
}

// of are batches of lots, by their charges in kg.
func of(lots ...any) (r ledger.Result) {
	for i := 0; i < len(lots); i += 2 {
		began := time.Date(2026, 3, 1+i, 7, 0, 0, 0, time.UTC)
		r.Batches = append(r.Batches, ledger.Batch{Batch: string(rune('a' + i/2)), Began: began, Lot: lots[i].(string), Charge: answer.Kilograms(lots[i+1].(float64))})
	}
	return r
}

const twice = `grain "A" { species barley; delivered 2.5 t from "Hill farm" on 2026-02-01 as "L-118"; delivered 500 kg on 2026-01-20; delivered 500 kg on 2026-01-20; store in "silo 2" }` + "\n"

func TestALotIsTracedFromItsDeliveriesToItsBatches(t *testing.T) {
	for _, lot := range []string{"A", "L-118"} {
		r, ok := trace.Of(lot, houses(t, files{"a.malt": twice}), of("A", 1000.0, "B", 300.0, "A", 500.0))
		require.True(t, ok, lot)
		assert.Equal(t, "silo 2", r.Store)
		assert.Equal(t, answer.Kilograms(3500), r.Delivered, "two that are alike in one file are two")
		require.Len(t, r.Deliveries, 3)
		assert.Equal(t, trace.Delivery{Weight: 2500, From: "Hill farm", On: "2026-02-01", As: "L-118"}, r.Deliveries[2], "by their dates")
		require.Len(t, r.Batches, 2)
		assert.Equal(t, "c", r.Batches[1].Batch)
		assert.Equal(t, answer.Kilograms(2500), r.Batches[1].Stock, "what was left when it began")
		assert.Equal(t, answer.Kilograms(1500), r.Taken)
		assert.Equal(t, answer.Kilograms(2000), r.Left)
		assert.False(t, r.Overdrawn)
	}
}

// The house is brought in by every record, and often stands in copies.
func TestADeliveryThatIsReadTwiceCameInOnce(t *testing.T) {
	r, _ := trace.Of("A", houses(t, files{"a.malt": twice, "one.malt": "use \"a.malt\"\n", "two.malt": "use \"a.malt\"\n", "copy/a.malt": twice}), ledger.Result{})
	assert.Equal(t, answer.Kilograms(3500), r.Delivered)
	assert.Empty(t, r.Batches)
}

func TestMoreTakenThanCameInIsOverdrawn(t *testing.T) {
	in := houses(t, files{"a.malt": `grain "A" { species barley; delivered 10 kg }`})
	r, _ := trace.Of("A", in, of("A", 6.0, "A", 4.0))
	assert.False(t, r.Overdrawn, "all of it")
	r, _ = trace.Of("A", in, of("A", 6.0, "A", 6.0))
	assert.True(t, r.Overdrawn)
	assert.Equal(t, answer.Kilograms(-2), r.Left)
}

// What comes in later was not there for a batch that began before.
func TestWhatIsLeftCountsWhatHadComeIn(t *testing.T) {
	in := houses(t, files{"a.malt": `grain "A" { species barley; delivered 50 kg on 2026-02-01; delivered 10 kg on 2026-03-02 }`})
	r, _ := trace.Of("A", in, of("A", 30.0, "A", 15.0)) // on the 1st and the 3rd of March
	assert.Equal(t, answer.Kilograms(20), r.Batches[0].Rest())
	assert.Equal(t, answer.Kilograms(15), r.Batches[1].Rest())
	assert.False(t, r.Overdrawn)
	r, _ = trace.Of("A", in, of("A", 55.0))
	assert.Equal(t, answer.Kilograms(-5), r.Batches[0].Rest())
	assert.Equal(t, answer.Kilograms(5), r.Left)
	assert.True(t, r.Overdrawn, "before the rest came")
}

func TestOfALotThatNeverCameInNothingIsKnownToBeLeft(t *testing.T) {
	r, ok := trace.Of("A", houses(t, files{"a.malt": `grain "A" { species barley }`}), of("A", 6.0, "A", math.NaN()))
	assert.True(t, ok)
	assert.True(t, math.IsNaN(float64(r.Left)))
	assert.False(t, r.Overdrawn)
	assert.Equal(t, answer.Kilograms(6), r.Taken, "a charge that is not said counts nothing")
	_, ok = trace.Of("C", houses(t, files{"a.malt": twice}), ledger.Result{})
	assert.False(t, ok)
}
