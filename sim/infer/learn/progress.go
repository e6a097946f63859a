package learn

import "sync"

// Doing is what takes its time.
type Doing string

// What is done, in this order.
const (
	Fitting    Doing = "fitting"     // the forecasts of one round of the fit
	HoldingOut Doing = "holding out" // batches
)

// telling passes on how many are done.
func (o Options) telling(what Doing) func(done, of int) {
	if o.Progress == nil {
		return nil
	}
	return func(done, of int) { o.Progress(what, done, of) }
}

// counting gives what each of some jobs calls when it is done.
func (o Options) counting(what Doing, of int) func() {
	if o.Progress == nil {
		return func() {}
	}
	var lock sync.Mutex
	done := 0
	return func() {
		lock.Lock()
		defer lock.Unlock()
		done++
		o.Progress(what, done, of)
	}
}
