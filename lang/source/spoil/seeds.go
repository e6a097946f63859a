package spoil

import (
	"iter"
	"os"
	"strconv"
)

// Seeds are the seeds of a hunt: few, always the same, in the tests. With MALTWRIGHT_LONG=1
// in the environment they are many, and with a larger number that many; they go from
// MALTWRIGHT_SEED on, so that another night hunts elsewhere.
func Seeds(few, many int) iter.Seq[uint64] {
	first, n := uint64(0), few
	if long, err := strconv.Atoi(os.Getenv("MALTWRIGHT_LONG")); err == nil && long > 0 {
		if n = many; long > 1 {
			n = long
		}
		first, _ = strconv.ParseUint(os.Getenv("MALTWRIGHT_SEED"), 10, 64) // none is from nothing
	}
	return func(yield func(uint64) bool) {
		for i := range uint64(n) {
			if !yield(first + i) {
				return
			}
		}
	}
}
