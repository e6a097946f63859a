package offer_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/offer"
	v "maltwright/lang/vocabulary"
)

// found are the labels of the items of which a word that may be typed begins with what is typed.
func found(in v.Block, typed string) (list []string) {
	text, at := put(in, typed)
	tree := parsed("x.malt", text)
	typed = typed[strings.LastIndexByte(typed, ' ')+1:]
	for _, it := range offer.At(tree.File, tree, at, offer.Known{}) {
		for _, word := range strings.Fields(it.Filter) {
			if strings.HasPrefix(word, strings.ToLower(typed)) && it.Kind != offer.Whole {
				list = append(list, it.Label)
				break
			}
		}
	}
	return list
}

func TestWhatPeopleTypeFindsTheWord(t *testing.T) {
	for _, c := range []struct {
		in          v.Block
		typed, want string
	}{
		{v.File, "ves", "vessel"}, {v.File, "tub", "vessel"}, {v.File, "dehyd", "kiln"}, {v.File, "recipe", "process"}, {v.File, "record", "batch"},
		{v.Process, "germination", "germinate"}, {v.Process, "storage", "store"}, {v.Process, "promise", "expect"},
		{v.Steep, "soaking", "soak"}, {v.Steep, "shoak", "soak"}, {v.Steep, "drain", "rest"}, {v.Steep, "soka", "soak"},
		{v.Germinate, "flip", "turn"}, {v.Germinate, "mist", "sprinkle"}, {v.Kiln, "cooldown", "cool"}, {v.Kiln, "crue", "cure"},
		{v.KilnFacts, "burner", "heater"}, {v.Grain, "tkw", "kernel-weight"}, {v.Vessel, "capacity", "holds"}, {v.Batch, "weight", "weighed"},
	} {
		assert.Contains(t, found(c.in, c.typed), c.want, "%s in %s", c.typed, c.in)
	}
}

// No name of equipment of another trade finds a word.
func TestWordsThatMeanNothingHereFindNothing(t *testing.T) {
	for _, typed := range []string{"mash", "lauter", "sparge", "boil", "hop", "ferment", "wort", "zzz"} {
		for _, in := range []v.Block{v.File, v.Site, v.Vessel} {
			assert.Empty(t, found(in, typed), "%s in %s", typed, in)
		}
	}
}

func TestChoicesAreFoundByOtherWords(t *testing.T) {
	for statement, want := range map[string]string{"species corn": "maize", "treated untrea": "no", "species oat": "oats", "species barl": "barley"} {
		assert.Contains(t, found(v.Grain, statement), want, statement)
	}
}

// In each block stands first what it is made of, as far as the place has not gone past it.
func TestEachBlockBeginsWithWhatItIsMadeOf(t *testing.T) {
	for in, want := range map[v.Block][]string{
		v.Steep: {"soak", "rest"}, v.Kiln: {"dry", "stew", "cure"}, v.Batch: {"began", "weighed", "counted"}, v.Process: {"make", "from", "at", "steep"},
	} {
		text, at := put(in, "")
		tree := parsed("x.malt", text)
		var list []string
		for _, it := range offer.At(tree.File, tree, at, offer.Known{}) {
			if it.Kind == offer.Statement && len(list) < len(want) {
				list = append(list, it.Label)
			}
		}
		assert.Equal(t, want, list, "%s", in)
	}
}

func TestAMaltIsTakenWithTheWordBehindIt(t *testing.T) {
	for _, typed := range []string{"make ", "make pal"} {
		text, at := put(v.Process, typed)
		tree := parsed("x.malt", text)
		var taken []string
		for _, it := range offer.At(tree.File, tree, at, offer.Known{}) {
			taken = append(taken, it.Edit.New)
		}
		assert.Contains(t, taken, "pale malt", typed)
	}
}
