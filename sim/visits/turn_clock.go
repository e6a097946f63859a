package visits

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// turnTimes lists when a piece is turned that was spread or turned last at a time: at even
// intervals, or at times of day. What is turned more often than hourly a machine turns.
func (l *lister) turnTimes(piece *model.Piece, last, to float64) (list []float64) {
	if piece.Turn.SI < byMachine {
		return nil
	}
	for when := forecast.NextTurn(piece, l.f.Begun, last); when < to; when = forecast.NextTurn(piece, l.f.Begun, when) {
		list = append(list, when)
	}
	return list
}

// wall is the time of day of the i-th turn at times of day, whenever the batch begins; nil for
// one at an even interval. Where the beginning is not known they follow one another.
func (l *lister) wall(piece *model.Piece, when float64, i int) *int {
	if piece.TurnAt == nil {
		return nil
	}
	second := piece.TurnAt.At[i%len(piece.TurnAt.At)]
	if !l.f.Begun.IsZero() {
		second = From(l.f.Begun)(when).Second
	}
	return &second
}

// wall is the time of day at which a task is, whenever the batch begins.
func (t Task) wall() *int { return t.Wall }

// wall is the time of day of a visit of which all tasks stand at the clock.
func (v Visit) wall() *int {
	for _, t := range v.Tasks {
		if t.Wall == nil && t.Kind != Look {
			return nil
		}
	}
	return v.Tasks[0].Wall
}
