package main

import (
	"runtime"
	"sync"

	"maltwright/check"
)

// checkAll checks the inputs with a worker for each core, and gives the reports in
// the order of the inputs, whichever is done first. Of several errors the one of
// the first input counts.
func (w World) checkAll(files []input, o check.Options) ([]check.Report, error) {
	reports, errs := make([]check.Report, len(files)), make([]error, len(files))
	work, done := make(chan int), make(chan struct{})
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		workers.Go(func() {
			for i := range work {
				if o.Context == nil || o.Context.Err() == nil {
					reports[i], errs[i] = files[i].check(o)
				}
				reports[i].House = nil // a thousand houses need not be kept
				done <- struct{}{}
			}
		})
	}
	go func() {
		for i := range files {
			work <- i
		}
		close(work)
		workers.Wait()
		close(done)
	}()
	w.watch(done, len(files))
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return reports, nil
}

// fewFiles is up to how many files the seconds are shown instead of the files, each
// of which may take long.
const fewFiles = 20

// watch takes what is done until all of it is, and says on a terminal how far it is.
func (w World) watch(done <-chan struct{}, files int) {
	if files < fewFiles {
		stop := w.progress("checking")
		defer stop()
	}
	count, progress := 0, w.counter("checked")
	for range done {
		count++
		if files >= fewFiles {
			progress.say(count, files)
		}
	}
	progress.wipe()
}
