package kiln

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Fabric is what the walls of a kiln are built of.
type Fabric int

// What walls can be built of.
const (
	Brick Fabric = iota
	Metal
	Wood
	Stone
)

var fabricNames = [...]string{"brick", "metal", "wood", "stone"}

// String gives the word of it.
func (f Fabric) String() string {
	if f < 0 || int(f) >= len(fabricNames) {
		return "no wall"
	}
	return fabricNames[f]
}

// slab is one sheet of a wall.
type slab struct {
	conductivity float64 // W/(m K)
	density      float64 // kg/m³
	heat         float64 // specific heat, J/(kg K)
	thickness    float64 // m
}

// fabrics are usual walls. Conductivity, density and specific heat: brick handbook [incropera-1996],
// steel, softwood and sandstone published [iso-10456], all from memory.
// How thick they are is common practice: a wall one brick thick, sheet of a millimetre,
// boards of an inch, and quarry stone of 40 cm.
var fabrics = [...]slab{
	Brick: {conductivity: 0.72, density: 1920, heat: 835, thickness: 0.24},
	Metal: {conductivity: 50, density: 7800, heat: 450, thickness: 0.001},
	Wood:  {conductivity: 0.13, density: 500, heat: 1600, thickness: 0.025},
	Stone: {conductivity: 2.3, density: 2600, heat: 1000, thickness: 0.40},
}

// wool is what insulates a wall, on the side of the room: 5 cm of mineral wool. Its conductivity and density are
// common practice, its specific heat published [iso-10456], from memory.
var wool = slab{conductivity: 0.04, density: 50, heat: 1030, thickness: 0.05}

// wallFilm is the heat that a wall exchanges on either face with the air and what it sees
// there, W/(m² K): 1/0.13, convection and radiation together (published [iso-6946], from memory).
const wallFilm = 1 / 0.13

// Walls are those of a kiln, between its air and the room.
type Walls struct {
	Of        Fabric
	Area      float64 // m², the ceiling among it
	Insulated bool
}

func (w *Walls) check() error {
	if w == nil {
		return nil
	}
	if w.Of < 0 || int(w.Of) >= len(fabrics) {
		return errors.New("walls of nothing that is known")
	}
	return air.Within("area of the walls", w.Area, "m²", 1e-3, 1e5)
}

// slabs are the sheets of the walls, from the kiln to the room.
func (w *Walls) slabs() []slab {
	if w.Insulated {
		return []slab{fabrics[w.Of], wool}
	}
	return []slab{fabrics[w.Of]}
}

// Thickness gives that of the wall itself, m, and of the wool on it.
func (w *Walls) Thickness() (wall, insulation float64) {
	if w.Insulated {
		insulation = wool.thickness
	}
	return fabrics[w.Of].thickness, insulation
}

// Passes gives the heat that goes through the walls once they are warm, W/(m² K).
func (w *Walls) Passes() float64 {
	resistance := 2 / wallFilm
	for _, s := range w.slabs() {
		resistance += s.thickness / s.conductivity
	}
	return 1 / resistance
}

// Holds gives the heat that the walls hold, each part as warm as its neighbours, J/(m² K).
func (w *Walls) Holds() float64 {
	sum := 0.0
	for _, s := range w.slabs() {
		sum += s.thickness * s.density * s.heat
	}
	return sum
}

const (
	// wallSides is how many times its side a kiln is high, and wallHighest the most, m,
	// from the floor under the fire to the ceiling (common practice: a cupboard of half
	// a square metre is a metre high, a kiln of one floor four).
	wallSides   = 1.5
	wallHighest = 4.0

	// traySpace is how far apart trays lie in a cabinet, cabinetRest the height of what else is in it, heater and
	// fan, and trayNarrow the side of the smallest tray, m (common practice).
	traySpace   = 0.08
	cabinetRest = 0.3
	trayNarrow  = 0.45
)

// WallsAround gives the area of the four walls and the ceiling of a kiln whose bed has an area,
// m², taken to be square, and how high they are taken to be, m.
func WallsAround(bed float64) (area, height float64) {
	side := math.Sqrt(bed)
	height = min(wallSides*side, wallHighest)
	return 4*side*height + bed, height
}

// CabinetAround gives the same of a cabinet in which trays of an area lie one above the other: it is as much higher
// than wide, and so wide, b, that they go in, b²·(1.5·b − 0.3 m)/0.08 m = area.
func CabinetAround(trays float64) (area, height float64) {
	if trays <= trayNarrow*trayNarrow {
		return WallsAround(trays)
	}
	side := root(trayNarrow, math.Sqrt(trays), trayNarrow, 2*trayNarrow/traySpace, 1e-6, func(b float64) float64 {
		return b*b*(wallSides*b-cabinetRest)/traySpace - trays
	})
	return WallsAround(side * side)
}
