package main

import (
	"runtime"
	"sync"

	"maltwright/check"
	"maltwright/cmd/answer/outlook"
)

// checkAll checks the inputs with a worker for each core, and gives the reports in
// the order of the inputs, whichever is done first. Of several errors the one of
// the first input counts.
func (w World) checkAll(files []input, o check.Options) ([]report, error) {
	reports, errs := make([]report, len(files)), make([]error, len(files))
	work, done := make(chan int), make(chan struct{})
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		workers.Go(func() {
			for i := range work {
				if o.Context == nil || o.Context.Err() == nil {
					reports[i].Report, errs[i] = files[i].check(o)
				}
				reports[i].release()
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

// report is what a check found, and what can hurt somebody in the processes of the file.
type report struct {
	check.Report
	cautions []outlook.Caution
}

// release keeps of a house what is told of it: a thousand houses need not be kept.
func (r *report) release() {
	if r.House == nil {
		return
	}
	for _, p := range r.House.Processes {
		r.cautions = append(r.cautions, outlook.CautionsOf(p)...)
	}
	r.House = nil
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
