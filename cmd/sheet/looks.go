package sheet

import (
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// looks are what is looked for in a stage: drawings, counts to tick and the gates that ask for them.
func (m *maker) looks(st forecast.Stage, times []string) (list []Block) {
	asked, text := asksOf(st.Of)
	grows := st.Kind == model.GerminateStage
	naked := m.naked()
	if grows || asked[vocabulary.MeasureChit] {
		list = append(list, chitted())
	}
	if grows || asked[vocabulary.MeasureAcrospire] || asked[vocabulary.MeasureRub] {
		for _, t := range text {
			list = append(list, Gate{Asks: t, Looks: []string{"Go on when it holds" + within(st.Of) + "; count on the same day."}, Boxes: []Box{{Label: "held: yes / no"}, {Label: "time"}}})
		}
		list = append(list, rubs(), rubbed(max(2, min(len(times), mostLooks))), acrospires(naked))
		list = append(list, tallies(naked, times)...)
	}
	if asked[vocabulary.MeasureBreak] {
		list = append(list, fronts(), broke())
	}
	return list
}

// within says before and beyond which times a piece does not end, where the process says it.
func within(st model.Stage) (text string) {
	allow := st.Ends().Allow
	if allow == nil {
		return ""
	}
	if allow.Earliest != nil {
		text += ", but not before " + words.Span(allow.Earliest.SI) + " have passed"
	}
	if allow.Latest != nil {
		text += "; wait no longer than " + words.Span(allow.Latest.SI)
	}
	return text
}

// asksOf are the measures that a stage waits for, and the conditions with one that is seen by eye and hand.
func asksOf(st model.Stage) (asked map[string]bool, text []string) {
	asked = map[string]bool{}
	take := func(c *model.Condition) {
		if c == nil {
			return
		}
		byEye := false
		for _, t := range c.Tests {
			asked[t.Measure] = true
			byEye = byEye || t.Measure == vocabulary.MeasureChit || t.Measure == vocabulary.MeasureAcrospire || t.Measure == vocabulary.MeasureRub
		}
		if byEye {
			text = append(text, short(words.Safe(words.OneLine(c.Place.Text()))))
		}
	}
	take(st.Ends().Until)
	for _, s := range model.EveryStep(model.StepsOf(st)) {
		take(s.Ends().Until)
		take(model.Asked(s))
	}
	return asked, text
}

// leastHusk is how much water the husk of a kernel holds at the least, kg/kg dry matter: the seed coat of a naked
// one holds half of it, the husk of barley half as much again.
const leastHusk = 0.04

// naked tells whether the grain has no husk.
func (m *maker) naked() bool {
	if m.p.Grain == nil {
		return false
	}
	profile, err := grain.Of(m.p.Grain.Species.Text)
	return err == nil && profile.HuskWater < leastHusk
}

// seen is how something is judged by eye, as the language explains it.
func seen(word string) string {
	g, _ := vocabulary.GlossOf(word)
	text := g.Looks
	if text == "" {
		text = g.Doc
	}
	return capital(text) + "."
}

func chitted() Block {
	return Gate{Asks: "chitted kernels: note counted chit " + blank + " of " + blank,
		Looks: []string{seen(vocabulary.MeasureChit)}, Boxes: []Box{{Label: "chitted"}, {Label: "of"}, {Label: "day, time"}}}
}

// acrospireClasses are those of a count, in the order of the language.
func acrospireClasses(bare bool) []Drawn {
	return []Drawn{{NoShoot, "no shoot yet", bare}, {Quarter, "to 1/4", bare}, {Half, "to 1/2", bare}, {ThreeQuarters, "to 3/4", bare}, {Whole, "to the whole", bare}, {Overgrown, "overgrown", bare}}
}

// outside is how the shoot of a kernel without husk is seen, and counted as that of barley is (common practice, from memory).
const outside = "A kernel without husk has its shoot outside: it comes out at the root end and lies along the back. " +
	"Take its length as a part of the kernel's; count how far each of 50 to 100 kernels has grown."

func acrospires(bare bool) Block {
	how := seen(vocabulary.MeasureAcrospire)
	if bare {
		how = outside
	}
	return Drawing{Say: "Acrospire. " + how,
		Shown: []Drawn{{Quarter, "1/4", bare}, {Half, "1/2", bare}, {ThreeQuarters, "3/4", bare}, {Whole, "1, whole", bare}, {Overgrown, "overgrown", bare}}}
}

// ticks is how many boxes a class has: of 20 kernels a tick each, of 100 five strokes in a box.
const ticks = 20

// mostLooks is for how many looks a sheet has a count each.
const mostLooks = 4

// tallies are counts of acrospires, one for each look that is planned, one where none is.
func tallies(bare bool, times []string) (list []Block) {
	for _, t := range times[:min(len(times), mostLooks)] {
		list = append(list, tallyOf(bare, "Acrospires, look "+t+"; counted at "+blank))
	}
	if len(list) == 0 {
		list = append(list, tally(bare))
	}
	return list
}

func tally(bare bool) Block { return tallyOf(bare, "Acrospires, counted at "+blank) }

func tallyOf(bare bool, title string) Block {
	return Tally{Title: title, Say: "A tick for each of 20 kernels; of 100, five strokes in a box. The sum stands behind.",
		Classes: acrospireClasses(bare), Ticks: ticks, Line: "note counted acrospire " + strings.Repeat(blank+" ", 6) + "of " + blank}
}

func rubs() Block {
	return Drawing{Say: "Rub. " + seen(vocabulary.MeasureRub), Shown: []Drawn{{Look: RubGummy, Name: vocabulary.RubGummy}, {Look: RubGritty, Name: vocabulary.RubGritty}, {Look: RubChalky, Name: vocabulary.RubChalky}}}
}

func rubbed(rows int) Block {
	return Ticks{Title: "Rub", Say: "Tick what most of ten kernels do: note felt rub " + blank, Answers: []string{vocabulary.RubGummy, vocabulary.RubGritty, vocabulary.RubChalky}, Rows: rows}
}

func fronts() Block {
	return Drawing{Say: "Break. " + seen(vocabulary.MeasureBreak), Shown: []Drawn{{Look: Break, Name: "the break"}}}
}

func broke() Block {
	return Ticks{Title: "Break", Answers: []string{"cool, damp", "warm, dry"}, Rows: 2}
}
