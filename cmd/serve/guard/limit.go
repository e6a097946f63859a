package guard

import (
	"sync"
	"time"
)

// buckets count what each client does. Each holds so many at most, and gets so many back in a second.
type buckets struct {
	rate, most float64

	mu sync.Mutex
	of map[string]*bucket
}

type bucket struct {
	left float64
	at   time.Time
}

// clients is how many are told apart. When there are more, those that did nothing of late are forgotten, and the rest share one bucket.
const clients = 1024

func newBuckets(rate, most float64) *buckets {
	return &buckets{rate: rate, most: most, of: map[string]*bucket{}}
}

// take takes one out of the bucket of a client, and tells whether there was one.
func (b *buckets) take(client string, now time.Time) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	own := b.filled(client, now)
	if own.left < 1 {
		return false
	}
	own.left--
	return true
}

// has tells whether there is one left.
func (b *buckets) has(client string, now time.Time) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.filled(client, now).left >= 1
}

func (b *buckets) filled(client string, now time.Time) *bucket {
	own := b.of[client]
	if own == nil {
		if len(b.of) >= clients {
			b.forget(now)
		}
		if len(b.of) >= clients {
			client = "" // of whoever is not told apart
			own = b.of[client]
		}
	}
	if own == nil {
		own = &bucket{b.most, now}
		b.of[client] = own
	}
	if passed := now.Sub(own.at).Seconds(); passed > 0 {
		own.left, own.at = min(b.most, own.left+passed*b.rate), now
	}
	return own
}

// forget leaves out those whose bucket is full again.
func (b *buckets) forget(now time.Time) {
	for client, own := range b.of {
		if own.left+now.Sub(own.at).Seconds()*b.rate >= b.most {
			delete(b.of, client)
		}
	}
}
