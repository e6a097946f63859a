package model

import (
	"slices"
	"time"
)

// Until is the record as it was at a time: without what was read, noticed or found later. A line that does
// not say when it was stays.
func (t *Batch) Until(at time.Time) *Batch {
	then := *t
	then.Readings = slices.DeleteFunc(slices.Clone(t.Readings), func(x Reading) bool { return x.When().After(at) })
	then.Remarks = slices.DeleteFunc(slices.Clone(t.Remarks), func(x Remark) bool { return x.When().After(at) })
	then.Tested = slices.DeleteFunc(slices.Clone(t.Tested), func(x Tested) bool { return x.When().After(at) })
	return &then
}
