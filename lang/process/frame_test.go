package process

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
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
	if len(verbs) == 0 || standsIn(vocabulary.File, verbs) {
		return example
	}
	for block, head := range open {
		if standsIn(block, verbs) && !standsIn(vocabulary.Process, verbs) {
			example = head + " {\n" + example + "\n}"
			verbs = verbsOf(example)
		}
	}
	lines := []string{}
	for _, a := range around {
		if a.verb == verbs[0] || a.verb == "kiln" && !starts[verbs[0]] {
			lines = append(lines, example)
		}
		if !contains(verbs, a.verb) {
			lines = append(lines, a.text)
		}
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

// loadExample loads an example beside the house file of the examples.
func loadExample(t testing.TB, example string) (*House, []finding.Finding) {
	loft, err := os.ReadFile("../../examples/loft.malt")
	require.NoError(t, err)
	return Load("main.malt", []byte(whole(example)), ".", files{"loft.malt": string(loft)})
}
