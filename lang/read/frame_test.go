package read

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// The statements of a process that an example lacks when it is only a part of one.
var around = []struct{ verb, text string }{
	{"make", "make pale malt"},
	{"from", `from 6 kg of "Far field 2026"`},
	{"at", `at "Loft, spring"`},
	{"steep", `steep in "blue tub" { soak 7 h in water at 13 °C }`},
	{"germinate", `germinate on "larch floor" { hold bed at 14 to 17 °C; for 5 days }`},
	{"kiln", `kiln in "tray kiln" { dry at air-on 50 °C for 12 h }`},
}

var starts = map[string]bool{"make": true, "from": true, "at": true, "steep": true, "germinate": true, "kiln": true}

// open gives the head of the stage that a step can stand in.
var open = map[vocabulary.Block]string{
	vocabulary.Steep: `steep in "blue tub"`, vocabulary.Germinate: `germinate on "larch floor"`,
	vocabulary.Wither: `wither on "larch floor"`, vocabulary.Kiln: `kiln in "tray kiln"`,
}

// whole makes a file of an example, which may be some statements of a process or
// the steps of a stage.
func whole(example string) string {
	verbs := verbsOf(example)
	if len(verbs) == 0 || standsIn(vocabulary.File, verbs) && !strings.HasPrefix(example, "kiln in") {
		return example
	}
	for block, head := range open {
		if standsIn(block, verbs) && !standsIn(vocabulary.Process, verbs) {
			example = head + " {\n" + example + "\n}"
			verbs = verbsOf(example)
		}
	}
	lines, last := []string{}, verbs[0] == "deculm" || verbs[0] == "store"
	for _, a := range around {
		if a.verb == verbs[0] || a.verb == "kiln" && !starts[verbs[0]] && !last {
			lines = append(lines, example)
		}
		if !contains(verbs, a.verb) {
			lines = append(lines, a.text)
		}
	}
	if last {
		lines = append(lines, example)
	}
	return frame(lines)
}

func frame(lines []string) string {
	return "use \"loft.malt\"\nprocess \"Loft pale\" {\n" + strings.Join(lines, "\n") + "\n}\n"
}

func verbsOf(text string) (verbs []string) {
	tree, _ := syntax.Parse(source.New("x", []byte(text)))
	for _, s := range tree.Top.Statements {
		verbs = append(verbs, s.Verb.Text)
	}
	return verbs
}

// standsIn tells whether the first of the verbs begins a statement of the block.
func standsIn(block vocabulary.Block, verbs []string) bool {
	_, ok := vocabulary.Lookup(block, verbs[0])
	return ok || block == vocabulary.File && len(vocabulary.Homes(verbs[0])) == 0
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// loadExample loads an example beside the loft house.
func loadExample(t testing.TB, example string) (*model.House, []finding.Finding) {
	return Load("main.malt", []byte(whole(example)), ".", loft(t))
}

// soakedThrice is the shortest process that has a third soak.
var soakedThrice = strings.Replace(shortest, "soak 7 h in water at 13 °C", "repeat 3 times { soak 7 h in water at 13 °C }", 1) + shortKiln + "}\n"

// blockFrames open each block, with what it cannot do without; %s is the rest.
var blockFrames = map[vocabulary.Block]string{
	vocabulary.File:      "%s",
	vocabulary.Process:   "%s",
	vocabulary.Steep:     "steep in \"blue tub\" {\n  soak 7 h in water at 13 °C\n  %s\n}",
	vocabulary.Repeat:    "steep in \"blue tub\" { repeat 2 times {\n  %s\n} }",
	vocabulary.Germinate: "germinate on \"larch floor\" {\n  hold bed at 14 to 17 °C for 5 days\n  for 5 days\n  until acrospire at least 3/4\n  %s\n}",
	vocabulary.Wither:    "wither on \"larch floor\" {\n  for 12 h\n  until moisture at most 30 %\n  %s\n}",
	vocabulary.Kiln:      "kiln in \"tray kiln\" {\n  dry at air-on 50 °C for 12 h\n  %s\n}",
	vocabulary.Grain:     "grain \"lot\" {\n  species barley\n  %s\n}",
	vocabulary.Site:      "site \"barn\" {\n  %s\n}",
	vocabulary.Vessel:    "vessel \"tub\" {\n  holds 25 l\n  %s\n}",
	vocabulary.Floor:     "floor \"tray\" {\n  area 1 m2\n  %s\n}",
	vocabulary.KilnFacts: "kiln \"oven\" {\n  area 1 m2\n  %s\n}",
	vocabulary.Scale:     "scale \"kitchen\" {\n  division 1 g\n  %s\n}",
	vocabulary.Limits:    "limits {\n  %s\n}",
	vocabulary.Batch:     soakedThrice + "batch \"26-03\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  %s\n}",
}

// beside is what an example cannot do without that stands in the same block.
var beside = map[vocabulary.Key]string{
	{In: vocabulary.KilnFacts, Word: "fan"}:   "\n  fan 600 m3/h at 400 Pa",
	{In: vocabulary.KilnFacts, Word: "holds"}: "\n  tumbles yes",
	{In: vocabulary.KilnFacts, Word: "door"}:  "\n  draught still",
}

// loadIn loads the example of a row in one of its blocks.
func loadIn(t testing.TB, block vocabulary.Block, row vocabulary.Row) (*model.House, []finding.Finding) {
	around := blockFrames[block]
	kept := strings.Split(around, "\n")
	if row.Once && (block != vocabulary.Batch || row.Word != "from") { // the frame's own line of that word gives way
		var lines []string
		for _, line := range kept {
			if !strings.HasPrefix(strings.TrimSpace(line), row.Word+" ") || line == kept[0] {
				lines = append(lines, line)
			}
		}
		kept = lines
	}
	text := strings.Replace(strings.Join(kept, "\n"), "%s", row.Example+beside[vocabulary.Key{In: block, Word: row.Word}], 1)
	if block == vocabulary.KilnFacts && row.Word == "air" {
		text += "\nkiln \"lower floor\" { area 1 m2 }"
	}
	if row.Word == "batch" {
		return Load("main.malt", []byte(soakedThrice+row.Example), ".", loft(t))
	}
	if row.Word == "process" {
		return Load("main.malt", []byte(shortest+shortKiln+"}"), ".", loft(t))
	}
	if block == vocabulary.File && row.Word == "use" {
		return Load("main.malt", []byte(text), ".", loft(t))
	}
	return loadExample(t, text)
}

func loft(t testing.TB) files {
	text, err := os.ReadFile("testdata/loft/loft.malt")
	require.NoError(t, err)
	return files{"loft.malt": string(text)}
}
