package serve

import (
	"context"
	"errors"
)

// turns bound how much of what costs many forecasts is made at once: a report that is asked for over and over keeps no reading from being
// written. Who comes when enough wait already is told so at once.
type turns struct{ line, at chan struct{} }

const (
	atOnce  = 2
	waiting = 6
)

var errMuch = errors.New("several reports or comparisons are being reckoned already; come again in a minute")

func newTurns() turns {
	return turns{make(chan struct{}, atOnce+waiting), make(chan struct{}, atOnce)}
}

// take waits for a turn; who has one gives it back. Errors: errMuch, and that of the context.
func (t turns) take(ctx context.Context) (back func(), err error) {
	select {
	case t.line <- struct{}{}:
	default:
		return nil, errMuch
	}
	select {
	case t.at <- struct{}{}:
		return func() { <-t.at; <-t.line }, nil
	case <-ctx.Done():
		<-t.line
		return nil, ctx.Err()
	}
}
