// Package reckon does the sums a maltster does by hand beside the scale: the
// moisture of an oven sample, the weight to wait for, the yield, and what a count
// of germinated kernels is worth.
//
// # How it works
//
// Each reckoning is a function of quantities and gives a result of its own type:
// the values in SI, and the working step by step with its numbers (working.go), each as
// it was written or to be shown like one that was. Everything rests on one thing: water
// comes and goes, dry matter only goes, so a weight divides into
//
//	weight = dry matter / (1 − moisture)
//
// with the moisture on the wet basis. Input that cannot be is refused with an
// *Error; nothing is put right in silence.
package reckon

// Error is the refusal of an input: what is wrong, with the value and its unit,
// and what to do.
type Error struct{ Message, Hint string }

func (e *Error) Error() string { return e.Message + "; " + e.Hint }

// steps collects a working.
type steps []Step

func (s *steps) add(list ...Step) { *s = append(*s, list...) }
