package follow

import "sync"

// reporting gives what each job calls when it is done.
func (d *drawing) reporting(total int) func() {
	if d.o.Progress == nil {
		return func() {}
	}
	var lock sync.Mutex
	done := 0
	return func() {
		lock.Lock()
		defer lock.Unlock()
		done++
		d.o.Progress(done, total)
	}
}
