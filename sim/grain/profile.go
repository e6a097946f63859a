package grain

import (
	"fmt"
	"strings"

	"maltwright/sim/drying"
)

// Profile is the physical character of one species. Every field is a plain
// value, so a profile is copied with an assignment and a house may change its
// own copy. The standing of each figure stands beside it in the species' file.
type Profile struct {
	// Name is the species' word in the language, lower case.
	Name string

	// BulkDensity is that of the dry, poured grain as received, kg/m³.
	BulkDensity float64
	// KernelWeight is the usual weight of a thousand kernels, kg.
	KernelWeight float64

	// HuskWater and FilmWater are the most that husk and surface hold, kg of
	// water per kg of dry matter.
	HuskWater, FilmWater float64
	// CoreWater is the most that the core drinks beyond what it holds in store, kg of
	// water per kg of dry matter: 1/k2 of Peleg's law.
	CoreWater float64
	// Uptake is the speed at which the core drinks at 15 °C, against barley = 1, for
	// kernels of the usual weight; UptakeEnergy is its activation energy, J/mol.
	Uptake, UptakeEnergy float64
	// LeachPool is the share of the dry matter that water can wash out.
	LeachPool float64

	// Drowns is how long, s, kernels bear it on end to have no oxygen in water.
	Drowns float64

	// DryStop and MoistFull are the moistures, wet basis, at which growth stops
	// and at which it runs at its full speed.
	DryStop, MoistFull float64
	// WakeEarly is how much lower both stand for a kernel that has yet to chit.
	WakeEarly float64
	// BaseT, BestT and CeilingT are the temperatures, °C, at which growth
	// starts, is fastest, and has stopped again.
	BaseT, BestT, CeilingT float64
	// Germinates lists the share of sound kernels that germinates at a steady
	// temperature, in rising order of temperature.
	Germinates [6]Germinates

	// Chit is the clock, °C·h above BaseT, at which half the kernels show a chit;
	// ChitSpread is σ_c, the log-normal spread between kernels.
	Chit, ChitSpread float64
	// Marks is the further clock, °C·h, at which the acrospire of the middle
	// kernel reaches a quarter, a half, three quarters and the whole of the kernel.
	Marks [4]float64
	// MarkSpread is σ_a, the log-normal spread of that growth between kernels.
	MarkSpread float64

	// RespirationT is the temperature, °C, for which Respiration holds.
	RespirationT float64
	// Respiration is the dry matter lost in each of six equal shares of the
	// growth up to a full acrospire and a little beyond, per day, as a share of
	// the first dry matter.
	Respiration [6]float64

	// RootletShare is the share of the dry matter in rootlets (and in shoots,
	// where they are taken off with them) at full growth.
	RootletShare float64
	// Malt is how the malt of the species dries, in a house like any other. Its
	// Shift is what the equilibrium moisture stands above that of barley.
	Malt drying.Malt
}

// Germinates is one point of the curve of final germination.
type Germinates struct {
	T     float64 // steady temperature, °C
	Share float64 // of sound kernels, 0 to 1
}

// profiles is never written to; Of hands out copies.
var profiles = [...]Profile{
	barley(), dries(wheat()), dries(rye()), dries(oats()), dries(sorghum()), dries(millet()), dries(maize()), dries(buckwheat()), dries(spelt()), dries(triticale()),
}

// Of returns the profile of the species with that name. An unknown name is an
// error that lists the known ones.
func Of(name string) (Profile, error) {
	for i := range profiles {
		if profiles[i].Name == name {
			return profiles[i], nil
		}
	}
	return Profile{}, fmt.Errorf("grain %q is not known; known are %s", name, strings.Join(Names(), ", "))
}

// Names lists the species in the order of the table.
func Names() []string {
	names := make([]string, len(profiles))
	for i := range profiles {
		names[i] = profiles[i].Name
	}
	return names
}
