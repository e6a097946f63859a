package spoil

import (
	"iter"
	"os"
	"strconv"
)

// Long tells whether a hunt is to be long: MALTWRIGHT_LONG=1 in the environment.
func Long() bool { return os.Getenv("MALTWRIGHT_LONG") == "1" }

// Seeds are the seeds of a hunt: few, always the same, in the tests; many in a long
// hunt, from MALTWRIGHT_SEED on if that is given, so that another night hunts elsewhere.
func Seeds(few, many int) iter.Seq[uint64] {
	first, n := uint64(0), few
	if Long() {
		n = many
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
