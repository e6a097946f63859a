package check

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/profile"
	"maltwright/check/usual"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/offer"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// loft is the house of the loft as it is known to an editor.
func loft(t *testing.T) (text string, k offer.Known) {
	t.Helper()
	house, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	tree, _ := syntax.Parse(source.New("loft.malt", house))
	k.Names = offer.NamesIn(tree)
	k.Usual = usual.Of(profile.Of(&model.Process{}), quantity.System{})
	return string(house), k
}

// What is offered whole, with the values that it has, is read in a house and found fault with by no rule.
func TestWhatIsOfferedWholeIsFoundFaultWithByNothing(t *testing.T) {
	house, k := loft(t)
	files := offer.Wholes(vocabulary.File, k)
	process := files["process"]
	require.NotEmpty(t, process)
	clean := func(what, text string) {
		report := File("loft.malt", []byte(text), ".", nil, Options{})
		for _, f := range report.Findings {
			assert.Less(t, f.Severity, finding.Caution, "%s: %s\n%s", what, f.Message, f.Place.Text())
			assert.NotContains(t, []string{"unusual-figure", "step-time-odd"}, f.Rule, what)
		}
	}
	clean("process", house+"\n"+process+"\n")
	for word, text := range offer.Wholes(vocabulary.Process, k) {
		if word == "limits" {
			continue // to move a threshold is told of, whatever it is
		}
		stage := stageIn(process, word)
		require.NotEmpty(t, stage, word)
		clean(word, house+"\n"+strings.Replace(process, stage, text, 1)+"\n")
	}
}

// stageIn is the text of a stage.
func stageIn(process, word string) string {
	tree, _ := syntax.Parse(source.New("x", []byte(process)))
	for _, s := range tree.Top.Statements[0].Body.Statements {
		if s.Verb.Text == word {
			return tree.File.Text(s.Span)
		}
	}
	return ""
}

func TestWhatIsOfferedWholeStandsAsTidyWritesIt(t *testing.T) {
	_, k := loft(t)
	for _, in := range vocabulary.Blocks() {
		for word, text := range offer.Wholes(in, k) {
			if !strings.Contains(text, "\n") || in != vocabulary.File {
				continue
			}
			tree, found := syntax.Parse(source.New("x", []byte(text+"\n")))
			require.Empty(t, found, word)
			got := layout.Write(tree)
			assert.Equal(t, text+"\n", string(got), word)
		}
	}
}
