package chart

import (
	"cmp"

	"maltwright/lang/sorted"
)

// Spread puts labels of a height one over another between low and high, each as near to where it wants to be as the
// others let it: the sum of the squares of how far they are moved is least. They keep their order. Where there
// is not room for all they stand closer than their height.
//
// Neighbours that would overlap are joined to a block that lies at the mean of what its members want, until
// none overlap (isotonic regression by pooling).
func Spread(want []float64, height, low, high float64) []float64 {
	n := len(want)
	if n == 0 {
		return nil
	}
	if room := (high - low) / float64(n); height > room {
		height = max(room, 0)
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sorted.Stable(order, func(a, b int) int { return cmp.Compare(want[a], want[b]) })
	type block struct {
		sum float64 // of what the members want, less what the labels before them in the block take
		n   int
	}
	var blocks []block
	first := func(b block) float64 {
		return min(max(b.sum/float64(b.n), low+height/2), high-height*(float64(b.n)-0.5))
	}
	for _, i := range order {
		blocks = append(blocks, block{want[i], 1})
		for len(blocks) > 1 {
			a, b := blocks[len(blocks)-2], blocks[len(blocks)-1]
			if first(a)+height*float64(a.n) <= first(b)+1e-9 {
				break
			}
			blocks = append(blocks[:len(blocks)-2], block{a.sum + b.sum - float64(b.n)*height*float64(a.n), a.n + b.n})
		}
	}
	placed, k := make([]float64, n), 0
	for _, b := range blocks {
		for j := range b.n {
			placed[order[k]], k = first(b)+height*float64(j), k+1
		}
	}
	return placed
}
