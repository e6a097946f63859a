package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/grain"
	"maltwright/sim/kiln"
)

// Sight is the state of a batch at one time: what is to be read, counted and weighed
// then. What is not to be had in that stage is not a number.
type Sight struct {
	At       float64 // s from the first soak
	Stage    model.StageKind
	Of       model.Stage // the stage
	Step     string      // as a record names it
	Number   int
	Moisture float64 // wet basis, 0 to 1
	Weight   float64 // kg of the whole batch, drained
	Dry      float64 // kg of dry matter in it
	Lost     float64 // share of the grain's dry matter that is gone by then

	Water, Air, Bed, AirOn, AirOff, Malt float64 // °C
	Bottom, Top                          float64 // °C of a bed that air is blown through, where the air comes on and where it goes off

	Grain    float64 // °C of the grain or malt itself; of a bed its core or its mean
	Humidity float64 // relative, 0 to 1: of the room about the grain, of air-on while it is blown through a growing bed, on the kiln of air-off
	Airflow  float64 // m³/s through the bed
	CO2      float64 // kg given off by then, but for what malt gives off on the kiln
	Heat     float64 // J given to the air of the kiln by then

	Beyond  bool // the malt has been where the model ends, and what is not a number is not forecast
	OnKiln  bool
	Balance kiln.Balance // of the kiln that the malt is on, since it came onto it

	Chit         float64 // share of all kernels
	Acrospire    float64 // mean length, as a share of the kernel
	Modification float64 // 0 to 1
	Classes      grain.AcrospireClasses
	Growing      bool // the three above are to be had

	Layers []Layer // of a bed that has some, the lowest first; nil where the course does not ask for them

	lastOn, lastOff float64 // °C, of the air that a fan last blew through a growing bed
}

func unseen() Sight {
	nan := math.NaN()
	return Sight{Water: nan, Air: nan, Bed: nan, AirOn: nan, AirOff: nan, Malt: nan, Bottom: nan, Top: nan, lastOn: nan, lastOff: nan, Grain: nan, Humidity: nan, Airflow: nan,
		Chit: nan, Acrospire: nan, Modification: nan}
}

// Temperature gives that of a place as a record names it, °C, or NaN. Of a growing bed whose
// fan stands, air-on and air-off are those of when it last ran: whoever reads them has it
// running, some minutes sooner or later than the forecast.
func (s *Sight) Temperature(place string) float64 {
	switch place {
	case vocabulary.PlaceWater:
		return s.Water
	case vocabulary.PlaceAir, vocabulary.PlaceRoom:
		return s.Air
	case vocabulary.PlaceBed:
		return s.Bed
	case vocabulary.PlaceAirOn, vocabulary.PlaceOven:
		return orLast(s.AirOn, s.lastOn)
	case vocabulary.PlaceAirOff:
		return orLast(s.AirOff, s.lastOff)
	case vocabulary.PlaceMalt:
		return s.Malt
	}
	return math.NaN()
}

func orLast(now, last float64) float64 {
	if math.IsNaN(now) {
		return last
	}
	return now
}

func (s *Sight) grown(b grain.Batch) {
	s.Chit, s.Acrospire, s.Modification, s.Classes, s.Growing = b.Chitted, b.Acrospire(), b.Modification(), b.Classes(), true
	s.CO2 = b.CO2()
}

func (m *steepModel) see(s *Sight) {
	s.Dry = m.state.DryMatter()
	if m.soaked {
		s.Grain = m.warmth(m.water.T)
		s.Water = s.Grain
		if !m.state.Submerged() { // it is drawn, and the grain not in it yet
			s.Water = m.water.T
		}
	} else {
		s.Air, s.Grain, s.Humidity = m.air.T, m.warmth(m.air.T), m.air.RH
	}
	s.grown(m.state.Batch())
}

func (m *growModel) see(s *Sight) {
	s.Dry, s.Air, s.Bed = m.piece.DryMatter(), m.room.T, m.piece.CoreT()
	s.Grain, s.Humidity = s.Bed, m.room.RH
	s.grown(m.piece.Batch())
}

func (m *kilnModel) see(s *Sight) {
	v, air := m.bed.View(), m.aired().View()
	s.Dry, s.AirOn, s.AirOff, s.Malt = m.forecast(v.Ledger.DryMass), m.forecast(air.On.T), m.forecast(air.Off.T), m.forecast(v.MaltT)
	s.Grain, s.Humidity, s.Airflow = s.Malt, m.forecast(air.OffRH), air.Airflow
	s.Heat += m.forecast(v.Ledger.Heater)
	if s.Beyond = m.beyond; !m.beyond {
		s.OnKiln, s.Balance = true, m.bed.Balance()
	}
}

func (s still) see(into *Sight) {
	into.Dry, into.Beyond = s.dry, math.IsNaN(s.dry)
	if s.cleaned {
		into.Dry -= s.rootlets
	}
}
