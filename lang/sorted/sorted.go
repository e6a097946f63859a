// Package sorted puts lists in order.
package sorted

import "sort"

// Stable sorts a list by a comparison; what compares alike keeps its order. It does what slices.SortStableFunc does, for which
// a program holds the whole way of sorting once more for each type of list, some ten kilobytes.
func Stable[T any](list []T, compare func(a, b T) int) {
	sort.SliceStable(list, func(i, j int) bool { return compare(list[i], list[j]) < 0 })
}
