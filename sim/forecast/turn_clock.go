package forecast

import (
	"math"
	"time"

	"maltwright/lang/model"
)

// lately is how long a piece that was spread or turned need not be turned again, however
// soon its time of day comes, s (common practice).
const lately = 3600.0

// NextTurn gives when a piece is to be turned next that was spread or turned at a time, s
// from the first soak, of a batch that began at another; the zero time where that is not
// known. It is infinite where it is not turned.
//
// What is turned at times of day stands at the clock where the beginning is known, and
// comes after even times of the same number a day where it is not.
func NextTurn(p *model.Piece, begun time.Time, last float64) float64 {
	switch {
	case p.Turn == nil:
		return math.Inf(1)
	case p.TurnAt == nil || begun.IsZero():
		return last + p.Turn.SI
	}
	return timeOfDay(p.TurnAt, begun, last+lately)
}

// timeOfDay is the first of the times of day after a time, s from the beginning.
func timeOfDay(of *model.Daily, begun time.Time, after float64) float64 {
	y, m, d := begun.Add(time.Duration(math.Floor(after)) * time.Second).Date()
	for day := 0; ; day++ {
		for _, second := range of.At {
			at := time.Date(y, m, d+day, 0, 0, second, 0, begun.Location()).Sub(begun).Seconds()
			if at > after {
				return at
			}
		}
	}
}

// byClock has the turns of a piece stand at the clock, from the time on, s from the first
// soak, at which it was spread.
func (r *run) byClock(piece *model.Piece, due *tick) {
	if piece.TurnAt == nil {
		return
	}
	if r.o.Begun.IsZero() {
		r.assume(EvenTurns{*piece.Turn, piece.TurnAt.Place().Text()})
		return
	}
	at := NextTurn(piece, r.o.Begun, r.clock)
	due.next = at - r.clock
	r.turnsOn(piece, due, at)
}

// turnsOn has a tick whose next time is at, s from the first soak, go on by the clock.
func (r *run) turnsOn(piece *model.Piece, due *tick, at float64) {
	due.again = func(from *float64) float64 {
		if from != nil {
			at = *from
		}
		was := at
		at = NextTurn(piece, r.o.Begun, at)
		return at - was
	}
	due.afresh = func() *tick {
		own := &tick{do: due.do}
		r.turnsOn(piece, own, at)
		return own
	}
}
