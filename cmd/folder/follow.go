package folder

import (
	"context"
	"fmt"
	"runtime/debug"
	"sync"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/shelf"
	"maltwright/sim/infer/follow"
)

// watcher follows the batches under way in the background: one at a time, on one core, each when its record
// was changed and again when time has passed. What it finds is kept until it is found anew.
type watcher struct {
	d     *Folder
	end   context.CancelFunc
	woken chan struct{}
	ended sync.WaitGroup

	mu   sync.Mutex
	kept map[ID]*followedBatch
}

// followedBatch is a batch as it was followed.
type followedBatch struct {
	of    *standing
	at    time.Time // by the clock, when it was followed
	took  time.Duration
	f     *follow.Following // nil where it could not be followed
	said  *Followed
	asOf  progress.AsOf
	until time.Time // when it is followed again, though its record stays as it is
}

const (
	wakes  = time.Minute      // between two looks of the watcher at the folder
	again  = 30 * time.Minute // behind which a batch is followed again whose record stays as it is
	spares = 40               // times as long as it took last it is left alone at least
	looks  = time.Second      // between two looks while one is being followed
)

// watch begins to follow.
func (d *Folder) watch() {
	ctx, end := context.WithCancel(context.Background())
	w := &watcher{d: d, end: end, woken: make(chan struct{}, 1), kept: map[ID]*followedBatch{}}
	d.watching = w
	w.ended.Go(func() { w.run(ctx) })
}

// wake has the watcher look at once.
func (w *watcher) wake() {
	if w == nil {
		return
	}
	select {
	case w.woken <- struct{}{}:
	default:
	}
}

// stop ends the watcher, and waits until it has ended.
func (w *watcher) stop() {
	if w != nil {
		w.end()
		w.ended.Wait()
	}
}

func (w *watcher) run(ctx context.Context) {
	tick := time.NewTicker(wakes)
	defer tick.Stop()
	for ctx.Err() == nil {
		w.round(ctx)
		select {
		case <-ctx.Done():
		case <-tick.C:
		case <-w.woken:
		}
	}
}

// round follows every batch that is to be followed.
func (w *watcher) round(ctx context.Context) {
	units, _, err := w.d.index.scan()
	if err != nil {
		return
	}
	under := map[ID]bool{}
	for _, u := range units {
		for _, s := range u.batches {
			if !s.goesOn(w.d.clerk.now()) || !s.sound() {
				continue
			}
			under[s.id] = true
			if w.due(s) && ctx.Err() == nil {
				w.follow(ctx, s)
			}
		}
	}
	w.forget(under)
}

// due tells whether a batch is to be followed: its record is another, or time has passed.
func (w *watcher) due(s *standing) bool {
	was := w.of(s.id)
	if len(s.batch.Readings) == 0 {
		return false
	}
	return was == nil || was.of != s || w.d.clerk.now().After(was.until) || w.d.clerk.now().Before(was.at)
}

// follow follows one batch. It ends when the record is changed while it runs.
func (w *watcher) follow(ctx context.Context, s *standing) {
	ctx, end := context.WithCancel(ctx)
	defer end()
	var looking sync.WaitGroup
	looking.Go(func() { w.endWhenChanged(ctx, end, s) })
	now, began := w.d.clerk.now(), time.Now()
	x := &followedBatch{of: s, at: now}
	var at time.Time
	at, x.asOf = progress.When(s.batch, now)
	f, err := w.condition(ctx, s, at)
	given := ctx.Err() != nil
	end()
	looking.Wait()
	if given {
		return
	}
	x.took = time.Since(began)
	x.until = now.Add(max(again, spares*x.took))
	if err == nil && f != nil {
		x.f, x.said = f, saidOf(s, f, at, x.asOf)
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	w.kept[s.id] = x
}

// condition follows; a fault in it ends what it follows, and not the program that shows the folder.
func (w *watcher) condition(ctx context.Context, s *standing, at time.Time) (f *follow.Following, err error) {
	defer func() {
		if r := recover(); r != nil {
			f, err = nil, &Failed{s.unit.Name, "it could not be followed", fmt.Errorf("%v\n%s", r, debug.Stack())}
		}
	}()
	o := follow.Options{Members: w.d.clerk.Members, Workers: 1}
	if w.d.clerk.Cache != "" {
		o.Shelf = shelf.In(w.d.clerk.Cache, shelf.Program())
	}
	return follow.Of(ctx, s.batch, at, o)
}

// endWhenChanged ends the following of a batch whose record is another by now.
func (w *watcher) endWhenChanged(ctx context.Context, end context.CancelFunc, s *standing) {
	tick := time.NewTicker(looks)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
			if p, err := w.d.index.find(s.id, true); err != nil || p.unit.batches[p.nth] != s {
				w.wake()
				end()
				return
			}
		}
	}
}

// of is how a batch was followed last, nil where it was not.
func (w *watcher) of(id ID) *followedBatch {
	if w == nil {
		return nil
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.kept[id]
}

// forget lets go of what is not under way any more.
func (w *watcher) forget(under map[ID]bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	for id := range w.kept {
		if !under[id] {
			delete(w.kept, id)
		}
	}
}
