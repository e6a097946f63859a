package pneumatic

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// T is the mean temperature of the bed, °C: that of its heat. It is not a number
// in a Bed that New did not make.
func (b *Bed) T() float64 {
	capacity := 0.0
	for i := range b.inUse() {
		capacity += b.capacityOf(&b.layers[i])
	}
	return b.heat() / capacity
}

// Warmest is the temperature of the warmest layer now, °C.
func (b *Bed) Warmest() float64 {
	t := math.Inf(-1)
	for i := range b.inUse() {
		t = math.Max(t, b.tOf(&b.layers[i]))
	}
	return t
}

// Coldest is the temperature of the coldest layer now, °C.
func (b *Bed) Coldest() float64 {
	t := math.Inf(1)
	for i := range b.inUse() {
		t = math.Min(t, b.tOf(&b.layers[i]))
	}
	return t
}

// Highest is the highest temperature of any layer so far, °C, as seen at the
// steps taken, some minutes apart.
func (b *Bed) Highest() float64 { return b.hottest }

// Pace is the speed of the growth clock were the whole bed at t °C and had all the oxygen that it
// wants, °C·h for each second.
func (b *Bed) Pace(t float64) float64 {
	return b.lot.ClockSpeed(b.Clock(), t, b.Moisture(), 1-b.debt()) / hour
}

// Layer is one layer of the bed.
type Layer struct {
	T        float64 // °C
	Moisture float64 // wet basis, kg of water per kg of malt
}

// Layers appends the layers, from air-on to air-off, to dst and returns it.
func (b *Bed) Layers(dst []Layer) []Layer {
	for i := range b.inUse() {
		dst = append(dst, b.layer(i))
	}
	return dst
}

func (b *Bed) layer(i int) Layer {
	l := &b.layers[i]
	return Layer{T: b.tOf(l), Moisture: l.water / (l.water + b.dryOf(l))}
}

// At is the bed at a share of its depth, from 0 where the air comes on to 1 where
// it goes off: straight lines between the middles of the layers. Shares outside
// are taken as those ends.
func (b *Bed) At(share float64) Layer {
	at := share*float64(b.count) - 0.5
	if !(at > 0) {
		return b.layer(0)
	}
	i := min(int(at), b.count-1)
	low := b.layer(i)
	if i == b.count-1 {
		return low
	}
	high, part := b.layer(i+1), at-float64(i)
	return Layer{T: low.T + part*(high.T-low.T), Moisture: low.Moisture + part*(high.Moisture-low.Moisture)}
}

func (b *Bed) heat() float64 {
	sum := 0.0
	for i := range b.inUse() {
		sum += b.layers[i].heat
	}
	return sum
}

func (b *Bed) water() float64 {
	sum := 0.0
	for i := range b.inUse() {
		sum += b.layers[i].water
	}
	return sum
}

func (b *Bed) respired() float64 {
	sum := 0.0
	for i := range b.inUse() {
		sum += b.layers[i].respired
	}
	return sum
}

// DryMatter is the dry matter left, kg.
func (b *Bed) DryMatter() float64 { return b.dryAtFirst*float64(b.count) - b.respired() }

// X is the mean moisture, kg of water per kg of dry matter left.
func (b *Bed) X() float64 { return b.water() / b.DryMatter() }

// Moisture is the mean moisture on the wet basis, kg of water per kg of malt.
func (b *Bed) Moisture() float64 { return b.water() / b.Mass() }

// Mass is the weight of the bed, kg.
func (b *Bed) Mass() float64 { return b.DryMatter() + b.water() }

// Depth is the depth of the bed, m.
func (b *Bed) Depth() float64 { return b.lot.BedVolume(b.X(), b.Clock()) / b.vessel.Area }

// Clock is the mean growth clock, °C·h.
func (b *Bed) Clock() float64 {
	sum := 0.0
	for i := range b.inUse() {
		sum += b.layers[i].clock
	}
	return sum / float64(b.count)
}

// Chitted is the share of all kernels that have chitted.
func (b *Bed) Chitted() float64 {
	sum := 0.0
	for i := range b.inUse() {
		sum += b.layers[i].chitted
	}
	return sum / float64(b.count)
}

// debt is the mean of what the kernels owe; see [grain.Lot.DebtRate].
func (b *Bed) debt() float64 {
	sum := 0.0
	for i := range b.inUse() {
		sum += b.layers[i].debt
	}
	return sum / float64(b.count)
}

// Acrospire is the acrospire of a kernel of mean growth, as a share of the kernel.
func (b *Bed) Acrospire() float64 { return b.lot.Profile.Acrospire(b.Clock()) }

// Modification is the modification index of mean growth, 0 to 1.
func (b *Bed) Modification() float64 { return b.lot.Profile.Modification(b.Clock()) }

// Rub is the word the rub test would give.
func (b *Bed) Rub() grain.Rub { return grain.RubAt(b.Modification()) }

// CO2 is the carbon dioxide given off since the grain was raw, kg.
func (b *Bed) CO2() float64 { return grain.StarchCO2 * b.respired() }

// Age is the time in this vessel, s.
func (b *Bed) Age() float64 { return b.age }

// Turns is the number of turns so far.
func (b *Bed) Turns() int { return b.turns }

// SinceTurn is the time since the last turn, or since New, s.
func (b *Bed) SinceTurn() float64 { return b.sinceTurn }

// LongestUnturned is the longest time between two turns so far, the running one
// counted, s.
func (b *Bed) LongestUnturned() float64 { return max(b.longest, b.sinceTurn) }

// Batch is the grain as it would be taken out of the vessel now.
func (b *Bed) Batch() grain.Batch {
	return grain.Batch{
		Lot: b.lot, Dry: b.DryMatter(), Water: b.water(), Leached: b.leached,
		Respired: b.respired(), Clock: b.Clock(), Chitted: b.Chitted(), Debt: b.debt(),
	}
}

// Draught is the air through the bed in the last step. While the fan stands its
// flow is nil and what belongs to the air is not a number.
type Draught struct {
	Flow    float64   // m³/s at air-on
	Asked   float64   // air-on asked for, °C
	On, Off air.State // before and behind the bed
	OnRH    float64   // relative humidity, 0 to 1
	Short   float64   // power that cooler or heater lack for Asked, W
	CO2     float64   // share in the exhaust by volume, above that of fresh air
	Heat    float64   // of respiration, W
}

// carbonDioxide is its density, kg/m³, at 15 °C and 101,325 Pa: published, the
// ideal gas of 44.01 g/mol.
const carbonDioxide = 1.86

// Draught looks at the air.
func (b *Bed) Draught() Draught {
	f := &b.now
	d := Draught{Heat: grain.StarchHeat * f.burn}
	if f.g == 0 {
		nan := math.NaN()
		none := air.State{T: nan, W: nan, P: nan}
		d.Asked, d.On, d.Off, d.OnRH, d.Short, d.CO2 = nan, none, none, nan, nan, nan
		return d
	}
	d.Flow, d.Asked, d.On, d.Off, d.OnRH, d.Short = f.volume, f.asked, f.on, f.off, f.on.RH(), f.short
	d.CO2 = grain.StarchCO2 * f.burn / carbonDioxide / (f.volume * (1 - f.back))
	return d
}
