package serve

import (
	"net/url"
	"slices"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// danger is one that can be chosen for a remark, with the words that a record tells it by.
type danger struct{ value, text, words string }

// dangers stand in words that tell.Alarms knows, so that they are told of whatever language the rest is in.
var dangers = []danger{
	{"mould", "mould seen", "mould seen"},
	{"sour", "smells sour, or is slimy", "smells sour or is slimy"},
	{"smoke", "smoke or fire", "smoke seen"},
	{"gas", "gas alarm, or somebody is dizzy", "gas alarm or dizzy"},
	{"ergot", "ergot: black horns", "ergot seen"},
	{"pests", "pests: weevils, mites, droppings", "pests seen"},
}

func remarkOf(v url.Values) ([]string, error) {
	text := strings.TrimSpace(v.Get(nameText))
	if i := slices.IndexFunc(dangers, func(d danger) bool { return d.value == v.Get(nameDanger) }); i >= 0 {
		text = words.Joined("; ", dangers[i].words, text)
	}
	if text == "" {
		return nil, missing("type what was seen, smelt or heard, or choose what it is")
	}
	return []string{vocabulary.VerbRemark, quoted(text)}, nil
}

func (m maker) remark() []group {
	text := m.text(nameText, "What was noticed")
	text.Help = "Words of danger, such as mould, sour, smoke or ergot, are known in English alone. In another language choose below what it is as well."
	list := []option{{Value: "", Text: "no danger"}}
	for _, d := range dangers {
		list = append(list, option{Value: d.value, Text: d.text})
	}
	return []group{{Fields: []field{text}}, {"Is it one of these", "choices", []field{m.choice(nameDanger, "", list)}}}
}
