package evidence

import "sync"

// telling gives what each job calls when it is done.
func (s *search) telling(of int) func() {
	if s.tell == nil {
		return func() {}
	}
	var lock sync.Mutex
	done := 0
	return func() {
		lock.Lock()
		defer lock.Unlock()
		done++
		s.tell(done, of)
	}
}
