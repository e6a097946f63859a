package serve

import (
	"net/url"
	"slices"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/lang/vocabulary"
)

// form is one form of a reading.
type form struct {
	Kind, Name, Lead, Button string
	Batch                    folder.ID
	Once                     string
	Open                     bool
	Groups                   []group
}

// group is fields that belong together.
type group struct {
	Legend, Class string
	Fields        []field
}

// field is a field of a form: a line to type in, or a choice where it has options.
type field struct {
	ID, Name, Label, Type, Mode, Value, Unit, Help, Class string
	Needed, Pick                                          bool
	Options                                               []option
}

type option struct {
	ID, Value, Text string
	Chosen          bool
}

// offers are what a form can offer of a batch as it stands.
type offers struct {
	Batch    folder.ID
	Once     string
	Unit     string   // of its weights: kg, g, lb, or lb oz
	Degree   string   // °C or °F
	Expected string   // what the scale should show at the next visit, "" where nothing is weighed
	In       []string // vessels, floors and kilns that say what they weigh
	Alone    bool     // the grain lies in none of them, or in nothing that says what it weighs
	Bag      bool     // there is a marked bag
	After    []string // steps that may have ended, the likely one first
	Ended    string   // the one that just ended, "" where none did
	Clean    bool     // the malt may be without its rootlets
	Places   []string // where a thermometer may stand, the likely one first
	Steps    []string // that can be done otherwise
	Sampled  bool     // the raw grain was dried already
	Likely   string   // the kind of what is due
}

// formsOf gives a form for each kind of reading, that of what is due open. What was typed is kept.
func formsOf(o offers, typed url.Values) (list []form) {
	for _, k := range kinds {
		if k.fits != nil && !k.fits(o) {
			continue
		}
		list = append(list, formOf(o, k.kind, typed))
	}
	return list
}

// formOf is the form of one kind.
func formOf(o offers, kind string, typed url.Values) form {
	for _, k := range kinds {
		if k.kind != kind {
			continue
		}
		if typed.Get(nameKind) != kind {
			typed = url.Values{}
		}
		m := maker{o, kind, typed}
		f := form{Kind: kind, Name: k.name, Batch: o.Batch, Once: o.Once, Open: o.Likely == kind, Groups: k.groups(m)}
		if k.lead != nil {
			f.Lead = k.lead(o)
		}
		if !untimed[kind] {
			f.Groups = append(f.Groups, m.when())
		}
		return f
	}
	return form{}
}

// kinds are the forms in the order in which they are shown.
var kinds = []struct {
	kind, name string
	fits       func(offers) bool
	lead       func(offers) string
	groups     func(maker) []group
}{
	{kind: kindWeighed, name: "Weighed", groups: maker.weighed, lead: func(o offers) string {
		if o.Expected == "" {
			return ""
		}
		return "The scale should show " + o.Expected + "."
	}},
	{kind: kindHeat, name: "Temperature", groups: maker.heat},
	{kind: kindTurned, name: "Turned", groups: func(maker) []group { return nil }, lead: func(offers) string { return "The piece was turned." }},
	{kind: kindAcrospire, name: "Acrospire count", groups: maker.acrospire},
	{kind: kindChit, name: "Chit count", groups: maker.chit},
	{kind: kindRub, name: "Rub", groups: maker.rub},
	{kind: kindRemark, name: "Remark", groups: maker.remark},
	{kind: kindSample, name: "Sample of the raw grain", groups: maker.sample, fits: func(o offers) bool { return !o.Sampled }},
	{kind: kindMoisture, name: "Moisture of a sample", groups: maker.moisture},
	{kind: kindChanged, name: "A step was done otherwise", groups: maker.changed, fits: func(o offers) bool { return len(o.Steps) > 0 }},
}

// maker makes the fields of one form.
type maker struct {
	offers
	kind  string
	typed url.Values
}

func (m maker) id(name string) string { return m.kind + "-" + name }

// number is a field for a number, which brings the keypad for one.
func (m maker) number(name, label, unit string) field {
	if unit != "" {
		label += ", " + unit
	}
	return field{ID: m.id(name), Name: name, Label: label, Type: "text", Mode: "decimal", Value: m.typed.Get(name), Unit: unit}
}

func (m maker) text(name, label string) field {
	return field{ID: m.id(name), Name: name, Label: label, Type: "text", Value: m.typed.Get(name), Class: "wide"}
}

// choice is a field of which one is chosen: that which was, or the first.
func (m maker) choice(name, label string, list []option) field {
	was, chosen := m.typed.Get(name), 0
	if _, any := m.typed[name]; any {
		chosen = max(0, slices.IndexFunc(list, func(o option) bool { return o.Value == was }))
	}
	for i := range list {
		list[i].ID, list[i].Chosen = m.id(name)+"-"+string(rune('a'+i)), i == chosen
	}
	return field{ID: m.id(name), Name: name, Label: label, Options: list}
}

// pick is the same as a list that folds out, for choices that are many.
func (m maker) pick(name, label string, list []option) field {
	f := m.choice(name, label, list)
	f.Pick = true
	return f
}

func hidden(name, value string) field { return field{Name: name, Type: "hidden", Value: value} }

// when asks for the time, and takes an empty one for now.
func (m maker) when() group {
	f := field{ID: m.id(nameAt), Name: nameAt, Label: "When", Type: "datetime-local", Value: atField(m.typed.Get(nameAt)), Help: "Leave it empty for now."}
	return group{Fields: []field{f}}
}

// atField is a time of a record as a field of a browser has it.
func atField(at string) string { return strings.Replace(at, " ", "T", 1) }

func (m maker) weighed() []group {
	list := []group{m.scale()}
	if len(m.In) > 0 || m.Bag {
		list = append(list, group{"What stood on the scale", "choices", []field{m.choice(nameIn, "", m.holders())}})
	}
	if list = append(list, group{Fields: []field{m.pick(nameAfter, "After which step", m.ended())}}); !m.Clean {
		return list
	}
	return append(list, group{"Rootlets", "choices", []field{m.choice(nameClean, "", []option{{Value: "", Text: "still on"}, {Value: "yes", Text: "rubbed and sieved off"}})}})
}

// scale asks for what the scale shows: in one field, or in two where the house writes pounds and ounces.
func (m maker) scale() group {
	const label = "What the scale shows"
	unit, second, _ := strings.Cut(m.Unit, " ")
	if second == "" {
		weight := m.number(nameValue, label, unit)
		weight.Class = "big"
		return group{Fields: []field{weight, hidden(nameUnit, unit)}}
	}
	g := group{label, "pair", []field{m.number(nameValue, "pounds", ""), m.number(nameOunces, "ounces", ""), hidden(nameUnit, unit)}}
	for i, u := range []string{unit, second} {
		g.Fields[i].Unit, g.Fields[i].Class = u, "big"
	}
	return g
}

// holders are what may stand on the scale: the likely one first.
func (m maker) holders() []option {
	var list []option
	for _, in := range m.In {
		list = append(list, option{Value: in, Text: "in “" + in + "”"})
	}
	alone := option{Value: "", Text: "the grain alone"}
	if list = append(list, alone); m.Alone {
		list = append([]option{alone}, list[:len(list)-1]...)
	}
	if m.Bag {
		list = append([]option{{Value: inBag, Text: "the marked bag"}}, list...)
	}
	return list
}

func (m maker) ended() []option {
	var list []option
	for _, step := range m.After {
		list = append(list, option{Value: step, Text: "after " + step})
	}
	amid := option{Value: "", Text: "in the middle of a step"}
	if m.Ended == "" {
		return append([]option{amid}, list...)
	}
	return append(list, amid)
}

func (m maker) heat() []group {
	var places []option
	for _, p := range m.Places {
		places = append(places, option{Value: p, Text: p})
	}
	value := m.number(nameValue, "What the thermometer shows", m.Degree)
	value.Class = "big"
	return []group{{Fields: []field{value, hidden(nameUnit, m.Degree)}}, {"Where it stands", "choices", []field{m.choice(namePlace, "", places)}}}
}

func (m maker) acrospire() []group {
	var fields []field
	for _, c := range classes {
		fields = append(fields, m.number(c.name, c.label, ""))
	}
	return []group{{"How many kernels have an acrospire so long", "six", fields}}
}

func (m maker) chit() []group {
	n, of := m.number(nameValue, "Kernels that show a root", ""), m.number(nameOf, "of so many looked at", "")
	if n.Class = "big"; of.Value == "" {
		of.Value = "100"
	}
	return []group{{Fields: []field{n, of}}}
}

func (m maker) rub() []group {
	list := []option{{Value: vocabulary.RubGummy, Text: "gummy: it smears"}, {Value: vocabulary.RubGritty, Text: "gritty: it rolls and has hard grains"}, {Value: vocabulary.RubChalky, Text: "chalky: it rubs out as chalk does"}}
	return []group{{"How a kernel rubbed out between thumb and finger", "choices", []field{m.choice(nameValue, "", list)}}}
}

func (m maker) sample() []group {
	return []group{{Fields: m.oven(nameValue)}}
}

// oven asks for the weights of a sample and its dish.
func (m maker) oven(wet string) []field {
	dish := m.number(nameDish, "The dish, empty", "g")
	dish.Help = "Leave it empty where the weights are without a dish."
	return []field{dish, m.number(wet, "Before it was dried, in the dish", "g"), m.number(nameDry, "When it no longer got lighter, in the dish", "g")}
}

func (m maker) moisture() []group {
	share := m.number(nameValue, "Or the moisture that was found, of the whole weight", "%")
	return []group{{Fields: m.oven(nameWet)}, {Fields: []field{share}}}
}

func (m maker) changed() []group {
	var steps, units []option
	for _, s := range m.Steps {
		steps = append(steps, option{Value: s, Text: s})
	}
	for _, u := range []string{"h", "min", "d", m.Degree} {
		units = append(units, option{Value: u, Text: u})
	}
	return []group{
		{Fields: []field{m.pick(nameStep, "Which step", steps), m.number(nameValue, "What it was instead", "")}},
		{"In", "choices", []field{m.choice(nameUnit, "", units)}},
		{Fields: []field{m.text(nameWhy, "Why")}},
	}
}
