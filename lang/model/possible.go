package model

// Cannot is why a weight cannot be, whatever else is true of the batch.
type Cannot string

// The reasons.
const (
	OutOfBand     Cannot = "out-of-band"     // outside of what grain of that charge can weigh at all; see Net
	MoreThanGrain Cannot = "more-than-grain" // of kilned malt: more than the raw grain it is of
	MoreDry       Cannot = "more-dry"        // of kilned malt: with its tested moisture it holds more dry matter than the raw grain did
	TooMoist      Cannot = "too-moist"       // it would hold more water than grain can, though none of its dry matter were lost
)

// band is what the moisture of a lot lies between, as a share of the whole weight.
type band struct{ driest, moistest float64 }

// The bands are those of what a lot can say of its moisture: beyond them a sample cannot be
// of it.
var (
	rawGrain  = band{0.05, 0.35}
	greenMalt = band{0.25, 0.55}
	kilned    = band{0.005, 0.55} // soaked anew for caramel malt
)

// lotBand is the band of the lot of a batch.
func (t *Batch) lotBand() band {
	switch {
	case t.Process == nil:
	case t.Process.Grain.Grown():
		return greenMalt
	case t.Process.Grain.Kilned():
		return kilned
	}
	return rawGrain
}

// SampleMoisture is what the oven took off the sample, as a share of its weight. It is false
// where there is none, or one that the lot cannot have.
func (t *Batch) SampleMoisture() (w float64, can bool) {
	s, b := t.Sample, t.lotBand()
	if s == nil || !(s.Wet.SI > 0) {
		return 0, false
	}
	w = 1 - s.Dry.SI/s.Wet.SI
	return w, w >= b.driest && w <= b.moistest
}

// driest is the least moisture that the lot of a batch can have had: by its sample, else by
// what the lot says.
func (t *Batch) driest() float64 {
	if w, can := t.SampleMoisture(); can {
		return w
	}
	if p := t.Process; p != nil && p.Grain != nil && p.Grain.Moisture != nil {
		return p.Grain.Moisture.SI
	}
	return t.lotBand().driest
}

// Impossible tells why a weight cannot be, "" where it can. Most is the most moisture that
// grain can hold.
func (t *Batch) Impossible(x *Weighed, most float64) Cannot {
	net, raw, can := t.Net(x)
	switch {
	case !can:
		return OutOfBand
	case raw == nil || !(net > 0):
	case x.Clean && First[*Kilning](t.Process) != nil && net > raw.SI:
		return MoreThanGrain
	case x.Clean && t.moreDry(net, raw.SI):
		return MoreDry
	case 1-raw.SI*(1-t.driest())/net > most:
		return TooMoist
	}
	return ""
}

// moreDry tells whether malt of a tested moisture holds more dry matter than its raw grain.
func (t *Batch) moreDry(net, raw float64) bool {
	malt, grain, tested := t.DryMatter(net, raw)
	return tested && First[*Kilning](t.Process) != nil && malt > grain
}

// DryMatter is that of so much malt, by its tested moisture, and the most that its raw grain
// can have had, kg. It is false where no moisture was tested.
func (t *Batch) DryMatter(net, raw float64) (malt, grain float64, tested bool) {
	x := t.TestOf(testedMoisture)
	if x == nil {
		return 0, 0, false
	}
	return net * (1 - x.Found.SI), raw * (1 - t.driest()), true
}

// testedMoisture is the word of the analysis, as vocabulary.AnalysisMoisture.
const testedMoisture = "moisture"
