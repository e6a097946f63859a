package words

import (
	"fmt"
	"slices"

	"maltwright/cmd/answer/lessons"
	"maltwright/sim/infer/learn"
)

// Factor is a factor of a house as it is told: uptake of "Far field 2026".
func Factor(f lessons.Factor) string {
	if f.Of == nil {
		return f.Factor
	}
	return fmt.Sprintf("%s of %q", f.Factor, *f.Of)
}

// Batches lists the names of batches.
func Batches(list []lessons.Batch) string {
	var names []string
	for _, b := range list {
		names = append(names, b.Batch)
	}
	return List(names)
}

// Processes lists the processes of batches, each once.
func Processes(list []lessons.Batch) string {
	var names []string
	for _, b := range list {
		if !slices.Contains(names, b.Process) {
			names = append(names, b.Process)
		}
	}
	return List(names)
}

// Doing says what learning does meanwhile.
var Doing = map[learn.Doing]string{learn.Fitting: "forecasts of one round of the fit,", learn.HoldingOut: "batches held out,"}

// InsideOf names the file that must hold a house block.
func InsideOf(path string) string {
	if path == "" {
		return "the file of the process" // which came from standard input
	}
	return path
}

// Verdict says whether batches that were held out came nearer by what others taught:
// where they did, and where not.
func Verdict(better, not []string) string {
	switch {
	case len(better)+len(not) == 0:
		return "The records do not allow a forecast of one batch from the others."
	case len(not) == 0:
		return "The forecast learnt from the other batches was nearer than the plain model in all of these."
	case len(better) == 0:
		return "The forecast learnt from the other batches was nearer than the plain model in none of these. Use the block with care: it may take more batches, or the difference is not one of the house."
	}
	return fmt.Sprintf("The forecast learnt from the other batches was nearer than the plain model in %s, but not in %s.", List(better), List(not))
}
