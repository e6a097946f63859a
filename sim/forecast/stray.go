package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/sim/germinate"
	"maltwright/sim/pneumatic"
)

// strayed is how far a bed was out of the band that its holds asked for.
type strayed struct {
	cold, warm stray

	grown, would float64 // °C·h of growth: under holds of the bed, and what it had been in the band
	took         float64 // s under holds of the bed
}

// stray is the time on one side of the band.
type stray struct {
	seconds, degrees float64 // s, and K·s of the whole bed from the edge
	since            float64 // s from when it was spread out, when it first left the band
	off, farthest    float64 // K·s from the edge of what a thermometer shows, and K at the most
	sum              float64 // °C·s of what a thermometer shows: of the middle above the band, else of the whole
	most             float64 // °C, farthest from the band by the same
	away             float64 // K, how far the whole bed was
	room             float64 // °C of the room then
	want             float64 // W of a heater or a cooler that would have kept it at the edge, at most
	asked            *model.Temperature
	led              bool // asked is where it is led from
}

const (
	strayFrom = 1.0           // K: what is nearer to its band counts as in it, as two thermometers may differ
	strayMost = 48.0 * 3600.0 // K·s: a kelvin for two days, by which a bed may stray before it is told of
)

// strayBy notes where the bed was for dt seconds, t °C and in its middle core °C in the mean,
// in which its growth clock gained so much.
func (m *growModel) strayBy(dt, gained, t, core float64) {
	if m.asked == nil {
		return
	}
	s := &m.strayed
	s.took += dt
	s.grown += gained
	switch {
	case t < m.band.Low-strayFrom:
		s.would += m.piece.Pace(m.band.Low) * dt
		s.cold.add(m, dt, m.band.Low, t, t)
	case t > m.band.High+strayFrom:
		s.would += m.piece.Pace(m.band.High) * dt
		s.warm.add(m, dt, m.band.High, t, core)
	default:
		s.would += gained
	}
}

// add notes dt seconds out of the band, in which the bed is at t °C and a thermometer shows
// so many.
func (s *stray) add(m *growModel, dt, edge, t, shown float64) {
	away := math.Abs(t - edge)
	if s.seconds == 0 {
		s.since = m.piece.Age() - dt
	}
	s.seconds += dt
	s.degrees += away * dt
	s.sum += shown * dt
	s.off += math.Abs(shown-edge) * dt
	s.farthest = max(s.farthest, math.Abs(shown-edge))
	if s.asked == nil || away > s.away {
		s.most, s.away, s.room, s.asked, s.led = shown, away, m.room.T, m.asked, m.ramp != nil
	}
	if want, err := m.piece.Want(edge, m.room); err == nil {
		s.want = max(s.want, want, -want)
	}
}

// later is by how much longer the growth took than in the band, s; below nil, sooner.
func (s *strayed) later() float64 {
	if s.would == 0 {
		return 0
	}
	return s.took * (1 - s.grown/s.would)
}

// strays tells of a bed that kept out of its band.
func (r *run) strays(m *growModel) {
	for _, side := range []struct {
		*stray
		cold  bool
		power float64
	}{{&m.strayed.cold, true, m.room.Heater}, {&m.strayed.warm, false, m.room.Cooler}} {
		if side.degrees < strayMost {
			continue
		}
		r.trouble(BedOff{
			Met: r.meets(side.asked.Place), Cold: side.cold, Asked: side.asked, Led: side.leading(), Room: side.room,
			Mean: side.sum / side.seconds, Most: side.most, Time: side.seconds, Later: m.strayed.later(),
			Power: side.power, Wants: side.want,
		})
	}
}

// leading is how far a bed that is led was off its line; nil for one that is not.
func (s *stray) leading() *Leading {
	if !s.led {
		return nil
	}
	return &Leading{Since: s.since, Mean: s.off / s.seconds, Most: s.farthest}
}

// brokeOff tells what is known of a bed with which the forecast ends.
func (r *run) brokeOff(m growing, err error) {
	switch m := m.(type) {
	case *growModel:
		r.strays(m)
		if germinate.Frozen(err) {
			r.trouble(BedFrozen{r.meets(r.at), m.room.T})
		}
	case *boxModel:
		if pneumatic.Frozen(err) {
			r.trouble(BedFrozen{r.meets(r.at), m.still.Room.T})
		}
	}
}
