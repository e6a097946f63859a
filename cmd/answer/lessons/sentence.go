package lessons

import "maltwright/sim/infer/learn"

// Reason is why a batch could not be used.
type Reason struct{ Of error }

// Told marks it as put into words.
func (Reason) Told() {}

// Side is one of two figures that the readings hardly tell apart.
type Side learn.Side

// Told marks it as put into words.
func (Side) Told() {}
