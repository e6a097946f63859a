package germinate

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

const (
	// settleTime, s: the least time in which a profile of temperature forms
	// over the depth; calibrated; it tells in beds under some 5 cm only, whose
	// excess is small.
	settleTime = 1800.0
	// liftBand, of wet-basis moisture: a piece so much wetter than it is kept is open.
	// Calibrated to a piece on a floor that keeps its moisture within a point, as what
	// it breathes makes good what dries (common practice).
	liftBand = 0.005

	hour = 3600.0
)

// flows is what goes on in the bed at one moment.
type flows struct {
	capacity float64 // J/K
	burn     float64 // dry matter respired, kg/s
	dry      float64 // water evaporated, kg/s
	warmth   float64 // °C, mean
	loss     float64 // W, to the room and with the vapour
	half     float64 // half the depth, m
	settle   float64 // time in which the profile forms, s
	d        vector  // rates per second, with nothing held
}

// shutIn is what the air under a cover holds against a face of t °C of a piece of moisture
// w, kg/(m² s): it has the warmth of the face, and differs by its humidity alone.
func (p *Piece) shutIn(room *Room, face *grain.Face, t, w float64) float64 {
	cover := room.Cover
	if room.Lifts {
		cover *= 1 - min(1, max(0, (w-p.kept)/liftBand))
	}
	if cover == 0 {
		return 0
	}
	return cover * face.Evaporation(t, room.RH)
}

// flow gives the flows of the state y toward the face.
//
// Both faces lose heat: q = h·(T_face − T_room), T_face = T − ⅔·ΔT for a
// parabola of excess ΔT. In a steady bed ΔT = q·L/(2λ), L half the depth; ΔT
// moves there with the time constant L²/(π²α), the slowest of a slab. The open
// face (both on a mesh) gives off what [grain.Face.Gives] says of a layer short of
// the deficit D: dD/dt = evaporation − D/6 h. Under a cover the air has the warmth of
// the face, and differs by its humidity alone. Growth and burning go by one access, the
// share of the kernels that oxygen reaches from the open faces, see [grain.StillAccess], and
// are the less for what the kernels owe.
func (p *Piece) flow(y *vector, room *Room, face *grain.Face) flows {
	var f flows
	dry, water := p.dry(y), p.water(y)
	x := water / dry
	w := water / (water + dry)
	f.capacity = p.dryHeat*dry + air.WaterHeat*water
	f.warmth = y[heat] / f.capacity

	faceT := f.warmth - y[excess]*2/3
	area := p.dryingArea()
	kernels := p.solid.kernels.Of(p.faceLayer(dry))
	flux, _ := face.Gives(&kernels, p.faceX(x, dry, y[deficit]), faceT, p.shutIn(room, face, faceT, w))
	q := face.Conductance() * (faceT - face.RoomT())
	f.dry = flux * area
	volume := p.lot.BedVolume(x, y[clock])
	free := 1 - y[debt]
	f.burn = p.lot.DryMass * p.lot.RespirationSpeed(y[clock], f.warmth, w, free)
	access := grain.StillAccess(grain.StarchO2*f.burn/volume, volume/area)
	f.burn *= access
	latent := air.VapourEnthalpy(faceT)
	sides := 2 * p.floor.Area
	f.loss = q*sides + latent*f.dry

	f.half = volume / sides
	f.settle = settleTime + f.half*f.half*f.capacity/(volume*p.solid.packing.Conductivity*math.Pi*math.Pi)
	steady := f.loss / sides * f.half / (2 * p.solid.packing.Conductivity)
	f.d[heat] = grain.StarchHeat*f.burn - f.loss
	f.d[excess] = (steady - y[excess]) / f.settle
	f.d[deficit] = flux - y[deficit]/grain.SupplyTime
	f.d[respired] = f.burn
	f.d[dried] = f.dry
	f.d[clock] = p.lot.ClockSpeed(y[clock], f.warmth, w, access*free) / hour
	f.d[debt] = p.lot.DebtRate(y[debt], y[clock], w, 1-access)
	f.d[lost] = q * sides
	f.d[vapour] = latent * f.dry
	return f
}

// faceX is the moisture of the layer at the open face, kg/kg dry basis.
func (p *Piece) faceX(x, dry, deficit float64) float64 {
	return max(0, x-deficit/p.faceLayer(dry))
}

// faceLayer is the dry matter of that layer, kg/m²: all there is in a thin bed.
func (p *Piece) faceLayer(dry float64) float64 {
	return min(p.solid.packing.Exposed, dry/p.dryingArea())
}

// dryingArea is the area that evaporates, m².
func (p *Piece) dryingArea() float64 {
	if p.floor.Mesh {
		return 2 * p.floor.Area
	}
	return p.floor.Area
}
