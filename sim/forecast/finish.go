package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// finished is malt out of the kiln.
type finished struct {
	dry, x   float64 // dry matter with rootlets, kg; moisture, dry basis
	rootlets float64 // dry matter of the rootlets, kg
	cleaned  bool    // rootlets are off
}

func (m *finished) moisture() float64 { return m.x / (1 + m.x) }

func (m *finished) weight() float64 {
	dry := m.dry
	if m.cleaned {
		dry -= m.rootlets
	}
	return dry * (1 + m.x)
}

// still is malt that nothing happens to but handling.
type still struct{ *finished }

func (still) advance(float64) error                  { return nil }
func (s still) copy(physics) physics                 { return s }
func (still) set(physics)                            {}
func (still) unwatched() float64                     { return often }
func (still) measure(string) (float64, string, bool) { return 0, "", false }

// deculmTime is what rubbing and sieving a batch takes (common practice), s.
const deculmTime = 3600.0

// deculm takes the rootlets off, as soon as the malt is out of the kiln.
func (r *run) deculm(st *model.Deculming) error {
	if r.malt == nil {
		return NoMalt{}
	}
	before := r.malt.moisture()
	r.malt.cleaned = true
	r.assume(DeculmTime{deculmTime})
	r.start(string(model.DeculmStage))
	took := deculmTime
	if c := r.change(r.now, quantity.Time); c != nil {
		took = c.To.Low.SI
	}
	end := r.known(stop{latest: took, ending: ByTime}, r.now)
	r.record(Step{Label: vocabulary.VerbDeculm, Place: st.Place(), EndedBy: end.ending}, still{r.malt}, before, end.latest)
	r.f.Totals.Total = r.clock
	return r.seeThrough(still{r.malt}, r.clock)
}

// store lets the malt rest; its moisture is taken to stay.
func (r *run) store(st *model.Storing) error {
	if r.malt == nil {
		return NoMalt{}
	}
	rest := 0.0
	if st.Rest != nil {
		rest = st.Rest.Range.Low.SI
	}
	r.f.Totals.Total = r.clock
	r.record(Step{Label: vocabulary.VerbStore, Place: st.Place(), EndedBy: ByTime}, still{r.malt}, r.malt.moisture(), rest)
	return r.seeThrough(still{r.malt}, r.clock)
}

// finish reckons the totals and looks at the promises.
func (r *run) finish() {
	t := &r.f.Totals
	if t.Total == 0 {
		t.Total = r.clock
	}
	lot := r.batch.Lot
	if m := r.malt; m != nil {
		t.FinalMoisture = m.moisture()
		t.Rootlets = m.rootlets * (1 + m.x)
		t.Malt = (m.dry - m.rootlets) * (1 + m.x)
		t.YieldDry = (m.dry - m.rootlets) / lot.DryMass
	} else { // the process has no kiln: green malt, rootlets and all
		t.FinalMoisture, t.Malt = r.batch.Moisture(), r.batch.Mass()
		t.YieldDry = r.batch.Dry / lot.DryMass
	}
	if r.malt == nil && r.f.Beyond != nil { // it broke off on the kiln, where nothing of the malt was known any more
		t.FinalMoisture, t.Malt, t.YieldDry = math.NaN(), math.NaN(), math.NaN()
	}
	t.Yield = t.Malt / r.p.Charge.SI
	t.DryMatterLost = 1 - t.YieldDry
	for i := range r.p.Expect {
		r.expect(&r.p.Expect[i])
	}
}

// promises gives what expect can name.
func (t *Totals) promises(name string) (float64, string, bool) {
	v, ok := map[string]float64{
		vocabulary.MeasureTotalTime: t.Total, vocabulary.MeasureSteepOutTime: t.SteepOut, vocabulary.MeasureSteepOutMoisture: t.SteepOutMoisture,
		vocabulary.MeasureFinalMoisture: t.FinalMoisture, vocabulary.MeasureYield: t.Yield, vocabulary.MeasureMaltWeight: t.Malt,
	}[name]
	return v, "", ok && !math.IsNaN(v)
}

func (r *run) expect(c *model.Condition) {
	for i := range c.Tests {
		test := c.Tests[i]
		value, word, ok := r.f.Totals.promises(test.Measure)
		r.f.Expects = append(r.f.Expects, Expect{Condition: *c, Test: test, Value: value, Holds: ok && testHolds(&test, value, word),
			Unjudged: !ok && r.f.Beyond != nil && math.IsNaN(value)})
	}
}
