package noted

import (
	"math"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// Doubt is why a weight may not be right, and what it may have been meant for.
type Doubt struct {
	Lighter  *model.Quantity  // the raw grain, where the grain would be lighter than that before it dries
	From, To answer.Kilograms // what the scale is likely to show, as the line has it weighed
	Wet      answer.Share     // what it would hold, by the dry matter that the forecast has left
	Meant    *Meant           // nil where nothing would explain it
	Late     *Late            // it is that of the end of its step, and the line is of later; it goes before Meant
	Along    *model.Holder    // the vessel in which the grain lies, of which it is not known what it weighs; it may have stood on the scale
	More     answer.Kilograms // than is to be expected
	Earlier  *model.Weighed   // the weight before it that lies off the forecast, on which this one lies
}

// Meant is a reading that would fit.
type Meant struct {
	Kind   MeantKind
	Holder *model.Holder    // of Gross and Net
	Text   string           // the weight as it would be written; "" where the number stays
	Net    answer.Kilograms // of the grain alone, by it
}

// MeantKind says what went wrong between the scale and the line.
type MeantKind string

// What may have gone wrong.
const (
	Gross   MeantKind = "gross"   // something stood on the scale that the line does not name
	Net     MeantKind = "net"     // what the line names did not stand on it
	Unit    MeantKind = "unit"    // another unit
	Point   MeantKind = "point"   // the point is elsewhere
	Swapped MeantKind = "swapped" // two digits are the other way round
)

// Bare tells whether nothing is known that would explain the weight.
func (d *Doubt) Bare() bool {
	return d.Lighter == nil && d.Meant == nil && d.Late == nil && d.Along == nil && d.Earlier == nil
}

const (
	farOff    = 3.0   // standard deviations from which on a weight is asked about
	offer     = 2.0   // the same where a slip explains it
	unweighed = 2.5   // the same where the vessel may have stood on it
	explains  = 1.2   // standard deviations within which a slip does
	halfway   = 0.5   // of its own distance, within which it must lie beside that of the weight as it stands
	lighter   = 0.995 // of the raw grain: below it a weight is lighter
)

// doubtOf says why a line may not be right, nil of what may, or is no weight.
func (h *holding) doubtOf(line model.Dated) *Doubt {
	at := *h
	if at.seat = seatOf(h.trial, line); at.seat < 0 {
		return nil
	}
	o, s := at.observed()
	if x, ok := o.Reading.(*model.Weighed); ok && s != nil {
		return at.doubt(x, o, s)
	}
	return nil
}

// seatOf is the place of a line among the observations, -1 where it is none.
func seatOf(t *evidence.Trial, line model.Dated) int {
	return slices.IndexFunc(t.Observations, func(o evidence.Observation) bool { return line != nil && o.Reading.Place() == line.Place() })
}

// doubt says why a weight may not be right, nil where it may.
func (h *holding) doubt(x *model.Weighed, o *evidence.Observation, s *forecast.Sight) *Doubt {
	if h.lines == nil || h.lines.Near(h.seat) && !(o.Value < h.charge()) {
		return nil
	}
	value, sd, ok := h.lines.Foretell(h.seat)
	if !ok || !(sd > 0) {
		return nil
	}
	off := func(net float64) float64 { return math.Abs(net-value) / (sd * max(net/o.Value, 0.1)) }
	own := off(o.Value)
	along := x.Weight.SI - o.Value
	wide := 2 * sd * value / o.Value
	d := &Doubt{Wet: answer.Share(1 - s.Dry*o.Scale()/o.Value), From: answer.Kilograms(max(0, value-wide) + along), To: answer.Kilograms(value + wide + along), Meant: h.meant(x, o, s, off)}
	if _, raw, _ := h.trial.Batch.Net(x); raw != nil && o.Value < lighter*raw.SI && !dries[s.Stage] && !x.Clean && !h.trial.Process.Grain.Grown() {
		d.Lighter = raw
	}
	if d.Meant != nil && off(float64(d.Meant.Net)) > halfway*own {
		d.Meant = nil
	}
	d.Earlier, d.More = h.earlier(o), answer.Kilograms(o.Value-value)
	if d.Meant == nil && x.In == nil && !x.OfBag && o.Value > value && s.Stage == model.SteepStage {
		if in := model.HolderOf(s.Of); in != nil && in.Weighs == nil {
			d.Along = in
		}
	}
	switch {
	case own > unweighed && d.Along != nil && d.Earlier == nil:
		return d
	case d.Lighter != nil, own > farOff, own > offer && d.Meant != nil && d.Meant.Kind != Swapped:
		return d
	}
	return nil
}

// charge is the raw grain of the batch, kg; 0 where it is not known.
func (h *holding) charge() float64 {
	if c := h.trial.Process.Charge; c != nil {
		return c.SI
	}
	return 0
}

const (
	onForecast  = 0.03 // of a weight, within which it lies on the forecast of the usual lot and house
	offForecast = 0.06 // of a weight, from which on it lies off that
)

// earlier is the weight before one that lies on the forecast which lies off it, nil where there is none:
// rather that one is wrong.
func (h *holding) earlier(o *evidence.Observation) *model.Weighed {
	off := func(o *evidence.Observation) float64 { return math.Abs(o.Value/o.Expect(h.plan, 0) - 1) }
	if !(off(o) < onForecast) {
		return nil
	}
	for i := h.seat - 1; i >= 0; i-- {
		if x, ok := h.trial.Observations[i].Reading.(*model.Weighed); ok && off(&h.trial.Observations[i]) > offForecast {
			return x
		}
	}
	return nil
}

// dries are the stages in which grain comes to weigh less than it did raw.
var dries = map[model.StageKind]bool{model.WitherStage: true, model.KilnStage: true, model.DeculmStage: true, model.StoreStage: true}

// meant seeks what would explain a weight, the commonest first; off is how far a weight of the
// grain alone lies from what is likely, in standard deviations.
func (h *holding) meant(x *model.Weighed, o *evidence.Observation, s *forecast.Sight, off func(float64) float64) *Meant {
	along := x.Weight.SI - o.Value
	if x.In != nil && x.In.Weighs != nil {
		if net := o.Value + x.In.Weighs.SI; off(net) < explains {
			return &Meant{Kind: Net, Holder: x.In, Net: answer.Kilograms(net)}
		}
	}
	if x.In == nil && !x.OfBag && h.trial.Batch.TareOf(x) == nil {
		for _, holder := range h.holders(x, s) {
			if net := o.Value - holder.Weighs.SI; off(net) < explains {
				return &Meant{Kind: Gross, Holder: holder, Net: answer.Kilograms(net)}
			}
		}
	}
	for _, unit := range []string{"lb", "kg", "g", "oz"} {
		if text, si, ok := inUnit(x.Weight.Quantity, unit); ok && off(si-along) < explains {
			return &Meant{Kind: Unit, Text: text, Net: answer.Kilograms(si - along)}
		}
	}
	for _, slip := range quantity.Slips(x.Weight.Quantity) {
		if off(slip.SI-along) < explains {
			kind := Point
			if slip.Swapped {
				kind = Swapped
			}
			return &Meant{Kind: kind, Text: slip.Text, Net: answer.Kilograms(slip.SI - along)}
		}
	}
	return nil
}

// holders lists what the grain can have lain in by a weight, of which it is said what it weighs:
// grain that was just drained is on no floor yet. Behind a stage it may be in what comes next.
func (h *holding) holders(x *model.Weighed, s *forecast.Sight) []*model.Holder {
	stages := h.trial.Process.Stages
	at := slices.IndexFunc(stages, func(st model.Stage) bool { return s.Of != nil && st.Place() == s.Of.Place() })
	if at < 0 {
		return h.trial.Process.Holders()
	}
	if x.After != nil && x.After.Kind.Text == string(s.Stage) {
		at = min(at+1, len(stages)-1)
	}
	so := *h.trial.Process
	so.Stages = stages[:at+1]
	return so.Holders()
}

// inUnit is the number of a weight in another unit. It is false where it has that, or several.
func inUnit(q quantity.Quantity, unit string) (text string, si float64, ok bool) {
	written := q.String()
	number, was, one := cutUnit(written)
	if !one || was == unit {
		return "", 0, false
	}
	other, err := quantity.Make(quantity.Part{Number: number, Unit: unit})
	if err != nil {
		return "", 0, false
	}
	return other.String(), other.SI, true
}

// cutUnit parts a number from its one unit.
func cutUnit(text string) (number, unit string, one bool) {
	parts := strings.Fields(text)
	if len(parts) != 2 {
		return "", "", false
	}
	return parts[0], parts[1], true
}
