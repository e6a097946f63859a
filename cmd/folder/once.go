package folder

import (
	"context"
	"sync"
)

// once keeps what was made, and sees to it that it is never made twice at a time: who asks for it
// while it is being made waits, as long as its context lasts.
type once[T any] struct {
	ready sync.Once
	turn  chan struct{}
	made  *T
}

// take gives what was made and is still fresh, or makes it. What is made under a context that ended
// is not kept. Fresh may be nil, for what stays as it is.
func (o *once[T]) take(ctx context.Context, fresh func(T) bool, anew func(context.Context) T) (one T, err error) {
	if err := o.lock(ctx); err != nil {
		return one, err
	}
	defer func() { <-o.turn }()
	if o.made != nil && (fresh == nil || fresh(*o.made)) {
		return *o.made, nil
	}
	one = anew(ctx)
	if ctx.Err() != nil {
		return one, ctx.Err()
	}
	o.made = &one
	return one, nil
}

// kept gives what was made, nil where nothing was, or it is being made.
func (o *once[T]) kept() *T {
	o.start()
	select {
	case o.turn <- struct{}{}:
		defer func() { <-o.turn }()
		return o.made
	default:
		return nil
	}
}

func (o *once[T]) start() { o.ready.Do(func() { o.turn = make(chan struct{}, 1) }) }

func (o *once[T]) lock(ctx context.Context) error {
	o.start()
	select {
	case o.turn <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}
