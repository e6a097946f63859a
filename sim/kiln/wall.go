package kiln

import "math"

// A wall is a chain of cells from the air of the kiln to the room, through which heat is
// conducted: thin ones at the face that the kiln warms, where an hour's warmth gets no farther
// than a few centimetres, and each next one 1.6 times as thick. Six of them are a brick wall, and follow it
// to a fiftieth of the heat that it takes up, from an hour to a day (wall_test.go).
//
// Over an implicit stage the chain is eliminated from the room to the kiln. What is left is
// one conductance to one temperature, which the search for air-on can ask at no cost.

const (
	wallCells = 10

	// firstCell is the thickness of the cell at the warmed face over the depth that an
	// hour's warmth reaches, √(a·1 h), and cellGrowth how much thicker the next one is
	// (numerical).
	firstCell  = 0.25
	cellGrowth = 1.6
)

// chain is how a wall is built, per m² of it.
type chain struct {
	n        int
	capacity [wallCells]float64     // of the cells, J/(m² K)
	passes   [wallCells + 1]float64 // W/(m² K): air to the first cell, each to the next, the last to the room
}

// newChain cuts slabs into cells.
func newChain(slabs []slab) *chain {
	c := new(chain)
	resistance := 1 / wallFilm // from the middle of the last cell on
	for _, s := range slabs {
		for _, thick := range cells(s, wallCells-c.n) {
			c.capacity[c.n] = thick * s.density * s.heat
			c.passes[c.n] = 1 / (resistance + thick/2/s.conductivity)
			resistance = thick / 2 / s.conductivity
			c.n++
		}
	}
	c.passes[c.n] = 1 / (resistance + 1/wallFilm)
	return c
}

// cells are the thicknesses into which a slab is cut, m, at most so many.
func cells(s slab, most int) []float64 {
	first := firstCell * math.Sqrt(s.conductivity/(s.density*s.heat)*3600)
	var thick []float64
	sum := 0.0
	for at := first; len(thick) < most && sum < s.thickness; at *= cellGrowth {
		thick = append(thick, at)
		sum += at
	}
	for i := range thick {
		thick[i] *= s.thickness / sum
	}
	return thick
}

// wall is a part of the walls with the warmth in it.
type wall struct {
	*chain
	area  float64 // m² for each m² of bed
	room  float64 // °C
	t     [wallCells]float64
	ref   [wallCells]float64 // where an implicit stage starts from
	rates [stageCount][wallCells]float64

	// over the stage: what the wall takes is conductance·(air − against), W for each m² of bed
	conductance, against float64
	base, share          [wallCells]float64 // cell = base + share·(the one before it)
}

func newWall(of *chain, area, room float64) wall {
	w := wall{chain: of, area: area, room: room}
	for i := range w.t {
		w.t[i] = room
	}
	return w
}

// prepare eliminates the cells for a stage of a seconds; nil for the moment as it is.
func (w *wall) prepare(a float64) {
	base, share := w.room, 0.0
	for i := w.n - 1; i >= 0; i-- {
		whole := w.capacity[i] + a*(w.passes[i]+w.passes[i+1]*(1-share))
		base = (w.capacity[i]*w.ref[i] + a*w.passes[i+1]*base) / whole
		share = a * w.passes[i] / whole
		w.base[i], w.share[i] = base, share
	}
	w.conductance = w.area * w.passes[0] * (1 - share)
	w.against = base / (1 - share)
}

// settle leaves the rates of the cells in their slot, beside air of t °C, and gives what
// passes into the wall and out of it to the room, W for each m² of bed.
func (w *wall) settle(t float64, slot int) (taken, lost float64) {
	before, flux := t, 0.0
	for i := range w.n {
		at := w.base[i] + w.share[i]*before
		next := w.passes[i] * (before - at)
		if i == 0 {
			taken = w.area * next
		} else {
			w.rates[slot][i-1] = (flux - next) / w.capacity[i-1]
		}
		before, flux = at, next
	}
	out := w.passes[w.n] * (before - w.room)
	w.rates[slot][w.n-1] = (flux - out) / w.capacity[w.n-1]
	return taken, w.area * out
}

// refer sets where the second stage of a step of dt seconds starts from, or the third, by
// the weights of the stages before.
func (w *wall) refer(dt float64, weights ...float64) {
	w.ref = w.t
	for slot, weight := range weights {
		for i := range w.n {
			w.ref[i] += dt * weight * w.rates[slot][i]
		}
	}
}

// accept moves the wall to the end of a step.
func (w *wall) accept(dt float64) {
	w.refer(dt, weights[:]...)
	w.t = w.ref
	w.rates[0] = w.rates[stageCount-1]
}

// miss gives the largest error of a step over the tolerance of the malt's temperature, damped
// as the implicit stages damp it.
func (w *wall) miss(dt float64) float64 {
	worst := 0.0
	for i := range w.n {
		c := missWeights[0]*w.rates[0][i] + missWeights[1]*w.rates[1][i] + missWeights[2]*w.rates[2][i]
		damped := 1 + dt*diagonal*(w.passes[i]+w.passes[i+1])/w.capacity[i]
		worst = max(worst, math.Abs(dt*c)/damped/temperatureTolerance)
	}
	return worst
}

// holds gives the heat in the wall above that of the room, J for each m² of bed.
func (w *wall) holds() float64 {
	sum := 0.0
	for i := range w.n {
		sum += w.capacity[i] * (w.t[i] - w.room)
	}
	return w.area * sum
}
