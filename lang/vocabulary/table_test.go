package vocabulary

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "maltwright/lang/quantity"
)

func TestNoTwoRowsShareABlockAndAWord(t *testing.T) {
	seen := map[Key]bool{}
	for _, r := range Rows() {
		for _, b := range r.In {
			assert.False(t, seen[Key{b, r.Word}], "%s in %s stands twice", r.Word, b)
			seen[Key{b, r.Word}] = true
			found, ok := Lookup(b, r.Word)
			assert.True(t, ok)
			assert.Equal(t, r, *found)
		}
	}
	assert.Greater(t, len(seen), 50)
}

func TestEveryRowIsWholeAndExplained(t *testing.T) {
	for _, r := range Rows() {
		assert.NotEmpty(t, r.In, r.Word)
		assert.Regexp(t, `^[A-Z].*\.$`, r.Doc, r.Word)
		assert.NotEmpty(t, r.Example, r.Word)
		for _, s := range r.Slots {
			checkSlot(t, r.Word, s)
		}
		if r.Leads != "" {
			c, ok := r.Clause(r.Leads)
			assert.True(t, ok && len(c.Slots) == 1 && c.Slots[0].Kind == Amount, "%s leads with a clause that is none of it", r.Word)
			assert.False(t, slices.ContainsFunc(r.Slots, func(s Slot) bool { return s.Kind == Amount }), "%s has a value of its own there", r.Word)
		}
		words := map[string]bool{}
		for _, c := range r.Clauses {
			if other, ok := r.Clause(c.Not); c.Not != "" {
				assert.True(t, ok && other.Not == c.Word, "%s: %s is not in the place of %s, and it in that of this", r.Word, c.Word, c.Not)
			}
			assert.False(t, words[c.Word], "%s has %s twice", r.Word, c.Word)
			words[c.Word] = true
			assert.NotEmpty(t, c.Doc, "%s %s", r.Word, c.Word)
			for _, s := range c.Slots {
				checkSlot(t, r.Word+" "+c.Word, s)
			}
		}
	}
}

func checkSlot(t *testing.T, where string, s Slot) {
	switch s.Kind {
	case Amount:
		assert.NotEmpty(t, s.Dims, where)
		assert.NotEmpty(t, s.Label, where)
		assert.False(t, s.Placed && len(s.Places) == 0, where)
	case Choice:
		assert.NotEmpty(t, s.Label, where)
	case Literal:
		assert.NotEmpty(t, s.Words, where)
		assert.True(t, s.Optional, where)
	case Name:
		for _, b := range append([]Block{s.Of}, s.Or...) {
			assert.NotEmpty(t, Words(b), "%s names a block that has no statements", where)
		}
	case Text, Condition, Clock, Date, Moment, Hour:
		assert.NotEmpty(t, s.Label, where)
	default:
		assert.Fail(t, "a slot of a kind that nothing reads", where)
	}
	for _, w := range slices.Concat(s.Words, s.Places) {
		assert.False(t, IsClause(w), "%s: a word that opens a clause cannot be a value", where)
	}
}

// Usual bands lie in those that can be, and every fact and threshold that is a
// quantity has one, so that no slip goes by because nobody thought of it.
func TestEveryFactAndThresholdHasValuesThatMakeSense(t *testing.T) {
	check := func(what string, s *Sense, dims []q.Dimension) {
		require.NotNil(t, s, what)
		assert.NotEmpty(t, s.What, what)
		assert.Contains(t, dims, s.Can.High.Dimension, what)
		bands := []q.Range{}
		if s.Usual != nil {
			bands = append(bands, *s.Usual)
		}
		for _, k := range s.By {
			bands = append(bands, k.Usual)
			for _, w := range k.Words {
				got, _ := s.UsualOf(w)
				assert.Equal(t, k.Usual, got, what)
				assert.Contains(t, grains, w, what)
			}
		}
		for _, b := range bands {
			assert.Less(t, b.Low.SI, b.High.SI, what)
			assert.True(t, s.Can.Contains(b.Low.SI) && s.Can.Contains(b.High.SI), what)
			assert.NotEmpty(t, s.Standing, what)
		}
	}
	for _, r := range Rows() {
		for _, in := range r.In {
			if slices.Contains([]Block{Grain, Site, Vessel, Floor, KilnFacts, Scale}, in) && len(r.Slots) > 0 && r.Slots[0].Kind == Amount {
				check(string(in)+" "+r.Word, r.Slots[0].Sense, r.Slots[0].Dims)
			}
		}
	}
	for _, l := range LimitNames() {
		check(l.Word, l.Sense, []q.Dimension{l.Dim})
	}
	for _, p := range ratios {
		assert.True(t, p.Can.Contains(p.Usual.Low.SI) && p.Can.Contains(p.Usual.High.SI), p.Name)
		found, ok := FindProportion(p.Name)
		assert.True(t, ok, p.Name)
		assert.Equal(t, p.Doc, found.Doc)
	}
}

func TestEverySpeciesHasAUsualWeightOfItsKernels(t *testing.T) {
	for _, word := range grains {
		_, ok := kernelWeight.UsualOf(word)
		assert.True(t, ok, word)
	}
}

func TestEveryBlockThatIsOpenedHasStatements(t *testing.T) {
	for _, r := range Rows() {
		if r.Opens != None && r.Opens != Limits {
			assert.NotEmpty(t, Words(r.Opens), r.Word)
		}
	}
	assert.Empty(t, Words(Limits), "its words are the limits")
	assert.NotEmpty(t, LimitNames())
}

func TestHomesAreTheBlocksOfAWord(t *testing.T) {
	assert.Equal(t, []Block{Site, KilnFacts, Germinate, Wither}, Homes("air"))
	assert.Equal(t, []Block{Floor, KilnFacts, Vessel}, Homes("area"))
	assert.Empty(t, Homes("boil"))
}

func TestMeantIsTheNearestWordOfTheBlock(t *testing.T) {
	for written, want := range map[string]string{"watter": "water", "humidty": "humidity", "awke": "awake", "turn": "", "water": ""} {
		got, _ := Meant(Site, written)
		assert.Equal(t, want, got, written)
	}
}

func TestNeededStatementsStandInTheirBlock(t *testing.T) {
	assert.Equal(t, []string{"species"}, NeededIn(Grain))
	assert.Equal(t, []string{"make", "from"}, NeededIn(Process))
	assert.Empty(t, NeededIn(File))
}

func TestMeasuresAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range Measures() {
		assert.False(t, seen[m.Word], "%s stands twice", m.Word)
		seen[m.Word] = true
		assert.NotEmpty(t, m.Doc, m.Word)
		assert.Equal(t, m.Promise, len(m.In) == 0, "%s is of a stage or of the whole", m.Word)
		kinds := 0
		for _, is := range []bool{len(m.Dims) > 0, len(m.Words) > 0, m.Bare} {
			if is {
				kinds++
			}
		}
		assert.Equal(t, 1, kinds, "%s is a quantity, a choice or bare", m.Word)
		got, ok := FindMeasure(m.Word)
		assert.True(t, ok)
		assert.Equal(t, m, got)
	}
	_, ok := FindMeasure("colour")
	assert.False(t, ok)
}

func TestListsAreCopies(t *testing.T) {
	Rows()[0].Word, Measures()[0].Word, LimitNames()[0].Word = "x", "x", "x"
	assert.NotEqual(t, "x", Rows()[0].Word)
	assert.NotEqual(t, "x", Measures()[0].Word)
	assert.NotEqual(t, "x", LimitNames()[0].Word)
}

func TestFormsAreReadable(t *testing.T) {
	for key, want := range map[Key]string{
		{Steep, "soak"}:     "soak (<how long>) (in (<how much of it>) water) (at (water) <how warm>) (with air|lime|airflow|overflow (<how much air or water>) (and …)) (for <how long>) (until <what must hold>) (allow <earliest and latest>)",
		{Process, "make"}:   "make <the malt> malt",
		{Process, "from"}:   `from <weight of grain> of "a grain"`,
		{Kiln, "cool"}:      "cool to air-on|air-off|malt|oven <how cool> (with water <how much>) (allow <earliest and latest>)",
		{Grain, "treated"}:  "treated no|yes|unknown",
		{File, "vessel"}:    `vessel "its name" { … }`,
		{Batch, "weighed"}:  `weighed (bag) <its weight> (clean) malt (in "a vessel, floor or kiln") (on "a scale") (at <when>) (after <a step> (<which of them>)) (by "who")`,
		{Germinate, "turn"}: "turn (every <how often>) (at <a time of day> (and …)) (by machine)",
		{Site, "awake"}:     "awake <from and to> (with <how many>)",
	} {
		r, ok := Lookup(key.In, key.Word)
		assert.True(t, ok)
		assert.Equal(t, want, Form(*r))
	}
}
