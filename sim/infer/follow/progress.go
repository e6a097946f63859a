package follow

import "sync"

// reporting gives what each job calls when it is done.
func (c *conditioning) reporting(before, more int) func() {
	return reporter(c.o.Progress, before, more)
}

// reporter calls progress, which may be nil, each time that it is called, with how much is done.
func reporter(progress func(done, total int), before, more int) func() {
	if progress == nil {
		return func() {}
	}
	var lock sync.Mutex
	done := before
	return func() {
		lock.Lock()
		defer lock.Unlock()
		done++
		progress(done, before+more)
	}
}
