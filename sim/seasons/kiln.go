package seasons

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// kiln makes the figures of the kiln.
func (r *record) kiln(s *Season) {
	began := r.loaded()
	off := r.last(r.off)
	if off != nil {
		s.Kiln = between(began, r.since(off.When()))
	}
	if s.Break = r.broke(began); s.Break.Standing == Missing && began.Known() && r.f != nil {
		if k := r.f.FirstKiln(); k != nil && !math.IsNaN(k.Break) {
			s.Break = Figure{k.Break - k.Began, Reckoned}
		}
	}
}

// cooled tells whether a step is the cooling on the last kiln: malt that goes from one kiln
// to another may be cooled on each.
func (r *record) cooled(s *model.StepName) bool {
	p := r.b.Process
	return s.Kind.Text == string(model.CoolStep) &&
		(s.Number == 0 || p == nil || p.KilnOf(s.Kind.Text, s.Number) == p.Count(model.KilnStage))
}

// onFirst counts the readings up to that with which the malt left the first of several
// kilns: what is read of the next ones tells nothing of the drying front. Where no line says
// that it left, all count.
func (r *record) onFirst() int {
	if p := r.b.Process; p != nil {
		if kilns := model.Every[*model.Kilning](p); len(kilns) > 1 {
			first := *p
			first.Stages = []model.Stage{kilns[0]}
			alone := record{b: &model.Batch{Process: &first}}
			for i, x := range r.b.Readings {
				if after := model.After(x); after != nil && (alone.cooled(after) || alone.ends(after, model.KilnStage)) {
					return i
				}
			}
		}
	}
	return len(r.b.Readings)
}

// off tells whether malt is weighed as it comes off the kiln.
func (r *record) off(x *model.Weighed) bool {
	return !x.Clean && x.After != nil && (r.cooled(x.After) || r.ends(x.After, model.KilnStage))
}

// kilned tells whether the lot is malt already.
func (r *record) kilned() bool { return r.b.Process != nil && r.b.Process.Grain.Kilned() }

// loaded gives when the malt came onto the kiln: at the weighing after the stage
// before it, or else at the first reading of air-on.
func (r *record) loaded() Figure {
	if r.kilned() { // nothing comes before
		return Figure{0, Measured}
	}
	before := model.WitherStage
	if p := r.b.Process; p != nil && model.First[*model.Withering](p) == nil {
		before = model.GerminateStage
	}
	if x := r.last(func(x *model.Weighed) bool { return r.ends(x.After, before) }); x != nil {
		if at := r.since(x.When()); at.Known() {
			return at
		}
	}
	for _, x := range r.b.Readings {
		if t := model.Thermometer(x); t != nil && t.Where == vocabulary.PlaceAirOn {
			return r.since(x.When())
		}
	}
	return Figure{}
}

// risen is how much of the way from its lowest up to air-on air-off has come when a
// reading of it shows that the break is over (common practice: it climbs from then
// on). The scatter of a thermometer or a colder night does not take it so far, and
// the hour of the reading is no more than a bound for the break.
const risen = 0.5

// broke gives how long the malt was on the kiln when a reading of air-off first
// showed that the break was over: a bound from above. Readings of which none does
// are a bound from below; one alone tells nothing, for its plateau was not seen.
func (r *record) broke(began Figure) Figure {
	on, lowest, last := math.NaN(), math.Inf(1), Figure{}
	count := 0
	for _, x := range r.b.Readings[:r.onFirst()] {
		at := between(began, r.since(x.When()))
		read := model.Thermometer(x)
		if read == nil || !at.Known() {
			continue
		}
		switch t := read.Low.SI - zeroC; read.Where {
		case vocabulary.PlaceAirOn:
			on = t
		case vocabulary.PlaceAirOff:
			if on > lowest && (t-lowest)/(on-lowest) >= risen {
				return Figure{at.Value, Under}
			}
			if !math.IsNaN(on) {
				lowest, last = min(lowest, t), Figure{at.Value, Over}
				count++
			}
		}
	}
	if count < 2 {
		return Figure{}
	}
	return last
}
