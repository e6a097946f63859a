package spoil

import (
	"flag"
	"iter"

	"maltwright/lang/source/golden"
)

var (
	seeds = flag.Int("seeds", 0, "how many texts a hunt breaks; 0 is as many as it has of its own, more with -long")
	seed  = flag.Uint64("seed", 0, "the first seed of a hunt")
)

// Seeds are the seeds of a hunt: few in the tests, many with the flag -long. The flag
// -seed says where they begin, so that another night hunts elsewhere, and -seeds how many
// there are.
func Seeds(few, many int) iter.Seq[uint64] {
	n := few
	switch {
	case *seeds > 0:
		n = *seeds
	case golden.Long():
		n = many
	}
	return func(yield func(uint64) bool) {
		for i := range uint64(n) {
			if !yield(*seed + i) {
				return
			}
		}
	}
}
