package records

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// together is how far two weights of one moment may lie apart, of the heavier: what drips off meanwhile, and where a
// scale stands a little out of level.
const together = 0.01

// moment is what of two weights can only be one and the same grain.
type moment struct {
	kind       string
	number     int
	minute     int64
	bag, clean bool
}

// contradict finds two weights of the same step and minute of which one must be wrong. Grain that is shared out
// among several vessels is weighed in each.
func (r *record) contradict() {
	seen := map[moment]int{}
	for i, y := range r.batch.Readings {
		x, ok := y.(*model.Weighed)
		if !ok || x.After == nil || x.When().IsZero() {
			continue
		}
		at := moment{x.After.Kind.Text, x.After.Number, x.When().Unix() / 60, x.OfBag, x.Clean}
		k, known := seen[at]
		if !known {
			seen[at] = i
			continue
		}
		was := r.batch.Readings[k].(*model.Weighed)
		one, _, _ := r.batch.Net(was)
		other, _, _ := r.batch.Net(x)
		if shared := x.In != nil && was.In != nil && x.In != was.In; shared || math.Abs(one-other) <= together*max(one, other) {
			continue
		}
		f := writtenTwice.At(x.Place(), fmt.Sprintf("%s and %s above are of the same step and minute, and contradict each other", weightWords(x), weightWords(was)))
		f.Hint = "weigh once more, look at what stood on the scale, and remove the one that is wrong"
		f.Related = []finding.Related{{Place: was.Place(), Message: "here"}}
		r.slip(i, f)
	}
}
