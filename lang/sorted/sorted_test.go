package sorted_test

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"maltwright/lang/sorted"
)

func TestAListIsSortedAsTheStandardLibrarySortsIt(t *testing.T) {
	type item struct{ key, was int }
	byKey := func(a, b item) int { return cmp.Compare(a.key, b.key) }
	rapid.Check(t, func(t *rapid.T) {
		keys := rapid.SliceOfN(rapid.IntRange(0, 9), 0, 60).Draw(t, "keys")
		list := make([]item, len(keys))
		for i, key := range keys {
			list[i] = item{key, i}
		}
		want := slices.Clone(list)
		slices.SortStableFunc(want, byKey)
		sorted.Stable(list, byKey)
		assert.Equal(t, want, list)
	})
}
