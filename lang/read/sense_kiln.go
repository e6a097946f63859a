package read

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// headsOf gives the place of the first statement of each word of a block.
func (r *filled) headsOf() map[string]source.Place {
	heads := map[string]source.Place{}
	if r.Body == nil {
		return heads
	}
	for _, s := range r.Body.Statements {
		if !heads[s.Verb.Text].Known() {
			heads[s.Verb.Text] = source.Place{File: r.place.File, Span: s.Head()}
		}
	}
	return heads
}

// count is how many statements of a word a block has.
func (r *filled) count(word string) (n int) {
	if r.Body == nil {
		return 0
	}
	for _, s := range r.Body.Statements {
		if s.Verb.Text == word {
			n++
		}
	}
	return n
}

// kilnSays holds what a kiln says against what else it says. Whole tells that all of its
// block was read.
func (b *builder) kilnSays(k *model.Kiln, said map[string]source.Place, whole bool) {
	if whole {
		b.placeOfMalt(k, said)
		b.openDoor(k, said)
	}
	for _, c := range clashes {
		one, other := said[c.one], said[c.other]
		if !one.Known() || !other.Known() || !c.when(k) {
			continue
		}
		f := factsClash.At(one, c.says)
		f.Hint = c.do
		f.Related = []finding.Related{{Place: other, Message: "the other one"}}
		b.note(f)
	}
}

// placeOfMalt reports a kiln that does not say on what the malt lies, or in what.
func (b *builder) placeOfMalt(k *model.Kiln, said map[string]source.Place) {
	row, _ := vocabulary.Lookup(vocabulary.KilnFacts, vocabulary.FactArea)
	switch {
	case k.Tumbles && k.Area == nil && k.Holds == nil:
		f := missingStatement.At(k.Place, "a drum needs holds")
		f.Hint = "add a line such as: holds 20 l"
		b.note(f)
	case !k.Tumbles && k.Holds != nil && !said[vocabulary.FactTumbles].Known():
		f := missingStatement.At(k.Holds.Place, "holds is of a drum, and the kiln does not say that it tumbles")
		f.Hint = "add tumbles yes, or write the area of what the malt lies on: " + row.Example
		b.note(f)
	case !k.Tumbles && k.Area == nil:
		f := missingStatement.At(k.Place, "a kiln needs area")
		f.Hint = "add a line such as: " + row.Example
		b.note(f)
	}
}

// openDoor reports a door ajar of a kiln of which it is not said that it is still.
func (b *builder) openDoor(k *model.Kiln, said map[string]source.Place) {
	if k.Door == nil || said[vocabulary.FactDraught].Known() || said[vocabulary.FactFan].Known() {
		return
	}
	f := missingStatement.At(k.Door.Place, "the door is ajar, and the kiln does not say that it is an oven without a fan")
	f.Hint = "add a line such as: draught still"
	b.note(f)
}

// clash is two facts of a kiln that cannot both be.
type clash struct {
	one, other string // their words; the first is underlined
	when       func(*model.Kiln) bool
	says, do   string
}

func still(k *model.Kiln) bool   { return k.Draught.Text == vocabulary.DraughtStill }
func drum(k *model.Kiln) bool    { return k.Tumbles }
func noDrum(k *model.Kiln) bool  { return !k.Tumbles && k.Holds != nil }
func always(*model.Kiln) bool    { return true }
func natural(k *model.Kiln) bool { return k.Draught.Text == vocabulary.DraughtNatural }
func ajar(k *model.Kiln) bool    { return k.Door != nil && !still(k) }

var clashes = []clash{
	{vocabulary.FactDraught, vocabulary.FactFan, natural, "the draught is natural, and the kiln has a fan", "write draught fan, or take the fan out"},
	{vocabulary.FactDraught, vocabulary.FactFan, still, "no air is blown through a still oven, and the kiln has a fan", "write draught fan; or take the fan out, if it only stirs the air of an oven"},
	{vocabulary.FactDraught, vocabulary.FactTumbles, func(k *model.Kiln) bool { return still(k) && drum(k) }, "a drum that tumbles moves malt and air, but its draught is still", "take the draught out"},
	{vocabulary.FactDraught, vocabulary.FactChimney, still, "a chimney draws air through the malt, but the draught is still", "write draught natural, or take the chimney out"},
	{vocabulary.FactDoor, vocabulary.FactDraught, ajar, "the door is ajar, and the kiln has a draught: air leaves by the door of a still oven alone", "write draught still, or take door ajar out: of a kiln with a draught the airflow says what goes through the malt"},
	{vocabulary.FactDoor, vocabulary.FactFan, func(k *model.Kiln) bool { return ajar(k) && k.Draught.Text == "" }, "the door is ajar, and the kiln has a fan: air leaves by the door of a still oven alone", "take door ajar out, or the fan"},
	{vocabulary.FactHolds, vocabulary.FactTumbles, noDrum, "holds is of a drum, and this kiln does not tumble", "write tumbles yes, or the area of what the malt lies on"},
	{vocabulary.FactReturns, vocabulary.FactDraught, func(k *model.Kiln) bool { return still(k) && k.Returns != nil && k.Returns.SI > 0 }, "a still oven has no fan that leads its exhaust back", "write draught fan, or take returns out: the airflow of an oven says how much leaves by vent and leaks"},
	{vocabulary.FactRecovers, vocabulary.FactDraught, still, "a still oven has no stream of exhaust to take heat from", "write draught fan, or take recovers out"},
	{vocabulary.VerbAir, vocabulary.FactDraught, still, "a still oven has no draught that takes in the exhaust of another kiln", "write draught fan, or let the oven have the air of the room: take the line air from out"},
	{vocabulary.VerbAir, vocabulary.FactTumbles, drum, "a drum takes its air by its vent, and this one is to have the exhaust of another kiln", "take the line air from out"},
	{vocabulary.FactRecovers, vocabulary.VerbAir, always, "this kiln takes no fresh air to which heat could be given: its air is the exhaust of another one", "write recovers in the kiln that takes the fresh air"},
}

// airflowBesideCurve says which holds where a kiln has a curve and an airflow.
func (b *builder) airflowBesideCurve(k *model.Kiln) {
	if len(k.Fan) == 0 || k.Airflow == nil {
		return
	}
	most := k.Fan[len(k.Fan)-1]
	if slices.ContainsFunc(b.found, func(f finding.Finding) bool { return f.Place == k.Airflow.Place && f.Severity == fault }) {
		return
	}
	f := airflowBesideFan.At(k.Airflow.Place, fmt.Sprintf("the fan has a curve, and the kiln an airflow: %s goes through the malt, as far as the fan gives it", k.Airflow))
	f.Related = []finding.Related{{Place: most.Place, Message: "the curve"}}
	if k.Airflow.SI > most.Flow.SI {
		f.Severity = caution
		f.Message = fmt.Sprintf("%s should go through the malt, and the fan gives at most %s", k.Airflow, most.Flow)
		f.Hint = "take the airflow out, and the bed has what the fan gives it; or look at both numbers and their units"
	}
	b.note(f)
}

// moreThanBlown reports a step that asks for more air than the fan of its kiln gives.
func (b *builder) moreThanBlown(k *model.Kiln, s model.Step) {
	asked := model.Airflow(s)
	if k == nil || len(k.Fan) == 0 || asked == nil {
		return
	}
	most := k.Fan[len(k.Fan)-1]
	if asked.SI <= most.Flow.SI {
		return
	}
	f := airflowBesideFan.At(asked.Place, fmt.Sprintf("%s asks for %s, and the fan of its kiln gives at most %s", s.Kind(), asked, most.Flow))
	f.Severity = caution
	f.Hint = "look at both numbers and their units"
	f.Related = []finding.Related{{Place: most.Place, Message: "the curve"}}
	b.note(f)
}

// stirredDrum reports a stirring in a drum, which mixes the malt all the time.
func (b *builder) stirredDrum(st *model.Kilning) {
	if st.Kiln == nil || !st.Kiln.Tumbles || st.Stir == nil {
		return
	}
	f := factsClash.At(st.Stir.Place, fmt.Sprintf("%q mixes the malt as it turns, so stirring it every %s does nothing", st.Kiln.Name, st.Stir))
	f.Severity = caution
	f.Hint = "take stir out"
	f.Related = []finding.Related{{Place: st.Kiln.Place, Message: "the drum"}}
	b.note(f)
}

// circle reports a kiln whose air goes through itself before.
func (b *builder) circle(k *drying) {
	list := append([]*model.Kiln{&k.Kiln}, k.Upstream()...)
	last := list[len(list)-1]
	k.round = k.AirFrom != nil && last.AirFrom == &k.Kiln
	switch told := slices.ContainsFunc(b.piped, func(o *drying) bool { return o != k && o.round && slices.Contains(list, &o.Kiln) }); {
	case !k.round || told: // a kiln beside a circle is not of it
	case k.AirFrom == &k.Kiln:
		b.refuse(airInCircle.At(k.from.place, fmt.Sprintf("%q is given its own exhaust; write returns with the share of it that is led back", k.Name)))
	default:
		f := airInCircle.At(k.from.place, fmt.Sprintf("the air of %q comes from %q, and that of %q from %q: no fresh air comes in", k.Name, k.AirFrom.Name, last.Name, k.Name))
		f.Related = []finding.Related{{Place: k.AirFrom.Place, Message: "the other kiln"}}
		b.refuse(f)
	}
}
