package kiln

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// warm lets a wall of the room's temperature stand beside air of t °C for so many hours, in steps
// of dt seconds, and gives the heat that it took up and lost, J/m².
func warm(w *wall, t, hours, dt float64) (taken, lost float64) {
	w.refer(0)
	w.prepare(0)
	var in, out [stageCount]float64
	in[0], out[0] = w.settle(t, 0)
	for range int(math.Round(hours * 3600 / dt)) {
		w.refer(dt, diagonal)
		w.prepare(dt * diagonal)
		in[1], out[1] = w.settle(t, 1)
		w.refer(dt, early, early)
		w.prepare(dt * diagonal)
		in[2], out[2] = w.settle(t, 2)
		for i, share := range weights {
			taken += dt * share * in[i]
			lost += dt * share * out[i]
		}
		w.accept(dt)
		in[0], out[0] = in[2], out[2]
	}
	return taken, lost
}

// The heat, J/m², that a solid without end has taken up through a film of h after t seconds in air
// that is rise K warmer than it was: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed.,
// section 2.7, the flux h·ΔT·exp(H²at)·erfc(H√(at)), integrated [carslaw-jaeger-1959].
func semiInfinite(s slab, h, rise, t float64) float64 {
	a, per := s.conductivity/(s.density*s.heat), h/s.conductivity
	x := per * math.Sqrt(a*t)
	return rise * s.conductivity * per / (per * per * a) * (math.Exp(x*x)*math.Erfc(x) - 1 + 2*x/math.Sqrt(math.Pi))
}

// Within 2 % of the heat taken up, from one hour to a day (measured: 1.6 %).
func TestThickWallFollowsTheSolidWithoutEnd(t *testing.T) {
	for _, f := range []Fabric{Brick, Stone, Wood} {
		s := fabrics[f]
		s.thickness = 5 * math.Sqrt(s.conductivity/(s.density*s.heat)*86400) // nothing comes through in a day
		for _, hours := range []float64{1, 2, 4, 8, 16, 24} {
			w := newWall(newChain([]slab{s}), 1, 15)
			taken, lost := warm(&w, 65, hours, 60)
			want := semiInfinite(s, wallFilm, 50, 3600*hours)
			t.Logf("%v, %g h: %.0f kJ/m² of %.0f, %.2f %%, %d cells", f, hours, taken/1e3, want/1e3, 100*(taken/want-1), w.n)
			assert.InEpsilon(t, want, taken, 0.02, fmt.Sprint(f, hours))
			assert.Less(t, lost, 0.01*taken, "it has no other side yet")
			assert.InEpsilon(t, taken-lost, w.holds(), 1e-9)
		}
	}
}

// fine is the same wall in slices of a thirtieth of a slab, by explicit steps: another method.
func fine(slabs []slab, rise, hours float64) (taken float64) {
	const each = 30
	var c, r []float64 // J/(m² K), m² K/W from the middle of a slice to either face of it
	for _, s := range slabs {
		for range each {
			c = append(c, s.density*s.heat*s.thickness/each)
			r = append(r, s.thickness/each/s.conductivity/2)
		}
	}
	dt := math.Inf(1)
	for i := range c {
		dt = min(dt, 0.2*c[i]*r[i])
	}
	n := int(math.Ceil(hours * 3600 / dt))
	dt = hours * 3600 / float64(n)
	t, q := make([]float64, len(c)), make([]float64, len(c)+1)
	for range n {
		q[0] = (rise - t[0]) / (1/wallFilm + r[0])
		for i := 1; i < len(c); i++ {
			q[i] = (t[i-1] - t[i]) / (r[i-1] + r[i])
		}
		q[len(c)] = t[len(c)-1] / (1/wallFilm + r[len(c)-1])
		for i := range c {
			t[i] += dt * (q[i] - q[i+1]) / c[i]
		}
		taken += dt * q[0]
	}
	return taken
}

// The walls that a kiln can have take up what walls of many slices do: within 3 % from one hour
// to a day (measured: 1.3 %, an insulated wall of wood in its first hour).
func TestUsualWallsFollowWallsOfManySlices(t *testing.T) {
	for _, w := range []Walls{{Of: Brick}, {Of: Brick, Insulated: true}, {Of: Wood}, {Of: Wood, Insulated: true}, {Of: Stone}, {Of: Stone, Insulated: true}} {
		for _, hours := range []float64{1, 6, 24} {
			part := newWall(newChain(w.slabs()), 1, 15)
			taken, _ := warm(&part, 65, hours, 60)
			want := fine(w.slabs(), 50, hours)
			t.Logf("%v, insulated %v, %g h: %.0f kJ/m² of %.0f, %.2f %%, %d cells", w.Of, w.Insulated, hours, taken/1e3, want/1e3, 100*(taken/want-1), part.n)
			assert.InEpsilon(t, want, taken, 0.03)
		}
	}
}

// Halved and halved again, steps change less than a thousandth of the heat taken up.
func TestWallDoesNotDependOnTheStep(t *testing.T) {
	for f := range fabrics {
		for _, insulated := range []bool{false, true} {
			of := Walls{Of: Fabric(f), Insulated: insulated}
			coarse, small := newWall(newChain(of.slabs()), 1, 15), newWall(newChain(of.slabs()), 1, 15)
			a, _ := warm(&coarse, 65, 6, 120)
			b, _ := warm(&small, 65, 6, 30)
			assert.InEpsilon(t, b, a, 1e-3, fmt.Sprint(of.Of, insulated))
		}
	}
}

// Once warm, as much passes as the resistances in a row let through, with 0.13 m² K/W on either
// face [iso-6946]: 1.7 W/(m² K) of a brick wall, 3.8 of sheet, 0.66 of sheet with wool.
func TestWarmWallPassesWhatItsResistancesLet(t *testing.T) {
	for want, w := range map[float64]*Walls{
		1 / (0.26 + 0.24/0.72):         {Of: Brick},
		1 / (0.26 + 0.025/0.13):        {Of: Wood},
		1 / (0.26 + 0.40/2.3):          {Of: Stone},
		1 / (0.26 + 0.001/50):          {Of: Metal},
		1 / (0.26 + 0.001/50 + 1.25):   {Of: Metal, Insulated: true},
		1 / (0.26 + 0.24/0.72 + 1.25):  {Of: Brick, Insulated: true},
		1 / (0.26 + 0.025/0.13 + 1.25): {Of: Wood, Insulated: true},
	} {
		assert.InEpsilon(t, want, w.Passes(), 1e-9)
		part := newWall(newChain(w.slabs()), 2, 15)
		warm(&part, 65, 1000, 3600)
		taken, lost := warm(&part, 65, 1, 3600)
		assert.InEpsilon(t, 2*50*want*3600, lost, 1e-3, "two square metres of it")
		assert.InEpsilon(t, taken, lost, 1e-3)
	}
}

// The chain is cut so that no cell is lost and none is thinner than it need be.
func TestCellsMakeUpTheWall(t *testing.T) {
	for f, s := range fabrics {
		for _, insulated := range []bool{false, true} {
			of := &Walls{Of: Fabric(f), Insulated: insulated}
			c := newChain(of.slabs())
			sum := 0.0
			for i := range c.n {
				sum += c.capacity[i]
			}
			assert.InEpsilon(t, of.Holds(), sum, 1e-12)
			assert.LessOrEqual(t, c.n, 10, s)
			assert.Positive(t, c.passes[c.n])
		}
	}
}
