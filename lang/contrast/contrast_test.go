package contrast

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

func tree(text string) *syntax.Tree {
	t, _ := syntax.Parse(source.New("x.malt", []byte(text)))
	return t
}

// told writes the changes in short.
func told(old, new string) string {
	var b strings.Builder
	for _, c := range Files([]*syntax.Tree{tree(old)}, []*syntax.Tree{tree(new)}) {
		side := c.New
		if c.Kind == Removed {
			side = c.Old
		}
		if c.Of != "" {
			c.Path = append(c.Path, "of "+c.Of)
		}
		fmt.Fprintf(&b, "%s %s: %s", c.Kind, strings.Join(c.Path, " / "), side.Text)
		for _, p := range c.Parts {
			fmt.Fprintf(&b, " {%s %s -> %s}", p.What, p.Old, p.New)
		}
		b.WriteString("\n")
	}
	return b.String()
}

const season = `process "p" {
  steep in "tub" {
    soak 7 h in water at 13 °C
    rest 9 h in air at 14 °C
    soak 6 h in water at 13 °C
  }
  kiln in "k" {
    dry at air-on 50 °C until moisture at most 25 % allow 6 to 14 h
    gate moisture at most 10 %
    cure at air-on 82 °C for 4 h
  }
}
`

func TestTheSameInOtherUnitsLayoutAndCommentsIsNoChange(t *testing.T) {
	other := `# another season
process "p" { steep in "tub" {
 soak 420 min at 55.4 °F in water   # cold
 rest 9 h in air at 14 C; soak 6 h in water at 13 °C }
  kiln in "k" { dry allow 6 to 14 h at air-on 50 °C until moisture <= 25 %
 gate moisture at most 10 %; cure at air-on 82 °C for 4 h } }`
	assert.Empty(t, told(season, other))
}

func TestWhatPeopleTypeIsNoChange(t *testing.T) {
	typed, err := os.ReadFile("../layout/testdata/typed.malt")
	require.NoError(t, err)
	canonical, err := os.ReadFile("../layout/testdata/typed-canonical.malt")
	require.NoError(t, err)
	assert.Empty(t, told(string(typed), string(canonical)))
	assert.Empty(t, told(season, strings.Replace(season, "cure at air-on 82 °C for 4 h", "cure 4 h at air-on 82 °C", 1)))
	assert.Equal(t, "changed process \"p\" / kiln: cure 4 ½ h at air-on 82 °C {for 4 h -> 4 1/2 h}\n",
		told(season, strings.Replace(season, "cure at air-on 82 °C for 4 h", "cure 4 ½ h at air-on 82 °C", 1)))
	assert.Equal(t, "changed batch \"1\": turned at 7:30 pm {at 07:30 -> 19:30}\n",
		told("batch \"1\" { turned at 07:30 }", "batch \"1\" { turned at 7:30 pm }"))
}

func TestChangesAreToldByMeaning(t *testing.T) {
	for name, c := range map[string]struct{ from, to, want string }{
		"a value":            {"soak 7 h in water at 13 °C", "soak 8 h in water at 13 °C", "changed process \"p\" / steep: soak 8 h in water at 13 °C { 7 h -> 8 h}\n"},
		"a clause":           {"at air-on 82 °C for 4 h", "at air-on 180 °F for 5 h", "changed process \"p\" / kiln: cure at air-on 180 °F for 5 h {at air-on 82 °C -> air-on 180 °F} {for 4 h -> 5 h}\n"},
		"a clause that went": {" allow 6 to 14 h", "", "changed process \"p\" / kiln: dry at air-on 50 °C until moisture at most 25 % {allow 6 to 14 h -> }\n"},
		"a step inserted":    {"    soak 6 h", "    soak 1 h in water at 10 °C\n    rest 2 h in air at 12 °C\n    soak 6 h", "new process \"p\" / steep: soak 1 h in water at 10 °C\nnew process \"p\" / steep: rest 2 h in air at 12 °C\n"},
		"a step gone":        {"    gate moisture at most 10 %\n", "", "gone process \"p\" / kiln: gate moisture at most 10 %\n"},
		"a gate changed":     {"gate moisture at most 10 %", "gate moisture at most 9 %", "changed process \"p\" / kiln: gate moisture at most 9 % { moisture at most 10 % -> moisture at most 9 %}\n"},
		"air at intervals":   {"    soak 6 h", "    aerate every 30 min for 5 min\n    soak 6 h", "new process \"p\" / steep: aerate every 30 min for 5 min\n"},
		"another vessel":     {`in "tub"`, `in "tank"`, "changed process \"p\": steep in \"tank\" {in \"tub\" -> \"tank\"}\n"},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Contains(t, season, c.from)
			assert.Equal(t, c.want, told(season, strings.Replace(season, c.from, c.to, 1)))
		})
	}
}

func TestWhatARecordAndALotKeepIsToldByMeaning(t *testing.T) {
	assert.Empty(t, told(`grain "A" { delivered 2.5 t on 2026-02-01 as "L-1" }`, `grain "A" { delivered 2500 kg as "L-1" on 2026-02-01 }`))
	assert.Equal(t, "new grain \"A\": delivered 1 t on 2026-03-01\n", told(`grain "A" { delivered 2.5 t on 2026-02-01 }`, `grain "A" { delivered 2.5 t on 2026-02-01; delivered 1 t on 2026-03-01 }`))
	assert.Equal(t, "changed batch \"1\": from 5 kg of \"B\" {of \"A\" -> \"B\"}\n", told(`batch "1" { from 5 kg of "A" }`, `batch "1" { from 5 kg of "B" }`))
	assert.Empty(t, told(`batch "1" { tested colour 4.1 EBC at 2026-04-01 10:00 }`, `batch "1" { tested colour 2 °L at 2026-04-01 10:00 }`), "2.65 × 2 − 1.2")
}

func TestTheOrderOfAirThatIsBlownMeansSomething(t *testing.T) {
	grow := func(lines string) string { return "process \"p\" { germinate {\n" + lines + "} }\n" }
	const cold, warm = "air at air-on 12 °C when bed above 16 °C\n", "air at air-on 14 °C for 10 min every 1 h\n"
	assert.Empty(t, told(grow(cold+warm), grow("air when bed above 60.8 °F at air-on 12 °C\nair at air-on 14 °C every 60 min for 600 s\n")))
	assert.Contains(t, told(grow(cold+warm), grow(warm+cold)), "moved")
	assert.Equal(t, "changed process \"p\" / germinate: air at air-on 12 °C when bed above 17 °C {when bed above 16 °C -> bed above 17 °C}\n",
		told(grow(cold+warm), grow("air at air-on 12 °C when bed above 17 °C\n"+warm)))
	assert.Equal(t, "changed process \"p\" / germinate: turn every 8 h by machine {by  -> machine}\n", told(grow("turn every 8 h\n"), grow("turn every 8 h by machine\n")))
}

func TestWhatAHouseLearntIsToldByLotAndKiln(t *testing.T) {
	const old = `house "L" { uptake 1.08 of "A"; uptake 1.2 of "B"; thermometer 0.8 °C error 0.4 K }`
	assert.Empty(t, told(old, `house "L" { thermometer 1.44 °F error 0.72 °F; uptake 1.2 of "B"; uptake 1.08 of "A" }`))
	assert.Equal(t, "gone house \"L\": uptake 1.08 of \"A\"\nchanged house \"L\" / of \"B\": uptake 1.1 of \"B\" { 1.2 -> 1.1}\n",
		told(old, `house "L" { uptake 1.1 of "B"; thermometer 0.8 °C error 0.4 °C }`))
	assert.Equal(t, "changed house \"L\": withering 1.2 { 1.1 -> 1.2}\n", told(`house "L" { withering 1.1 }`, `house "L" { withering 1.2 }`))
	const lot = `house "L" { husk-water 1.1 of "A"; chit 0.9 of "A"; chit 1.2 of "B" }`
	assert.Empty(t, told(lot, `house "L" { chit 1.2 of "B"; chit 0.9 of "A"; husk-water 1.1 of "A" }`))
	assert.Equal(t, "new house \"L\": husk-water 1.3 of \"B\"\nchanged house \"L\" / of \"A\": chit 0.8 of \"A\" { 0.9 -> 0.8}\n",
		told(lot, `house "L" { husk-water 1.1 of "A"; husk-water 1.3 of "B"; chit 0.8 of "A"; chit 1.2 of "B" }`))
}

func TestAScaleIsToldByItsNameAndAWeighingByWhatStoodOnIt(t *testing.T) {
	const old = `scale "kitchen" { division 1 g; holds 5 kg } scale "barn" { division 0.5 kg } vessel "tub" { weighs 990 g }`
	assert.Empty(t, told(old, `vessel "tub" { weighs 0.99 kg } scale "barn" { division 500 g } scale "kitchen" { holds 5000 g; division 1 g }`))
	assert.Equal(t, "changed scale \"kitchen\": division 2 g { 1 g -> 2 g}\ngone : scale \"barn\"\nnew vessel \"tub\": holds 20 l\n",
		told(old, `scale "kitchen" { division 2 g; holds 5 kg } vessel "tub" { weighs 990 g; holds 20 l }`))
	assert.Equal(t, "changed batch \"1\": weighed 8.3 kg on \"kitchen\" in \"tub\" after soak 1 {in  -> \"tub\"} {on \"barn\" -> \"kitchen\"}\n",
		told(`batch "1" { weighed 8.3 kg on "barn" after soak 1 }`, `batch "1" { weighed 8.3 kg on "kitchen" in "tub" after soak 1 }`))
	assert.Equal(t, "new process \"p\": bag 100 g at the start\n", told(season, strings.Replace(season, "  steep", "  bag 100 g at the start\n  steep", 1)))
}

func TestAMovedStepIsMovedAndNotRewritten(t *testing.T) {
	moved := strings.Replace(season, "    gate moisture at most 10 %\n    cure at air-on 82 °C for 4 h\n", "    cure at air-on 82 °C for 4 h\n    gate moisture at most 10 %\n", 1)
	got := told(season, moved)
	assert.Equal(t, 1, strings.Count(got, "\n"), got)
	assert.Contains(t, got, "moved process \"p\" / kiln")
}

func TestAMovedStageKeepsItsInside(t *testing.T) {
	i, k := strings.Index(season, "  kiln"), strings.Index(season, "  steep")
	moved := season[:k] + season[i:len(season)-2] + season[k:i] + "}\n"
	got := told(season, strings.Replace(moved, "soak 6 h", "soak 5 h", 1))
	assert.Contains(t, got, "changed process \"p\" / steep: soak 5 h")
	assert.Equal(t, 2, strings.Count(got, "\n"), got)
}

// A second stage of a kind is new, and leaves the first as it was; what changes in one of
// several says in which.
func TestSeveralStagesOfAKindArePaired(t *testing.T) {
	const box = "  germinate on \"box\" {\n hold bed at 14 °C\n for 2 days\n }\n"
	const floor = "  germinate on \"floor\" {\n hold bed at 16 °C\n for 3 days\n }\n"
	const oven = "  kiln in \"oven\" {\n cure at air-on 82 °C for 4 h\n }\n"
	in := func(stages ...string) string { return "process \"p\" {\n" + strings.Join(stages, "") + "}\n" }
	one, two := in(box), in(box, floor)
	for name, c := range map[string]struct{ old, new, want string }{
		"one behind":         {one, two, "new process \"p\": germinate on \"floor\"\n"},
		"one before":         {in(floor), two, "new process \"p\": germinate on \"box\"\n"},
		"one gone":           {two, in(floor), "gone process \"p\": germinate on \"box\"\n"},
		"another floor":      {one, strings.Replace(one, "box", "tray", 1), "changed process \"p\": germinate on \"tray\" {on \"box\" -> \"tray\"}\n"},
		"in the second":      {two, strings.Replace(two, "16 °C", "17 °C", 1), "changed process \"p\" / germinate 2: hold bed at 17 °C {at 16 °C -> 17 °C}\n"},
		"swapped":            {two, in(floor, box), "moved process \"p\": germinate on \"box\"\n"},
		"a kiln behind":      {season, strings.Replace(season, "  }\n}\n", "  }\n"+oven+"}\n", 1), "new process \"p\": kiln in \"oven\"\n"},
		"a step of one of 2": {in(box, floor, box), in(box, floor, strings.Replace(box, "2 days", "1 day", 1)), "changed process \"p\" / germinate 3: for 1 day { 2 days -> 1 day}\n"},
	} {
		t.Run(name, func(t *testing.T) { assert.Equal(t, c.want, told(c.old, c.new)) })
	}
}

func TestWhereOrderMeansNothingNothingMoves(t *testing.T) {
	const house = "site \"Loft\" { air 8 to 15 °C; water 9 to 12 °C; altitude 140 m }\nvessel \"tub\" { holds 25 l }\n"
	const other = "vessel \"tub\" { holds 25 l }\nsite \"Loft\" { altitude 140 m; water 48.2 to 53.6 °F; air 8 to 15 °C }\n"
	assert.Empty(t, told(house, other))
	grow := func(lines ...string) string {
		return "process \"p\" { germinate on \"f\" {\n" + strings.Join(lines, "\n") + "\n} }"
	}
	assert.Empty(t, told(grow("hold bed at 14 °C for 2 days", "hold bed at 16 °C", "turn every 8 h"), grow("turn every 8 h", "hold bed at 14 °C for 2 days", "hold bed at 16 °C")))
	assert.Contains(t, told(grow("hold bed at 14 °C for 2 days", "hold bed at 16 °C"), grow("hold bed at 16 °C", "hold bed at 14 °C for 2 days")), "moved")
	assert.Equal(t, "changed process \"p\" / germinate: hold bed from 17 to 12 °C over 3 days {from 17 to 13 °C -> 17 to 12 °C}\n",
		told(grow("hold bed from 17 to 13 °C over 3 days"), grow("hold bed from 17 to 12 °C over 3 days")))
}

func TestWordsThatOnlyReadWellSayNothing(t *testing.T) {
	assert.Empty(t, told("process \"p\" { steep in \"tub\" to moisture 43 % { } }", "process \"p\" { steep to 43 % in \"tub\" { } }"))
}

func TestAClauseOfAStageMeansTheSameInItsBlock(t *testing.T) {
	const head = "process \"p\" { germinate on \"f\" until rub is chalky allow 4 to 7 days { hold bed at 14 °C } }"
	const block = "process \"p\" { germinate on \"f\" {\nhold bed at 14 °C\nuntil rub is chalky\nallow 4 to 7 days\n} }"
	assert.Empty(t, told(head, block))
	assert.Equal(t, "changed process \"p\" / germinate: allow 4 to 8 days { 4 to 7 days -> 4 to 8 days}\n", told(head, strings.Replace(block, "7 days", "8 days", 1)))
	assert.Equal(t, "new process \"p\" / germinate: until rub is chalky\n", told(strings.Replace(head, " until rub is chalky", "", 1), block))
}

func TestARenamedProcessKeepsItsInside(t *testing.T) {
	assert.Equal(t, "changed : process \"q\" { \"p\" -> \"q\"}\nchanged process \"q\" / steep: soak 8 h in water at 13 °C { 7 h -> 8 h}\n",
		told(season, strings.Replace(strings.Replace(season, `"p"`, `"q"`, 1), "soak 7 h", "soak 8 h", 1)))
	const another, third = "process \"q\" {\n kiln in \"k\" { cool to malt 30 °C }\n}\n", "process \"r\" { }\n"
	assert.Equal(t, "gone : process \"p\"\nnew : process \"q\"\n", reorder(told(season+third, another+third)), "another process is no new name for this one")
	assert.Contains(t, told(season, another), "changed : process \"q\" { \"p\" -> \"q\"}\n", "but the only one of each file is compared")
}

// reorder sorts the lines.
func reorder(text string) string {
	lines := strings.SplitAfter(text, "\n")
	slices.Sort(lines)
	return strings.Join(lines, "")
}

func TestAFileAgainstItselfIsNoChangeAndSidesSwap(t *testing.T) {
	steps := []string{"soak 7 h in water at 13 °C", "rest 9 h in air at 14 °C", "soak 6 h in water at 13 °C", "rest 2 h in air at 10 °C", "soak 1 h in water at 9 °C"}
	gen := rapid.Custom(func(t *rapid.T) string {
		return "process \"p\" {\n steep {\n" + strings.Join(rapid.SliceOfN(rapid.SampledFrom(steps), 0, 9).Draw(t, "steps"), "\n") + "\n}\n}\n"
	})
	rapid.Check(t, func(rt *rapid.T) {
		a, b := gen.Draw(rt, "a"), gen.Draw(rt, "b")
		assert.Empty(rt, told(a, a))
		// one way as many statements come in, less those that go, as go the other way
		ab, ba := told(a, b), told(b, a)
		assert.Equal(rt, strings.Count(ab, "new ")-strings.Count(ab, "gone "), strings.Count(ba, "gone ")-strings.Count(ba, "new "), "%s%s", ab, ba)
		assert.Equal(rt, a == b, ab == "")
	})
}

func BenchmarkTenThousandLines(b *testing.B) {
	var old, new strings.Builder
	old.WriteString("process \"p\" {\n steep {\n")
	new.WriteString("process \"p\" {\n steep {\n")
	for i := range 9_990 {
		fmt.Fprintf(&old, "soak %d min in water at %d °C\n", i%77+1, i%19+1)
		fmt.Fprintf(&new, "soak %d min in water at %d °C\n", i%77+1+i%50/49, i%19+1)
	}
	old.WriteString("}\n}\n")
	new.WriteString("}\n}\n")
	x, y := tree(old.String()), tree(new.String())
	for b.Loop() {
		Files([]*syntax.Tree{x}, []*syntax.Tree{y})
	}
}

func TestAirAtIntervalsIsOneThingWhereverItStands(t *testing.T) {
	with := func(first, last string) string {
		return strings.Replace(strings.Replace(season, "    soak 7 h", first+"    soak 7 h", 1), "    soak 6 h in water at 13 °C\n", "    soak 6 h in water at 13 °C\n"+last, 1)
	}
	assert.Empty(t, told(with("aerate every 30 min for 5 min\n", ""), with("", "aerate for 300 s every 0.5 h\n")))
	assert.Equal(t, "changed process \"p\" / steep: aerate every 1 h for 10 min {every 30 min -> 1 h} {for 5 min -> 10 min}\n",
		told(with("aerate every 30 min for 5 min\n", ""), with("", "aerate every 1 h for 10 min\n")))
}
