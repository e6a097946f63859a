package offer_test

import (
	"io/fs"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/finding"
	"maltwright/lang/offer"
	reading "maltwright/lang/read"
	"maltwright/lang/syntax"
	v "maltwright/lang/vocabulary"
)

// around is a file with an empty block of each kind, at the ▮.
var around = map[v.Block]string{
	v.File:      "▮\n",
	v.Process:   "process \"x\" {\n  ▮\n}\n",
	v.Steep:     "process \"x\" {\n  steep {\n    ▮\n  }\n}\n",
	v.Repeat:    "process \"x\" {\n  steep {\n    repeat 2 times {\n      ▮\n    }\n  }\n}\n",
	v.Germinate: "process \"x\" {\n  germinate on \"f\" {\n    ▮\n  }\n}\n",
	v.Wither:    "process \"x\" {\n  wither on \"f\" {\n    ▮\n  }\n}\n",
	v.Kiln:      "process \"x\" {\n  kiln in \"k\" {\n    ▮\n  }\n}\n",
	v.Grain:     "grain \"x\" {\n  ▮\n}\n",
	v.Site:      "site \"x\" {\n  ▮\n}\n",
	v.Vessel:    "vessel \"x\" {\n  ▮\n}\n",
	v.Floor:     "floor \"x\" {\n  ▮\n}\n",
	v.KilnFacts: "kiln \"x\" {\n  ▮\n}\n",
	v.Scale:     "scale \"x\" {\n  ▮\n}\n",
	v.Limits:    "limits {\n  ▮\n}\n",
	v.Batch:     "batch \"x\" of \"y\" {\n  ▮\n}\n",
	v.House:     "house \"x\" {\n  ▮\n}\n",
}

// put gives the text with a statement at the ▮, and the offset behind it.
func put(in v.Block, statement string) (text string, at int) {
	at = strings.Index(around[in], "▮")
	return strings.Replace(around[in], "▮", statement, 1), at + len(statement)
}

func TestEachStatementIsOfferedInEachBlockInWhichItMayStand(t *testing.T) {
	for _, in := range v.Blocks() {
		text, at := put(in, "")
		tree := parsed("x.malt", text)
		items := offer.At(tree.File, tree, at, offer.Known{})
		words := v.Words(in)
		for _, l := range v.LimitNames() {
			if in == v.Limits {
				words = append(words, l.Word)
			}
		}
		for _, word := range words {
			i := slices.IndexFunc(items, func(it offer.Item) bool { return it.Kind == offer.Statement && it.Edit.New == word })
			if assert.GreaterOrEqual(t, i, 0, "%s in %s", word, in) {
				assert.NotEmpty(t, items[i].Doc, "%s in %s", word, in)
				assert.NotEmpty(t, items[i].Detail, "%s in %s", word, in)
			}
		}
	}
}

// unread are the findings of a statement that does not read, beside a value that is missing.
var unread = []string{"unknown-word", "unknown-unit", "word-out-of-place", "words-too-many", "clause-unexpected", "wrong-dimension", "two-of-a-clause", "range-unexpected",
	"bound-unexpected", "block-unexpected", "misplaced", "stray-character", "stray-brace", "unclosed-text", "unclosed-block", "bad-number", "bad-time", "said-twice", "unknown-name", "place-of-temperature-missing", "verb-missing"}

// placeWords are where a temperature is measured.
var placeWords = []string{v.PlaceWater, v.PlaceBed, v.PlaceAir, v.PlaceRoom, v.PlaceAirOn, v.PlaceAirOff, v.PlaceMalt, v.PlaceOven}

// misread counts the findings of a text that it does not read.
func misread(name, text string) map[string]int {
	_, found := reading.Load(name, []byte(text), ".", nothing{})
	return count(found)
}

func count(found []finding.Finding) map[string]int {
	list := map[string]int{}
	for _, f := range found {
		if slices.Contains(unread, f.Rule) {
			list[f.Rule]++
		}
	}
	return list
}

// nothing is a folder with nothing in it.
type nothing struct{}

func (nothing) Read(string) ([]byte, error) { return nil, fs.ErrNotExist }

// more are the findings that a text has and another has not.
func more(after, before map[string]int) (list []string) {
	for rule, n := range after {
		if n > before[rule] {
			list = append(list, rule)
		}
	}
	return list
}

// take gives the text with an item in its place.
func take(text string, it offer.Item) string {
	return text[:it.Edit.Start] + it.Edit.New + text[it.Edit.End:]
}

// Whatever word or clause is taken, wherever in a statement, no more is wrong with it than that a
// value, a bound or a block is missing yet.
func TestATakenWordNeedsNoMoreThanAValue(t *testing.T) {
	taken := 0
	for _, row := range v.Rows() {
		for _, in := range row.In {
			example := parsed("x", row.Example)
			for _, st := range append(steps(example.File, example.Top.Statements[0]), step{at: example.Top.Statements[0].Head().End}) {
				text, at := put(in, row.Example[:st.at]+" ")
				tree := parsed("x.malt", text)
				before := misread("x.malt", text)
				for _, it := range offer.At(tree.File, tree, at, offer.Known{}) {
					if it.Kind == offer.Whole || it.Kind == offer.Join && it.Label == v.To || it.Kind == offer.Choice && slices.Contains(placeWords, it.Label) {
						continue // a value must stand behind it, and no finding says that it is that which is missing
					}
					after := take(text, it)
					taken++
					if it.Label == "in" && strings.HasSuffix(row.Example[:st.at], "1") {
						continue // 1 in is an inch until a name stands behind it
					}
					if bad := more(misread("x.malt", after), before); len(bad) > 0 {
						t.Errorf("%v\n%s", bad, after)
					}
				}
			}
		}
	}
	assert.Greater(t, taken, 2500)
	t.Logf("%d words, clauses and values were taken", taken)
}

// A whole value or a name that is offered in the place of one that stands in an example is read there.
func TestATakenValueReadsInTheExamples(t *testing.T) {
	taken, shapes := 0, map[string]bool{}
	for _, tree := range examples(t) {
		f := tree.File
		k := known(t, f.Name())
		text := string(f.Bytes())
		reader := folder(t, f.Name())
		_, found := reading.Load(f.Name(), f.Bytes(), ".", reader)
		before := count(found)
		tree.Top.Walk(func(s *syntax.Statement) {
			if shapes[shapeOf(s)] || v.Includes(s.Verb.Text) {
				return
			}
			shapes[shapeOf(s)] = true
			for _, term := range termsOf(s) {
				for _, it := range offer.At(f, tree, term.Start+1, k) {
					if it.Kind != offer.Name && it.Kind != offer.Value || it.Edit.Start != term.Start || strings.ContainsAny(f.Text(term)[:1], "abcdefghijklmnopqrstuvwxyz") {
						continue
					}
					if it.Kind != offer.Value || it.Label == it.Edit.New { // else its unit stands behind the place, and stays
						it.Edit.End = term.End
					}
					taken++
					after := take(text, it)
					_, found := reading.Load(f.Name(), []byte(after), ".", reader)
					if bad := more(count(found), before); len(bad) > 0 {
						t.Errorf("%s: %v\n%q in the place of %q", f.Name(), bad, it.Edit.New, f.Text(term))
					}
				}
			}
		})
	}
	assert.Greater(t, taken, 150)
	t.Logf("%d values and names were taken", taken)
}
