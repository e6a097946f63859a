package ensemble

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// Each does n jobs on so many workers, 0 for one a core, until one fails or the
// context is cancelled. The job's place says which it is, so that what comes of them
// does not depend on the order in which they are ready.
func Each(ctx context.Context, workers, n int, do func(i int) error) error {
	if workers < 1 {
		workers = runtime.GOMAXPROCS(0)
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	errs := make([]error, n)
	for range min(workers, n) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				errs[i] = do(i)
			}
		})
	}
	wait.Wait()
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
