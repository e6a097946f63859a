package pneumatic

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// stand settles a stage while the fan stands: conduction between the layers, and
// both faces to the room. Neighbours answer to each other, so that the layers are
// solved together, forward and back.
func (s *stage) stand() {
	n := s.b.count
	link := s.b.packing.Conductivity * s.b.vessel.Area / (s.depth / float64(n)) // W/K between two layers
	under := s.closedFace(&s.at[0], 2*link)
	upper := s.upper()
	over := s.openFace(&s.face, &s.at[n-1], upper.x, 2*link)
	var own [MostLayers]rate
	var t, diagonal, kappa [MostLayers]float64
	for i := range n {
		m := &s.at[i]
		own[i], t[i], diagonal[i] = m.own(), m.t, m.capacity/s.implicit
	}
	conduct(own[:n], t[:n], link)
	own[0].heat -= under.heat
	own[n-1].heat -= over.heat + over.latent
	s.seep(own[:n], &upper, over.water)
	diagonal[0] += under.byT
	diagonal[n-1] += over.byT + over.latentByT - air.WaterHeat*t[n-1]*over.waterByT
	for i := range n { // as in march, C·dT + T·dC is what the layer gains
		r := s.remaining(i, own[i])
		kappa[i] = r.heat - t[i]*(air.WaterHeat*r.water-s.b.dryHeat*r.burn)
	}
	solve(diagonal[:n], kappa[:n], link)
	conduct(own[:n], kappa[:n], link)
	low, top := kappa[0], kappa[n-1]
	own[0].heat -= under.byT * low
	own[n-1].heat -= (over.byT + over.latentByT) * top
	own[n-1].water -= over.waterByT * top
	s.flow = flow{
		faces:  under.heat + under.byT*low + over.heat + over.byT*top,
		vapour: over.water + over.waterByT*top,
		latent: over.latent + over.latentByT*top,
	}
	for i := range n {
		s.set(i, own[i], kappa[i])
	}
}

// conduct adds the heat that flows between neighbours, by link W/K, at their
// temperatures.
func conduct(own []rate, t []float64, link float64) {
	for i := 1; i < len(t); i++ {
		q := link * (t[i-1] - t[i])
		own[i-1].heat -= q
		own[i].heat += q
	}
}

// solve solves for what moves each layer: its diagonal, and link W/K to each
// neighbour. The right side x becomes the solution.
func solve(diagonal, x []float64, link float64) {
	n := len(x)
	for i := range n - 1 {
		diagonal[i] += link
		diagonal[i+1] += link
	}
	for i := 1; i < n; i++ {
		f := link / diagonal[i-1]
		diagonal[i] -= f * link
		x[i] += f * x[i-1]
	}
	x[n-1] /= diagonal[n-1]
	for i := n - 2; i >= 0; i-- {
		x[i] = (x[i] + link*x[i+1]) / diagonal[i]
	}
}

// facing is what a layer loses by a face, and how that answers to each kelvin of
// the layer: heat, W; water, kg/s, and the heat that goes with it, W.
type facing struct {
	heat, byT         float64
	water, waterByT   float64
	latent, latentByT float64
}

// closedFace loses heat through half the layer, half W/K, and from the face.
func (s *stage) closedFace(m *moment, half float64) facing {
	out := s.face.Conductance() * s.b.vessel.Area
	both := 1 / (1/half + 1/out)
	return facing{heat: both * (m.t - s.face.RoomT()), byT: both}
}

// openFace loses vapour as well, by [grain.Face.Gives] of kernels of the moisture x at the
// temperature of the face, which is sought by Newton's method: what comes through half the layer, half
// W/K, is what leaves.
func (s *stage) openFace(face *grain.Face, m *moment, x, half float64) facing {
	area := s.b.vessel.Area
	out := face.Conductance() * area
	kernels := s.b.kernels.Of(math.Min(s.b.packing.Exposed, m.dry*float64(s.b.count)/area))
	t := m.t
	var f facing
	var wet float64
	for n := range faceSteps {
		activity, _ := kernels.Activity(x, t)
		flux, through := face.Gives(&kernels, x, t, 0)
		wet = activity * through * face.WetConductance(t) * area
		f.water = flux * area
		f.heat, f.latent = out*(t-face.RoomT()), air.VapourEnthalpy(t)*f.water
		step := (f.heat + f.latent - half*(m.t-t)) / (out + wet + half)
		if n == faceSteps-1 || math.Abs(step) < faceNear {
			break
		}
		t -= step
	}
	share := half / (out + wet + half) // of a kelvin of the layer that comes to its face
	f.byT, f.latentByT, f.waterByT = out*share, wet*share, wet*share/air.VapourEnthalpy(t)
	return f
}

const (
	// faceSteps bring a wet face to within 1e-6 K of its balance from 30 K away, and
	// one that the kernel holds back as well.
	faceSteps = 8
	// faceNear, K: so near it counts as there.
	faceNear = 1e-6
)
