package model

// Cannot is why a weight cannot be, whatever else is true of the batch.
type Cannot string

// The reasons.
const (
	OutOfBand     Cannot = "out-of-band"     // outside of what grain of that charge can weigh at all; see Net
	MoreThanGrain Cannot = "more-than-grain" // of kilned malt: more than the raw grain it is of
	TooMoist      Cannot = "too-moist"       // it would hold more water than grain can, though none of its dry matter were lost
)

// The moisture of raw grain lies between these; beyond them a sample cannot be of it. They
// are those of the moisture of a lot.
const (
	DriestGrain   = 0.05
	MoistestGrain = 0.25
)

// Moisture is what the oven took off a sample, as a share of its weight. It is false for
// one that raw grain cannot have.
func (s *Sample) Moisture() (w float64, can bool) {
	if s == nil || !(s.Wet.SI > 0) {
		return 0, false
	}
	w = 1 - s.Dry.SI/s.Wet.SI
	return w, w >= DriestGrain && w <= MoistestGrain
}

// driest is the least moisture that the raw grain of a batch can have had: by its sample,
// else by its lot.
func (t *Batch) driest() float64 {
	if w, can := t.Sample.Moisture(); can {
		return w
	}
	if p := t.Process; p != nil && p.Grain != nil && p.Grain.Moisture != nil {
		return p.Grain.Moisture.SI
	}
	return DriestGrain
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
	case 1-raw.SI*(1-t.driest())/net > most:
		return TooMoist
	}
	return ""
}
