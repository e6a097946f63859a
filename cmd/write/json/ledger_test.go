package json_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/sums"
	"maltwright/cmd/answer/trace"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/lang/syntax"
	"maltwright/sim/reckon"
	"maltwright/sim/work"
)

const examples = "../../../examples"

// ledgers are of a finished batch, and of one that has only begun in a process that cannot
// be forecast.
func ledgers(t testing.TB) []any {
	book := ledger.New(t.Context(), nil)
	enter(t, book, "batches/26-05.malt", "")
	unsound := ledger.New(t.Context(), nil)
	enter(t, unsound, "batches/begun.malt", "use \"loft.malt\"\nprocess \"p\" { steep { soak 7 buckets in water at 13 °C } }\nbatch \"b\" of \"p\" { began 2026-03-06 07:00 }\n")
	return []any{book.Result(), unsound.Result(), ledger.New(t.Context(), nil).Result()}
}

func enter(t testing.TB, book *ledger.Book, name, text string) {
	t.Helper()
	root, house := loaded(t, name, text)
	require.NotEmpty(t, house.House.Batches)
	for _, b := range house.House.Batches {
		book.Enter(ledger.Record{File: name, Root: examples, Below: name, Reader: root, House: house.House, Batch: b, Found: house.Findings})
	}
}

// loaded reads and checks a file of the examples; its text is another where one is given.
func loaded(t testing.TB, name, text string) (read.Reader, check.Report) {
	t.Helper()
	if text == "" {
		got, err := os.ReadFile(filepath.Join(examples, name))
		require.NoError(t, err)
		text = string(got)
	}
	root, err := read.OpenRoot(examples)
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	return root, check.File(name, []byte(text), filepath.Dir(name), root, check.Options{NoForecast: true})
}

// effects are of two processes, of a change that none can forecast, and of none at all.
func effects(t testing.TB) []any {
	pale := season(t, "pale.malt", "")
	none := season(t, "none.malt", "vessel \"tub\" { holds 20 l }\n")
	unable := season(t, "unable.malt", "process \"Loft pale\" { make pale malt }\n")
	var list []any
	for _, pair := range [][2]effect.Season{{pale, season(t, "munich.malt", "")}, {pale, unable}, {none, pale}, {none, none}, {pale, pale}} {
		list = append(list, effect.Compare(context.Background(), pair[0], pair[1], false))
	}
	return append(list, effect.Compare(context.Background(), pale, unable, true))
}

func season(t testing.TB, name, text string) effect.Season {
	t.Helper()
	_, r := loaded(t, name, text)
	s := effect.Season{Name: name, File: name, House: r.House, Found: r.Findings, Pool: work.NewPool(work.File)}
	for _, f := range r.House.Files {
		tree, _ := syntax.Parse(f)
		s.Trees = append(s.Trees, tree)
	}
	return s
}

func q(t testing.TB, text string) quantity.Quantity {
	t.Helper()
	out, err := quantity.Parse(text)
	require.NoError(t, err)
	return out
}

func batch(t testing.TB) reckon.Start {
	return reckon.Start{Weight: q(t, "13 lb 4 oz"), Moisture: q(t, "14.2 % dry basis")}
}

// given is an answer that cannot be refused.
func given[T any](t testing.TB) func(T, error) []any {
	return func(r T, err error) []any { require.NoError(t, err); return []any{r} }
}

func moistures(t testing.TB) []any {
	one := reckon.Sample{Wet: q(t, "20.00 g"), Dried: q(t, "17.54 g")}
	return append(given[sums.Moisture](t)(sums.OfSamples([]reckon.Sample{one}, nil)), given[sums.Moisture](t)(sums.OfSamples([]reckon.Sample{one, one}, nil))...)
}

func targets(t testing.TB) []any {
	return given[sums.Target](t)(sums.ToMoisture(batch(t), q(t, "44 %"), nil))
}

func weighings(t testing.TB) []any {
	return given[sums.Weighing](t)(sums.OfWeight(q(t, "20 lb"), batch(t), nil))
}

func bases(t testing.TB) []any { return given[sums.Basis](t)(sums.Bases(q(t, "12.4 %"))) }

func yields(t testing.TB) []any {
	return given[sums.Yield](t)(sums.OfMalt(batch(t), reckon.Start{Weight: q(t, "10 lb"), Moisture: q(t, "4.5 %")}))
}

func germinations(t testing.TB) []any {
	return given[sums.Germination](t)(sums.OfCount(q(t, "95"), q(t, "100")))
}

// traces are of a lot of which something is left, of one of which too much was taken, and
// of one that never came in.
func traces(t testing.TB) (list []any) {
	for _, lot := range []string{"delivered 2.5 t from \"Hill farm\" on 2026-02-01 as \"L-118\"", "delivered 5 kg", "moisture 12 %"} {
		text := "use \"pale.malt\"\ngrain \"Hill field\" { species barley; " + lot + " }\n" +
			"batch \"b\" of \"Loft pale\" { began 2026-03-06 07:00; from 6 kg of \"Hill field\"; weighed 4.98 kg clean malt at 2026-03-13 18:09; tested don 0.3 mg/kg at 2026-04-01 10:00 }\n"
		book := ledger.New(t.Context(), nil)
		enter(t, book, "batches/traced.malt", text)
		_, house := loaded(t, "batches/traced.malt", text)
		r, ok := trace.Of("Hill field", []*model.House{house.House, house.House}, book.Result())
		require.True(t, ok)
		list = append(list, r)
	}
	return list
}
