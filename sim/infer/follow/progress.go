package follow

import "sync"

// reporting gives what each job calls when it is done.
func (d *drawing) reporting(before, more int) func() {
	if d.o.Progress == nil {
		return func() {}
	}
	var lock sync.Mutex
	done := before
	return func() {
		lock.Lock()
		defer lock.Unlock()
		done++
		d.o.Progress(done, before+more)
	}
}
