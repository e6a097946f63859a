package follow

import "sync"

// reporting gives what each job calls when it is done.
func (c *conditioning) reporting(before, more int) func() {
	if c.o.Progress == nil {
		return func() {}
	}
	var lock sync.Mutex
	done := before
	return func() {
		lock.Lock()
		defer lock.Unlock()
		done++
		c.o.Progress(done, before+more)
	}
}
