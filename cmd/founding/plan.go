package founding

import (
	"math"

	"maltwright/check/profile"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// plan is a process as numbers that can be changed one by one: temperatures in °C, times in
// h, moistures as shares of the whole weight, weights in kg.
type plan struct {
	house   *model.House
	grain   *model.Grain
	vessels []*model.Vessel
	floor   *model.Floor
	spread  *model.Floor // where malt can wither; nil where nowhere
	kilns   []*model.Kiln
	site    *model.Site
	profile profile.Profile

	malt, name string
	turned     bool    // the dryers stand in another order than they were named in
	instead    string  // what malt is made in the place of which; "" for the one that was asked for
	need, have float64 // °C of its cure, and the hottest that there is
	asked      float64 // the charge that was asked for
	written    string  // as it was
	share      float64 // of it that is taken

	notes []string // what check finds of it in the end
	night *nights  // what falls in the night; nil while that is not known

	begin    int     // min of the day at which the first soak begins
	longest  float64 // of the soaks
	soaks    []float64
	day      float64 // from one soak to the next
	water    float64
	rest     float64
	low, bed float64 // the band of the bed
	turns    int     // a day
	goal     float64 // of the acrospire; 0 where the grain is judged by days
	days     profile.Band
	box      *blowing
	wither   *withering
	heats    []heating // one for each kiln that is used
}

// blowing is the air through the bed of a box or drum.
type blowing struct {
	air       float64 // °C at air-on
	share     float64 // of the fan's air
	held      bool    // the bed is held by the fan's own control, and no air is written
	breathes  bool    // the fan blows while the bed is warm, and a little in every hour
	sprinkled bool
}

// withering is the drying in the air of the room.
type withering struct {
	low, high float64
	to        float64 // moisture
	turn      float64
	most      float64
}

// heating is the work of one kiln.
type heating struct {
	kiln *model.Kiln
	stir float64 // h; 0 for none
	dry  []drying
	gate float64 // moisture; 0 for none
	cure *curing
}

// drying is one dry: at one temperature, or in a rise over some hours.
type drying struct {
	from, to    float64
	over        float64 // h; 0 for no rise
	until       float64 // moisture
	least, most float64 // h
	broken      bool    // until break, and not a moisture
}

type curing struct {
	at, hours, gate float64
	rise            float64 // h in which it is led up to the cure; 0 for at once
}

// still tells whether a kiln is an oven.
func still(k *model.Kiln) bool { return k.Draught.Text == vocabulary.DraughtStill }

// deep tells whether malt lies deep on a kiln: its fan blows hard.
func deep(k *model.Kiln) bool {
	return k.Airflow != nil && k.Area != nil && k.Airflow.SI*3600/k.Area.SI > 500
}

// reach is the span of temperatures that a kiln has, °C.
func reach(k *model.Kiln) (low, high float64) {
	if k.Reaches == nil {
		return 20, 100
	}
	return k.Reaches.Low.SI - quantity.ZeroCelsius, k.Reaches.High.SI - quantity.ZeroCelsius
}

// span is a range of temperatures of a site, °C.
func span(r *model.Range, low, high float64) (float64, float64) {
	if r == nil {
		return low, high
	}
	return r.Low.SI - quantity.ZeroCelsius, r.High.SI - quantity.ZeroCelsius
}

// within holds a value within two others.
func within(v, low, high float64) float64 { return max(low, min(high, v)) }

// first lays out what is usual for the grain and the malt, as far as the house can do it.
func (p *plan) first() {
	p.share = 1
	p.possible()
	p.steeping()
	p.growing()
	p.kilning()
}

// steeping takes three soaks, a day from one to the next, in water as it comes.
func (p *plan) steeping() {
	tap, most := span(siteOf(p).Water, 9, 13)
	p.water = within(min(13, p.profile.WarmWater), tap, most) // as it comes from the tap
	if p.profile.Grows.Low > 18 {
		p.water = math.Round(max(tap, p.profile.WarmWater-6))
	}
	night, noon := span(siteOf(p).Air, 10, 16)
	p.rest = math.Round(within(within((night+noon)/2, p.profile.Rest.Low+3, p.profile.Rest.High-2), night, noon)) // no warmer nor cooler than the room gets
	p.soaks, p.day = []float64{8, 8, 3}, 24
	p.longest = min(p.profile.SoakLong-1, 15)
	if p.water > p.profile.HotWater {
		p.longest = 4
	}
	p.begin, _ = upOf(p.site).begins(8*60, 3*60)
}

// growing holds the bed where the grain likes it, by the room.
func (p *plan) growing() {
	grows := p.profile.Grows
	p.low, p.bed = grows.Low+1, grows.High-1
	p.turns = 3
	p.goal = 0
	if g := p.profile.Goal(); g.Known() {
		p.goal = 0.75
		if p.profile.Malt.Name == "munich" {
			p.goal = 0.875
		}
	}
	p.days = profile.Band{Low: p.profile.GrowDays().Low, High: max(p.profile.GrowDays().High, p.profile.GrowDays().Low+2)}
	if p.floor.Airflow != nil {
		p.box = &blowing{air: p.low, share: 1}
		if night, _ := span(siteOf(p).Air, 10, 16); p.floor.Heater == nil && night < p.low {
			p.box = &blowing{air: math.Floor(night), share: 0.5, breathes: true} // the air is as cold as the room gets
		}
	}
}

// siteOf is the site of a plan, or one of which nothing is known.
func siteOf(p *plan) *model.Site {
	if p.site == nil {
		return &model.Site{}
	}
	return p.site
}

// room is the warmest and the mean air of the room, °C.
func (p *plan) room() (mean, warm float64) {
	night, noon := span(siteOf(p).Air, 10, 16)
	return (night + noon) / 2, noon
}
