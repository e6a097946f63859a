package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// drying is a kiln that is built, with what is settled once all of its block is read.
type drying struct {
	model.Kiln
	from  *given       // the name of the kiln whose exhaust it is given
	draws source.Place // where the power of its fan is said
	round bool         // its air goes in a circle
}

var kilnFacts = table[drying]{
	"area":             func(_ *builder, k *drying, r *filled) { k.Area = r.slot(0).quantity() },
	"weighs":           func(_ *builder, k *drying, r *filled) { k.Weighs = r.slot(0).quantity() },
	"airflow":          func(_ *builder, k *drying, r *filled) { k.Airflow = r.slot(0).quantity() },
	vocabulary.FactFan: (*builder).fan,
	"chimney":          func(_ *builder, k *drying, r *filled) { k.Chimney = r.slot(0).quantity() },
	"reaches":          func(b *builder, k *drying, r *filled) { k.Reaches = b.reach(r.slot(0)) },
	"heater": func(_ *builder, k *drying, r *filled) {
		k.Heater, k.Efficiency = r.slot(0).quantity(), r.clause("at", 0).quantity()
	},
	vocabulary.FactRecovers: func(_ *builder, k *drying, r *filled) { k.Recovers = r.slot(0).quantity() },
	"fired": func(_ *builder, k *drying, r *filled) {
		k.Fired = r.slot(0).chosen()
		k.Flue = r.clause("by", 0).chosen()
		k.Direct = k.Flue.Text == vocabulary.FlueDirect
	},
	"draught":              func(_ *builder, k *drying, r *filled) { k.Draught = r.slot(0).chosen() },
	vocabulary.FactReturns: func(_ *builder, k *drying, r *filled) { k.Returns = r.slot(0).quantity() },
	"tumbles":              func(_ *builder, k *drying, r *filled) { k.Tumbles = r.slot(0).chosen().Text == vocabulary.SaidYes },
	"holds":                func(_ *builder, k *drying, r *filled) { k.Holds = r.slot(0).quantity() },
	"walls":                (*builder).walls,
	"door":                 func(_ *builder, k *drying, r *filled) { k.Door = r.slot(1).quantity() },
	vocabulary.VerbAir:     func(_ *builder, k *drying, r *filled) { k.from = r.clause("from", 0) },
}

func (b *builder) kiln(r *filled) {
	k := &drying{}
	k.Name, k.Place = r.name()
	whole := r.Body == nil || fill(b, r.Body, vocabulary.KilnFacts, r.scope(), r.place, k, kilnFacts)
	b.kilnFan(k, r)
	b.kilnSays(&k.Kiln, r.headsOf(), whole)
	b.kilnProportions(&k.Kiln)
	b.airflowBesideCurve(&k.Kiln)
	b.together(vocabulary.TrayWeight, k.Weighs, k.Area)
	b.house.Kilns = append(b.house.Kilns, &k.Kiln)
	if k.from != nil {
		b.piped = append(b.piped, k)
	}
}

func (b *builder) walls(k *drying, r *filled) {
	if made := r.slot(0).chosen(); made.Text != "" {
		k.Walls = &model.Walls{Material: made, Area: r.slot(1).quantity(), Insulated: r.has("with"), Place: r.place}
	}
}

// pipes finds the kilns that others are given the exhaust of, once all are known.
func (b *builder) pipes() {
	for _, k := range b.piped {
		k.AirFrom = find(b, k.from, "kiln", b.house.Kilns, kilnName)
	}
	for _, k := range b.piped {
		b.circle(k)
	}
	for _, k := range b.piped {
		if k.round {
			k.AirFrom = nil
		}
	}
}

func kilnName(k *model.Kiln) string { return k.Name }

// reach reads the coolest and hottest air of a kiln. One temperature alone does not say which of
// them it is; a dryer with one setting reaches from it to it.
func (b *builder) reach(v *given) *model.Range {
	r := b.upright(v)
	if r == nil || !r.Single() || slices.Contains(strings.Fields(v.amount.Text()), vocabulary.To) {
		return r
	}
	f := valueNeeded.At(r.Place, fmt.Sprintf("reaches needs the coolest and the hottest air of the kiln, and %s stands alone", r))
	f.Why = "one temperature alone does not say which of the two it is"
	number, _ := numberOf(r.High)
	one := fmt.Sprintf("%s %s %s", number, vocabulary.To, r.High)
	f.Hint = "put its lowest and its highest setting, as in " + one + " where it has only one"
	if usual, err := quantity.In(coolestOfKiln.SI, r.Low.Unit()); err == nil && usual.SI < r.Low.SI {
		f.Hint = fmt.Sprintf("put its lowest setting in front, as in %s, or %s where it has only one", quantity.Range{Low: usual, High: r.High}, one)
	}
	b.refuse(f)
	return nil
}

// coolestOfKiln is an example of a kiln's lowest setting.
var coolestOfKiln, _ = quantity.Parse("30 °C")
