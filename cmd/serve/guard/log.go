package guard

import (
	"fmt"
	"sync"
	"time"
)

// Sparing hands on so many lines in a while, and then counts: whoever makes a guard refuse does not fill a disk or a terminal.
func Sparing(log func(string), most int, while time.Duration, clock func() time.Time) func(string) {
	var mu sync.Mutex
	var since time.Time
	said, left := 0, 0
	return func(line string) {
		mu.Lock()
		defer mu.Unlock()
		now := clock()
		if now.Sub(since) >= while {
			if left > 0 {
				log(fmt.Sprintf("%d more lines were left out", left))
			}
			since, said, left = now, 0, 0
		}
		if said++; said > most {
			left++
			return
		}
		log(line)
	}
}
