package check

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/profile"
	"maltwright/check/usual"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/offer"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
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

// The readings that are offered whole in a record are read there.
func TestReadingsThatAreOfferedWholeAreRead(t *testing.T) {
	pale, err := os.ReadFile("../examples/pale.malt")
	require.NoError(t, err)
	house, k := loft(t)
	k.Now = time.Date(2026, 3, 9, 8, 0, 0, 0, time.Local)
	record := house + strings.Replace(string(pale), `use "loft.malt"`, "", 1) + "batch \"26-09\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  "
	tree, _ := syntax.Parse(source.New("x.malt", []byte(record+"\n}\n")))
	wholes := 0
	for _, it := range offer.At(tree.File, tree, len(record), k) {
		if it.Kind != offer.Whole {
			continue
		}
		wholes++
		text := record + it.Edit.New + "\n}\n"
		_, found := read.Load("x.malt", []byte(text), ".", nil)
		for _, f := range found {
			assert.Less(t, f.Severity, finding.Caution, "%s: %s\n%s", it.Label, f.Message, f.Place.Text())
		}
	}
	assert.Equal(t, 3, wholes)
}

// In a house of °F and lb a whole process is in °F and lb, and of each grain in what is usual for it.
func TestWhatIsOfferedWholeIsInTheUnitsOfTheHouseAndForItsGrain(t *testing.T) {
	house, err := os.ReadFile("../examples/home/porch.malt")
	require.NoError(t, err)
	facts, _, _ := strings.Cut(string(house), "process ")
	for _, grain := range []string{"barley", "wheat", "rye", "oats", "sorghum", "millet", "maize", "buckwheat"} {
		text := strings.ReplaceAll(facts, "barley", grain)
		tree, _ := syntax.Parse(source.New("porch.malt", []byte(text)))
		p := profile.Of(&model.Process{Grain: &model.Grain{Species: model.Word{Text: grain}}})
		k := offer.Known{Names: offer.NamesIn(tree), System: quantity.System{Fahrenheit: true, British: true}}
		k.Usual = usual.Of(p, k.System)
		process := offer.Wholes(vocabulary.File, k)["process"]
		assert.NotContains(t, process, "°C", grain)
		assert.NotContains(t, process, " kg", grain)
		loaded, found := read.Load("porch.malt", []byte(text+"\n"+process+"\n"), ".", nil)
		for _, f := range found {
			assert.Less(t, f.Severity, finding.Fault, "%s: %s\n%s", grain, f.Message, f.Place.Text())
		}
		require.Len(t, loaded.Processes, 1, grain)
		soak := model.EveryStep(model.First[*model.Steep](loaded.Processes[0]).Steps)
		for _, s := range soak {
			if at := s.Warmth().At; at != nil && s.Kind() == model.SoakStep {
				c := at.Mid() - quantity.ZeroCelsius
				assert.True(t, p.Water.Low-1 <= c && c <= p.Water.High+1, "%s: %.1f °C", grain, c)
			}
		}
	}
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

// What is called usual is found fault with by no rule that needs no forecast, in the place of any value of
// a process.
func TestWhatIsCalledUsualIsFoundFaultWithByNothing(t *testing.T) {
	pale, err := os.ReadFile("../examples/pale.malt")
	require.NoError(t, err)
	house, k := loft(t)
	text := house + strings.Replace(string(pale), `use "loft.malt"`, "", 1)
	rules := func(text string) (names []string) {
		for _, f := range File("x.malt", []byte(text), ".", nil, Options{NoForecast: true}).Findings {
			if f.Severity >= finding.Caution {
				names = append(names, f.Rule+": "+f.Message)
			}
		}
		return names
	}
	require.Empty(t, rules(text))
	tree, _ := syntax.Parse(source.New("x.malt", []byte(text)))
	taken := 0
	tree.Top.Walk(func(s *syntax.Statement) {
		if s.Start < len(house) {
			return
		}
		terms := s.Terms
		for _, c := range s.Clauses {
			terms = append(terms, c.Terms...)
		}
		for _, term := range terms {
			if b, ok := term.(syntax.Bounded); ok {
				term = b.Value
			}
			if _, ok := term.(syntax.Amount); !ok {
				continue
			}
			at := term.Range()
			cut := text[:at.Start] + text[at.End:]
			without, _ := syntax.Parse(source.New("x.malt", []byte(cut)))
			for _, it := range offer.At(without.File, without, at.Start, k) {
				if it.Kind != offer.Value || !strings.Contains(it.Detail, "usual") {
					continue
				}
				taken++
				assert.Empty(t, rules(cut[:at.Start]+it.Edit.New+cut[at.Start:]), "%s in the place of %s in: %s", it.Edit.New, tree.File.Text(at), tree.File.Text(s.Head()))
			}
		}
	})
	assert.Greater(t, taken, 12)
	t.Logf("%d usual values were taken", taken)
}
